"""Symptoms, by the turns of phrase that tell them; a denied one is none."""

from collections.abc import Sequence
from itertools import pairwise

from core.readings import Fact
from grammar.binding.draft import Draft
from grammar.cues import Found, find, vocabulary
from grammar.dangers import harmless
from grammar.words.colours import COLOURS
from grammar.words.record import RUNG

INNER_DENIALS = frozenset({"isnt", "not", "aint", "wasnt", "never", "no", "nunca", "doesnt", "didnt"})
NAMED_DENIALS = frozenset({"no", "sin", "nothing", "nada", "none", "nobody", "nadie"})
"""Denials of the one thing behind them: "no voltage and hot" denies no heat."""
DENIALS = frozenset(
    {
        *NAMED_DENIALS,
        "no",
        "not",
        "isnt",
        "never",
        "without",
        "sin",
        "doesnt",
        "didnt",
        "dont",
        "nor",
        "ni",
        "arent",
        "wasnt",
        "aint",
        "nunca",
        "hasnt",
        "havent",
        "tampoco",
        "wont",
        "any",
        "stopped",
        "quit",
        "non",
    }
)
"""A symptom behind one of these is none."""
BREAKS = frozenset({"but", "pero", "and", "y", "now", "ahora"})
SAYS_NO_ITSELF = frozenset({"no_control_power", "blown_fuse"})


def _drop_harmless(draft: Draft) -> None:
    """Takes out smoke and burns that are of the lunch, not of the unit."""
    gone = harmless(draft.text, [fact.value for _, fact in draft.facts if fact.fact == "symptom"])
    draft.facts = [row for row in draft.facts if row[1].fact != "symptom" or row[1].value not in gone]


def symptoms_of_dangers(draft: Draft) -> None:
    """A shock that was heard as a danger is a symptom as well, and its buzzing no hum."""
    if "shock" not in draft.warned.names:
        return
    shock = Fact(fact="symptom", value="shock")
    told = [fact.value for _, fact in draft.facts if fact.fact == "symptom"]
    if "shock" not in told:
        draft.facts.append((0, shock))
        draft.facts = [row for row in draft.facts if row[1].value != "hum"]


def _denied(draft: Draft, words: Sequence[str], owners: Sequence[int], found: Found) -> bool:
    meaning = found.meaning
    inside = [words[i] for i in range(found.at[0], found.at[-1]) if i not in found.at]
    if meaning != "no_control_power" and any(word in INNER_DENIALS for word in inside):
        return True  # "the fuse isn't blown"
    if meaning in SAYS_NO_ITSELF or words[found.at[0]] in DENIALS:
        warm = words[found.at[-1]] in {"hot", "caliente", "warm"}
        return words[found.at[0]] in {"not", "no", "tampoco"} and meaning == "hot" and warm
    for back in range(1, 4):
        at = found.at[0] - back
        if at < 0 or not words[at] or words[at] in BREAKS or _paused(draft, owners, at):
            return False
        if words[at] in DENIALS:
            return words[at] not in NAMED_DENIALS or all(w in CARRIES for w in words[at + 1 : found.at[0]])
    return False


CARRIES = frozenset(
    {
        "is",
        "was",
        "looks",
        "looked",
        "seems",
        "seemed",
        "smells",
        "feels",
        "that",
        "even",
        "here",
        "there",
        "or",
        "nor",
        "se",
        "parece",
        "ve",
        "anda",
        "smell",
        "sign",
        "signs",
        "of",
        "any",
        "more",
        "longer",
        "huele",
        "a",
        "hay",
        "olor",
        "esta",
        "es",
        "me",
        "ni",
        "real",
        "burnt",
        "burning",
        "loud",
        "hum",
        "not",
        "muy",
        "sale",
        "hubo",
        "echa",
        "been",
        "blown",
    }
)
"""Words over which "no" reaches a symptom."""


def _paused(draft: Draft, owners: Sequence[int], at: int) -> bool:
    """A comma stands behind the word."""
    behind = draft.parsed.words[owners[at] + 1 : owners[at] + 2]
    return bool(behind) and behind[0].text == ","


def _of_a_device(draft: Draft, owners: Sequence[int], found: Found) -> bool:
    """A smoke detector is no smoke."""
    return found.meaning == "smoke" and draft.parsed.words[owners[found.at[0]]].kind == "device"


def _long_ago(words: Sequence[str], found: Found) -> bool:
    """In "had a burnt board last year": of another day."""
    behind = words[found.at[-1] + 1 : found.at[-1] + 6]
    behind = behind[: behind.index("")] if "" in behind else behind
    pairs = pairwise(behind)
    return "ago" in behind or any(
        one in {"last", "ano", "mes"} and two in {"year", "month", "week", "summer", "winter", "pasado"} for one, two in pairs
    )


def _hides(other: Found, found: Found) -> bool:
    """A turn of phrase of another meaning holds this one: in "got a buzz off the door" is no hum, nor in "el contactor vibra mucho"."""
    if other.meaning == found.meaning:
        return False
    shared = set(found.at) & set(other.at)
    return (len(other.at) > len(found.at) and shared == set(found.at)) or (
        found.meaning == "hum" and bool(shared) and other.meaning == "chatter"
    )


OF_DANGER = frozenset({"smoke", "shock"})
"""Symptoms that a longer turn of phrase never hides."""


def symptoms(draft: Draft, words: Sequence[str], owners: Sequence[int]) -> None:
    """
    Fills the symptoms.

    Args:
        draft: The message.
        words: Its folded words.
        owners: The phrase that each of them is in.
    """
    found = [f for f in find(words, vocabulary("symptoms")) if not _denied(draft, words, owners, f)]
    for f in found:
        if _is_none(draft, words, owners, f, found):
            continue
        phrases = draft.parsed.words[owners[f.at[0]]], draft.parsed.words[owners[f.at[-1]]]
        draft.cue_spans.append((phrases[0].start, phrases[1].end))
        if f.meaning == "no_control_power":
            _consume(draft, phrases[0].start, phrases[1].end)
        fact = Fact(fact="symptom", value=f.meaning)
        if not any(other == fact for _, other in draft.facts):
            draft.facts.append((owners[f.at[0]], fact))
    _drop_harmless(draft)


def _is_none(draft: Draft, words: Sequence[str], owners: Sequence[int], found: Found, others: Sequence[Found]) -> bool:
    """The words are there and tell something else."""
    if found.meaning not in OF_DANGER and any(_hides(other, found) for other in others):
        return True  # "got a buzz off the door" is no hum
    if _of_a_device(draft, owners, found) or _long_ago(words, found):
        return True
    behind = words[found.at[-1] + 1 : found.at[-1] + 2]
    if found.meaning == "hot" and set(words[max(0, found.at[0] - 3) : found.at[0] + 1]) & ROOMS:
        return True
    if found.meaning == "hot":
        return _means_live(words, found) or _is_weather(words, found)
    if found.meaning == "blown_fuse":
        return any(other.meaning == "blows_fuse" for other in others)
    if found.meaning == "shock":  # "dale un toque al timbre"
        return len(found.at) == 1 and bool(set(words[found.at[0] + 1 : found.at[0] + 4]) & RUNG)
    if found.meaning == "no_control_power":  # "no low voltage fuse here"
        return not _paused(draft, owners, found.at[-1]) and behind in (["fuse"], ["breaker"], ["transformer"], ["xfmr"])
    if found.meaning == "burnt":  # "burned my hand", "burnt open"
        of_fuse = any(set(found.at) & set(o.at) for o in others if o.meaning in {"blown_fuse", "blows_fuse"})
        opened = draft.parsed.words[owners[found.at[0]]].kind == "value"
        return (
            of_fuse
            or opened
            or bool(set(words[max(0, found.at[0] - 2) : found.at[0]]) & LABELS)
            or behind in (["my"], ["his"], ["her"], ["me"])
        )
    return False


def _consume(draft: Draft, start: int, end: int) -> None:
    for figure in draft.figures:
        if start <= figure.start < end and ((figure.kind == "amount" and figure.value == 24.0) or figure.kind == "nothing"):
            figure.done = True


COLOUR_WORDS = frozenset(word for row in COLOURS for word in (*row.en, *row.es))


def _is_weather(words: Sequence[str], found: Found) -> bool:
    """In "hot as hell in here", "its so hot out today": of the day, where no part is named before."""
    begin = next((i + 1 for i in range(found.at[0] - 1, -1, -1) if not words[i]), 0)
    behind = words[found.at[-1] + 1 : found.at[-1] + 6]
    behind = behind[: behind.index("")] if "" in behind else behind
    return bool(set(behind) & OF_THE_DAY) and not set(words[begin : found.at[0] + 1]) & PARTS


LINE_DIGITS = 3
"""Digits of volts that make a part hot by being live."""
LABELS = frozenset({"label", "labels", "tag", "sticker", "plate", "nameplate", "etiqueta"})
ROOMS = frozenset({"room", "rm", "house", "office", "store", "kitchen", "bedroom", "upstairs", "downstairs", "building", "cuarto", "casa", "oficina", "tienda", "cocina", "suite", "floor"})  # fmt: skip
OF_THE_DAY = frozenset(
    {"here", "out", "outside", "today", "attic", "roof", "there", "closet", "aqui", "afuera", "atico", "techo", "hoy", "azotea"}
)
PARTS = frozenset(
    {"transformer", "xfmr", "trafo", "transformador", "tranny", "contactor", "relay", "coil", "board", "wire", "wires", "case", "core", "fuse", "bobina", "tarjeta", "unit", "primary", "secondary", "thing", "sucker", "touch"}
)  # fmt: skip
"""What can be hot by itself."""


def _means_live(words: Sequence[str], found: Found) -> bool:
    """In "both legs are hot": live, and no heat."""
    last = found.at[-1]
    if words[last] != "hot":
        return False
    before = words[max(0, found.at[0] - 4) : found.at[0] + 1]
    if set(words[max(0, last - 3) : last]) & COLOUR_WORDS:
        return True  # "orange is hot, white is neutral"
    behind = words[last + 1 : last + 4]
    if behind and behind[0].isdecimal() and len(behind[0]) == LINE_DIGITS:
        return True  # "primary is hot 120"
    if any(w in {"leg", "legs", "wire", "lead", "line", "side", "l1", "wires"} for w in before):
        return True
    return (
        bool(behind[:2])
        and behind[0] in {"to", "on"}
        and len(behind) > 1
        and behind[1] in {"the", "contactor", "both"}
        and "touch" not in behind
    )
