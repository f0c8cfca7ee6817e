"""Volt-amperes while a coil pulls in: they are no steady load."""

from grammar.binding.draft import Draft


def inrush(draft: Draft) -> None:
    """In "10 va sealed 52 inrush": the figure that touches the word is no steady load."""
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "inrush":
            continue
        before, behind = draft.figure_at(at - 1), draft.figure_at(at + 1)
        two_before = draft.figure_at(at - 2) if draft.kind(at - 1) in {"filler", "alone"} else None
        two_behind = (
            draft.figure_at(at + 2) if draft.phrases[min(at + 1, len(draft.phrases) - 1)].text in {"de", "of", "is"} else None
        )
        found = [before, two_before, behind, two_behind]
        if before is not None and behind is not None and behind.value > before.value and draft.kind(at - 2) == "device":
            found.insert(0, behind)  # "contactor 9va inrush 60": the larger is the inrush
        for figure in found:
            if figure is not None and figure.kind == "amount" and figure.unit in {None, "VA", "A"} and not figure.done:
                figure.done = True
                draft.cue_spans.append((figure.start, figure.end))
                phrase.ends = ()
                phrase.text = f"inrush {figure.value}"
                break


def is_taken(draft: Draft, at: int) -> bool:
    """True for a figure that the word behind it has made an inrush."""
    figure = draft.figure_at(at)
    return figure is not None and figure.done and draft.kind(at + 1) == "inrush"
