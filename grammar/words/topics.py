"""What a question is narrowed down to, told by turns of phrase."""

from grammar.words.row import Cue

TOPICS = (
    Cue(
        "line_fuse",
        en=(
            "primary|line|pri|input|supply fuse|fuses|fusing|breaker|protection", "line side fuse|breaker|protection",
            "primary side fuse|breaker|protection", "line|high voltage fuse|breaker|protection",
            "fuse|breaker|protection on|for|in|at|to the|my|its primary|line|supply|input",
            "fuse|breaker|protection on|for|in primary|line", "fuse|breaker on|for|in the 120|208|230|240|277|480",
            "120|208|230|240|277|480 side", "120|208|230|240|277|480 v|volt side", "fuse|breaker on|for 120|208|230|240|277|480", "protect .. primary|line", "fuse the primary|line",
        ),
        es=(
            "fusible|breaker|proteccion de|del|en|para primario|linea", "fusible|breaker|proteccion en|para el|la primario|linea",
            "fusible|breaker primario", "fusible|breaker del|en lado de linea", "fusible|breaker de|en la linea", "lado de 120|208|230|240|277|480", "proteger .. primario|linea",
        ),
    ),
    Cue(
        "low_fuse",
        en=(
            "secondary|sec|control|board fuse|fuses|fusing|breaker|protection", "low voltage fuse|breaker|protection",
            "fuse|breaker|protection on|for|in|at|to the|my|its secondary|sec|24|board|low|controls|control|r",
            "fuse|breaker on|for|in r|secondary|24", "24 volt fuse", "24v fuse", "24 v side", "fuse the secondary",
            "protect .. secondary",
        ),
        es=(
            "fusible|breaker|proteccion de|del|en|para secundario|24|tarjeta|r",
            "fusible|breaker|proteccion de|en|para el|la|los secundario|24|tarjeta", "lado de 24", "fusible|breaker secundario",
        ),
    ),
    Cue(
        "bigger_unit",
        en=(
            "same box|enclosure|panel|cabinet|spot|place", "box|spot|place|enclosure where", "where .. 20|30|40|50|60|75 .. was", "in place of", "instead of", "step up to|from", "upsize",
            "replace .. 20|30|40|50|60|75|100 .. with .. 20|30|40|50|60|75|100|150|200",
            "swap .. 20|30|40|50|60|75|100 .. for|with|to .. 20|30|40|50|60|75|100|150|200",
            "go|going from .. 20|30|40|50|60|75 .. to", "higher|bigger|larger|more va", "put .. 50|60|75|100|150 .. where", "now|then putting|installing", "putting|installing a 50|60|75|100|150",
            "was .. 20|30|40|50|60|75 .. put in|install .. 50|60|75|100|150",
        ),
        es=(
            "misma caja|lugar", "mismo lugar|gabinete|espacio", "en lugar de|del", "en vez de|del",
            "cambiar|cambio .. 20|30|40|50|60|75|100 .. por .. 20|30|40|50|60|75|100|150|200",
            "reemplazar|reemplazo .. 20|30|40|50|60|75|100 .. con|por .. 20|30|40|50|60|75|100|150|200", "de mas va", "mas va",
            "donde estaba", "subir a|de",
        ),
    ),
    Cue(
        "multi_tap",
        en=(
            "replace|replacing|swap|swapping|sub|substitute .. multi-tap|multitap", "with|for|to a|the multi-tap|multitap",
            "use|put|install|run|fit .. multi-tap|multitap", "have|has|stock|got|is a|the multi-tap|multitap", "only have|got|stock .. multi-tap|multitap|universal",
            "multi-tap|multitap .. ok|okay|work|fit|do|instead|replace|universal", "universal transformer|xfmr",
        ),
        es=(
            "por|con un multi-tap|multitap|multivoltaje", "por|con uno multi-tap|multitap|multivoltaje",
            "poner|usar|instalar|cambiar|reemplazar .. multi-tap|multitap|multivoltaje",
            "multi-tap|multitap|multivoltaje .. sirve|puedo|queda|lugar", "transformador|trafo universal",
        ),
    ),
    Cue(
        "unit_50_hertz",
        en=("50 hz|hertz|cycle .. on|at|to .. 60", "50hz .. on|at|to .. 60"),
        es=("50 hz|hertz|ciclos .. en|a .. 60",),
    ),
    Cue(
        "unit_60_hertz",
        en=("60 hz|hertz|cycle .. on|at|to .. 50", "60hz .. on|at|to .. 50"),
        es=("60 hz|hertz|ciclos .. en|a .. 50",),
    ),
    Cue("both_hertz", en=("50 60 hz|hertz|cycle", "60 50 hz|hertz"), es=("50 60 hz|hertz|ciclos",)),
    Cue(
        "class_2",
        en=("class 2|two|ii", "cl 2", "class2", "over class"),
        es=("clase 2|dos|ii", "clase2"),
    ),
    Cue(
        "amps",
        en=(
            "primary|pri|secondary|sec|line|input|output|full-load|rated amps|amp|amperage|current|amp-draw", "primary|secondary side amps|current|amperage",
            "amps|amp|amperage|current on|of|at|in|for|from|to primary|pri|secondary|sec|line|input", "how many|much amps|amp|current|amperage", "what amps|amperage|current",
            "amps|amperage|current on|of|at|in|for|from|to the|my|its|each primary|pri|secondary|sec|line|input|side", "full load amps|current",
            "whats|what's the amps|amperage|current|amp draw", "what .. amp draw", "how many amps",
        ),
        es=(
            "cuantos|cuanto amps|amperes|amperios|amperaje|corriente", "que amperaje|corriente", "amps|amperes|amperios|amperaje|corriente del|en|de|en-el|por primario|secundario|linea",
            "amps|amperes|amperios|amperaje|corriente en el|la primario|secundario|linea",
        ),
    ),
    Cue(
        "capacity",
        en=(
            "how many .. on|can|will|could a|the|my|this|one|20|30|40|50|60|75|100", "how many .. can|could|will i|we hang|put|run|add|hook|feed|power", "how many .. run|feed|power|handle|carry|hold|take",
            "how much can|will|could|does .. carry|handle|take|run|feed|power|hold", "how much load|va .. on|can|will|carry|handle|put|hang", "max|maximum|most load|va|devices .. on|for|of|a", "max|maximum|most .. can|will carry|handle|hang|put|take",
        ),
        es=(
            "cuantos|cuantas .. aguanta|carga|alcanza|puede|puedo|caben|lleva|soporta", "cuantos|cuantas .. de .. aguanta|carga|lleva|soporta|alcanza", "cuanta carga|va .. aguanta|puede|puedo|soporta|lleva", "carga maxima", "cuanto aguanta|carga|soporta",
        ),
    ),
    Cue(
        "apart",
        en=(
            "never|not|dont|don't|wont|won't .. same-time|together|once", "cant|can't|cannot .. together|same-time", "one or the other", "either or",
        ),
        es=("nunca .. juntos|juntas|vez|mismo-tiempo", "no .. al mismo tiempo|vez", "no .. juntos|juntas", "uno u otro", "una u otra"),
    ),
    Cue(
        "added",
        en=("added", "add a|an|another|one", "adding"),
        es=("agregue", "agregando", "agregar", "agrego", "le puse otro|otra", "le pongo otro|otra"),
    ),
    Cue(
        "shared_common",
        en=(
            "same|shared|one|single|only common", "share|shares|sharing .. common", "common is|wire|conductor shared",
            "common shared", "one c|com wire", "1 common",
        ),
        es=(
            "mismo|solo|unico comun", "comun compartido|compartida", "comparten|comparte|compartiendo .. comun",
        ),
    ),
)  # fmt: skip
"""Each topic of core with the phrases that tell it."""
