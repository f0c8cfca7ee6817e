"""Takes a stretch of a message out of the rest: what is in it was heard, and means nothing else."""

from collections.abc import Sequence

from core.heard.record import Heard
from grammar.binding.draft import Draft, Figure
from grammar.phrase import Phrase


def take(draft: Draft, ats: Sequence[int], heard: Heard, figures: Sequence[Figure]) -> None:
    """
    Keeps what was heard, tells its stretch as unread, and hides its phrases from all that follows.

    Args:
        draft: The message.
        ats: The phrases that belong to it; those between the first and the last go with them.
        heard: What it is.
        figures: Its values.
    """
    begin, end = min(ats), max(ats)
    span = (draft.phrases[begin].start, draft.phrases[end].end)
    draft.heard.append((span, heard))
    draft.unread.append(span)
    for figure in figures:
        figure.done = True
    for at in range(begin, end + 1):
        phrase = draft.phrases[at]
        draft.phrases[at] = Phrase("heard", "", phrase.start, phrase.end)
        if at in draft.by_phrase:
            draft.figures.remove(draft.by_phrase.pop(at))
    draft.figure_ats = [f.at for f in draft.figures]
