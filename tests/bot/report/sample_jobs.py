"""Invented jobs for the papers: few readings, every measure, long names, 480 V, a repair that was proved, and a hostile technician."""

import io
from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, datetime, timedelta

from PIL import Image, ImageDraw

from bot.report import Given, JobLog, Photo, Sent, Taken, Told
from core.advice import Landing, LeadMap, NextTest, Ranked, Reason, Sizing, Verdict, Winding
from core.cautions import CAUTIONS
from core.measures import MEASURES
from core.readings import OPEN, Fact, Reading, Value
from core.said import say

START = datetime(2026, 7, 14, 15, 2, tzinfo=UTC)

EVERY_VALUE: dict[str, Value] = {
    "line_volts": 208.4, "primary_volts": 207.9, "secondary_volts": 20.6, "secondary_volts_lifted": 26.35, "control_volts": 20.1,
    "coil_volts": 19.8, "fuse_volts": 0.02, "primary_amps": 0.31, "secondary_amps": 2.45, "primary_ohms": 53.2,
    "secondary_ohms": 1.15, "primary_secondary_ohms": OPEN, "primary_ground_ohms": 12_500_000.0, "secondary_ground_ohms": OPEN,
    "load_ohms": 8.4, "fuse_ohms": 0.1, "coil_ohms": 11.7,
}  # fmt: skip
"""One value of each measure that has a place of its own in the circuit."""


def minute(number: int) -> datetime:
    """When message `number` came."""
    return START + timedelta(minutes=3 * number)


def read(number: int, measure: str, value: Value, **more) -> Taken:
    """One reading of a message."""
    marks = {name: more.pop(name) for name in ("stands", "proof") if name in more}
    return Taken(number=number, at=minute(number), reading=Reading(measure=measure, value=value, **more), **marks)


def told(number: int, fact: str, value=None, **more) -> Told:
    """One fact of a message."""
    return Told(number=number, at=minute(number), fact=Fact(fact=fact, value=value, **more))


def given(number: int, name: str) -> Given:
    """One caution."""
    return Given(number=number, at=minute(number), name=name, says=CAUTIONS[name].says, source=CAUTIONS[name].source)


def messages(count: int, by: str = "Robin Example", text: str = "invented message {number}") -> tuple[Sent, ...]:
    """Texts without content of their own."""
    return tuple(Sent(number=n, at=minute(n), by=by, text=text.format(number=n)) for n in range(1, count + 1))


def photo(words: str, number: int = 4, size: tuple[int, int] = (1600, 1200)) -> Photo:
    """A drawn stand-in for a photo."""
    image = Image.new("RGB", size, (180, 200, 200 + len(words)))
    ImageDraw.Draw(image).rectangle(
        (size[0] // 4, size[1] // 4, 3 * size[0] // 4, 3 * size[1] // 4), fill=(90, 80, 20 * number % 256)
    )
    out = io.BytesIO()
    image.save(out, "JPEG", quality=80)
    return Photo(at=minute(number), body=out.getvalue(), caption=words)


def found(finding: str, confidence: float, reasons: Sequence[Reason] = (), **more) -> Verdict:
    """A verdict with a second finding behind it."""
    second = "no_supply" if finding != "no_supply" else "loose_line"
    ranked = (Ranked(finding=finding, probability=confidence), Ranked(finding=second, probability=1 - confidence))
    return Verdict(finding=finding, confidence=confidence, ranked=ranked, reasons=tuple(reasons), **more)


def for_it(measure: str, value: Value, low: float | None, high: float | None, speaks="for", good=(None, None)) -> Reason:
    """One reason: what the finding would read, and what a sound unit would."""
    reading = Reading(measure=measure, value=value)
    return Reason(reading=reading, low=low, high=high, good_low=good[0], good_high=good[1], speaks=speaks)


LEADS = LeadMap(
    windings=(
        Winding(role="primary", leads=(("white", "common"), ("black", "120"), ("red", "208"), ("orange", "240"))),
        Winding(role="secondary", leads=(("blue", "24"), ("yellow", "24"))),
    ),
    confidence=0.97,
    land=Landing(supply_volts=208.0, lead="red", cap=("black", "orange"), volts_out=(23.41, 26.93), fits=True),
)

SIZING = Sizing(
    load_va=34.0, inrush_va=80.0, pick_va=50.0, secondary_amps=1.42, fuse_amps=2.0,
    rules=(say("next size over the load with 25 % spare: common practice"),),
)  # fmt: skip


def few_readings() -> JobLog:
    """Three readings, a verdict, still open."""
    return JobLog(
        name="closet unit",
        technicians=("Robin Example",),
        opened=minute(1),
        sent=messages(2),
        taken=(read(1, "primary_volts", 118.0), read(1, "secondary_volts", 0.0), read(2, "primary_ohms", OPEN)),
        told=(told(1, "supply_volts", 120.0), told(1, "symptom", "no_control_power")),
        given=(given(2, "prove_dead"), given(2, "find_the_short_first")),
        verdict=found(
            "primary_open",
            0.991,
            (
                for_it("primary_ohms", OPEN, None, None, good=(15.2, 31.0)),
                for_it("secondary_volts", 0.0, 0.0, 0.9, good=(23.1, 28.0)),
                for_it("primary_volts", 118.0, 108.0, 126.0, good=(110.0, 126.0)),
            ),
            settled=False,
            transformer="bad",
        ),
        next_test=NextTest(measure="load_ohms", instruction=MEASURES["load_ohms"].how),
    )


def repaired() -> JobLog:
    """Forty messages on a 208 V unit: leads, sizing, a repair with its proof, two technicians, two photos."""
    measures = [name for name in EVERY_VALUE if name != "secondary_volts_lifted"]
    taken = [read(1 + i, measures[i % len(measures)], EVERY_VALUE[measures[i % len(measures)]]) for i in range(28)]
    taken += [
        read(29, "lead_ohms", 20.4, leads=("white", "black")),
        read(29, "lead_ohms", 53.0, leads=("white", "red")),
        read(29, "lead_ohms", 66.5, leads=("white", "orange")),
        read(30, "lead_ohms", 1.2, leads=("blue", "yellow")),
        read(31, "secondary_volts", 206.0, stands=False),
        read(32, "secondary_volts", 20.6, assumed=True),
    ]
    taken += [
        read(36, "secondary_volts_lifted", 26.4, proof=True),
        read(37, "secondary_volts", 25.1, proof=True),
        read(38, "control_volts", 24.8, proof=True),
        read(39, "secondary_amps", 1.38, proof=True),
    ]
    return JobLog(
        name="rtu 3 library, second visit",
        unit="rtu 3 library",
        technicians=("Robin Example", "Sasha Invented"),
        opened=minute(1),
        closed=minute(41),
        outcome="replaced, 50 va, 208 tap, 2 a fuse. float switch wire was rubbed through at the drain pan, taped and tied up",
        sent=messages(40),
        taken=tuple(taken),
        told=(
            told(1, "supply_volts", 208.0),
            told(1, "tap_volts", 240.0),
            told(2, "tap_lead", "orange"),
            told(2, "rated_va", 40.0),
            told(2, "rated_secondary_volts", 24.0),
            told(3, "load", 9.0, device="contactor", count=2),
            told(3, "load", 16.0, device="gas valve"),
            told(3, "run_feet", 60.0),
            told(3, "wire_awg", 18.0),
            told(4, "fuse_amps", 3.0),
            told(4, "symptom", "chatter"),
            told(4, "symptom", "hot"),
        ),
        given=(
            given(2, "meter_category"),
            given(9, "prove_dead"),
            given(12, "prove_dead"),
            given(30, "cap_unused_leads"),
            given(33, "no_bigger_fuse"),
            given(34, "find_the_short_first"),
        ),
        verdict=found(
            "wrong_tap",
            0.962,
            (
                for_it("secondary_volts", 20.6, 20.1, 21.9, good=(23.1, 27.9)),
                for_it("secondary_volts_lifted", 26.35, 21.8, 23.4, "against", good=(25.0, 29.1)),
                for_it("primary_volts", 207.9, 198.0, 214.0, good=(198.0, 214.0)),
                for_it("primary_ohms", 53.2, 48.0, 72.0, "neither", good=(48.0, 72.0)),
            ),
            settled=True,
            transformer="good",
            also=("overload",),
        ),
        leads=LEADS,
        sizing=SIZING,
        proved=(
            say("PASS: every reading is in its range"),
            say("Pass, {place}: {value:.1f} V, expected {low:.1f} to {high:.1f} V", place=MEASURES["secondary_volts"].place,
                value=25.1, low=22.6, high=27.4),
        ),
        photos=(photo("nameplate"), photo("burnt spade on R", 20, (1200, 1600))),
    )  # fmt: skip


def every_measure() -> JobLog:
    """One reading at each place, all the facts there are, 480 V."""
    values = EVERY_VALUE | {"line_volts": 481.5, "primary_volts": 479.25, "primary_ohms": 310.0, "primary_amps": 0.105}
    taken = [read(1 + i // 2, name, value) for i, (name, value) in enumerate(values.items())]
    return replace(
        few_readings(),
        name="chiller 2 north roof",
        unit="chiller 2",
        taken=tuple(taken),
        sent=messages(12),
        told=(told(1, "supply_volts", 480.0), told(1, "tap_volts", 480.0), told(2, "nameplate_taps", (208.0, 240.0, 480.0))),
        given=(given(1, "over_300"), given(2, "prove_dead"), given(3, "ground_meant")),
        verdict=found("winding_grounded", 0.74, settled=False, transformer="unproven"),
        next_test=NextTest(measure="secondary_ground_ohms", instruction=MEASURES["secondary_ground_ohms"].how),
    )


def long_names() -> JobLog:
    """Names and an outcome of many letters, and words without a space."""
    return replace(
        repaired(),
        name="Rooftop unit three over the children's reading room of the public library annex, north-east corner by the hatch",
        unit="UNIT" * 24,
        technicians=("Maximiliana Bartholomea Exampleton-Inventedsdottir", "Sasha Invented", "Kim Placeholder", "Lee Nobody"),
        outcome="replaced the transformer and found the real cause behind it " * 14,
    )


def hostile() -> JobLog:
    """Text that a spreadsheet, a terminal or a page could take for something else."""
    return replace(
        few_readings(),
        name='=HYPERLINK("http://example.invalid","x")',
        unit="@SUM(1+1)",
        technicians=("+1 555 example", "-Robin\nSecond line", "\u202eRobin\x1b[31m"),
        outcome="\t=cmd|' /C calc'!A0;=1+1\n\u6f22\u5b57 \U0001f525 {braces} %s <b>bold</b>",
        closed=minute(3),
        photos=(Photo(at=minute(1), body=b"not a picture", caption="broken"),),
    )


def endless() -> JobLog:
    """More readings and cautions than any page has room for."""
    leads = ("white", "black", "red", "orange", "yellow", "blue", "brown", "green", "gray", "violet", "pink", "tan")
    pairs = [(a, b) for i, a in enumerate(leads) for b in leads[i + 1 :]]
    taken = [read(i, "lead_ohms", 20.0 + i, leads=pair) for i, pair in enumerate(pairs * 3, start=1)]
    return replace(
        repaired(),
        taken=(*repaired().taken, *taken),
        given=tuple(given(i, name) for i, name in enumerate(CAUTIONS)),
        sent=messages(300),
        photos=tuple(photo(f"photo {i}", i) for i in range(9)),
    )


JOBS = {
    "few_readings": few_readings,
    "repaired": repaired,
    "every_measure": every_measure,
    "long_names": long_names,
    "hostile": hostile,
    "endless": endless,
}
"""Every invented job by name."""
