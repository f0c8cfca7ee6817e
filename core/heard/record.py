"""The record of what was heard besides the measures; the grammar fills it."""

from dataclasses import dataclass
from typing import Final

from core.readings import Value

HEARD: Final = (
    "across", "sides", "line_fuse", "leg", "leg_lifted", "call", "stays_out", "no_click", "motor_dead", "breaker_off", "switch", "panel", "button",
    "told_good", "holds_off",
)  # fmt: skip
"""Names of what can be heard. `across`, `sides`: a switch or fuse, read across, or from each side to C. `line_fuse`: a fuse on the
line side. `leg`: two terminals of the control circuit, or one and ground. `leg_lifted`: R to C with that leg lifted. `call`: R to C
reads low with that leg called. `stays_out`, `no_click`: the contactor does not pull in. `motor_dead`: what the contactor feeds does
not run. `breaker_off`: breaker or disconnect was found off. `switch`: told open or closed. `panel`: volts before the
unit's disconnect. `button`: the breaker that sits on the transformer has tripped. `told_good`: a fuse
is called good, with no number. `holds_off`: the breaker holds with the primary off."""

Read = Value | None
"""A value that was read, over the meter's range, or not told."""


@dataclass(frozen=True, slots=True)
class Heard:
    """One thing heard: no measure of the circuit's model, so it stands among the unread of the record and is answered all the same."""

    what: str
    """A name of `HEARD`."""
    part: str
    """What it is about: the name of a device, or the letters of a leg: `y`, `y c`, `r ground`."""
    fragment: str
    """As it was written."""
    values: tuple[Read, ...] = ()
    """What was read; for `sides` the fed side first."""
    unit: str = ""
    """V, ohm, or empty where it was not told and can't be taken for granted."""
