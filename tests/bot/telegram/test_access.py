"""Who may write, and how much."""

from datetime import timedelta

import pytest
from click.testing import CliRunner
from sqlalchemy.orm import Session

from bot import members
from bot.command_line import ohmreply
from bot.delivery.rounds import utc_now
from tests.bot.telegram.bot_api import BotApi
from tests.bot.telegram.phone import Phone
from tests.bot.telegram.served import Served


def code_in(text: str) -> str:
    """The invitation code of the owner's reply."""
    return text.rsplit("/start ", 1)[1].strip()


def test_a_stranger_gets_one_polite_line_and_nothing_is_read(served: Served, api: BotApi, owner: Phone) -> None:
    """However often they write, in one day."""
    stranger = Phone(api, 999)
    first = stranger.send("pri 118V sec 0V")
    more = [stranger.send("hello?"), stranger.send("/help")]

    shown = stranger.wait(first)["text"]
    owner.ask("help")
    served.settle()

    assert "invitation" in shown
    assert [stranger.answers(one) for one in more] == [[], []]
    assert served.ask_store("SELECT count(*) FROM logged_message WHERE text LIKE '%118%'") == [(0,)]


def test_an_invitation_lets_one_person_in_once(served: Served, api: BotApi, owner: Phone) -> None:
    """By typing it or by the link; the next one with the same code stays out."""
    invitation = owner.ask("/invite")["text"]
    code = code_in(invitation)

    first = Phone(api, 701).ask(f"/start {code}")["text"]
    second = Phone(api, 702).ask(f"/start {code}")["text"]

    assert f"https://t.me/ohmreply_bot?start={code}" in invitation
    assert "You are in" in first
    assert "does not let in" in second
    assert "118 V" in Phone(api, 701).ask("pri 118V sec 0V")["text"]


def test_an_invitation_can_be_made_at_the_machine(served: Served, api: BotApi) -> None:
    """While the bot runs, on the same store."""
    made = CliRunner().invoke(ohmreply, ["invite", "--database", served.settings.database])

    assert made.exit_code == 0
    assert "You are in" in Phone(api, 707).ask(made.output.strip())["text"]


def test_an_old_invitation_lets_nobody_in(served: Served, api: BotApi) -> None:
    """Two days, and it is over."""
    with Session(served.engine) as session, session.begin():
        code = members.invite(session, 501, utc_now() - members.GOOD_FOR - timedelta(minutes=1))

    assert "does not let in" in Phone(api, 703).ask(f"/start {code}")["text"]


def test_guessing_codes_ends_soon(session: Session) -> None:
    """After a few wrong ones even a good one is not looked at, for a day."""
    now = utc_now()
    code = members.invite(session, 501, now)
    for number in range(members.TRIES):
        assert not members.join(session, 704, "Guesser", f"wrong{number}", now)

    assert not members.join(session, 704, "Guesser", code, now)
    assert members.join(session, 704, "Guesser", code, now + members.TOLD_AGAIN + timedelta(minutes=1))


def test_the_store_does_not_know_an_invitation(session: Session) -> None:
    """Only its digest is kept: who reads a backup is not let in by it."""
    code = members.invite(session, 501, utc_now())

    from bot.store.tables import Invite

    kept = session.query(Invite).one()
    assert code not in (kept.code_sha256, str(vars(kept)))


def test_someone_removed_is_a_stranger_again(served: Served, api: BotApi, owner: Phone) -> None:
    """From the next message on."""
    served.let_in(705)
    guest = Phone(api, 705)
    assert "118" in guest.ask("pri 118V")["text"]

    assert "705" in owner.ask("/members")["text"]
    assert "705 is out" in owner.ask("/remove 705")["text"]

    assert "invitation" in guest.ask("sec 0V")["text"]


@pytest.mark.parametrize("command", ["/invite", "/members", "/remove 501"])
def test_a_member_can_do_nothing_of_the_owner(served: Served, api: BotApi, command: str) -> None:
    """What is not in the menu is not done either."""
    served.let_in(706)

    assert "Only who runs the bot" in Phone(api, 706).ask(command)["text"]


def test_the_owner_can_not_be_removed(served: Served, owner: Phone) -> None:
    """Nobody locks the bot out of its own house."""
    assert "Nobody" in owner.ask("/remove 501")["text"]
    assert owner.ask("pri 118V")["text"]


@pytest.mark.parametrize("argument", ["", " abc", " 99999999999999999999999", " -5", " 1; DROP TABLE member"])
def test_removing_takes_only_a_number(served: Served, owner: Phone, argument: str) -> None:
    """Anything else is told."""
    assert "/remove NUMBER" in owner.ask(f"/remove{argument}")["text"]


def test_a_new_owner_in_the_settings_takes_over(session: Session) -> None:
    """The one before stays a member."""
    members.name_owner(session, 1, utc_now())
    members.name_owner(session, 2, utc_now())

    roles = {one.user_id: one.role for one in members.everyone(session)}
    assert roles == {1: "member", 2: "owner"}


def test_more_messages_than_the_limit_are_not_read(api: BotApi, sqlite_url) -> None:
    """Told once in that minute; the minute is that of the writing, so a backlog is no flood."""
    with Served(api, sqlite_url, messages_a_minute=3) as served:
        phone = Phone(api, 501)
        phone.now = lambda: 1_800_000_000.0
        sent = [phone.send(f"pri {volts}V") for volts in (110, 111, 112, 113, 114)]
        phone.now = lambda: 1_800_000_060.0
        later = phone.ask("pri 115V")
        served.settle()

        assert "115" in later["text"]
        assert "Over 3 messages" in phone.answers(sent[3])[0]["text"]
        assert phone.answers(sent[4]) == []
        assert served.ask_store("SELECT count(*) FROM logged_message") == [(4,)]
