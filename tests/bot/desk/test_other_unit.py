"""Two units at once: a message that names one is never filed under the other in silence."""

import pytest
from desk_people import Office


@pytest.mark.parametrize(
    ("a", "b", "text"), [("unit a", "unit b", "on unit a fuse OL"), ("rtu 2 mall", "rtu 1 mall", "rtu 2 sec 24v")]
)
def test_a_message_that_names_another_open_unit_goes_there(office: Office, a: str, b: str, text: str) -> None:
    """And the reply says so; what comes then is of that unit too."""
    first = office.hear(f"new job {a}")
    office.says("208 building, pri 207v", f"new job {b}", "120 building, pri 118v sec 0v")

    taken = office.hear(text)

    assert taken.job_id == first.job_id
    assert taken.text.splitlines()[0] == f"Now on {a}. Other unit: back to {b}"
    assert office.hear("R-C 0v").job_id == first.job_id
    assert office.says(f"back to {b}").splitlines()[0] == f"Back on {b}"


def test_a_unit_that_no_job_has_is_said_so(office: Office) -> None:
    """The readings may be of the unit in hand, or not: the technician decides."""
    first = office.hear("new job rtu 1 mall")
    office.says("120 building, pri 118v sec 0v")

    taken = office.hear("rtu 2 sec 24v")

    assert taken.job_id == first.job_id
    assert taken.text.splitlines()[0] == "Filed with rtu 1 mall. Another unit? undo, then: new job rtu 2"


def test_a_job_without_a_name_takes_that_of_its_unit(office: Office) -> None:
    """Nobody has to fill anything in."""
    taken = office.hear("rtu 3 pri 118v sec 0v")

    assert taken.text.splitlines()[0] == "Job: rtu 3"
    assert "rtu 3" in office.says("my jobs")


@pytest.mark.parametrize(
    "text", ["rtu 1 sec 24v", "sec 24v", "the unit a fuse blew, fuse OL", "24v at the unit 2 contactors 9 va"]
)
def test_the_unit_in_hand_and_no_unit_are_nothing_to_speak_of(office: Office, text: str) -> None:
    """Most messages name none."""
    first = office.hear("new job rtu 1 mall")
    taken = office.hear(text)

    assert taken.job_id == first.job_id
    assert not taken.text.startswith("Now on")
