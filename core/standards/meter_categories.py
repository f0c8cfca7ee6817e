"""Which measurement category a meter must carry for a circuit."""

from dataclasses import dataclass
from typing import Final

from core.standards.source import Source

SOURCE: Final = Source("IEC 61010-1", "measurement categories")
IMPULSE_SOURCE: Final = Source("IEC 61010-2-030", note="from memory")


@dataclass(frozen=True, slots=True, kw_only=True)
class MeterCategory:
    """One category: what it may be put on, and what impulse it must survive."""

    name: str
    circuits: str
    impulse_v: tuple[tuple[float, float], ...]
    """(working volts, impulse volts) [V]. Source: `IMPULSE_SOURCE`."""


CATEGORIES: Final = {
    row.name: row
    for row in (
        MeterCategory(name="CAT II", circuits="what is plugged in", impulse_v=((300.0, 2500.0), (600.0, 4000.0))),
        MeterCategory(
            name="CAT III",
            circuits="the building's wiring: panels, breakers, fixed equipment",
            impulse_v=((300.0, 4000.0), (600.0, 6000.0)),
        ),
        MeterCategory(
            name="CAT IV", circuits="the service, the meter, its first breaker", impulse_v=((300.0, 6000.0), (600.0, 8000.0))
        ),
    )
}
"""By name, the weakest first. A control transformer's line side is fixed equipment: CAT III."""

LINE_SIDE: Final = "CAT III"
"""What a meter must carry on the line side of a control transformer."""


def impulse_v(category: str, working_v: float) -> float:
    """
    The impulse that a meter of this marking survives.

    Args:
        category: `CAT II`, `CAT III` or `CAT IV`.
        working_v: The volts printed beside the category. [V]

    Returns:
        Impulse voltage. [V]

    Raises:
        KeyError: The category or its voltage is not in the table.

    Source:
        IEC 61010-2-030, from memory.

    >>> impulse_v("CAT II", 600) == impulse_v("CAT III", 300)
    True
    """
    return dict(CATEGORIES[category].impulse_v)[float(working_v)]
