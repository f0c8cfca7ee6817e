"""Numbers of which a word was misspelt: what is left of them is another number, so none is read."""

from grammar.binding.draft import Draft
from grammar.spelling import is_like_a_number


def garbled(draft: Draft) -> None:
    """In "two hundred twentty ohms": told as unread with the word, and no 200."""
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "unknown" or not is_like_a_number(phrase.text):
            continue
        for beside in (at - 1, at + 1):
            figure = draft.figure_at(beside)
            if figure is None or figure.kind != "amount" or figure.amount is None or figure.done:
                continue
            before = beside < at
            if (before and figure.unit is not None) or not any(amount.spoken for amount in figure.amounts):
                continue
            figure.done = True
            draft.unread.append((min(figure.start, phrase.start), max(figure.end, phrase.end)))
