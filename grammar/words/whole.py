"""What a whole message of one or a few words asks for."""

from grammar.words.row import Cue

WHOLE = (
    Cue(
        "yes",
        en=(
            "yes", "yep", "yeah", "yup", "ya", "y", "sure", "correct", "right", "that's right", "thats right", "affirmative",
            "yes sir", "ok", "okay", "si", "uh huh", "you got it", "yes it is", "that's it", "thats it", "exactly", "yessir",
            "yes please", "sounds right", "that is right", "ok yes",
        ),
        es=(
            "claro", "asi es", "correcto", "exacto", "simon", "eso es", "si senor", "si asi es", "afirmativo", "sip",
            "si claro", "eso", "dale", "exactamente", "es correcto",
        ),
    ),
    Cue(
        "no",
        en=(
            "no", "nope", "nah", "negative", "wrong", "not right", "that's wrong", "thats wrong", "no sir", "incorrect",
            "nuh uh", "no it isn't", "no it's not", "no its not",
        ),
        es=("no es", "negativo", "no senor", "incorrecto", "nel", "para nada", "no es eso", "esta mal", "nop"),
    ),
    Cue(
        "next",
        en=(
            "should i replace it", "should i change it", "should i swap it", "is it bad", "is it good", "is it shot", "is it toast", "is it ok", "is it dead", "is the transformer bad", "is the transformer good", "is the xfmr bad", "is the transformer shot",
            "is the transformer ok", "good or bad", "bad or good", "it was the transformer right", "so its the transformer", "so it's the transformer", "is it the transformer", "does it need replaced", "is it the xfmr", "so is it bad", "replace it", "is that bad", "is this bad", "is this thing toast",
        ),
        es=(
            "lo cambio", "la cambio", "esta malo", "esta bueno", "es malo", "esta malo el trafo", "esta malo el transformador", "sirve o no", "sirve o no sirve", "es el transformador", "es el trafo", "esta bien o mal", "lo reemplazo", "que tiene", "si sirve",
        ),
    ),
    Cue(
        "next",
        en=("and then", "then", "next", "go", "continue", "go on", "and", "so", "ready", "k next"),
        es=("siguiente", "sigue", "adelante", "dale sigue", "continua"),
    ),
    Cue(
        "help",
        en=("hi", "hello", "hey", "yo", "good morning", "howdy", "sup"),
        es=("hola", "buenas", "buenos dias", "que tal", "que onda", "buenas tardes"),
    ),
    Cue(
        "undo",
        en=(
            "undo", "/undo", "scratch that", "strike that", "nevermind", "never mind", "nvm", "cancel", "delete", "oops",
            "take it back", "forget that", "forget it", "ignore that", "scratch that last one", "undo last", "scratch it",
            "undo it", "delete it",
        ),
        es=("deshacer", "borra eso", "cancela", "borrar", "olvidalo", "quitalo", "borra"),
    ),
    Cue("why", en=("why", "why?", "how come", "really", "you sure"), es=("por que", "porque", "de veras", "seguro")),
    Cue("close_job", en=("done", "finished", "complete"), es=("listo", "termine")),
    Cue("report", en=("report", "/report"), es=("reporte", "/reporte")),
    Cue(
        "history",
        en=("history", "/history", "log", "/log", "readings", "/readings", "show"),
        es=("historial", "lecturas", "/historial"),
    ),
    Cue("forget", en=("/forget", "forget", "/delete"), es=("/olvida",)),
    Cue(
        "cannot",
        en=("can't", "cant", "skip", "can't do it", "pass", "no can do", "cannot"),
        es=("no puedo", "no pude", "paso"),
    ),
    Cue("all_well", en=("all well", "i'm ok", "all good", "fine"), es=("bien", "todo bien")),
    Cue("size", en=("size", "/size"), es=("tamano",)),
    Cue("fuse", en=("/fuse",)),
    Cue("tap", en=("/tap",)),
    Cue("which_lead", en=("leads", "/leads"), es=("cables",)),
    Cue("language", en=("english", "spanish"), es=("espanol", "ingles")),
    Cue("settings", en=("/settings",)),
    Cue("help", en=("/help",), es=("/ayuda",)),
)  # fmt: skip
