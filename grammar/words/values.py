"""What is read without a figure: open, nothing, and the words that have no value at all."""

from grammar.words.row import Words

VALUES = (
    Words(
        "value", "open",
        en=(
            "open", "opened", "ol", "o.l.", "o.l", "o l", "oh el", "over limit", "over load reading", "overload reading", "0l",
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
            "libre a", "esta abierto", "esta abierta", "bien abierto", "completamente abierto", "todo abierto",
            "no tienen continuidad", "sin paso", "limpio a",
        ),
    ),
    Words(
        "value", "nothing",
        en=(
            "nothing", "nothin", "nada", "zip", "zilch", "nada thing", "no voltage", "no volts", "no power", "no juice",
            "no voltage at all", "no power at all", "no reading", "nothing at all", "zip zero", "not a thing", "no output",
            "bupkis", "nuthin", "no volt", "goose egg", "no ac", "squat", "diddly", "zero volts at all", "no potential",
            "not getting anything", "not getting any voltage", "not getting voltage", "not getting power",
            "not getting any power", "isn't getting power", "doesn't have power", "has no power", "has no voltage",
            "don't have any voltage", "don't have voltage", "without power",
        ),
        es=(
            "no hay voltaje", "sin voltaje", "no tiene voltaje", "no hay corriente", "no tiene corriente", "no llega voltaje",
            "no llega corriente", "no le llega voltaje", "no le llega corriente", "no llega nada", "no hay nada",
            "ningun voltaje", "no da nada", "no sale nada", "no sale voltaje", "no me da nada", "no marca nada",
            "no marca voltaje", "no hay volts", "no da voltaje", "cero voltaje", "no tiene volts", "no tiene nada",
            "no hay luz", "nadita",
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
