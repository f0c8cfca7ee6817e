"""Every rule that a reply can name has its source and its limits."""

import importlib
import pkgutil

import pytest

import core.standards
from core.standards.rule import Rule

RULES = {
    f"{module.name}.{name}": value
    for module in pkgutil.iter_modules(core.standards.__path__)
    for name, value in vars(importlib.import_module(f"core.standards.{module.name}")).items()
    if isinstance(value, Rule)
}


@pytest.mark.parametrize("rule", RULES.values(), ids=RULES)
def test_a_rule_names_its_source_and_its_limits(rule: Rule) -> None:
    """A title to look up or `common practice`, and where it stops."""
    title = str(rule.source)

    assert title
    assert rule.limits
    assert "common practice" in str(rule.says) or "," in title or any(c.isdigit() for c in title)


def test_a_code_that_is_named_in_the_reply_is_the_code_of_the_source() -> None:
    """The words "NEC 450.3(B)" come from a source titled NEC."""
    wrong = [name for name, rule in RULES.items() if "NEC" in str(rule.says) and "NEC" not in str(rule.source)]

    assert wrong == []
    assert len(RULES) >= 13
