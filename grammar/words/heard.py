"""Turns of phrase for what is no measure and still decides the call; the meanings are those of `core.heard.record`."""

from grammar.words.row import Cue

NOT = "wont|doesnt|not|isnt|didnt|aint|never|cant|wouldnt"
CONTACTOR = (
    Cue(
        "stays_out",
        en=(
            f"{NOT} pull|pulling|pulled|pulls|suck|sucking|engage|engaging|engaged|close|closing|closed|budge|energize|energizing",
            f"{NOT} kick|kicking|snap|snapping in",
            f"{NOT} click|clicking|clunk",
            f"contactor|relay {NOT} move|moving|work|working|do|doing|make|making",
            "contactor|relay stays out|open|up", "coil .. does nothing",
        ),
        es=(
            "no pega|jala|entra|cierra|mete|acciona|activa|conecta|pegan|jalan",
            "contactor|rele|relay|relevador no se mueve|cierra|activa|mete|acciona|pega", "no se activa|cierra|mete|mueve",
        ),
    ),
    Cue("no_click", en=("no click|clunk|movement|pull",), es=("sin clic|click", "ni clic|click", "no hace clic|click|nada")),
    Cue(
        "motor_dead",
        en=(
            f"fan|motor|compressor|comp|condenser|blower|ofm|outdoor {NOT} run|running|runs|start|starting|spin|spinning|turn|turning|on|going|coming|come|move|moving|kick|work|working",
            "fan|motor|compressor|comp|condenser|blower|ofm unit|fan|motor|is|still|just .. dead", "fan|motor|compressor|comp|condenser|blower|ofm dead|off|stopped|idle",
            "no fan|compressor|condenser|blower|motor", "dead fan|compressor|condenser|motor",
        ),
        es=(
            "abanico|ventilador|motor|compresor|condensadora|condensador|soplador no prende|arranca|gira|trabaja|jala|enciende|camina|da|corre|funciona",
            "abanico|ventilador|motor|compresor|condensadora|condensador esta|sigue muerto|parado|muerta|parada|apagado",
            "abanico|ventilador|motor|compresor|condensadora muerto|parado|muerta|parada",
            "no prende|arranca|gira|trabaja|jala el|la abanico|ventilador|motor|compresor|condensadora",
        ),
    ),
)  # fmt: skip
"""What is said of a contactor and of what it feeds."""

SWITCHES_OFF = "breaker|breakers|disconnect|disco|pullout"
ES_SWITCHES = "breaker|pastilla|desconectador|disconnect|termico|cuchilla"
TRIPS = frozenset({"trip", "trips", "tripped", "tripping", "pops", "popped", "hold", "again", "boto", "bota", "salto", "disparo", "brinco", "tumbo"})  # fmt: skip
"""Words with which it did more than stand off."""
BREAKER_OFF = (
    Cue(
        "breaker_off",
        en=(
            f"{SWITCHES_OFF} was|were|had|turned|being|been off|out|pulled",
            f"{SWITCHES_OFF} was|were|had|got|been turned|switched|shut|flipped|left|been|thrown off|out",
            f"{SWITCHES_OFF} had been|got turned|switched|shut|flipped|left|thrown off",
            f"someone|somebody|they|customer|tenant|owner|he|she|kid|electrician|landlord had|left|shut|turned|switched|flipped|threw|pulled|turnt .. {SWITCHES_OFF} off|out",
            f"someone|somebody|they|customer|tenant|owner|he|she|kid|electrician|landlord shut|turned|switched|flipped off the|his|her|a {SWITCHES_OFF}",
            f"someone|somebody|they|customer|tenant|owner|he|she|kid|electrician|landlord had|left|shut|turned|switched|pulled|flipped the|his|her|a {SWITCHES_OFF}",
            f"found .. {SWITCHES_OFF} off|out|pulled",
        ),
        es=(
            f"{ES_SWITCHES} estaba|estaban|andaba apagado|apagada|abajo|bajado|bajada|desconectado|abierto|abierta|fuera|off|sacado",
            f"estaba|estaban apagado|apagada|abajo|bajado|bajada|desconectado|sacado el|la {ES_SWITCHES}",
            f"alguien|cliente|dueno|inquilino|electricista habia|bajo|apago|desconecto|saco .. {ES_SWITCHES}",
            f"habian|habia apagado|bajado|desconectado|sacado .. {ES_SWITCHES}",
            f"encontre .. {ES_SWITCHES} apagado|apagada|abajo|bajado|bajada|desconectado",
        ),
    ),
)  # fmt: skip
"""A breaker or disconnect that was found off; "breaker off" alone is how it is left for a dead test."""

LEGS = ("y", "y1", "y2", "w", "w1", "w2", "g", "o", "b")
"""Terminals of the control circuit that one call each is on."""
LIFTS = "lifted|lift|pulled|pull|disconnected|unhooked|removed|dropped|undid|unlanded|took|isolated"
OFF = "off|lifted|pulled|disconnected|unhooked|removed|loose|isolated|unlanded"
ES_LIFTS = "solte|levante|quite|desconecte|saque|soltando|levantando|quitando|desconectando|suelto|levanto"
ES_OFF = "suelta|suelto|levantada|levantado|desconectada|desconectado|quitada|quitado|afuera"
LEG_LIFTED = tuple(
    Cue(
        leg,
        en=(f"{LIFTS} {leg}", f"{LIFTS} the|my|that {leg}", f"{leg} {OFF}", f"{leg} wire|lead|leg|terminal {OFF}", f"{leg} wire|lead|leg is {OFF}"),
        es=(f"{ES_LIFTS} la|el {leg}", f"{ES_LIFTS} la|el cable|hilo {leg}", f"{ES_LIFTS} cable|hilo|punta {leg}", f"la|el|con|cable|hilo {leg} {ES_OFF}"),
    )
    for leg in LEGS
)  # fmt: skip
"""A leg taken off its terminal."""

CALLED = "call|called|calling|calls|demand"
CALLS = (
    Cue(
        "y",
        en=(f"cooling|cool|ac|y|y1 {CALLED}", "call|calling|calls|called for|on|in cool|cooling|ac|y|y1", "cooling|cool|y|y1 on|energized"),
        es=("con frio", "llamada|llamando|pidiendo|demanda de|para|a|en frio|enfriamiento|aire|y", "llamando|pidiendo frio|aire", "con llamada en y", "con la y puesta|llamada"),
    ),
    Cue(
        "w",
        en=(f"heating|heat|w|w1 {CALLED}", "call|calling|calls|called for|on|in heat|heating|w|w1", "heat|w|w1 energized"),
        es=("con w|calor", "llamada|llamando|pidiendo|demanda de|para|a|en calor|calefaccion|w", "llamando|pidiendo calor|calefaccion"),
    ),
    Cue("g", en=(f"fan|g {CALLED}", "call|calling|calls|called for|on fan|g", "g energized"), es=("llamada|llamando|pidiendo de|para|a|en abanico|ventilador|g",)),
    Cue("o", en=(f"o {CALLED}", "o energized"), es=("llamada en o",)),
)  # fmt: skip
"""A call that is made while R to C is read."""

INTO = frozenset({"in", "into", "to", "going in", "coming in", "going into", "going to", "goes to", "before", "ahead of", "ahead", "upstream", "upstream of", "entering", "feeding", "top", "hitting", "input", "entrada", "entran", "entra", "entrando", "antes", "llega", "llegan", "hasta", "power in", "voltage in", "volts in"})  # fmt: skip
OUT_OF = frozenset({"out", "out of", "coming out", "going out", "coming out of", "after", "past", "beyond", "leaving", "downstream", "bottom", "behind", "output", "salida", "salen", "sale", "saliendo", "despues", "pasando", "power out", "voltage out", "volts out"})  # fmt: skip
"""Words for the fed and for the other side of a part."""

FED_SIDES = frozenset({"line side", "lineside", "supply side", "hot side", "r side", "lado de linea"})
OTHER_SIDES = frozenset({"load side", "lado de carga"})
"""Sides of a part that have names of their own."""

LINE_SIDE = frozenset({"main", "mains", "cartridge", "disconnect", "disco", "high voltage", "high volt", "hv", "line voltage", "input", "supply", "principal", "entrada"})  # fmt: skip
"""Words before "fuse" that put it on the line side."""
LOW_SIDE = ("24", "low", "lv", "control", "board", "blade", "secondary", "sec", "atc", "tarjeta", "bajo", "secundario", "baja")
"""Words inside a name for a fuse that put it on the 24 V side."""
BLOWN = frozenset({"blown", "blew", "popped", "gone", "burnt", "burned", "out", "dead", "bad", "shot", "toast", "fried", "opened", "blow", "pop", "volado", "quemado", "fundido", "tronado", "malo", "volo", "trono", "quemo", "fundio", "botado"})  # fmt: skip
"""What is said of a fuse that opened."""
OPEN_WORDS = frozenset({"open", "opened", "tripped", "abierto", "abierta", "abrio", "disparado", "botado", "brincado", "salto"})
CLOSED_WORDS = frozenset({"closed", "made", "shut", "cerrado", "cerrada", "cerrados", "cerro", "cerradas"})
"""What is told of a switch in words."""
