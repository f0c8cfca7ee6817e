"""Finds every place of a message."""

from grammar.binding.digit_leads import apart_pairs, number_pairs
from grammar.binding.draft import Draft, Site
from grammar.binding.joined_sites import both, ground_of, in_and_out, split_pairs
from grammar.binding.places import site_of, uses_marks


def find_sites(draft: Draft) -> None:
    """All places of the message."""
    number_pairs(draft)
    apart_pairs(draft)
    draft.marks = uses_marks(draft.phrases) or any(
        e.kind == "mark" and e.name.isdecimal() for p in draft.phrases for e in p.ends
    )
    in_and_out(draft)
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind == "ends":
            site = site_of(draft, at, phrase)
            if site is not None:
                draft.sites[at] = site
        elif phrase.kind == "device":
            draft.sites[at] = Site(at, "device", phrase.meaning)
        elif phrase.kind == "notours":
            draft.sites[at] = Site(at, "notours", phrase.meaning)
    if any(site.name == "pressure" for site in draft.sites.values()):
        for at, phrase in enumerate(draft.phrases):  # "low side 70 high side 250"
            if at in draft.sites and phrase.kind == "ends" and draft.text[phrase.start : phrase.end].lower() == "high side":
                draft.sites[at] = Site(at, "notours", "pressure")
    ground_of(draft)
    split_pairs(draft)
    both(draft)
