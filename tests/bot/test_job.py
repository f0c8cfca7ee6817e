"""A job's state is a fold: undo, corrections and edits are the same thing as reading the log again."""

from datetime import UTC, datetime

from bot.as_read import message_from_json, message_to_json
from bot.job import State, Turn, fold, step, take
from core.readings import Fact, Reading
from core.said import say
from grammar import Message
from grammar.message import Unclear


def told(*values: tuple[str, float | str], asks: tuple[str, ...] = (), **more) -> Message:
    """A message with readings."""
    return Message(readings=tuple(Reading(measure=m, value=v) for m, v in values), asks=asks, **more)


def values(state: State) -> dict[str, float | str]:
    """The readings that stand."""
    return {r.measure: r.value for r in state.job(Message()).readings}


def after(*messages: Message) -> State:
    """The state after some messages."""
    state = State()
    for number, message in enumerate(messages):
        state = take(state, str(number), message)
    return state


def turn(number: int, text: str, *, edits: str | None = None, reply: dict | None = None) -> Turn:
    """A logged turn."""
    return Turn(
        number=number,
        text=text,
        message_id=f"m{number}",
        edits=edits,
        sent_at=datetime(2026, 3, 2, 9, number, tzinfo=UTC),
        reply=reply,
    )


def test_a_later_reading_of_a_place_replaces_the_earlier() -> None:
    """The last word on a place stands."""
    state = after(told(("primary_volts", 108.0)), told(("primary_volts", 118.0)))

    assert values(state) == {"primary_volts": 118.0}


def test_undo_brings_back_what_stood_before() -> None:
    """The replaced reading stands again, and a second undo takes it too."""
    once = after(told(("primary_volts", 108.0)), told(("primary_volts", 118.0)), Message(asks=("undo",)))
    twice = take(once, "9", Message(asks=("undo",)))

    assert values(once) == {"primary_volts": 108.0}
    assert values(twice) == {}
    assert values(take(twice, "10", Message(asks=("undo",)))) == {}


def test_a_correction_may_change_the_place_and_keep_the_value() -> None:
    """'That 26.3 V is with R off' moves the reading."""
    state = after(told(("secondary_volts", 26.3)), told(("secondary_volts_lifted", 26.3), asks=("correct",)))

    assert values(state) == {"secondary_volts_lifted": 26.3}


def test_what_is_withdrawn_is_gone_and_undo_brings_it_back() -> None:
    """'Scratch the fuse reading' takes it away; undo is stronger."""
    state = after(told(("fuse_ohms", 0.4)), Message(withdrawn=("fuse_ohms",), asks=("correct",)))

    assert values(state) == {}
    assert values(take(state, "9", Message(asks=("undo",)))) == {"fuse_ohms": 0.4}


def test_pairs_of_leads_are_places_of_their_own() -> None:
    """White-black and white-red stand beside each other; the order of a pair does not matter."""

    def pair(one: str, other: str, ohm: float) -> Message:
        return Message(readings=(Reading(measure="lead_ohms", value=ohm, leads=(one, other)),))

    state = after(pair("white", "black", 20.4), pair("white", "red", 53.0), pair("black", "white", 21.0))

    assert [r.value for r in state.job(Message()).readings] == [53.0, 21.0]


def test_two_loads_of_one_device_in_one_message_are_two_and_a_later_one_replaces() -> None:
    """Rule of the field language: a corrected load is repeated whole."""
    first = Message(facts=tuple(Fact(fact="load", device="contactor", count=1, value=v, unit="VA") for v in (8.0, 9.0)))
    second = Message(facts=(Fact(fact="load", device="contactor", count=2, value=10.0, unit="VA"),))

    assert [f.value for f in after(first).job(Message()).facts] == [8.0, 9.0]
    assert [f.value for f in after(first, second).job(Message()).facts] == [10.0, 9.0]


def test_a_test_that_cannot_be_done_is_remembered() -> None:
    """'Can't get to it' declines what was asked, pair and all."""
    state = take(State(asked=("load_ohms", None)), "1", Message(asks=("cannot",)))

    assert state.declined == {("load_ohms", None)}


def test_a_message_survives_its_way_through_json() -> None:
    """What was read is kept with the reply and comes back the same."""
    message = Message(
        readings=(Reading(measure="lead_ohms", value="open", leads=("white", "blue"), assumed=True),),
        facts=(Fact(fact="nameplate_taps", value=(120.0, 208.0)), Fact(fact="lead_is", lead="white", role="common")),
        asks=("tap",),
        unread=("blah",),
        unclear=(Unclear(fragment="sec 246", choices=("secondary_volts",), question=say("24.6 V?")),),
        repairs=(("secondry", "secondary"),),
        language="en",
        name="rtu 3",
    )

    assert message_from_json(message_to_json(message)) == message


def test_an_edit_is_a_fold_over_the_new_text() -> None:
    """The edited text is read in place of the old one, and the rest stands as it was read."""
    log = (turn(1, "pri 108v"), turn(2, "sec 0v"), turn(3, "pri 118v", edits="m1"))

    assert values(fold(log)) == {"primary_volts": 118.0, "secondary_volts": 0.0}
    assert values(step(fold(log[:2]), log[2])) == values(fold(log))


def test_a_fold_in_steps_is_the_fold_in_one_go() -> None:
    """A restart changes nothing."""
    log = tuple(turn(n, text) for n, text in enumerate(("pri 118v", "sec 0v", "undo", "sec 24.1v", "sec ohms 1.1")))
    state = State()
    for entry in log:
        state = step(state, entry)

    assert values(state) == values(fold(log))


def test_a_reading_that_comes_again_is_known_as_repeated() -> None:
    """A second look that agrees, not one that corrects and not one that differs."""
    first, again, other = (
        Message(readings=(Reading(measure="lead_ohms", value=v, leads=("a", "b")),)) for v in (20.4, 20.2, 39.0)
    )
    corrected = Message(readings=again.readings, asks=("correct",))

    assert [after(first, m).readings[-1].repeated for m in (again, other, corrected)] == [True, False, False]


def test_two_primaries_of_named_leads_stand_side_by_side_until_the_whole_is_read() -> None:
    """H1 to H2 and H3 to H4; then the primary, whatever its leads are called."""
    halves = tuple(
        Message(readings=(Reading(measure="primary_ohms", value=22.0, leads=pair),)) for pair in (("h1", "h2"), ("h3", "h4"))
    )

    assert len(after(*halves).readings) == 2
    assert [r.value for r in after(*halves, told(("primary_ohms", 44.0))).readings] == [44.0]
