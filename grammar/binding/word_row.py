"""The words of a message in a row, as turns of phrase look for them."""

from collections.abc import Sequence

from grammar.phrase import Phrase


def words_of(phrases: Sequence[Phrase]) -> tuple[list[str], list[int]]:
    """The folded words of the message with the phrase each is in; an empty word ends a sentence."""
    words: list[str] = []
    owners: list[int] = []
    for i, phrase in enumerate(phrases):
        if phrase.text == "\n" or (phrase.text and set(phrase.text) <= set(".!?;:")):
            words.append("")
            owners.append(i)
            continue
        text = phrase.text or phrase.meaning
        for word in ("xfmr" if phrase.kind == "transformer" and text in SHORT else text).split(" "):
            if word and word not in {",", "-", "–", "—", "/", "*", '"', "(", ")", "'", "’", "‘", "“", "”"}:
                words.append(word)
                owners.append(i)
    return words, owners


SHORT = frozenset({"trans", "tranny", "xformer", "xfrmr", "xfrm", "transf", "stepdown"})
"""Words for a transformer that turns of phrase know by another."""
