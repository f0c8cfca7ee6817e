"""Letters that are terminals: those of a thermostat, and those that a compressor calls its own."""

from grammar.binding.draft import Draft, Site


def control_letters(draft: Draft, site: Site) -> bool:
    """R to G, Y to ground: terminals of a thermostat rather than colours, where the volts are those of the control circuit."""
    ends = draft.phrases[site.at].ends
    if site.leads is not None and site.leads[0] == site.leads[1]:
        return False
    return any(e.kind == "letter" and e.name in {"r", "g", "y", "w"} for e in ends) and all(
        (e.kind == "letter" and e.name in {"r", "g", "y", "w", "o", "b"}) or e.name == "ground" for e in ends
    )


def motor_letters(draft: Draft, site: Site) -> bool:
    """Ends that a compressor calls its own: C, R and S."""
    ends = draft.phrases[site.at].ends
    return len(ends) == 2 and all(end.kind == "letter" and end.name in {"c", "r", "s"} for end in ends)


CONTROL_V = (23.0, 29.0)
"""What R to C of a control circuit reads, and no winding of a compressor bare. [V]"""


def at_a_motor(draft: Draft, site: Site) -> bool:
    """R and C of a compressor: its name stands in the sentence, or an S stands beside them."""
    own = [f for f in draft.figures if f.site is site or f.at in {site.at + 1, site.at - 1}]
    if any(f.kind == "amount" and f.unit in {None, "V"} and CONTROL_V[0] <= f.value <= CONTROL_V[1] for f in own):
        return False  # "R-C 26.2 fan runs"
    motor = (draft.phrases[at].ends for at in draft.sites)
    if any({end.name for end in ends} in ({"s", "r"}, {"s", "c"}) for ends in motor):
        return True
    return any(
        s.kind == "notours"
        and s.name == "motor"
        and draft.sentence[s.at] == draft.sentence[site.at]
        and any(word in draft.phrases[s.at].text for word in ("comp", "motor", "fan", "blower", "winding", "abanico"))
        for s in draft.sites.values()
    )
