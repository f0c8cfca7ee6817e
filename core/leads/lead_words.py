"""Sentences about leads and windings."""

from collections.abc import Sequence

from core.leads.evidence import Pair
from core.leads.wound import Wound
from core.said import Said, say
from core.standards.lead_colours import COLOURS

Word = Said | str


def lead_name(lead: str) -> Word:
    """A lead as it is written: a colour, a colour with its stripe, or a mark in capitals."""
    base, _, stripe = lead.partition("/")
    if stripe:
        return say("{base}/{stripe}", base=base, stripe=stripe)
    return lead if lead in COLOURS else lead.upper()


def pair_name(leads: Pair, order: Sequence[str]) -> Said:
    """Two leads as one place to measure, in the order in which leads were named."""
    leads = (leads[1], leads[0]) if order.index(leads[1]) < order.index(leads[0]) else leads
    return say("{one}–{other}", one=lead_name(leads[0]), other=lead_name(leads[1]))


def listed(words: Sequence[Word]) -> Word:
    """Words with commas between them."""
    if not words:
        return ""
    return words[0] if len(words) == 1 else say("{first}, {rest}", first=words[0], rest=listed(words[1:]))


def winding_line(wound: Wound) -> Said:
    """What the leads of one winding are, common first."""
    names = [lead_name(lead) for lead, _ in wound.leads]
    if wound.role == "secondary":
        if len(names) == 3:
            return say(
                "Secondary {volts} V: {one} and {other}, centre tap {centre}",
                volts=f"{float(wound.leads[0][1]) * 2.0:g}",
                one=names[0],
                other=names[2],
                centre=names[1],
            )
        return say("Secondary {volts} V: {one} and {other}", volts=wound.leads[0][1], one=names[0], other=names[1])
    if len(names) == 2:
        return say("Primary {volts} V: {one} and {other}", volts=wound.leads[0][1], one=names[0], other=names[1])
    taps = [say("{lead} {volts} V", lead=lead_name(lead), volts=role) for lead, role in wound.leads[1:]]
    return say("Primary: {common} common, {taps}", common=names[0], taps=listed(taps))


def order_line(wound: Wound) -> Said:
    """A primary in as few words as tell it: its leads in order."""
    names = [lead_name(lead) for lead, _ in wound.leads]
    if len(names) == 2:
        return say("{one} and {other} are {volts} V", one=names[0], other=names[1], volts=wound.leads[0][1])
    taps = [say("{lead} {volts} V", lead=lead_name(lead), volts=role) for lead, role in wound.leads[1:]]
    return say("{common} common, {taps}", common=names[0], taps=listed(taps))


def map_line(windings: Sequence[Wound]) -> Word:
    """A whole map in one line."""
    return _semicolons([winding_line(w) for w in windings])


def _semicolons(words: Sequence[Said]) -> Word:
    if not words:
        return ""
    return words[0] if len(words) == 1 else say("{first}; {rest}", first=words[0], rest=_semicolons(words[1:]))
