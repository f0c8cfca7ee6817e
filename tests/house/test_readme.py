"""The README is true: its conversation is one that is played, and its commands exist."""

import re
from pathlib import Path

from bot.command_line import ohmreply
from bot.script.scene import read_scene
from tests.house import report_picture

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")


def test_the_conversation_is_one_that_is_played() -> None:
    """The README shows the first messages of the first demo conversation, reply for reply."""
    scene = read_scene((ROOT / "demo_conversations" / "01_open_primary.chat").read_text(encoding="utf-8"))

    for spoken in scene.spoken[1:4]:
        said = "\n".join(["", f"    you: {spoken.text}", *(f"      {line}" for line in spoken.reply)])
        assert said in README


def test_every_command_that_is_named_exists() -> None:
    """`ohmreply NAME` in the table of ways in is a command."""
    named = set(re.findall(r"`ohmreply (\w+)", README))

    assert named
    assert named <= ohmreply.commands.keys()


def test_the_report_that_is_shown_is_the_one_that_is_made() -> None:
    """`python -m tests.house.report_picture` was run after the last change of the report, its layout or the demo."""
    assert f"({report_picture.PICTURE.relative_to(ROOT)})" in README
    assert report_picture.shown() == report_picture.page().shows, "stale: python -m tests.house.report_picture"
