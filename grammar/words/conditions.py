"""In what state a value was read: loaded or lifted, live or dead, isolated or not, low impedance."""

from grammar.words.row import Pattern, Words

CONDITIONS = (
    Words(
        "condition", "lifted",
        en=(
            "unloaded", "un loaded", "lifted", "lift", "no load", "everything off", "everything off the secondary", "everything disconnected", "everything unhooked", "no load on it", "no-load", "w/o load", "without load",
            "without a load", "without the load", "with no load", "w/ no load", "open circuit", "oc voltage", "oc volts", "o.c. voltage", "ocv", "open circuit voltage", "open circuit volts", "open-circuit", "open volts", "open voltage", "idle",
            "idling", "not loaded", "load off", "load removed", "loads off", "loads removed", "loads disconnected",
            "load disconnected", "load lifted", "with the load off", "with load off", "nothing connected", "nothing hooked up",
            "nothing on it", "nothing hooked to it", "nothing connected to it", "with nothing on it", "with nothing connected",
            "r off", "r wire off", "r lifted", "r wire lifted", "r pulled", "r disconnected", "r wire pulled", "r lead off",
            "red off", "red wire off", "with r off", "w/ r off", "w/ r wire off", "with the r wire off", "with the r off",
            "r wire disconnected", "lifted r", "pulled r", "with r lifted", "w/ r lifted", "r unhooked", "r wire unhooked",
            "r removed", "c off", "c lifted", "one lead off", "one leg off", "one leg lifted", "one lead lifted",
            "one wire off", "one side lifted", "sec lead off", "secondary lead off", "sec lead lifted", "secondary lead lifted",
            "sec lifted", "with sec lifted", "with the secondary lifted", "leads lifted", "leads off the secondary", "r loose",
            "off load", "offload", "with the wires off", "with wires off", "with the leads off", "w/ wires off", "w/ leads off",
            "with wires lifted", "wires off the secondary", "with the secondary wires off", "with one lead lifted",
            "with a lead lifted", "open ckt", "with r pulled", "with the r lifted", "with the r wire lifted",
            "with secondary lead lifted", "with the control wires off", "field wires off", "field wires lifted", "with it off",
            "w/ it off", "with that off", "with it lifted", "unhooked", "free standing", "wire off", "nl", "noload",
            "no load connected", "with r wire off", "with red off", "w/ red off", "wires lifted", "r is off",
            "with the r wire pulled", "r taken off", "load unhooked",
        ),
        es=(
            "sin carga", "en vacio", "vacio", "r suelto", "r suelta", "con el r suelto", "con r suelto", "con r suelta",
            "con la r suelta", "el r suelto", "r desconectado", "r desconectada", "con r desconectado", "con el r desconectado",
            "sin r", "sin el r", "con la r desconectada", "sin nada conectado", "nada conectado", "levantado", "levantada",
            "con el cable levantado", "con un cable suelto", "un cable suelto", "una punta suelta", "con una punta suelta",
            "con una punta levantada", "r quitado", "con r quitado", "con el r quitado", "con el r levantado",
            "con r levantado", "r levantado", "sin conectar carga", "con la carga desconectada", "carga desconectada",
            "con los cables sueltos", "descargado", "a circuito abierto", "circuito abierto", "sin la carga",
            "con el cable r suelto", "cable r suelto", "con el cable de r suelto", "con el rojo suelto",
            "con un cable levantado", "con un cable desconectado",
        ),
    ),
    Words(
        "condition", "loaded",
        en=(
            "loaded", "full-load", "under-load", "under load", "with load", "w/ load", "with a load", "with the load on", "with load on", "load on",
            "with everything on", "with the load", "loaded up", "r on", "r wire on", "w/ r on", "with r on", "with r back on",
            "r back on", "w/ r wire on", "with the r wire on", "r wire back on", "r connected", "with r connected",
            "r hooked up", "r hooked back up", "everything connected", "everything on", "all on", "all of it on", "hooked up", "all hooked up",
            "with a call", "calling", "with load connected", "load connected", "reconnected", "w/ everything on",
            "with the contactor pulled in", "on load", "in circuit", "connected", "with the load connected",
            "with the wires on", "under a load", "everything hooked up", "full load", "with red on", "with everything calling",
            "with everything connected", "with r hooked up", "r landed", "with r landed", "with it on", "w/ it on",
            "with it back on", "with it connected",
        ),
        es=(
            "con carga", "cargado", "con la carga", "con el r puesto", "con r puesto", "r puesto", "con r conectado",
            "r conectado", "con el r conectado", "conectado", "con todo conectado", "todo conectado", "bajo carga",
            "con la carga conectada", "con la r puesta", "con r puesta", "con todo prendido", "r puesta",
        ),
    ),
    Words(
        "condition", "isolated",
        en=(
            "isolated", "wires off", "leads off", "both leads off", "all leads off", "all wires off", "both wires off",
            "leads disconnected", "wires disconnected", "disconnected", "out of circuit", "xfmr lifted", "transformer lifted",
            "out of the unit", "on the bench", "removed", "off the unit", "leads free", "with both leads off", "all leads free",
            "with leads disconnected", "transformer disconnected", "xfmr disconnected", "with the transformer disconnected",
            "with the transformer lifted", "transformer removed", "xfmr out", "leads hanging", "wires pulled",
            "with xfmr lifted", "w/ xfmr lifted", "pulled out", "with transformer lifted", "with transformer disconnected",
            "with the xfmr lifted", "with the xfmr disconnected", "all disconnected", "both leads lifted", "all leads lifted",
        ),
        es=(
            "aislado", "aislada", "cables desconectados", "cables sueltos", "desconectado", "desconectada",
            "con el transformer desconectado", "con el transformador desconectado", "con el trafo desconectado",
            "con el transformador suelto", "fuera del circuito", "puntas sueltas", "con las puntas sueltas",
            "todo desconectado", "transformador desconectado", "trafo desconectado", "todos los cables sueltos",
            "todas las puntas sueltas", "con el trafo suelto", "transformer desconectado", "con los cables desconectados",
        ),
    ),
    Words(
        "condition", "not_isolated",
        en=(
            "still connected", "wires on", "leads on", "still hooked up", "wires still on", "leads still on", "still wired",
            "not isolated", "not disconnected", "still in circuit", "still wired in", "with the leads on",
            "leads still connected", "wires still connected", "with leads still on", "with the wires still on", "still landed",
            "without disconnecting", "didn't disconnect",
        ),
        es=(
            "todavia conectado", "aun conectado", "sin desconectar", "cables puestos", "con los cables puestos",
            "todavia conectada", "sigue conectado", "no desconectado", "no aislado", "con cables conectados",
            "con los cables conectados",
        ),
    ),
    Words(
        "condition", "low_impedance",
        en=(
            "lowz", "low z", "low-z", "lo z", "loz", "lo-z", "in low z", "low impedance", "on low z", "in lowz", "in loz",
            "low z mode", "on loz",
        ),
        es=("baja impedancia", "en baja impedancia", "en lowz", "en loz"),
    ),
)  # fmt: skip
HEADINGS = (
    Words(
        "heading", "live",
        en=(
            "live", "energized", "powered", "powered up", "power on", "with power on", "hot readings", "live readings",
            "voltages", "live volts", "all volts", "live voltages", "volts all", "energised", "under power", "ac volts",
        ),
        es=(
            "en vivo", "energizado", "con corriente", "con voltaje", "voltajes", "con energia", "prendido", "vivo",
            "todo en volts", "con la corriente puesta",
        ),
    ),
    Words(
        "heading", "dead",
        en=(
            "dead", "power off", "de-energized", "deenergized", "killed power", "power is off", "powered down", "cold",
            "all ohms", "resistance", "resistances", "resistance readings", "ohms all", "with power off", "all in ohms",
            "de energized", "ohm readings", "ohms across", "ohm'd", "ohmed", "ohmed out", "ohming", "ohm out",
            "resistances are", "on ohms", "in ohms", "power killed", "dead readings", "ohmd", "ohmmeter", "ohm meter",
            "ohm check", "ohm test",
        ),
        es=(
            "sin corriente", "apagado", "desenergizado", "sin energia", "todo en ohms", "resistencia", "resistencias", "muerto",
            "en ohms", "corriente apagada", "todos en ohms", "todo en ohmios", "en ohmios", "puros ohms", "sin luz",
            "medido en ohms",
        ),
    ),
)  # fmt: skip

STATES_OFF = (
    "off", "lifted", "pulled", "disconnected", "removed", "unhooked", "loose", "undone", "hanging", "floating", "taken off", "pulled off", "lifted off", "unlanded", "off the board", "off the terminal", "taken loose", "is off", "is lifted", "popped off", "isolated",
)  # fmt: skip
NOUNS = ("wire", "lead", "leg", "side", "conductor", "terminal", "wires", "leads", "lug", "tab")
ES_OFF = (
    "suelto",
    "suelta",
    "desconectado",
    "desconectada",
    "levantado",
    "levantada",
    "quitado",
    "quitada",
    "afuera",
    "safado",
    "zafado",
    "zafada",
    "al aire",
    "libre",
    "sueltos",
    "desconectados",
    "levantados",
)
PATTERNS = (
    Pattern("condition", "lifted", (("r", "c", "red", "secondary", "sec", "load", "field", "control", "the load", "with the load", "with load"), ("", *NOUNS), STATES_OFF)),
    Pattern("condition", "lifted", (("one", "one secondary", "one sec", "a", "a secondary", "hot", "one of the secondary", "one of the sec"), NOUNS, STATES_OFF)),
    Pattern("condition", "lifted", (("with", "w", ""), ("", "the"), ("stat", "tstat", "thermostat", "call"), ("off", "satisfied", "turned off"))),
    Pattern("condition", "lifted", (("with", "w", ""), ("no", "nothing", "not"), ("call", "calls", "calling"))),
    Pattern("condition", "lifted", (("at",), ("rest", "idle"))),
    Pattern("condition", "loaded", (("when", "once", "as soon as", "soon as"), ("it", "the contactor", "contactor", "the relay", "the valve", "the gas valve", "the fan", "the coil", "she", "they"), ("pulls in", "pull in", "kicks in", "kicks on", "comes on", "calls", "energizes", "closes", "starts"))),
    Pattern("condition", "loaded", (("on", "with", "w", "during"), ("a", "the", ""), ("call", "heat call", "cooling call", "cool call", "call for heat", "call for cooling"))),
    Pattern("condition", "loaded", (("in",), ("heat", "cool", "cooling", "heating", "defrost"))),
    Pattern("condition", "loaded", (("cuando",), ("", "el"), ("jala el contactor", "entra el contactor", "contactor jala", "contactor entra", "contactor pega", "entra", "jala", "pega el contactor"))),
    Pattern("condition", "lifted", (("en reposo", "sin llamada", "con el termostato apagado", "termostato apagado"),)),
    Pattern("condition", "loaded", (("con llamada", "en calor", "en frio", "llamando"),)),
    Pattern("condition", "loaded", (("pulled in", "contactor in", "contactor pulled in", "contactor pegado", "todo llamando", "todo prendido"),)),
    Pattern("condition", "loaded", (("con todo",), ("", "prendido", "puesto", "llamando", "jalando", "encendido", "andando", "trabajando"))),
    Pattern("condition", "loaded", (("con el aire", "con aire", "con la calefaccion", "con el frio", "con frio", "con calor"), ("", "prendido", "puesto", "puesta", "prendida", "llamando", "jalando"))),
    Pattern("condition", "loaded", (("with",), ("cool", "cooling", "heat", "heating", "ac", "the ac", "the heat", "the cooling", "y called", "everything", "all"), ("on", "calling", "running"))),
    Pattern("heading", "dead", (("ohms",), ("on", "for", "across"), ("all", "everything", "all of em", "all of them", "both", "all those", "all of those", "all of these", "every one", "em all", "them all"))),
    Pattern("heading", "dead", (("all", "those", "these", "everything", "everythings", "all those", "all these", "all of em", "all of them", "both"), ("", "are", "is", "in", "are in", "are all"), ("ohms",))),
    Pattern("heading", "live", (("volts",), ("on", "for", "across"), ("all", "everything", "all of em", "all of them", "all those", "all of those", "both"))),
    Pattern("heading", "dead", (("todo", "todos", "todas", "todas las lecturas", "son", "las tres", "los tres", "ambos", "los dos"), ("", "son", "esta", "estan", "es"), ("en ohms", "ohms", "en ohmios", "ohmios"))),
    Pattern("condition", "lifted", (("nothing",), ("connected", "hooked up", "hooked", "landed", "tied", "wired", "attached"), ("", "to it", "on it", "there", "to the secondary"))),
    Pattern(
        "condition", "loaded",
        (
            ("r", "red", "load", "field", "control", "the load"),
            ("", "wire", "lead", "leg", "wires", "leads"),
            ("on", "back on", "connected", "hooked up", "landed", "attached", "tied in", "reconnected", "hooked back up", "put back", "back in"),
        ),
    ),
    Pattern("condition", "loaded", (("c",), ("", "wire", "lead", "leg", "wires", "leads"), ("back on", "connected", "hooked up", "landed", "attached", "reconnected", "hooked back up", "put back", "back in"))),
    Pattern("condition", "loaded", (("put", "putting", "hooked", "landed", "tied", "plugged", "connected", "hook", "with"), ("", "the"), ("load", "loads", "r", "red", "r wire", "red wire", "wire", "wires", "controls"), ("back", "back on", "back up", "back in", "on"))),
    Pattern("condition", "loaded", (("everything", "all", "all of it", "both loads", "with everything", "with all"), ("", "the loads", "loads", "zones"), ("running", "called", "calling", "pulled in", "energized", "hooked up", "connected"))),
    Pattern("condition", "lifted", (("pulled", "lifted", "took", "disconnected", "unhooked", "unplugged", "undid", "popped", "removed", "slid", "unlanded", "loosened", "yanked", "pull", "lift", "disconnect", "unhook", "unplug", "remove", "pulling", "after lifting", "dropped"), ("", "the", "my", "el", "la"), ("load", "loads", "r", "r wire", "red wire", "secondary lead", "one lead", "one secondary lead", "a secondary lead", "field wires", "r lead"), ("", "off", "loose"))),
    Pattern(
        "condition", "lifted",
        (
            ("r", "el r", "la r", "cable r", "cable de r", "el cable de r", "un cable", "una punta", "un lado", "la carga", "con la carga", "con carga", "carga", "cable rojo", "el rojo", "una pata", "el cable r", "secundario", "el secundario", "un cable del secundario", "una punta del secundario", "con el cable r", "con el cable de r", "con un cable", "con una punta", "con una pata", "con el secundario"),
            ES_OFF,
        ),
    ),
    Pattern(
        "condition", "lifted",
        (
            ("quite", "jale", "solte", "desconecte", "levante", "saque", "safe", "zafe", "afloje", "quitando", "soltando", "desconectando", "levantando", "quitar", "soltar", "desconectar", "levantar", "quito", "desconecto"),
            ("", "el", "la", "los", "un", "una"),
            ("r", "rojo", "cable r", "cable rojo", "cable de r", "hilo r", "carga", "punta", "cable del secundario", "cables de carga"),
        ),
        "es",
    ),
    Pattern(
        "condition", "loaded",
        (
            ("r", "el r", "la r", "cable r", "cable de r", "el cable de r", "la carga", "con la carga", "carga", "cable rojo", "el rojo", "con el cable r", "con el cable de r"),
            ("puesto", "puesta", "conectado", "conectada", "reconectado", "reconectada", "de vuelta", "otra vez puesto"),
        ),
    ),
)  # fmt: skip
"""Conditions and headings that are put together: what, its noun, its state."""
