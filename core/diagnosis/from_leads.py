"""Ohms between two named leads as ohms of a winding, where it is told what the leads are."""

from typing import Final, Literal

from core.readings import Job, Reading

Side = Literal["primary", "secondary", "ground"]
BETWEEN: Final[dict[frozenset[Side], str]] = {
    frozenset({"primary", "secondary"}): "primary_secondary_ohms",
    frozenset({"primary", "ground"}): "primary_ground_ohms",
    frozenset({"secondary", "ground"}): "secondary_ground_ohms",
}
SECONDARY_ROLES: Final = frozenset({"secondary", "24", "ct", "12"})


def of_windings(job: Job) -> tuple[Reading, ...]:
    """
    Readings of windings that pairs of leads amount to.

    Across a winding only the pair in use counts: common and the tap that is landed, or an open anywhere between two leads of one winding.

    Args:
        job: The job so far.

    Returns:
        In the order in which they were taken.
    """
    roles = _roles(job)
    tap = job.told("tap_lead")
    in_use = None if tap is None else str(tap.value)
    found = []
    for reading in job.readings:
        if reading.measure == "lead_ohms" and reading.leads is not None:
            measure = _measure(reading, roles, in_use)
            if measure is not None:
                found.append(Reading(measure=measure, value=reading.value, not_isolated=reading.not_isolated))
    return tuple(found)


def _roles(job: Job) -> dict[str, str]:
    told = {str(fact.lead): str(fact.role) for fact in job.every("lead_is") if fact.lead is not None}
    return {"ground": "ground"} | told


def _side(role: str) -> Side:
    if role == "ground":
        return "ground"
    return "secondary" if role in SECONDARY_ROLES else "primary"


def _measure(reading: Reading, roles: dict[str, str], in_use: str | None) -> str | None:
    first, second = reading.leads or ("", "")
    named = [roles.get(lead, "tap" if lead == in_use else "") for lead in (first, second)]
    if not all(named):
        return None
    sides: frozenset[Side] = frozenset(_side(role) for role in named)
    if len(sides) > 1:
        return BETWEEN[sides]
    (side,) = sides
    if side == "ground":
        return None
    if side == "secondary":
        return "secondary_ohms" if "ct" not in named or reading.value == "open" else None
    is_in_use = "common" in named and (
        in_use in reading.leads if in_use is not None and reading.leads else _is_the_tap(named, roles)
    )
    return "primary_ohms" if is_in_use or reading.value == "open" else None


def _is_the_tap(named: list[str], roles: dict[str, str]) -> bool:
    """With one tap besides common there is no other to be in use."""
    taps = [role for role in roles.values() if role not in {"common", "ground"} and role not in SECONDARY_ROLES]
    return len(taps) == 1 and taps[0] in named
