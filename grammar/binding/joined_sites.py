"""Places that a message joins from apart: "secondary clear to case", "both to ground", "120 in 0 out"."""

from grammar.binding.draft import Draft, Figure, Site
from grammar.binding.places import site_of
from grammar.phrase import Phrase


def ground_of(draft: Draft) -> None:
    """In "short to ground on the secondary 0.5 ohms": the ground and the winding that follows it are one pair."""
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "ends" or not _single(draft, at) or phrase.ends[0].name != "ground":
            continue
        step = at + 1
        while draft.kind(step) in {"at", "between"} or (draft.kind(step) == "filler" and draft.phrases[step].text == "the"):
            step += 1
        led = any(draft.kind(i) == "to" or draft.phrases[i].text in {"a", "to"} for i in range(max(0, at - 3), at))
        if (
            step == at + 1
            or not led
            or draft.kind(step) != "ends"
            or not _single(draft, step)
            or draft.kind(at - 2) in {"amounts", "value"}
        ):
            continue
        other = draft.phrases[step]
        if other.ends[0].name in {"primary", "secondary"}:
            joined = Phrase("ends", "", other.start, other.end, ends=(*other.ends, *phrase.ends), joins=("to",))
            site = site_of(draft, step, joined)
            if site is not None:
                draft.sites.pop(at, None)
                draft.sites[step] = site


def _each_to(draft: Draft, figure: Figure, second: int) -> bool:
    """In "x2 and h1 both OL to case": two leads, each to what stands behind the value."""
    first = next((i for i in range(figure.at - 1, max(-1, figure.at - 5), -1) if draft.kind(i) == "ends"), None)
    if first is None or draft.phrases[first].joins != ("and",) or draft.clause[first] != draft.clause[figure.at]:
        return False
    one, two, goal = *draft.phrases[first].ends, draft.phrases[second].ends[0]
    sites = [
        site_of(draft, first, Phrase("ends", "", end.start, end.end, ends=(end, goal), joins=("to",))) for end in (one, two)
    ]
    if None in sites or any(site.choices for site in sites if site is not None):
        return False
    site, other = sites
    assert site is not None
    assert other is not None
    site.also = (other,)
    draft.sites.pop(second, None)
    draft.taken.add(second)
    draft.sites[first] = site
    return True


def split_pairs(draft: Draft) -> None:
    """In "secondary clear to case", "1.8 meg to ground on the pri": one end before the figure, the other behind it."""
    for figure in draft.figures:
        second = _led_to(draft, figure.at)
        if second is None or figure.kind == "good" or _each_to(draft, figure, second):
            continue
        first = next((i for i in range(figure.at - 1, max(-1, figure.at - 8), -1) if draft.kind(i) == "ends"), None)
        if first is not None and draft.phrases[second].ends[0].name != "ground" and _has_its_value(draft, first):
            continue  # "119 al primario, 26 al secundario"
        both = next((i for i in range(figure.at - 1, max(-1, figure.at - 4), -1) if draft.kind(i) == "both"), None)
        if both is None and draft.phrases[second].ends[0].name == "ground":
            behind = range(second + 1, min(second + 4, len(draft.phrases)))
            both = next((i for i in behind if draft.kind(i) == "both" and draft.clause[i] == draft.clause[second]), None)
        if both is not None and draft.kind(both - 1) != "ends" and draft.phrases[second].ends[0].name == "ground":
            draft.sites[second] = Site(second, "place", "primary_ground", also=(Site(second, "place", "secondary_ground"),))
            continue
        if draft.kind(second + 1) == "at" and _is_winding(draft, second + 2) and not _touches_before(draft, first, figure.at):
            first = second + 2  # "no reading to ground on the pri, 12 ohms to ground on the sec"
        if (
            first is None
            or draft.sentence[first] != draft.sentence[figure.at]
            or not _single(draft, first)
            or _between(draft, first, figure.at, pause=False)
        ):
            first = next((i for i in range(second + 1, min(len(draft.phrases), second + 5)) if draft.kind(i) == "ends"), None)
            if (
                first is None
                or draft.kind(first - 1) not in {"at", "filler", "between"}
                or not _single(draft, first)
                or _between(draft, second, first)
            ):
                continue
        one, two = draft.phrases[first], draft.phrases[second]
        joined = Phrase("ends", "", one.start, one.end, ends=(*one.ends, *two.ends), joins=("to",))
        site = site_of(draft, first, joined)
        if site is not None and site.name != "unclear":
            draft.sites.pop(second, None)
            draft.taken.add(second)
            draft.sites[first] = site


def _has_its_value(draft: Draft, at: int) -> bool:
    """A value stands before the place, led to it as the next one is to its own."""
    led = draft.kind(at - 1) == "to" or (at > 0 and draft.phrases[at - 1].text in {"a", "al", "to"})
    return led and draft.kind(at - 2) in {"amounts", "value"}


def _is_winding(draft: Draft, at: int) -> bool:
    return draft.kind(at) == "ends" and _single(draft, at) and draft.phrases[at].ends[0].name in {"primary", "secondary"}


def _touches_before(draft: Draft, first: int | None, at: int) -> bool:
    """Only a verb stands between the end before a figure and it."""
    return first is not None and all(draft.kind(i) in {"is", "reads", "colon"} for i in range(first + 1, at))


def both(draft: Draft) -> None:
    """In "primary and secondary open", "both to case OL", "both windings open": one figure for two places."""
    for at, site in list(draft.sites.items()):
        if site.kind != "place" or site.used:
            continue
        others = [i for i in range(max(0, at - 3), at) if i in draft.sites]
        ands = [i for i in range(max(0, at - 2), at) if draft.kind(i) == "and"]
        if (
            ands
            and others
            and others[-1] == ands[0] - 1
            and draft.sites[others[-1]].kind == "place"
            and not _figure_before(draft, others[-1])
        ):
            site.also = (draft.sites.pop(others[-1]),)
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind not in {"both", "each"} or phrase.text == "both sides":
            continue
        ground = next(
            (i for i in range(at + 1, min(at + 4, len(draft.phrases))) if i in draft.sites and draft.sites[i].name == "ground"),
            None,
        )
        if ground is not None and not any(draft.kind(i) == "leadword" for i in range(at, ground)):
            draft.sites[ground] = Site(ground, "place", "primary_ground", also=(Site(ground, "place", "secondary_ground"),))
        elif "winding" in phrase.text or "devanado" in phrase.text:
            draft.sites[at] = Site(at, "place", "primary", also=(Site(at, "place", "secondary"),))
    for site in draft.sites.values():  # "pri and sec both OL to ground"
        if site.also and site.name in {"primary_ground", "secondary_ground"} and site.also[0].name in {"primary", "secondary"}:
            site.also = (Site(site.at, "place", f"{site.also[0].name}_ground"),)


def _figure_before(draft: Draft, at: int) -> bool:
    """A figure right before the place is the place's own: "118 on the pri and sec 0"."""
    step = at - 1
    while draft.kind(step) in {"at", "filler", "between", "to"}:
        step -= 1
    return draft.kind(step) in {"amounts", "value"} and draft.clause[step] == draft.clause[at]


def _led_to(draft: Draft, at: int) -> int | None:
    """The single end behind "to" that follows a figure."""
    step = at + 1
    if draft.phrases[at].text not in {
        "clear",
        "libre a",
        "libres a",
        "limpio a",
        "limpios a",
        "limpia a",
        "limpias a",
        "isolated from",
    }:
        if draft.kind(step) != "to" and draft.phrases[min(step, len(draft.phrases) - 1)].text not in {"a", "al", "contra"}:
            return None
        step += 1
    while step < len(draft.phrases) and (
        draft.kind(step) == "to" or draft.phrases[step].text in {"the", "la", "el", "to", "all"}
    ):
        step += 1
    if (
        draft.kind(step) != "ends"
        or not _single(draft, step)
        or draft.phrases[step].ends[0].name in {"load", "line", "fuse", "coil"}
    ):
        return None
    return step


def _single(draft: Draft, at: int) -> bool:
    return len(draft.phrases[at].ends) == 1


def _between(draft: Draft, one: int, other: int, *, pause: bool = True) -> bool:
    barriers = {"amounts", "value", "stop", "line"} | ({"comma"} if pause else set())
    return any(draft.kind(i) in barriers for i in range(one + 1, other))
