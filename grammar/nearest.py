"""For a text that was not read: the nearest one that would have been."""

from typing import Final

from rapidfuzz import fuzz, process

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

NEAR_ENOUGH = 45.0
"""Likeness in percent under which nothing is offered."""


def nearest(fragment: str, language: str = "en") -> str | None:
    """
    The example that is most like a fragment, or None where none is.

    Args:
        fragment: What was not understood.
        language: `en` or `es`.

    Returns:
        A message that would be read.

    >>> nearest("primry volt 118")
    'primary 118 V'
    """
    found = process.extractOne(
        fragment[:200].lower(),
        EXAMPLES.get(language, EXAMPLES["en"]),
        scorer=fuzz.token_sort_ratio,
        processor=str.lower,
        score_cutoff=NEAR_ENOUGH,
    )
    return found[0] if found else None
