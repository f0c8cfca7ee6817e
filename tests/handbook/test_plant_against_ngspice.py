"""The plant's volts and amps against ngspice 39, a circuit simulator of its own: netlists and recorded values stand in `ngspice/`."""

import json
from pathlib import Path

import numpy as np
import pytest

from core.circuit.plant import Circuit, solve
from tests.handbook.ngspice import record_saturation
from tests.handbook.ngspice.record import BASE, CIRCUITS, netlist

HERE = Path(__file__).parent / "ngspice"
SATURATED = json.loads((HERE / "saturation.json").read_text())
RECORDED = json.loads((HERE / "recorded.json").read_text())


@pytest.mark.parametrize("name", CIRCUITS)
def test_the_plant_agrees_with_ngspice_within_one_percent(name: str) -> None:
    """Healthy circuits and each finding that changes volts or amps; a millivolt or a tenth of a milliamp counts as nothing."""
    live = solve(Circuit(**{key: np.array([value]) for key, value in (BASE | CIRCUITS[name]).items()}))

    for place, value in RECORDED[name].items():
        assert float(getattr(live, place)[0]) == pytest.approx(value, rel=0.01, abs=1e-3 if place.endswith("_v") else 1e-4), (
            place
        )


def test_enough_circuits_are_compared() -> None:
    """At least thirty, and the netlists are those that were run."""
    assert len(RECORDED) >= 30
    for name, changes in CIRCUITS.items():
        assert (HERE / f"{name}.cir").read_text() == netlist(name, changes, lifted=False)


@pytest.mark.parametrize("name", record_saturation.CIRCUITS)
def test_a_saturating_core_agrees_with_one_solved_in_time(name: str) -> None:
    """
    From rated volts to 130 % of them, for a core that is hardly or well into its bend: volts within 1 %, magnetising current within 6 %.

    The current of such a core is no sine, and the plant takes its rms value for one: that is the rest of the difference.
    """
    changes = BASE | record_saturation.CIRCUITS[name]
    live = solve(Circuit(**{key: np.array([value]) for key, value in changes.items()}))

    assert (HERE / f"{name}.cir").read_text() == record_saturation.netlist(name, record_saturation.CIRCUITS[name])
    assert float(live.lifted_v[0]) == pytest.approx(SATURATED[name]["secondary_v"], rel=0.01)
    assert float(live.primary_a[0]) == pytest.approx(SATURATED[name]["primary_a"], rel=0.06)


def test_the_current_above_rated_volts_rises_faster_than_the_volts() -> None:
    """In both: 30 % more volts double it at least."""
    for knee in (0.1, 0.3):
        rated, high = (SATURATED[f"saturated_{knee:.1f}_at_{percent}"]["primary_a"] for percent in (100, 130))

        assert high > 2.0 * rated
