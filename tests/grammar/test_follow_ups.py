"""What only the job tells: bare values, the part in hand, the tap in use, places named by what stands there, and questions that lean on what was said."""

import pytest

from core.readings import Fact, Reading
from grammar import Context, read

DEAD = Context(
    said_before=("pri 120 sec 0",),
    finding="secondary_open",
    transformer="bad",
    readings=(Reading(measure="primary_volts", value=120.0), Reading(measure="secondary_volts", value=0.0)),
)
FUSE = Context(
    said_before=("3 amp fuse on the board is blown",),
    finding="protection_open",
    transformer="good",
    asked=("load_ohms", None),
    readings=(Reading(measure="secondary_volts", value=26.4), Reading(measure="control_volts", value=0.0)),
)
TAP = Context(
    said_before=("240 building, 208 tap, sec 31",),
    finding="wrong_tap",
    transformer="good",
    facts=(Fact(fact="supply_volts", value=240.0, unit="V"), Fact(fact="tap_volts", value=208.0, unit="V")),
    readings=(Reading(measure="secondary_volts", value=31.0),),
)
LINE = Context(
    said_before=("disconnect 0", "breaker was tripped"),
    finding="no_supply",
    transformer="good",
    asked=("primary_ohms", None),
    readings=(Reading(measure="line_volts", value=0.0),),
)
RUNS = Context(
    said_before=("sec 26.5 r-c 26.2",),
    finding="healthy",
    transformer="good",
    asked=("coil_volts", None),
    readings=(Reading(measure="secondary_volts", value=26.5), Reading(measure="control_volts", value=26.2)),
)


@pytest.mark.parametrize(
    ("text", "context", "measure", "value"),
    [
        ("new one in, 26.8", DEAD, "secondary_volts", 26.8), ("got it in, 27.1", DEAD, "secondary_volts", 27.1), ("ya puse el nuevo, 27", DEAD, "secondary_volts", 27.0), ("new one's in 27", DEAD, "secondary_volts", 27.0),
        ("moved it to the red, now 26.2", TAP, "secondary_volts", 26.2), ("ya lo pasé a la roja, ahora 26.1", TAP, "secondary_volts", 26.1), ("cambié a la de 240 y ahora da 27", TAP, "secondary_volts", 27.0),
        ("reset it, 239", LINE, "line_volts", 239.0), ("lo subí, 238", LINE, "line_volts", 238.0), ("0 at contactor", RUNS, "coil_volts", 0.0), ("y 0 en el contactor", RUNS, "coil_volts", 0.0),
        ("board 0", DEAD.__class__(said_before=("sec 26",), readings=(Reading(measure="secondary_volts", value=26.0),)), "control_volts", 0.0), ("red to common 22", FUSE, "load_ohms", 22.0),
    ],
)  # fmt: skip
def test_a_value_finds_the_place_that_the_job_has_for_it(text: str, context: Context, measure: str, value: float) -> None:
    """Where what was put right came back, where it was dead, or where the words point."""
    message = read(text, context)

    assert [(r.measure, r.value) for r in message.readings] == [(measure, value)]
    assert message.unread == ()


@pytest.mark.parametrize(
    ("text", "context", "right"),
    [
        ("got it in, 27.1", DEAD, "transformer"), ("ok swapped it, holds now", DEAD, "transformer"), ("put a new one in, 26 at r-c", FUSE, "fuse"), ("le puse otro", FUSE, "fuse"),
        ("moved it to 240, sec 27.1", TAP, "tap"), ("lo puse en 240", TAP, "tap"), ("reset it, 239", LINE, "supply"), ("found it, yellow rubbed through, fixed it", FUSE, "short"),
    ],
)  # fmt: skip
def test_the_part_put_right_is_the_one_in_hand(text: str, context: Context, right: str) -> None:
    """Named by what was found and said before."""
    message = read(text, context)

    assert right in (*message.renewed, "transformer" if message.repaired else "")


@pytest.mark.parametrize("text", ["put a new one in and it popped again", "le puse otro y tronó otra vez", "it blew again"])
def test_a_new_fuse_that_opens_puts_nothing_right(text: str) -> None:
    """It is a sign of the short."""
    message = read(text, FUSE)

    assert message.renewed == ()
    assert [f.value for f in message.facts] == ["blows_fuse"]


@pytest.mark.parametrize(
    ("text", "context", "ask"),
    [
        ("so replace it?", DEAD, "next"), ("lo cambio?", DEAD, "next"), ("is it toast", DEAD, "next"), ("entonces está malo?", DEAD, "next"), ("what's wrong with it", DEAD, "next"), ("what killed it", DEAD, "why"), ("y qué lo quemó", DEAD, "why"),
        ("which is the right one", TAP, "tap"), ("cuál es el correcto", TAP, "tap"), ("cuál le toca", TAP, "tap"), ("so transformer ok?", RUNS, "next"), ("need a new one?", DEAD, "next"), ("c wire?", FUSE, "next"),
    ],
)  # fmt: skip
def test_a_question_that_leans_on_the_job_is_one_of_the_records(text: str, context: Context, ask: str) -> None:
    """It is no new job and no shrug."""
    message = read(text, context)

    assert message.asks == (ask,)
    assert message.unread == ()


@pytest.mark.parametrize(
    ("text", "turn"),
    [
        ("thx", "thanks"),
        ("gracias", "thanks"),
        ("heat running", "runs"),
        ("ya jala", "runs"),
        ("stat came on, all good", "runs"),
    ],
)
def test_a_word_at_the_end_of_a_call_is_heard(text: str, turn: str) -> None:
    """And asks for nothing."""
    message = read(text, RUNS)

    assert (message.turn, message.asks) == (turn, ())


@pytest.mark.parametrize("text", ["moved it to 240", "new one in, 26.8", "0 at contactor", "same", "popped again"])
def test_without_a_job_none_of_it_is_guessed(text: str) -> None:
    """A single message has nothing to lean on."""
    message = read(text)

    assert message.readings == ()
    assert message.turn is None


@pytest.mark.parametrize(
    ("text", "fact", "value"),
    [("there's a 3 amp on the board", "fuse_amps", 3.0), ("208 here", "supply_volts", 208.0), ("aquí hay 208", "supply_volts", 208.0), ("es de 40", "rated_va", 40.0), ("fusible nuevo de 3", "fuse_amps", 3.0)],
)  # fmt: skip
def test_what_is_told_in_passing_is_no_reading(text: str, fact: str, value: float) -> None:
    """Whatever test was asked for."""
    message = read(text, FUSE)

    assert message.readings == ()
    assert [(f.fact, f.value) for f in message.facts if f.fact != "symptom"] == [(fact, value)]


def test_spanish_goes_on_over_shorthand() -> None:
    """English abbreviations are written in both, and change no language in the middle of a job."""
    assert read("sec 25", Context(said_before=("el trafo zumba",), language="es")).language is None
    assert read("el contactor vibra").language == "es"
