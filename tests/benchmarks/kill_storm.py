"""
Kills the real process again and again while messages come in, and counts what became of them.

    python -m tests.benchmarks.kill_storm --kills 200
    python -m tests.benchmarks.kill_storm --kills 200 --workers 3        three webhook workers on PostgreSQL
"""

import argparse
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from sqlalchemy import URL
from sqlalchemy.orm import Session

from bot import members
from bot.delivery.rounds import utc_now
from bot.store.schema import open_store
from tests.benchmarks.servers import postgres
from tests.bot.telegram.bot_api import BotApi
from tests.bot.telegram.phone import Phone
from tests.bot.telegram.process import Process, free_port
from tests.bot.telegram.served import OWNER
from tests.bot.telegram.storm import Tally, storm

FREE = {"OHMREPLY_MESSAGES_A_SECOND": "0", "OHMREPLY_MESSAGES_A_MINUTE": "1000000"}
A_ROUND = 50
"""Kills between counts: the stand-in keeps everything, and must not slow down."""


@contextmanager
def store(workers: int) -> Iterator[URL]:
    """A store of the kind that so many workers need."""
    if workers > 1:
        with postgres() as url:
            yield url
        return
    with tempfile.TemporaryDirectory() as folder:
        yield URL.create("sqlite", database=str(Path(folder) / "jobs.sqlite"))


def one_round(arguments: argparse.Namespace, kills: int, seed: int) -> Tally:
    """Some kills on a fresh store."""
    with store(arguments.workers) as url, BotApi() as api:
        api.latency_s = arguments.latency
        numbers = [OWNER, *range(2200, 2200 + arguments.chats - 1)]
        engine = open_store(url)
        with Session(engine) as session, session.begin():
            for number in numbers[1:]:
                members.join(session, number, "First", members.invite(session, OWNER, utc_now()), utc_now())
        engine.dispose()

        def start() -> Process:
            if arguments.workers == 1:
                return Process(api, url, **FREE)
            port = free_port()
            return Process(api, url, "--webhook", f"http://127.0.0.1:{port}", "--listen", f"127.0.0.1:{port}", **FREE)

        phones = [Phone(api, number) for number in numbers]
        return storm(api, start, phones, kills=kills, a_second=arguments.rate, seed=seed, others=arguments.workers - 1)


def main() -> int:
    """Run it; 1 where a message was lost or a repeat made a sound."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--kills", type=int, default=200)
    parser.add_argument("--workers", type=int, default=1)
    parser.add_argument("--chats", type=int, default=4)
    parser.add_argument("--rate", type=float, default=10.0, help="messages a second, over all chats")
    parser.add_argument("--latency", type=float, default=0.02, help="seconds that the messenger takes for an answer")
    parser.add_argument("--seed", type=int, default=1)
    arguments = parser.parse_args()
    whole = Tally()
    for number in range(0, arguments.kills, A_ROUND):
        part = one_round(arguments, min(A_ROUND, arguments.kills - number), arguments.seed + number)
        print(part, flush=True)
        whole.kills += part.kills
        whole.messages += part.messages
        whole.lost += part.lost
        whole.repeats += part.repeats
        whole.most_repeats = max(whole.most_repeats, part.most_repeats)
        whole.loud_repeats += part.loud_repeats
        whole.out_of_order += part.out_of_order
    print(f"together: {whole}")
    return int(bool(whole.lost or whole.loud_repeats))


if __name__ == "__main__":
    sys.exit(main())
