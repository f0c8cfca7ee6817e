"""How words are compared: lower case, no accents, no apostrophes."""

import unicodedata
from functools import lru_cache


@lru_cache(maxsize=8192)
def fold(word: str) -> str:
    """
    The word as the vocabulary knows it.

    >>> fold("Café"), fold("CAN'T"), fold("válvula")
    ('cafe', 'cant', 'valvula')
    """
    if word.isascii():
        return word.lower().replace("'", "") if len(word) > 1 else word.lower()
    plain = unicodedata.normalize("NFKD", word.replace("º", "°")).lower()
    bare = "".join(c for c in plain if not unicodedata.combining(c))
    return (bare.replace("'", "").replace("’", "") if len(word) > 1 else bare) or word
