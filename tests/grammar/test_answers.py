"""What a bare value, a unit or a yes answers, and what a correction means of what stands."""

import pytest

from core.readings import Reading
from grammar import Context, read

ASKED_OHMS = Context(asked=("primary_ohms", None))
ASKED_VOLTS = Context(asked=("secondary_volts", None))
STANDS = Context(readings=(Reading(measure="primary_volts", value=118.0), Reading(measure="secondary_volts", value=24.6)))


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("19.8", 19.8),
        ("open", "open"),
        ("OL", "open"),
        ("0", 0.0),
        ("1.2k", 1200.0),
        (">20M", "open"),
        ("it reads 19.8", 19.8),
        ("abierto", "open"),
        ("diecinueve", 19.0),
    ],
)
def test_a_bare_value_answers_the_test_just_asked(text: str, value: float | str) -> None:
    """Plain, at the measure that was asked for."""
    assert read(text, ASKED_OHMS).readings == (Reading(measure="primary_ohms", value=value),)


@pytest.mark.parametrize("text", ["246", "2.46"])
def test_an_answer_that_cannot_be_is_asked_about(text: str) -> None:
    """It counts only after a yes."""
    message = read(text, ASKED_VOLTS)

    assert message.readings == ()
    assert [r.value for r in message.unclear[0].readings] == [24.6]


def test_a_beep_is_no_number() -> None:
    """It is told, so that the number comes."""
    message = read("beeps", ASKED_OHMS)

    assert message.readings == ()
    assert message.unread == ("beeps",)


@pytest.mark.parametrize(("text", "count"), [("yes", 1), ("sí", 1), ("24.6", 1), ("volts", 1), ("no", 0)])
def test_what_was_unclear_is_settled(text: str, count: int) -> None:
    """By a yes, the value or the unit; a no settles it too, with nothing to record."""
    unclear = read("sec 246").unclear

    readings = read(text, Context(unclear=unclear)).readings

    assert readings == (Reading(measure="secondary_volts", value=24.6),) * count


@pytest.mark.parametrize(("text", "measure"), [("ohms", "lead_ohms"), ("volts", "lead_volts"), ("ohmios", "lead_ohms")])
def test_a_bare_unit_gives_the_earlier_number_its_unit(text: str, measure: str) -> None:
    """As a plain reading."""
    unclear = read("brown to white 120").unclear

    assert read(text, Context(unclear=unclear)).readings == (Reading(measure=measure, value=120.0, leads=("brown", "white")),)


@pytest.mark.parametrize(("text", "lead"), [("blue", "blue"), ("negro", "black")])
def test_a_colour_settles_which_colour(text: str, lead: str) -> None:
    """In "bl" was blue or black."""
    unclear = read("bl to w 5.5 ohms").unclear

    assert read(text, Context(unclear=unclear)).readings == (Reading(measure="lead_ohms", value=5.5, leads=(lead, "white")),)


@pytest.mark.parametrize(
    ("text", "measure", "value"),
    [
        ("*26.4", "secondary_volts", 26.4), ("no 26.4", "secondary_volts", 26.4), ("meant 108", "primary_volts", 108.0), ("should be 119", "primary_volts", 119.0),
        ("sec is 26.4 not 24.6", "secondary_volts", 26.4), ("118 is wrong, its 108", "primary_volts", 108.0), ("no, son 26.4", "secondary_volts", 26.4),
    ],
)  # fmt: skip
def test_a_correction_means_what_stands(text: str, measure: str, value: float) -> None:
    """The last reading that the new value can be of, or that the old value is of."""
    message = read(text, STANDS)

    assert message.readings == (Reading(measure=measure, value=value),)
    assert message.asks == ("correct",)


@pytest.mark.parametrize(
    ("text", "ask", "name"),
    [
        ("new job rtu 3 library", "new_job", "rtu 3 library"), ("/new rtu 3", "new_job", "rtu 3"), ("back to rtu 3", "resume_job", "rtu 3"), ("anything on rtu 3 before?", "history", "rtu 3"),
        ("/help fuse", "help", "fuse"), ("lang es", "language", "es"), ("/lang en", "language", "en"), ("español", "language", "es"), ("/undo", "undo", None), ("/start", "start", None),
    ],
)  # fmt: skip
def test_a_job_a_topic_or_a_language_is_named(text: str, ask: str, name: str | None) -> None:
    """The name is no reading."""
    message = read(text)

    assert (message.asks, message.name, message.readings) == ((ask,), name, ())


@pytest.mark.parametrize(
    ("asked", "text", "measure", "value"),
    [
        ("control_volts", "r to c 0", "control_volts", 0.0),
        ("secondary_ohms", "sec 0", "secondary_ohms", 0.0),
        ("fuse_ohms", "fuse 0.2", "fuse_ohms", 0.2),
        ("secondary_volts_lifted", "sec 0", "secondary_volts", 0.0),
    ],
)
def test_a_bare_number_at_the_place_just_asked_is_plain(asked: str, text: str, measure: str, value: float) -> None:
    """The question said what is to be read there."""
    assert read(text, Context(asked=(asked, None))).readings == (Reading(measure=measure, value=value),)


@pytest.mark.parametrize("text", ["pri 121 sec 26.3", "sec 26.3"])
def test_volts_that_fit_are_volts_after_amps_were_asked(text: str) -> None:
    """Nobody reads 26 A on a 40 VA secondary: the asked unit counts only where the number does not speak for volts."""
    readings = read(text, Context(asked=("secondary_amps", None))).readings

    assert [(r.measure, r.value) for r in readings][-1] == ("secondary_volts", 26.3)


def test_a_live_value_where_ohms_were_asked_is_doubted() -> None:
    """The wrong test may have been made."""
    message = read("sec 24.6", Context(asked=("secondary_ohms", None)))

    assert message.readings == (Reading(measure="secondary_volts", value=24.6),)


def test_a_value_said_twice_counts_as_said() -> None:
    """It is asked about only once."""
    first = read("sec 2.6V")
    second = read("sec 2.6V", Context(unclear=first.unclear))

    assert first.readings == ()
    assert second.readings == (Reading(measure="secondary_volts", value=2.6),)


def test_no_fuse_is_no_test_of_a_fuse() -> None:
    """The test asked for cannot be made; control power is not told missing."""
    message = read("no low voltage fuse here", Context(asked=("fuse_ohms", None)))

    assert "cannot" in message.asks
    assert message.facts == ()


@pytest.mark.parametrize(
    "text", ["pri\x01 118\x07 sec \x1b[31m0", "\x1b[1mpri 118 \x1b[0msec 0", "pri 118 sec \x1b]0;title 99\x070"]
)
def test_what_colours_a_terminal_is_no_number(text: str) -> None:
    """The sequences are read over as a whole."""
    assert [(r.measure, r.value) for r in read(text).readings] == [("primary_volts", 118.0), ("secondary_volts", 0.0)]


@pytest.mark.parametrize(("text", "told"), [("pri nan V sec 24.6", "pri nan V"), ("pri ?? ohms", "pri ?? ohms")])
def test_a_place_and_a_unit_without_a_number_are_told(text: str, told: str) -> None:
    """Nothing that a unit touched vanishes."""
    assert told in read(text).unread


def test_one_place_with_two_values_is_asked_about() -> None:
    """Not the last in silence."""
    message = read("pri 118 sec 0 sec 26")

    assert [(r.measure, r.value) for r in message.readings] == [("primary_volts", 118.0)]
    assert [r.value for r in message.unclear[0].readings] == [26.0, 0.0]


@pytest.mark.parametrize(
    ("text", "measure"),
    [
        ("I meant ohms not volts", "secondary_ohms"),
        ("that was with the load off", "secondary_volts_lifted"),
        ("that reading was unloaded", "secondary_volts_lifted"),
    ],
)
def test_the_last_reading_is_restated(text: str, measure: str) -> None:
    """In another unit, or in another state; the earlier one no longer stands."""
    message = read(text, Context(readings=(Reading(measure="secondary_volts", value=24.6),)))

    assert message.readings == (Reading(measure=measure, value=24.6),)
    assert message.withdrawn == ("secondary_volts",)
    assert message.asks == ("correct",)


@pytest.mark.parametrize(
    "text",
    ["is 40 enough", "is 75 too big", "how bout 50", "will be there in 20", "its a 40", "be back in 30", "is 27 ok", "24?"],
)
def test_a_number_in_talk_answers_no_test(text: str) -> None:
    """A bare number answers only where it is nearly the whole message."""
    assert read(text, ASKED_OHMS).readings == ()


@pytest.mark.parametrize("text", ["40", "its 40", "got 40", "reads 40", "meter says 40", "ok 40", "40 ohms", "i get 40 now"])
def test_a_number_nearly_alone_answers_the_test(text: str) -> None:
    """With the small words of an answer around it."""
    assert read(text, ASKED_OHMS).readings == (Reading(measure="primary_ohms", value=40.0),)


@pytest.mark.parametrize(
    ("text", "measure", "said", "likely"),
    [("pri 1.18 volts", "primary_volts", 1.18, 118.0), ("sec .24 v", "secondary_volts", 0.24, 24.0)],
)
def test_a_lost_point_is_asked_about_once(text: str, measure: str, said: float, likely: float) -> None:
    """The likely value is named, a yes takes it, and the same value said again counts as said."""
    first = read(text)

    assert first.readings == ()
    assert [(r.measure, r.value) for row in first.unclear for r in row.readings] == [(measure, likely)]
    context = Context(unclear=first.unclear)
    assert [(r.measure, r.value) for r in read(text, context).readings] == [(measure, said)]
    assert [(r.measure, r.value) for r in read("yes", context).readings] == [(measure, likely)]


@pytest.mark.parametrize(
    ("text", "likely"),
    [("120 supply, pri 181v sec 25.4v", 118.0), ("208 building. line 280v", None), ("240 supply pri 421v", 241.0)],
)
def test_digits_that_changed_places_are_asked_about(text: str, likely: float | None) -> None:
    """181 V on a 120 V supply is 118 V typed in haste; 280 V is a supply of its own, and is taken as said."""
    message = read(text)

    asked = [r.value for row in message.unclear for r in row.readings]
    assert asked == ([] if likely is None else [likely])
    assert (likely is None) == any(r.measure in {"primary_volts", "line_volts"} for r in message.readings)


@pytest.mark.parametrize("text", ["30 m of 18, gas valve .4 amp", "30 m de 18, cuanto pierdo"])
def test_metres_of_a_bare_gauge_are_a_run(text: str) -> None:
    """30 m is 98.4 ft (1 ft is 0.3048 m, NIST SP 811, appendix B.8) and no 30 megohms."""
    facts = {f.fact: f.value for f in read(text).facts}

    assert facts["run_feet"] == pytest.approx(98.425, abs=0.001)
    assert facts["wire_awg"] == 18.0


def test_a_part_of_another_trade_is_no_rating() -> None:
    """Nothing of "3 flux capacitors 9va" hangs on 24 V: it is said back, and is never the size of the transformer."""
    message = read("3 flux capacitors 9va, size")

    assert message.facts == ()
    assert message.unread
