"""One meaning with all the words for it, in every language: adding a word is adding one string."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Words:
    """One row of the vocabulary."""

    kind: str
    """What the word does in a sentence: the grammar's terminal, in lower case."""
    meaning: str
    """What it stands for; the name in core's vocabulary where there is one."""
    en: tuple[str, ...] = ()
    es: tuple[str, ...] = ()
    both: tuple[str, ...] = ()
    """Spellings that belong to no language: signs, abbreviations, words that both use."""


@dataclass(frozen=True, slots=True)
class Pattern:
    """Entries that are put together: one word or several of each part, in their order; an empty one is left out."""

    kind: str
    meaning: str
    parts: tuple[tuple[str, ...], ...]
    language: str | None = None


@dataclass(frozen=True, slots=True)
class Cue:
    """A turn of phrase, told by some of its words: `which|what .. tap` is "which", up to five other words, "tap"."""

    meaning: str
    en: tuple[str, ...] = ()
    es: tuple[str, ...] = ()
