"""What a message takes back: values of its own that it withdraws, and values of earlier messages that it replaces."""

from grammar.binding.draft import REACH, Draft, Figure, settle
from grammar.binding.taken_out import taken_out

BETWEEN_DENIAL = frozenset({"filler", "is", "at", "reads", "between", "to"})


def correct(draft: Draft) -> bool:
    """Marks withdrawn figures; True where an earlier message is replaced."""
    if taken_out(draft):
        return False
    replaced = _starts_as_correction(draft)
    replaced = _denied(draft) or replaced
    replaced = _replaced(draft) or replaced
    _expected(draft)
    _withdrawn_inside(draft)
    _before_and_now(draft)
    _from(draft)
    return _was(draft) or _other_state(draft) or replaced


def _other_state(draft: Draft) -> bool:
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


def amounts(draft: Draft, at: int | None = None) -> list[Figure]:
    """Figures that can be withdrawn, all or those within reach of a phrase."""
    return [
        f for f in (draft.figures if at is None else draft.around(at)) if f.kind in {"amount", "open", "nothing"} and not f.done
    ]


def _starts_as_correction(draft: Draft) -> bool:
    """In "*24.6", "correction, ...", "oops sec is ...": the mark stands before every figure."""
    first = next((f.at for f in amounts(draft)), len(draft.phrases))
    for at, phrase in enumerate(draft.phrases[:first]):
        if phrase.kind == "star" and at == 0:
            return first < len(draft.phrases)
        if phrase.kind == "withdraw" and not any(p.kind in {"ends", "device"} for p in draft.phrases[:at]):
            return first < len(draft.phrases) or any(p.kind in {"ends", "tapword"} for p in draft.phrases[at:])
    if draft.kind(len(draft.phrases) - 1) == "star" and len(draft.phrases) <= 6:
        return bool(amounts(draft))
    return False


def _denied(draft: Draft) -> bool:
    """In "26.4v not 24.6", "no es 240, es 208", "no 24.6": True where it replaces what an earlier message said."""
    denials = [at for at, phrase in enumerate(draft.phrases) if phrase.kind in {"not", "no"}]
    return True in [_denies(draft, at) for at in denials]  # every one of them is looked at


def _denies(draft: Draft, at: int) -> bool:
    """One denial: what it withdraws, and whether that was said by an earlier message."""
    phrase, step = draft.phrases[at], at + 1
    paused = phrase.kind == "no" and draft.kind(step) == "comma"
    tapped = {"tapword"} if draft.kind(step) == "is" else set()  # "no es el tap de 208"
    while draft.kind(step) in BETWEEN_DENIAL | tapped or (paused and draft.kind(step) == "comma"):
        step += 1
    figure = draft.figure_at(step)
    if figure is not None and figure.kind in {"open", "short"} and step <= at + 2:
        return _deny_a_word(draft, figure, at)
    if figure is None or figure.kind != "amount" or figure.done:
        return False
    opens = paused and draft.kind(at - 1) == "stop"  # "... no, 75 va"
    others = [
        f
        for f in amounts(draft, at)
        if f is not figure and (_beside(draft, f, figure, at) or (opens and f.at < at and _alike(f, figure)))
    ]
    before = [f for f in others if f.at < at]
    holds = step == at + 1 or draft.phrases[at + 1].text in {"its", "thats"}  # "no its 24.6", and not "no es 24.6"
    at_once = phrase.kind == "no" and (paused or holds) and not (before and _said_no_before(draft, at))
    if at_once and (paused or not others or draft.kind(at - 1) != "is"):
        if before and not _says_what_is(draft, before[-1], at):  # "118 no 108", "118 no, 108"
            before[-1].withdrawn = True
            _inherit(figure, before[-1])
            return False
        if at == 0 and (paused or not others):  # "no 24.6": the value that holds
            return True
    if others:
        figure.withdrawn = True
        _inherit(others[-1], figure)  # "its a 50 not a 40 va"
        return phrase.text not in INSTEAD or draft.phrases[0].text in ORDERS_TO_PUT
    if phrase.kind == "not" or draft.kind(at + 1) == "is":
        figure.withdrawn = True
        draft.unread.append((phrase.start, figure.end))
    return False


def _deny_a_word(draft: Draft, figure: Figure, at: int) -> bool:
    """In "primary ain't open": no value, so told where no number says what it is; where one does, that takes its place."""
    figure.withdrawn = True
    numbers = [f for f in amounts(draft, at) if f.kind == "amount" and draft.sentence[f.at] == draft.sentence[at]]
    if not numbers:
        draft.unread.append((draft.phrases[at].start, figure.end))
    return bool(numbers) and draft.phrases[figure.at].text not in SUPPOSED


SUPPOSED = frozenset({"open", "opened", "is open", "abierto", "abierta", "esta abierto", "esta abierta"})
"""What may have been thought of a winding; "OL" was read, so that denying it replaces a reading."""


def _said_no_before(draft: Draft, at: int) -> bool:
    """In "no, the secondary is 25.2 no 22.5": the message itself corrects, and the later "no" denies."""
    first = next((f.at for f in amounts(draft)), at)
    return any(p.kind in {"no", "withdraw", "star"} for p in draft.phrases[: min(at, first)])


def _says_what_is(draft: Draft, figure: Figure, at: int) -> bool:
    """In "es 25.2 no 22.5": what is and what is not, in one breath; Spanish has one word for "no" and "not"."""
    if not draft.parsed.spanish or draft.kind(at + 1) != "amounts":
        return False
    breath = draft.kind(figure.at - 1) == "is" and figure.at == at - 1
    return breath or draft.phrases[figure.at - 1].text == "era"  # "era 240, no 208"


ORDERS_TO_PUT = frozenset({"make", "put", "set", "use", "call", "mark", "pon", "ponle", "pone", "apunta", "anota", "usa"})
"""First words that turn a comparison into a correction: "make the coil 21.2 instead of 12.2"."""
INSTEAD = frozenset({"instead of", "rather than", "en vez de", "en lugar de"})
"""Denials that compare and take nothing back."""


def _beside(draft: Draft, one: Figure, other: Figure, at: int) -> bool:
    return not one.withdrawn and draft.sentence[one.at] == draft.sentence[at] and _alike(one, other)


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


def _alike(one: Figure, other: Figure) -> bool:
    return one.kind != "amount" or one.unit == other.unit or None in {one.unit, other.unit}


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
            _inherit(next(iter(behind[1:]), None), behind[0])
        return bool(behind)
    if phrase.text in WRONG:
        if before and behind:  # "118 is wrong, its 108"
            before[-1].withdrawn = True
            _inherit(behind[0], before[-1])
        return bool(behind)
    for figure in figures:
        if len(figure.amounts) == 2 and figure.joins[0] in {"to", "a"}:
            only_last(figure)
        elif (
            figure is not figures[0]
            and draft.phrases[figure.at - 1].text in {"from", "desde", "de"}
            and _alike(figures[0], figure)
        ):
            figure.withdrawn = True  # "switch the ohms to 1.2 from 12"
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


def only_last(figure: Figure) -> None:
    """In "from 14.1 to 41.1": the last value stands."""
    unit = next((a.unit for a in reversed(figure.amounts) if a.unit), None)
    last = figure.amounts[-1]
    figure.was = figure.amounts[0].value
    last.unit = last.unit or unit
    figure.amounts, figure.joins = (last,), ()
    figure.low = figure.high = None
    settle(figure)


def _inherit(figure: Figure | None, earlier: Figure) -> None:
    """A value put in place of another takes its unit."""
    if figure is None or figure.kind != "amount":
        return
    figure.heir_of = earlier
    if figure.unit is not None:
        return
    if earlier.unit_from == "own":
        figure.unit, figure.unit_from = earlier.unit, "neighbour"


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
        elif after is not None and _alike(before, after) and not _own_place(draft, at):
            before.withdrawn = True
            _inherit(after, before)


def _only_the_place(draft: Draft, at: int, after: Figure | None) -> bool:
    """In "white-red 11.2 ohms, no wait thats white-orange. suction 118": a place alone is put right, for its clause has no value."""
    named = next((i for i in range(at + 1, min(at + REACH, len(draft.phrases))) if i in draft.sites), None)
    if after is None:
        return True
    if named is None or named > after.at or draft.sites[named].kind not in {"place", "pair"}:
        return False
    clause = draft.clause[at] + (draft.kind(at + 1) == "comma")
    return draft.clause[named] == clause != draft.clause[after.at] and _told_apart(draft, at, named)


def _told_apart(draft: Draft, at: int, named: int) -> bool:
    """Nothing but small words between the mark and the place, and nothing behind the place in its clause."""
    between = all(draft.kind(i) in {"filler", "is", "at", "between", "comma"} for i in range(at + 1, named))
    return between and draft.kind(named + 1) in {"comma", "stop", "line"}


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


BEFORE = frozenset({"before", "earlier", "previously", "originally", "at first", "antes", "al principio"})
NOW = frozenset({"now", "ahora", "ya", "after", "despues"})


def _before_and_now(draft: Draft) -> None:
    """In "sec 0v before, 26.2v now": what was is withdrawn."""
    for at, phrase in enumerate(draft.phrases):
        if phrase.text not in BEFORE:
            continue
        was, now = draft.figure_at(at - 1), next((f for f in amounts(draft, at) if f.at > at), None)
        if was is None or now is None or not _alike(was, now) or was.done:
            continue
        if any(p.kind == "now" or p.text in NOW for p in draft.phrases[at + 1 : now.at + 3]):
            was.withdrawn = True
            _inherit(now, was)


def _from(draft: Draft) -> None:
    """In "went up to 25.1 from 18": where it came from is withdrawn."""
    for figure in amounts(draft):
        before = draft.figure_at(figure.at - 2)
        led = figure.at > 1 and draft.phrases[figure.at - 1].text in {"from", "desde"}
        if led and before is not None and before.kind == figure.kind == "amount" and _alike(before, figure):
            figure.withdrawn = True


def _was(draft: Draft) -> bool:
    """In "R-C was 0, now 25.3": what was is withdrawn where what is now follows. True where it was said by an earlier message."""
    said = False
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "was":
            continue
        figures = [
            f for f in amounts(draft, at) if f.at > at and not f.withdrawn and draft.sentence[f.at] == draft.sentence[at]
        ]
        if phrase.meaning == "said" and len(figures) == 1 and (wrong := _typed_before(draft, at, figures[0])):
            said = wrong
        elif figures and len(figures[0].amounts) == 2 and figures[0].joins[0] in {"to", "a"}:
            only_last(figures[0])
        elif len(figures) > 1 and figures[0].unit == figures[1].unit == "VA":
            figures[0].withdrawn = True  # "the old one was 40va, this one's 50va"
        elif len(figures) > 1 and _set_against(draft, figures[0], figures[1], said=phrase.meaning == "said"):
            figures[0].withdrawn = True
            _inherit(figures[1], figures[0])
            said = said or phrase.meaning == "said"
    return said


def _typed_before(draft: Draft, at: int, figure: Figure) -> bool:
    """In "disconnect reads 208v, I typed 280": what was sent before is told last, and is no value."""
    before = [f for f in amounts(draft, at) if f.at < at and not f.withdrawn and draft.sentence[f.at] == draft.sentence[at]]
    ends = any(draft.kind(i) == "ends" for i in range(at, min(figure.at + 3, len(draft.phrases))))
    if not before or ends or not _alike(before[-1], figure):
        return False
    figure.withdrawn = True
    return True


def _set_against(draft: Draft, one: Figure, other: Figure, *, said: bool) -> bool:
    """A word between two values says that the second stands: "was 0, now 25", "I told you 118, should be 108"."""
    between = draft.phrases[one.at : other.at]
    if said:
        return any(p.kind in {"withdraw", "replace", "not"} or p.text in {"but", "pero", "its", "is", "es"} for p in between)
    return any(p.kind in {"now", "withdraw"} or p.text in {"but", "pero", "is", "its"} for p in between)
