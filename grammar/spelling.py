"""Mends a slip of spelling, only towards known words, never into a number or from one colour into another."""

from collections import defaultdict
from functools import cache, lru_cache
from itertools import pairwise

from rapidfuzz import process
from rapidfuzz.distance import OSA

from grammar.cues import known_words
from grammar.vocabulary import ROWS, pieces, tree
from grammar.words.numbers import NUMBERS
from grammar.words.ordinary import ORDINARY
from grammar.words.plain import PLAIN

MENDED_KINDS = frozenset({
    "place", "colour", "device", "unit", "value", "condition", "transformer", "leadword", "tapword", "supply", "nameplate", "reads", "winding",
    "withdraw",
})  # fmt: skip
"""Kinds of words that a slip may be mended into."""
SHORTEST = 5
"""Letters of the shortest word that is mended into one a letter away, and of the shortest that one can be."""
SHORTEST_SLIP = 4
"""Letters of the shortest word that is looked at for fingers that slipped."""
SHORTEST_FOUND = 3
"""Letters of the shortest word that it can become."""
LONG = 8
"""From so many letters on, two slips are mended."""

GUARDED = frozenset({
    "form", "filed", "tier", "trial", "trail", "spilt", "clam", "beard", "united", "angle", "angel", "unite", "slat", "blot", "clod",
    "broke", "breaker", "please", "phase", "phases", "cases", "cover", "prior", "price", "prices", "board", "floor", "clean", "clear", "mines", "minus", "lines", "reset", "rider", "ready", "trade", "reads", "meant", "metal",
    "meter", "motor", "tapes", "front", "chase", "chased", "brow", "crown", "drown", "blown", "brawn", "great", "gravy", "groan", "while", "wheat", "white", "block", "black", "blank", "bleak", "slack", "order", "store", "stone",
    "shore", "short", "fused", "refuse", "unloaded", "loader", "leaded", "sealed", "trace", "green", "grown", "planned", "blues", "clues", "glued", "valued", "values", "volta", "poland", "relax", "delay", "replay", "relays",
    "opera", "opens", "coils", "coins", "foils", "soils", "coral", "carga", "larga", "barco", "blando", "banco", "rojas", "verdad", "verano", "negra", "tierra", "tiene", "sierra", "puerta", "abierto", "cierto", "alambra", "casas",
    "lineal", "lineas", "fuente", "frente", "puente", "puertas", "tarjetas", "tarea", "cajas", "sales", "salas", "secun", "segun", "segundo", "segunda", "primero", "primera", "primer", "primavera", "actually", "action", "active", "loaned", "roasted", "toasted", "coasted",
})  # fmt: skip
"""Words of their own that stand one slip away from a word of the trade."""


@cache
def _targets() -> tuple[tuple[str, ...], dict[str, set[str]]]:
    """Single words that may be meant, and what each means."""
    meanings: dict[str, set[str]] = defaultdict(set)
    for row in ROWS:
        if row.kind in MENDED_KINDS and row.meaning != "not_ours":
            for word in (*row.en, *row.es, *row.both):
                cut = pieces(word)
                if len(cut) == 1 and len(cut[0]) >= SHORTEST:
                    meanings[cut[0]].add(f"{row.kind}:{row.meaning}")
    return tuple(meanings), meanings


@cache
def number_words() -> tuple[str, ...]:
    """Single words of numbers, and those for a point in one."""
    return tuple(
        {piece for row in NUMBERS if row.kind in NUMBER_KINDS for word in (*row.en, *row.es) for piece in pieces(word)}
    )


NUMBER_KINDS = frozenset({"spoken", "fraction", "point"})


@cache
def spelt() -> frozenset[str]:
    """Every word that is known, inner words of longer turns included, but for those of numbers."""
    return (_vocabulary() | set(PLAIN) | known_words()) - set(number_words())


@cache
def _vocabulary() -> frozenset[str]:
    """The words of the vocabulary, inner words of longer entries included."""
    found: set[str] = set()
    nodes = [tree()]
    while nodes:
        steps = nodes.pop().steps
        found.update(piece for piece in steps if piece.isalpha())
        nodes += steps.values()
    return frozenset(found)


@lru_cache(maxsize=4096)
def mended(word: str, *, spanish: bool = False) -> str | None:
    """
    The known word that was meant, where only one can be.

    Args:
        word: Folded, and known to nobody.
        spanish: The text is Spanish: that decides between two words.

    Returns:
        The word, or None.

    >>> mended("secondarry"), mended("trasnformer"), mended("looad"), mended("blc")
    ('secondary', 'transformer', 'load', None)
    """
    if word in GUARDED or word in ORDINARY or not word.isalpha():
        return None
    if (begun := _begun(word)) is not None:
        return begun
    if len(word) < SHORTEST_SLIP or is_like_a_number(word):
        return None
    return _fingers(word, spanish=spanish) or _near(word) or _near_any(word)


def _fingers(word: str, *, spanish: bool) -> str | None:
    """The one known word behind a letter that was struck twice, or two that changed places: "looad", "wier"."""
    once = {word[:i] + word[i + 1 :] for i, (one, two) in enumerate(pairwise(word)) if one == two}
    crossed = {word[:i] + two + one + word[i + 2 :] for i, (one, two) in enumerate(pairwise(word)) if one != two}
    for slips in (once, crossed):
        known = [slip for slip in slips if slip in spelt() and len(slip) >= SHORTEST_FOUND]
        known = [slip for slip in known if slip in PLAIN] or known
        if len(known) > 1:  # "laod": load, or lado
            known = [slip for slip in known if PLAIN.get(slip) == ("es" if spanish else "en")]
        if len(known) == 1:
            return known[0]
    return None


def _near(word: str) -> str | None:
    """The one word of the trade within a slip or two."""
    words, meanings = _targets()
    if len(word) < SHORTEST:  # one letter was left out, and none is another
        words = tuple(w for w in words if len(w) == len(word) + 1 and w[0] == word[0])
    slips = 2 if len(word) >= LONG else 1
    near = process.extract(word, words, scorer=OSA.distance, score_cutoff=slips, limit=6)
    near = [n for n in near if abs(len(n[0]) - len(word)) <= slips and (n[0][0] == word[0] or n[1] == 1)]
    best = [n[0] for n in near if n[1] == min(m[1] for m in near)]
    meant = {meaning for n in best for meaning in meanings[n]}
    if len(meant) != 1 or (len(word) < SHORTEST and next(iter(meant)).startswith("colour:")):
        return None
    if next(iter(meant)).startswith("colour:") and any(
        m.startswith("colour:") for n in near for m in meanings[n[0]] if m not in meant
    ):
        return None  # two colours within reach: never chosen between
    return best[0]


def _near_any(word: str) -> str | None:
    """The one known word a letter away from a long one: "conectao"."""
    if len(word) < LONG - 1:
        return None
    words = [known for length in (len(word) - 1, len(word), len(word) + 1) for known in _by_length().get((length, word[0]), ())]
    near = process.extract(word, words, scorer=OSA.distance, score_cutoff=1, limit=2)
    return near[0][0] if len(near) == 1 else None


@cache
def _by_length() -> dict[tuple[int, str], list[str]]:
    found: dict[tuple[int, str], list[str]] = defaultdict(list)
    for word in _vocabulary() & spelt():
        if len(word) >= LONG - 2:
            found[len(word), word[0]].append(word)
    return found


@lru_cache(maxsize=4096)
def is_like_a_number(word: str) -> bool:
    """
    A word that is a slip of a word for a number: it is not mended, and the number beside it is not whole.

    >>> is_like_a_number("twentty"), is_like_a_number("ppoint"), is_like_a_number("tweed")
    (True, True, False)
    """
    if len(word) < SHORTEST_SLIP:
        return False
    slips = 2 if len(word) >= LONG - 1 else 1
    return process.extractOne(word, _long_numbers(), scorer=OSA.distance, score_cutoff=slips) is not None


@cache
def _long_numbers() -> tuple[str, ...]:
    return tuple(word for word in number_words() if len(word) >= SHORTEST_SLIP and word not in WORDS_AS_WELL)


WORDS_AS_WELL = frozenset(
    {"half", "once", "medio", "media", "cuarto", "coma", "decimal", "quarter", "quarters", "tenth", "tenths"}
)
"""Words of numbers that stand too near to ordinary ones."""


PLACE_BEGINNINGS = {
    "primar": "primary",
    "secon": "secondary",
    "second": "secondary",
    "seconda": "secondary",
    "secondar": "secondary",
    "transform": "transformer",
    "transfor": "transformer",
    "secundar": "secundario",
    "secunda": "secundario",
    "primari": "primario",
    "discon": "disconnect",
    "disconn": "disconnect",
    "chass": "chassis",
    "secndary": "secondary",
    "scndary": "secondary",
    "prmary": "primary",
    "primy": "primary",
    "secdry": "secondary",
    "contac": "contactor",
    "thermo": "thermostat",
    "therm": "thermostat",
    "humidif": "humidifier",
    "sek": "sec",
    "seck": "sec",
    "sce": "sec",
    "scnd": "secondary",
    "scdy": "secondary",
    "swc": "sec",
    "sdc": "sec",
    "rpi": "pri",
    "pti": "pri",
    "prj": "pri",
    "pru": "pri",
    "prie": "pri",
}
"""Place words cut off, or one key beside, as thumbs leave them."""


def _begun(word: str) -> str | None:
    return PLACE_BEGINNINGS.get(word)
