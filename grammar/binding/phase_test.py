"""Volts from the R of one transformer to the R of another, told without their names: "53 v between the two R, commons tied"."""

from itertools import pairwise

from core.readings import Reading
from grammar.binding.draft import Draft
from grammar.binding.told import open_amounts

HOTS = frozenset({"r", "rs", "hot", "hots", "rojos", "vivos"})
BOTH = frozenset({"two", "both", "2", "dos", "ambos", "ambas"})
COMMONS = frozenset({"c", "cs", "com", "common", "commons", "comun", "comunes"})
TIED = frozenset(
    {
        "tied",
        "joined",
        "together",
        "jumped",
        "jumpered",
        "bonded",
        "connected",
        "juntos",
        "unidos",
        "junte",
        "junto",
        "uni",
        "amarre",
        "amarrados",
        "shared",
    }
)
BETWEEN = frozenset({"between", "across", "entre", "other", "to"})
MOST_V = 70.0
"""More than two secondaries in a row give is no phase test. [V]"""


def phase_test(draft: Draft) -> None:
    """Makes the one figure of such a message the volts from R to R."""
    figures = [f for f in open_amounts(draft) if f.unit in {None, "V"} and len(f.amounts) == 1 and f.value <= MOST_V]
    volts = [f for f in figures if f.unit == "V"] or [
        f for f in figures if draft.phrases[min(f.at + 1, len(draft.phrases) - 1)].text not in HOTS
    ]
    if len(volts) != 1 or not _between_two(draft):
        return
    volts[0].done = True
    draft.readings.append(Reading(measure="lead_volts", value=volts[0].value, leads=("r", "r")))
    draft.asks = list(dict.fromkeys((*draft.asks, "parallel")))


def _between_two(draft: Draft) -> bool:
    words = draft.words
    tied = bool(COMMONS & set(words)) and bool(TIED & set(words))
    two = any(one in BOTH and other in HOTS for one, other in pairwise(words))
    rows_of_three = zip(words, words[1:], words[2:], strict=False)
    across = any(one in HOTS and link in {"to", "a", "and", "y"} and other in HOTS for one, link, other in rows_of_three)
    return tied and ((two and bool(BETWEEN & set(words))) or across)
