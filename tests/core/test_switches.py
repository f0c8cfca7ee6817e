"""Volts across a switch: the loop says which contact is open."""

import pytest

from core.switches import FULL_FROM_V, NAMED, OPENED, AtSwitch, across
from grammar.words.devices import SWITCHES


def test_every_switch_has_a_name_and_a_reason() -> None:
    """A switch that the grammar knows is one that can be spoken of."""
    assert set(NAMED) == set(OPENED) == SWITCHES


def test_the_whole_control_voltage_stands_across_the_one_open_contact() -> None:
    """
    A loop of a 24 V source, a closed contact, an open one and a coil, by Kirchhoff's voltage law.

    Source: IEC 60050-131, Kirchhoff law for meshes (from memory): the voltages round a loop add up to nothing.
    """
    source_v, coil_ohm, closed_ohm, meter_ohm = 24.0, 20.0, 0.1, 1e7
    amps = source_v / (coil_ohm + closed_ohm + meter_ohm)

    assert amps * meter_ohm >= FULL_FROM_V
    assert "it is open" in str(across(AtSwitch("float switch", amps * meter_ohm, ""))[0])
    assert "closed" in str(across(AtSwitch("limit switch", source_v / (coil_ohm + closed_ohm) * closed_ohm, ""))[0])


@pytest.mark.parametrize("volts", [3.0, 9.0])
def test_a_share_of_the_voltage_is_no_verdict(volts: float) -> None:
    """Between both a contact is bad or the loop is broken elsewhere too: the reply sends the meter on."""
    (line,) = across(AtSwitch("door switch", volts, ""))

    assert "Read each side to C" in str(line)
