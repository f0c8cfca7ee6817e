"""What was told of the unit, as rows of a report: a table of facts and what each is called."""

from collections.abc import Callable
from typing import Final

from bot.report.amounts import amount
from bot.report.paper import Tell
from bot.wording.amounts import SYMPTOM_WORDS
from core.readings import FACTS, Fact
from core.said import Said, say

LABELS: Final[dict[str, Said]] = {
    "supply_volts": say("Supply"),
    "supply_hertz": say("Frequency"),
    "tap_volts": say("Tap in use"),
    "tap_lead": say("Lead landed"),
    "nameplate_taps": say("Taps"),
    "rated_va": say("Transformer"),
    "rated_secondary_volts": say("Secondary"),
    "load": say("Load"),
    "run_feet": say("Wire run"),
    "wire_awg": say("Wire"),
    "copper_celsius": say("Wire temperature"),
    "stranded": say("Wire kind"),
    "fuse_amps": say("Fuse"),
    "core_inches": say("Core"),
    "lead_is": say("Leads told"),
    "symptom": say("Symptom"),
}
"""Every fact and what a report calls it, in the order in which they stand."""

_MANY: Final = frozenset({"load", "lead_is", "symptom", "run_feet"})
"""Facts of which several stand side by side; of the others the latest counts."""


def rows(facts: tuple[Fact, ...], tell: Tell) -> tuple[tuple[str, str], ...]:
    """
    What was told, as (label, value).

    Args:
        facts: The facts that stand, in order.
        tell: The reader's language.
    """
    found = []
    for name, label in LABELS.items():
        of_name = [f for f in facts if f.fact == name]
        kept = of_name if name in _MANY else of_name[-1:]
        values = dict.fromkeys(value for fact in kept if (value := _value(fact, tell)))
        if values:
            found.append((tell(label), " · ".join(values)))
    return tuple(found)


def _value(fact: Fact, tell: Tell) -> str:
    special = _SPECIAL.get(fact.fact)
    return _plain(fact, tell) if special is None else special(fact, tell)


def _plain(fact: Fact, tell: Tell) -> str:
    unit = fact.unit or FACTS[fact.fact] or ""
    if isinstance(fact.value, tuple):
        return amount_list(fact.value, unit)
    if isinstance(fact.value, int | float) and not isinstance(fact.value, bool):
        return amount(float(fact.value), unit)
    return tell(say("{word}", word=fact.value)) if fact.value is not None else ""


def amount_list(values: tuple[float, ...], unit: str) -> str:
    """
    Values that share a unit.

    Args:
        values: Numbers in the unit.
        unit: A unit of the contract.

    >>> amount_list((120.0, 208.0), "V")
    '120/208 V'
    """
    return "/".join(f"{value:g}" for value in values) + f" {unit}"


def _load(fact: Fact, tell: Tell) -> str:
    device = tell(say("{word}", word=fact.device)) if fact.device else ""
    many = f"{fact.count} × " if fact.count and fact.count > 1 else ""
    each = amount(float(fact.value), fact.unit or "VA") if isinstance(fact.value, int | float) else ""
    pull_in = tell(say("{va:g} VA pulling in", va=fact.inrush)) if fact.inrush is not None else ""
    return ", ".join(part for part in (f"{many}{device} {each}".strip(), pull_in) if part)


def _wire(fact: Fact, _tell: Tell) -> str:
    return f"AWG {fact.value:g}" if isinstance(fact.value, int | float) else str(fact.value)


def _stranded(_fact: Fact, tell: Tell) -> str:
    return tell(say("stranded"))


def _lead(fact: Fact, tell: Tell) -> str:
    role = amount(float(fact.role), "V") if fact.role and fact.role.replace(".", "", 1).isdigit() else fact.role
    return tell(say("{lead} is {role}", lead=fact.lead, role=role)) if fact.lead and role else ""


def _symptom(fact: Fact, tell: Tell) -> str:
    return tell(SYMPTOM_WORDS[str(fact.value)]) if str(fact.value) in SYMPTOM_WORDS else str(fact.value)


_SPECIAL: Final[dict[str, Callable[[Fact, Tell], str]]] = {
    "load": _load,
    "wire_awg": _wire,
    "stranded": _stranded,
    "lead_is": _lead,
    "symptom": _symptom,
}
