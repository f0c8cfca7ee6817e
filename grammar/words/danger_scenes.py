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
    """Concepts or acts that must stand nowhere."""
    unless_told: tuple[str, ...] = ()
    """Concepts that must stand neither here nor in the messages before, where what is `told` stands only there."""
    done_counts: bool = True
    """False where the act is over once it is done: it must be meant, not reported."""
    told: tuple[str, ...] = ()
    """Acts or concepts of which each must stand in this message or in one before it."""
    together: int = 30
    """Words between an act and what must be said with it."""
    near: int = 20
    """Words between a part and an act behind it."""
    over: float = 0.0
    """The number told with the act must be at least this. [V]"""
    below: float = 110.0
    """And less than this: from here it is a mains voltage. [V]"""
    far_above: tuple[str, ...] = ()
    """Two acts with a number: one of the first's must be far above all of the second's, and none of the second's near it."""


_SHUT: Final = ("bridge", "hold_shut")


def _safety(danger: str, part: str) -> tuple[Scene, ...]:
    """A safety is defeated by bridging it, holding it shut, or taking it out and running on without it."""
    return (
        Scene(danger=danger, acts=_SHUT, parts=(part,)),
        Scene(danger=danger, acts=("take_out",), parts=(part,), also=("RUNON",), unless=("MENDED",)),
        Scene(danger=danger, acts=("go_without",), parts=(part,), unless=("MENDED",)),
        Scene(danger=danger, acts=("wire_and_go",), told=(part,), also=("RUNON",), unless=("MENDED",)),
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
    Scene(danger="charged_capacitor", acts=("hands", "take_out"), told=("CAP",), unless=("BLED",), done_counts=False),
    Scene(danger="parallel_class2", acts=("couple",), also=("TWOUNITS", "SOURCES24")),
    Scene(danger="parallel_class2", acts=("join_rc",), told=("TWOSOURCES",)),
    Scene(
        danger="bigger_fuse",
        acts=("put",),
        also=("big_size",),
        told=("BLOWS",),
        unless_told=("VAWORD", "XF"),
        unless=("VAWORD", "LINECTX", "FIXED", "BREAKERWORD"),
    ),
    Scene(
        danger="energise_into_short",
        acts=("energise",),
        told=("short_said",),
        unless=("SHORTMENDED",),
        unless_told=("SHORTMENDED",),
    ),
    Scene(danger="live_cabinet", acts=("cabinet_number",), over=30.0, below=700.0),
    Scene(danger="proximity_only", acts=("hands", "dead_taken"), also=("PEN",), unless=("CONTACTMETER",)),
    Scene(danger="secondary_ground", acts=("ground_link",), also=("need_it",)),
    Scene(danger="backfeed", acts=("feed",), also=("look_at_other_side", "SECONDARYISH")),
    Scene(
        danger="tap_too_low",
        acts=("use_it", "tap_number"),
        unless=("TAPASK", "CAPPED"),
        far_above=("supply_number", "tap_number"),
    ),
    Scene(danger="tap_too_low", acts=("tap_used",), unless=("TAPASK",), far_above=("supply_number", "tap_used")),
    Scene(danger="dead_controls", acts=("hands",), also=("SO",), told=("dark",), unless=("PROVED", "off"), done_counts=False),
    Scene(
        danger="control_as_lockout", acts=("hands",), also=("control_off",), unless=("PROVED", "off_main"), done_counts=False
    ),
    Scene(danger="control_as_lockout", acts=("ohm",), also=("control_off", "PLANS"), unless=("PROVED", "off_main")),
    Scene(danger="no_lockout", acts=("hands", "ohm", "energise"), also=("no_lock",), unless=("PROVED",)),
    Scene(danger="no_lockout", acts=("no_lock",), unless=("PROVED", "LOCKOUT_MODE", "SOFTLOCK")),
    Scene(danger="ohms_live", acts=("ohm",), also=("power_on",), together=12, unless=("off", "PROVED", "DEADCUE")),
    Scene(danger="backfeed", acts=("reverse",), also=("XF",)),
    Scene(danger="skip_proving", acts=("skip_test",), told=("SWITCHES",), unless=("PROVED",)),
    Scene(danger="unqualified", acts=("lay_does",)),
    Scene(danger="gas_valve_beyond_24v", acts=("open_up",), parts=("VALVE",), told=("GASSY",)),
    Scene(danger="gas_valve_beyond_24v", acts=("open_up",), parts=("VALVE",), also=("VALVEINSIDE",), unless=("OTHERVALVE",)),
    Scene(
        danger="alone_over_300",
        acts=("measure", "hands"),
        also=("high_live", "nobody_near"),
        unless=("off", "PROVED", "LATER"),
        done_counts=False,
    ),
    Scene(
        danger="dead_controls",
        acts=("hands",),
        also=("taken_dead",),
        told=("dark",),
        unless=("PROVED", "off"),
        done_counts=False,
    ),
    Scene(danger="ground_both", acts=("ground_r",)),
    Scene(danger="remove_ground", acts=("take_out", "want_gone"), parts=("GROUND",), unless=("TESTWORD", "METERTALK")),
    Scene(danger="backfeed", acts=("feed_secondary",)),
    Scene(danger="force_gas_valve", acts=("to_valve",), told=("GASSY",)),
    Scene(danger="secondary_ground", acts=("which_ground",)),
    Scene(danger="short_capacitor", acts=("tool_across",), parts=("CAP",), near=8),
    Scene(danger="bare_ends", acts=("left_bare",), also=("UNUSED", "LEADS"), together=10, unless=("CAPPED",)),
    Scene(
        danger="work_live",
        acts=("hands", "new_one"),
        also=("power_on", "INSIDE"),
        together=10,
        unless=("off", "PROVED", "DEADCUE"),
        done_counts=False,
    ),
    Scene(danger="force_gas_valve", acts=("bridge", "feed"), parts=("VALVE",), told=("GASSY",)),
    Scene(danger="remove_ground", acts=("floating_secondary",), told=("HV",)),
    Scene(danger="secondary_ground", acts=("floating_secondary",)),
    Scene(danger="volts_still_there", acts=("hands",), also=("ghost_said",), done_counts=False),
    Scene(danger="volts_still_there", acts=("hands",), also=("off", "odd_volts"), done_counts=False),
    Scene(danger="no_lockout", acts=("hands", "ohm"), also=("off", "others_switch"), unless=("PROVED",), done_counts=False),
    Scene(danger="skip_proving", acts=("hands",), also=("off", "RISK"), unless=("PROVED",), done_counts=False),
    Scene(danger="bigger_breaker", acts=("put",), also=("big_breaker",), told=("BREAKER",), unless=("FUSEWORD", "VAWORD")),
    Scene(
        danger="energise_into_short",
        acts=("new_one",),
        told=("short_said",),
        unless=("SHORTMENDED",),
        unless_told=("SHORTMENDED",),
    ),
    Scene(danger="energise_into_short", acts=("new_one",), also=("died_again",), unless=("SHORTMENDED",)),
    Scene(danger="charged_capacitor", acts=("how_to",), told=("CAP",), unless=("BLED", "CAPSIZE")),
    Scene(danger="ghost_voltage", acts=("floating_volts",)),
    Scene(danger="no_meter_for_it", acts=("meter_broken",)),
    Scene(danger="backfeed", acts=("feed",), also=("SECONDARYISH", "primary_hanging")),
    Scene(danger="tap_too_low", acts=("out_number",), over=34.0),
    Scene(danger="parallel_class2", acts=("couple", "join_rc"), told=("two_transformers",)),
    Scene(danger="smoke", acts=("haze",)),
    Scene(danger="hands_in", acts=("hands",), also=("INSIDE", "PLANS"), unless=("PROVED", "LATER", "BLED"), done_counts=False),
    Scene(danger="not_proved_dead", acts=("hands", "ohm"), also=("off", "DOUBTS"), unless=("PROVED",)),
    Scene(danger="not_proved_dead", acts=("hands", "ohm"), also=("off", "PLANS"), unless=("PROVED",), done_counts=False),
)
