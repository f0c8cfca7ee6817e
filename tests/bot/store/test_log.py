"""The log only grows."""

import pytest
from sqlalchemy.exc import IntegrityError
from sqlalchemy.orm import Session
from store_people import NOW, a_job, someone, wrote

from bot.store import log


def test_messages_come_back_in_order_with_their_replies(session: Session) -> None:
    """What was written is read, numbered from 1."""
    who = someone(session)
    job = a_job(session, who)
    for place, text in enumerate(("pri 118V", "sec 0V")):
        wrote(session, who, job, text, f"m{place}")

    read = [(m.number, m.text, m.written_by, m.sent_at, r.record["reply"]) for m, r in log.read(session, job) if r]

    assert read == [(1, "pri 118V", "t1", NOW, "read: pri 118V"), (2, "sec 0V", "t1", NOW, "read: sec 0V")]
    assert job.turns == 2


def test_the_log_can_be_read_from_a_number_on(session: Session) -> None:
    """Only what is new is read again."""
    who = someone(session)
    job = a_job(session, who)
    for place in range(5):
        wrote(session, who, job, f"text {place}", f"m{place}")

    assert [message.number for message, _ in log.read(session, job, after=3)] == [4, 5]


def test_an_edit_is_a_row_of_its_own(session: Session) -> None:
    """The first text stays; the latest is the edit."""
    who = someone(session)
    job = a_job(session, who)
    wrote(session, who, job, "pri 11V", "m1")
    edit = wrote(session, who, job, "pri 118V", "m1", revision=1)

    assert log.latest(session, who, "m1") is edit
    assert [message.text for message, _ in log.read(session, job)] == ["pri 11V", "pri 118V"]


def test_one_message_can_t_be_logged_twice(session: Session) -> None:
    """Two programs that receive the same message at once can't both log it."""
    who = someone(session)
    job = a_job(session, who)
    wrote(session, who, job, "pri 118V", "m1")

    with pytest.raises(IntegrityError):
        wrote(session, who, job, "pri 118V", "m1")


def test_ids_of_two_technicians_may_be_the_same(session: Session) -> None:
    """Each channel counts for itself."""
    first, second = someone(session, "t1"), someone(session, "t2")
    job, other = a_job(session, first), a_job(session, second)
    wrote(session, first, job, "pri 118V", "1")
    wrote(session, second, other, "sec 24V", "1")

    assert [log.latest(session, who, "1").text for who in (first, second)] == ["pri 118V", "sec 24V"]


def test_texts_of_the_world_come_back_whole(session: Session) -> None:
    """Emoji, right-to-left, another alphabet, quotes and line ends."""
    who = someone(session)
    job = a_job(session, who)
    text = "⚡ 118 В\nמתח 24\t'; DROP TABLE job; --\u200f \x1b[31m"
    wrote(session, who, job, text, "m1")
    session.expire_all()

    assert [message.text for message, _ in log.read(session, job)] == [text]
