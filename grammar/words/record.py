"""Words that say what is to be forgotten, that the unit was repaired, and what no job is called by."""

OF_THE_READINGS = frozenset(
    {"readings", "reading", "numbers", "measurements", "values", "lecturas", "numeros", "medidas", "mediciones", "valores"}
)
OF_THE_JOB = frozenset(
    {"job", "unit", "house", "place", "call", "this", "trabajo", "casa", "unidad", "equipo", "servicio", "este", "esta"}
)  # fmt: skip
OF_EVERYTHING = frozenset({"data", "datos", "jobs", "trabajos", "messages", "mensajes", "photos", "fotos"})
"""Words that decide over the others: "all the data of this job" is too much to be sure, so the question names everything."""

CLOSES = frozenset({"close", "closing", "cierra", "cerrar", "cierro", "cierre"})
"""First words that close a job where its name stands behind them."""
DELETES = frozenset({"forget", "delete", "erase", "scrap", "trash", "drop", "borra", "olvida", "elimina", "descarta"})
"""First words that delete a job where a word like "rtu" begins its name behind them."""
NO_JOB = frozenset(
    {
        "enough", "by", "call", "to", "up", "now", "tight", "cerca", "please", "thanks", "it", "this", "that", "me", "us", "today",
        "the", "a", "an", "office", "customer", "owner", "boss", "friday", "monday", "pdf", "everything", "all", "here",
    }
)  # fmt: skip
"""Words that are no name of a job by themselves."""
GENERIC = frozenset({"job", "unit", "trabajo", "unidad", "equipo", "school", "store", "building"})
"""Words that stand before a name and are none."""
BEFORE_CALLING = frozenset({
    "", "ok", "okay", "hey", "now", "lets", "let's", "let", "me", "us", "i", "im", "i'm", "am", "we", "were", "please", "can", "could", "you", "going", "go", "gonna", "to", "want", "need", "then", "and", "so", "alright", "yes",
    "oye", "ahora", "vamos", "por", "favor", "ya", "bueno", "quiero", "puedes", "voy", "listo", "y", "si",
})  # fmt: skip
"""Words that may stand before those that call a job; behind any other they are part of a tale."""
NO_NAMES = frozenset({"place", "transformer", "device", "unit", "heading", "winding", "condition", "colour", "value", "reads"})
"""Kinds of words that no job's name begins with."""
NO_NAME = frozenset({
    "ohms", "volts", "amps", "ac", "dc", "cool", "heat", "cooling", "heating", "auto", "emergency", "work", "shop", "truck", "van", "low", "high", "another", "different", "new", "my", "it", "that", "this", "square", "normal", "where", "what", "running",
    "techo", "medir", "probar", "revisar", "checar", "tomar", "poner", "prender", "apagar", "camioneta", "troca", "lo", "frio", "calor",
})  # fmt: skip
"""Words that no job's name begins with."""

REPAIRED = frozenset(
    {
        "replaced", "swapped", "installed", "changed", "reemplace", "reemplazado", "reemplazada", "instale", "instalado",
        "instalada", "cambie", "cambiado", "cambiada",
    }
)  # fmt: skip
"""What was done to the transformer, told at the start of a message."""
WITH_IT = frozenset(
    {"the", "a", "an", "with", "it", "its", "old", "bad", "out", "new", "el", "la", "lo", "un", "una", "ya", "se", "por", "con"}
)
"""Words between it and what was replaced."""
TRANSFORMER = frozenset({"transformer", "xfmr", "xformer", "trafo", "transformador", "tx", "unit", "one", "uno"})
NEW = frozenset({"new", "nuevo", "nueva"})
IS_IN = frozenset({"in", "installed", "instalado", "puesto", "landed", "wired"})
IN_STOCK = frozenset({"truck", "van", "shop", "stock", "trailer", "car", "bag", "camioneta", "troca", "taller", "bodega"})
"""Where a new one lies that is not in yet."""
AFTER_CLOSING = frozenset(
    {
        *REPAIRED, "remade", "redid", "respliced", "empalme", "splice", "rehice", "moved", "landed", "fixed", "repaired", "rewired", "cleared", "cleaned", "tightened", "retapped", "spliced",
        "fitted", "reset", "put", "added", "movi", "movido", "arregle", "arreglado", "repare", "reparado", "limpie", "aprete",
        "puse", "puesto", "nuevo", "new",
    }
)  # fmt: skip
"""What was done to the unit, told with the word that closes the job."""
LONG_AGO = frozenset(
    {
        "yesterday", "last", "ago", "already", "again", "before", "week", "weeks", "month", "months", "year", "years", "been",
        "twice", "previous", "previously", "once", "guy", "should", "will", "could", "can", "if", "not", "never", "still", "got",
        "ayer", "semana", "mes", "meses", "ano", "anos", "vez", "veces", "pasado", "pasada", "antes", "hace", "debo", "si",
        "nunca", "todavia", "otra", "mismo", "same", "should've", "havent", "no", "but", "pero",
    }
)  # fmt: skip
"""Words beside which a repair is history, a plan or in doubt: the readings are of the unit as it is."""

SHUT = frozenset({
    "disconnect", "breaker", "contactor", "relay", "contact", "contacts", "door", "doors", "panel", "lid", "cover", "valve", "damper", "float", "limit", "knife", "circuit", "stat", "thermostat", "s", "stays", "stayed", "stuck", "held", "normally", "pulled",
})  # fmt: skip
"""What is closed, and no job: "disconnect closed"."""
RUNG = frozenset({"timbre", "timbres", "boton", "claxon", "interfon", "telefono"})
"""What is touched shortly, and gives no shock by that."""
