"""The words of the grammar name what the rest of the house knows."""

from core.measures import MEASURES
from core.standards.device_loads import DEVICE_LOADS
from grammar.binding.places import MEASURE_AT
from grammar.words.devices import BOARDS, COILS, DEVICES, SWITCHES

NAMES = {row.meaning for row in DEVICES}


def test_every_device_of_the_words_has_its_load() -> None:
    """A name that sizing does not know could not be sized."""
    assert DEVICE_LOADS.keys() >= NAMES - SWITCHES


def test_groups_of_devices_are_devices() -> None:
    """No group names one that has no words."""
    assert COILS | BOARDS | SWITCHES <= NAMES


def test_every_place_has_measures_of_core() -> None:
    """And of the unit that it is listed under."""
    assert all(MEASURES[measure].unit == unit for by_unit in MEASURE_AT.values() for unit, measure in by_unit.items())


def test_every_measure_can_be_read() -> None:
    """Each measure of core has a place, or a condition that leads to it."""
    assert MEASURES.keys() - {m for by_unit in MEASURE_AT.values() for m in by_unit.values()} == {"secondary_volts_lifted"}
