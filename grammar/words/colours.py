"""Colours of leads, with the trade's abbreviations, and the words for a stripe."""

from grammar.words.row import Words

COLOURS = (
    Words(
        "colour", "white",
        en=("white", "wht", "wh", "whit", "whte", "whites"),
        es=("blanco", "blanca", "blancos", "blco", "bco"),
    ),
    Words(
        "colour", "black",
        en=("black", "blk", "bk", "blck", "blak", "blacks"),
        es=("negro", "negra", "negros", "ngro", "ngo"),
    ),
    Words("colour", "red", en=("red", "rd", "redd", "reds"), es=("rojo", "roja", "rojos", "rjo")),
    Words(
        "colour", "orange",
        en=("orange", "org", "orn", "orng", "ora", "oran", "oj"),
        es=("naranja", "naranjado", "anaranjado", "anaranjada", "nja", "naran"),
    ),
    Words(
        "colour", "yellow",
        en=("yellow", "yel", "ylw", "yello", "yl", "yell", "ylo", "yw", "yllw"),
        es=("amarillo", "amarilla", "amarillos", "amar"),
    ),
    Words("colour", "blue", en=("blue", "blu", "blues", "bleu"), es=("azul", "azules", "azl")),
    Words("colour", "brown", en=("brown", "brn", "br", "brwn", "brw", "bn"), es=("cafe", "marron", "castano")),
    Words("colour", "green", en=("green", "grn", "gn", "gren"), es=("verde", "verdes", "vde")),
    Words("colour", "gray", en=("gray", "grey", "gry"), es=("gris", "grises")),
    Words(
        "colour", "violet",
        en=("violet", "purple", "vio", "purp", "pur", "prpl", "vlt", "lavender"),
        es=("violeta", "morado", "morada", "purpura", "lila"),
    ),
    Words("colour", "pink", en=("pink", "pnk", "pk"), es=("rosa", "rosado", "rosada")),
    Words("colour", "tan", en=("tan", "beige"), es=("beis", "crema")),
    Words("colour", "bl?", both=("bl",)),
    Words("colour", "gr?", both=("gr",)),
)  # fmt: skip
"""`bl?` is blue or black, `gr?` green or gray: asked about, never guessed."""

LETTER_COLOURS = {"w": "white", "b": "black", "r": "red", "o": "orange", "y": "yellow", "g": "green", "v": "violet", "t": "tan"}
"""A single letter that is a colour, unless the message uses letters as marks."""

EITHER = {"bl?": ("blue", "black"), "gr?": ("green", "gray")}
"""Abbreviations of two colours."""

LEADS = (
    Words(
        "stripeword", "stripe",
        en=("tracer", "stripe", "trace", "striped", "stripes", "tracers"),
        es=("raya", "rayita", "franja", "rayado", "rayada"),
    ),
    Words(
        "leadword", "lead",
        en=(
            "lead", "leads", "wire", "wires", "conductor", "leg", "pin", "pins", "post", "posts", "legs", "pigtail", "ends",
            "terminal", "terminals", "term",
        ),
        es=("cable", "cables", "alambre", "alambres", "punta", "puntas", "hilo", "terminales", "los cables"),
    ),
    Words(
        "everything", "rest",
        en=(
            "everything else", "all else", "all others", "all the others", "all other pairs", "everything else to everything",
            "the rest", "rest", "all the rest", "others", "every other pair", "anything else", "all other combos",
            "everybody else", "all other", "the others", "other pairs", "any other pair",
        ),
        es=(
            "todo lo demas", "lo demas", "los demas", "las demas", "el resto", "todos los demas", "los otros", "todo el resto",
            "todas las demas",
        ),
    ),
)  # fmt: skip
