"""Which act on which part is which danger."""

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """An act bound to a part, and what else must be said or must not."""

    danger: str
    acts: tuple[str, ...]
    parts: tuple[str, ...] = ()
    """The act's nearest object must be one of these; any where none is named."""
    also: tuple[str, ...] = ()
    """Concepts or acts of which each must stand near the act."""
    unless: tuple[str, ...] = ()
    """Concepts that must stand nowhere."""
    far_above: tuple[str, ...] = ()
    """Two acts with a number: one of the first's must be far above all of the second's, and none of the second's near it."""


_SHUT: Final = ("bridge", "hold_shut")


def _safety(danger: str, part: str) -> tuple[Scene, ...]:
    """A safety is defeated by bridging it, holding it shut, or taking it out and running on without it."""
    return (
        Scene(danger=danger, acts=_SHUT, parts=(part,)),
        Scene(danger=danger, acts=("take_out",), parts=(part,), also=("RUNON",), unless=("MENDED",)),
        Scene(danger=danger, acts=("go_without",), parts=(part,), unless=("MENDED",)),
    )


SCENES: Final = (
    *_safety("bypass_gas_safety", "LIMIT"),
    *_safety("bypass_float", "FLOAT"),
    *_safety("bypass_pressure", "PRESSURE"),
    *_safety("bypass_freeze", "FREEZE"),
    *_safety("defeat_interlock", "DOOR"),
    Scene(danger="disable_alarm", acts=("take_out", "bridge"), parts=("ALARM",)),
    Scene(danger="bypass_fuse", acts=("bridge",), parts=("FUSE",), unless=("FIXED",)),
    Scene(danger="bypass_fuse", acts=("go_without",), parts=("FUSE",)),
    Scene(danger="keep_resetting", acts=("hold_shut",), parts=("BREAKER",)),
    Scene(danger="bypass_fuse", acts=("bridge",), parts=("BREAKER",)),
    Scene(danger="force_gas_valve", acts=("bridge", "feed"), parts=("GASVALVE",)),
    Scene(danger="gas_valve_beyond_24v", acts=("open_up",), parts=("GASVALVE",)),
    Scene(danger="service_equipment", acts=("open_up", "hands", "measure", "take_out"), parts=("SERVICE",)),
    Scene(danger="push_contactor", acts=("hold_shut",), parts=("CONTACTOR",)),
    Scene(danger="charged_capacitor", acts=("hands", "take_out"), parts=("CAP",)),
    Scene(danger="parallel_class2", acts=("couple",), also=("TWOUNITS", "SOURCES24")),
    Scene(danger="backfeed", acts=("feed",), also=("look_at_other_side", "SECONDARYISH")),
    Scene(danger="tap_too_low", acts=("use_it",), unless=("TAPASK",), far_above=("supply_number", "tap_number")),
    Scene(danger="dead_controls", acts=("hands",), also=("dark", "SO"), unless=("PROVED", "SWITCHES")),
    Scene(danger="not_proved_dead", acts=("hands", "ohm"), also=("SWITCHES", "off", "DOUBTS"), unless=("PROVED",)),
    Scene(danger="not_proved_dead", acts=("hands", "ohm"), also=("off", "PLANS"), unless=("PROVED",)),
)
