"""Symptoms and asks, by the turns of phrase that tell them."""

from collections.abc import Sequence
from functools import cache
from itertools import pairwise

from core.readings import Fact
from grammar.binding.draft import Draft
from grammar.cues import Found, find, index, vocabulary
from grammar.dangers import dangers_in, harmless
from grammar.phrase import Phrase
from grammar.words.asks import OUTRANKS, WHOLE
from grammar.words.colours import COLOURS
from grammar.words.record import RUNG, SHUT

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


def words_of(phrases: Sequence[Phrase]) -> tuple[list[str], list[int]]:
    """The folded words of the message with the phrase each is in; an empty word ends a sentence."""
    words: list[str] = []
    owners: list[int] = []
    for i, phrase in enumerate(phrases):
        if phrase.text == "\n" or (phrase.text and set(phrase.text) <= set(".!?;:")):
            words.append("")
            owners.append(i)
            continue
        for word in (phrase.text or phrase.meaning).split(" "):
            if word and word not in {",", "-", "–", "—", "/", "*", '"', "(", ")", "'", "’", "‘", "“", "”"}:
                words.append(word)
                owners.append(i)
    return words, owners


def turns(draft: Draft) -> None:
    """Fills symptoms, dangers and asks."""
    words, owners = words_of(draft.parsed.words)
    _symptoms(draft, words, owners)
    _drop_harmless(draft)
    draft.warned = dangers_in(draft.text, draft.context.said_before)
    _symptoms_of_dangers(draft)
    _asks(draft, words)


def _drop_harmless(draft: Draft) -> None:
    """Takes out smoke and burns that are of the lunch, not of the unit."""
    gone = harmless(draft.text, [fact.value for _, fact in draft.facts if fact.fact == "symptom"])
    draft.facts = [row for row in draft.facts if row[1].fact != "symptom" or row[1].value not in gone]


def _symptoms_of_dangers(draft: Draft) -> None:
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
        return words[found.at[0]] == "not" and meaning == "hot"
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


def _symptoms(draft: Draft, words: Sequence[str], owners: Sequence[int]) -> None:
    found = [f for f in find(words, vocabulary("symptoms")) if not _denied(draft, words, owners, f)]
    names = {f.meaning for f in found}
    for f in found:
        if f.meaning == "hot" and _means_live(words, f):
            continue
        if f.meaning not in OF_DANGER and any(_hides(o, f) for o in found):
            continue  # "got a buzz off the door" is no hum
        if f.meaning == "blown_fuse" and "blows_fuse" in names:
            continue
        if f.meaning == "shock" and len(f.at) == 1 and set(words[f.at[0] + 1 : f.at[0] + 4]) & RUNG:
            continue  # "dale un toque al timbre"
        if _of_a_device(draft, owners, f) or _long_ago(words, f):
            continue
        if (
            f.meaning == "no_control_power"
            and not _paused(draft, owners, f.at[-1])
            and words[f.at[-1] + 1 : f.at[-1] + 2]
            in (
                ["fuse"],
                ["breaker"],
                ["transformer"],
                ["xfmr"],
            )
        ):
            continue  # "no low voltage fuse here"
        if f.meaning == "burnt" and words[f.at[-1] + 1 : f.at[-1] + 2] in (["my"], ["his"], ["her"], ["me"]):
            continue  # a hand, no transformer
        if f.meaning == "burnt" and draft.parsed.words[owners[f.at[0]]].kind == "value":
            continue
        if f.meaning == "burnt" and any(set(f.at) & set(o.at) for o in found if o.meaning in {"blown_fuse", "blows_fuse"}):
            continue
        phrases = draft.parsed.words[owners[f.at[0]]], draft.parsed.words[owners[f.at[-1]]]
        draft.cue_spans.append((phrases[0].start, phrases[1].end))
        if f.meaning == "no_control_power":
            _consume(draft, phrases[0].start, phrases[1].end)
        fact = Fact(fact="symptom", value=f.meaning)
        if not any(other == fact for _, other in draft.facts):
            draft.facts.append((owners[f.at[0]], fact))


def _consume(draft: Draft, start: int, end: int) -> None:
    for figure in draft.figures:
        if start <= figure.start < end and ((figure.kind == "amount" and figure.value == 24.0) or figure.kind == "nothing"):
            figure.done = True


COLOUR_WORDS = frozenset(word for row in COLOURS for word in (*row.en, *row.es))


def _means_live(words: Sequence[str], found: Found) -> bool:
    """In "both legs are hot": live, and no heat."""
    last = found.at[-1]
    if words[last] != "hot":
        return False
    before = words[max(0, found.at[0] - 4) : found.at[0] + 1]
    if set(words[max(0, last - 3) : last]) & COLOUR_WORDS:
        return True  # "orange is hot, white is neutral"
    behind = words[last + 1 : last + 4]
    if any(w in {"leg", "legs", "wire", "lead", "line", "side", "l1", "wires"} for w in before):
        return True
    return (
        bool(behind[:2])
        and behind[0] in {"to", "on"}
        and len(behind) > 1
        and behind[1] in {"the", "contactor", "both"}
        and "touch" not in behind
    )


def _asks(draft: Draft, words: Sequence[str]) -> None:
    bare = [w for w in words if w]
    short = tuple(bare)
    if len(bare) <= LONGEST_WHOLE and (name := _whole().get(short)) is not None:
        draft.asks.append(name)
    draft.asks += _named_with_a_mark(draft.parsed.words, figures=any(f.kind == "amount" for f in draft.figures))
    found = find(words, vocabulary("asks"))
    draft.asks += [f.meaning for f in found if not _in_the_middle(words, f)]
    if "close_job" in draft.asks and draft.text.rstrip().endswith("?") and len(bare) <= FEW_WORDS:
        draft.asks = ["next" if ask == "close_job" else ask for ask in draft.asks]  # "all done?" closes nothing
    draft.asks = _settled(list(dict.fromkeys(draft.asks)), draft)
    if "why" in draft.asks:  # "why do you say the primary is open?" tells no reading
        for figure in draft.figures:
            figure.done = figure.done or figure.kind != "amount"


def _in_the_middle(words: Sequence[str], found: Found) -> bool:
    """In "tied the switch closed and left": one word like "done" closes a job only where a message begins or ends with it."""
    if (
        found.meaning == "new_job"
        and words[found.at[-1]] in {"one", "uno"}
        and words[found.at[-1] + 1 : found.at[-1] + 2] in BLEW
    ):
        return True  # "new one blew too"
    if found.meaning == "new_job" and words[found.at[0]] in LEADS_ELSEWHERE:
        return found.at[0] > 0 and words[found.at[0] - 1] not in SAYS_WHO_GOES  # "R to C going to the house"
    if found.meaning == "cannot" and words[found.at[0] : found.at[-1] + 1] == ["i", "cant"]:
        return words[found.at[-1] + 1 : found.at[-1] + 2] in NO_TEST
    if (
        found.meaning == "history"
        and words[found.at[0]] in {"what", "lo"}
        and words[max(0, found.at[0] - 1)] in {"is", "es", "was"}
    ):
        return "?" not in words  # "an 8 footer is what I've got"
    if found.meaning == "next" and len(found.at) == 1:
        return words[found.at[0] + 1 : found.at[0] + 2] in (
            ["door"],
            ["to"],
            ["week"],
            ["day"],
            ["year"],
            ["month"],
            ["monday"],
            ["address"],
            ["appointment"],
            ["stop"],
            ["ticket"],
        )
    if found.meaning != "close_job" or len(found.at) > 1:
        return False
    told = [i for i, word in enumerate(words) if word]
    shuts = found.at[0] > 0 and words[found.at[0]] == "closed" and words[found.at[0] - 1] in SHUT
    return (
        shuts
        or found.at[0] not in {told[0], told[-1]}
        or bool({"am", "is", "are", "when", "almost", "not", "if", "switch", "send"} & set(words))
    )


LEADS_ELSEWHERE = frozenset({"going", "off", "on"})
SAYS_WHO_GOES = frozenset(
    {"", "im", "am", "were", "are", "now", "and", "ok", "okay", "then", "done", "so", "good", "moving", "finished"}
)
"""Words before "going to the next unit", where somebody goes and no wire."""
NO_TEST = tuple([word] for word in ("hold", "keep", "touch", "believe", "wait", "stand", "hear", "remember", "say", "tell", "figure", "find", "even", "make", "imagine", "think", "explain", "remember", "understand"))  # fmt: skip
"""Behind "I can't" these refuse no test."""
BLEW = (["blew"], ["popped"], ["pops"], ["blows"], ["too"], ["burned"], ["burnt"], ["went"], ["also"], ["trono"], ["quemado"])
LONGEST_WHOLE = 6
"""Words of the longest text that is looked up as a whole."""
VERDICTS = frozenset({"good", "bad", "done", "malo", "bueno"})
"""Nouns and more that ask for the verdict, which a message with readings is answered with anyway."""
NAMED = {
    "fuse": "fuse", "breaker": "fuse", "fusible": "fuse", "tap": "tap", "toma": "tap", "size": "size", "drop": "wire_run", "common": "which_lead", "comun": "which_lead", "caida": "wire_run", "next": "next",
    "tamano": "size", "fusing": "fuse", "protection": "fuse", "proteccion": "fuse", "parallel": "parallel", "paralelo": "parallel", "reason": "why", "good": "next", "bad": "next", "done": "next", "malo": "next", "bueno": "next",
}  # fmt: skip
"""What a noun with a question mark, and nothing else in its clause, asks for: "got a 75va, fuse?"."""
FEW_WORDS = 3


def _named_with_a_mark(words: Sequence[Phrase], *, figures: bool) -> list[str]:
    """Asks of clauses of a word or three that end in a question mark."""
    asks = []
    for at, phrase in enumerate(words):
        if not phrase.text.startswith("?"):
            continue
        clause: list[str] = []
        for before in reversed(words[max(0, at - FEW_WORDS - 1) : at]):
            if before.kind in {"comma", "stop", "line", "colon"}:
                break
            clause.append(before.text)
        if 0 < len(clause) <= FEW_WORDS and (
            at == len(clause) or words[at - len(clause) - 1].kind in {"comma", "stop", "line", "colon"}
        ):
            named = [w for text in clause for w in text.split() if w in NAMED]
            asks += [NAMED[w] for w in named if w not in VERDICTS or not figures]
    return asks


@cache
def _whole() -> dict[tuple[str, ...], str]:
    """Whole messages by their words."""
    from grammar.vocabulary import pieces  # noqa: PLC0415

    found: dict[tuple[str, ...], str] = {}
    for cue in WHOLE:
        for text in (*cue.en, *cue.es):
            key = tuple(p for p in (pieces(text) if not text.startswith("/") else (text,)) if p not in {"-", "?"})
            found.setdefault(key, cue.meaning)
    return found


ONE_BACK = frozenset({"last", "previous", "prior", "latest", "ultimo", "ultima", "anterior"})


def _settled(asks: list[str], draft: Draft) -> list[str]:
    """The asks that are meant, of all whose words are there."""
    if {"undo", "forget"} <= set(asks) and any(p.text in ONE_BACK for p in draft.parsed.words):
        asks.remove("forget")  # "wipe out my last entry"
    weaker = {w for ask in asks for w in OUTRANKS.get(ask, ())}
    if len(asks) > 1 and "help" in asks:
        asks = [a for a in asks if a != "help"]
    kept = [
        a
        for a in asks
        if a not in weaker or any(a in OUTRANKS and other in OUTRANKS[a] for other in asks if a in OUTRANKS.get(other, ()))
    ]
    if {
        "cannot",
        "undo",
        "all_well",
        "close_job",
        "history",
        "help",
        "resume_job",
        "language",
        "export",
        "invite",
        "settings",
    } & set(kept) and draft.figures:
        soft = {"resume_job", "all_well", "help", "language"}
        if any(f.kind == "amount" and f.unit in {"V", "A", "ohm"} for f in draft.figures):
            kept = [a for a in kept if a not in soft]
    return kept


def found_cues(words: Sequence[str], cues: object) -> list[Found]:
    """For tests: all cues of one table in a row of words."""
    return find(words, index(cues))  # type: ignore[arg-type]
