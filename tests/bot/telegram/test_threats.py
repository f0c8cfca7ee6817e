"""Each threat that DEVELOPERS.md lists has its test."""

import re
from pathlib import Path

import pytest

HERE = Path(__file__).parent


def named() -> list[str]:
    """The tests that the list of threats names."""
    page = (HERE.parents[2] / "DEVELOPERS.md").read_text(encoding="utf-8")
    found = re.search(r"^## Threats\n(.*?)(?=^## |\Z)", page, re.MULTILINE | re.DOTALL)
    return re.findall(r"`(test_\w+)`", found[1]) if found else []


def test_the_list_of_threats_is_there() -> None:
    """It stands in DEVELOPERS.md and names tests."""
    assert len(named()) > 20


@pytest.mark.parametrize("name", named())
def test_a_threat_has_its_test(name: str) -> None:
    """A test of that name is in this folder."""
    assert any(f"def {name}(" in file.read_text(encoding="utf-8") for file in HERE.glob("test_*.py"))
