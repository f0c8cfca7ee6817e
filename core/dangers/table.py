"""All dangers, the worst first."""

from typing import Final

from core.dangers.conditions import CONDITIONS
from core.dangers.danger import Danger
from core.dangers.noes import NOES
from core.dangers.referrals import REFERRALS
from core.dangers.stops import STOPS
from core.standards.source import Source

DANGERS: Final[dict[str, Danger]] = {row.name: row for row in (*STOPS, *NOES, *REFERRALS, *CONDITIONS)}
"""By name, in the order in which they are answered."""


def table_rows() -> tuple[tuple[str, str, str, str], ...]:
    """The developers' table: (name, kind, trigger, source) of each danger, the worst first."""
    return tuple((f"`{d.name}`", d.kind, d.trigger, _cited(d.source)) for d in DANGERS.values())


def _cited(source: Source) -> str:
    return f"{source} ({source.note})" if source.note else str(source)
