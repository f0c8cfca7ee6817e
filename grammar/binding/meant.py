"""What is to be put in, asked or planned in the middle of a sizing: "can i use a 5 amp", "ok ill pull 18", "so 40 enough?", "its a 40"."""

from core.readings import Fact
from core.standards.wire_gauges import CONTROL_GAUGES
from grammar.binding.draft import Draft, Figure
from grammar.binding.in_hand import in_job, speaks_of_fuse
from grammar.binding.told import open_amounts
from grammar.binding.topics import SIZES_VA

PUTS = frozenset({"new", "in", "nuevo", "use", "put", "go", "run", "pull", "install", "uso", "pongo", "poner", "usar", "puse", "puedo", "jalo", "meto", "stick", "drop", "with", "con", "bump"})  # fmt: skip
"""What is done with what is meant."""
ENOUGH = frozenset(
    {"instead", "bigger", "mejor", "enough", "ok", "okay", "do", "work", "alcanza", "basta", "aguanta", "sirve", "good", "hold"}
)
IS_A = frozenset(
    {
        "its",
        "it's",
        "a",
        "is",
        "es",
        "de",
        "un",
        "el",
        "trafo",
        "transformer",
        "xfmr",
        "the",
        "one",
        "uno",
        "that",
        "this",
        "ok",
    }
)
MOST_FUSE_A = 15.0
LEAST_VA = 20.0
SIZED = frozenset({"load", "rated_va", "fuse_amps", "run_feet"})


def meant(draft: Draft) -> None:
    """Only in a job; what is read comes before."""
    if not in_job(draft) or draft.name is not None:
        return
    known = {fact.fact for fact in draft.context.facts}
    for figure in open_amounts(draft):
        if figure.site is None and len(figure.amounts) == 1 and figure.heir_of is None:
            _fuse(draft, figure, known) or _gauge(draft, figure, known) or _enough(draft, figure, known) or _rating(
                draft, figure
            )


def _fuse(draft: Draft, figure: Figure, known: set[str]) -> bool:
    """In "can i use a 5 amp", "le pongo uno de 5?", where a fuse or a size is spoken of."""
    told = set(draft.words)
    led = figure.at > 0 and draft.phrases[figure.at - 1].text in {"a", "de", "un", "another", "new"}
    bare = figure.unit is None and ("?" in draft.text or led) and speaks_of_fuse(draft) and figure.value == int(figure.value)
    if not (figure.unit == "A" or bare) or figure.value > MOST_FUSE_A or not told & PUTS or draft.unclear:
        return False
    if not (known & SIZED or speaks_of_fuse(draft)):
        return False
    draft.fact(figure, Fact(fact="fuse_amps", value=figure.value, unit="A"))
    if not draft.asks and ("?" in draft.text or told & ASKING):
        draft.asks.append("fuse")
    return True


ASKING = frozenset({"can", "could", "should", "puedo", "podria", "debo"})


def _gauge(draft: Draft, figure: Figure, known: set[str]) -> bool:
    """In "ok ill pull 18": another wire for the run that was told."""
    is_gauge = figure.unit is None and figure.value in CONTROL_GAUGES
    if not is_gauge or not known & {"wire_awg", "run_feet"} or not set(draft.words) & PUTS:
        return False
    draft.fact(figure, Fact(fact="wire_awg", value=figure.value, unit="AWG"))
    return True


def _enough(draft: Draft, figure: Figure, known: set[str]) -> bool:
    """In "so 40 enough?", behind a list of loads."""
    sized = figure.unit in {None, "VA"} and figure.value in SIZES_VA
    asks = draft.asks == ["size"] and not draft.readings
    if not sized or not (asks or (known & {"load", "rated_va"} and set(draft.words) & ENOUGH and not draft.asks)):
        return False
    figure.done = True
    draft.cue_spans.append((figure.start, figure.end))
    if not asks:
        draft.asks.append("size")
    return True


def _rating(draft: Draft, figure: Figure) -> bool:
    """In "its a 40", "es de 40": a transformer is called by its size, where nothing else was asked for."""
    told = [word for word in draft.words if word and not word[0].isdecimal()]
    behind = draft.phrases[figure.at + 1].text if figure.at + 1 < len(draft.phrases) else ""
    if figure.unit is None and figure.value in SIZES_VA and figure.value >= LEAST_VA and "?" not in draft.text:
        put = behind in {"in", "is in", "installed", "instalado", "puesto"} or (
            set(told) & {"puse", "instale", "put"} and draft.phrases[figure.at - 1].text in {"a", "de"}
        )
        if put and not speaks_of_fuse(draft):
            draft.fact(figure, Fact(fact="rated_va", value=figure.value, unit="VA"))
            return True
    named = any(p.text in {"a", "de", "un"} for p in draft.phrases[max(0, figure.at - 2) : figure.at])
    if figure.unit is not None or figure.value not in SIZES_VA or not told or not set(told) <= IS_A or not named:
        return False
    draft.fact(figure, Fact(fact="rated_va", value=figure.value, unit="VA"))
    return True
