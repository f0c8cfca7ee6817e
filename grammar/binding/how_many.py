"""How many of a device: "contactor 9va x2", "a dozen dampers", "2x contactor", and a device that is told again."""

from bisect import insort
from dataclasses import replace

from core.readings import Fact
from grammar.binding.counts import whole
from grammar.binding.draft import Draft, Figure
from grammar.phrase import Amount

DOZEN = frozenset({"dozen", "docena", "docenas"})
TIMES = frozenset({"x", "×"})


def dozens(draft: Draft) -> None:
    """Makes a number of "a dozen", "two dozen" and "media docena" before what is counted."""
    for at, phrase in enumerate(draft.phrases):
        if phrase.text not in DOZEN:
            continue
        before, number = draft.figure_at(at - 1), 12.0
        if before is not None and before.unit is None and 0.0 < before.value <= 8.0:
            number *= before.value
            before.done = True
            draft.cue_spans.append((before.start, before.end))
        elif at and draft.phrases[at - 1].text == "media":
            number /= 2.0
        phrase.kind = "filler"
        amount = Amount(number, phrase.start, phrase.end, text=f"{number:g}")
        figure = Figure(at, "amount", phrase.start, phrase.end, value=number, amount=amount, amounts=(amount,))
        draft.figures.append(figure)
        draft.by_phrase[at] = figure
        insort(draft.figure_ats, at)


def multiplied(draft: Draft, device: int, figure: int) -> int | None:
    """
    A number behind a device or its figure with the sign for times, or before the device.

    Args:
        draft: The message.
        device: Phrase of the device.
        figure: Phrase of its volt-amperes.

    Returns:
        How many, or None where nothing is said so.
    """
    for at in (max(device, figure) + 1, device + 1):
        if (mark := _mark(draft, at)) is not None:
            draft.sites.pop(at, None)
            return mark
        number = draft.figure_at(at + 1)
        if (
            draft.phrases[min(at, len(draft.phrases) - 1)].text in TIMES
            and number is not None
            and whole(number)
            and not number.done
        ):
            number.done = True
            return int(number.value)
    before = draft.figure_at(device - 1)
    glued = before is not None and draft.text[before.start : before.end].lower().endswith("x")
    if before is not None and glued and len(before.amounts) == 1 and before.value == int(before.value):
        before.done = True
        draft.cue_spans.append((before.start, before.end))
        return int(before.value)
    return None


def _mark(draft: Draft, at: int) -> int | None:
    """In "contactor 9va x2": what looks like the mark of a lead."""
    ends = draft.phrases[at].ends if 0 <= at < len(draft.phrases) else ()
    name = ends[0].name if len(ends) == 1 and ends[0].kind == "mark" else ""
    return int(name[1:]) if name[:1] == "x" and name[1:].isdecimal() and int(name[1:]) > 1 else None


def is_times(draft: Draft, at: int) -> bool:
    """True for "x2" between a device and its figure."""
    return _mark(draft, at) is not None


def known_count(draft: Draft, at: int) -> int | None:
    """In "contactors are 12va": as many as were told before, where the word is of several."""
    phrase = draft.phrases[at]
    if draft.text[phrase.end - 1] not in "sS":
        return None
    told = [f.count for f in draft.context.facts if f.fact == "load" and f.device == phrase.meaning]
    return told[0] if len(told) == 1 else None


def told_again(draft: Draft) -> None:
    """In "contactor 9va, contactor 9va": two of them, where one sentence lists both."""
    kept: list[tuple[int, Fact]] = []
    for at, fact in sorted(draft.facts, key=lambda row: row[0]):
        same = next((i for i, (_, f) in enumerate(kept) if _is_same(f, fact)), None)
        if same is not None and draft.sentence[kept[same][0]] == draft.sentence[at] and kept[same][0] != at:
            first, earlier = kept[same]
            kept[same] = (first, replace(earlier, count=(earlier.count or 1) + (fact.count or 1)))
        else:
            kept.append((at, fact))
    draft.facts = kept


def _is_same(one: Fact, other: Fact) -> bool:
    return one.fact == "load" == other.fact and replace(one, count=1) == replace(other, count=1)
