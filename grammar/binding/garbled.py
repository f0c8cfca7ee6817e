"""Numbers of which a word was misspelt: what is left of them is another number, so none is read."""

from grammar.binding.draft import Draft
from grammar.spelling import is_like_a_number


def garbled(draft: Draft) -> None:
    """In "two hundred twentty ohms": told as unread with the word, and no 200."""
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "unknown" or not is_like_a_number(phrase.text):
            continue
        before = at - 2 if draft.phrases[at - 1].meaning == "point" and at > 1 else at - 1  # "twenty three point eigst"
        joined = draft.kind(at + 1) in {"and", "letter"} or draft.phrases[min(at + 1, len(draft.phrases) - 1)].text == "y"
        for beside in (before, at + 2 if joined else at + 1):  # "trinta y nueve"
            figure = draft.figure_at(beside)
            if figure is None or figure.kind != "amount" or figure.done:
                continue
            if (beside < at and figure.unit is not None) or not any(amount.spoken for amount in figure.amounts):
                continue
            figure.garbled = True
            draft.unread.append((min(figure.start, phrase.start), max(figure.end, phrase.end)))
