"""What is not ours to decide: who does."""

from typing import Final

from core.dangers.danger import Danger
from core.said import Said, say
from core.standards.electrical_safety import QUALIFIED
from core.standards.source import COMMON_PRACTICE, Source


def _refer(name: str, says: Said, trigger: str, source: Source, *cautions: str) -> Danger:
    return Danger(name=name, kind="refer", says=says, trigger=trigger, source=source, cautions=cautions)


REFERRALS: Final = (
    _refer(
        "service_equipment",
        say("Service, meter and main: the utility and a licensed electrician do that, not this job"),
        "the meter socket, the main breaker or lugs, the service entrance",
        Source("NEC", "article 230", "from memory"),
        "licensed_hand",
    ),
    _refer(
        "gas_valve_beyond_24v",
        say("Beyond its 24 V the gas valve is for a licensed gas fitter: test volts at its coil, open nothing"),
        "a gas valve opened, adjusted, forced or repaired",
        Source("NFPA 54, National Fuel Gas Code", "qualified agency", "from memory"),
        "licensed_hand",
    ),
    _refer(
        "live_over_300",
        say("No. 277 and 480 V live is only for a person qualified for it: power off and locked out, or call one"),
        "work at 277 or 480 V by somebody not qualified",
        QUALIFIED,
        "over_300",
        "licensed_hand",
    ),
    _refer(
        "above_licence",
        say("Above your license: a licensed hand does it or stands beside you. The licensing board decides"),
        "work that the license does not cover",
        COMMON_PRACTICE,
        "licensed_hand",
    ),
    _refer(
        "code_sign_off",
        say("The inspector who has jurisdiction signs that off. This is no code approval"),
        "a question whether it is to code, legal, or will pass",
        Source("NEC", "90.4", "from memory"),
        "local_code",
    ),
    _refer(
        "refrigerant",
        say("The refrigerant circuit is for a certified hand"),
        "the refrigerant circuit opened or vented",
        Source("40 CFR 82.161", note="from memory"),
        "licensed_hand",
    ),
)
"""The worst first."""
