# ruff: noqa: D102, ARG002  (the methods are those of the parser)
"""A marked text as the messenger reads it, and what it refuses."""

from html.parser import HTMLParser
from typing import Any

TAGS = {"b", "i", "u", "s", "code", "pre", "a", "blockquote", "strong", "em"}


class RefusedError(Exception):
    """An answer that is not ok."""

    def __init__(self, code: int, description: str, **parameters: Any) -> None:
        super().__init__(description)
        self.code, self.parameters = code, parameters


def units(text: str) -> int:
    """Length in UTF-16 units, as the API counts."""
    return len(text.encode("utf-16-le")) // 2


class Marks(HTMLParser):
    """The API's HTML: its few tags, closed in order, and only its four named entities."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=False)
        self.text, self.open, self.entities = "", [], []

    def handle_starttag(self, tag: str, attrs: Any) -> None:
        if tag not in TAGS:
            raise RefusedError(400, f'Bad Request: can\'t parse entities: Unsupported start tag "{tag}"')
        self.open.append((tag, units(self.text)))

    def handle_endtag(self, tag: str) -> None:
        opened, at = self.open.pop() if self.open else ("", 0)
        if opened != tag:
            raise RefusedError(400, "Bad Request: can't parse entities: unmatched end tag")
        kind = {"b": "bold", "strong": "bold", "code": "code", "blockquote": "blockquote"}.get(tag)
        if kind and units(self.text) > at:
            self.entities.append({"type": kind, "offset": at, "length": units(self.text) - at})

    def handle_data(self, data: str) -> None:
        if "<" in data:
            raise RefusedError(400, "Bad Request: can't parse entities: stray <")
        self._add(data)

    def handle_entityref(self, name: str) -> None:
        signs = {"lt": "<", "gt": ">", "amp": "&", "quot": '"'}
        self._add(signs.get(name, f"&{name};"))

    def handle_charref(self, name: str) -> None:
        self._add(chr(int(name[1:], 16) if name.startswith("x") else int(name)))

    def handle_comment(self, data: str) -> None:
        raise RefusedError(400, "Bad Request: can't parse entities: comment")

    handle_decl = handle_pi = unknown_decl = handle_comment

    def _add(self, data: str) -> None:
        self.text += data


def plain(text: str, parse_mode: str | None) -> str:
    """The text as a phone shows it."""
    return read_marks(text, parse_mode)[0]


def read_marks(text: str, parse_mode: str | None) -> tuple[str, list[dict[str, Any]]]:
    """The text as a phone shows it, and which parts of it are marked."""
    if parse_mode != "HTML":
        return text, []
    marks = Marks()
    marks.feed(text)
    marks.close()
    if marks.open:
        raise RefusedError(400, "Bad Request: can't parse entities: unclosed tag")
    return marks.text, marks.entities
