"""What a message says was put right just now, beside the transformer: readings from it on are of another circuit."""

from collections.abc import Iterator

from grammar.binding.draft import Draft
from grammar.words.repairs import BETWEEN, LINE_SIDE, LOW_SIDE, NEW, PARTS, PAST_OR_PLAN, PUT_IN, RENEWED

NEAR = 4
"""Words between the part and what was done to it."""


def renewed(draft: Draft) -> tuple[str, ...]:
    """
    Names of `core.repairs.REPAIRS`.

    In "replaced the fuse, R-C 26" the fuse; in "needs a new fuse", "replaced the fuse yesterday" and "replace the fuse?" nothing.
    """
    if "?" in draft.text:
        return ()
    found: list[str] = []
    for sentence in _sentences(draft):
        words = [word for word, _ in sentence]
        if set(words) & PAST_OR_PLAN:
            continue
        for at, (word, phrase) in enumerate(sentence):
            part = next((name for name, spelt in PARTS.items() if word in spelt), None)
            if part is not None and _is_done(words, at):
                found.append(_side(part, words, at))
                _understood(draft, phrase)
    if any(fact.fact in {"tap_volts", "tap_lead"} for _, fact in draft.facts) and _was_moved(draft):
        found.append("tap")
    return tuple(dict.fromkeys(found))


def _sentences(draft: Draft) -> Iterator[list[tuple[str, int]]]:
    sentence: list[tuple[str, int]] = []
    for word, owner in zip(draft.words, draft.owners, strict=True):
        if not word:
            yield sentence
            sentence = []
        elif word not in BETWEEN and not word[0].isdecimal():
            sentence.append((word, owner))
    yield sentence


def _is_done(words: list[str], at: int) -> bool:
    """In "replaced the blown fuse", "fuse replaced", "put a new fuse in", "new fuse in"."""
    before, behind = words[max(0, at - NEAR) : at], words[at + 1 : at + 1 + NEAR]
    if set(before) & RENEWED or set(behind[:3]) & RENEWED:
        return True
    beside = set(words[max(0, at - 2) : at]) | set(behind[:1])
    return bool(beside & NEW) and bool((set(before) | set(behind)) & PUT_IN)


def _side(part: str, words: list[str], at: int) -> str:
    beside = set(words[max(0, at - 3) : at])
    if part == "fuse" and beside & LINE_SIDE:
        return "supply"
    return "fuse" if part == "supply" and beside & LOW_SIDE else part


def _was_moved(draft: Draft) -> bool:
    words = set(draft.words)
    return bool(words & {"moved", "landed", "switched", "retapped", "movi", "movido", "cambie"}) and not words & PAST_OR_PLAN


def _understood(draft: Draft, phrase: int) -> None:
    """The part's name is no unread word any more."""
    said = draft.parsed.words[phrase]
    draft.unread = [span for span in draft.unread if not (span[0] >= said.start and span[1] <= said.end)]
