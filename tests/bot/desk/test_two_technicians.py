"""Two technicians on one store at the same time. 10,000 messages are `python -m tests.benchmarks.two_technicians`; here are enough for every act."""

from sqlalchemy import URL

from tests.benchmarks.two_technicians import storm

MESSAGES = 160


def test_two_who_write_at_once_see_nothing_of_each_other_but_what_was_handed_over(store_url: URL) -> None:
    """In threads of their own, jobs handed over and copied between them; every message is logged once, and each row is what its log comes to."""
    found = storm(store_url, MESSAGES, seed=7)

    assert found["messages"] >= MESSAGES
    assert found["codes taken"] >= 1
