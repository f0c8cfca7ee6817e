"""The part that a conversation has in hand: what "it", "a new one" and "put it back on" are said of."""

from functools import cache

from grammar.binding.draft import Draft
from grammar.binding.heard.line_fuses import LINE_FUSES
from grammar.binding.record_words import repaired
from grammar.cues import Index, find, index
from grammar.fold import fold
from grammar.uncollected import uncollected
from grammar.words.follow_ups import AGAIN, FOLLOW_UPS, PUT_IN, UNDONE
from grammar.words.repairs import PARTS

OF_FINDING = {
    "protection_open": "fuse", "load_short": "fuse", "control_open": "wiring", "no_supply": "supply", "loose_line": "supply", "low_supply": "supply", "wrong_tap": "tap",
    **dict.fromkeys(("primary_open", "secondary_open", "primary_shorted_turns", "secondary_shorted_turns", "windings_bridged", "winding_grounded"), "transformer"),
}  # fmt: skip
"""What is mended where that was found; a bad transformer comes before."""
SHORTED = frozenset({"chafed", "rubbed", "bare", "pinched", "nicked", "short", "shorted", "skinned", "frayed", "cut", "melted", "pelado", "pelada", "rozado", "corto", "mordido", "cortado", "through", "touching", "tocando"})  # fmt: skip
"""What is told of a wire that was short."""


def in_job(draft: Draft) -> bool:
    """Whether anything was said before."""
    known = draft.context
    return bool(known.said_before or known.readings or known.facts)


@cache
@uncollected()
def cues(name: str) -> Index:
    """The turns of phrase of one kind, indexed at first use."""
    return index({"talk": FOLLOW_UPS, "again": AGAIN, "put_in": PUT_IN}[name])


def mended(draft: Draft) -> tuple[str, ...]:
    """
    What is told as put right, where the part is named by what was said before.

    Returns:
        Names of `core.repairs.REPAIRS`, or `transformer`.
    """
    told = draft.words
    if set(told) & UNDONE or "?" in draft.text or any(f.value == "blows_fuse" for _, f in draft.facts):
        return ()
    acts = {found.meaning for found in find(told, cues("put_in"))}
    sized = _by_size(draft) if set(told) & PUT_IN_WORDS else None
    found: list[str | None] = [sized] if sized else [_new(draft, told)] if "new" in acts and "mended" not in acts else []
    if "mended" in acts and sized != "transformer":
        found.insert(0, _mended(draft, told))
    if "on" in acts and not found:
        found.append(_on(draft, told))
    if not found and repaired(draft):
        found.append("transformer")
    return tuple(dict.fromkeys(part for part in found if part is not None))


def _mended(draft: Draft, told: list[str]) -> str | None:
    """In "found it, fixed": the short where one was looked for."""
    named = _named(told)
    if named in {"wiring", "short"} and draft.context.finding == "control_open":
        return named
    searched = draft.context.finding in {"load_short", "protection_open"}
    return "short" if set(told) & SHORTED or searched else _part(draft)


PUT_IN_WORDS = frozenset({"new", "nuevo", "in", "put", "installed", "puse", "instale", "instalado", "instalada", "puesto", "monte", "mounted", "threw", "stuck", "dropped"})  # fmt: skip


def _by_size(draft: Draft) -> str | None:
    """In "put a 3 in, held", "40va installed": what was put in is told by its size."""
    if draft.told("rated_va") is not None:
        return "transformer"
    named = speaks_of_fuse(draft) or {"fuse", "fusible"} & set(draft.words)
    return "fuse" if draft.told("fuse_amps") is not None and named else None


def _new(draft: Draft, told: list[str]) -> str | None:
    """In "got it in", "puse otro": the transformer where that is bad, and else the part that is spoken of."""
    named = _named(told)
    if named is not None:
        return named
    if draft.context.transformer == "bad" or draft.told("rated_va") is not None:
        return "transformer"
    other = draft.context.finding is not None and draft.context.finding not in OF_FINDING
    part = _part(draft)
    of_line = any(name in fold(text) for text in draft.context.said_before for name in LINE_FUSES)
    if part == "supply" and not of_line:  # nothing of the supply comes as a new one but its fuses
        return "transformer"
    return part or ("transformer" if other or repaired(draft) else None)


TRIPPED = frozenset({"tripped", "trips", "boto", "bota", "popped", "salto", "brinco"})


def _on(draft: Draft, told: list[str]) -> str | None:
    """In "reset it", "lo subí": a breaker of the line, or the button of the transformer."""
    if set(told) & TRIPPED and not draft.figures:
        return None  # "turned it on and it tripped"
    part = _named(told) or _part(draft)
    return part if part in {"supply", "fuse"} else None


ASKS_FIRST = (["what"], ["which"], ["how"], ["que"], ["cual"], ["de"], ["can"], ["puedo"])


def _part(draft: Draft) -> str | None:
    """What the messages before name last, or what was found."""
    for text in reversed(draft.context.said_before):
        before = fold(text)
        if "?" in text or before.split(" ")[:1] in ASKS_FIRST:  # "what size fuse goes with a 40" names none that is in hand
            continue
        if any(name in before for name in LINE_FUSES):
            return "supply"
        if (named := _named(before.replace(",", " ").replace(".", " ").split())) is not None:
            of_line = named == "fuse" and any(name in fold(said) for said in draft.context.said_before for name in LINE_FUSES)
            return "supply" if of_line else named
    return OF_FINDING.get(draft.context.finding or "")


def _named(told: list[str]) -> str | None:
    """The part that words name."""
    if "button" in told or "boton" in told:
        return "fuse"
    if {"contactor", "relay", "rele"} & set(told):
        return "wiring"
    found = {name for name, spelt in PARTS.items() if spelt & set(told)}
    return next((name for name in ("fuse", "supply", "short", "wiring") if name in found), None)


def speaks_of_fuse(draft: Draft) -> bool:
    """Whether a fuse, or the breaker of a transformer, is what is spoken of."""
    if draft.context.finding in {"protection_open", "load_short"}:
        return True
    asked = draft.context.asked
    if asked is not None and asked[0].startswith("fuse_"):
        return True
    before = " ".join(fold(text) for text in draft.context.said_before[-2:])
    return any(word in before for word in ("fuse", "fusible", "button", "boton", "amp on", "breaker on the side"))
