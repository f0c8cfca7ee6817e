"""What was put right just now, told apart from plans, habits and the past of others."""

import pytest

from core.repairs import REPAIRS
from grammar import read
from grammar.words.repairs import PARTS


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("replaced fuse", "fuse"), ("new fuse in", "fuse"), ("put a new fuse in, R-C 26", "fuse"), ("fuse replaced, R-C 26", "fuse"), ("swapped the blown 3 amp fuse", "fuse"),
        ("puse un fusible nuevo", "fuse"), ("cambie el fusible", "fuse"), ("popped in a new 3a fuse", "fuse"), ("fuse was changed out, still 0 at R-C", "fuse"),
        ("fixed the short", "short"), ("found the short and cleared it. R-C 12 ohms", "short"), ("arregle el corto", "short"),
        ("replaced float switch", "wiring"), ("breaker reset, pri 120", "supply"), ("replaced line fuse", "supply"), ("moved it to the 208 tap, sec 25", "tap"),
    ],
)  # fmt: skip
def test_a_part_put_right_is_heard(text: str, what: str) -> None:
    """And its name is not told as unread."""
    message = read(text)

    assert message.renewed == (what,)
    assert "fuse" not in message.unread


@pytest.mark.parametrize(
    "text",
    [
        "needs a new fuse", "should i replace the fuse?", "replaced the fuse yesterday", "keeps blowing new fuses", "going to put a new fuse in", "i'll put a new fuse in",
        "before replacing the fuse", "customer reset the breaker", "breaker trips when i reset it", "fuse open", "fuse is good", "no short", "R-C short", "new fuse blew right away",
        "new transformer in, sec 26.5", "pri 118 sec 0", "on the 208 tap",
    ],
)  # fmt: skip
def test_what_is_planned_or_past_or_broken_is_no_repair(text: str) -> None:
    """The readings stay those of the circuit as it is."""
    assert read(text).renewed == ()


def test_every_part_is_one_that_core_knows() -> None:
    """The names of both tables are the same, but for the tap, which is told by its volts."""
    assert {*PARTS, "tap"} == set(REPAIRS)
