"""What `serve` needs, from its flags and the environment."""

from pathlib import Path

import pytest
from click.testing import CliRunner

from bot.command_line import ohmreply
from bot.settings import SettingError, serving

FULL = {"OHMREPLY_TOKEN": "1:secret", "OHMREPLY_OWNER": "501", "OHMREPLY_DATABASE": "sqlite://"}


def test_the_token_comes_from_the_environment_or_a_file(tmp_path: Path) -> None:
    """A file comes first, and the end of its line is no part of it."""
    file = tmp_path / "token"
    file.write_text("2:other\n")

    assert serving(None, None, environment=FULL).token == "1:secret"
    assert serving(None, file, environment=FULL).token == "2:other"


def test_no_flag_takes_the_token_itself() -> None:
    """What stands on a command line, everybody on the machine can read."""
    taken = {option for parameter in ohmreply.commands["serve"].params for option in parameter.opts}

    assert "--token-file" in taken
    assert not {"--token", "-t"} & taken


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"OHMREPLY_TOKEN": " "}, "No token"),
        ({"OHMREPLY_OWNER": "@boss"}, "a Telegram id"),
        ({"OHMREPLY_MESSAGES_A_MINUTE": "many"}, "OHMREPLY_MESSAGES_A_MINUTE is a number"),
    ],
)
def test_a_setting_that_can_not_be_is_said_in_a_line(change: dict[str, str], says: str) -> None:
    """With its name, and never with the token."""
    with pytest.raises(SettingError) as told:
        serving(None, None, environment=FULL | change)

    assert says in str(told.value.said)
    assert "secret" not in str(told.value.said)


def test_serve_without_a_token_ends_with_one_line() -> None:
    """And with 2, as for any wrong use."""
    told = CliRunner().invoke(ohmreply, ["serve"], env={"OHMREPLY_TOKEN": "", "OHMREPLY_DATABASE": "sqlite://"})

    assert told.exit_code == 2 or isinstance(told.exception, SettingError)
    assert "Traceback" not in told.output


def test_limits_and_addresses_are_read() -> None:
    """Thirty and thirty unless set; no health address unless asked for."""
    usual, own = (
        serving(None, None, environment=FULL),
        serving(
            None,
            None,
            environment=FULL | {"OHMREPLY_MESSAGES_A_MINUTE": "5", "OHMREPLY_MESSAGES_A_SECOND": "0", "OHMREPLY_HEALTH": ":9"},
        ),
    )

    assert (usual.messages_a_minute, usual.messages_a_second, usual.health, usual.webhook) == (30, 30.0, None, None)
    assert (own.messages_a_minute, own.messages_a_second, own.health) == (5, 0.0, ":9")
