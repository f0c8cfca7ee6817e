"""`chat` and `pipe`, with the store that they talk on."""

import io
import sys
from datetime import UTC, datetime
from pathlib import Path

from sqlalchemy import Engine
from sqlalchemy.orm import Session

from bot.channels import json_lines, terminal
from bot.desk import Memory
from bot.settings import data_folder, database_url, machine_language
from bot.store.retention import clear_out, is_set
from bot.store.schema import open_store

FOR_THE_RUN = "sqlite://"
"""A store in memory."""


def chat(database: str | None, technician: str) -> None:
    """Talk in the terminal on the store."""
    engine = open_store(database_url(database))
    _clear_out(engine)
    history = data_folder() / "typed"
    history.parent.mkdir(parents=True, exist_ok=True)
    try:
        terminal.run(
            terminal.Chat(engine=engine, technician=technician, language=machine_language(), history=history, folder=Path.cwd())
        )
    finally:
        engine.dispose()


def _clear_out(engine: Engine) -> None:
    """Delete the closed jobs whose days are over, where days are set."""
    with Session(engine.execution_options(reading=True)) as session:
        has_end = is_set(session)
    if has_end:
        with Session(engine) as session, session.begin():
            clear_out(session, datetime.now(UTC))


def pipe(database: str | None) -> None:
    """Answer JSON Lines on the store, or on one that lives for the run."""
    engine = open_store(database_url(database) if database else FOR_THE_RUN)
    out = io.TextIOWrapper(sys.stdout.buffer, encoding="utf-8", newline="\n")
    try:
        json_lines.run(json_lines.Pipe(engine, Memory()), sys.stdin.buffer, out)
    finally:
        out.detach()
        engine.dispose()
