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
            "bupkis", "nuthin", "no volt", "goose egg", "isnt putting out anything", "isnt putting anything out",
            "isnt reading anything", "isnt showing anything", "isnt giving me anything", "isnt showing any voltage",
            "isnt putting out any voltage", "isnt reading any voltage", "isnt getting any volts", "isnt producing anything",
            "isnt making any voltage", "isnt getting squat", "not putting out anything", "not putting anything out",
            "not reading anything", "not showing anything", "not giving me anything", "not showing any voltage",
            "not putting out any voltage", "not reading any voltage", "not getting any volts", "not producing anything",
            "not making any voltage", "not getting squat", "aint putting out anything", "aint putting anything out",
            "aint reading anything", "aint showing anything", "aint giving me anything", "aint showing any voltage",
            "aint putting out any voltage", "aint reading any voltage", "aint getting any volts", "aint producing anything",
            "aint making any voltage", "aint getting squat", "doesnt put out anything", "wont put out anything",
            "doesnt put anything out", "wont put anything out", "doesnt read anything", "wont read anything",
            "doesnt show anything", "wont show anything", "doesnt show any voltage", "wont show any voltage",
            "doesnt have any voltage", "wont have any voltage", "doesnt have voltage", "wont have voltage",
            "doesnt make any voltage", "wont make any voltage", "doesnt produce anything", "wont produce anything",
            "puts out nothing", "putting out nothing", "nothing coming out of the", "no output voltage", "reads nothing",
            "shows nothing", "flat zero", "a big fat zero", "big fat zero", "not one volt", "not a volt", "absolutely nothing",
            "no ac", "squat", "diddly", "zero volts at all", "no potential", "not getting anything", "not getting any voltage",
            "not getting voltage", "not getting power", "not getting any power", "isn't getting power", "doesn't have power",
            "has no power", "has no voltage", "don't have any voltage", "don't have voltage", "without power",
        ),
        es=(
            "no hay voltaje", "sin voltaje", "no tiene voltaje", "no hay corriente", "no tiene corriente", "no llega voltaje",
            "no llega corriente", "no le llega voltaje", "no le llega corriente", "no llega nada", "no hay nada",
            "ningun voltaje", "no da nada", "no sale nada", "no sale voltaje", "no me da nada", "no marca nada",
            "no marca voltaje", "no hay volts", "no da voltaje", "cero voltaje", "no tiene volts", "no tiene nada",
            "no hay luz", "nadita", "no saca nada", "no saca voltaje", "no entrega nada", "no entrega voltaje",
            "no produce nada", "esta en cero", "nada de voltaje", "no manda nada", "no manda voltaje", "ni un volt",
            "no sale corriente", "no recibe nada", "no recibe voltaje", "no le llega nada",
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
