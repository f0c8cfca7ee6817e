"""Which dangers are answered as well by the words of another."""

from collections.abc import Collection
from typing import Final

_DEAD: Final = frozenset(
    {"control_as_lockout", "dead_controls", "skip_proving", "no_lockout", "work_live", "proximity_only", "volts_still_there"}
)
_SAFETIES: Final = frozenset({"bypass_gas_safety", "bypass_float", "bypass_pressure", "bypass_freeze"})
EQUALS: Final = {
    "smoke": {"burning_smell", "fire"},
    "burning_smell": {"smoke", "fire"},
    "arc_flash": {"fire"},
    "control_as_lockout": _DEAD,
    "dead_controls": _DEAD,
    "skip_proving": _DEAD,
    "no_lockout": {"control_as_lockout", "dead_controls", "work_live"},
    "work_live": {"control_as_lockout", "dead_controls", "no_lockout", "live_over_300", "alone_over_300"},
    "proximity_only": {"skip_proving"},
    "not_proved_dead": _DEAD | {"hands_in", "line_live_controls_dead"},
    "hands_in": _DEAD | {"not_proved_dead", "line_live_controls_dead"},
    "line_live_controls_dead": _DEAD | {"not_proved_dead", "hands_in"},
    "leave_jumper": _SAFETIES | {"bypass_fuse", "defeat_interlock"},
    **{key: {"leave_jumper"} for key in _SAFETIES | {"defeat_interlock"}},
    "bypass_fuse": {"keep_resetting"},
    "keep_resetting": {"energise_into_short"},
    "energise_into_short": {"keep_resetting"},
    "live_over_300": {"unqualified", "above_licence", "alone_over_300"},
    "above_licence": {"live_over_300", "unqualified"},
    "unqualified": {"above_licence", "live_over_300"},
    "alone_over_300": {"live_over_300"},
    "ghost_voltage": {"volts_still_there"},
    "over_300": {"live_over_300", "alone_over_300"},
    "live_check": {"over_300", "live_over_300", "alone_over_300"},
    "alone": {"alone_over_300"},
    "secondary_ground": {"ground_meant"},
    "ground_meant": {"secondary_ground"},
    "charged_capacitor": {"short_capacitor"},
    "live_cabinet": {"shock"},
}
"""Where the words that are said to the one keep the hand from the other."""


def answers(danger: str, names: Collection[str]) -> bool:
    """
    True where one of the dangers that were heard answers what was told.

    Args:
        danger: What the writer meant.
        names: What was heard.
    """
    return danger in names or not EQUALS.get(danger, set()).isdisjoint(names)
