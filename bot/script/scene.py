"""
How a conversation is written down.

    # Open primary, two readings
    # Invented: no such roof.
    day 2026-03-02

    08:14 tech: pri 118V sec 0V
      | The primary or the secondary is open
      = verdict primary_open

    08:15 tech [m2]: pri ohm 19          a message with an id of its own
    08:16 tech [m2 edited]: pri ohm open the same message, edited
    08:17 tech (tap): open               a tap on a button of the reply before
      : more of the message, on a line of its own

`|` is a line of the reply, `=` something that its record must hold, `:` one more line of the message.
`CODE` stands for a code made up while playing.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time

LINE = re.compile(
    r"(?P<at>\d\d:\d\d) (?P<who>[^:\[(]+?)(?: \[(?P<id>[\w-]+)(?P<edited> edited)?\])?(?P<tap> \(tap\))?: ?(?P<text>.*)"
)


class SceneError(Exception):
    """A file that is not written as a conversation."""


@dataclass(slots=True, kw_only=True)
class Spoken:
    """One message of a conversation, and what is expected to come back."""

    line: int
    """Where it stands in the file."""
    sent_at: datetime
    who: str
    text: str
    message_id: str | None = None
    edit: bool = False
    tap: bool = False
    reply: list[str] = field(default_factory=list)
    expects: list[str] = field(default_factory=list)


@dataclass(slots=True, kw_only=True)
class Scene:
    """A whole conversation."""

    title: str
    head: list[str]
    """The lines before the first message, as they stand."""
    spoken: list[Spoken]
    gaps: dict[int, list[str]] = field(default_factory=dict)
    """Lines that stand before a message, such as `day`, by the message's place."""


def read_scene(text: str) -> Scene:
    """
    The conversation that a text writes down.

    Raises:
        SceneError: A line is none of the kinds above, or there is no message.
    """
    title, head = "", list[str]()
    gaps, spoken = dict[int, list[str]](), list[Spoken]()
    today = date(2026, 1, 5)
    for number, line in enumerate(text.splitlines(), 1):
        if line.startswith("  ") and line.strip() and spoken:
            _belongs(spoken[-1], line.strip(), number)
        elif found := LINE.fullmatch(line):
            spoken.append(_spoken(found, today, number))
        else:
            _check(line, number)
            title = title or line.removeprefix("#").strip()
            today = date.fromisoformat(line.removeprefix("day ")) if line.startswith("day ") else today
            (gaps.setdefault(len(spoken), []) if spoken else head).append(line)
    if not spoken:
        raise SceneError("no message: a line is 08:14 tech: pri 118V sec 0V")
    return Scene(title=title, head=head, spoken=spoken, gaps=gaps)


def _check(line: str, number: int) -> None:
    if line and not line.startswith("#") and not re.fullmatch(r"day \d{4}-\d\d-\d\d", line):
        raise SceneError(f"line {number} is no message, reply, # remark or day: {line[:60]}")


def _spoken(found: re.Match[str], today: date, number: int) -> Spoken:
    try:
        at = time.fromisoformat(found["at"])
    except ValueError:
        raise SceneError(f"line {number}: {found['at']} is no time") from None
    return Spoken(
        line=number,
        sent_at=datetime.combine(today, at, UTC),
        who=found["who"],
        text=found["text"],
        message_id=found["id"],
        edit=bool(found["edited"]),
        tap=bool(found["tap"]),
    )


def _belongs(spoken: Spoken, line: str, number: int) -> None:
    sign, rest = line[0], line[2:]
    match sign:
        case "|":
            spoken.reply.append(rest)
        case "=":
            spoken.expects.append(rest)
        case ":":
            spoken.text += "\n" + rest
        case _:
            raise SceneError(f"line {number} starts with none of | = :")


def written(scene: Scene) -> str:
    """The text of a conversation; what `read_scene` took, it gives back."""
    return "\n".join([*scene.head, *_lines(scene)]).rstrip("\n") + "\n"


def _lines(scene: Scene) -> Iterator[str]:
    for place, spoken in enumerate(scene.spoken):
        yield from scene.gaps.get(place, ()) if place else ()
        first, *more = spoken.text.split("\n")
        name = f" [{spoken.message_id}{' edited' if spoken.edit else ''}]" if spoken.message_id else ""
        yield f"{spoken.sent_at:%H:%M} {spoken.who}{name}{' (tap)' if spoken.tap else ''}: {first}".rstrip()
        yield from (f"  : {line}" for line in more)
        yield from (f"  | {line}".rstrip() for line in spoken.reply)
        yield from (f"  = {line}" for line in spoken.expects)
    yield from scene.gaps.get(len(scene.spoken), ())
