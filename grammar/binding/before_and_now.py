"""Values of before, and of another state: "R-C was 0, now 25.3", "that 27.6v secondary was with no load"."""

from grammar.binding.draft import Draft, Figure
from grammar.binding.replacing import alike, amounts, inherit, only_last

BEFORE = frozenset({"before", "earlier", "previously", "originally", "at first", "antes", "al principio"})
NOW = frozenset({"now", "ahora", "ya", "after", "despues"})


def before_and_now(draft: Draft) -> None:
    """In "sec 0v before, 26.2v now": what was is withdrawn."""
    for at, phrase in enumerate(draft.phrases):
        if phrase.text not in BEFORE:
            continue
        was, now = draft.figure_at(at - 1), next((f for f in amounts(draft, at) if f.at > at), None)
        if was is None or now is None or not alike(was, now) or was.done:
            continue
        if any(p.kind == "now" or p.text in NOW for p in draft.phrases[at + 1 : now.at + 3]):
            was.withdrawn = True
            inherit(now, was)


CHANGES = frozenset({
    "drops", "drop", "dropped", "goes", "went", "go", "going", "falls", "fell", "sags", "sagged", "dips", "dipped", "rose", "rises", "climbs", "climbed", "dropping", "pulled",
    "baja", "bajo", "cae", "cayo", "sube", "subio", "paso", "pasa", "se fue", "brinco",
})  # fmt: skip
"""Verbs of one change; a value that swings, varies or bounces is a range."""


WHEN = frozenset({"when", "once", "as", "soon", "cuando"})


def came_from(draft: Draft) -> None:
    """In "went up to 25.1 from 18", "drops from 26 to 12 when it calls": where it came from is withdrawn."""
    for figure in amounts(draft):
        verbs = {
            draft.phrases[i].text for i in range(max(0, figure.at - 4), figure.at) if draft.clause[i] == draft.clause[figure.at]
        }
        led = figure.at > 0 and draft.phrases[figure.at - 1].text in {"from", "de", "desde", "went from"}
        at_once = any(
            p.kind == "condition" and p.text.split(" ")[0] in WHEN for p in draft.phrases[figure.at + 1 : figure.at + 3]
        )
        swings = {"sube", "baja"} <= verbs or {"up", "down"} <= verbs
        if led and not swings and len(figure.amounts) == 2 and figure.joins[0] in {"to", "a"} and (verbs & CHANGES or at_once):
            only_last(figure)
    for figure in amounts(draft):
        before = draft.figure_at(figure.at - 2)
        led = figure.at > 1 and draft.phrases[figure.at - 1].text in {"from", "desde"}
        if led and before is not None and before.kind == figure.kind == "amount" and alike(before, figure):
            figure.withdrawn = True


def was_before(draft: Draft) -> bool:
    """In "R-C was 0, now 25.3": what was is withdrawn where what is now follows. True where it was said by an earlier message."""
    said = False
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "was":
            continue
        figures = [
            f
            for f in amounts(draft, at)
            if f.at > at and not f.withdrawn and (draft.sentence[f.at] == draft.sentence[at] or _after_now(draft, f.at))
        ]
        if phrase.meaning == "said" and len(figures) == 1 and (wrong := _typed_before(draft, at, figures[0])):
            said = wrong
        elif figures and len(figures[0].amounts) == 2 and figures[0].joins[0] in {"to", "a"}:
            only_last(figures[0])
        elif len(figures) > 1 and figures[0].unit == figures[1].unit == "VA":
            figures[0].withdrawn = True  # "the old one was 40va, this one's 50va"
        elif len(figures) > 1 and _set_against(draft, figures[0], figures[1], said=phrase.meaning == "said"):
            figures[0].withdrawn = True
            inherit(figures[1], figures[0])
            said = said or phrase.meaning == "said"
    return said


def _after_now(draft: Draft, at: int) -> bool:
    """In "R-C was 0 / now 25.3": the next line begins with the word."""
    return draft.kind(at - 1) == "now" and draft.kind(at - 2) == "line"


def _typed_before(draft: Draft, at: int, figure: Figure) -> bool:
    """In "disconnect reads 208v, I typed 280": what was sent before is told last, and is no value."""
    before = [f for f in amounts(draft, at) if f.at < at and not f.withdrawn and draft.sentence[f.at] == draft.sentence[at]]
    ends = any(draft.kind(i) == "ends" for i in range(at, min(figure.at + 3, len(draft.phrases))))
    put_in = draft.phrases[at].text.split(" ")[-1] in {"put", "puse", "had"} and (
        draft.phrases[min(at + 1, len(draft.phrases) - 1)].text
        in {"a", "an", "un", "una", "uno", "in", "the", "another", "otro"}
    )
    if put_in or not before or ends or not alike(before[-1], figure):
        return False
    figure.withdrawn = True
    return True


def _set_against(draft: Draft, one: Figure, other: Figure, *, said: bool) -> bool:
    """A word between two values says that the second stands: "was 0, now 25", "I told you 118, should be 108"."""
    between = draft.phrases[one.at : other.at]
    if said:
        return any(p.kind in {"withdraw", "replace", "not"} or p.text in {"but", "pero", "its", "is", "es"} for p in between)
    return any(p.kind in {"now", "withdraw"} or p.text in {"but", "pero", "is", "its"} for p in between)


def other_state(draft: Draft) -> bool:
    """In "that 27.6v secondary was with no load": the state of a value that an earlier message sent."""
    for figure in amounts(draft):
        back = draft.phrases[figure.at - 1].text if figure.at else ""
        behind = range(figure.at + 1, min(figure.at + 6, len(draft.phrases)))
        was = next((i for i in behind if draft.kind(i) == "was"), None)
        if back in {"that", "the", "those", "ese", "esos"} and was is not None:
            state = next((i for i in range(was + 1, min(was + 4, len(draft.phrases))) if draft.kind(i) == "condition"), None)
            if state is not None and draft.sentence[state] == draft.sentence[figure.at]:
                return True
    return False
