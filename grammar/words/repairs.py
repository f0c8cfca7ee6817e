"""Words that say that a part beside the transformer was put right just now."""

PARTS: dict[str, frozenset[str]] = {
    "fuse": frozenset({"fuse", "fuses", "fusible", "fusibles"}),
    "short": frozenset({"short", "shorted", "corto", "cortocircuito"}),
    "wiring": frozenset(
        {
            "wire",
            "wires",
            "wiring",
            "splice",
            "joint",
            "connection",
            "terminal",
            "float",
            "switch",
            "contactor",
            "relay",
            "rele",
            "relevador",
            "coil",
            "bobina",
            "cable",
            "empalme",
            "flotador",
        }
    ),
    "supply": frozenset({"breaker", "disconnect", "supply", "power", "desconectador"}),
}
"""By name of `core.repairs.REPAIRS`."""
LINE_SIDE = frozenset({"line", "primary", "pri", "linea", "primario"})
"""A fuse of the line side feeds the supply."""
LOW_SIDE = frozenset({"low", "24v", "24", "control", "board", "secondary", "transformer"})
"""A breaker of the 24 V side is its fuse."""

RENEWED = frozenset(
    {
        "replaced", "swapped", "changed", "renewed", "reemplace", "reemplazado", "reemplazo", "cambie", "cambiado", "cambio",
        "fixed", "repaired", "cleared", "remade", "retightened", "respliced", "rewired", "mended", "reset", "restored",
        "arregle", "arreglado", "repare", "reparado", "quite", "restableci", "reinicie",
    }
)  # fmt: skip
"""What was done to the part, before or behind its name."""
PUT_IN = frozenset({"put", "popped", "stuck", "installed", "fitted", "dropped", "puse", "puesto", "instale", "in", "instalado"})
"""What was done with a new one."""
NEW = frozenset({"new", "another", "nuevo", "nueva", "otro", "otra"})
PAST_OR_PLAN = frozenset(
    {
        "yesterday", "ago", "last", "week", "weeks", "month", "months", "year", "years", "previous", "previously", "before",
        "already", "guy", "customer", "somebody", "someone", "should", "will", "would", "could", "can", "if", "need", "needs",
        "needed", "never", "havent", "didnt", "going", "gonna", "want", "wants", "keeps", "keep", "every", "each", "when", "ill", "lets", "let", "must", "gotta",
        "till", "until", "after", "how", "where", "why", "what", "blowing", "blows", "not", "no", "cant", "without", "find",
        "ayer", "hace", "semana", "mes", "ano", "antes", "debo", "si", "nunca", "necesita", "cada", "cuando", "voy", "cliente",
        "hasta", "como", "sin",
    }
)  # fmt: skip
"""Words of the same sentence that make it history, a plan, a habit or a question."""
BETWEEN = frozenset(
    {"the", "a", "an", "of", "amp", "amps", "v", "old", "blown", "bad", "burnt", "el", "la", "un", "una", "quemado", "viejo"}
)
"""Words that say nothing of what was done: they count for no distance."""
