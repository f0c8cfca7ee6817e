"""What the coil at the far end of a wire sees while it pulls in."""

from dataclasses import replace

from core.sizing.common import volts_on_common
from core.sizing.loads import Budget
from core.sizing.told import Told
from core.sizing.wire import Draw, pull_in_volts, volts_left


def end_volts(told: Told, loads: Budget, ohm: float) -> float | None:
    """
    Volts at the end of a run while its largest coil pulls in: through the windings of the unit where that is known, else from full volts.

    Args:
        told: The job.
        loads: What hangs on the run.
        ohm: Of the run there and back. [ohm]

    Returns:
        Volts, or None where no pull-in was told. [V]
    """
    peak = loads.inrush_va
    if peak is None:
        return None
    if told.rated_va is None:
        return volts_left(Draw(va=peak, rated_v=loads.rated_v), ohm)
    beside = (told.load_va or 0.0) - (loads.load_va or 0.0)
    return pull_in_volts(told.rated_va, peak, ohm, loads.rated_v, max(beside, 0.0))[0]


def common_end_volts(loads: Budget, ohm: float) -> float | None:
    """
    Volts at the coil that pulls in while the others of its common are sealed, from full volts at the transformer.

    Args:
        loads: What hangs on the common.
        ohm: Of one conductor, one way. [ohm]

    Returns:
        Volts of the worst of them, or None where no pull-in was told. [V]
    """
    seen = []
    for part in loads.known:
        if part.inrush_va is None:
            continue
        pulling = replace(part, count=1, va=part.inrush_va, amps=None)
        others = [p if p is not part else replace(p, count=p.count - 1) for p in loads.known]
        together = Budget(parts=(pulling, *(p for p in others if p.count)), rated_v=loads.rated_v)
        seen.append(volts_on_common(pulling, together, ohm))
    return min(seen, default=None)
