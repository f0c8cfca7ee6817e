"""What leans on the messages before it: "now 24", "same", "at the stat too", "popped again", "got it in, 27.1", "so replace it?"."""

from dataclasses import replace
from typing import Literal

from core.readings import Fact, Reading
from grammar.binding.bare_values import bare_values
from grammar.binding.draft import Draft
from grammar.binding.in_hand import TRIPPED, cues, in_job, mended, speaks_of_fuse
from grammar.binding.meant import meant
from grammar.binding.moved_taps import is_about_taps, moved_taps
from grammar.cues import find
from grammar.words.follow_ups import SAME, TOO
from grammar.words.record import AFTER_CLOSING

TURNS: tuple[Literal["runs", "thanks"], ...] = ("runs", "thanks")
SIBLINGS = {
    "secondary_volts_lifted": ("secondary_volts",),
    "secondary_volts": ("secondary_volts_lifted", "control_volts"),
    "primary_volts": ("line_volts",),
    "line_volts": ("primary_volts",),
    "control_volts": ("secondary_volts",),
    "coil_volts": ("control_volts",),
}
"""The places whose value "same" repeats where the place itself was not read."""


def follow_ups(draft: Draft) -> None:
    """Readings, facts and repairs that only the job tells the place of."""
    if not in_job(draft) or draft.name is not None:
        return
    _again(draft)
    _tripped(draft)
    moved_taps(draft)
    meant(draft)
    draft.mended += [part for part in mended(draft) if part not in draft.mended]
    _stated(draft)
    _same(draft)
    _too(draft)
    bare_values(draft)


def _stated(draft: Draft) -> None:
    """In "25.4 loaded" behind the secondary's other value: no guess, where the secondary is what is read."""
    asked = draft.context.asked[0] if draft.context.asked else "secondary"
    known = any(r.measure.startswith("secondary_volts") for r in draft.context.readings)
    if draft.context.repaired and asked in {"control_volts", "coil_volts"} and len(draft.readings) == 1:
        read = draft.readings[0]
        if (
            read.measure == "secondary_volts"
            and read.assumed
            and read.loaded
            and not any(p.kind == "ends" for p in draft.phrases)
        ):
            draft.readings = [replace(read, measure=asked, assumed=False, loaded=False)]  # the proof has asked for it
        return
    if not known or not asked.startswith("secondary") or any(p.kind == "ends" for p in draft.phrases):
        return
    stated = {p.meaning for p in draft.phrases if p.kind == "condition"} & {"loaded", "lifted"}
    if (
        stated
        and len(draft.readings) == 1
        and draft.readings[0].measure.startswith("secondary_volts")
        and not any(f.low for f in draft.figures)
    ):
        draft.readings = [replace(draft.readings[0], assumed=False)]


def _again(draft: Draft) -> None:
    """In "popped again", "it's blown", where a fuse is spoken of."""
    if not speaks_of_fuse(draft) or "?" in draft.text or any(heard.what in {"switch", "line_fuse"} for _, heard in draft.heard):
        return
    told = {found.meaning for found in find(draft.words, cues("again"))}
    symptom = next((name for name in ("blows_fuse", "blown_fuse") if name in told), None)
    known = {fact.value for _, fact in draft.facts if fact.fact == "symptom"}
    if symptom is None or known & {"blows_fuse", "blown_fuse"} or any(r.measure.startswith("fuse") for r in draft.readings):
        return
    for figure in draft.figures:
        figure.done = figure.done or figure.kind in {"open", "good"}
    draft.facts.append((0, Fact(fact="symptom", value=symptom)))


SWITCHED_ON = frozenset({"on", "prendi", "subi", "reset", "restableci", "prendio", "encendi"})


def _tripped(draft: Draft) -> None:
    """In "turned it on and it tripped", where a breaker is spoken of."""
    told = set(draft.words)
    before = " ".join(draft.context.said_before[-2:]).lower()
    if (
        any(word in before for word in ("breaker", "pastilla", "termico"))
        and told & TRIPPED
        and told & SWITCHED_ON
        and not draft.figures
    ):
        draft.facts.append((0, Fact(fact="symptom", value="trips_breaker")))


BESIDE_SAME = frozenset({"", "the", "it", "its", "still", "thing", "reading", "number", "here", "there", "lo", "el", "la", "y", "and", "sigue", "da", "marca", "sale", "ahi", "aqui", "volts", "as", "before", "value", "voltage", "que", "antes", "is", "esta"})  # fmt: skip
"""Words that may stand beside it."""


def _same(draft: Draft) -> None:
    """In "same", "suelto igual": the place that was asked for, or that the condition names, reads what was read before."""
    told = draft.words
    lifted = any(p.kind == "condition" and p.meaning == "lifted" for p in draft.phrases)
    asked = "secondary_volts_lifted" if lifted else draft.context.asked[0] if draft.context.asked else None
    beside = {word for p in draft.phrases if p.kind == "condition" for word in p.text.split()} | BESIDE_SAME | SAME
    if not set(told) & SAME or not set(told) <= beside or draft.figures or draft.readings or draft.asks or asked is None:
        return
    for measure in (asked, *SIBLINGS.get(asked, ())):
        last = next((r for r in reversed(draft.context.readings) if r.measure == measure), None)
        if last is not None:
            draft.readings.append(Reading(measure=asked, value=last.value, assumed=measure != asked))
            return


PLACES_TOO = {"thermostat": "control_volts", "board": "control_volts", "contactor": "coil_volts"}
LEAST_LINE_V = 90.0


def _too(draft: Draft) -> None:
    """In "at the xfmr too", "también en el trafo": the value of the message before, at another place."""
    if not set(draft.words) & TOO or draft.figures or draft.readings or draft.asks or not draft.context.readings:
        return
    last = draft.context.readings[-1]
    if not isinstance(last.value, float) or not last.measure.endswith(("volts", "lifted")):
        return
    places = [site.name for site in draft.sites.values() if site.kind in {"place", "device"}]
    measure = next((PLACES_TOO[name] for name in places if name in PLACES_TOO), None)
    if "primary" in places or any(p.kind == "transformer" for p in draft.phrases):
        measure = "primary_volts" if last.value >= LEAST_LINE_V or last.measure == "line_volts" else "secondary_volts"
    if measure is not None:
        draft.readings.append(Reading(measure=measure, value=last.value, assumed=True))
        for site in draft.sites.values():
            site.used += 1


def talk(draft: Draft) -> None:
    """The question or the word that a message is, where nothing in it was read."""
    brought = draft.readings or draft.facts or draft.unclear or draft.heard or draft.warned.names or draft.mended or draft.lacks
    numbers = any(letter.isdigit() for begin, end in draft.unread for letter in draft.text[begin:end])
    told = [found.meaning for found in find(draft.words, cues("talk"))]
    if in_job(draft) and not numbers:
        _asks(draft, told, brought=bool(brought))
    if (
        draft.mended
        and not (draft.readings or draft.facts or draft.unclear or draft.heard or draft.asks or numbers)
        and "runs" in told
    ):
        draft.turn = "runs"
    if brought or draft.asks or numbers:
        return
    draft.turn = draft.turn or next((name for name in TURNS if name in told and in_job(draft)), None)
    if draft.turn is None and "complaint" in told and not draft.context.readings:
        draft.turn = "complaint"
    if draft.turn is not None:
        draft.unread = []


def _asks(draft: Draft, told: list[str], *, brought: bool) -> None:
    asks = set(draft.asks)
    of_leads = draft.context.is_of_leads
    is_tap = "tap" in told and asks <= {"expect", "which_lead", "tap"} and is_about_taps(draft)
    if is_tap and not (brought and not asks):
        draft.asks = ["tap"]
    elif "cause" in told and asks <= {"why"} and not brought:
        draft.asks, draft.turn = ["why"], "cause"
    elif "picture" in told and not asks and not brought and of_leads:
        draft.asks = ["which_lead"]
    elif "size" in told and not asks and not brought:
        draft.asks = ["size"]
    elif "wire_run" in told and not asks and not brought:
        draft.asks = ["wire_run"]
    elif "which_lead" in asks and draft.context.finding in {"load_short", "protection_open"} and not of_leads and not brought:
        draft.asks = ["next"]  # "which wire is it", behind a leg that was lifted
    elif "fuse" in told and not asks and not brought:
        draft.asks = ["fuse"]
    elif "verdict" in told and asks <= {"no", "yes"} and not brought:
        draft.asks = ["next"]
    elif _is_short_question(draft) and not asks and not brought:
        draft.asks = ["next"]  # "c wire?", "gas valve or wire?"
    elif not asks and not _read(draft) and draft.phrases and draft.phrases[0].text in SHUTS and _says_what_was_done(draft):
        draft.asks = ["close_job"]
    else:
        return
    draft.unread = [span for span in draft.unread if any(letter.isdigit() for letter in draft.text[span[0] : span[1]])]


def _read(draft: Draft) -> bool:
    """Whether a number or a name came with it."""
    return bool(draft.readings or draft.unclear or draft.heard or draft.name is not None)


def _says_what_was_done(draft: Draft) -> bool:
    """In "cierra, transformador cambiado", "listo, empalme nuevo"."""
    told = set(draft.words) - {draft.phrases[0].text}
    return len(draft.phrases) > 1 and (draft.phrases[0].text != "listo" or bool(told & AFTER_CLOSING))


MOST_WORDS = 6


def _is_short_question(draft: Draft) -> bool:
    """A few words with a question mark, where there is something to answer them by."""
    told = [word for word in draft.words if word]
    return draft.text.rstrip().endswith("?") and len(told) <= MOST_WORDS and bool(draft.context.readings)


SHUTS = frozenset({"cierra", "cierro", "cierralo", "close", "listo"})
"""First words that close a job, whatever stands behind them."""
