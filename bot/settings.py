"""What the environment and the flags set, read once."""

import os
import sys
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from core.said import Said, say

APP = "ohmreply"
LISTEN = "127.0.0.1:8080"


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """Where things are and whom to serve."""

    database: str
    """URL of the store."""
    token: str | None = None
    """Of the Telegram bot."""
    owner: int | None = None
    """Telegram id of whoever runs the bot."""
    api_url: str | None = None
    """A self-hosted Bot API server; None is Telegram's own."""
    webhook: str | None = None
    """The address that Telegram is to call; None asks Telegram itself, by long polling."""
    listen: str = LISTEN
    """Where the webhook listens, behind whatever ends TLS."""
    health: str | None = None
    """Where a supervisor asks how we are; None is nowhere."""
    messages_a_second: float = 30.0
    """At most so many go out. Source: core.telegram.org/bots/faq."""
    messages_a_minute: int = 30
    """At most so many of one person are read."""


def data_folder(environment: Mapping[str, str] = os.environ) -> Path:
    """The folder for the technician's own data, by the custom of the platform."""
    home = Path(environment.get("HOME") or Path.home())
    if sys.platform == "win32":
        return Path(environment.get("LOCALAPPDATA") or home) / APP
    if sys.platform == "darwin":
        return home / "Library" / "Application Support" / APP
    return Path(environment.get("XDG_DATA_HOME") or home / ".local" / "share") / APP


def database_url(given: str | None, environment: Mapping[str, str] = os.environ) -> str:
    """
    The URL of the store: the flag, or `OHMREPLY_DATABASE`, or a file of one's own, whose folder is made.

    A plain path is taken for a SQLite file.

    >>> database_url("postgresql://crew@office/jobs")
    'postgresql://crew@office/jobs'
    >>> database_url("/srv/jobs.sqlite")
    'sqlite:////srv/jobs.sqlite'
    """
    named = given or environment.get("OHMREPLY_DATABASE")
    if named and ":" in named:
        return named
    if named:
        return f"sqlite:///{Path(named).expanduser().absolute()}"
    folder = data_folder(environment)
    folder.mkdir(parents=True, exist_ok=True)
    return f"sqlite:///{folder / 'jobs.sqlite'}"


def machine_language(environment: Mapping[str, str] = os.environ) -> str:
    """
    The language of the machine, for what is said outside a conversation.

    >>> machine_language({"LANG": "es_US.UTF-8"})
    'es'
    """
    named = next((environment[name] for name in ("LC_ALL", "LC_MESSAGES", "LANG") if environment.get(name)), "en")
    return named.split("_", maxsplit=1)[0].split(".", maxsplit=1)[0].lower() or "en"


class SettingError(Exception):
    """Something that has to be set is not, or not as it has to be."""

    def __init__(self, said: Said) -> None:
        super().__init__(str(said))
        self.said = said


def serving(
    database: str | None,
    token_file: Path | None,
    *,
    api_url: str | None = None,
    webhook: str | None = None,
    listen: str = LISTEN,
    health: str | None = None,
    environment: Mapping[str, str] = os.environ,
) -> Settings:
    """
    What `serve` needs, from its flags and the environment.

    Raises:
        SettingError: There is no token, or the owner is no number.
    """
    token = token_file.read_text(encoding="utf-8") if token_file else environment.get("OHMREPLY_TOKEN", "")
    if not token.strip():
        raise SettingError(say("No token: set OHMREPLY_TOKEN, or name a file with --token-file"))
    owner = environment.get("OHMREPLY_OWNER", "").strip()
    if owner and not owner.isdecimal():
        raise SettingError(say("OHMREPLY_OWNER is a Telegram id, a number: {owner}", owner=owner))
    return Settings(
        database=database_url(database, environment),
        token=token.strip(),
        owner=int(owner) if owner else None,
        api_url=api_url,
        webhook=webhook,
        listen=listen,
        health=health or environment.get("OHMREPLY_HEALTH"),
        messages_a_second=_number(environment, "OHMREPLY_MESSAGES_A_SECOND", 30.0),
        messages_a_minute=int(_number(environment, "OHMREPLY_MESSAGES_A_MINUTE", 30)),
    )


def _number(environment: Mapping[str, str], name: str, usual: float) -> float:
    try:
        return float(environment.get(name) or usual)
    except ValueError:
        raise SettingError(say("{name} is a number: {value}", name=name, value=environment[name])) from None
