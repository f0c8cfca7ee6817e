"""The demo conversations are their own specification: each reply is as written, through every way in."""

import io
import json
from pathlib import Path

import pytest

from bot.channels import json_lines
from bot.channels.replay import demos
from bot.desk import Memory
from bot.script.play import Played, differences, play
from bot.script.scene import Scene, read_scene
from bot.store.schema import open_store

FEWEST = 10


def scene_of(file: Path) -> Scene:
    """The conversation of a file."""
    return read_scene(file.read_text(encoding="utf-8"))


def wrong(one: Played) -> list[str]:
    """What differs, with the place in the file."""
    return [f"line {one.spoken.line}: {said}" for said in differences(one)]


def test_there_are_conversations() -> None:
    """An empty folder would pass everything."""
    assert len(demos()) >= FEWEST


@pytest.mark.parametrize("file", demos(), ids=lambda file: file.stem)
def test_each_reply_is_as_written(file: Path) -> None:
    """Played by the clock of the file."""
    assert [said for one in play(scene_of(file)) for said in wrong(one)] == []


@pytest.mark.parametrize("file", demos(), ids=lambda file: file.stem)
def test_each_says_that_it_is_invented_and_expects_something(file: Path) -> None:
    """No real unit, and at least one thing that is judged by the record."""
    scene = scene_of(file)

    assert any("Invented" in line for line in scene.head)
    assert any(spoken.expects for spoken in scene.spoken)


@pytest.mark.parametrize("file", demos(), ids=lambda file: file.stem)
def test_the_pipe_gives_the_same_records(file: Path) -> None:
    """A program that sends the messages of a conversation gets what the conversation shows."""
    scene = scene_of(file)
    if any("CODE" in spoken.text for spoken in scene.spoken):
        pytest.skip("a code is made up while playing")
    played = play(scene)
    engine = open_store("sqlite://")
    clock = iter([spoken.sent_at for spoken in scene.spoken])
    lines = "".join(
        json.dumps(
            {"technician": spoken.who, "text": spoken.text, "edit": spoken.edit}
            | ({"message_id": spoken.message_id} if spoken.message_id else {})
        )
        + "\n"
        for spoken in scene.spoken
    )
    out = io.StringIO()

    json_lines.run(json_lines.Pipe(engine, Memory(), lambda: next(clock)), io.BytesIO(lines.encode()), out)
    engine.dispose()

    assert [json.loads(line) for line in out.getvalue().splitlines()] == [
        json.loads(json.dumps(dict(one.record))) for one in played
    ]
