"""
What the devices on a 24 V control circuit draw, where no label is at hand.

Bands are wide on purpose: they tell whether a size is in reach, never what to buy. The label decides.
"""

from dataclasses import dataclass
from typing import Final, Literal

from core.said import say
from core.standards.rule import Rule
from core.standards.source import COMMON_PRACTICE

Mode = Literal["cooling", "heating", "defrost", "always"]


@dataclass(frozen=True, slots=True, kw_only=True)
class DeviceLoad:
    """One kind of device."""

    name: str
    """English, as it stands in a fact `load`."""
    low_va: float
    """Sealed. [VA]"""
    high_va: float
    inrush_low: float
    """Times the sealed VA while it pulls in. [-]"""
    inrush_high: float
    on: tuple[Mode, ...]
    """When it draws."""
    coil: bool = True
    """True for an AC coil, whose ohms say nothing of its VA."""


_COOL: Final[tuple[Mode, ...]] = ("cooling", "defrost")
_HEAT: Final[tuple[Mode, ...]] = ("heating", "defrost")
_BOTH: Final[tuple[Mode, ...]] = ("cooling", "heating", "defrost")
_ON: Final[tuple[Mode, ...]] = ("always",)


def _row(
    name: str, va: tuple[float, float], inrush: tuple[float, float], on: tuple[Mode, ...], *, coil: bool = True
) -> DeviceLoad:
    return DeviceLoad(name=name, low_va=va[0], high_va=va[1], inrush_low=inrush[0], inrush_high=inrush[1], on=on, coil=coil)


SOURCE: Final = COMMON_PRACTICE
"""The ratios of large contactor coils run from 4 to 13 (R. Kissell, Industrial Electronics, "Ratings for Coils", author from memory)."""

DEVICE_LOADS: Final[dict[str, DeviceLoad]] = {
    row.name: row
    for row in (
        _row("contactor", (5, 10), (3, 7), _BOTH),
        _row("relay", (2, 6), (1, 2), _BOTH),
        _row("thermostat", (1, 5), (1, 1), _ON, coil=False),
        _row("communicating stat", (3, 8), (1, 1), _ON, coil=False),
        _row("gas valve", (7, 22), (1, 1.5), ("heating",)),
        _row("zone valve", (5, 12), (1, 2), _BOTH),
        _row("zone board", (3, 10), (1, 1), _ON, coil=False),
        _row("board", (3, 12), (1, 1), _ON, coil=False),
        _row("reversing valve", (7, 14), (2, 4), _BOTH),
        _row("solenoid valve", (7, 20), (2, 4), _COOL),
        _row("heat relay", (3, 10), (1, 2), _HEAT),
        _row("sequencer", (4, 10), (1, 3), _HEAT),
        _row("fan relay", (2, 6), (1, 2), _BOTH),
        _row("inducer relay", (2, 6), (1, 2), ("heating",)),
        _row("defrost board", (2, 8), (1, 1), _ON, coil=False),
        _row("humidifier", (5, 20), (1, 2), ("heating",)),
        _row("air cleaner", (2, 15), (1, 2), _BOTH, coil=False),
        _row("damper", (3, 10), (1, 1), _BOTH),
        _row("economizer", (5, 15), (1, 1), ("cooling",), coil=False),
        _row("condensate pump", (1, 5), (1, 1), _COOL),
        _row("float switch", (1, 2), (1, 1), _ON, coil=False),
        _row("ignition control", (3, 10), (1, 1), ("heating",), coil=False),
        _row("actuator", (3, 10), (1, 1), _BOTH),
        _row("sensor", (1, 3), (1, 1), _ON, coil=False),
        _row("doorbell", (5, 15), (1, 2), _ON),
        _row("uv lamp", (10, 25), (1, 2), _ON, coil=False),
        _row("smoke detector", (2, 6), (1, 1), _ON, coil=False),
    )
}
"""By name. A float switch itself draws nothing; those with electronics draw a VA or two."""

CONTROLS_V: Final = 24.0
"""What a control circuit is rated at unless the nameplate says another. [V]"""
LEAST_DEVICE_VA: Final = 1.0
MOST_DEVICE_VA: Final = 1000.0
MOST_COIL_VA: Final = 100.0
"""A 24 V coil that is said to draw more than this steady is asked about: likely its inrush."""
MOST_DEVICES: Final = 100

TYPICAL_LOADS: Final = Rule(
    says=say("usual VA: common practice"),
    source=SOURCE,
    limits="A band to plan with; the label of the device decides.",
)
