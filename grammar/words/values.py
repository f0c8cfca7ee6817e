"""What is read without a figure: open, nothing, and the words that have no value at all."""

from grammar.words.row import Pattern, Words

VALUES = (
    Words(
        "value", "open",
        en=(
            "open", "opened", "ol", "oh l", "o.l.", "o.l", "o l", "oh el", "over limit", "over load reading", "overload reading", "0l",
            "0.l", "0l.", "ol.", "infinite", "infinity", "inf", "infinit", "infinate", "infinite ohms", "no continuity",
            "no continutiy", "no cont", "wide open", "dead open", "open circuit reading", "open line", "over range",
            "overrange", "out of range", "no reading at all", "not continuous", "open winding", "burned open", "burnt open",
            "is open", "completely open", "totally open", "no path", "clear", "isolated from", "opens", "broken open",
            "no continuity at all", "overlimit", "off scale", "out of limits", "open loop", "no beep", "didn't beep",
            "doesn't beep", "does not beep", "∞",
        ),
        es=(
            "abierto", "abierta", "abiertos", "abiertas", "infinito", "sin continuidad", "no tiene continuidad",
            "no hay continuidad", "no da continuidad", "fuera de rango", "fuera de escala", "no marca continuidad", "no pita",
            "libre a", "libres a", "limpios a", "limpia a", "limpias a", "esta abierto", "esta abierta", "bien abierto", "completamente abierto", "todo abierto",
            "no tienen continuidad", "sin paso", "limpio a",
        ),
    ),
    Words(
        "value", "nothing",
        en=(
            "nothing", "nothin", "nada", "zip", "zilch", "nada thing", "no voltage", "no volts", "no power", "no juice",
            "no voltage at all", "no power at all", "no reading", "nothing at all", "zip zero", "not a thing", "no output",
            "bupkis", "nuthin", "no volt", "goose egg", "puts out nothing", "putting out nothing", "nothing coming out of the", "no output voltage", "reads nothing",
            "shows nothing", "flat zero", "a big fat zero", "big fat zero", "not one volt", "not a volt", "absolutely nothing",
            "no ac", "squat", "diddly", "zero volts at all", "no potential", "without power",
        ),
        es=(
            "no hay luz", "nadita", "esta en cero", "nada de voltaje", "ni un volt",

        ),
    ),
    Words(
        "value", "short",
        en=("dead short", "direct short", "full short", "bolted short", "solid short", "dead shorted"),
        es=("corto directo", "corto completo", "corto franco", "en corto directo", "puro corto"),
    ),
    Words(
        "novalue", "good",
        en=(
            "good", "tests good", "checks good", "checks out", "tests ok", "ok", "okay", "fine", "beeps", "beep", "beeped",
            "beeping", "buzzes out", "rings out", "rings", "has continuity", "continuity", "have continuity", "good continuity",
            "tone", "tones", "tones out", "tests out", "tested good", "looks good", "ohmed good", "ohms out good",
            "ohms out fine", "ohms out ok", "ohms out", "shorted", "shorted out", "short", "shorts", "shorted together",
            "is shorted", "reads short", "low", "high", "normal", "good reading", "some voltage", "some ohms", "goes to ground",
            "shorts to ground", "leaks", "grounded", "shows continuity", "got continuity", "reads continuity", "passes",
            "chirps", "bad", "shot", "toast", "fried", "has voltage", "has power", "got power", "getting power", "burned up",
            "cooked", "weak",
        ),
        es=(
            "bien", "bueno", "buena", "pita", "suena", "tiene continuidad", "hay continuidad", "continuidad", "da continuidad",
            "esta bien", "esta bueno", "marca continuidad", "en corto", "corto", "cortocircuito", "aterrizado", "aterrizada",
            "malo", "mala", "quemado", "quemada", "tiene voltaje", "hay voltaje", "tiene corriente", "bajo", "alto", "si tiene",
            "si pita", "correcto",
        ),
    ),
)  # fmt: skip

VOLTAGE = (
    "voltage",
    "any voltage",
    "volts",
    "any volts",
    "power",
    "any power",
    "any juice",
    "a volt",
    "one volt",
    "a single volt",
    "any potential",
    "any output",
    "no voltage",
    "no power",
)
ANYTHING = (*VOLTAGE, "anything", "a thing", "squat", "jack", "diddly", "nothing", "nada")
GIVES = ("put out", "read", "show", "give me", "get", "produce", "make", "measure", "send", "push out", "kick out", "register")
GIVING = (
    "putting out",
    "putting",
    "reading",
    "showing",
    "giving me",
    "getting",
    "producing",
    "making",
    "measuring",
    "sending",
    "pushing out",
    "kicking out",
    "registering",
)
PATTERNS = (
    Pattern("value", "nothing", (("zero", "0", "cero"), ("voltage", "power", "juice", "output", "potential", "voltaje", "corriente", "output voltage"), ("", "at all"))),
    Pattern("value", "nothing", (("doesnt", "dont", "wont", "didnt", "not"), GIVES, ANYTHING), "en"),
    Pattern("value", "nothing", (("isnt", "aint", "wasnt", "not"), GIVING, ANYTHING), "en"),
    Pattern("value", "nothing", (("doesnt", "dont", "wont", "didnt", "aint", "not"), ("have", "see", "got", "carry", "find", "having", "seeing", "carrying", "finding"), VOLTAGE), "en"),
    Pattern("value", "nothing", (("wont", "doesnt", "not", "isnt", "aint"), ("put", "putting"), ("anything", "any voltage", "any power"), ("out",)), "en"),
    Pattern("value", "nothing", (("has", "got", "have", "shows", "reads", "gets", "getting", "reading", "showing", "gives me", "puts out"), ("no voltage", "no volts", "no power", "no juice", "zero voltage", "nothing", "nada", "zip", "zilch", "squat", "no output", "no potential"), ("", "at all", "whatsoever")), "en"),
    Pattern(
        "value", "nothing",
        (
            ("no",), ("", "me", "le", "nos", "les", "se"),
            ("hay", "tiene", "trae", "llega", "llegan", "da", "dan", "sale", "salen", "saca", "marca", "marcan", "entrega", "produce", "manda", "recibe", "reciben", "tengo", "lee", "mide", "leo", "mido", "entra", "esta llegando", "esta saliendo", "esta dando", "esta recibiendo", "registra", "aparece", "muestra", "arroja", "veo", "tienen", "traen", "pasa", "genera"),
            ("voltaje", "luz", "nada de luz", "ni luz", "ningun voltaje", "nada de voltaje", "volts", "ni un volt", "ni un voltio", "voltios", "corriente", "nada de corriente", "energia", "tension", "potencial", "alimentacion"),
        ),
        "es",
    ),
    Pattern(
        "value", "nothing",
        (
            ("no",), ("", "me", "le", "nos", "les"),
            ("hay", "tiene", "trae", "llega", "llegan", "da", "dan", "sale", "salen", "saca", "marca", "marcan", "entrega", "produce", "manda", "recibe", "reciben", "lee", "mide", "leo", "mido", "entra", "esta llegando", "esta saliendo", "esta dando", "esta recibiendo", "registra", "arroja"),
            ("nada", "nada de nada", "absolutamente nada"),
        ),
        "es",
    ),
    Pattern("value", "nothing", (("sin",), ("voltaje", "nada de voltaje", "ningun voltaje", "tension", "energia alguna", "alimentacion")), "es"),
)  # fmt: skip
"""Denials of voltage that are put together: the denial, the verb, what is missing."""
