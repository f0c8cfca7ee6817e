"""The README is true: its conversation is one that is played, and its commands exist."""

import re
from pathlib import Path

from bot.command_line import ohmreply
from bot.script.scene import read_scene

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
