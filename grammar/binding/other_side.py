"""In "117 on the primary and 27 on the other side": the winding that the message did not name."""

from grammar.binding.draft import Draft
from grammar.phrase import End, Phrase

OTHER = frozenset({"other", "otro"})
OPPOSITE = {"primary": "secondary", "secondary": "primary"}


def other_side(draft: Draft) -> None:
    """Makes the other side a place, where one winding alone is named before it and nothing with sides of its own."""
    named = {e.name for p in draft.phrases for e in p.ends if len(p.ends) == 1 and e.kind == "place"}
    windings = named & set(OPPOSITE)
    if len(windings) != 1 or named & {"fuse", "line"}:
        return
    winding = next(iter(windings))
    for at, phrase in enumerate(draft.phrases):
        behind = draft.phrases[at + 1] if at + 1 < len(draft.phrases) else None
        if phrase.text not in OTHER or behind is None or behind.kind != "winding":
            continue
        if any(draft.kind(i) == "device" for i in range(max(0, at - 8), at)):
            continue
        end = End("place", OPPOSITE[winding], phrase.start, behind.end)
        draft.phrases[at] = Phrase("filler", "other", phrase.start, phrase.start, "", phrase.language)
        draft.phrases[at + 1] = Phrase("ends", "", phrase.start, behind.end, ends=(end,))
