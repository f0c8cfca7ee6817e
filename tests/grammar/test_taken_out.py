"""What an order takes out of what stands: the last message or several, a place, a value."""

import pytest

from core.readings import Reading
from grammar import Context, read

STANDS = Context(
    asked=("secondary_ohms", None),
    readings=(
        Reading(measure="primary_volts", value=118.0),
        Reading(measure="secondary_volts", value=24.6),
        Reading(measure="secondary_volts_lifted", value=27.0),
    ),
)


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("undo", None),
        ("undo that", None),
        ("undo the last two", 2),
        ("undo the last 3 readings", 3),
        ("undo both", 2),
        ("undo undo", 2),
        ("undo twice", 2),
        ("borra las últimas dos", 2),
    ],
)
def test_more_than_one_message_is_taken_back(text: str, count: int | None) -> None:
    """As many as are told, and the number is no answer to the test just asked."""
    message = read(text, STANDS)

    assert message.asks == ("undo",)
    assert message.undoes == count
    assert message.readings == ()


@pytest.mark.parametrize(
    ("text", "measures"),
    [
        ("delete the primary reading", ("primary_volts",)),
        ("scratch the 24.6", ("secondary_volts",)),
        ("that 118 was wrong", ("primary_volts",)),
        ("remove the secondary volts", ("secondary_volts", "secondary_volts_lifted")),
        ("quita la lectura del primario", ("primary_volts",)),
        ("borra el secundario", ("secondary_volts", "secondary_volts_lifted")),
    ],
)
def test_a_place_or_a_value_is_taken_out(text: str, measures: tuple[str, ...]) -> None:
    """What stands of it, and nothing else."""
    message = read(text, STANDS)

    assert message.asks == ("undo",)
    assert message.withdrawn == measures
    assert message.readings == ()


def test_a_place_of_which_nothing_stands_takes_nothing_else_back() -> None:
    """The last message stays."""
    message = read("forget the fuse reading", STANDS)

    assert message.withdrawn == ("fuse_volts", "fuse_ohms")


def test_a_value_that_nobody_sent_is_told() -> None:
    """Nothing is taken back for it."""
    message = read("scratch the 99", STANDS)

    assert (message.asks, message.withdrawn, message.readings) == ((), (), ())
    assert message.unread == ("99",)
