"""A technician with a phone: what is shown, tapped, edited, sent besides text."""

import io
import json
import re

import pytest
from PIL import Image

from bot.pictures import canvas
from tests.bot.telegram.bot_api import BotApi
from tests.bot.telegram.phone import Phone
from tests.bot.telegram.served import OWNER, Served

OPEN_PRIMARY = "pri 118V sec 0V pri-ohm open"


def labels(shown: dict) -> list[str]:
    """The buttons under a message."""
    return [button["text"] for row in shown.get("reply_markup", {}).get("inline_keyboard", []) for button in row]


def photo(width: int = 60, height: int = 40) -> bytes:
    """A picture as a phone sends it."""
    body = io.BytesIO()
    Image.new("RGB", (width, height), "gray").save(body, "JPEG")
    return body.getvalue()


def test_readings_are_answered_with_a_verdict_whose_first_line_is_bold(served: Served, owner: Phone) -> None:
    """The whole way: the words come in, the verdict goes out, quoting the message, with sound, without a preview."""
    sent = owner.send(OPEN_PRIMARY)

    shown = owner.wait(sent)

    first = shown["text"].split("\n")[0]
    assert shown["html"].startswith(f"<b>{first}</b>\n")
    assert "primary" in shown["text"]
    assert (shown["quotes"], shown["silent"]) == (sent, False)
    call = served.settings and owner.api.sent("sendMessage")[-1]
    assert json.loads(call.args["link_preview_options"]) == {"is_disabled": True}


def test_a_tap_is_the_typed_answer_and_changes_the_message_it_belongs_to(served: Served, owner: Phone, api: BotApi) -> None:
    """The query is answered, the reply comes, the question shows what was chosen and loses its buttons."""
    question = owner.ask(OPEN_PRIMARY)
    label = labels(question)[0]

    query = owner.tap(question, label)
    reply = owner.wait(question["message_id"])

    api.wait(lambda: "reply_markup" not in api.messages[OWNER, question["message_id"]])
    changed = api.messages[OWNER, question["message_id"]]
    assert changed["text"].endswith(f"▸ {label}")
    assert changed["html"].startswith("<b>")  # what was bold stays bold
    assert api.sent("answerCallbackQuery")[0].args["callback_query_id"] == query
    assert reply["text"] != question["text"]
    assert served.ask_store("SELECT count(*) FROM logged_message WHERE message_id LIKE 'tap %'") == [(1,)]


def test_a_tap_on_an_older_question_is_too_late_and_typed_it_still_counts(served: Served, owner: Phone, api: BotApi) -> None:
    """Once another reply came, buttons of the earlier one are over: said so, and nothing is read."""
    question = owner.ask(OPEN_PRIMARY)
    label = labels(question)[0]
    owner.ask("R-C ohms 21")
    logged = served.ask_store("SELECT count(*) FROM logged_message")

    owner.tap(question, label)
    api.wait(lambda: api.sent("answerCallbackQuery"))

    assert "over" in api.sent("answerCallbackQuery")[0].args["text"]
    assert served.ask_store("SELECT count(*) FROM logged_message") == logged
    assert owner.ask(label)["text"]


def test_the_same_tap_twice_counts_once(served: Served, owner: Phone, api: BotApi) -> None:
    """A gloved thumb taps twice: the second finds the question over."""
    question = owner.ask(OPEN_PRIMARY)

    owner.tap(question, labels(question)[0])
    owner.tap(question, labels(question)[0])
    api.wait(lambda: len(api.sent("answerCallbackQuery")) == 2)

    assert served.ask_store("SELECT count(*) FROM logged_message WHERE message_id LIKE 'tap %'") == [(1,)]


def test_an_edited_message_refolds_the_job_and_changes_our_reply(served: Served, owner: Phone, api: BotApi) -> None:
    """The reply to the slip is put right in its place; no second message appears."""
    sent = owner.send("pri 118V sec 246V")
    before = owner.wait(sent)["text"]

    owner.edit(sent, "pri 118V sec 24.6V")
    api.wait(lambda: api.messages[OWNER, owner.answers(sent)[0]["message_id"]].get("edited"))

    assert len(owner.answers(sent)) == 1
    after = owner.answers(sent)[0]["text"]
    assert after != before
    assert "24.6 V" in after
    assert "246" not in after


def test_an_edit_of_what_was_never_answered_gets_a_reply(served: Served, owner: Phone) -> None:
    """Our reply to it is not there to be changed, so one is sent."""
    never = owner.api.next_message()

    owner.edit(never, OPEN_PRIMARY)

    assert "primary" in owner.wait(never)["text"]


def test_buttons_of_an_edited_reply_are_the_live_ones(served: Served, owner: Phone, api: BotApi) -> None:
    """After an edit the changed reply asks, and its button counts."""
    sent = owner.send("pri 118V sec 24V")
    owner.wait(sent)
    owner.edit(sent, OPEN_PRIMARY)
    changed = api.wait(lambda: next((m for m in owner.answers(sent) if m.get("edited") and labels(m)), None))

    owner.tap(changed, labels(changed)[0])
    owner.wait(changed["message_id"])

    assert served.ask_store("SELECT count(*) FROM logged_message WHERE message_id LIKE 'tap %'") == [(1,)]


def test_start_shows_one_example_that_leaves_no_trace(served: Served, owner: Phone) -> None:
    """The example is worked out by the same engine, and neither job nor technician of it stays."""
    shown = owner.ask("/start")

    assert "pri 118V sec 0V pri-ohm open" in shown["text"]
    assert "primary is open" in shown["text"].lower()
    assert served.ask_store("SELECT count(*) FROM logged_message") == [(0,)]
    assert served.ask_store("SELECT count(*) FROM technician") == [(0,)]


@pytest.mark.parametrize("words", ["fjUM-WfMQWRm86E1", "123"])
def test_an_invitation_tapped_again_shows_the_start(served: Served, owner: Phone, words: str) -> None:
    """Who is in already has no use for a code, and it is not taken for a reading."""
    shown = owner.ask(f"/start {words}")["text"]

    assert "pri 118V sec 0V pri-ohm open" in shown
    assert served.ask_store("SELECT count(*) FROM logged_message") == [(0,)]


def test_a_link_with_a_jobs_code_takes_the_job(served: Served, owner: Phone, api: BotApi) -> None:
    """`/start CODE` is what a link sends."""
    served.let_in(813)
    owner.ask("new job rtu 5")
    owner.ask(OPEN_PRIMARY)
    code = owner.ask("/handover")["text"].split("\n")[0]

    assert "You work on rtu 5" in Phone(api, 813).ask(f"/start {code}")["text"]


def test_start_on_a_spanish_phone_is_spanish_throughout(served: Served, api: BotApi) -> None:
    """The example too: what a newcomer is to type, and what comes back."""
    served.let_in(812)

    shown = Phone(api, 812, language="es").ask("/start")["text"]

    assert "primario 118V" in shown
    assert "El primario está abierto" in shown
    assert "Read:" not in shown


@pytest.mark.parametrize("words", ["I smell gas", "burning smell from the box", "can I jump the float switch"])
def test_what_stops_or_refuses_is_bold(served: Served, owner: Phone, words: str) -> None:
    """It is read first, in sunlight, by somebody in a hurry."""
    shown = owner.ask(words)

    first = shown["text"].split("\n")[0]
    assert first.startswith(("STOP", "No"))
    assert shown["html"].startswith(f"<b>{first}</b>")


def test_the_name_of_the_job_above_a_verdict_is_not_what_is_bold(served: Served, owner: Phone) -> None:
    """With several jobs open the reply says which it is about; the eye is to find the verdict."""
    owner.ask("new job rtu 1")
    owner.ask("pri 118V sec 24V")
    owner.ask("new job rtu 2")

    lines = owner.ask(OPEN_PRIMARY)["html"].split("\n")

    assert lines[0] == "Job: rtu 2"
    assert lines[1].startswith("<b>The primary is open")


def test_the_menu_is_set_in_both_languages_and_the_owner_sees_more(served: Served, api: BotApi) -> None:
    """The commands of the menu come from one table."""
    api.wait(lambda: len(api.sent("setMyCommands")) == 4)

    calls = api.sent("setMyCommands")
    by_language = {(c.args.get("language_code"), "scope" in c.args): json.loads(c.args["commands"]) for c in calls}
    names = [one["command"] for one in by_language[None, False]]
    assert {"next", "undo", "new", "report", "help", "start"} <= set(names)
    assert "invite" not in names
    assert "invite" in [one["command"] for one in by_language["es", True]]


@pytest.mark.parametrize(
    ("command", "typed"),
    [("next", "next"), ("why", "why"), ("undo", "undo"), ("jobs", "my jobs"), ("history", "history"), ("help", "help")],
)
def test_a_command_of_the_menu_is_what_it_stands_for(served: Served, owner: Phone, command: str, typed: str) -> None:
    """The tap in the menu and the typed words get the same answer."""
    served.let_in(777)
    other = Phone(owner.api, 777)
    for phone in (owner, other):
        phone.ask(OPEN_PRIMARY)

    shown = owner.ask(f"/{command}")["text"], other.ask(typed)["text"]

    clock = re.compile(r"\d\d:\d\d")
    assert clock.sub("", shown[0]) == clock.sub("", shown[1])


def test_every_command_of_the_menu_is_understood(served: Served, owner: Phone) -> None:
    """No line of the menu leads to a message that was not read."""
    from bot.channels.telegram.menu import COMMANDS
    from grammar import read

    read_as = {one.name: read(one.typed) for one in COMMANDS.values() if one.typed}

    assert {name: message.unread for name, message in read_as.items() if message.unread or not message.asks} == {}


def test_an_unknown_command_is_told(served: Served, owner: Phone) -> None:
    """One line that says what to do instead."""
    assert "/frobnicate" in owner.ask("/frobnicate")["text"]


def test_a_report_comes_as_a_document(served: Served, owner: Phone, api: BotApi) -> None:
    """The paper is sent as a file, quoting the command."""
    owner.ask(OPEN_PRIMARY)
    asked = owner.send("/report")

    call = api.wait(lambda: api.sent("sendDocument"), 20)[0]

    assert call.files["document"].startswith(b"%PDF")
    assert json.loads(call.args["reply_parameters"])["message_id"] == asked
    assert "sendChatAction" in [c.method for c in api.calls]


def test_a_picture_comes_as_a_photo_with_its_words_as_caption(
    served: Served, owner: Phone, api: BotApi, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What the picture shows stands under it, for those who can't see it; the text and the sign come before it is even drawn."""
    honest, seen = canvas.rendered, []

    def rendered(svg: str) -> bytes:
        seen.extend(call.method for call in api.calls)
        return honest(svg)

    monkeypatch.setattr(canvas, "rendered", rendered)

    owner.ask("18 awg, 150 ft one way, 24va valve, what drop?")

    call = api.wait(lambda: api.sent("sendPhoto"), 20)[0]

    assert call.files["photo"].startswith(b"\x89PNG")
    assert len(call.args["caption"]) > 20
    actions = [c for c in api.calls if c.method == "sendChatAction"]
    assert actions[0].args["action"] == "upload_photo"
    assert actions[0].at <= call.at
    assert {"sendMessage", "sendChatAction"} <= set(seen)
    assert "sendPhoto" not in seen


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({"voice": {"file_id": "v", "file_unique_id": "v", "duration": 3}}, "Voice"),
        ({"sticker": {"file_id": "s", "file_unique_id": "s", "type": "regular", "width": 9, "height": 9, "is_animated": False, "is_video": False}}, "text and photos"),
        ({"video": {"file_id": "v", "file_unique_id": "v", "duration": 3, "width": 9, "height": 9}}, "photo"),
        ({"location": {"longitude": 1.0, "latitude": 1.0}}, "text and photos"),
        ({"document": {"file_id": "d", "file_unique_id": "d", "mime_type": "application/pdf"}}, "JPEG"),
    ],
)  # fmt: skip
def test_what_cannot_be_read_is_answered_with_what_to_do_instead(served: Served, owner: Phone, parts: dict, says: str) -> None:
    """Never silence."""
    assert says in owner.wait(owner.send_parts(**parts))["text"]


def test_a_service_message_is_not_answered(served: Served, owner: Phone, api: BotApi) -> None:
    """Nobody typed it."""
    pinned = owner.send_parts(group_chat_created=True)

    owner.ask("help")

    assert owner.answers(pinned) == []


def test_a_photo_is_kept_with_the_job(served: Served, owner: Phone) -> None:
    """Its bytes and what stood under it are the job's; the largest size is taken."""
    owner.ask(OPEN_PRIMARY)
    body = photo()

    sent = owner.photo(body)

    assert "Photo kept" in owner.wait(sent)["text"]
    rows = served.ask_store("SELECT job_id, media_type, body FROM attachment")
    assert rows == [(1, "image/jpeg", body)]


def test_words_under_a_photo_are_read(served: Served, owner: Phone) -> None:
    """A photo of the meter with the reading under it is a reading."""
    sent = owner.photo(photo(), caption="pri 118V sec 0V")

    assert "primary 118 V" in owner.wait(sent)["text"]
    assert served.ask_store("SELECT count(*) FROM attachment") == [(1,)]


def test_a_photo_that_can_not_be_fetched_is_told(served: Served, owner: Phone, api: BotApi) -> None:
    """Never silence, and nothing is kept."""
    sent = owner.photo(photo())
    api.files.clear()

    assert "fetched" in owner.wait(sent)["text"]


def test_a_reply_in_spanish_to_words_in_spanish(served: Served, owner: Phone) -> None:
    """The language of the words decides."""
    assert "primario" in owner.ask("primario 118V secundario 0V")["text"]


def test_the_channel_speaks_the_language_of_the_phone(served: Served, api: BotApi) -> None:
    """Before anything was read there is nothing better to go by."""
    stranger = Phone(api, 888, language="es-MX")

    assert "invitación" in stranger.ask("hola")["text"]


def test_a_message_of_a_forum_topic_is_answered_in_it(served: Served, api: BotApi) -> None:
    """The answer stays in the thread."""
    served.let_in(501)
    group = Phone(api, OWNER, chat_id=-1007)
    group.ask("@ohmreply_bot pri 118V", message_thread_id=44, is_topic_message=True)

    assert api.sent("sendMessage")[-1].args["message_thread_id"] == "44"


def test_a_group_is_answered_only_when_the_bot_is_addressed(served: Served, api: BotApi) -> None:
    """By a command to it, by its name, by a reply to it; not by anything else, not by a command to another."""
    group = Phone(api, OWNER, chat_id=-1007)
    unheard = [group.send("pri 118V sec 0V"), group.send("/help@other_bot"), group.send("/help"), group.send("@others hi")]

    named = group.ask("@ohmreply_bot pri 118V sec 0V")
    command = group.ask("/history@ohmreply_bot")
    inner = {name: named[name] for name in ("message_id", "date", "chat", "from", "text")}
    replied = group.ask("pri-ohm open", reply_to_message=inner)

    assert "118" in named["text"]
    assert "118" in command["text"]
    assert "open" in replied["text"]
    assert [group.answers(one) for one in unheard] == [[], [], [], []]


def test_nothing_of_a_private_job_is_shown_in_a_group(served: Served, api: BotApi, owner: Phone) -> None:
    """In a group somebody has jobs of its own."""
    owner.ask("new job secret boiler room")
    owner.ask("pri 118V sec 0V")

    shown = Phone(api, OWNER, chat_id=-1007).ask("/jobs@ohmreply_bot")["text"]

    assert "boiler" not in shown


def test_two_technicians_of_a_group_have_jobs_apart(served: Served, api: BotApi) -> None:
    """What one read is not in the other's history."""
    served.let_in(601)
    one, two = Phone(api, OWNER, chat_id=-1007), Phone(api, 601, chat_id=-1007)
    one.ask("@ohmreply_bot pri 117V sec 0V")
    two.ask("@ohmreply_bot pri 239V sec 24V")

    shown = one.ask("/history@ohmreply_bot")["text"]

    assert "117" in shown
    assert "239" not in shown


def test_a_long_reply_is_cut_at_lines_and_the_whole_arrives(served: Served, owner: Phone, api: BotApi) -> None:
    """Parts fit, come in order, and only the last has buttons."""
    echoed = " ".join(f"zzq{number}zz" for number in range(500))
    sent = owner.send(echoed[:4000])

    owner.wait(sent)
    last = api.wait(lambda: served.ask_store("SELECT count(*) FROM outbox WHERE done_at IS NULL") == [(0,)])

    assert last
    assert all(len(m["text"]) <= 4096 for m in owner.answers(sent))
