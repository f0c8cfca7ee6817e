"""Reads the dangers that a text shows."""

from dataclasses import dataclass
from functools import cache, lru_cache
from itertools import islice
from typing import Final

from core.dangers import DANGERS as ORDER
from grammar.dangers.denials import MIGHT_BE, PASSES, is_denied, might_only_be, sentence
from grammar.dangers.index import index
from grammar.dangers.likeness import likeness
from grammar.dangers.phrases import Found, OneOf, Text, concept, places, tokens
from grammar.dangers.scenes import Stage, has_hands_on_gear, masked, scenes_in
from grammar.dangers.taps import is_landed_too_low
from grammar.words.danger_parts import PARTS as CONCEPTS


@dataclass(frozen=True, slots=True, kw_only=True)
class Warned:
    """What a text shows of danger."""

    names: tuple[str, ...] = ()
    """Names of `core.dangers`."""
    proved_dead: bool = False
    """The technician said that the circuit was measured dead."""
    locked_out: bool = False
    qualified: bool | None = None
    """Whether the writer says to be qualified for live work over 300 V; None where nothing is said of it."""


_TESTABLE: Final = frozenset({"bypass_gas_safety", "bypass_float", "bypass_pressure", "bypass_freeze", "defeat_interlock"})
"""Safeties that may be jumped for a moment, to test, by somebody who watches."""
_JUMPS: Final = _TESTABLE | {"bypass_fuse", "leave_jumper", "test_jumper"}
_STILLED: Final = {
    "proved_dead": frozenset({"not_proved_dead", "skip_proving"}),
    "locked_out": frozenset({"no_lockout", "control_as_lockout"}),
}
_SAID_BY: Final = {
    "over_300": frozenset({"live_over_300"}),
    "no_meter_for_it": frozenset({"backfeed"}),
    "bare_ends": frozenset({"backfeed"}),
    "burnt_smell": frozenset({"burning_smell", "smoke", "fire"}),
    "secondary_ground": frozenset({"remove_ground"}),
    "hands_in": frozenset(
        {
            "not_proved_dead",
            "skip_proving",
            "no_lockout",
            "control_as_lockout",
            "dead_controls",
            "work_live",
            "charged_capacitor",
        }
    ),
}
"""What needs no word where the other is said."""


MOST_PLACES: Final = 8
"""How often one phrase is weighed in a text: a danger that is denied so often is none."""
_KEPT: Final = 256
"""How many texts are remembered: one message is asked about more than once."""


@cache
def _concept(name: str) -> OneOf:
    return concept(name, CONCEPTS)


@lru_cache(maxsize=_KEPT)
def dangers_in(text: str, before: tuple[str, ...] = ()) -> Warned:
    """
    The dangers that a text shows, and what it says of having been careful.

    Args:
        text: As it was sent, English or Spanish.
        before: The messages before it, the newest last: "jump it" may speak of what stands there.

    >>> dangers_in("can I just jump the fuse").names
    ('bypass_fuse',)
    >>> dangers_in("not jumping the fuse").names
    ()
    """
    said = sensible(text)
    careful = [(name, is_denied(found, said.words)) for name, found in _found(said)]
    done = {name for name, denied in careful if not denied}
    stage = Stage(said, lambda: tuple(sensible(told) for told in before))
    meant, denied = _meant(said)
    names = _weighed(meant | set(scenes_in(stage)), denied, stage)
    if is_landed_too_low(said, stage.before, stage.numbers_told("supply_number")):
        names |= {"tap_too_low"}
    for name in done:
        names -= _STILLED.get(name, frozenset())
    if before and stage.acts("insist"):
        names |= {name for name in dangers_in(before[-1], before[:-1]).names if ORDER[name].kind == "no"}
    if stage.acts("refused"):
        names = {name for name in names if ORDER[name].kind != "no"}
    if said.has(_concept("MULTITAP")) and not stage.acts("tap_used"):
        names -= {"tap_too_low"}
    if said.has(_concept("BLED")):
        names -= {"charged_capacitor"}
    if "wet" in names and stage.acts("staying_dry"):
        names -= {"wet"}
    names = _jumped(names, stage)
    names = _only_measured(names, stage)
    names -= {less for less, more in _SAID_BY.items() if names & more}
    return Warned(
        names=tuple(name for name in ORDER if name in names),
        proved_dead="proved_dead" in done,
        locked_out="locked_out" in done,
        qualified=_qualified(careful, names),
    )


_SURELY_NOT_IT: Final = 0.05
"""So probable, at most, may a stop be that is taken back for a refusal."""
_SURELY_BESIDE: Final = 0.5
"""So probable, at least, must a danger be that is said beside one that a phrase tells."""


def _weighed(names: set[str], denied: set[str], stage: Stage) -> set[str]:
    """What phrases and scenes tell beside what the message is like: of two the worse is said."""
    like = likeness(stage.text, stage.before)
    if not like.is_clear or like.danger in denied or stage.acts("refused") or stage.acts("undone"):
        return names
    kind = ORDER[like.danger].kind
    if kind == "stop" and like.sure < _SURELY_BESIDE:
        return names
    if kind in {"no", "refer"} and like.sure >= _SURELY_BESIDE:  # who takes an alarm off the wall tells of no smoke
        names = {name for name in names if ORDER[name].kind != "stop" or like.of.get(name, 0.0) > _SURELY_NOT_IT}
    is_worse = kind == "stop" or (kind != "caution" and all(ORDER[name].kind == "caution" for name in names))
    return names | {like.danger} if not names or (is_worse and like.sure >= _SURELY_BESIDE) else names


def sensible(text: str) -> Text:
    """
    A text without the words that stand in it in a harmless sense.

    Args:
        text: As it was sent.
    """
    said = Text(tokens(text))
    spans = [found for _, sought in index("senses").held_by(said) for found in islice(places(sought, said), MOST_PLACES)]
    return Text(masked(said.words, spans)) if spans else said


def _qualified(careful: list[tuple[str, bool]], names: set[str]) -> bool | None:
    if names & {"live_over_300", "above_licence", "unqualified"} or ("qualified", True) in careful:
        return False
    return True if ("qualified", False) in careful else None


def _found(text: Text) -> list[tuple[str, Found]]:
    return [
        (name, found)
        for name, sought in index("satisfied").held_by(text)
        for found in islice(places(sought, text), MOST_PLACES)
    ]


def _meant(text: Text) -> tuple[set[str], set[str]]:
    """The dangers of a text, and those that it only denies; what was found once is not looked for again."""
    names: set[str] = set()
    told: set[str] = set()
    for name, sought in index("dangers").held_by(text):
        if name not in names:
            found = list(islice(places(sought, text), MOST_PLACES))
            if found:
                told.add(name)
            if any(_is_meant(name, place, text, denies=sought.denies) for place in found):
                names.add(name)
    return names, told - names


def _is_meant(name: str, found: Found, text: Text, *, denies: bool) -> bool:
    words = text.words
    if is_denied(found, words, denies=denies):
        return False
    if name in MIGHT_BE and might_only_be(found, words):
        return False
    return not (name in PASSES and Text(sentence(found, words)).has(_concept("PAST")))


def _only_measured(names: set[str], stage: Stage) -> set[str]:
    """To open a cover and read volts live is no live work."""
    if (
        "work_live" not in names
        or not stage.acts("measure")
        or any(has_hands_on_gear(act, stage) for act in stage.acts("hands"))
    ):
        return names
    return (names - {"work_live"}) | {"live_check"}


def _jumped(names: set[str], stage: Stage) -> set[str]:
    """A jumper that is out again is no danger; one that is watched for a moment is a condition."""
    if not names & _JUMPS:
        return names
    text = stage.text
    if text.has(_concept("UNDONE")) or stage.acts("undone"):
        return names - _JUMPS
    is_watched = text.has(_concept("WATCH")) or bool(stage.acts("watched"))
    if names & _TESTABLE and "leave_jumper" not in names and is_watched:
        return (names - _TESTABLE) | {"test_jumper"}
    return names
