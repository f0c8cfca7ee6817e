"""Conversations are written down as a chat, played, and compared."""

from datetime import UTC, datetime
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.channels.replay import demos, replay
from bot.script.expected import met
from bot.script.play import differences, play
from bot.script.scene import SceneError, read_scene, written

SCENE = """\
# Open primary, two readings
# Invented: no such roof.
day 2026-03-02

08:14 tech: pri 118V sec 0V
  : and the stat is blank
  | A line
  |
  | another line
  = verdict primary_open

08:15 tech [m2]: pri ohm 19
08:16 tech [m2 edited]: pri ohm open

# The next day
day 2026-03-03
07:00 second tech (tap): open
"""


def test_every_part_is_read() -> None:
    """Time, person, text of several lines, id, edit, tap, reply and expectation."""
    scene = read_scene(SCENE)

    first, second, third, fourth = scene.spoken
    assert scene.title == "Open primary, two readings"
    assert (first.sent_at, first.who) == (datetime(2026, 3, 2, 8, 14, tzinfo=UTC), "tech")
    assert first.text == "pri 118V sec 0V\nand the stat is blank"
    assert first.reply == ["A line", "", "another line"]
    assert first.expects == ["verdict primary_open"]
    assert (second.message_id, second.edit) == ("m2", False)
    assert (third.message_id, third.edit) == ("m2", True)
    assert (fourth.who, fourth.tap, fourth.sent_at.day) == ("second tech", True, 3)


def test_what_was_read_is_written_as_it_was() -> None:
    """Putting replies into a file changes nothing else in it."""
    assert written(read_scene(SCENE)) == SCENE


@pytest.mark.parametrize("file", demos(), ids=lambda file: file.stem)
def test_the_files_that_come_along_are_written_as_they_are_read(file: Path) -> None:
    """The round trip holds for real conversations."""
    text = file.read_text(encoding="utf-8")

    assert written(read_scene(text)) == text


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "no message"),
        ("# only remarks\n", "no message"),
        ("08:14 tech: hi\nnonsense\n", "line 2 is no message"),
        ("08:14 tech: hi\n  what is this\n", "line 2 starts with none"),
        ("25:61 tech: hi\n", "25:61 is no time"),
        ("day tomorrow\n08:14 tech: hi\n", "line 1 is no message"),
    ],
)
def test_a_line_of_no_kind_is_named(text: str, says: str) -> None:
    """A typing mistake in a file is not passed over."""
    with pytest.raises(SceneError, match=says):
        read_scene(text)


@given(st.text(alphabet=st.characters(codec="utf-8", exclude_categories=["Cc", "Zl", "Zp", "Cs"]), max_size=60))
def test_any_text_of_one_line_can_be_sent(text: str) -> None:
    """Colons, brackets, emoji and other alphabets are only text."""
    scene = read_scene(f"08:14 tech: {text}\n")

    assert scene.spoken[0].text == text


RECORD = {
    "verdict": {"finding": "primary_open", "transformer": "bad", "settled": False, "also": ["load_short"]},
    "next_test": {"measure": "load_ohms", "leads": None, "instruction": "..."},
    "readings": [{"measure": "primary_ohms", "value": "open"}, {"measure": "primary_volts", "value": 118.0}],
    "leads": {"windings": [{"role": "primary", "leads": {"white": "common", "black": "120"}}]},
    "sizing": {"pick_va": 50.0, "refused": None},
    "cautions": ["prove_dead"],
    "asks": [],
    "unread": ["hot wire"],
    "picture": None,
    "document": "report",
}


@pytest.mark.parametrize(
    ("expectation", "holds"),
    [
        ("verdict primary_open bad", True),
        ("verdict primary_open settled", False),
        ("verdict none", False),
        ("also load_short", True),
        ("also overload", False),
        ("next_test load_ohms", True),
        ("next_test none", False),
        ("reading primary_ohms open", True),
        ("reading primary_volts 118", True),
        ("reading primary_volts 119", False),
        ("leads white common black 120", True),
        ("leads white 120", False),
        ("sizing pick_va 50", True),
        ("sizing refused none", True),
        ("sizing pick_va 40", False),
        ("caution prove_dead", True),
        ("caution none", False),
        ("ask none", True),
        ("unread hot wire", True),
        ("unread none", False),
        ("picture none", True),
        ("document report", True),
        ("document export", False),
    ],
)
def test_expectations_can_hold_and_can_fail(expectation: str, holds: bool) -> None:  # noqa: FBT001
    """Each kind is met by a record that has it, and not by one that has not."""
    assert met(RECORD, expectation) is holds


def test_a_scene_with_the_replies_it_gets_has_no_differences() -> None:
    """And one with another reply, a false expectation, an unknown one or a tap on nothing has."""
    scene = read_scene("08:14 tech: pri 118V\n08:15 tech: sec 0V\n")
    for one in play(scene):
        one.spoken.reply = one.reply.split("\n")
    true = [differences(one) for one in play(scene)]
    scene.spoken[0].reply = ["something else"]
    scene.spoken[1].expects = ["verdict healthy", "weather fine"]
    scene.spoken[1].tap = True
    false = [[str(said) for said in differences(one)] for one in play(scene)]

    assert true == [[], []]
    assert false == [
        ["The reply is another than written"],
        [
            "No such button was there to tap: sec 0V",
            "Not so: verdict healthy",
            "Nothing can be expected by that name: weather fine",
        ],
    ]


def test_an_edit_and_two_technicians_can_be_played() -> None:
    """The edit replaces, a code of the reply is sent on by the other."""
    scene = read_scene(
        "08:14 tech: new job rtu 3\n08:15 tech [a]: pri 11V\n08:16 tech [a edited]: pri 118V\n"
        "08:17 tech: hand this over\n08:18 helper: CODE\n08:19 helper: history\n"
    )

    played = play(scene)

    assert played[3].reply.splitlines()[0] == "CODE"
    assert "118" in played[5].reply
    assert "11 V" not in played[5].reply


def test_replay_leaves_with_1_where_a_reply_differs(tmp_path: Path, capsys) -> None:
    """Writing the replies mends it; the file is then played true."""
    file = tmp_path / "one.chat"
    file.write_text("# One\n\n08:14 tech: pri 118V sec 0V\n  | something else\n", encoding="utf-8")

    first = replay([file])
    shown = capsys.readouterr().out
    replay([file], write=True)
    second = replay([file])

    assert (first, second) == (1, 0)
    assert "-something else" in shown
    assert file.read_text(encoding="utf-8").startswith("# One\n\n08:14 tech: pri 118V sec 0V\n  | ")


def test_replay_leaves_with_2_where_a_file_is_no_conversation(tmp_path: Path, capsys) -> None:
    """Binary and prose are named, not played."""
    prose, binary = tmp_path / "prose.chat", tmp_path / "binary.chat"
    prose.write_text("Dear office,\n")
    binary.write_bytes(b"\xff\xfe\x00")

    left = replay([prose, binary])

    assert left == 2
    assert capsys.readouterr().err.count("is no conversation") == 2
