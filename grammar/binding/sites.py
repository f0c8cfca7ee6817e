"""Finds every place of a message."""

from grammar.binding.digit_leads import apart_pairs, number_pairs
from grammar.binding.draft import Draft, Figure, Site
from grammar.binding.each_lead import each_lead
from grammar.binding.in_and_out import in_and_out
from grammar.binding.joined_sites import both, ground_of, split_pairs
from grammar.binding.lead_lists import labelled_pairs, lead_lists, tap_lists
from grammar.binding.lettered_label import lettered_label
from grammar.binding.other_side import other_side
from grammar.binding.paired_values import paired_values
from grammar.binding.places import site_of, uses_marks
from grammar.binding.plausible import fits_live
from grammar.binding.two_trades import two_trades
from grammar.phrase import Phrase


def find_sites(draft: Draft) -> None:
    """All places of the message."""
    number_pairs(draft)
    apart_pairs(draft)
    draft.marks = uses_marks(draft.phrases) or any(
        e.kind == "mark" and e.name.isdecimal() for p in draft.phrases for e in p.ends
    )
    two_trades(draft)
    other_side(draft)
    in_and_out(draft)
    _ground_as_verb(draft)
    _nameplates(draft)
    lettered_label(draft)
    _the_one(draft)
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind == "ends":
            site = site_of(draft, at, phrase)
            if site is not None:
                draft.sites[at] = site
        elif phrase.kind == "device":
            draft.sites[at] = Site(at, "device", phrase.meaning)
        elif phrase.kind == "notours":
            draft.sites[at] = Site(at, "notours", phrase.meaning)
    _unknown_end(draft)
    _legs(draft)
    _at_the_transformer(draft)
    _of_the_transformer(draft)
    if any(site.name == "pressure" for site in draft.sites.values()):
        for at, phrase in enumerate(draft.phrases):  # "low side 70 high side 250"
            if at in draft.sites and phrase.kind == "ends" and draft.text[phrase.start : phrase.end].lower() == "high side":
                draft.sites[at] = Site(at, "notours", "pressure")
    _moments(draft)
    ground_of(draft)
    split_pairs(draft)
    paired_values(draft)
    both(draft)
    each_lead(draft)
    lead_lists(draft)
    labelled_pairs(draft)
    tap_lists(draft)
    _dead_places(draft)
    _shows_nothing(draft)
    _named_by_state(draft)
    if any(site.kind == "pair" and site.leads in {("r", "r"), ("c", "c"), ("r1", "r2")} for site in draft.sites.values()):
        draft.asks = list(dict.fromkeys((*draft.asks, "parallel")))  # volts between two transformers: are they in phase


def _unknown_end(draft: Draft) -> None:
    """In "pri to cse OL": the other end is a word that nobody knows, so it is no reading across the first."""
    for at, site in draft.sites.items():
        step = at + 2
        if draft.phrases[min(step, len(draft.phrases) - 1)].text in {"the", "la", "el"}:
            step += 1
        behind = draft.phrases[step].text if step < len(draft.phrases) else ""
        joined = draft.kind(at + 1) == "to" or (draft.kind(at + 1) == "sign" and draft.phrases[at + 1].text == "-")
        if site.kind == "place" and joined and draft.kind(step) == "unknown" and len(behind) > 1:
            site.name = f"{site.name}_unknown"


LEAST_OF_TWO_LEGS_V = 200.0
"""A supply from here on has more legs than one, and each of them to neutral is less than it. [V]"""


def _legs(draft: Draft) -> None:
    """In "L1 to N 120, L2 to N 119": the legs of a supply by themselves, and none of them is the supply."""
    legs = {
        at: names
        for at, site in draft.sites.items()
        if site.name == "line" and "n" in (names := [end.name for end in draft.phrases[at].ends])
    }
    told = [fact.value for fact in draft.context.facts if fact.fact == "supply_volts" and isinstance(fact.value, int | float)]
    nominal = any(f.value in {208.0, 240.0} and draft.kind(f.at + 1) == "supply" for f in draft.figures)
    if (
        len({tuple(names) for names in legs.values()}) > 1
        or nominal
        or any(value >= LEAST_OF_TWO_LEGS_V for value in told[-1:])
    ):
        for at, names in legs.items():
            draft.sites[at] = Site(at, "pair", "leads", (names[0], names[1]))


def _moments(draft: Draft) -> None:
    """In "I have 2 sec, call you back": a moment, and no winding, where the message names no other place."""
    if len(draft.sites) != 1:
        return
    at, site = next(iter(draft.sites.items()))
    figure = draft.figure_at(at - 1)
    word = draft.text[draft.phrases[at].start : draft.phrases[at].end].lower()
    if word != "sec" or site.name != "secondary":
        return
    if draft.phrases[at - 1].text in {"a", "one"} and len(draft.figures) == 0:
        draft.sites[at] = Site(at, "notours", "time")
    elif (
        figure is not None
        and figure.unit is None
        and figure.value <= 15
        and figure.value == int(figure.value)
        and len(draft.figures) == 1
    ):
        draft.sites[at] = Site(at, "notours", "person")


LED_THERE = frozenset(
    {
        "at",
        "on",
        "at the",
        "on the",
        "the",
        "en",
        "en el",
        "el",
        "leaving",
        "al",
        "at my",
        "out",
        "of",
        "out of",
        "coming",
        "coming out",
        "from",
        "off",
        "into",
        "to",
        "going",
        "going into",
        "del",
        "saliendo",
        "sale",
    }
)
"""Words between a value and the transformer."""


def _not_named(draft: Draft) -> str | None:
    """In "240 at the disconnect and nothing at the transformer" the primary, in "118 on the primary ..." the secondary."""
    named = {s.name for s in draft.sites.values() if s.kind == "place"}
    if "primary" in named:
        return None if "secondary" in named else "secondary"
    return "primary" if "line" in named else None


COMES_OUT = frozenset({"out", "output", "leaving", "from", "off", "sale", "saliendo", "del"})
GOES_IN = frozenset({"to", "into", "in", "feeding", "reaching", "al"})
"""Words between "nothing" and the transformer that tell its side."""
GIVES = frozenset({"takes", "recibe", "entrega", "gives", "puts", "fed", "makes", "outputs", "getting"})


def _of_the_transformer(draft: Draft) -> None:
    """In "the transformer gets 208 and puts out 24.5": each value is of the winding that it fits."""
    for figure in draft.figures:
        verb = figure.at - 1
        if figure.kind != "amount" or figure.unit not in {None, "V"} or verb in draft.sites:
            continue
        if draft.kind(verb) != "reads" and draft.phrases[verb].text not in GIVES:
            continue
        reach = range(verb - 1, max(-1, verb - 8), -1)
        named = next((i for i in reach if draft.kind(i) in {"transformer", "ends", "device", "notours"}), None)
        if named is None or draft.kind(named) != "transformer" or draft.sentence[named] != draft.sentence[figure.at]:
            continue
        span = 5 if draft.kind(figure.at + 1) in {"at", "between"} else 2
        behind = any(
            i in draft.sites and draft.clause[i] == draft.clause[figure.at]
            for i in range(figure.at + 1, figure.at + span)
            if i < len(draft.phrases)
        )
        name = next((n for n in ("primary", "secondary") if fits_live(n, figure.value)), None)
        if name is not None and not behind:
            draft.sites[verb] = Site(verb, "place", name)


def _nameplates(draft: Draft) -> None:
    """In "placa: 75VA": the word for a board that is a nameplate too."""
    for at, phrase in enumerate(draft.phrases):
        if phrase.text != "placa" or draft.kind(at + 1) not in {"colon", "is", "reads", "amounts"}:
            continue
        if any(f.unit == "VA" and 0 < f.at - at <= 3 for f in draft.around(at)):
            draft.phrases[at] = Phrase("nameplate", "nameplate", phrase.start, phrase.end, phrase.text, phrase.language)


def _dead_places(draft: Draft) -> None:
    """In "primary 121v, the secondary's dead": no volts there, where volts are told of another place."""
    if not any(f.kind == "amount" and (f.unit == "V" or f.value >= 90) for f in draft.figures):
        return
    for at, phrase in enumerate(draft.phrases):
        if phrase.text not in {"dead", "muerto", "muerta"} or draft.kind(at + 1) not in {"", "stop", "comma", "line", "and"}:
            continue
        step = at - 1
        while draft.kind(step) in {"is", "winding", "filler"} and draft.clause[step] == draft.clause[at]:
            step -= 1
        site = draft.sites.get(step)
        if site is not None and site.kind == "place" and site.name in {"primary", "secondary", "line", "control"}:
            _reads_nothing(draft, at)


def _reads_nothing(draft: Draft, at: int) -> None:
    """A phrase becomes the word for no volts."""
    phrase = draft.phrases[at]
    draft.phrases[at] = Phrase("value", "nothing", phrase.start, phrase.end, phrase.text, phrase.language)
    figure = Figure(at, "nothing", phrase.start, phrase.end)
    draft.figures = sorted((*draft.figures, figure), key=lambda f: f.at)
    draft.by_phrase[at] = figure
    draft.figure_ats = [f.at for f in draft.figures]


SHOWS = frozenset({"marca", "lee", "registra", "muestra"})
LIVE_PLACES = frozenset({"primary", "secondary", "line", "control"})


def _shows_nothing(draft: Draft) -> None:
    """In "el secundario no marca": no volts there, where no ohms are told."""
    if any(f.unit == "ohm" or f.unit_from == "heading" for f in draft.figures) or any(
        p.kind == "heading" for p in draft.phrases
    ):
        return
    for at, phrase in enumerate(draft.phrases):
        ended = draft.kind(at + 1) in {"", "stop", "comma", "line", "and"} and not draft.phrases[
            min(at + 1, len(draft.phrases) - 1)
        ].text.startswith("?")
        if phrase.text not in SHOWS or draft.kind(at - 1) != "no" or not ended:
            continue
        site = draft.sites.get(at - 2)
        if site is not None and site.kind == "place" and site.name in LIVE_PLACES:
            _reads_nothing(draft, at)


def _the_one(draft: Draft) -> None:
    """In "pri on the econ one 208": one of several units, and no number before the number."""
    for figure in draft.figures:
        at = figure.at
        spoken = figure.amount is not None and figure.amount.spoken and figure.unit is None and figure.value == 1
        behind = draft.figure_at(at + 1)
        if not spoken or behind is None or behind.kind != "amount":
            continue
        first = next((i for i in range(at - 1, max(-1, at - 4), -1) if draft.kind(i) not in NAMES_ONE), -1)
        told = draft.phrases[max(first, at - 4) : at - 1] if first >= 0 else []
        if first == at - 1 or not any(p.text.split(" ")[-1] in {"the", "that", "this"} for p in told):
            continue
        figure.done = True
        for step in range(first + 1, at + 1):
            phrase = draft.phrases[step]
            draft.phrases[step] = Phrase("filler", "one", phrase.start, phrase.end, phrase.text, phrase.language)


NAMES_ONE = frozenset({"device", "filler", "unknown", "idword", "notours"})


def _at_the_transformer(draft: Draft) -> None:
    """In "208 at the transformer", "26 at the xfmr": the winding that the value fits, where it is the only figure that is led there."""
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "transformer":
            continue
        step = at - 1
        while draft.phrases[step].text in LED_THERE and step > 0:
            step -= 1
        figure = draft.figure_at(step)
        if figure is not None and figure.kind == "nothing" and draft.kind(at + 1) != "ends":
            words = {word for i in range(step, at) for word in draft.phrases[i].text.split(" ")}
            name = "secondary" if words & COMES_OUT else "primary" if words & GOES_IN else _not_named(draft)
            if name is not None:
                guessed = not words & (COMES_OUT | GOES_IN)
                draft.sites[at] = Site(at, "place", name, assumed=guessed)
            continue
        if (
            step == at - 1
            or figure is None
            or figure.kind != "amount"
            or figure.unit not in {None, "V"}
            or draft.kind(at + 1) == "ends"
        ):
            continue
        name = next((n for n in ("primary", "secondary") if fits_live(n, figure.value)), None)
        if name is not None:
            draft.sites[at] = Site(at, "place", name, assumed=figure.unit is None and figure.value == 24)


def _named_by_state(draft: Draft) -> None:
    """In "sec lifted 26", "secundario suelto 21.2": the state names the place, where its clause names no other."""
    named = {draft.clause[at] for at, site in draft.sites.items() if site.kind in {"place", "pair"}}
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "condition" or not set(phrase.text.split()) & SECONDARY:
            continue
        between = draft.kind(at + 1) == "amounts" and draft.kind(at - 1) in {"amounts", "value"}
        if between or draft.clause[at] not in named:
            draft.sites[at] = Site(at, "place", "secondary")


SECONDARY = frozenset({"sec", "secondary", "secundario"})
ORDERED = frozenset({"i", "to", "should", "you", "must", "gotta", "do", "we", "can", "or", "and"})


def _ground_as_verb(draft: Draft) -> None:
    """In "do I have to ground the secondary": what is to be done, and no place."""
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "ends" or len(phrase.ends) != 1 or draft.text[phrase.start : phrase.end].lower() != "ground":
            continue
        before = draft.phrases[at - 1].text if at else ""
        behind = draft.phrases[at + 1].text if at + 1 < len(draft.phrases) else ""
        if (not at or before in ORDERED) and behind in {"the", "one", "my", "this", "either", "it", "a"}:
            draft.phrases[at] = Phrase("filler", "ground", phrase.start, phrase.end, "ground", "en")
