"""Where a meter is put: windings, terminals, parts, and the iron."""

from grammar.words.row import Pattern, Words

PLACES = (
    Words(
        "place", "primary",
        en=(
            "pri", "prim", "prime", "prmry", "primary", "primry", "primaries", "pry", "primary side", "primary winding",
            "pri side", "pri winding", "primary coil", "pri coil", "high side", "high voltage side",
            "line side of the transformer", "line side of the xfmr", "hv side", "primary of the transformer",
            "primary of the xfmr", "transformer primary", "xfmr primary", "xfmr pri", "transformer pri", "input side",
            "input of the transformer", "primary leads", "primary terminals", "primary wires",
        ),
        es=(
            "primario", "primaria", "primarios", "lado primario", "devanado primario", "bobinado primario",
            "embobinado primario", "bobina primaria", "lado de alta", "primario del transformador", "primario del trafo",
            "lado de entrada",
        ),
    ),
    Words(
        "place", "secondary",
        en=(
            "sec", "secd", "secnd", "scndry", "secondary", "secondry", "secondaries", "2ndary", "secondary side",
            "secondary winding", "sec side", "sec winding", "secondary coil", "sec coil", "low side of the transformer",
            "24 volt side", "24v side", "24 side", "lv side", "low volt side", "low voltage side",
            "secondary of the transformer", "secondary of the xfmr", "transformer secondary", "xfmr secondary", "xfmr sec",
            "transformer sec", "output side", "transformer output", "xfmr output", "secondary leads", "secondary terminals",
            "secondary wires", "load side of the transformer", "load side of the xfmr",
        ),
        es=(
            "secundario", "secundaria", "secundarios", "secun", "lado secundario", "devanado secundario", "bobinado secundario",
            "embobinado secundario", "bobina secundaria", "lado de baja", "lado de 24", "secundario del transformador",
            "secundario del trafo", "salida del transformador", "salida del trafo", "lado de salida",
        ),
    ),
    Words(
        "place", "line",
        en=(
            "line", "line volts", "line voltage", "line side", "lineside", "disco", "disconnect", "disconnect switch",
            "line terminals", "incoming", "incoming power", "line in", "mains", "main power", "pull out", "pullout",
            "incoming line", "line lugs", "breaker panel", "load side of the disconnect", "load side of the disco",
            "line side of the contactor", "l to n", "l-n", "l/n", "l to l", "l-l", "line to line", "line to neutral", "leg to leg",
            "leg to neutral", "phase to phase", "phase to neutral", "hot to neutral", "hot leg to neutral", "hot to hot",
            "hot leg to hot leg", "between the two legs", "between legs", "across the legs", "leg to the other leg",
        ),
        es=(
            "linea", "desconectador", "desconectador principal", "voltaje de linea", "linea de entrada", "terminales de linea",
            "acometida", "lado de linea", "alimentacion de linea", "fase a fase", "fase a neutro", "linea a linea",
            "linea a neutro", "vivo a neutro", "entre fases", "entre las fases", "entre las dos fases", "en el disconnect", "caja de desconexion",
        ),
    ),
    Words(
        "place", "control",
        en=(
            "rc", "control voltage", "control volts", "control power at the board", "control circuit volts", "thermostat wires",
            "r and c at the board", "r and c at the stat", "low voltage terminals",
        ),
        es=("voltaje de control", "voltaje del control"),
    ),
    Words(
        "place", "coil",
        en=(
            "coil", "coils", "contactor coil", "relay coil", "contactor coil terminals", "coil terminals", "solenoid coil",
            "valve coil", "coil of the contactor", "coil on the contactor", "reversing valve coil", "fan relay coil",
            "coil of the relay", "relay's coil", "contactor's coil",
        ),
        es=(
            "bobina", "bobina del contactor", "bobina del relay", "bobina del rele", "bobina del relevador",
            "bobina de la valvula", "bobina de contactor", "bobina de relay",
        ),
    ),
    Words(
        "place", "fuse",
        en=(
            "fuse", "fuses", "fuze", "slow blow", "slo blo", "slow blo", "slo-blo", "fast blow", "fast acting", "time delay fuse", "atc fuse", "fused at", "fused with", "fused for", "fused", "fuse holder", "fuseholder",
            "low voltage fuse", "lv fuse", "low volt fuse", "24v fuse", "24 volt fuse", "control fuse", "board fuse",
            "blade fuse", "inline fuse", "in line fuse", "glass fuse", "low voltage breaker", "transformer breaker",
            "xfmr breaker", "fuse on the board", "fuse link", "secondary fuse",
        ),
        es=(
            "fusible", "fusibles", "fusil", "portafusible", "fusible de la tarjeta", "fusible de 24", "fusible de control",
            "fusible del secundario",
        ),
    ),
    Words(
        "place", "load",
        en=(
            "load", "loads", "control circuit", "load side", "into the load", "house side", "the house side", "field side", "house wiring", "into the house", "into the field", "out to the house", "going to the house", "to the house", "field wires", "field wiring",
            "field wires r to c", "into the control circuit", "low voltage circuit", "the 24v circuit", "control wiring",
            "24v circuit",
        ),
        es=("circuito de control", "lado de campo", "lado del campo", "hacia la casa", "lado de la casa", "hacia el campo", "hacia la carga", "carga", "la carga", "lado de la carga", "lado de carga", "cableado de campo"),
    ),
    Words(
        "place", "ground",
        en=(
            "ground", "gnd", "grnd", "grd", "case", "chassis", "chasis", "core", "frame", "earth", "cabinet", "cabinet metal",
            "housing", "sheet metal", "iron", "shell", "the iron", "metal case", "equipment ground", "bare metal", "casing",
            "laminations", "bracket", "the box",
        ),
        es=("tierra", "chasis", "gabinete", "nucleo", "carcasa", "caja metalica", "lamina", "masa"),
    ),
    Words(
        "place", "primary_secondary",
        en=(
            "between windings", "between the windings", "winding to winding", "between the two windings",
            "between primary and secondary windings",
        ),
        es=("entre devanados", "entre los devanados", "entre bobinados", "entre los bobinados", "de devanado a devanado"),
    ),
    Words("inout", "primary", en=("in", "going in", "coming in", "input", "power in", "voltage in", "volts in"), es=("entrada", "entran", "entrando")),
    Words("inout", "secondary", en=("out", "going out", "coming out", "output", "power out", "voltage out", "volts out"), es=("salida", "salen", "saliendo")),
    Words(
        "winding", "winding",
        en=("winding", "windings", "wdg", "side", "leads of"),
        es=("devanado", "bobinado", "embobinado", "lado"),
    ),
    Words(
        "transformer", "transformer",
        en=(
            "transformer", "xfmr", "xformer", "xfrmr", "tranny", "trans", "transfomer", "tranformer", "transformers", "xfmrs",
            "control transformer", "xfrm", "transf", "xformers", "stepdown", "units",
        ),
        es=("transformador", "unidades", "trafo", "transformadores", "trafos", "transfo"),
    ),
)  # fmt: skip
PATTERNS = (
    Pattern(
        "place", "fuse",
        (
            ("low volt", "low voltage", "lv", "24v", "24 volt", "control", "control circuit", "transformer", "xfmr", "secondary", "sec", "board", "push button", "inline", "in line", "resettable", "little", "glass", "blade", "automotive", "ato"),
            ("breaker", "circuit breaker", "cb", "fuse", "fuses"),
        ),
        "en",
    ),
    Pattern("place", "fuse", (("breaker", "fusible", "pastilla"), ("de 24", "de bajo voltaje", "del transformador", "del trafo", "del secundario", "de control", "de la tarjeta", "de baja", "del control")), "es"),
)  # fmt: skip
"""Places that are put together."""
"""Places by meaning; `binding/places.py` knows which measure each has for volts, ohms and amps."""
