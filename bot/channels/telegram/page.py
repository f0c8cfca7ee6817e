"""Text as this messenger shows it: escaped, cut at lines, the verdict in bold."""

import html

WIDEST = 4_000
"""The messenger takes 4096 units of UTF-16 after its marks are read. [UTF-16 units]"""


def pages(text: str, *, bold_first: bool = False) -> list[str]:
    """
    A text as one or more messages.

    Args:
        text: Plain text.
        bold_first: True where the first line is the verdict.

    >>> pages("Bad: R < 1 ohm", bold_first=True)
    ['<b>Bad: R &lt; 1 ohm</b>']
    """
    made: list[str] = []
    for part in cut(text):
        first, newline, rest = part.partition("\n")
        if bold_first and not made and first.strip():
            made.append(f"<b>{escaped(first)}</b>{newline}{escaped(rest)}")
        else:
            made.append(escaped(part))
    return made


def escaped(text: str) -> str:
    """What a person wrote can be no mark of ours."""
    return html.escape(text, quote=False)


def cut(text: str, widest: int = WIDEST) -> list[str]:
    r"""
    A text in parts that fit, cut at the ends of lines where that can be.

    >>> cut("one\ntwo\nthree", 8)
    ['one\ntwo', 'three']
    >>> cut("longword", 4)
    ['long', 'word']
    """
    parts: list[str] = []
    held = ""
    for line in text.split("\n"):
        for piece in _pieces(line, widest):
            joined = f"{held}\n{piece}" if held else piece
            if units(joined) <= widest:
                held = joined
            else:
                parts.append(held)
                held = piece
    parts.append(held)
    return [part for part in parts if part.strip()] or ["…"]


def _pieces(line: str, widest: int) -> list[str]:
    """A line in pieces that fit, cut at spaces where that can be."""
    pieces = []
    while units(line) > widest:
        end = widest
        while units(line[:end]) > widest:
            end -= 1
        space = line.rfind(" ", 1, end)
        end = space if space > 0 else end
        pieces.append(line[:end])
        line = line[end:].lstrip(" ")
    return [*pieces, line]


def units(text: str) -> int:
    """Length as the messenger counts it."""
    return len(text) + sum(ord(sign) > 0xFFFF for sign in text)
