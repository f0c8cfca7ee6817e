"""A reading or a fact in a few characters, as it is echoed: "primary 118 V"."""

from typing import Final

from core.measures import MEASURES
from core.readings import OPEN, Fact, Reading, Value
from core.said import Said, say

PLACES: Final[dict[str, Said]] = {
    "line_volts": say("line"),
    "primary_volts": say("primary"),
    "secondary_volts": say("secondary"),
    "secondary_volts_lifted": say("secondary lifted"),
    "control_volts": say("R–C"),
    "coil_volts": say("coil"),
    "fuse_volts": say("across the fuse"),
    "primary_amps": say("primary"),
    "secondary_amps": say("secondary"),
    "primary_ohms": say("primary"),
    "secondary_ohms": say("secondary"),
    "primary_secondary_ohms": say("primary–secondary"),
    "primary_ground_ohms": say("primary–core"),
    "secondary_ground_ohms": say("secondary–core"),
    "load_ohms": say("R–C into the load"),
    "fuse_ohms": say("fuse"),
    "coil_ohms": say("coil"),
    "lead_ohms": say("leads"),
    "lead_volts": say("leads"),
}
"""The short name of each measure's place; a test holds it complete."""

SYMPTOM_WORDS: Final[dict[str, Said]] = {
    "no_control_power": say("no control power"),
    "intermittent": say("comes and goes"),
    "hot": say("hot"),
    "hum": say("hums"),
    "burnt": say("burnt"),
    "blows_fuse": say("blows fuses"),
    "trips_breaker": say("trips the breaker"),
    "chatter": say("chatters"),
    "blown_fuse": say("fuse blown"),
    "shock": say("shock"),
    "smoke": say("smoke"),
}

FACT_WORDS: Final[dict[str, Said]] = {
    "supply_volts": say("supply {value:g} V"),
    "tap_volts": say("on the {value:g} V tap"),
    "tap_lead": say("landed on {value}"),
    "rated_va": say("rated {value:g} VA"),
    "rated_secondary_volts": say("rated {value:g} V out"),
    "run_feet": say("{value:.4g} ft one way"),
    "wire_awg": say("{value:g} AWG"),
    "fuse_amps": say("fuse {value:g} A"),
    "copper_celsius": say("copper at {value:g} °C"),
    "stranded": say("stranded"),
    "core_inches": say("core {value:g} in"),
    "supply_hertz": say("{value:g} Hz"),
}


def amount(value: Value, unit: str) -> Said:
    """A value with its unit, as a technician writes it: 19.8 Ω, 1.2 MΩ, open."""
    if value == OPEN:
        return say("open")
    number = float(value)
    if unit != "ohm":
        return say("{number:.4g} {unit}", number=number, unit=unit)
    for size, prefix in ((1e6, "M"), (1e3, "k")):
        if number >= size:
            return say("{number:.3g} {unit}", number=number / size, unit=f"{prefix}Ω")
    return say("{number:.3g} {unit}", number=number, unit="Ω")


def reading_words(reading: Reading) -> Said:
    """One reading: place, value, and a mark where the place or the unit was assumed."""
    value = amount(reading.value, MEASURES[reading.measure].unit)
    if reading.leads is not None and MEASURES[reading.measure].pair:
        place = say("{one}–{other}", one=reading.leads[0], other=reading.leads[1])
    else:
        place = PLACES[reading.measure]
    if reading.assumed:
        return say("{place} {value} (?)", place=place, value=value)
    return say("{place} {value}", place=place, value=value)


def fact_words(fact: Fact) -> Said:
    """One fact."""
    if fact.fact == "symptom":
        return SYMPTOM_WORDS[str(fact.value)]
    if fact.fact == "load":
        return _load_words(fact)
    if fact.fact == "lead_is":
        return say("{lead} is {role}", lead=fact.lead or "", role=fact.role or "")
    if fact.fact == "nameplate_taps":
        taps = fact.value if isinstance(fact.value, tuple) else ()
        return say("taps {volts} V", volts="/".join(f"{v:g}" for v in taps))
    if isinstance(fact.value, tuple):
        return say("core {sides} in", sides=" × ".join(f"{side:g}" for side in fact.value))
    return say(FACT_WORDS[fact.fact].template, value=fact.value)


def _load_words(fact: Fact) -> Said:
    device = fact.device or "load"
    if fact.value is None:
        return say("{count} × {device}", count=fact.count or 1, device=device)
    named = {"count": fact.count or 1, "device": device, "value": fact.value, "unit": fact.unit or "VA"}
    if fact.inrush is not None:
        return say("{count} × {device} {value:g} {unit}, pulls in {inrush:g}", inrush=fact.inrush, **named)
    return say("{count} × {device} {value:g} {unit}", **named)
