"""What is asked for, by its turns of phrase, by a noun with a question mark, or by a whole message of a few words."""

from collections.abc import Sequence
from functools import cache

from grammar.binding.draft import Draft
from grammar.cues import Found, find, vocabulary
from grammar.phrase import Phrase
from grammar.vocabulary import pieces
from grammar.words.outranks import OUTRANKS
from grammar.words.record import SHUT
from grammar.words.whole import WHOLE


def asked(draft: Draft, words: Sequence[str]) -> None:
    """Fills the asks."""
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
    if words[found.at[0]] in {"which", "are", "is"} and found.meaning in {"which_lead", "tap"} and _only_tells(words, found):
        return True  # "at 3 ohms, which seems low"; "leads are white, black on the primary side"
    if found.meaning == "new_job" and words[found.at[0]] in LEADS_ELSEWHERE:
        return found.at[0] > 0 and words[found.at[0] - 1] not in SAYS_WHO_GOES  # "R to C going to the house"
    if found.meaning == "fuse" and words[found.at[-1]] == "right":
        return words[found.at[-1] + 1 : found.at[-1] + 2] in RIGHT_AWAY
    if found.meaning == "size" and words[found.at[0]] == "aguanta":
        return words[max(0, found.at[0] - 1) : found.at[0]] == ["se"]  # "no se aguanta la mano"
    if found.meaning == "wire_run" and words[found.at[0]] == "volts" and found.at[0] > 0:
        return words[found.at[0] - 1][:1].isdecimal()  # "26 volts at the board, 19 at the contactor"
    if found.meaning == "report" and words[found.at[0]] == "print" and len(found.at) == 1:
        before, behind = words[max(0, found.at[0] - 1) : found.at[0]], words[found.at[0] + 1 : found.at[0] + 2]
        return before in (["the"], ["wiring"], ["this"]) or behind in (["says"], ["calls"], ["shows"], ["has"])
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


def _only_tells(words: Sequence[str], found: Found) -> bool:
    """No question: a "which" that goes on with what was said, or an "are" behind its subject."""
    first = found.at[0]
    before = words[first - 1] if first else ""
    if words[first] == "which":
        return bool(before) and before not in KNOWS and words[first + 1 : first + 2] in GOES_ON
    return bool(before) and before not in KNOWS


KNOWS = frozenset({"and", "but", "so", "know", "sure", "tell", "idea", "figure", "or", "ok", "hey", "then", "now", "remember", "say", "see", "out", "if", "y"})  # fmt: skip
"""Words before a question in the middle of a sentence."""
GOES_ON = (["seems"], ["means"], ["looks"], ["makes"], ["is"], ["was"], ["i"], ["sounds"], ["tells"], ["should"], ["seemed"])
RIGHT_AWAY = (["away"], ["now"], ["after"], ["off"], ["when"], ["back"], ["there"], ["here"], ["behind"])
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
