"""One common for several loads: each has its own hot wire, and all of their amps come back on the one common."""

from core.sizing.loads import Budget, Part


def common_v(loads: Budget, ohm: float) -> float:
    """
    Volts lost in the common alone.

    The loads told in VA are impedances behind their own hot wire, those told in amps draw them whatever the volts.

    Args:
        loads: What hangs on it, all at the far end.
        ohm: Of one conductor, one way. [ohm]

    Returns:
        Volts. [V]
    """
    siemens = sum(part.count / (_ohm(part, loads.rated_v) + ohm) for part in loads.known if part.amps is None)
    return ohm * (loads.rated_v * siemens + loads.load_a) / (1.0 + ohm * siemens)


def volts_on_common(part: Part, loads: Budget, ohm: float) -> float:
    """
    Volts at one load of several that share a common.

    Args:
        part: The load.
        loads: All of them.
        ohm: Of one conductor, one way. [ohm]

    Returns:
        Volts at the load. [V]

    >>> valves = Budget(parts=(Part(device="zone valve", count=3, va=8.0),), rated_v=24.0)
    >>> round(volts_on_common(valves.parts[0], valves, 1.0), 2)
    22.74
    """
    fed = loads.rated_v - common_v(loads, ohm)
    if part.amps is not None:
        return fed - ohm * part.amps
    load = _ohm(part, loads.rated_v)
    return fed * load / (load + ohm)


def _ohm(part: Part, rated_v: float) -> float:
    """Of one load told in VA. [ohm]."""
    return rated_v**2 / (part.va or 0.0)
