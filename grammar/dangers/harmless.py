"""Signs of a fault that are none: the smoke of a brisket is none of a transformer."""

from collections.abc import Iterable
from typing import Final

from grammar.dangers.phrases import tokens
from grammar.dangers.read import sensible
from grammar.dangers.scenes import OUT

_SPELT: Final = {
    "smoke": ("smok", "humo", "humea", "humi", "ahum"),
    "burnt": ("burn", "toast", "crisp", "quem", "tost"),
}
"""Symptoms that people speak of beside the work, by the beginnings of their words."""


def harmless(text: str, symptoms: Iterable[object]) -> set[str]:
    """
    The symptoms whose words stand in a text in a harmless sense alone.

    Args:
        text: As it was sent.
        symptoms: Those that were heard in it.

    >>> harmless("smoked brisket for lunch, sec 25.9", ["smoke"])
    {'smoke'}
    >>> harmless("smoked brisket for lunch, now the board smokes", ["smoke"])
    set()
    """
    heard = [name for name in symptoms if isinstance(name, str) and name in _SPELT]
    if not heard:
        return set()
    told = tuple(zip(tokens(text), sensible(text).words, strict=True))
    return {name for name in heard if _is_masked([left for word, left in told if word.startswith(_SPELT[name])])}


def _is_masked(words: list[str]) -> bool:
    return bool(words) and all(word == OUT for word in words)
