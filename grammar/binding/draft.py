"""The message while it is being made: phrases, figures, and what each of them became."""

from bisect import bisect_left, bisect_right
from dataclasses import dataclass, field
from typing import Final, Literal

from core.heard.record import Heard
from core.readings import Fact, Reading
from grammar.binding.word_row import words_of
from grammar.dangers import Warned
from grammar.message import Context, Unclear
from grammar.parser import Parsed
from grammar.phrase import Amount, Phrase
from grammar.units import SPELLINGS, in_core, kind_of

REACH = 48
"""Phrases over which a word can have to do with a figure; a sentence of the field is far shorter."""
STRONG = frozenset({"stop", "line"})
"""Kinds of phrases that end a sentence."""
WEAK = frozenset({"comma", "sign"})
"""Kinds that end a clause."""
BREAKS = frozenset({"but", "pero", "then", "and", "plus"})


@dataclass(slots=True)
class Site:
    """Where a figure was taken, or what else it belongs to."""

    at: int
    """Index of its phrase."""
    kind: Literal["place", "pair", "device", "notours", "unclear"]
    name: str
    """A place of `binding/places.py`, a device, or the group of a word of another trade."""
    leads: tuple[str, str] | None = None
    choices: tuple[tuple[str, str], ...] = ()
    """For an unclear pair: the pairs that it can be."""
    also: "tuple[Site, ...]" = ()
    """Further places that the same figure is of: "primary and secondary open"."""
    used: int = 0
    """How many figures it has."""
    assumed: bool = False
    each: bool = False
    """True where the value is told of each of the places for itself: "13v from either one to chassis"."""


@dataclass(slots=True)
class Figure:
    """One value of the message."""

    at: int
    kind: Literal["amount", "open", "nothing", "short", "good"]
    start: int
    end: int
    value: float = 0.0
    unit: str | None = None
    """Core's unit, `other` for a unit that is not ours, None where none was said."""
    unit_from: Literal["own", "word", "heading", "neighbour", "live"] | None = None
    low: float | None = None
    high: float | None = None
    """The ends of a range."""
    amount: Amount | None = None
    amounts: tuple[Amount, ...] = ()
    joins: tuple[str, ...] = ()
    doubt: str | None = None
    site: Site | None = None
    state: str | None = None
    """`lifted`, `loaded` or `isolated`, where a condition touches it."""
    was: float | None = None
    """The value before this one: "went from 24 to 0"."""
    heir_of: "Figure | None" = None
    """The figure whose place it takes, and whose unit where none is said."""
    withdrawn: bool = False
    garbled: bool = False
    """True where a word of the number was misspelt: it takes its place, and is no value."""
    done: bool = False
    """True once it became a fact, chatter, or part of something else."""


@dataclass(slots=True)
class Draft:
    """Everything about one text while it is read."""

    text: str
    parsed: Parsed
    context: Context
    phrases: list[Phrase]
    words: list[str]
    """The folded words in a row; an empty one ends a sentence."""
    owners: list[int]
    """The phrase of `parsed.words` that each of them is in."""
    clause: list[int] = field(default_factory=list)
    sentence: list[int] = field(default_factory=list)
    figures: list[Figure] = field(default_factory=list)
    by_phrase: dict[int, Figure] = field(default_factory=dict)
    figure_ats: list[int] = field(default_factory=list)
    sites: dict[int, Site] = field(default_factory=dict)
    readings: list[Reading] = field(default_factory=list)
    facts: list[tuple[int, Fact]] = field(default_factory=list)
    asks: list[str] = field(default_factory=list)
    warned: Warned = field(default_factory=Warned)
    unclear: list[Unclear] = field(default_factory=list)
    unread: list[tuple[int, int]] = field(default_factory=list)
    heard: list[tuple[tuple[int, int], Heard]] = field(default_factory=list)
    """What is no measure and still decides the call, with its span; the fragment is filled in last."""
    chatter: list[tuple[int, int]] = field(default_factory=list)
    withdrawn: list[str] = field(default_factory=list)
    taken: set[int] = field(default_factory=set)
    """Indices of phrases that found their meaning."""
    cue_spans: list[tuple[int, int]] = field(default_factory=list)
    topics: list[str] = field(default_factory=list)
    unknown_loads: list[tuple[int, int]] = field(default_factory=list)
    """Spans of what stands where a device would, and is none that we know; they are unread too."""
    meant_va: float | None = None
    asked_device: str | None = None
    """What is counted where it is asked how many a unit carries."""
    mended: list[str] = field(default_factory=list)
    """What is told as put right of the part in hand: names of `core.repairs.REPAIRS`, or `transformer`."""
    lacks: list[str] = field(default_factory=list)
    """Measures of a part that is not there."""
    turn: Literal["cause", "runs", "thanks", "complaint"] | None = None
    """What the message is in a conversation, where it brings nothing to read."""
    name: str | None = None
    name_at: tuple[int, int] | None = None
    """Where the name stands, where the message says more than it."""
    marks: bool = False
    """True where single letters and digits are marks and no colours."""
    live: bool = False
    modes: tuple[bool, bool] = (False, False)
    """Read in low impedance, and still connected."""

    def kind(self, at: int) -> str:
        """Kind of a phrase, empty beyond the ends."""
        return self.phrases[at].kind if 0 <= at < len(self.phrases) else ""

    def fragment(self, start: int, end: int) -> str:
        """The text between two places, on one line."""
        return " ".join(self.text[start:end].split())

    def figure_at(self, at: int) -> Figure | None:
        """The figure of a phrase, if it is one."""
        return self.by_phrase.get(at)

    def around(self, at: int) -> list[Figure]:
        """The figures within reach of a phrase: what is farther away has nothing to do with it."""
        ats = self.figure_ats
        return [
            self.by_phrase[i] for i in ats[bisect_left(ats, at - REACH) : bisect_right(ats, at + REACH)] if i in self.by_phrase
        ]

    def told(self, fact: str) -> Fact | None:
        """The fact of a name, if the message has it."""
        return next((f for _, f in self.facts if f.fact == fact), None)

    def fact(self, figure: Figure | None, fact: Fact, at: int | None = None) -> None:
        """Adds a fact; the figure that it came from is done."""
        if figure is not None:
            figure.done = True
        self.facts.append((figure.at if figure is not None else (at or 0), fact))


def start(text: str, parsed: Parsed, context: Context) -> Draft:
    """The draft of a text: its clauses and its figures."""
    draft = Draft(text, parsed, context, list(parsed.phrases), *words_of(parsed.words))
    clause = sentence = 0
    for phrase in draft.phrases:
        if phrase.kind in STRONG:
            sentence += 1
            clause += 1
        elif phrase.kind in WEAK or (phrase.kind in {"filler", "and"} and phrase.text in {"but", "pero", "plus", "mas"}):
            clause += 1
        draft.clause.append(clause)
        draft.sentence.append(sentence)
    verbs = {at for at in range(len(draft.phrases)) if _is_verb(draft, at)}
    draft.figures = [f for at, phrase in enumerate(draft.phrases) if at not in verbs and (f := _figure(at, phrase)) is not None]
    draft.by_phrase = {f.at: f for f in draft.figures}
    draft.figure_ats = [f.at for f in draft.figures]
    return draft


_COVERS: Final = frozenset({"door", "doors", "cover", "covers", "lid", "panel", "panels", "puerta", "puertas", "tapa"})
"""What is opened to get at the work."""
_OPEN: Final = frozenset(
    {"open", "opened", "is open", "was open", "are open", "wide open", "abierto", "abierta", "esta abierta"}
)


def _is_verb(draft: Draft, at: int) -> bool:
    """In "about to open up the primary" and "door open": what is done, and no value."""
    text = draft.phrases[at].text
    if at and text in _OPEN and draft.phrases[at - 1].text in _COVERS:
        return True
    if text not in {"open", "opened", "opening"}:
        return False
    behind = draft.phrases[at + 1].text if at + 1 < len(draft.phrases) else ""
    return behind in {"up", "it", "them"} or (draft.kind(at - 1) == "to" and behind in {"the", "up", "it", "my", "a"})


def _figure(at: int, phrase: Phrase) -> Figure | None:
    if phrase.kind == "value":
        return Figure(at, phrase.meaning, phrase.start, phrase.end)  # type: ignore[arg-type]
    if phrase.kind == "novalue":
        return Figure(at, "good", phrase.start, phrase.end)
    if phrase.kind != "amounts":
        return None
    figure = Figure(at, "amount", phrase.start, phrase.end, amounts=phrase.amounts, joins=phrase.joins)
    settle(figure)
    return figure


def settle(figure: Figure) -> None:
    """Value, unit and range of a figure from its amounts, the last of them giving the unit."""
    amounts = figure.amounts
    last = amounts[-1]
    figure.amount = last
    meaning = next((a.unit for a in reversed(amounts) if a.unit), None)
    figure.unit, figure.unit_from = (unit_kind(meaning), "own") if meaning else (None, None)
    values = [converted(a, a.unit or meaning) for a in amounts]
    figure.value = values[-1]
    figure.doubt = next((a.doubt for a in amounts if a.doubt), None)
    if len(values) == 2 and figure.joins[0] in {"to", "-", "a", "or", "o", "and", "y", "dash", "about"}:
        figure.low, figure.high = min(values), max(values)
        figure.value = (values[0] + values[1]) / 2


def unit_kind(meaning: str) -> str:
    """Core's unit of a unit word, or `other`."""
    if meaning == "m?":
        return "m?"
    return kind_of(meaning) if meaning in SPELLINGS else {"gauge": "AWG", "square_mm": "mm2"}.get(meaning, "other")


def converted(amount: Amount, meaning: str | None) -> float:
    """The value in core's unit, where the unit is one of ours."""
    if meaning is None or meaning not in SPELLINGS:
        return amount.value
    return in_core(amount.value, meaning)
