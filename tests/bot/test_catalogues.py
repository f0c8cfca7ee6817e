"""Every sentence of the house stands in the Spanish catalogues, with the same places, and the compiled files are current."""

import io
import string
from gettext import GNUTranslations
from pathlib import Path

import pytest
from babel.messages.extract import extract_from_dir
from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po

from bot.wording.catalog import DOMAINS, LANGUAGES, LOCALE, catalog
from core.said import say

ROOT = Path(__file__).parents[2]
OTHERS = [language for language in LANGUAGES if language != "en"]


def sentences() -> set[str]:
    """Every literal handed to `say` in the three packages."""
    found = set()
    for package in ("core", "grammar", "bot"):
        rows = extract_from_dir(ROOT / package, [("**.py", "python")], keywords={"say": None}, comment_tags=())
        found |= {message for _, _, message, _, _ in rows if isinstance(message, str) and message}
    return found


def places(text: str) -> set[str]:
    """The names of the places in a template."""
    return {name for _, name, _, _ in string.Formatter().parse(text) if name}


def told(catalogue: GNUTranslations) -> dict[str, str]:
    """The sentences of a compiled catalogue, without its head: that holds the time of compiling."""
    return {english: said for english, said in catalogue._catalog.items() if english}


def po(language: str, domain: str):
    """One catalogue as text."""
    with (LOCALE / language / "LC_MESSAGES" / f"{domain}.po").open("rb") as file:
        return read_po(file, locale=language)


@pytest.mark.parametrize("language", OTHERS)
def test_no_sentence_is_left_in_english(language: str) -> None:
    """Each sentence has its translation."""
    known = {m.id for domain in DOMAINS for m in po(language, domain) if m.id and m.string and not m.fuzzy}

    assert sentences() - known == set()


@pytest.mark.parametrize("language", OTHERS)
@pytest.mark.parametrize("domain", DOMAINS)
def test_a_translation_has_the_places_of_its_sentence(language: str, domain: str) -> None:
    """No number gets lost on the way into another language."""
    wrong = [m.id for m in po(language, domain) if m.id and places(m.id) != places(m.string)]

    assert wrong == []


@pytest.mark.parametrize("language", OTHERS)
@pytest.mark.parametrize("domain", DOMAINS)
def test_the_compiled_catalogue_is_current(language: str, domain: str) -> None:
    """`pybabel compile` was run after the last change of the text."""
    fresh = io.BytesIO()
    write_mo(fresh, po(language, domain))
    fresh.seek(0)

    with (LOCALE / language / "LC_MESSAGES" / f"{domain}.mo").open("rb") as shipped:
        assert told(GNUTranslations(shipped)) == told(GNUTranslations(fresh))


def test_an_unknown_language_reads_english() -> None:
    """Nothing breaks where there is no catalogue."""
    assert catalog("xx").tell(say("Primary reads {volts} V", volts=118)) == "Primary reads 118 V"


@pytest.mark.parametrize("language", OTHERS)
def test_a_sentence_has_one_home(language: str) -> None:
    """No two catalogues say the same sentence, perhaps in other words."""
    homes: dict[str, list[str]] = {}
    for domain in DOMAINS:
        for message in po(language, domain):
            homes.setdefault(message.id or "", []).append(domain)

    assert {sentence: found for sentence, found in homes.items() if sentence and len(found) > 1} == {}


@pytest.mark.parametrize("language", OTHERS)
def test_a_catalogue_has_no_sentence_that_nothing_says(language: str) -> None:
    """Only the words that stand in places, which no `say` holds, are looked up by themselves."""
    said = sentences()
    left_over = {m.id for domain in DOMAINS if domain != "words" for m in po(language, domain) if m.id} - said

    assert left_over == set()
