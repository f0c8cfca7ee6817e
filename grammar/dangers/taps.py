"""
A tap that is told by the colour of its lead: "black is 120, orange 240", and later "landing black and white".

Who lands a lead by its colour says no number, so the numbers are looked up where the colours were named, here or before.
"""

from collections.abc import Iterator, Mapping
from typing import Final

from grammar.dangers.phrases import BREAK, Text

_COLOURS: Final = {
    spelling: colour
    for colour, line in {
        "black": "black blk bk negro negra", "red": "red rojo roja", "orange": "orange org orng naranja anaranjado", "brown": "brown brn cafe", "blue": "blue blu azul",
        "yellow": "yellow yel amarillo", "purple": "purple violet morado", "gray": "gray grey gry gris", "white": "white wht blanco blanca",
    }.items()
    for spelling in line.split()
}  # fmt: skip
_MAINS: Final = frozenset({"110", "115", "120", "208", "220", "230", "240", "277", "347", "440", "460", "480"})
_LANDS: Final = frozenset({
    "land", "landing", "landed", "lands", "hook", "hooking", "hooked", "wire", "wiring", "wired", "connect", "connecting",
    "connected", "put", "putting", "use", "using", "used", "tie", "tying", "conecto", "conectar", "conecte", "pongo",
    "poner", "puse", "uso", "usar", "amarro", "meto", "meti",
})  # fmt: skip
_CAPS: Final = frozenset({
    "cap", "capping", "capped", "caps", "tape", "taping", "taped", "insulate", "nut", "tapo", "tapar", "aislo", "aislar",
    "encinto",
})  # fmt: skip
_NOT: Final = frozenset({
    "not", "dont", "wont", "no", "never", "nunca",
})  # fmt: skip
_FAR: Final = 1.4
"""Supply over tap from where a tap is refused, as in `core.dangers.recognise`."""


def is_landed_too_low(text: Text, before: tuple[Text, ...], supplies: frozenset[float]) -> bool:
    """
    True where a lead is landed whose tap, named by its colour, is far below the supply.

    Args:
        text: The message.
        before: The messages before it, the newest last.
        supplies: The volts that were told of the supply. [V]
    """
    landed = {colour for clause in _clauses(text) for colour in _landed(clause)}
    if not landed or not supplies:
        return False
    taps = _taps((*before, text))
    used = [taps[colour] for colour in landed if colour in taps]
    return bool(used) and all(max(supplies) / volts >= _FAR for volts in used)


def _clauses(text: Text) -> Iterator[tuple[str, ...]]:
    start = 0
    for at, word in enumerate((*text.words, BREAK)):
        if word == BREAK:
            yield text.words[start:at]
            start = at + 1


def _taps(texts: tuple[Text, ...]) -> Mapping[str, float]:
    """The volts of each colour: of a clause with one of both."""
    taps: dict[str, float] = {}
    for text in texts:
        for clause in _clauses(text):
            colours = {_COLOURS[word] for word in clause if word in _COLOURS} - {"white"}
            volts = {word for word in clause if word in _MAINS}
            if len(colours) == 1 and len(volts) == 1 and _LANDS.isdisjoint(clause):
                taps[colours.pop()] = float(volts.pop())
    return taps


def _landed(clause: tuple[str, ...]) -> set[str]:
    if _LANDS.isdisjoint(clause) or not _NOT.isdisjoint(clause):
        return set()
    end = next((at for at, word in enumerate(clause) if word in _CAPS), len(clause))
    return {_COLOURS[word] for word in clause[:end] if word in _COLOURS} - {"white"}
