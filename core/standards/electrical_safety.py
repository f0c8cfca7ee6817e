"""Working on or near what may be live: the published limits that the cautions and refusals stand on."""

from dataclasses import dataclass
from typing import Final

from core.standards.source import Source

DE_ENERGISE: Final = Source("29 CFR 1910.333", "(a)(1)")
"""Live parts are to be made dead before work on them; exempt only where they are below 50 V and add no burn or explosion risk."""
CONTROLS_ARE_NO_LOCKOUT: Final = Source("29 CFR 1910.333", "(b)(2)(ii)")
"""Push buttons, selector switches and interlocks must not be the sole means of making a circuit dead."""
STORED_ENERGY: Final = Source("29 CFR 1910.333", "(b)(2)(ii)(C)", "clause letter from memory")
"""Stored energy is released and capacitors are discharged; they count as live while that is done."""
VERIFY_DEAD: Final = Source("29 CFR 1910.333", "(b)(2)(iv)", "clause letter from memory")
"""A qualified person tests the parts, and checks for induced voltage and backfeed."""
PROVE_TESTER: Final = Source("DOE Electrical Safety Handbook", "2.13.2.1")
"""The tester is checked before and after, also at 600 V and below; a proximity tester does not prove absence of voltage."""
LOCKOUT: Final = Source("29 CFR 1910.147", note="from memory")
"""The control of hazardous energy: lock and tag."""
QUALIFIED: Final = Source("29 CFR 1910.333", "(c)(2)", "from memory")
"""Only qualified persons work on or near live parts."""
LIVE_WORK_TOOLS: Final = Source("29 CFR 1910.333", "(c)(4) to (c)(7)", "from memory")
"""Lighting, ladders without conducting side rails, and no reaching blindly at live parts."""
TEST_INSTRUMENTS: Final = Source("29 CFR 1910.334", "(c)", "from memory")
"""Meter and leads are looked over before use and rated for the circuit; damaged ones are not used."""
WET_HANDS: Final = Source("29 CFR 1910.334", "(a)(5), (d)", "from memory")
"""Nothing live is handled wet."""
FUSES_AS_DESIGNED: Final = Source("29 CFR 1910.334", "(b)(3)", "from memory")
"""Overcurrent protection is not changed beyond what the installation rules allow, not even for a while."""
RESET_AFTER_TRIP: Final = Source("29 CFR 1910.334", "(b)(2)", "from memory")
"""A circuit that a device has opened is not closed again, by hand or repeatedly, before it is found safe."""
BOUNDARIES: Final = Source("NFPA 70E", "table 130.4(E)(a)", "row 50 to 150 V from memory")
"""How near a person may come to live parts."""
CAPACITOR_DISCHARGE: Final = Source("NEC", "460.6")
"""A capacitor bleeds to 50 V within a minute of its disconnection, at 600 V (now 1000 V) and below."""

DE_ENERGISE_FROM_V: Final = 50.0
"""Below this to ground a part need not be made dead. [V]"""
CAPACITOR_LEFT_V: Final = 50.0
"""What may be left on a capacitor after `CAPACITOR_WAIT_S`. [V]"""
CAPACITOR_WAIT_S: Final = 60.0
"""How long the discharge may take. [s] The bleeder may be missing: wait and measure."""
QUALIFIED_ABOVE_V: Final = 300.0
"""Live work above this is asked of nobody who has not said to be qualified for it. [V] Common practice, no source: the line where
older shock tables stepped up, judged phase to phase as NFPA 70E does, so that 277 V counts as 480 V."""
LARGEST_240_V: Final = 254.0
"""A 240 V supply goes no higher; what reads more is 277 V. [V] Source: ANSI C84.1, table 1, range B, from memory."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Boundary:
    """One row of the shock approach boundaries, phase to phase, a fixed live part."""

    above_v: float
    upto_v: float
    limited_ft: float
    restricted_ft: float | None
    """None: avoid contact."""


SHOCK_BOUNDARIES: Final = (
    Boundary(above_v=50.0, upto_v=150.0, limited_ft=3.5, restricted_ft=None),
    Boundary(above_v=150.0, upto_v=750.0, limited_ft=3.5, restricted_ft=1.0),
)
"""The newer table. Older ones split at 300 V, not at 150 V. Source: `BOUNDARIES`."""


def boundary(volts_v: float) -> Boundary | None:
    """
    The approach boundary at a voltage.

    Args:
        volts_v: Phase to phase. [V]

    Returns:
        The row, or None below 50 V (none specified) and above 750 V.

    Source:
        NFPA 70E table 130.4(E)(a).

    >>> boundary(208).restricted_ft
    1.0
    """
    return next((row for row in SHOCK_BOUNDARIES if row.above_v <= volts_v <= row.upto_v), None)
