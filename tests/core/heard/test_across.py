"""Volts across a switch: the loop says which contact is open."""

import pytest

from core.heard.across import FULL_FROM_V, NAMED, OPENED, across
from core.heard.record import Heard
from grammar.words.devices import SWITCHES


def read_across(device: str, volts: float) -> Heard:
    """Volts across a switch."""
    return Heard("across", device, "", (volts,), "V")


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
    assert "it is open" in str(across(read_across("float switch", amps * meter_ohm)).lines[0])
    closed_v = source_v / (coil_ohm + closed_ohm) * closed_ohm
    assert "closed" in str(across(read_across("limit switch", closed_v)).lines[0])


@pytest.mark.parametrize("volts", [3.0, 9.0])
def test_a_share_of_the_voltage_is_no_verdict(volts: float) -> None:
    """Between both a contact is bad or the loop is broken elsewhere too: the reply sends the meter on."""
    (line,) = across(read_across("door switch", volts)).lines

    assert "Read each side to C" in str(line)
