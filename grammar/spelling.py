"""Mends a slip of spelling, only towards the vocabulary, never into a number or from one colour into another."""

from collections import defaultdict
from functools import cache, lru_cache

from rapidfuzz import process
from rapidfuzz.distance import OSA

from grammar.vocabulary import ROWS, pieces
from grammar.words.ordinary import ORDINARY

MENDED_KINDS = frozenset({
    "place", "colour", "device", "unit", "value", "condition", "transformer", "leadword", "tapword", "supply", "nameplate", "reads", "winding",
})  # fmt: skip
"""Kinds of words that a slip may be mended into."""
SHORTEST = 5
"""Letters of the shortest word that is mended, and of the shortest it is mended into."""
LONG = 8
"""From so many letters on, two slips are mended."""

GUARDED = frozenset({
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


@lru_cache(maxsize=4096)
def mended(word: str) -> str | None:
    """
    The word of the vocabulary that was meant, where only one meaning can be.

    >>> mended("secondarry"), mended("trasnformer"), mended("blc")
    ('secondary', 'transformer', None)
    """
    words, meanings = _targets()
    if word in GUARDED or word in ORDINARY or not word.isalpha():
        return None
    if (begun := _begun(word)) is not None:
        return begun
    if len(word) < SHORTEST:
        return None
    slips = 2 if len(word) >= LONG else 1
    near = process.extract(word, words, scorer=OSA.distance, score_cutoff=slips, limit=6)
    near = [n for n in near if abs(len(n[0]) - len(word)) <= slips and (n[0][0] == word[0] or n[1] == 1)]
    best = [n[0] for n in near if n[1] == min(m[1] for m in near)]
    meant = {meaning for n in best for meaning in meanings[n]}
    if len(meant) != 1:
        return None
    if next(iter(meant)).startswith("colour:") and any(
        m.startswith("colour:") for n in near for m in meanings[n[0]] if m not in meant
    ):
        return None  # two colours within reach: never chosen between
    return best[0]


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
    "secon dary": "secondary",
}
"""Place words cut off, as thumbs leave them."""


def _begun(word: str) -> str | None:
    return PLACE_BEGINNINGS.get(word)
