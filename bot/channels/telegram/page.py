"""Text as this messenger shows it: escaped, cut at lines, the line that matters in bold."""

import html

WIDEST = 4_000
"""The messenger takes 4096 units of UTF-16 after its marks are read. [UTF-16 units]"""


def pages(text: str, bold: str | None = None) -> list[str]:
    r"""
    A text as one or more messages.

    Args:
        text: Plain text.
        bold: The line that is to be read first; marked where it stands the first time.

    >>> pages("Job: rtu 3\nBad: R < 1 ohm", "Bad: R < 1 ohm")
    ['Job: rtu 3\n<b>Bad: R &lt; 1 ohm</b>']
    """
    made: list[str] = []
    for part in cut(text):
        lines = part.split("\n")
        at = lines.index(bold) if bold and bold.strip() and bold in lines else None
        bold = bold if at is None else None
        made.append("\n".join(f"<b>{escaped(line)}</b>" if n == at else escaped(line) for n, line in enumerate(lines)))
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
    if text.strip() and units(text) <= widest:
        return [text]
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
    return len(text) if text.isascii() else len(text.encode("utf-16-le", "surrogatepass")) // 2
