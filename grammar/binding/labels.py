"""What is said of single leads: what a label calls them, and which one is landed."""

from core.readings import Fact
from grammar.binding.draft import Draft
from grammar.binding.places import lead_name
from grammar.binding.told import NOMINAL_V
from grammar.phrase import Phrase

ROLE_VOLTS = NOMINAL_V | {24.0, 12.0}
SMALL = frozenset({"filler", "is", "colon", "at", "leadword", "and", "sign", "comma"})


def labels(draft: Draft) -> None:
    """Facts of leads: `lead_is` and `tap_lead`."""
    begins = draft.phrases[0].text.split(" ")[0] if draft.phrases else ""
    asked = "which_lead" in draft.asks and ("?" in draft.text or begins in {"is", "are", "es", "son"})
    if not asked:
        _roles(draft)
    _landed(draft)


def _names(draft: Draft, phrase: Phrase) -> list[str]:
    """The leads of a phrase of colours or marks."""
    names = [lead_name(end, draft) for end in phrase.ends]
    return [name for name in names if name is not None] if all(names) else []


def _roles(draft: Draft) -> None:
    label = next((i for i, p in enumerate(draft.phrases) if p.kind in {"label", "nameplate"}), None)
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "ends" or not (names := _names(draft, phrase)):
            continue
        labelled = label is not None and label < at and draft.sentence[label] == draft.sentence[at]
        labelled = labelled or any(
            fact.fact == "lead_is" and draft.sentence[i] == draft.sentence[at] for i, fact in draft.facts[-8:]
        )
        role = _role_behind(draft, at, labelled=labelled)
        if role is None and len(names) == 1:
            role = _role_before(draft, at)
        if role is None:
            continue
        value, used = role
        if len(names) > 1 and value not in {"secondary", "primary", "24"}:
            continue
        for name in names:
            draft.facts.append((at, Fact(fact="lead_is", lead=name, role=value)))
        draft.taken.update({at, used})
        draft.sites.pop(at, None)
        figure = draft.figure_at(used)
        if figure is not None:
            figure.done = True


def _role_behind(draft: Draft, at: int, *, labelled: bool) -> tuple[str, int] | None:
    """In "white is common", under a label also "red 208"."""
    step = at + 1
    said = labelled
    while draft.kind(step) in {"filler", "is", "colon", "leadword"} or (
        draft.kind(step) == "sign" and draft.phrases[step].text == "-"
    ):
        said = said or draft.kind(step) == "is"
        step += 1
    if draft.clause[min(step, len(draft.phrases) - 1)] != draft.clause[at] and draft.kind(step) != "common":
        return None
    return _role_at(draft, step, said=said)


def _role_at(draft: Draft, step: int, *, said: bool) -> tuple[str, int] | None:
    if draft.kind(step) == "common" and (said or draft.kind(step - 1) == "ends"):
        return "common", step
    if draft.kind(step) == "centre":
        return "ct", step
    figure = draft.figure_at(step)
    if (
        figure is not None
        and said
        and figure.kind == "amount"
        and figure.value in ROLE_VOLTS
        and figure.unit in {None, "V"}
        and len(figure.amounts) == 1
    ):
        return f"{figure.value:g}", step
    if said and draft.kind(step) == "ends" and len(draft.phrases[step].ends) == 1:
        end = draft.phrases[step].ends[0]
        if end.kind == "place" and end.name in {"secondary", "primary", "ground"}:
            draft.sites.pop(step, None)
            return end.name, step
    return None


def _role_before(draft: Draft, at: int) -> tuple[str, int] | None:
    """In "common is white", "208 is red"."""
    step = at - 1
    said = False
    while draft.kind(step) in {"is", "filler", "colon", "sign"}:
        said = said or draft.kind(step) in {"is", "colon"} or draft.phrases[step].text == "="
        step -= 1
    return _role_at(draft, step, said=said) if said and draft.kind(step) in {"common", "amounts"} else None


def _landed(draft: Draft) -> None:
    """In "landed on the black lead", "orange is landed on L1": white, or the one called common, is no tap."""
    if draft.told("tap_volts") is not None:
        pass
    common = {f.lead for _, f in draft.facts if f.fact == "lead_is" and f.role == "common"} | {"white"}
    for at, phrase in enumerate(draft.phrases):
        lead = None
        if phrase.meaning == "loaded" and "red" in phrase.text.split(" ") and _line_behind(draft, at):
            lead = "red"  # a word for the load being on, but for what stands behind it
        elif phrase.kind in {"lands", "tapword"} and not _to_a_control(draft, at):
            lead = _lead_beside(draft, at)
        elif phrase.kind == "ends" and _on_a_lead(draft, at):
            lead = lead_name(phrase.ends[0], draft)
        elif phrase.kind == "ends" and len(phrase.ends) == 2 and not _measured(draft, at):
            kinds = {end.kind for end in phrase.ends}
            if kinds == {"colour", "mark"} and any(e.name in {"l1", "l2", "l3"} for e in phrase.ends):
                lead = next(lead_name(e, draft) for e in phrase.ends if e.kind == "colour")
        elif phrase.kind == "ends" and len(phrase.ends) == 1 and not _measured(draft, at):
            lead = _on_line(draft, at)
        if lead is not None and lead not in common and draft.told("tap_lead") is None:
            draft.facts.append((at, Fact(fact="tap_lead", value=lead)))


def _to_a_control(draft: Draft, at: int) -> bool:
    """In "yellow goes to R", "R goes to yellow": a terminal of the thermostat, and no line."""
    beside = [draft.phrases[i] for i in (at - 1, at + 1) if 0 <= i < len(draft.phrases)]
    return any(p.text in {"r", "c", "y", "w", "g"} and p.kind != "ends" for p in beside) or any(
        e.kind == "letter" and e.name in {"r", "c"} for p in beside for e in p.ends
    )


def _line_behind(draft: Draft, at: int) -> bool:
    step = at + 2 if draft.kind(at + 1) == "at" else at + 1
    ends = draft.phrases[step].ends if draft.kind(step) == "ends" else ()
    return len(ends) == 1 and ends[0].name in {"l1", "l2", "l3", "line"}


def _on_a_lead(draft: Draft, at: int) -> bool:
    """In "277 supply, on the brown lead": a colour behind "on" in a clause that has no figure, where the supply or the rating is told."""
    phrase = draft.phrases[at]
    told = draft.told("supply_volts") is not None or draft.told("rated_va") is not None
    used = any(draft.phrases[i].text in {"using", "used", "use", "usando", "uso", "usa"} for i in range(max(0, at - 3), at))
    if used and len(phrase.ends) == 1 and phrase.ends[0].kind == "colour" and draft.kind(at + 1) in {"leadword", "tapword"}:
        return not draft.asks and not any(draft.clause[f.at] == draft.clause[at] for f in draft.around(at))
    if (
        not told
        or len(phrase.ends) != 1
        or phrase.ends[0].kind != "colour"
        or draft.kind(at + 1) not in {"leadword", "tapword"}
    ):
        return False
    figures = any(draft.clause[f.at] == draft.clause[at] and not f.done for f in draft.around(at))
    return not figures and any(draft.kind(i) == "at" for i in range(max(0, at - 3), at))


def _on_line(draft: Draft, at: int) -> str | None:
    """In "black on L1": a colour and a line terminal with "on" between them."""
    step = at + 1
    if draft.kind(step) != "at":
        return None
    while draft.kind(step) in {"at", "filler", "leadword"}:
        step += 1
    if draft.kind(step) != "ends" or len(draft.phrases[step].ends) != 1 or draft.clause[step] != draft.clause[at]:
        return None
    ends = (draft.phrases[at].ends[0], draft.phrases[step].ends[0])
    if not any(e.name in {"l1", "l2", "l3"} for e in ends) or not any(e.kind == "colour" for e in ends):
        return None
    return next(lead_name(e, draft) for e in ends if e.kind == "colour")


def _measured(draft: Draft, at: int) -> bool:
    return any(f.site is not None and f.site.at == at for f in draft.around(at))


def _lead_beside(draft: Draft, at: int) -> str | None:
    line = any(
        e.name in {"l1", "l2", "line"} for p in draft.phrases[max(0, at - 12) : at + 12] for e in p.ends if len(p.ends) == 1
    )
    for step in (1, -1):
        here = at + step
        while draft.kind(here) in {"filler", "at", "is", "leadword"} and draft.clause[here] == draft.clause[at]:
            here += step
        phrase = draft.phrases[here] if 0 <= here < len(draft.phrases) else None
        if phrase is None or phrase.kind != "ends" or len(phrase.ends) != 1 or phrase.ends[0].kind != "colour":
            continue
        near = abs(here - at) == 1
        if (
            draft.phrases[at].kind == "tapword"
            and draft.phrases[at].text in {"tap", "toma", "taps"}
            and not near
            and step == -1
        ):
            continue
        capped = any(p.kind == "capped" for p in draft.phrases)  # "brown lead is landed, orange and black capped"
        if draft.phrases[at].kind == "lands" and not (line or capped) and step == -1:
            continue
        if _measured(draft, here):
            continue
        draft.taken.add(here)
        return lead_name(phrase.ends[0], draft)
    return None
