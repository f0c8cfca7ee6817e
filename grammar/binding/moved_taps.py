"""The tap that is in use now, told in the middle of a job: "moved it to 240", "lo pasé a la roja", "orange"."""

from core.readings import Fact
from grammar.binding.draft import Draft
from grammar.binding.told import NOMINAL_V, open_amounts, volts

MOVED = frozenset({"moved", "put", "landed", "switched", "swapped", "changed", "retapped", "hooked", "tied", "movi", "puse", "pase", "cambie", "conecte", "pasamos", "lo", "la"})  # fmt: skip
"""Words with which a lead was moved; Spanish says only "ya lo pasé a"."""
RETAPPED = frozenset({"moved", "landed", "retapped", "pase", "movi"})
"""Words that move a lead of the primary even where no tap was spoken of."""
STANDS = frozenset({"now", "its", "it's", "is", "on", "currently", "landed", "esta", "ahora", "ya", "en"})
"""Words with which it is told where it stands."""
LEADS_TO = frozenset({"on", "to", "at", "en", "a", "al", "de", "del", "el", "la", "the", "it", "lead", "tap", "over", "on the", "at the", "en el", "en la", "over to", "to the", "a la"})  # fmt: skip
PLAN = frozenset({"should", "would", "could", "can", "if", "will", "need", "gonna", "going", "ill", "debo", "puedo", "si", "voy", "which", "what", "cual", "que"})  # fmt: skip
FEW = 4


def moved_taps(draft: Draft) -> None:
    """Only where a tap is spoken of; a question or a plan moves nothing."""
    told = set(draft.words)
    colour = any(p.kind == "ends" and len(p.ends) == 1 and p.ends[0].kind == "colour" for p in draft.phrases)
    if (
        not (_may_be_moved(draft) or (colour and told & RETAPPED))
        or "?" in draft.text
        or told & PLAN
        or {"tap_volts", "tap_lead"} & {f.fact for _, f in draft.facts}
    ):
        _moved(draft, told)
        return
    for figure in open_amounts(draft):
        if volts(figure) and figure.value in NOMINAL_V and figure.site is None and _is_led(draft, figure.at, told):
            draft.fact(figure, Fact(fact="tap_volts", value=figure.value, unit="V"))
            _moved(draft, told)
            return
    for at, phrase in enumerate(draft.phrases):
        one = phrase.kind == "ends" and len(phrase.ends) == 1 and phrase.ends[0].kind == "colour"
        alone = draft.context.asked_fact == "tap_volts" and len(draft.phrases) <= FEW
        if one and (alone or _is_led(draft, at, told)):
            draft.fact(None, Fact(fact="tap_lead", value=phrase.ends[0].name), at)
            draft.taken.add(at)
            _moved(draft, told)
            return


def _may_be_moved(draft: Draft) -> bool:
    """Whether the tap was asked for, or something is known that a tap is chosen by."""
    is_supplied = any(fact.fact == "supply_volts" for fact in draft.context.facts)
    return draft.context.asked_fact == "tap_volts" or is_supplied or is_about_taps(draft)


def is_about_taps(draft: Draft) -> bool:
    """Whether a tap, or which lead it is on, is spoken of in the job."""
    told = {fact.fact for fact in draft.context.facts}
    return (
        bool(told & {"tap_volts", "tap_lead", "nameplate_taps"})
        or draft.context.is_of_leads
        or draft.context.finding == "wrong_tap"
    )


def _is_led(draft: Draft, at: int, told: set[str]) -> bool:
    """In "to 240", "on the 240 lead", "al de 240": small words lead there, behind one that moves it or says where it stands."""
    step = at - 1
    while step >= 0 and set(draft.phrases[step].text.split()) <= LEADS_TO and draft.phrases[step].text:
        step -= 1
    led = step < at - 1
    words_before = set(" ".join(p.text for p in draft.phrases[:at]).split())
    return led and bool(words_before & (MOVED | STANDS) or told & {"now", "ahora"})


def _moved(draft: Draft, told: set[str]) -> None:
    """A lead that was moved makes what was read before history."""
    is_told = any(fact.fact in {"tap_volts", "tap_lead"} for _, fact in draft.facts)
    acts = MOVED - {"lo", "la"}
    if is_told and told & acts and not told & PLAN and "?" not in draft.text and "tap" not in draft.mended:
        draft.mended.append("tap")
