"""The door: a text becomes a message. It never raises for any text."""

from dataclasses import replace
from typing import Final

from core.heard.record import Heard
from core.readings import Reading
from core.repairs import REPAIRS
from grammar.binding.answers import answers
from grammar.binding.corrections import correct
from grammar.binding.draft import Draft, start
from grammar.binding.facts import facts
from grammar.binding.follow_ups import follow_ups, talk
from grammar.binding.garbled import garbled
from grammar.binding.heard import hear
from grammar.binding.how_many import told_again
from grammar.binding.job_places import job_places
from grammar.binding.jobs import job_name, spoken_of
from grammar.binding.labels import labels
from grammar.binding.leftovers import leftovers
from grammar.binding.load_changes import load_changes
from grammar.binding.loads import loads
from grammar.binding.measures import measured
from grammar.binding.nearest_site import bind
from grammar.binding.phase_test import phase_test
from grammar.binding.proof import in_a_proof, proof_told
from grammar.binding.record_words import forgets, repaired
from grammar.binding.repairs import renewed
from grammar.binding.rest import rest_open
from grammar.binding.runs import runs
from grammar.binding.sites import find_sites
from grammar.binding.small_talk import small_talk
from grammar.binding.states import conditions, units
from grammar.binding.supply import nominal_in_question
from grammar.binding.taken_out import undoes
from grammar.binding.topics import is_change_of_kind, narrowed, supply_of_sizing, topics
from grammar.binding.turns import turns
from grammar.binding.unit_and_supply import unit_and_supply
from grammar.message import Context, Message
from grammar.parser import parse

TOLD = 200
"""Characters that are told of what was not read at all."""
LONGEST = 4096
"""Characters of a text that are read; what stands behind them is unread."""


def read(text: str, context: Context | None = None) -> Message:
    """
    What a text says.

    Args:
        text: Anything that a person or a machine can send.
        context: What the conversation knows: the test just asked, what is unclear, what stands.

    Returns:
        The message; what was not understood stands in it.

    >>> message = read("pri 118V sec 0V")
    >>> [(r.measure, r.value) for r in message.readings]
    [('primary_volts', 118.0), ('secondary_volts', 0.0)]
    """
    known = context or Context()
    draft = start(text[:LONGEST], parse(text[:LONGEST]), known)
    steps(draft)
    if draft.name_at is not None:
        return replace(message_of(_beside_the_name(draft), text), language=language(draft))
    return message_of(draft, text)


def _beside_the_name(named: Draft) -> Draft:
    """The rest of a message, read without the name of a job: its words and numbers are nothing else."""
    begin, end = named.name_at or (0, 0)
    text = f"{named.text[:begin]},{' ' * (end - begin - 1)}{named.text[end:]}"
    rest = start(text, parse(text), named.context)
    rest.name = named.name
    steps(rest)
    rest.asks = list(dict.fromkeys((*named.asks, *rest.asks)))
    rest.warned = named.warned  # a danger counts wherever it stands
    return rest


def steps(draft: Draft) -> None:
    """Every step of the binding, in its order."""
    turns(draft)
    if job_name(draft) or draft.name_at is not None or spoken_of(draft):
        return
    topics(draft)
    proof_told(draft)
    hear(draft)
    garbled(draft)
    small_talk(draft)
    find_sites(draft)
    replaced = correct(draft)
    job_places(draft)
    facts(draft)
    loads(draft)
    runs(draft)
    told_again(draft)
    load_changes(draft)
    phase_test(draft)
    supply_of_sizing(draft)
    unit_and_supply(draft)
    conditions(draft)
    units(draft)
    labels(draft)
    bind(draft)
    nominal_in_question(draft)
    rest_open(draft)
    in_a_proof(draft)
    measured(draft)
    if not replaced:
        follow_ups(draft)
    answers(draft, replaced=replaced and not is_change_of_kind(draft))
    leftovers(draft)
    talk(draft)


def message_of(draft: Draft, text: str) -> Message:
    """The message that a finished draft is."""
    cut = LONGEST if draft.parsed.cut is None else draft.parsed.cut
    put_right = renewed(draft)
    behind = (" ".join(text[cut : cut + TOLD].split()),) if text[cut:].strip() else ()
    return Message(
        readings=_distinct(draft.readings),
        facts=tuple(dict.fromkeys(fact for _, fact in sorted(draft.facts, key=lambda row: row[0]))),
        asks=tuple(dict.fromkeys(draft.asks)),
        unread=(*_fragments(draft, draft.unread), *behind),
        unclear=tuple(draft.unclear),
        dangers=draft.warned.names,
        proved_dead=draft.warned.proved_dead or None,
        qualified=draft.warned.qualified,
        repairs=tuple(draft.parsed.repairs),
        withdrawn=tuple(draft.withdrawn),
        asked_device=draft.asked_device,
        unknown_loads=_fragments(draft, draft.unknown_loads),
        topics=narrowed(draft),
        meant_va=draft.meant_va,
        language=language(draft),
        name=draft.name,
        heard=_heard(draft),
        chatter=_fragments(draft, draft.chatter),
        undoes=undoes(draft),
        forgets=forgets(draft),
        repaired=_is_new_unit(draft) or None,
        renewed=tuple(dict.fromkeys((*put_right, *(part for part in draft.mended if part in REPAIRS)))),
        turn=draft.turn,
        lacks=tuple(draft.lacks),
    )


def _is_new_unit(draft: Draft) -> bool:
    """Whether the transformer is new; "a new one" is another part where that is in hand."""
    another = any(part in REPAIRS and part != "tap" for part in draft.mended) and draft.told("rated_va") is None
    if "prove" in draft.asks:  # a proof is of the new one anyway, and closes no job
        return repaired(draft) and not another
    return "transformer" in draft.mended or (repaired(draft) and not another)


def _heard(draft: Draft) -> tuple[Heard, ...]:
    """What was heard, in the order of the text, each with its fragment."""
    rows = sorted(draft.heard, key=lambda row: row[0])
    return tuple(replace(heard, fragment=draft.fragment(*span)) for span, heard in rows)


def _distinct(readings: list[Reading]) -> tuple[Reading, ...]:
    return tuple(dict.fromkeys(readings))


def _fragments(draft: Draft, spans: list[tuple[int, int]]) -> tuple[str, ...]:
    """The texts of spans, those that touch put together."""
    merged: list[list[int]] = []
    for begin, end in sorted(set(spans)):
        if merged and begin <= merged[-1][1] + 1:
            merged[-1][1] = max(merged[-1][1], end)
        else:
            merged.append([begin, end])
    return tuple(f for begin, end in merged if (f := draft.fragment(begin, end)))


def language(draft: Draft) -> str | None:
    """The language that the words show; English shorthand is written in both, and shows none beside anything else or in a job."""
    es = sum(1 for p in draft.parsed.words if p.language == "es")
    en = sum(1 for p in draft.parsed.words if p.language == "en")
    talk = sum(1 for p in draft.parsed.words if p.language == "en" and p.kind not in SHORTHAND)
    if not talk and (es or draft.context.said_before):
        return "es" if es else None
    return None if es == en else ("es" if es > en else "en")


SHORTHAND: Final = frozenset(
    {
        "place",
        "device",
        "value",
        "unit",
        "condition",
        "idword",
        "tapword",
        "colour",
        "heading",
        "alone",
        "transformer",
        "novalue",
    }
)
"""Kinds of words that Spanish takes over from English."""
