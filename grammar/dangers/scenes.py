"""
Scenes: who does what to which part.

An act is found whatever it is done to; the part nearest to it, or the one that a pronoun stands for, is what it is done to. So "jumped
R to Y, float is dry" is no float jumped, and "float keeps tripping. gonna nut the two wires together" is one.
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import cache, cached_property
from itertools import islice
from typing import Final

from grammar.dangers.denials import is_denied
from grammar.dangers.index import index
from grammar.dangers.phrases import BREAK, Found, OneOf, Phrase, Text, concept, places
from grammar.words.danger_acts import ACTS
from grammar.words.danger_parts import PARTS
from grammar.words.danger_scenes import SCENES, Scene

_RIVALS: Final = ("STATPOINTS",)
"""What an act may be done to without danger: bound to one of these it is bound to no other."""
_PRONOUNS: Final = frozenset({"it", "them", "em", "that", "this", "lo", "la", "los", "las", "le", "ese", "eso"})
_STATES: Final = frozenset({"dark", "supply_number", "tap_number", "off", "odd_volts", "power_on"})
"""What is said of things, where "nothing" and "not" are no denial of an act."""
_NO_ARTICLES: Final = frozenset({"it", "them", "em", "lo", "le"})
"""Those that no name of a part can follow, as it can follow "that" and "la"."""
_AFTER: Final = 7
"""Words between an act and what it is done to, where that is named behind it."""
_RIGHT_BEHIND: Final = 2
"""Words between a pronoun and the part that it only points at: "jump that float"."""
_DONE: Final = frozenset(
    {
        "took",
        "undid",
        "got",
        "went",
        "had",
        "swapt",
        "came",
        "quite",
        "solte",
        "cambie",
        "desconecte",
        "corte",
        "saque",
        "jale",
        "zafe",
        "afloje",
        "puse",
        "meti",
    }
)
"""Pasts that do not end in -ed."""
_SHORTEST_PAST: Final = 4
_MAINS: Final = frozenset({110.0, 115.0, 120.0, 208.0, 220.0, 230.0, 240.0, 277.0, 347.0, 440.0, 460.0, 480.0, 575.0, 600.0})
"""Volts that supplies and taps are called by."""
_OTHER_UNITS: Final = (
    "ohm",
    "k",
    "meg",
    "mohm",
    "m",
    "a",
    "va",
    "w",
    "hz",
    "ft",
    "feet",
    "pie",
    "metro",
    "awg",
    "ga",
    "uf",
    "mfd",
    "psi",
    "degree",
    "grado",
    "percent",
)
"""Beginnings of units that are no volts; "a" is amps here, for it stands behind a number."""
_FAR: Final = 1.4
"""Supply over tap from where a tap is refused, as in `core.dangers.recognise`."""
_NEAR: Final = 0.08
_MOST: Final = 12
"""How many places of one phrase are weighed."""


@dataclass(frozen=True, slots=True)
class Part:
    """Something in a text that an act can be done to."""

    start: int
    end: int
    names: frozenset[str]


@cache
def _concept(name: str) -> OneOf:
    return concept(name, PARTS)


_ACT_NAMES: Final = frozenset(cue.meaning for cue in ACTS)
_OBJECTS: Final = tuple(dict.fromkeys((*(part for scene in SCENES for part in scene.parts), *_RIVALS)))


class Stage:
    """One message with its parts and acts, each looked for at most once."""

    def __init__(self, text: Text, before: Callable[[], tuple[Text, ...]] = tuple) -> None:
        """The message, and how to come by those before it, the newest last: few messages need them."""
        self.text = text
        self._before = before
        self._parts: tuple[Part, ...] | None = None
        self._acts: dict[str, tuple[Found, ...]] = {}
        self._phrases: dict[str, list[Phrase]] | None = None

    @cached_property
    def before(self) -> tuple[Text, ...]:
        """The messages before this one, the newest last."""
        return self._before()

    @cached_property
    def points(self) -> bool:
        """True where a word stands for something told before."""
        return not _PRONOUNS.isdisjoint(self.text.words)

    @property
    def parts(self) -> tuple[Part, ...]:
        """What an act can be done to, in order; of two in one place the longer."""
        if self._parts is None:
            self._parts = tuple(_parts(self.text))
        return self._parts

    def acts(self, name: str) -> tuple[Found, ...]:
        """Where an act is told and not denied."""
        if name not in self._acts:
            words = self.text.words
            self._acts[name] = tuple(
                place
                for sought in self._sought(name)
                for place in islice(places(sought, self.text), _MOST)
                if name in _STATES or not is_denied(place, words, denies=sought.denies)
            )
        return self._acts[name]

    def _sought(self, name: str) -> list[Phrase]:
        """The phrases of an act that the text may hold."""
        if self._phrases is None:
            self._phrases = {}
            for act, sought in index("acts").held_by(self.text):
                self._phrases.setdefault(act, []).append(sought)
        return self._phrases.get(name, [])

    def numbers(self, name: str) -> frozenset[float]:
        """The numbers that are told with an act."""
        return frozenset(place.numbers["{BIG}"] for place in self.acts(name) if is_volts(place, self.text.words))

    def numbers_told(self, name: str) -> frozenset[float]:
        """The numbers that are told with an act in this message or in one before it."""
        return self.numbers(name).union(*(Stage(text).numbers(name) for text in self.before))

    def tells(self, name: str) -> bool:
        """True where a concept or an act stands in this message."""
        return bool(self.acts(name)) if name in _ACT_NAMES else self.text.has(_concept(name))

    def was_told(self, name: str) -> bool:
        """True where a concept or an act stands in this message or in one before it."""
        if name not in _ACT_NAMES:
            return any(text.has(_concept(name)) for text in (self.text, *self.before))
        return bool(self.acts(name)) or any(Stage(text).acts(name) for text in self.before)

    def stands(self, name: str, near: Found, together: int) -> bool:
        """True where a concept or an act stands near an act."""
        at = self.acts(name) if name in _ACT_NAMES else [Found(s, max(e)) for s, e in self.text.where(_concept(name)).items()]
        return any(f.start - near.end <= together and near.start - f.end <= together for f in at)


def _parts(text: Text) -> Iterator[Part]:
    spans: dict[tuple[int, int], set[str]] = {}
    for name in _OBJECTS:
        for start, ends in text.where(_concept(name)).items():
            spans.setdefault((start, max(ends)), set()).add(name)
    kept: list[tuple[int, int]] = []
    for start, end in sorted(spans, key=lambda span: (span[0], -span[1])):
        if not kept or start >= kept[-1][1]:
            kept.append((start, end))
    for span in kept:
        yield Part(*span, frozenset(spans[span]))


def scenes_in(stage: Stage) -> Iterator[str]:
    """
    The dangers whose scene a text shows.

    Args:
        stage: The message, and the one before it.
    """
    shown: set[str] = set()
    for scene in SCENES:
        if (
            scene.danger not in shown
            and _is_possible(scene, stage)
            and any(_is_shown(scene, a, stage) for a in _acts(scene, stage))
        ):
            shown.add(scene.danger)
            yield scene.danger


def _is_possible(scene: Scene, stage: Stage) -> bool:
    """A cheap look: whether its parts and words are there at all."""
    if any(stage.text.has(_concept(name)) for name in scene.unless if name not in _ACT_NAMES):
        return False
    if not all(name in _ACT_NAMES or stage.text.has(_concept(name)) for name in scene.also):
        return False
    if not scene.parts or any(stage.text.has(_concept(name)) for name in scene.parts):
        return True
    return stage.points and any(text.has(_concept(name)) for text in stage.before for name in scene.parts)


def _acts(scene: Scene, stage: Stage) -> Iterator[Found]:
    for act in scene.acts:
        yield from stage.acts(act)


def _is_shown(scene: Scene, act: Found, stage: Stage) -> bool:
    if scene.parts and bound(act, stage, scene.near).isdisjoint(scene.parts):
        return False
    if any(stage.acts(name) for name in scene.unless if name in _ACT_NAMES):
        return False
    return _has_its_numbers(scene, act, stage) and _is_in_its_time(scene, act, stage) and _has_its_company(scene, act, stage)


def _has_its_numbers(scene: Scene, act: Found, stage: Stage) -> bool:
    if scene.far_above and not _is_far_above(*(stage.numbers(name) for name in scene.far_above)):
        return False
    if not scene.over:
        return True
    return scene.over <= act.numbers["{BIG}"] < scene.below and is_volts(act, stage.text.words)


def is_volts(act: Found, words: tuple[str, ...]) -> bool:
    """
    False where the number of an act has another unit: "sec 52.9 ohms" is no voltage.

    Args:
        act: Where it is told.
        words: The text.
    """
    told = range(act.start, min(act.end, len(words) - 1))
    return not any(_is_number(words[at], act.numbers["{BIG}"]) and words[at + 1].startswith(_OTHER_UNITS) for at in told)


def _is_number(word: str, value: float) -> bool:
    return word[0].isdecimal() and float(word.replace(",", ".")) == value


def _is_in_its_time(scene: Scene, act: Found, stage: Stage) -> bool:
    return scene.done_counts or not _is_done(act, stage.text.words)


def _has_its_company(scene: Scene, act: Found, stage: Stage) -> bool:
    """True where all that must be said with the act is said, near it or before, and belongs to the same matter."""
    if not all(stage.stands(name, act, scene.together) for name in scene.also):
        return False
    if not all(stage.was_told(name) for name in scene.told):
        return False
    if not scene.unless_told or any(stage.tells(name) for name in scene.told):
        return True
    return not any(text.has(_concept(name)) for text in stage.before for name in scene.unless_told)


def _is_done(act: Found, words: tuple[str, ...]) -> bool:
    """True where an act is told as done: "pulled the leads", "ya solté los cables"."""
    told = words[act.start : act.end]
    return any(word in _DONE or (len(word) > _SHORTEST_PAST and word.endswith("ed")) for word in told)


def _is_far_above(highs: frozenset[float], lows: frozenset[float]) -> bool:
    """A supply far above its tap; where the right tap is spoken of too, it is another matter."""
    supplies = {volts for volts in highs if any(abs(volts / main - 1) < _NEAR for main in _MAINS)}
    taps = lows & _MAINS
    return any(taps and all(supply / tap >= _FAR for tap in taps) for supply in supplies)


def bound(act: Found, stage: Stage, near: int) -> frozenset[str]:
    """
    What an act is done to.

    Args:
        act: Where it is told.
        stage: The message.
        near: How many words it may stand behind its part.

    Returns:
        The names of the part; none where it is done to nothing that we know.
    """
    inside = [part for part in stage.parts if part.start >= act.start and part.end <= act.end]
    if inside:
        return frozenset().union(*(part.names for part in inside))
    words = stage.text.words
    behind = next((p for p in stage.parts if p.start >= act.end and p.start - act.end <= _AFTER), None)
    if behind is not None and BREAK in words[act.end : behind.start]:
        behind = None
    ahead = [part for part in stage.parts if part.end <= act.start]
    around = (*words[max(act.start, act.end - 2) : act.end + 1], *_clitic(act, words))
    has_pronoun = not _PRONOUNS.isdisjoint(around)
    points = not has_pronoun or (
        _NO_ARTICLES.isdisjoint(around) and behind is not None and behind.start - act.end <= _RIGHT_BEHIND
    )
    is_named = behind is not None and points
    if behind is not None and is_named and (not ahead or behind.start - act.end <= act.start - ahead[-1].end + _RIGHT_BEHIND):
        return behind.names
    if ahead and (has_pronoun or act.start - ahead[-1].end <= near):
        return ahead[-1].names
    told = _told_before(stage) if has_pronoun else None
    return frozenset() if told is None and behind is None else (told or behind).names  # type: ignore[union-attr]


def _clitic(act: Found, words: tuple[str, ...]) -> tuple[str, ...]:
    """The word of "lo puenteo" that stands before the act; before a noun it would be an article."""
    before = words[act.start - 1 : act.start] if act.start else ()
    return ("lo",) if before and before[0] in {"lo", "la", "los", "las", "le"} else ()


def _told_before(stage: Stage) -> Part | None:
    """The part that was last spoken of before this message."""
    told = (part for text in reversed(stage.before) for part in reversed(tuple(_parts(text))))
    return next((part for part in told if part.names.isdisjoint(_RIVALS)), None)


def has_hands_on_gear(act: Found, stage: Stage) -> bool:
    """
    True where an act is done to wires and terminals, not to a cover.

    Args:
        act: Where it is told.
        stage: The message.
    """
    words = stage.text.words
    behind = words[act.end : act.end + 3]
    if any(word in PARTS["COVERS"] for word in behind[:2]):
        return False
    return any(word in PARTS["GEAR"] for word in (*words[act.start : act.end], *behind))


def masked(words: tuple[str, ...], spans: Iterable[Found]) -> tuple[str, ...]:
    """
    A text without the words that stand in it in a harmless sense.

    Args:
        words: The text.
        spans: The places to take out.
    """
    left = list(words)
    for span in spans:
        left[span.start : span.end] = [OUT] * (span.end - span.start)
    return tuple(left)


OUT: Final = "_"
"""What stands for a word that was taken out."""
