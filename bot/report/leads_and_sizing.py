"""The map of leads and what to buy, as parts of a report."""

from typing import Final

from bot.report.amounts import percent, rounded
from bot.report.job_log import JobLog
from bot.report.paper import Part, Tell
from core.advice import Landing, Winding
from core.said import Said, say

_WINDING: Final[dict[str, Said]] = {
    "primary": say("Primary"),
    "secondary": say("Secondary"),
    "unknown": say("Winding not told apart"),
}
_ROLE: Final[dict[str, Said]] = {
    "common": say("common"),
    "ct": say("center tap"),
    "unknown": say("unknown"),
    "ground": say("ground"),
}
_SIZES: Final[tuple[tuple[str, str, Said], ...]] = (
    ("load_va", "VA", say("Load")),
    ("inrush_va", "VA", say("At pull-in")),
    ("pick_va", "VA", say("Transformer to buy")),
    ("secondary_amps", "A", say("Secondary current")),
    ("primary_amps", "A", say("Primary current")),
    ("fuse_amps", "A", say("Fuse, low-voltage side")),
    ("primary_fuse_amps", "A", say("Fuse, line side")),
    ("drop_volts", "V", say("Lost in the wire")),
    ("volts_at_load", "V", say("Left at the load")),
    ("longest_feet", "ft", say("Longest run")),
    ("output_volts", "V", say("Output")),
)
"""Each number of a sizing with its unit and what it is called."""


def leads(log: JobLog, tell: Tell) -> Part:
    """
    Which lead is which, and which to land.

    Args:
        log: The job.
        tell: The reader's language.
    """
    lines: list[str] = []
    if log.leads is not None:
        lines = [_winding(winding, tell) for winding in log.leads.windings]
        lines.append(tell(say("{percent} sure of this map", percent=percent(log.leads.confidence))))
        if log.leads.land is not None:
            lines += [tell(line) for line in landing(log.leads.land)]
    return Part(name="leads", title=tell(say("Leads")), mark="computed", lines=tuple(lines), run_in=True)


def _winding(winding: Winding, tell: Tell) -> str:
    """One winding in a line: its leads in order with what each is."""
    each = " · ".join(tell(say("{lead} {role}", lead=lead, role=_role(role))) for lead, role in winding.leads)
    return f"{tell(_WINDING[winding.role])}: {each}"


def _role(role: str) -> object:
    return _ROLE.get(role) or (f"{role} V" if role.replace(".", "", 1).isdigit() else role)


def landing(land: Landing) -> tuple[Said, ...]:
    """
    Which lead to land for a supply, and what comes out.

    Args:
        land: What core found.
    """
    if not land.fits or land.lead is None:
        return (say("No lead fits {volts:g} V", volts=land.supply_volts),)
    lines = [say("For {volts:g} V land {lead}", volts=land.supply_volts, lead=land.lead)]
    if land.volts_out is not None:
        low, high = (rounded(v, "V") for v in land.volts_out)
        lines.append(say("Expect {low} to {high} out", low=low, high=high))
    return tuple(lines)


def sizing(log: JobLog, tell: Tell) -> Part:
    """
    What to buy and how to fuse it.

    Args:
        log: The job.
        tell: The reader's language.
    """
    lines: list[str] = []
    if (found := log.sizing) is not None:
        for name, unit, label in _SIZES:
            if (value := getattr(found, name)) is not None:
                lines.append(f"{tell(label)}: {rounded(value, unit)}")
        if found.refused is not None:
            lines.append(tell(found.refused))
    return Part(name="sizing", title=tell(say("Sizing")), mark="computed", lines=tuple(lines), run_in=True)
