"""What is said to the record: names of jobs beside readings, what is to be forgotten, and that the unit was repaired."""

import pytest

from grammar import read

PRIMARY_AND_SECONDARY = {"primary_volts": 118.0, "secondary_volts": 0.0}


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("new job rtu 3 library pri 118 sec 0", "rtu 3 library"), ("new job rtu 3: pri 118 sec 0", "rtu 3"), ("new job rtu 4, pri 118V sec 0V", "rtu 4"),
        ("trabajo nuevo azotea 3, pri 118 sec 0", "azotea 3"), ("back to rtu 3 pri 118 sec 0", "rtu 3"), ("new job the annex, pri 118 V, sec 0 V", "the annex"),
    ],
)  # fmt: skip
def test_a_job_is_named_and_begun_in_one_message(text: str, name: str) -> None:
    """The name ends where something is told."""
    message = read(text)

    assert (message.name or "").removeprefix("the ") == name.removeprefix("the ")
    assert {r.measure: r.value for r in message.readings} == PRIMARY_AND_SECONDARY
    assert (message.unread, message.unclear) == ((), ())


def test_a_supply_behind_a_name_is_the_supply() -> None:
    """And no number of a unit."""
    message = read("new job rtu 3 library 208 building, on the 240 tap")

    assert message.name == "rtu 3 library"
    assert {f.fact: f.value for f in message.facts} == {"supply_volts": 208.0, "tap_volts": 240.0}


@pytest.mark.parametrize(
    "name", ["primary school", "boiler room, school", "1200 main st unit 4", "line 2 office", "rtu 3 library"]
)
def test_words_of_ours_can_be_a_name(name: str) -> None:
    """Nothing is told by a name alone."""
    message = read(f"new job {name}")

    assert (message.name, message.readings, message.facts) == (name, (), ())


@pytest.mark.parametrize(
    ("text", "ask", "name"),
    [
        ("close rtu 3, replaced it", "close_job", "rtu 3"), ("close library", "close_job", "library"), ("cierra azotea 3", "close_job", "azotea 3"),
        ("done with rtu 3", "close_job", "rtu 3"), ("rtu 3 done, replaced 50 va", "close_job", "rtu 3"), ("report on rtu 3 library please", "report", "rtu 3 library"),
        ("report", "report", None), ("report please", "report", None), ("done, replaced, 50 va", "close_job", None), ("delete job rtu 3", "forget", "rtu 3"),
    ],
)  # fmt: skip
def test_a_job_is_spoken_of_by_name(text: str, ask: str, name: str | None) -> None:
    """Closing, reporting and forgetting take a name."""
    message = read(text)

    assert (message.asks, message.name) == ((ask,), name)


@pytest.mark.parametrize("text", ["close the disconnect", "close enough", "close call", "contactor closes, coil 24 V"])
def test_not_everything_that_closes_is_a_job(text: str) -> None:
    """A switch is closed too."""
    assert "close_job" not in read(text).asks


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("forget everything", "all"), ("delete all my data", "all"), ("wipe", "all"), ("borra todo", "all"), ("delete all my jobs", "all"),
        ("forget this job", "job"), ("scrap this job", "job"), ("borra este trabajo", "job"), ("forget everything about this house", "job"), ("delete job rtu 3", "job"), ("forget rtu 3", "job"), ("olvida rtu 3", "job"),
        ("clear the readings", "readings"), ("start the readings over", "readings"), ("borra las lecturas", "readings"), ("clear all the readings", "readings"),
    ],
)  # fmt: skip
def test_what_is_to_be_forgotten_is_told_apart(text: str, what: str) -> None:
    """Everything, this job, or only its readings."""
    message = read(text)

    assert (message.asks, message.forgets) == (("forget",), what)


@pytest.mark.parametrize(
    "text",
    [
        "replaced, 50 va, 208 tap, 2 a fuse", "done, replaced, 50 va, 208 tap, 2 a fuse", "swapped the transformer", "new one is in", "new transformer installed, sec 26.8",
        "done, moved to the 208 tap", "cambiado, 50 va", "reemplace el transformador", "close rtu 3, cleared the short",
    ],
)  # fmt: skip
def test_a_repair_is_heard(text: str) -> None:
    """What is read from here on is of another circuit."""
    assert read(text).repaired


@pytest.mark.parametrize(
    "text",
    [
        "replaced the transformer last week and it is dead again", "replaced the fuse", "should i replace it?", "not replaced yet", "pri 118 sec 0", "done",
        "changed meter batteries, sec 24.1", "new job", "moved the red lead, white-black 20 ohms", "somebody replaced it before, sec 0",
    ],
)  # fmt: skip
def test_what_was_done_before_or_to_something_else_is_no_repair(text: str) -> None:
    """The readings stay those of the unit as it is."""
    assert not read(text).repaired


@pytest.mark.parametrize("text", ["done?", "all done?", "ya quedo?"])
def test_a_question_closes_nothing(text: str) -> None:
    """It asks what is missing."""
    assert read(text).asks == ("next",)


@pytest.mark.parametrize("text", ["new one blew too", "3a fuse on board keeps blowing, new one popped"])
def test_a_new_part_is_no_new_job(text: str) -> None:
    """Something is told of it."""
    assert "new_job" not in read(text).asks


@pytest.mark.parametrize("text", ["replaced it, sec 26v r-c 25.5v", "replaced, sec 26v", "swapped it. sec 26v"])
def test_a_repair_is_heard_with_its_proof(text: str) -> None:
    """The readings behind it are of the new part."""
    message = read(text)

    assert message.repaired
    assert message.readings


def test_a_name_does_not_hide_the_language() -> None:
    """The words that ask for the job count too."""
    assert read("trabajo nuevo azotea 3, pri 118 sec 0").language == "es"


@pytest.mark.parametrize("text", ["new 40va in", "new 50 va in, sec 26", "put a new 75va in, sec 25.5"])
def test_a_new_one_called_by_its_size_is_a_repair(text: str) -> None:
    """The transformer is named by its power."""
    assert read(text).repaired


@pytest.mark.parametrize("text", ["need a new 40va in here", "new 40va in the truck", "a new 50va in stock", "40va in"])
def test_a_new_one_that_is_not_in_yet_is_none(text: str) -> None:
    """A plan, or a part that lies somewhere."""
    assert not read(text).repaired


@pytest.mark.parametrize("text", ["pri 118, disconnect closed", "sec 24 door closed", "contactor stays closed"])
def test_a_closed_part_closes_no_job(text: str) -> None:
    """What is closed is named right before it."""
    assert "close_job" not in read(text).asks


@pytest.mark.parametrize(
    "text",
    [
        "Fiberglass 6 footer, going up to the roof unit to read 208 on the line",
        "480 volts shop unit, 478 on the line",
        "dale un toque al timbre y bajo",
    ],
)
def test_running_talk_asks_for_no_job(text: str) -> None:
    """Words like "unit" in it name none."""
    message = read(text)

    assert message.name is None
    assert not {"history", "resume_job", "new_job", "list_jobs"} & set(message.asks)


@pytest.mark.parametrize(
    ("text", "name", "measure", "value"),
    [
        ("back to rtu 3, sec 24", "rtu 3", "secondary_volts", 24.0),
        ("new job annex, sec 24.5", "annex", "secondary_volts", 24.5),
        ("new job rtu 4, pri 118", "rtu 4", "primary_volts", 118.0),
    ],
)
def test_a_single_value_behind_a_name_counts(text: str, name: str, measure: str, value: float) -> None:
    """It is read once the name is known."""
    message = read(text)

    assert message.name == name
    assert [(r.measure, r.value) for r in message.readings] == [(measure, value)]


@pytest.mark.parametrize(
    ("text", "measure", "value"),
    [
        ("going back to the unit, sec 24", "secondary_volts", 24.0),
        ("switch to ohms, sec 0.6", "secondary_ohms", 0.6),
        ("regreso al techo, sec 24.5", "secondary_volts", 24.5),
        ("switch to cool, R-C 26", "control_volts", 26.0),
        ("back to the unit, R-C 25", "control_volts", 25.0),
    ],
)
def test_going_somewhere_calls_no_job(text: str, measure: str, value: float) -> None:
    """What is read there counts for the job that is open."""
    message = read(text)

    assert "resume_job" not in message.asks
    assert message.name is None
    assert [(r.measure, r.value) for r in message.readings] == [(measure, value)]
