"""The developers' table of dangers is the table of the code."""

import re
from pathlib import Path

from core.dangers import DANGERS, table_rows

DEVELOPERS = Path(__file__).parents[2] / "DEVELOPERS.md"


def section(title: str) -> str:
    """The text under one heading."""
    return re.split(
        r"^## ", DEVELOPERS.read_text(encoding="utf-8").split(f"## {title}\n", 1)[1], maxsplit=1, flags=re.MULTILINE
    )[0]


def test_developers_md_names_every_danger() -> None:
    """The rows are those of the code, in the order in which they are answered: name, answer, trigger, source."""
    written = re.findall(r"^\| (`\w+`) \| (\w+) \| (.+) \| (.+) \|$", section("Dangers"), re.MULTILINE)

    assert tuple(written) == table_rows()


def test_the_table_has_every_danger_once() -> None:
    """One row each."""
    assert [row[0].strip("`") for row in table_rows()] == list(DANGERS)


def test_they_stand_in_the_order_of_their_answers() -> None:
    """Stop, no, refer, caution: the worst first."""
    kinds = [row[1] for row in table_rows()]

    assert kinds == sorted(kinds, key=("stop", "no", "refer", "caution").index)
