"""The name that a job is given or called by: what stands behind the words that ask for it."""

from core.readings import ASKS
from grammar.binding.draft import Draft
from grammar.binding.turns import words_of
from grammar.cues import find, vocabulary
from grammar.phrase import Phrase

NAMING = ("new_job", "resume_job", "hand_over", "history", "language", "help", "list_jobs", "invite")
SLASHES = {
    "new": "new_job", "nuevo": "new_job", "job": "resume_job", "resume": "resume_job", "undo": "undo", "report": "report", "reporte": "report", "help": "help", "ayuda": "help", "start": "start",
    "lang": "language", "idioma": "language", "history": "history", "historial": "history", "jobs": "list_jobs", "trabajos": "list_jobs", "close": "close_job", "done": "close_job", "forget": "forget", "export": "export",
    "invite": "invite", "settings": "settings", "why": "why", "next": "next", "tap": "tap", "size": "size", "fuse": "fuse", "leads": "which_lead", "handover": "hand_over", "language": "language", "stop": "forget", "prove": "prove", "expect": "expect",
}  # fmt: skip
"""What the commands with a slash ask for."""
LANGUAGES = {"es": "es", "espanol": "es", "spanish": "es", "en": "en", "english": "en", "ingles": "en"}
LEADING = frozenset(
    {
        "the",
        "a",
        "an",
        "at",
        "for",
        "called",
        "named",
        "to",
        "el",
        "la",
        "al",
        "en",
        "para",
        "llamado",
        "is",
        "on",
        "job",
        "unit's",
        "trabajo",
        "de",
        "del",
        "us",
        "over",
    }
)


def job_name(draft: Draft) -> bool:
    """Fills the name; True where the message says nothing else."""
    if _slash(draft):
        return True
    asked = next((a for a in ("new_job", "resume_job") if a in draft.asks), None)
    if "language" in draft.asks:
        draft.name = next(
            (
                LANGUAGES[w]
                for w in reversed(draft.text.lower().replace("ñ", "n").replace("é", "e").replace("á", "a").split())
                if w.strip(".!?,") in LANGUAGES
            ),
            None,
        ) or next(
            (
                LANGUAGES[w.strip(".!?,")]
                for w in draft.text.lower().replace("ñ", "n").replace("é", "e").split()
                if w.strip(".!?,") in LANGUAGES
            ),
            None,
        )
        return len(draft.phrases) <= 6
    if asked is not None:
        return _named(draft, asked)
    if "help" in draft.asks and len(draft.phrases) <= 4:
        rest = [p for p in draft.phrases if p.text not in {"help", "ayuda", "with", "me", "con", "/", "on", "about"}]
        draft.name = _words(draft, rest) or None
        return True
    if "history" in draft.asks and any(p.kind == "idword" for p in draft.phrases):
        first = next(i for i, p in enumerate(draft.phrases) if p.kind == "idword")
        rest = draft.phrases[first : first + 2]
        draft.name = _words(draft, rest) or None
        return not draft.sites and not any(f.unit for f in draft.figures)
    return False


def _slash(draft: Draft) -> bool:
    """In "/new rtu 3": a command with what stands behind it."""
    if len(draft.phrases) < 2 or draft.phrases[0].text != "/" or draft.phrases[1].start != draft.phrases[0].end:
        return False
    cut = draft.text[draft.phrases[1].start :].split(maxsplit=1)
    ask = SLASHES.get(cut[0].lower().split("@")[0])
    if ask is None:
        return False
    assert ask in ASKS
    draft.asks, draft.facts, draft.figures = [ask], [], []
    rest = cut[1].strip() if len(cut) > 1 else ""
    if ask == "language":
        draft.name = LANGUAGES.get(rest.lower().replace("ñ", "n").replace("é", "e"), rest or None)
    else:
        draft.name = rest or None
    return True


def _named(draft: Draft, ask: str) -> bool:
    """Everything behind the words is the name, as far as the line goes."""
    words, owners = words_of(draft.parsed.words)
    found = [f for f in find(words, vocabulary("asks")) if f.meaning == ask]
    last = max(f.at[-1] for f in found)
    first = min(f.at[0] for f in found)
    behind = [draft.parsed.words[i] for i in dict.fromkeys(owners[last + 1 :])]
    while behind and (
        behind[0].kind in {"stop", "colon", "comma", "sign", "dash", "line", "is", "at"} or behind[0].text in LEADING
    ):
        behind = behind[1:]
    name: list[Phrase] = []
    for phrase in behind:
        if phrase.text == "\n" or (phrase.text and set(phrase.text) <= set(".!?;")):
            break
        name.append(phrase)
    measured = any(f.kind == "amount" and f.unit in {"V", "A", "ohm", "VA"} for f in draft.figures) or any(
        f.kind in {"open", "nothing"} for f in draft.figures
    )
    if measured:
        return False
    draft.name = _words(draft, name) or None
    only_name = first <= 3
    if only_name:
        draft.figures = []
        draft.facts = [row for row in draft.facts if row[1].fact != "symptom"]
    return only_name


def _words(draft: Draft, phrases: list[Phrase]) -> str:
    """The text of phrases as it was written."""
    return draft.fragment(phrases[0].start, phrases[-1].end).strip(" .,!?:;-") if phrases else ""
