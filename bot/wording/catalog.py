"""Sentences in the technician's language: gettext catalogues, one a part of the house, looked up by the English sentence."""

import gettext
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from core.said import Said

LOCALE = Path(__file__).parent / "locale"
DOMAINS = ("diagnosis", "leads", "sizing", "safety", "record", "talk", "telegram", "words", "report")
"""One catalogue each. `words` has the single words that stand in places: colours, devices, units."""
LANGUAGES = ("en", "es")


@dataclass(frozen=True, slots=True)
class Catalog:
    """One language."""

    language: str
    lookup: Callable[[str], str]

    def tell(self, said: Said) -> str:
        """The sentence in this language, its values set in; values that are sentences or words are translated too."""
        return self.lookup(said.template).format(**{name: self._value(value) for name, value in said.values})

    def _value(self, value: object) -> object:
        if isinstance(value, Said):
            return self.tell(value)
        if isinstance(value, str) and value:  # gettext answers the empty string with the catalogue's head
            return self.lookup(value)
        return value


@cache
def catalog(language: str) -> Catalog:
    """The catalogue of a language; English where there is none."""
    if language not in LANGUAGES or language == "en":
        return Catalog("en", lambda text: text)
    chain = gettext.NullTranslations()
    for domain in DOMAINS:
        chain.add_fallback(gettext.translation(domain, LOCALE, languages=[language], fallback=True))
    return Catalog(language, chain.gettext)
