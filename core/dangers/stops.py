"""Dangers to people, now: no diagnosis until it is answered that all is well."""

from typing import Final

from core.dangers.danger import Danger
from core.said import Said, say
from core.standards.source import COMMON_PRACTICE, Source

FIRST_AID: Final = Source("29 CFR 1910.151", "first aid; OSHA 3075, Controlling electrical hazards", "from memory")
FIRE: Final = Source("29 CFR 1910.38 and 1910.39", "emergency action and fire prevention", "from memory")
FUEL_GAS: Final = Source("NFPA 54, National Fuel Gas Code", "emergency procedures", "from memory")


def _stop(name: str, says: Said, instead: Said, trigger: str, source: Source) -> Danger:
    return Danger(name=name, kind="stop", says=says, instead=instead, trigger=trigger, source=source)


STOPS: Final = (
    _stop(
        "somebody_hurt",
        say("STOP. Call 911 or your local emergency number now"),
        say("Power off before you touch anyone. Not breathing: CPR and an AED, stay on the line"),
        "somebody hurt, burned, fallen, passed out, not breathing",
        FIRST_AID,
    ),
    _stop(
        "gas_smell",
        say("STOP. Gas: everybody out, no switch, no flame, no phone inside"),
        say("From outside call the gas company, or 911 or your local emergency number"),
        "a smell of gas, a gas leak",
        FUEL_GAS,
    ),
    _stop(
        "co_alarm",
        say("STOP. Carbon monoxide: everybody out into fresh air"),
        say("From outside call 911 or your local emergency number. Headache or dizzy: say so"),
        "a carbon monoxide alarm, or people dizzy or with headaches at a fuel burner",
        FUEL_GAS,
    ),
    _stop(
        "fire",
        say("STOP. Fire: everybody out, call 911 or your local emergency number"),
        say("Power off at the disconnect only if you can reach it safely. No water on it"),
        "flames, something on fire",
        FIRE,
    ),
    _stop(
        "smoke",
        say("STOP. Power off at the disconnect, if you can reach it safely, and stand clear"),
        say("Smoke that keeps on, or any flame: everybody out, call 911 or your local emergency number"),
        "smoke coming out",
        FIRE,
    ),
    _stop(
        "burning_smell",
        say("STOP. Something is burning: power off at the disconnect and stand clear"),
        say("Smoke or flame: everybody out, call 911 or your local emergency number"),
        "a smell of burning now",
        FIRE,
    ),
    _stop(
        "shock",
        say("STOP. Hands out, power off at the disconnect. Nobody else touches it"),
        say(
            "Burn, chest pain, dizzy, numb, or it held you: call 911 or your local emergency number. Any shock: see a doctor today"
        ),
        "a shock, bite, zap or tingle",
        FIRST_AID,
    ),
    _stop(
        "arc_flash",
        say("STOP. It arced: power off at the disconnect from where you stand safely, and keep out"),
        say("Burned, or eyes hurt: call 911 or your local emergency number"),
        "an arc, a flash, a bang in the box",
        COMMON_PRACTICE,
    ),
)
"""The worst first."""
