"""Two transformers together: what circulates, and the phase test before two commons are joined."""

from core.circuit.windings import loss_shares
from core.standards.device_loads import CONTROLS_V


def circulating_a(first_v: float, second_v: float, ohms: float) -> float:
    """
    Amps that run round two secondaries in parallel with nothing connected.

    Args:
        first_v: Open volts of one. [V]
        second_v: Open volts of the other. [V]
        ohms: Of both together. [ohm]

    Returns:
        Amps. [A]

    Source:
        I. Kosow, Electric Machinery and Transformers, Ex. 14-32, p. 540.

    >>> round(circulating_a(6.3, 5.0, 0.35), 2)
    3.71
    """
    return abs(first_v - second_v) / ohms


def secondary_side_ohm(unit_va: float, rated_v: float = CONTROLS_V) -> float:
    """
    What a middling unit puts between its open volts and its terminals, both windings seen from the secondary.

    Args:
        unit_va: Rating. [VA]
        rated_v: Rated secondary volts. [V]

    Returns:
        Ohms. [ohm]
    """
    return sum(loss_shares(unit_va)) * rated_v**2 / unit_va


def phase_test_volts(first_v: float, second_v: float) -> tuple[float, float]:
    """
    What a meter reads between the two R sides once the commons are joined: in phase, and out of phase.

    Args:
        first_v: Volts of one. [V]
        second_v: Volts of the other. [V]

    Returns:
        Difference and sum. [V]

    >>> phase_test_volts(24.0, 24.0)
    (0.0, 48.0)
    """
    return abs(first_v - second_v), first_v + second_v
