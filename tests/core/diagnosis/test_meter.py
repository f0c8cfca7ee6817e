"""What a hand meter shows of a world."""

import numpy as np
import pytest

from core.circuit.plant import solve
from core.diagnosis.features import WIDTH, Evidence, encode
from core.diagnosis.meter import OHMS, SEEN, Hand, M, connected_values, hands, show, true_values
from core.diagnosis.worlds import F, draw
from core.readings import SYMPTOMS

N = 400


def hand(**changes: float) -> Hand:
    """A perfect hand with changes."""
    values = {
        "slip": 0.0,
        "forgets": 0.0,
        "accuracy": 0.005,
        "lead_ohm": 0.0,
        "range_ohm": 2e7,
        "amps": 0.005,
        "ghosts": 0.0,
    } | changes
    return Hand(**{name: np.full(N, value) for name, value in values.items()})


def shown(finding: str, **changes: float) -> np.ndarray:
    """Readings of many worlds of one finding."""
    rng = np.random.default_rng(2)
    w = draw(rng, np.full(N, F[finding]))
    true = true_values(rng, w, solve(w.circuit))
    return show(rng, w, hand(**changes), true, connected_values(rng, w, true)).value


def test_over_its_range_a_meter_shows_open() -> None:
    """An open primary is over any range."""
    value = shown("primary_open")[:, M["primary_ohms"]]

    assert np.isinf(value).mean() > 0.85


def test_a_forgotten_lead_hides_an_open() -> None:
    """The parallel path is read in its place."""
    value = shown("secondary_open", forgets=1.0)[:, M["secondary_ohms"]]

    assert np.isinf(value).mean() < 0.5


def test_a_dead_line_may_show_a_ghost() -> None:
    """Only where conductors float and the meter hardly loads them."""
    sure, ghostly = shown("no_supply"), shown("no_supply", ghosts=1.0)

    assert sure[:, M["line_volts"]].max() < 1.0
    assert np.median(ghostly[:, M["line_volts"]]) > 10.0


def test_hands_differ() -> None:
    """From careful to careless."""
    h = hands(np.random.default_rng(1), 1000)

    assert h.slip.min() == 0.0
    assert h.forgets.max() > 0.2


def test_nothing_told_encodes_to_finite_numbers() -> None:
    """Absent things are 0, so a belief always has an answer."""
    none = np.full((1, len(SEEN)), np.nan)
    flags = np.zeros((1, len(SEEN)), dtype=bool)
    e = Evidence(
        value=none, confirmed=flags, connected=flags, low_impedance=flags, unfused=np.zeros((1, 1)), facts=np.full((1, 6), np.nan),
        symptoms=np.zeros((1, len(SYMPTOMS))),
    )  # fmt: skip
    row = encode(e)

    assert row.shape == (1, WIDTH)
    assert np.isfinite(row).all()


@pytest.mark.parametrize("measure", SEEN)
def test_any_single_reading_encodes_to_finite_numbers(measure: str) -> None:
    """Zero, usual, huge and open."""
    values = np.full((4, len(SEEN)), np.nan)
    values[:, M[measure]] = [0.0, 24.0, 1e10, np.inf if OHMS[M[measure]] else 480.0]
    flags = np.zeros((4, len(SEEN)), dtype=bool)
    e = Evidence(
        value=values, confirmed=flags, connected=flags, low_impedance=flags, unfused=np.zeros((4, 1)), facts=np.full((4, 6), np.nan),
        symptoms=np.zeros((4, len(SYMPTOMS))),
    )  # fmt: skip

    assert np.isfinite(encode(e)).all()
