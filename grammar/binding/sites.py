"""Finds every place of a message, and gives each figure the one that it belongs to."""

from grammar.binding.draft import Draft, Figure, Site
from grammar.binding.places import site_of, uses_marks
from grammar.phrase import End, Phrase
from grammar.words.devices import BOARDS, COILS, SWITCHES

BARE_GROUPS = frozenset({"pressure", "temperature", "contact", "time", "part", "person"})
"""Groups of words of others that have no volts, amps or ohms."""
LEFT_ONLY = frozenset({"time", "contact", "part"})
"""Groups whose numbers stand behind them."""
SMALL = frozenset({"filler", "is", "reads", "at", "alone", "heading", "colon", "winding", "between", "leadword", "condition", "now", "transformer", "star", "with", "withdraw", "to", "each", "idword", "was", "expected", "novalue", "replace", "not", "no", "and", "both", "all"})
"""Kinds that may stand between a place and its figure."""
DEVICE_PLACES = {**dict.fromkeys(COILS, "coil"), **dict.fromkeys(BOARDS, "control"), **dict.fromkeys(SWITCHES, "switch")}


def find_sites(draft: Draft) -> None:
    """All places of the message."""
    _number_pairs(draft)
    _apart_pairs(draft)
    draft.marks = uses_marks(draft.phrases) or any(e.kind == "mark" and e.name.isdecimal() for p in draft.phrases for e in p.ends)
    _in_and_out(draft)
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind == "ends":
            site = site_of(draft, at, phrase)
            if site is not None:
                draft.sites[at] = site
        elif phrase.kind == "device":
            draft.sites[at] = Site(at, "device", phrase.meaning)
        elif phrase.kind == "notours":
            draft.sites[at] = Site(at, "notours", phrase.meaning)
    _split_pairs(draft)
    _both(draft)


def _split_pairs(draft: Draft) -> None:
    """ "secondary clear to case", "1.8 meg to ground on the pri": one end before the figure, the other behind it."""
    for figure in draft.figures:
        second = _led_to(draft, figure.at)
        if second is None or figure.kind == "good":
            continue
        first = next((i for i in range(figure.at - 1, max(-1, figure.at - 8), -1) if draft.kind(i) == "ends"), None)
        both = next((i for i in range(figure.at - 1, max(-1, figure.at - 4), -1) if draft.kind(i) == "both"), None)
        if both is not None and draft.kind(both - 1) != "ends" and draft.phrases[second].ends[0].name == "ground":
            draft.sites[second] = Site(second, "place", "primary_ground", also=(Site(second, "place", "secondary_ground"),))
            continue
        if first is None or draft.sentence[first] != draft.sentence[figure.at] or not _single(draft, first) or _between(draft, first, figure.at):
            first = next((i for i in range(second + 1, min(len(draft.phrases), second + 5)) if draft.kind(i) == "ends"), None)
            if first is None or draft.kind(first - 1) not in {"at", "filler", "between"} or not _single(draft, first) or _between(draft, second, first):
                continue
        one, two = draft.phrases[first], draft.phrases[second]
        joined = Phrase("ends", "", one.start, one.end, ends=(*one.ends, *two.ends), joins=("to",))
        site = site_of(draft, first, joined)
        if site is not None and site.name != "unclear":
            draft.sites.pop(second, None)
            draft.taken.add(second)
            draft.sites[first] = site


def _both(draft: Draft) -> None:
    """ "primary and secondary open", "both to case OL", "both windings open": one figure for two places."""
    for at, site in list(draft.sites.items()):
        if site.kind != "place":
            continue
        others = [i for i in range(max(0, at - 3), at) if i in draft.sites]
        ands = [i for i in range(max(0, at - 2), at) if draft.kind(i) == "and"]
        if ands and others and others[-1] == ands[0] - 1 and draft.sites[others[-1]].kind == "place" and not _figure_before(draft, others[-1]):
            site.also = (draft.sites.pop(others[-1]),)
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind not in {"both", "each"} or phrase.text in {"both sides"}:
            continue
        ground = next((i for i in range(at + 1, min(at + 4, len(draft.phrases))) if i in draft.sites and draft.sites[i].name == "ground"), None)
        if ground is not None and not any(draft.kind(i) in {"leadword"} for i in range(at, ground)):
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
    if draft.phrases[at].text not in {"clear", "libre a", "limpio a", "isolated from"}:
        if draft.kind(step) != "to" and draft.phrases[min(step, len(draft.phrases) - 1)].text not in {"a", "al", "contra"}:
            return None
        step += 1
    while step < len(draft.phrases) and (draft.kind(step) == "to" or draft.phrases[step].text in {"the", "la", "el", "to", "all"}):
        step += 1
    if draft.kind(step) != "ends" or not _single(draft, step) or draft.phrases[step].ends[0].name in {"load", "line", "fuse", "coil"}:
        return None
    return step


def _single(draft: Draft, at: int) -> bool:
    return len(draft.phrases[at].ends) == 1


def _between(draft: Draft, one: int, other: int) -> bool:
    return any(draft.kind(i) in {"amounts", "value", "comma", "stop", "line"} for i in range(one + 1, other))


def _boards(draft: Draft) -> None:
    """ "21 at the board R C": the board only says where R and C are."""
    control = {draft.clause[s.at] for s in draft.sites.values() if s.name == "control"}
    for at, site in list(draft.sites.items()):
        if site.kind == "device" and site.name in BOARDS and draft.clause[at] in control:
            del draft.sites[at]


def _apart_pairs(draft: Draft) -> None:
    """ "1 and 2 read 4.1 ohms": two digits that "and" holds together before a value."""
    for first in list(draft.figures):
        second = draft.figure_at(first.at + 2)
        if second is None or draft.kind(first.at + 1) != "and" or not (_digit(first) and _digit(second)):
            continue
        at = second.at + 1
        while draft.kind(at) in {"colon", "is", "reads"}:
            at += 1
        third = draft.figure_at(at)
        if third is None or not (third.unit in {"ohm", "V"} or third.kind == "open"):
            continue
        ends = tuple(End("mark", str(int(f.value)), f.start, f.end) for f in (first, second))
        draft.phrases[first.at] = Phrase("ends", "", first.start, second.end, ends=ends, joins=("and",))
        draft.phrases[first.at + 1].kind = draft.phrases[second.at].kind = "filler"
        for figure in (first, second):
            draft.figures.remove(figure)
            del draft.by_phrase[figure.at]


def _digit(figure: Figure) -> bool:
    return figure.kind == "amount" and figure.unit is None and len(figure.amounts) == 1 and figure.value == int(figure.value) and 1 <= figure.value <= 12


def _number_pairs(draft: Draft) -> None:
    """Digits that are leads: "1 to 2: 3.1 ohm"."""
    for figure in list(draft.figures):
        phrase = draft.phrases[figure.at]
        if len(figure.amounts) != 2 or any(a.unit or a.value != int(a.value) or not 1 <= a.value <= 12 for a in figure.amounts):
            continue
        at = figure.at + 1
        while draft.kind(at) in {"colon", "is", "reads"} or (draft.kind(at) == "sign" and draft.phrases[at].text == "-"):
            at += 1
        if draft.kind(at) not in {"amounts", "value"}:
            continue
        ends = tuple(End("mark", str(int(a.value)), a.start, a.end) for a in figure.amounts)
        draft.phrases[figure.at] = Phrase("ends", "", phrase.start, phrase.end, ends=ends, joins=figure.joins)
        draft.figures.remove(figure)
        del draft.by_phrase[figure.at]


NOUNS = frozenset({"entrada", "salida", "input", "output"})
"""Words for the two sides that are nothing else."""


def _in_and_out(draft: Draft) -> None:
    """ "120 in 0 out": the two words are the windings where a figure touches them and no place follows."""
    found: list[tuple[int, str, bool]] = []
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "inout":
            continue
        before, behind = draft.kind(at - 1), draft.kind(at + 1)
        figures = {"amounts", "value"}
        if phrase.text in NOUNS:
            near = [f for f in draft.around(at) if draft.clause[f.at] == draft.clause[at] and abs(f.at - at) <= 5]
            if near:
                found.append((at, phrase.meaning, False))
            continue
        ends = {"", "comma", "stop", "line", "and", "sign", *figures, "but"}
        if (before in figures and behind in ends) or (behind in figures and before in {"", "comma", "stop", "line", "and", "sign", *figures}):
            found.append((at, phrase.meaning, behind in figures and before not in figures))
    both = {meaning for _, meaning, _ in found} == {"primary", "secondary"}
    if not both and any(e.name in {"primary", "secondary"} for p in draft.phrases for e in p.ends):
        found = [row for row in found if draft.phrases[row[0]].text not in {"in", "out"}]  # "it's 95 out and pri is 118"
    for at, meaning, _ in found:
        phrase = draft.phrases[at]
        if not both and meaning == "primary" and phrase.text == "in":
            continue
        draft.phrases[at] = Phrase("ends", "", phrase.start, phrase.end, ends=(End("place", meaning, phrase.start, phrase.end),))
        site = site_of(draft, at, draft.phrases[at])
        if site is not None:
            site.assumed = not both
            draft.sites[at] = site


def _fits(site: Site, figure: Figure) -> bool:
    """A figure can belong there at all."""
    if figure.kind == "good" and site.kind in {"device", "notours"}:
        return False
    if site.kind == "notours":
        if figure.kind != "amount":
            return site.name in {"motor", "capacitor"} and figure.kind in {"open", "short"}
        if site.name in BARE_GROUPS:
            return figure.unit in {None, "other", "degC", "m?"}
        return figure.unit != "VA"
    return True


def bind(draft: Draft) -> None:
    """Gives each figure that is still open its place."""
    _boards(draft)
    open_figures = [f for f in draft.figures if not f.done]
    for figure in open_figures:
        if figure.site is None:
            figure.site = _nearest_value(draft, figure) if figure.kind == "good" else _nearest(draft, figure)
            if figure.site is not None and not figure.withdrawn and figure.kind != "good":
                figure.site.used += 1
    _share_behind(draft, open_figures)
    _carry(draft, open_figures)


def _nearest(draft: Draft, figure: Figure) -> Site | None:
    site = _nearest_of_all(draft, figure)
    if site is not None and site.name in {"primary", "secondary"} and site.at < figure.at:
        for at in range(site.at - 1, max(-1, site.at - 3), -1):  # "blue & yellow (secondary) 25.6v"
            pair = draft.sites.get(at)
            if pair is not None and pair.kind == "pair" and not pair.used and draft.sentence[at] == draft.sentence[figure.at]:
                return pair
    return site


def _nearest_of_all(draft: Draft, figure: Figure) -> Site | None:
    left, left_near = _left(draft, figure)
    right, right_linked = _right(draft, figure)
    led = right is not None and any(draft.kind(i) in {"at", "between"} for i in range(figure.at + 1, right.at))
    same_clause = left is not None and draft.clause[left.at] == draft.clause[figure.at]
    if left is not None and left.used and left.kind != "notours":
        left = None if not _many(draft, left, figure) else left
    if left is not None and left_near and same_clause:
        # "sec 24 on R-C" keeps the first; "contactor has 24 on the coil" means the second, nearer one
        if right is not None and led and right_linked and left.kind in {"device", "notours"} and right.kind != "notours":
            return right
        return left
    if right is not None and (right_linked or left is None or (not same_clause and not left_near) or left.kind == "notours"):
        return right
    return left or right


TESTED = frozenset({"it", "its", "all", "still", "very", "ya", "todo", "tambien", "si", "me", "was", "just", "both", "muy", "y", "tests", "checked", "tested", "checks", "test", "ohms", "winding", "too", "looks", "salio"})


def _nearest_value(draft: Draft, figure: Figure) -> Site | None:
    """The place that a word without a value speaks of: it must touch it."""
    for at in range(figure.at - 1, -1, -1):
        if at in draft.sites:
            return draft.sites[at] if draft.sites[at].kind in {"place", "pair", "unclear"} else None
        if draft.kind(at) not in {"is", "reads", "comma", "winding", "transformer", "alone", "novalue", "heading"} and draft.phrases[at].text not in TESTED:
            break
    linked = False
    for at in range(figure.at + 1, len(draft.phrases)):
        if at in draft.sites:
            return draft.sites[at] if linked and draft.sites[at].kind in {"place", "pair"} else None
        if draft.kind(at) in {"at", "between"} or draft.phrases[at].text in {"across", "through", "entre"}:
            linked = True
        elif draft.phrases[at].text not in {"the", "my", "el", "la", "both", "this"}:
            break
    return None


def _many(draft: Draft, site: Site, figure: Figure) -> bool:
    """One place with several figures in a row: "sec volts 26.4 24.1" has no such reading, a pressure may."""
    return False


def _left(draft: Draft, figure: Figure) -> tuple[Site | None, bool]:
    """The nearest place before the figure, and whether only small words stand between."""
    near = True
    for at in range(figure.at - 1, max(-1, figure.at - 14), -1):
        kind = draft.kind(at)
        if kind in {"stop", "line"} and not (kind == "stop" and draft.phrases[at].text.startswith("?")):
            return None, False
        if kind in {"amounts", "value"}:
            if not _skippable(draft, at):
                return None, False
            continue
        site = draft.sites.get(at)
        if site is not None and _fits(site, figure):
            if site.used and site.kind != "notours":
                return None, False
            return site, near
        if kind not in SMALL:
            near = near and kind in {"ends", "novalue", "comma"}
    return None, False


def _skippable(draft: Draft, at: int) -> bool:
    figure = draft.figure_at(at)
    return figure is None or figure.withdrawn or figure.done


def _right(draft: Draft, figure: Figure) -> tuple[Site | None, bool]:
    """The nearest place behind the figure in its clause, and whether a small word leads to it."""
    linked = True
    for at in range(figure.at + 1, min(len(draft.phrases), figure.at + 12)):
        kind = draft.kind(at)
        if draft.clause[at] != draft.clause[figure.at]:
            return None, False
        if kind in {"amounts", "value"}:
            return None, False
        site = draft.sites.get(at)
        if site is not None and _fits(site, figure) and not (site.kind == "notours" and site.name in LEFT_ONLY):
            if _has_its_own(draft, at, figure):
                return None, False
            return site, linked
        if draft.phrases[at].text in {"when", "cuando", "while", "if", "si", "once"}:
            return None, False
        if kind not in SMALL or kind == "with":
            linked = False
        if kind == "and":
            return None, False
    return None, False


def _has_its_own(draft: Draft, at: int, figure: Figure) -> bool:
    """True where the place at `at` stands before a figure of its own: "118 pri sec 0" no, "24 is low sec 20" yes."""
    following = at + 1
    while draft.kind(following) in {"is", "reads", "colon", "alone", "winding"}:
        following += 1
    if draft.kind(following) not in {"amounts", "value"} or draft.clause[following] != draft.clause[at]:
        return False
    before = at - 1
    return not (before == figure.at or draft.kind(before) in {"at", "between"} or draft.phrases[before].text in {"at", "on", "across", "the", "in"})


def _share_behind(draft: Draft, figures: list[Figure]) -> None:
    """ "26.4v unloaded and 19.8v loaded, at the secondary": a place behind several figures is that of all of them."""
    known = {id(f) for f in figures}
    for at, site in draft.sites.items():
        if site.kind not in {"place", "pair"} or site.used > 1 or (site.used and not _only_before(draft, site)):
            continue
        waiting: list[Figure] = []
        for figure in reversed([f for f in draft.around(at) if f.at < at and id(f) in known]):
            if figure.site is site and site.used and not waiting:
                continue
            if site.used and figure.state is None:
                break
            if figure.site is not None or draft.sentence[figure.at] != draft.sentence[at] or figure.kind == "good":
                break
            waiting.append(figure)
        for figure in waiting:
            figure.site = site
            site.used += 1


def _only_before(draft: Draft, site: Site) -> bool:
    """The place serves one figure, which stands before it and has a state: "27 sin carga y 23 con carga en el secundario"."""
    mine = [f for f in draft.around(site.at) if f.site is site]
    return len(mine) == 1 and mine[0].at < site.at and mine[0].state is not None


def _carry(draft: Draft, figures: list[Figure]) -> None:
    """A figure with a condition or a correction and no place of its own is taken where the one before it was."""
    last: Figure | None = None
    for figure in figures:
        if figure.site is None and last is not None and last.site is not None and _continues(draft, last, figure):
            figure.site = last.site
            figure.site.used += 1
            if figure.state is None and last.state is None and any(p.kind == "now" for p in draft.phrases[last.at : figure.at]):
                last.withdrawn = True  # "it had 26v, now it's 0"
            if figure.unit is None and figure.kind == "amount" and last.unit_from == "own":
                figure.unit, figure.unit_from = last.unit, "neighbour"
        if figure.site is not None and figure.site.kind in {"place", "pair", "unclear"}:
            last = figure
        elif figure.site is not None:
            last = None


def _continues(draft: Draft, last: Figure, figure: Figure) -> bool:
    if figure.kind in {"good", "nothing", "short"} or last.site is None or last.site.kind not in {"place", "pair"}:
        return False
    between = draft.phrases[last.at + 1 : figure.at]
    if figure.unit not in {None, "V", "A", "ohm"}:
        return False
    if any(p.kind in {"withdraw", "now", "replace"} for p in between) or last.withdrawn:
        return True
    if figure.kind == "amount" and last.unit is not None and figure.unit in {None, last.unit} and any(p.kind == "reads" for p in between) and draft.sentence[last.at] == draft.sentence[figure.at]:
        return True
    if figure.state is not None or last.state is not None:
        return figure.unit in {None, "V"}
    followed = draft.kind(figure.at + 1) in {"", "stop", "line", "comma"}
    return figure.kind == "open" and draft.phrases[figure.at].text in {"ol", "o.l."} and followed and not between
