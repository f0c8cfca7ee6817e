"""What the commands that look after the store do."""

import sys
from datetime import UTC, datetime
from pathlib import Path

import click
from sqlalchemy.orm import Session

from bot.commands.waiting import steps
from bot.settings import SettingError, database_url, machine_language
from bot.store.backup import holds_jobs, put_back, write_backup
from bot.store.retention import clear_out, keep_for, kept_for
from bot.store.schema import open_store
from bot.store.technicians import technician as known_technician
from bot.wording.catalog import catalog
from core.said import Said, say


def tell(said: Said) -> None:
    """Say it in the machine's language."""
    click.echo(catalog(machine_language()).tell(said))


def backup(database: str | None, file: Path, *, replace: bool) -> None:
    """Copy the store into a file."""
    if file.exists() and not replace:
        raise SettingError(say("{file} exists. --yes replaces it", file=str(file)))
    engine = open_store(database_url(database))
    with steps(say("Copying")) as step:
        write_backup(engine, file, datetime.now(UTC), step)
    tell(say("Backed up to {file}", file=str(file)))


def restore(database: str | None, file: Path, *, replace: bool) -> None:
    """Put a file's jobs into the store."""
    engine = open_store(database_url(database))
    if holds_jobs(engine) and not replace:
        raise SettingError(say("The store has jobs. --yes replaces them by those of {file}", file=str(file)))
    with steps(say("Putting back")) as step:
        put_back(engine, file, step)
    tell(say("Restored from {file}", file=str(file)))


def check(database: str | None) -> None:
    """Say what is wrong with the store, and leave with 1 where anything is."""
    from bot.desk.verify import verify  # noqa: PLC0415  (loads the engineering)

    engine = open_store(database_url(database))
    wrong: list[Said] = []
    jobs = 0
    with steps(say("Checking")) as step:
        for checked in verify(engine):
            step(checked.done, checked.whole)
            wrong += checked.wrong
            jobs = checked.whole
    for said in wrong:
        tell(said)
    tell(say("{jobs} jobs checked, {wrong} things wrong", jobs=jobs, wrong=len(wrong)))
    sys.exit(1 if wrong else 0)


def retention(database: str | None, days: str | None, technician: str | None) -> None:
    """Show or set how long closed jobs are kept."""
    engine = open_store(database_url(database))
    with Session(engine) as session, session.begin():
        who = None if technician is None else known_technician(session, "local", technician)
        if technician is not None and who is None:
            raise SettingError(say("Nobody here is called {name}", name=technician))
        if days is not None:
            number = _days(days)
            if who is None:
                keep_for(session, number)
            else:
                who.keep_days = number
            session.flush()
            tell(say("{count} jobs deleted", count=clear_out(session, datetime.now(UTC))))
        kept = kept_for(session) if who is None or who.keep_days is None else who.keep_days
        tell(say("Closed jobs are kept for good") if kept is None else say("Closed jobs are kept {days} days", days=kept))


def _days(text: str) -> int | None:
    if text == "forever":
        return None
    if not text.isdecimal() or int(text) < 1:
        raise SettingError(say("Days are a number from 1 up, or forever: {text}", text=text))
    return int(text)
