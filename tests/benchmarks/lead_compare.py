"""
Maps of leads beside a Bayesian reference that knows the bench: of how many units each is sure, and how often wrongly.

    python -m tests.benchmarks.lead_compare [units]

Both get the same readings: all pairs, two missing, one wrong. The reference reckons with one wrong reading in a hundred and is the best that
any answer can be on the whole. Where every unit has a wrong reading it errs all the same: a lone reading of two leads is contradicted by
nothing. So a second row lets it be sure only as far as it errs in one unit of a thousand there: by how much likelier its map with all
readings right is than any other map with one of them wrong, which no answer can weigh better (Neyman and Pearson). How often an answer
errs is counted, and also summed from what the reference thinks of it, which scatters less.
"""

import sys
from dataclasses import dataclass

import numpy as np

from core.leads import map_leads
from tests.benchmarks.lead_bench import SETS, draw_unit, job_of, key_of, order_of, order_right, readings, sides_right
from tests.benchmarks.lead_reference import READ_WRONG, weights

CASES = {"all pairs": (201, {}), "one wrong": (202, {"wrong": True}), "two missing": (203, {"missing": 2})}
"""The seed of each, and what is done to the readings."""
SURE = 0.9
MOST_WRONG = 0.001


@dataclass(frozen=True)
class Row:
    """One unit."""

    said: float
    right: bool
    said_doubt: float
    """Probability of its map being wrong, as the reference sees it, knowing how the readings were taken."""
    reference: float
    reference_right: bool
    reference_doubt: float
    astray: float
    """How likely these readings are with one of them wrong and another map, to all that speaks for the reference's."""
    sides: bool
    order: bool
    order_left: float
    """Probability that the reference gives to the true order of every winding."""


def compared(unit, seen, left, *, wrong):
    """An answer and what the reference leaves of the same readings."""
    found = map_leads(job_of(unit, seen)).leads
    said = key_of(found.windings)
    one_wrong = 1.0 - (1.0 - READ_WRONG) ** sum(v != "open" for v in seen.values())
    scaled = {key: np.array([w[0], w[1] * (1.0 - one_wrong) / one_wrong]) for key, w in left.items()}
    both = {key: w.sum() for key, w in left.items()}
    best = max(both, key=both.get)
    right, slipped = sum(scaled.values())
    known = (
        {key: w[int(wrong)] / (slipped if wrong else right) for key, w in scaled.items()}
        if (slipped if wrong else right) > 0
        else {}
    )
    return Row(
        said=found.confidence,
        right=said == unit.key,
        said_doubt=1.0 - known.get(said, 0.0),
        reference=both[best] / sum(both.values()),
        reference_right=best == unit.key,
        reference_doubt=1.0 - known.get(best, 0.0),
        astray=(slipped - scaled[best][1]) / (right + scaled[best][1]),
        sides=sides_right(unit, found.windings),
        order=order_right(unit, found.windings),
        order_left=_order_left(both, unit),
    )


def _order_left(both, unit):
    drawn = {order_of(names) for _, names, _ in unit.windings}
    return sum(p for key, p in both.items() if all(_in_order(names) in drawn for _, names in key)) / sum(both.values())


def _in_order(names):
    """Leads of a map's winding along it, which is a set in the key."""
    place = {"common": 0.0, "12": 1.0, "ct": 2.0}
    rows = sorted(names, key=lambda row: place.get(row[1], float(row[1]) if row[1].isdigit() else 0.0))
    if [role for _, role in rows] == ["12", "12", "ct"]:
        rows = [rows[0], rows[2], rows[1]]
    return order_of(rows)


def rows_of(title, units):
    """All rows of one case."""
    seed, how = CASES[title]
    rng = np.random.default_rng(seed)
    for _ in range(units):
        unit = draw_unit(rng)
        seen, _ = readings(rng, unit, **how)
        yield compared(unit, seen, weights(unit, seen, SETS), wrong=bool(how.get("wrong")))


def most_astray(rows):
    """The largest `astray` up to which the reference errs in one unit of a thousand where each has a wrong reading."""
    sure = sorted((row for row in rows if row.reference >= SURE), key=lambda row: row.astray)
    errs = np.cumsum([row.reference_doubt for row in sure]) / len(rows)
    return sure[int((errs <= MOST_WRONG).sum()) - 1].astray if sure and errs[0] <= MOST_WRONG else 0.0


def tell(title, rows, limit):
    """Print one case."""
    print(f"\n{title}: {len(rows)} units")
    print(f"  windings right {_share(rows, 'sides'):.2%}, order right {_share(rows, 'order'):.2%}", end=", ")
    print(f"or the reference not sure of it {np.mean([row.order or row.order_left < 0.99 for row in rows]):.2%}")
    print(
        f"  roles right {_share(rows, 'right'):.2%}, or said under 0.9 {np.mean([row.right or row.said < SURE for row in rows]):.2%}"
    )
    _line("said", rows, [row.said >= SURE for row in rows], "right", "said_doubt")
    _line("reference", rows, [row.reference >= SURE for row in rows], "reference_right", "reference_doubt")
    held = [row.reference >= SURE and row.astray <= limit for row in rows]
    _line("reference held to one in a thousand", rows, held, "reference_right", "reference_doubt")


def _share(rows, name):
    return np.mean([getattr(row, name) for row in rows])


def _line(who, rows, sure, right, doubt):
    wrong = sum(s and not getattr(row, right) for s, row in zip(sure, rows, strict=True))
    expected = sum(getattr(row, doubt) for s, row in zip(sure, rows, strict=True) if s)
    print(
        f"  {who}: sure {np.mean(sure):.2%}, wrong and sure {wrong / len(rows):.2%}, to be expected {expected / len(rows):.3%}"
    )


def main():
    """Print every case."""
    units = int(next((a for a in sys.argv[1:] if a.isdigit()), "200"))
    every = {title: list(rows_of(title, units)) for title in CASES}
    limit = most_astray(every["one wrong"])
    for title, rows in every.items():
        tell(title, rows, limit)


if __name__ == "__main__":
    main()
