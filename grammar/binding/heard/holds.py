"""In "took the primary leads off, it holds", "quité los cables del primario y aguanta": the breaker holds without the transformer."""

from core.heard.record import Heard
from grammar.binding.draft import Draft
from grammar.words.heard import ES_LIFTS, LIFTS

HOLDS = frozenset({"holds", "holding", "held", "aguanta", "aguanto", "stays", "sostiene"})
OFF = frozenset({*LIFTS.split("|"), *ES_LIFTS.split("|"), "off"})


def holds(draft: Draft) -> None:
    """Only where a breaker was spoken of."""
    told = {word for p in draft.phrases for word in p.text.split()}
    primary = any(end.name == "primary" for p in draft.phrases for end in p.ends) or bool(
        told & {"transformer", "xfmr", "trafo", "transformador"}
    )
    before = " ".join(draft.context.said_before).lower()
    breaker = any(word in before for word in ("breaker", "pastilla", "trip", "bot"))
    if not (told & HOLDS and told & OFF and primary and breaker) or draft.figures or "?" in draft.text:
        return
    span = (draft.phrases[0].start, draft.phrases[-1].end)
    draft.heard.append((span, Heard("holds_off", "breaker", "")))
    draft.asks = [ask for ask in draft.asks if ask != "size"]
    for phrase in draft.phrases:
        phrase.kind = "heard"
