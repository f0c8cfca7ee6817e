"""What comes after the word that the unit was repaired: its proof, its report, and the next unit."""

from datetime import UTC, timedelta

import pytest
from desk_people import Office
from sqlalchemy import select
from sqlalchemy.orm import Session

from bot.desk import document_for, in_hand
from bot.desk.documents import report
from bot.store.tables import Job, Technician

FOUND = ("new job rtu 3", "120 building, pri 118V sec 0V", "pri ohms open", "R-C ohms 21")


def outcome(office: Office, name: str = "rtu 3") -> tuple[str | None, bool, str | None]:
    """What was done on a job, whether it is closed, and its finding."""
    with Session(office.engine) as session:
        job = session.scalars(select(Job).where(Job.name == name)).one()
        return job.outcome, job.closed_at is not None, job.finding


def text_of(office: Office, job_id: int) -> str:
    """The report of a job as text."""
    with Session(office.engine) as session:
        return report(session, session.get_one(Job, job_id), "text", UTC, "en").body.decode()


@pytest.mark.parametrize("words", ["done, replaced, 50 va, 120 tap, 2 a fuse", "replaced, 50 va, 120 tap, 2 a fuse"])
def test_what_was_done_closes_the_job_and_what_is_read_then_proves_it(office: Office, words: str) -> None:
    """The proof stands in the report of the job that was closed, and no job is opened for it."""
    office.says(*FOUND)
    closed = office.hear(words)
    proved = [office.hear(text) for text in ("sec 26.4 unloaded", "pri 119 sec 25.3", "R-C 25.1")]
    page = text_of(office, closed.job_id)

    assert closed.text.splitlines()[0] == "Closed: rtu 3"
    assert {taken.job_id for taken in proved} == {closed.job_id}
    assert proved[0].text.splitlines()[0] == "Proof of rtu 3. Another unit? undo, then: new job"
    assert "Pass, Secondary, one lead off: 26.4 V" in proved[0].text
    assert outcome(office) == ("replaced, 50 va, 120 tap, 2 a fuse", True, "primary_open")
    after = page.split("PROOF AFTER THE REPAIR")[1]
    assert all(value in after for value in ("26.4 V", "25.3 V", "25.1 V"))
    assert "The primary is open" in page


def test_a_proof_that_fails_says_so(office: Office) -> None:
    """A new transformer on a wrong tap shows before the van is packed."""
    office.says(*FOUND, "done, replaced, 50 va, 240 tap")

    said = office.says("pri 119 sec 12.4 V")
    asked = office.says("sec 12.3")

    assert "FAIL" in said
    assert "12.4 V" in said
    assert asked.splitlines()[0] == "Proof of rtu 3. Another unit? undo, then: new job"


@pytest.mark.parametrize("text", ["pri 240 sec 0", "pri ohms 5.2", "pri 118V", "208 building, sec 24", "white-black 20 ohms"])
def test_readings_of_another_unit_open_a_job_of_their_own(office: Office, text: str) -> None:
    """Another supply, a dead test or no secondary is no proof."""
    office.says(*FOUND)
    closed = office.hear("done, replaced, 50 va")

    assert office.hear(text).job_id != closed.job_id


def test_readings_hours_later_are_of_another_unit(office: Office) -> None:
    """Nobody proves a repair from the next roof."""
    office.says(*FOUND)
    closed = office.hear("done, replaced, 50 va")
    office.now += timedelta(hours=2)

    assert office.hear("sec 26.4 unloaded").job_id != closed.job_id


def test_a_reading_taken_for_a_proof_is_taken_back_and_the_next_job_begins(office: Office) -> None:
    """As the reply says."""
    office.says(*FOUND)
    closed = office.hear("done, replaced, 50 va")
    office.says("pri 118 sec 0", "undo")
    begun = office.hear("new job rtu 4, pri 118 sec 0")

    assert begun.job_id != closed.job_id
    assert begun.record["verdict"]["transformer"] == "bad"
    proof = text_of(office, closed.job_id).split("PROOF AFTER THE REPAIR")[1]
    assert proof.count("taken back") == 2
    assert "WHAT THE PROOF SAYS" not in proof


def test_the_report_after_the_last_word_is_that_of_the_job_just_closed(office: Office) -> None:
    """Done, then report: no empty job in between."""
    office.says(*FOUND)
    closed = office.hear("done, replaced, 50 va")
    asked = office.hear("report")
    with Session(office.engine) as session:
        paper = document_for(session, asked, UTC)

    assert asked.job_id == closed.job_id
    assert asked.text == "Report of rtu 3, one page"
    assert paper is not None
    assert paper.name == "rtu-3.pdf"


def test_a_report_is_of_the_job_that_is_named(office: Office) -> None:
    """And the present one stays the present one."""
    first = office.hear("new job rtu 3, pri 118 sec 0")
    second = office.hear("new job rtu 4, pri 240 sec 24")

    assert office.hear("report rtu 3").job_id == first.job_id
    assert office.hear("R-C 24").job_id == second.job_id
    assert office.says("report rtu 9").splitlines()[0] == "No job is called rtu 9"


def test_a_job_is_closed_by_its_name(office: Office) -> None:
    """Not the one in hand; and a name that no job has closes none."""
    office.says("new job rtu 3, pri 118 sec 0", "new job rtu 4, pri 240 sec 24")
    unknown = office.says("close rtu 9")
    said = office.says("close rtu 3, replaced it")

    assert unknown.splitlines()[0] == "No job is called rtu 9"
    assert said.splitlines()[:2] == ["Closed: rtu 3", "Done: replaced it"]
    assert not outcome(office, "rtu 4")[1]


def test_undo_opens_the_job_again(office: Office) -> None:
    """Done was said too early."""
    office.says(*FOUND, "done")

    assert office.says("undo").splitlines()[0] == "Open again: rtu 3"
    assert outcome(office)[1] is False
    assert office.hear("R-C ohms 22").record["verdict"]["finding"] == "primary_open"


def test_a_repaired_unit_that_fails_again_is_diagnosed_by_its_own_readings(office: Office) -> None:
    """What the old transformer read says nothing of the new one."""
    office.says(*FOUND, "done, replaced, 50 va")
    office.now += timedelta(days=40)
    office.says("back to rtu 3")

    verdict = office.hear("pri 118 sec 26.4, R-C 0, fuse open").record["verdict"]

    assert (verdict["finding"], verdict["transformer"]) == ("protection_open", "good")


def test_what_was_done_before_the_call_closes_nothing(office: Office) -> None:
    """It is what the customer told."""
    office.says("new job rtu 3")

    office.says("replaced the transformer last week and it is dead again", "pri 118 sec 0")

    assert outcome(office)[1] is False


def test_what_came_with_readings_is_noted_and_the_job_stays_open(office: Office) -> None:
    """The technician is still at it."""
    office.says(*FOUND)
    said = office.says("swapped it, 50 va, now sec 26.4 unloaded")

    assert "Pass, Secondary, one lead off: 26.4 V" in said
    assert outcome(office) == ("swapped it, 50 va, now sec 26.4 unloaded", False, "primary_open")


def test_a_photo_after_the_last_word_goes_with_the_job_just_closed(office: Office) -> None:
    """It shows the new part."""
    office.says(*FOUND)
    closed = office.hear("done, replaced, 50 va")
    with Session(office.engine) as session:
        who = session.scalars(select(Technician)).one()
        soon, late = (in_hand(session, who, office.now + timedelta(minutes=minutes)) for minutes in (5, 90))

        assert soon is not None
        assert (soon.id, late) == (closed.job_id, None)


def test_undo_after_the_last_word_takes_that_word_back_and_no_reading(office: Office) -> None:
    """Also where the repair was told before it, with readings."""
    office.says(*FOUND, "replaced it, sec 26.4 unloaded", "R-C 25 V")
    closed = office.says("done")
    undone = office.says("undo")

    assert closed.splitlines()[1] == "Done: replaced it, sec 26.4 unloaded"
    assert undone.splitlines()[0] == "Open again: rtu 3"
    assert "Taken back" not in undone
    assert "25 V" in office.says("history")


def test_a_new_fuse_begins_the_proof_and_the_finding_stays(office: Office) -> None:
    """What was found stands in the row and in the report; what is read then proves the repair."""
    office.says("new job rtu 3", "120 building, pri 119v sec 26v r-c 0v fuse OL", "load ohms 0.3")
    proof = office.hear("new 3 amp fuse in, R to C 24.6 V")
    office.says("done, fixed the y wire")
    page = text_of(office, proof.job_id)

    assert "Pass, R to C" in proof.text
    assert outcome(office)[2] == "protection_open"
    assert "The low-voltage fuse or breaker is open" in page
    assert "24.6 V" in page.split("PROOF AFTER THE REPAIR")[1]


def test_a_new_fuse_that_opens_again_goes_on_with_the_search(office: Office) -> None:
    """It was part of the diagnosis."""
    office.says("new job rtu 3", "120 building, pri 119v sec 26v r-c 0v fuse OL", "new fuse in, it blew again")

    assert office.hear("R-C ohms 0.3").record["verdict"]["also"] == ["load_short"] or "short" in office.says("why").lower()


def test_a_question_closes_no_job(office: Office) -> None:
    """It is answered with what is missing."""
    office.says(*FOUND)

    assert "Closed" not in office.says("done?")
    assert outcome(office)[1] is False


def test_a_closed_job_is_forgotten_by_the_yes_that_follows(office: Office) -> None:
    """The question and its answer are of the same job."""
    office.says(*FOUND, "done, replaced, 50 va", "forget this job")

    assert office.says("yes") == "Deleted: rtu 3"
