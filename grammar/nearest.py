"""For a text that was not read: the nearest one that would have been."""

from functools import lru_cache
from typing import Final

from rapidfuzz import fuzz

from grammar.parser import parse

EXAMPLES: Final = {
    "en": (
        "pri 118 sec 0", "primary 118 V", "secondary 24.6 V", "R-C 0 V", "fuse OL", "ohms: pri 19.8 sec 1.1", "secondary open", "pri to case OL", "sec 26.4 R off",
        "wht-blk 6.1 ohms", "208 building", "on the 240 tap", "40 VA 24 V", "2 contactors 8 VA each", "150 ft 18 gauge", "3 amp fuse", "which tap for 208",
        "what next", "undo", "new job", "report", "no 24 at the board", "keeps blowing the fuse", "contactor coil 11.6 ohms", "L1-L2 241 V",
    ),
    "es": (
        "pri 118 sec 0", "primario 118 volts", "secundario 24.6 volts", "R-C 0 V", "fusible OL", "ohms: primario 19.8 secundario 1.1", "secundario abierto", "primario a tierra OL",
        "secundario 26.4 con el R suelto", "blanco-negro 6.1 ohms", "edificio de 208", "en el tap de 240", "40 VA 24 V", "2 contactores de 8 VA", "150 pies calibre 18",
        "fusible de 3 amps", "cuál tap para 208", "qué sigue", "borra la última", "trabajo nuevo", "reporte", "no hay 24 en la tarjeta", "sigue volando el fusible",
    ),
}  # fmt: skip
"""Messages that are read, by language; a test reads each."""

STRONG = frozenset({"place", "colour", "mark", "device", "tapword", "supply", "run", "gaugeword", "nameplate"})
"""Kinds of words that say what a message is about."""
NEAR_ENOUGH = 80.0
"""Likeness of spelling in percent from which an example is offered that shares no such word."""


def nearest(fragment: str, language: str = "en") -> str | None:
    """
    The example that is most like a fragment, or None where none is.

    Args:
        fragment: What was not understood.
        language: `en` or `es`.

    Returns:
        A message that would be read, about the same place, lead or part.

    >>> nearest("primry volt 118"), nearest("float switch reads 24")
    ('primary 118 V', None)
    """
    text = fragment[:LONGEST].lower()
    examples = EXAMPLES.get(language, EXAMPLES["en"])
    about = _about(text)
    alike = [(fuzz.token_sort_ratio(text, example.lower()), example) for example in examples]
    shared = [
        (len(about & _about(example)), _measures(text) == _measures(example), likeness, example)
        for likeness, example in alike
        if about & _about(example)
    ]
    if shared:
        return max(shared)[3]
    likeness, example = max(alike)
    return example if likeness >= NEAR_ENOUGH else None


def _measures(text: str) -> bool:
    """A value is told, and no question or complaint."""
    return any(c.isdecimal() for c in text) or text.endswith(("OL", "open", "abierto"))


LONGEST = 200
"""Characters of a fragment that are looked at."""


@lru_cache(maxsize=512)
def _about(text: str) -> frozenset[str]:
    """What the words of a text are about."""
    return frozenset(f"{word.kind} {word.meaning}" for word in parse(text).words if word.kind in STRONG and word.meaning)
