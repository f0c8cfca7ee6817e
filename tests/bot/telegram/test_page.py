"""Text as the messenger takes it."""

import html
import re

from hypothesis import given
from hypothesis import strategies as st

from bot.channels.telegram.page import WIDEST, cut, pages, units
from bot.channels.telegram.replies import keyboard
from tests.bot.telegram.marks import plain
from tests.bot.telegram.marks import units as units_there

TEXTS = st.text(alphabet=st.sampled_from("ab <>&\"'\n\U0001f527Ω"), max_size=300)


@given(TEXTS)
def test_whatever_a_person_wrote_is_shown_as_written(text: str) -> None:
    """No mark of theirs becomes one of ours, whichever line is bold."""
    for bold in (None, *text.split("\n")):
        shown = "\n".join(plain(page, "HTML") for page in pages(text, bold))

        assert shown.strip() == text.strip() or not text.strip()


@given(st.lists(TEXTS, max_size=8).map("\n".join), st.integers(5, 40))
def test_parts_fit_and_hold_the_whole(text: str, widest: int) -> None:
    """Only spaces and ends of lines where it was cut may go."""
    parts = cut(text, widest)

    assert all(units(part) <= widest for part in parts)
    if text.strip():
        assert re.sub(r"\s", "", "".join(parts)) == re.sub(r"\s", "", text)


def test_parts_are_cut_at_lines() -> None:
    """No line is torn that fits."""
    lines = [f"line {number} " + "x" * 60 for number in range(200)]

    parts = cut("\n".join(lines))

    assert [line for part in parts for line in part.split("\n")] == lines
    assert all(units_there(html.unescape(part)) <= WIDEST for part in parts)


@given(st.text(max_size=50))
def test_lengths_are_counted_as_the_messenger_counts(text: str) -> None:
    """In units of UTF-16."""
    text = text.encode("utf-8", "ignore").decode()

    assert units(text) == units_there(text)


def test_buttons_stand_beside_each_other_only_where_they_are_read_whole() -> None:
    """A gloved thumb: long labels have a row of their own; what comes back is short."""
    rows = keyboard(["open", "under 1 ohm", "other", "R to C reads 20 ohms or more"], (2**62, 3))

    assert [[label for label, _ in row] for row in rows] == [
        ["open", "under 1 ohm"],
        ["other"],
        ["R to C reads 20 ohms or more"],
    ]
    assert all(len(data.encode()) <= 64 for row in rows for _, data in row)
