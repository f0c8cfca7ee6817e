"""What is safe under a condition: the condition."""

from typing import Final

from core.dangers.danger import Danger
from core.said import Said, say
from core.standards.electrical_safety import CAPACITOR_DISCHARGE, PROVE_TESTER, QUALIFIED, VERIFY_DEAD
from core.standards.source import COMMON_PRACTICE, Source


def _when(name: str, says: Said, trigger: str, source: Source, *cautions: str) -> Danger:
    return Danger(name=name, kind="caution", says=says, trigger=trigger, source=source, cautions=cautions)


CONDITIONS: Final = (
    _when(
        "over_300",
        say("277 V and up: only if you are qualified for it, rated gloves on, meter CAT III 600 V or better"),
        "a supply, tap or line reading of 277 V or more",
        QUALIFIED,
        "over_300",
        "meter_category",
    ),
    _when(
        "not_proved_dead",
        say("Off is not dead: lock it out, then live source, these terminals, live source again"),
        "dead by what is switched, not by what is measured",
        PROVE_TESTER,
        "prove_dead",
    ),
    _when(
        "hands_in",
        say("Before hands go in: lock it out, then live source, these terminals, live source again"),
        "hands on wires inside that are announced, and nothing said of proving dead",
        PROVE_TESTER,
        "prove_dead",
    ),
    _when(
        "line_live_controls_dead",
        say("Controls dead, line live: lock out and prove dead before a hand or ohms go in"),
        "readings: line or primary live, secondary or controls dead",
        PROVE_TESTER,
        "prove_dead",
    ),
    _when(
        "ghost_voltage",
        say("This may be a ghost voltage: it proves neither dead nor live. Read it again in low-impedance mode"),
        "words; or a line-side reading between 5 V and 85 % of the supply, not in low-impedance mode",
        VERIFY_DEAD,
        "ghost_voltage",
        "recheck_low_impedance",
    ),
    _when(
        "not_isolated",
        say("Power off, leads of the part lifted, and read it again: connected, it reads its neighbours"),
        "ohms read on a part still connected",
        COMMON_PRACTICE,
        "isolate_first",
    ),
    _when(
        "ground_meant",
        say("Fed from 277 V or more the 24 V side is grounded by rule: lift that bond before you call it a fault"),
        "readings: secondary near 0 ohm to the core on a supply over 150 V to ground",
        Source("29 CFR 1926.404", "(f)(1)(iii)"),
        "ground_meant",
    ),
    _when(
        "high_leg",
        say("High leg: 208 V to neutral. Find it, feed the primary phase to phase, never from that leg to neutral"),
        "a high or wild leg, a stinger, an open delta",
        Source("NEC", "110.15"),
        "high_leg",
    ),
    _when(
        "secondary_ground",
        say("Ground one 24 V side where the rule asks it: fed from over 150 V to ground or ungrounded. Else leave it as built"),
        "a question whether the secondary is to be grounded",
        Source("29 CFR 1926.404", "(f)(1)(iii); NEC 250.20(A)"),
        "local_code",
    ),
    _when(
        "charged_capacitor",
        say("Capacitor: power off, wait a minute, measure, bleed it through a resistor until it stays under 50 V"),
        "a run or start capacitor in the work",
        CAPACITOR_DISCHARGE,
        "discharge_capacitor",
    ),
    _when(
        "test_jumper",
        say("A jumper only to test, with you watching the unit: out before you step away"),
        "a safety jumped for a moment, to test, watched",
        COMMON_PRACTICE,
        "momentary_jumper",
    ),
    _when(
        "burnt_smell",
        say("Burnt: power off and prove dead before you touch it, and find what cooked it"),
        "a part that smells or looks burnt",
        COMMON_PRACTICE,
        "prove_dead",
        "find_the_short_first",
    ),
    _when(
        "live_check",
        say("Live: one hand, no tool inside, meter CAT III, leads sound. Then power off"),
        "a live test at the line side that is announced",
        QUALIFIED,
        "meter_category",
    ),
    _when(
        "alone",
        say("Alone: no live work. Tell somebody where you are and when you call back"),
        "nobody else there",
        COMMON_PRACTICE,
    ),
    _when(
        "tired",
        say("Tired: dead tests only, or hand it over. Nothing live today"),
        "tired, up all night, a long shift",
        COMMON_PRACTICE,
    ),
    _when(
        "rooftop_edge",
        say("Roof or height: tie off, and step back from the edge before you read the phone"),
        "an edge or a height",
        Source("29 CFR 1910.28", note="from memory"),
    ),
)
"""The worst first."""
