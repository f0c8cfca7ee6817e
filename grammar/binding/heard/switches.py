"""A safety or switch that is told open or closed in words: "hp switch open", "rollout tripped", "it's open" behind "there is a float"."""

from core.heard.record import Heard
from core.readings import OPEN
from grammar.binding.draft import Draft
from grammar.binding.heard.taking import take
from grammar.parser import parse
from grammar.words.devices import SWITCHES
from grammar.words.heard import CLOSED_WORDS, OPEN_WORDS

REACH = 3
"""Phrases between a switch and what is said of it."""
SMALL = frozenset({"is", "filler", "now", "was", "all", "both"})
FEW = 7
PRONOUNS = frozenset({"it's", "its", "it", "is", "esta", "estaba", "was", "that", "ya"})
NOT_TOLD = frozenset(
    {
        "if",
        "si",
        "back",
        "flushed",
        "cleared",
        "reset",
        "cleaned",
        "through",
        "regreso",
        "not",
        "no",
        "isnt",
        "should",
        "when",
        "cuando",
        "jumped",
        "jumper",
        "taped",
        "tied",
        "held",
        "puenteado",
    }
)


def switches(draft: Draft) -> None:
    """Every switch with its state; a question, a condition or something refused tells none."""
    texts = {word for p in draft.phrases for word in p.text.split()}
    ohms = any(p.kind in {"alone", "heading", "unit"} for p in draft.phrases) or any(f.unit == "ohm" for f in draft.figures)
    if "?" in draft.text or draft.warned.names or texts & NOT_TOLD or ohms:
        return
    found = False
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind == "device" and phrase.meaning in SWITCHES:
            found = _of(draft, at) or found
    if not found and len(draft.phrases) <= FEW:
        _pronoun(draft)
        _named(draft)


def _state(draft: Draft, at: int) -> str | None:
    words = set(draft.phrases[at].text.split())
    if words & OPEN_WORDS and draft.kind(at) in {"value", "filler", "unknown", "novalue"}:
        return "open"
    return "closed" if words & CLOSED_WORDS and draft.kind(at) in {"filler", "unknown", "novalue", "value"} else None


def _of(draft: Draft, at: int) -> bool:
    """What stands behind the switch, or right before it, with small words between."""
    near = [*range(at + 1, at + 1 + REACH)], [*range(at - 1, at - 1 - REACH, -1)]
    for order in near:
        for i in order:
            if not 0 <= i < len(draft.phrases):
                break
            state = _state(draft, i)
            if state is not None:
                _take(draft, (at, i), _heard(draft.phrases[at].meaning, state))
                return True
            if draft.kind(i) not in SMALL:
                break
    return False


def _heard(name: str, state: str) -> Heard:
    return Heard("switch", name, "", (OPEN if state == "open" else 0.0,))


def _take(draft: Draft, ats: tuple[int, int], heard: Heard) -> None:
    """What is closed tells no break: nothing of it is unread. An open one is no measure of ours, as volts across it are."""
    figures = [f for i in range(min(ats), max(ats) + 1) if (f := draft.figure_at(i)) is not None]
    take(draft, ats, heard, figures)
    if heard.values[0] != OPEN:
        draft.unread.pop()


THERE = frozenset({"there", "theres", "hay", "trae", "tiene", "got", "has"})


def _named(draft: Draft) -> None:
    """In "there is a float": what to read of it, where the control circuit is looked through."""
    at = next((i for i, p in enumerate(draft.phrases) if p.kind == "device" and p.meaning in SWITCHES), None)
    told = {word for p in draft.phrases for word in p.text.split()}
    if at is None or draft.figures or not told & THERE or not draft.context.readings or draft.asks:
        return
    phrase = draft.phrases[at]
    draft.heard.append(((phrase.start, phrase.end), Heard("switch", phrase.meaning, "", (None,))))


def _pronoun(draft: Draft) -> None:
    """In "it's open" behind "there is a float"."""
    if not draft.context.said_before or any(p.kind in {"ends", "device", "amounts"} for p in draft.phrases):
        return
    before = parse(draft.context.said_before[-1]).phrases
    named = [p.meaning for p in before if p.kind == "device" and p.meaning in SWITCHES]
    at = next((i for i in range(len(draft.phrases)) if _state(draft, i) is not None), None)
    if len(set(named)) != 1 or at is None or at > REACH:
        return
    told = {word for p in draft.phrases[: at + 1] for word in p.text.split()}
    if told & PRONOUNS:
        _take(draft, (0, at), _heard(named[0], str(_state(draft, at))))
