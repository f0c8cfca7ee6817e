"""The plant's volts and amps against ngspice 39, a circuit simulator of its own: netlists and recorded values stand in `ngspice/`."""

import json
from pathlib import Path

import numpy as np
import pytest

from core.circuit.plant import Circuit, solve
from tests.handbook.ngspice.record import BASE, CIRCUITS, netlist

HERE = Path(__file__).parent / "ngspice"
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
