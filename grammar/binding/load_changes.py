"""What a message changes of the loads told before: one more of them, another number of them, one that goes."""

from dataclasses import replace

from core.readings import Fact
from grammar.binding.draft import Draft

MORE = frozenset({"another", "more", "extra", "additional", "otro", "otra", "otros", "otras", "mas", "add", "added", "adding"})
"""Words before a device by which it comes beside those of its kind."""
OFF = frozenset({
    "remove", "removing", "removed", "drop", "delete", "lose", "minus", "without", "out", "off", "less", "scratch", "quita", "quitale", "saca", "sin", "menos",
})  # fmt: skip
"""Words before a device that goes."""
BETWEEN = frozenset({"the", "that", "a", "an", "el", "la", "los", "las", "un", "una", "all", "my"})


def load_changes(draft: Draft) -> None:
    """In "another contactor 9va", "make that 3 contactors" and "take out the gas valve"."""
    known = {f.device: f for f in draft.context.facts if f.fact == "load"}
    if not known:
        return
    rated = any(f.fact == "rated_va" for f in draft.context.facts)
    if draft.asks == ["yes"] and "?" in draft.text and rated and draft.context.asked is None:
        draft.asks = ["size"]  # "ok?" to the loads of a unit
    draft.facts = [(at, _changed(draft, at, fact, known.get(fact.device))) for at, fact in draft.facts]
    _made_so_many(draft, known)
    _taken_off(draft, known)


def _changed(draft: Draft, at: int, fact: Fact, before: Fact | None) -> Fact:
    """The load with what is known of its kind: its figure where only a number was told, its number where one more came."""
    if fact.fact != "load" or before is None or draft.kind(at) != "device":
        return fact
    if fact.value is None and before.value is not None:
        fact = replace(fact, value=before.value, unit=before.unit, inrush=before.inrush)
    alike = (fact.value, fact.unit) == (before.value, before.unit)
    words = {draft.phrases[i].text for i in range(max(0, at - 3), at) if draft.clause[i] == draft.clause[at]}
    if alike and words & MORE:
        return replace(fact, count=(before.count or 1) + (fact.count or 1))
    return fact


def _made_so_many(draft: Draft, known: dict[str | None, Fact]) -> None:
    """In "make that 3 contactors": the number alone."""
    for at, site in draft.sites.items():
        before, count = known.get(draft.phrases[at].meaning), draft.figure_at(at - 1)
        new = (
            site.kind == "device"
            and before is not None
            and not any(f.fact == "load" and where == at for where, f in draft.facts)
        )
        led = draft.kind(at - 2) in {"withdraw", "is"} or draft.phrases[max(0, at - 2)].text in {
            "son",
            "hay",
            "are",
            "there are",
            "tiene",
            "has",
        }
        if new and before is not None and count is not None and led and at >= 2 and count.unit is None:
            count.done, count.withdrawn, site.used = True, False, site.used + 1
            draft.facts.append((at, replace(before, count=int(count.value))))


def _taken_off(draft: Draft, known: dict[str | None, Fact]) -> None:
    told = {f.device for _, f in draft.facts if f.fact == "load"}
    for at, site in draft.sites.items():
        device = draft.phrases[at].meaning
        if site.kind != "device" or site.used or device not in known or device in told:
            continue
        before = at - 1
        while before >= 0 and draft.phrases[before].text in BETWEEN:
            before -= 1
        if before >= 0 and draft.phrases[before].text in OFF and draft.kind(at + 1) in {"", "comma", "stop", "line", "and"}:
            site.used += 1
            draft.withdrawn.append(f"load {device}")
