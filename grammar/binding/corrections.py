"""What a message takes back: values of its own that it withdraws, and values of earlier messages that it replaces."""

from itertools import pairwise

from grammar.binding.before_and_now import before_and_now, came_from, other_state, was_before
from grammar.binding.denials import denied
from grammar.binding.draft import REACH, Draft, Figure
from grammar.binding.replacing import alike, amounts, inherit, only_last
from grammar.binding.taken_out import taken_out
from grammar.phrase import Phrase


def correct(draft: Draft) -> bool:
    """Marks withdrawn figures; True where an earlier message is replaced."""
    _reaches(draft)
    if taken_out(draft):
        return False
    replaced = _starts_as_correction(draft)
    replaced = denied(draft) or replaced
    replaced = _replaced(draft) or replaced
    _expected(draft)
    _withdrawn_inside(draft)
    before_and_now(draft)
    came_from(draft)
    return was_before(draft) or other_state(draft) or replaced


REACHING = frozenset(
    {"will", "wont", "would", "can", "cant", "could", "does", "doesnt", "gonna", "to", "should", "it'll", "itll", "they"}
)
"""Words before "make it" that ask whether something reaches or works."""


def _reaches(draft: Draft) -> None:
    """In "will 18/2 make it 250 feet": nothing is taken back."""
    for at, phrase in enumerate(draft.phrases):
        if phrase.text == "make it" and any(p.text in REACHING for p in draft.phrases[max(0, at - 4) : at]):
            draft.phrases[at] = Phrase("filler", "reach", phrase.start, phrase.end, phrase.text, phrase.language)


def _starts_as_correction(draft: Draft) -> bool:
    """In "*24.6", "correction, ...", "oops sec is ...": the mark stands before every figure."""
    first = next((f.at for f in amounts(draft)), len(draft.phrases))
    for at, phrase in enumerate(draft.phrases[:first]):
        if phrase.kind == "star" and at == 0:
            return first < len(draft.phrases)
        if at == 0 and phrase.kind == "no" and draft.kind(1) == "comma" and _says_a_place(draft):
            return True  # "no, the secondary is 25.2"
        if phrase.kind == "withdraw" and not any(p.kind in {"ends", "device"} for p in draft.phrases[:at]):
            return first < len(draft.phrases) or any(p.kind in {"ends", "tapword"} for p in draft.phrases[at:])
    if draft.kind(len(draft.phrases) - 1) == "star" and len(draft.phrases) <= 6:
        return bool(amounts(draft))
    return False


ORDERS = frozenset(
    {
        "change",
        "change the",
        "correct",
        "update",
        "fix",
        "replace",
        "redo",
        "cambia",
        "cambiar",
        "cambiale",
        "corrige",
        "reemplaza",
        "actualiza",
    }
)
"""Verbs that replace a value only as an order."""
EXPECTS = frozenset({"should be", "deberia ser", "debe ser"})
"""Words that replace a value, or tell what was expected where another value stands beside."""


def _orders(draft: Draft, at: int) -> bool:
    """An order begins its sentence and names a place or a value."""
    before = [i for i in range(max(0, at - 6), at) if draft.sentence[i] == draft.sentence[at]]
    behind = range(at + 1, min(at + 8, len(draft.phrases)))
    return all(draft.kind(i) in {"filler", "withdraw", "comma", "stop", "line"} for i in before) and any(
        draft.kind(i) in {"ends", "amounts", "value", "alone", "tapword", "device"} for i in behind
    )


def _expected(draft: Draft) -> None:
    """In "should read 24 but I have 31": what was expected is no reading."""
    for at, phrase in enumerate(draft.phrases):
        asked = phrase.text in {"should", "supposed", "deberia", "debe", "debera"}
        if phrase.kind != "expected" and phrase.text not in EXPECTS and not asked:
            continue
        figures = [f for f in amounts(draft, at) if not f.withdrawn and draft.sentence[f.at] == draft.sentence[at]]
        behind = next((f for f in figures if f.at > at), None)
        if any(p.kind == "was" and p.meaning == "said" for p in draft.phrases[max(0, at - REACH) : at]):
            continue  # "I told you 118, should be 108" replaces
        if asked:  # "should the secondary read 24"
            if behind is not None and draft.kind(behind.at - 1) == "reads" and behind.at - at <= 6:
                behind.withdrawn = True
            continue
        if behind is not None and (len(figures) > 1 or phrase.kind == "expected") and behind.at - at <= 4:
            behind.withdrawn = True
            if len(figures) == 1:
                draft.unread.append((phrase.start, behind.end))


def _says_a_place(draft: Draft) -> bool:
    """Only small words stand between the "no" and a place, and a value follows it."""
    step = 2
    while draft.kind(step) in {"filler", "is", "at", "withdraw", "comma"}:
        step += 1
    return draft.kind(step) == "ends" and any(f.at > step for f in amounts(draft))


def _replaced(draft: Draft) -> bool:
    """In "meant 208", "change it from 14.1 to 41.1", "disregard the .4": True where such a word stands with a figure or a place."""
    at = next((i for i, p in enumerate(draft.phrases) if p.kind == "replace"), None)
    if at is None or not _replaces(draft, at):
        return False
    phrase, figures = draft.phrases[at], amounts(draft)
    behind = [f for f in figures if f.at > at]
    before = [f for f in figures if f.at < at and draft.sentence[f.at] == draft.sentence[at]]
    if phrase.text in IGNORED:
        if behind:
            behind[0].withdrawn = True
            inherit(next(iter(behind[1:]), None), behind[0])
        return bool(behind)
    if phrase.text in WRONG:
        if before and behind:  # "118 is wrong, its 108"
            before[-1].withdrawn = True
            inherit(behind[0], before[-1])
        return bool(behind)
    for figure in figures:
        if len(figure.amounts) == 2 and figure.joins[0] in {"to", "a"}:
            only_last(figure)
        elif (
            figure is not figures[0]
            and draft.phrases[figure.at - 1].text in {"from", "desde", "de"}
            and draft.kind(figure.at - 2) != "is"
            and alike(figures[0], figure)
        ):
            figure.withdrawn = True  # "switch the ohms to 1.2 from 12"
    for one, two in pairwise(figures):  # "change it from 40va to 50va"
        led = draft.phrases[max(0, one.at - 1)].text in {"from", "desde", "de"}
        if led and two.at == one.at + 2 and draft.phrases[one.at + 1].text in {"to", "a"} and alike(one, two):
            one.withdrawn = True
    return bool(figures) or any(p.kind in {"ends", "tapword"} for p in draft.phrases)


IGNORED = frozenset({"disregard", "ignore", "ignora", "no hagas caso", "olvida el"})
WRONG = frozenset(
    {"wrong", "is wrong", "was wrong", "wrong number", "not right", "estaba mal", "equivocado", "esta equivocado"}
)


def _replaces(draft: Draft, at: int) -> bool:
    """The word is meant as a correction here."""
    phrase = draft.phrases[at]
    if phrase.text in ORDERS:
        return _orders(draft, at)
    if phrase.text in EXPECTS:
        figures = amounts(draft, at)
        beside = [f for f in figures if f.at < at and draft.sentence[f.at] == draft.sentence[at]]
        behind = [f for f in figures if f.at > at]
        if (
            len(beside) == len(behind) == 1
            and draft.phrases[beside[0].at - 1].text in POINTS_BACK
            and not _has_place(draft, at)
        ):
            beside[0].withdrawn = True  # "that 24.6 should be 26.4"
            return True
        return not beside and len(behind) <= 1
    return phrase.text != "era" or any(p.kind in {"withdraw", "not", "no"} for p in draft.phrases)


POINTS_BACK = frozenset({"the", "that", "el", "ese", "los", "esos", "my"})
"""Words before a number that was said by an earlier message."""


def _has_place(draft: Draft, at: int) -> bool:
    return any(draft.kind(i) in {"ends", "device"} for i in range(max(0, at - REACH), min(len(draft.phrases), at + REACH)))


def _withdrawn_inside(draft: Draft) -> None:
    """In "118v scratch that 108v": the figure before the mark is withdrawn where another follows for it."""
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "withdraw":
            continue
        figures = [f for f in amounts(draft, at) if not f.withdrawn]
        before = next((f for f in reversed(figures) if f.at < at), None)
        after = next((f for f in figures if f.at > at and draft.phrases[at].start <= f.start), None)
        if before is None:
            continue
        if after is not None and any(p.kind == "condition" for p in draft.phrases[at : after.at]):
            continue  # "27.1, wait that was unloaded, 24.2 loaded": the state is mended, and the value stands
        if _only_the_place(draft, at, after):
            _new_place(draft, before, at)
        elif after is not None and alike(before, after) and not _own_place(draft, at):
            before.withdrawn = True
            inherit(after, before)


def _only_the_place(draft: Draft, at: int, after: Figure | None) -> bool:
    """In "white-red 11.2 ohms, no wait thats white-orange. suction 118": a place alone is put right, for its clause has no value."""
    named = next((i for i in range(at + 1, min(at + REACH, len(draft.phrases))) if i in draft.sites), None)
    if after is None:
        return True
    if named is None or named > after.at or draft.sites[named].kind not in {"place", "pair"}:
        return False
    clause = draft.clause[at] + (draft.kind(at + 1) == "comma")
    apart = clause != draft.clause[after.at] or any(draft.kind(i) == "ends" for i in range(named + 1, after.at))
    return draft.clause[named] == clause and apart and _told_apart(draft, at, named)


def _told_apart(draft: Draft, at: int, named: int) -> bool:
    """Nothing but small words between the mark and the place, and nothing behind the place in its clause."""
    between = all(draft.kind(i) in {"filler", "is", "was", "at", "between", "comma"} for i in range(at + 1, named))
    behind = draft.phrases[min(named + 1, len(draft.phrases) - 1)]
    return between and (behind.kind in {"comma", "stop", "line"} or behind.text in {"also", "and", "then", "tambien", "y"})


def _own_place(draft: Draft, at: int) -> bool:
    """True where the later figure has another place of its own, so that nothing of the earlier is taken back."""
    named = [p for p in draft.phrases[at + 1 : at + REACH] if p.kind == "ends"]
    earlier = [p for p in draft.phrases[max(0, at - REACH) : at] if p.kind == "ends"]
    if (
        not named
        or not earlier
        or draft.phrases[at].text
        in {"scratch that", "scratch", "strike that", "no wait", "wait no", "make that", "no espera", "nope"}
    ):
        return False
    return [e.name for e in named[0].ends] != [e.name for e in earlier[-1].ends]


def _new_place(draft: Draft, figure: Figure, at: int) -> None:
    """In "white-red 11.2 ohms, no wait thats white-orange": the value stands, at the place named last."""
    later = next((i for i in range(at + 1, min(at + REACH, len(draft.phrases))) if i in draft.sites), None)
    if later is None:
        return
    for earlier in range(max(0, figure.at - 6), min(at, figure.at + 7)):
        if draft.sentence[earlier] == draft.sentence[figure.at]:
            draft.sites.pop(earlier, None)
    figure.site = draft.sites[later]
    figure.site.used += 1
