"""The name that a job is given or called by: what stands behind the words that ask for it."""

from collections.abc import Sequence

from core.readings import ASKS
from grammar.binding.draft import Draft
from grammar.binding.plausible import is_usual_supply
from grammar.binding.record_words import asks_whether_done, says_it_is_in
from grammar.cues import find, vocabulary
from grammar.phrase import Phrase
from grammar.words.record import AFTER_CLOSING, BEFORE_CALLING, CLOSES, DELETES, GENERIC, NO_JOB, NO_NAME, NO_NAMES

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
    if draft.name is not None:
        return False  # the rest of a message, whose name was read before
    if _slash(draft):
        return True
    _asked_in_earnest(draft)
    if _deletes(draft):
        draft.asks = [*(ask for ask in draft.asks if ask != "undo"), "forget"]
    if "forget" in draft.asks and not any(f.unit for f in draft.figures):  # "clear the readings" reads nothing as clear
        spoken_of(draft)
        draft.name_at = None
        return True
    if "language" in draft.asks:
        draft.name = _language_in(draft.text)
        return len(draft.phrases) <= 6
    asked = next((a for a in ("new_job", "resume_job") if a in draft.asks), None)
    if asked is not None:
        return _named(draft, asked)
    if "help" in draft.asks and len(draft.phrases) <= 4:
        draft.name = _helped_with(draft)
        return True
    return "history" in draft.asks and _history_of(draft)


def _asked_in_earnest(draft: Draft) -> None:
    """Takes out the asks for jobs that are mere talk."""
    timed = any(s.kind == "notours" and s.meaning == "time" for s in draft.parsed.words)
    if "resume_job" in draft.asks and (timed or _is_talk(draft)):
        draft.asks.remove("resume_job")  # "regreso a las 4", "going back to the unit, sec 24"
    part = (
        "prove" in draft.asks or says_it_is_in(draft) or _is_a_new_part(draft) or _needs_one(draft)
        if "new_job" in draft.asks
        else False
    )
    if part:
        draft.asks.remove("new_job")  # "new one is in, final check"
    if "close_job" in draft.asks and asks_whether_done(draft):  # "all done?"
        draft.asks = list(dict.fromkeys("next" if ask == "close_job" else ask for ask in draft.asks))


def _is_talk(draft: Draft) -> bool:
    """In "the guys back to work", "switch to ohms, sec 0.6", "going back to the unit": no job is called."""
    words, owners = draft.words, draft.owners
    found = [f for f in find(words, vocabulary("asks")) if f.meaning == "resume_job"]
    if not found:
        return False
    first, last = min(f.at[0] for f in found), max(f.at[-1] for f in found)
    if set(words[:first]) - BEFORE_CALLING:
        return True
    behind = [i for i in range(last + 1, len(words)) if words[i] not in LEADING]
    if not behind:
        return False
    phrase = draft.parsed.words[owners[behind[0]]]
    beside = owners[behind[0]] + 1 < len(draft.parsed.words) and draft.parsed.words[owners[behind[0]] + 1].kind != "comma"
    following = words[behind[0] + 1] if beside and behind[0] + 1 < len(words) else ""
    if words[behind[0]] in {"unit", "unidad", "equipo"} and words[last] not in {"unit", "unidad"}:
        return not (following.isdecimal() or len(following) == 1)
    return phrase.kind in NO_NAMES or words[behind[0]] in NO_NAME


def _language_in(text: str) -> str | None:
    """The language that is named last."""
    words = text.lower().translate(str.maketrans("ñéá", "nea")).split()
    return next((LANGUAGES[w.strip(".!?,")] for w in reversed(words) if w.strip(".!?,") in LANGUAGES), None)


HELPING = frozenset({"help", "ayuda", "ayudame", "with", "me", "con", "/", "on", "about", "the", "el", "la", "los"})


def _helped_with(draft: Draft) -> str | None:
    """In "help with fuses"."""
    called = any(p.text in {"help", "ayuda", "ayudame"} for p in draft.phrases)
    return _words(draft, [p for p in draft.phrases if called and p.text not in HELPING]) or None


def _history_of(draft: Draft) -> bool:
    """In "anything on rtu 3 before"; "the unit" alone names none."""
    first = next((i for i, p in enumerate(draft.phrases) if p.kind == "idword"), None)
    if first is None:
        return False
    rest = draft.phrases[first : first + 2]
    if rest[0].text in GENERIC and (
        len(rest) == 1 or rest[1].kind not in {"amounts", "unknown", "letter", "shape", "mark", "numeral"}
    ):
        return False
    draft.name = _words(draft, rest) or None
    return not draft.sites and not any(f.unit for f in draft.figures)


def _is_a_new_part(draft: Draft) -> bool:
    """In "new one blew too": the words can open a job, and here something else is told of them."""
    words = draft.words
    found = [f for f in find(words, vocabulary("asks")) if f.meaning == "new_job"]
    behind = [w for f in found for w in words[f.at[-1] + 1 : f.at[-1] + 2]]
    weak = all([words[i] for i in f.at] == ["new", "one"] for f in found)
    return weak and bool(behind) and bool(behind[0]) and not any(p.kind == "idword" for p in draft.parsed.words)


def _needs_one(draft: Draft) -> bool:
    """In "need a new one?", "do i need a new unit": a part, where a job is in hand."""
    told = set(draft.words)
    return (
        bool(draft.context.said_before)
        and "?" in draft.text
        and bool(told & {"need", "needs", "necesita", "necesito", "ocupa", "want"})
    )


def _deletes(draft: Draft) -> bool:
    """In "forget rtu 3"."""
    words = draft.parsed.words
    named = len(words) > 1 and words[0].text in DELETES and words[1].kind == "idword"
    return named and "forget" not in draft.asks


def _slash(draft: Draft) -> bool:
    """In "/new rtu 3": a command with what stands behind it."""
    if len(draft.phrases) < 2 or draft.phrases[0].text != "/" or draft.phrases[1].start != draft.phrases[0].end:
        return False
    cut = draft.text[draft.phrases[1].start :].split(maxsplit=1)
    if not cut:  # a slash at the end of a line
        return False
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
    """Everything behind the words is the name, as far as the line goes or until something is told."""
    words, owners = draft.words, draft.owners
    found = [f for f in find(words, vocabulary("asks")) if f.meaning == ask]
    last = max(f.at[-1] for f in found)
    first = min(f.at[0] for f in found)
    behind = [draft.parsed.words[i] for i in dict.fromkeys(owners[last + 1 :])]
    while behind and (
        behind[0].kind in {"stop", "colon", "comma", "sign", "dash", "line", "is", "at"} or behind[0].text in LEADING
    ):
        behind = behind[1:]
    told = _told_from(draft, behind[0].start) if behind else None
    name: list[Phrase] = []
    for phrase in behind:
        if (
            phrase.text == "\n"
            or (phrase.text and set(phrase.text) <= set(".!?;"))
            or (told is not None and phrase.start >= told)
        ):
            break
        name.append(phrase)
    draft.name = _words(draft, name) or None
    if told is not None:
        if name:
            draft.name_at = (name[0].start, name[-1].end)
        return False
    if any(f.kind in {"open", "nothing"} for f in draft.figures):
        return False
    only_name = first <= 3
    if only_name:
        draft.figures = []
        draft.facts = [row for row in draft.facts if row[1].fact != "symptom"]
    return only_name


def _told_from(draft: Draft, begin: int) -> int | None:
    """Where the name ends because something is told behind it: "rtu 3 library pri 118 sec 0", "the annex, 208 building"."""
    told = [i for i, p in enumerate(draft.phrases) if p.start >= begin and _tells(draft, i)]
    if not told:
        return None
    first = told[0]
    value = draft.figure_at(first)
    # A number and its place alone can be a name, "line 2 office"; with a unit, a name before it or another of its kind they are not.
    sure = value is not None or len(told) > 1 or draft.phrases[first].start > begin
    return draft.phrases[first].start if sure else None


def _tells(draft: Draft, at: int) -> bool:
    """Whether a reading or a fact begins with a phrase."""
    phrase, figure, following = draft.phrases[at], draft.figure_at(at), draft.kind(at + 1)
    if figure is not None and figure.kind == "amount":
        nominal = is_usual_supply(figure.value) and following in {"supply", "tapword"}
        return figure.unit in {"V", "A", "ohm", "VA"} or nominal
    if phrase.kind == "ends":
        beside = at + 2 if following in {"is", "at", "colon", "dash", "sign"} else at + 1
        behind = draft.figure_at(beside)
        return behind is not None and behind.kind in {"amount", "open", "nothing", "short"}
    return False


def spoken_of(draft: Draft) -> bool:
    """Fills the name of the job that is closed, reported or forgotten: "close rtu 3, replaced it", "report on rtu 3 library"."""
    words = draft.words
    closes = bool(words) and words[0] in CLOSES and "close_job" not in draft.asks
    if not (closes or {"close_job", "report", "forget"} & set(draft.asks)) or draft.name is not None:
        return False
    name = _name_in(draft, draft.parsed.words)
    if not name or (closes and name[0].text in NO_JOB):
        return False
    if closes:
        draft.asks.append("close_job")
    draft.name, draft.name_at = _words(draft, name), (name[0].start, name[-1].end)
    return True


def _name_in(draft: Draft, words: Sequence[Phrase]) -> list[Phrase]:
    """From a word like "rtu", or from one that means nothing to us, as far as the clause goes."""
    begins = (i for i, p in enumerate(words) if p.kind == "idword" and p.text not in GENERIC)
    first = next(begins, None)
    if first is None and len(words) <= SHORT and not any(f.unit for f in draft.figures):
        first = next((i for i, p in enumerate(words) if p.kind == "unknown" and p.text not in NO_JOB), None)
        first = first if first is not None else next((i - 1 for i, p in enumerate(words) if i > 1 and _numbers(words, i)), None)
    name: list[Phrase] = []
    for phrase in words[first:] if first is not None else ():
        ends = phrase.kind in {"comma", "stop", "colon", "line", "is", "with", "at"} or phrase.text in {
            *AFTER_CLOSING,
            *FINISHED,
        }
        if ends or not phrase.text.isalnum():
            break
        name.append(phrase)
    while name and name[-1].kind == "filler" and name[-1].text in NO_JOB:
        name.pop()
    return name


def _numbers(words: Sequence[Phrase], at: int) -> bool:
    """In "azotea 3": a plain number behind a plain word."""
    return words[at].kind == "numeral" and words[at - 1].kind == "filler" and words[at - 1].text not in NO_JOB


SHORT = 7
"""Words of a message in which a word that means nothing to us can be a job's name."""
FINISHED = frozenset({"done", "finished", "complete", "closed", "listo", "terminado", "history", "report", "before"})


def _words(draft: Draft, phrases: list[Phrase]) -> str:
    """The text of phrases as it was written."""
    return draft.fragment(phrases[0].start, phrases[-1].end).strip(" .,!?:;-") if phrases else ""
