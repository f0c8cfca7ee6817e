"""`ohmreply serve` as a process of its own, that can be killed."""

import os
import signal
import socket
import subprocess
import sys
from pathlib import Path
from typing import IO, Self

from sqlalchemy import URL

from tests.bot.telegram.bot_api import TOKEN, BotApi
from tests.bot.telegram.served import OWNER

ROOT = Path(__file__).parents[3]


def free_port() -> int:
    """A port nobody listens at."""
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return one.getsockname()[1]


class Process:
    """One process of the bot."""

    def __init__(
        self, api: BotApi, url: URL | str, *flags: str, log: IO[bytes] | int = subprocess.DEVNULL, **settings: str
    ) -> None:
        database = url if isinstance(url, str) else url.render_as_string(hide_password=False)
        environment = {
            **os.environ,
            "OHMREPLY_TOKEN": TOKEN,
            "OHMREPLY_OWNER": str(OWNER),
            "OHMREPLY_DATABASE": database,
            **settings,
        }
        environment["PYTHONPATH"] = str(ROOT)
        self.run = subprocess.Popen(
            [sys.executable, "-c", "from bot.command_line import main; main()", "serve", "--api-url", api.url, *flags],
            env=environment,
            stdout=log,
            stderr=log,
        )

    def kill(self) -> None:
        """As the power does."""
        self.run.send_signal(signal.SIGKILL)
        self.run.wait(10)

    def stop(self, within_s: float = 20.0) -> int:
        """As a supervisor does; the code it ends with."""
        self.run.send_signal(signal.SIGTERM)
        return self.run.wait(within_s)

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        if self.run.poll() is None:
            self.kill()
