"""What joined places and leads mean together, and which measure each place has in volts, amps and ohms."""

from grammar.binding.draft import Draft, Site
from grammar.phrase import End, Phrase
from grammar.words.colours import EITHER, LETTER_COLOURS
from grammar.words.devices import BOARDS, COILS, SWITCHES

MEASURE_AT: dict[str, dict[str, str]] = {
    "line": {"V": "line_volts"},
    "primary": {"V": "primary_volts", "A": "primary_amps", "ohm": "primary_ohms"},
    "secondary": {"V": "secondary_volts", "A": "secondary_amps", "ohm": "secondary_ohms"},
    "control": {"V": "control_volts", "ohm": "load_ohms"},
    "load": {"V": "control_volts", "ohm": "load_ohms"},
    "coil": {"V": "coil_volts", "ohm": "coil_ohms"},
    "fuse": {"V": "fuse_volts", "ohm": "fuse_ohms"},
    "primary_secondary": {"ohm": "primary_secondary_ohms"},
    "primary_ground": {"ohm": "primary_ground_ohms"},
    "secondary_ground": {"ohm": "secondary_ground_ohms"},
    "leads": {"V": "lead_volts", "ohm": "lead_ohms"},
}
"""Place to unit to measure. What is not here is no measure of ours."""

DEVICE_PLACES = {**dict.fromkeys(COILS, "coil"), **dict.fromkeys(BOARDS, "control"), **dict.fromkeys(SWITCHES, "switch")}
"""Where a meter at a device reads: a coil's own ends, R and C at a board; a switch is no place of ours."""

BETWEEN: dict[frozenset[str], str] = {
    frozenset({"primary", "secondary"}): "primary_secondary",
    frozenset({"primary", "ground"}): "primary_ground",
    frozenset({"secondary", "ground"}): "secondary_ground",
    frozenset({"h"}): "primary",
    frozenset({"x"}): "secondary",
    frozenset({"h", "x"}): "primary_secondary",
    frozenset({"h", "ground"}): "primary_ground",
    frozenset({"x", "ground"}): "secondary_ground",
    frozenset({"l"}): "line",
    frozenset({"l", "n"}): "line",
    frozenset({"r", "c"}): "control",
    frozenset({"primary"}): "primary",
    frozenset({"secondary"}): "secondary",
    frozenset({"line"}): "line",
    frozenset({"h", "secondary"}): "primary_secondary",
    frozenset({"x", "primary"}): "primary_secondary",
    frozenset({"letter p", "letter s"}): "primary_secondary",
    frozenset({"letter p", "letter g"}): "primary_ground",
    frozenset({"letter s", "letter g"}): "secondary_ground",
    frozenset({"letter p", "ground"}): "primary_ground",
    frozenset({"letter s", "ground"}): "secondary_ground",
}
"""What two ends make: places by name, marks by their letter."""

NAMED_PAIRS = frozenset({"primary", "secondary", "primary_secondary", "primary_ground", "secondary_ground"})
"""Places whose marks are kept as the leads of the reading."""


def uses_marks(phrases: list[Phrase]) -> bool:
    """True where the message names leads by letters that are no colours, or by digits."""
    for phrase in phrases:
        if phrase.kind == "ends" and len(phrase.ends) > 1:
            letters = [e.name for e in phrase.ends if e.kind == "letter"]
            if letters and not all(name in LETTER_COLOURS or name in {"r", "c", "n", "p", "s"} for name in letters):
                return True
            if "c" in letters and "r" not in letters and len(letters) > 1 and not (set(letters) & {"w", "y", "g"}):
                return True
    return False


def site_of(draft: Draft, at: int, phrase: Phrase) -> Site | None:
    """Where the phrase says the meter was; None where it is a lead alone or nothing that can be measured."""
    ends = _without_stripes(phrase)
    if len(ends) == 1:
        end = ends[0]
        return Site(at, "place", end.name) if end.kind == "place" else None
    if len(ends) != 2:
        return Site(at, "unclear", "leads")
    first, second = ends
    named = BETWEEN.get(frozenset({_group(first, draft), _group(second, draft)}))
    if named is not None:
        return _named(at, named, first, second, draft)
    if {first.kind, second.kind} == {"place"} or (
        "place" in {first.kind, second.kind} and "ground" not in {first.name, second.name}
    ):
        return Site(at, "place", f"{first.name}_{second.name}")
    if first.kind == second.kind == "letter" and first.name == second.name and first.name in {"r", "c"}:
        return Site(at, "pair", "leads", (first.name, second.name))  # of two transformers
    if "letter" in {first.kind, second.kind} and not draft.marks and _terminals(first, second):
        return Site(at, "place", "terminals")
    firsts, seconds = _names(first, draft), _names(second, draft)
    choices = tuple((a, b) for a in firsts for b in seconds if a != b)
    if not choices:
        return Site(at, "unclear", "leads")
    return Site(at, "pair", "leads", choices[0], choices if len(choices) > 1 else ())


def _named(at: int, named: str, first: End, second: End, draft: Draft) -> Site:
    marks = {first.kind, second.kind} & {"mark"} and named in NAMED_PAIRS
    leads = (_names(first, draft)[0], _names(second, draft)[0]) if marks else None
    return Site(at, "place", named, leads)


def _terminals(first: End, second: End) -> bool:
    """A thermostat terminal to C: no measure of ours, and no colour."""
    names = {first.name, second.name}
    return "c" in names or "s" in names or "n" in names


def _group(end: End, draft: Draft) -> str:
    if end.kind == "mark":
        return end.name[0] if end.name[0] in "hxl" else end.name
    if end.kind == "letter" and end.name in {"h", "x"}:
        return end.name
    if end.kind == "letter" and draft.marks and end.name not in {"r", "c"}:
        return f"mark {end.name}"
    if end.kind == "letter" and end.name in {"p", "s", "g"}:
        return f"letter {end.name}"
    return end.name


def _names(end: End, draft: Draft) -> tuple[str, ...]:
    """The lead's name, or the names that it can be."""
    if end.kind == "colour":
        choices = EITHER.get(end.name, (end.name,))
        return tuple(f"{c}/{end.stripe}" if end.stripe and end.stripe != c else c for c in choices)
    if end.kind == "letter" and not draft.marks:
        return (LETTER_COLOURS.get(end.name, end.name),)
    return (end.name,)


def lead_name(end: End, draft: Draft) -> str | None:
    """The name of a single lead, where it is one."""
    if end.kind == "place":
        return None
    names = _names(end, draft)
    return names[0] if len(names) == 1 else None


def _colour(end: End) -> str | None:
    """The colour that an end names in full or by its letter."""
    return end.name if end.kind == "colour" else LETTER_COLOURS.get(end.name) if end.kind == "letter" else None


def _without_stripes(phrase: Phrase) -> list[End]:
    """The ends, colours joined by a slash read as a stripe where something else joins the pair."""
    ends, joins = list(phrase.ends), list(phrase.joins)
    if len(ends) == 2 or not ends:
        return ends
    for tight in ("/", "-", "touch"):
        if tight in joins and any(j != tight for j in joins):
            at = 0
            while at < len(joins):
                one, two = ends[at], ends[at + 1]
                first, second = _colour(one), _colour(two)
                lettered = "letter" in {one.kind, two.kind}
                if (
                    joins[at] == tight
                    and first
                    and second
                    and one.stripe is None
                    and len(ends) > 2
                    and not (lettered and tight != "/")
                ):
                    ends[at : at + 2] = [End("colour", first, one.start, two.end, second)]
                    del joins[at]
                else:
                    at += 1
            return ends
    if len(joins) == 3 and set(joins) == {"/"}:  # wht/blk/red/yel can only be guessed
        return ends
    return ends
