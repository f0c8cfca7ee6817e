"""`ohmreply chat`: a conversation in the terminal."""

import os
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, tzinfo
from pathlib import Path

import click
from sqlalchemy import Engine
from sqlalchemy.orm import Session

from bot.desk import Document, Incoming, Memory, Taken, document_for, standing, take
from bot.store.trouble import store_trouble
from bot.wording.catalog import catalog
from core.said import say

LEAVE = ("quit", "exit", "/quit", "/exit", "salir")


@dataclass(frozen=True, slots=True, kw_only=True)
class Chat:
    """One technician at one terminal."""

    engine: Engine
    technician: str
    language: str
    history: Path
    """Where the lines typed before are kept, for the arrow keys."""
    folder: Path
    """Where documents are put."""
    now: Callable[[], datetime] = lambda: datetime.now().astimezone()

    @property
    def zone(self) -> tzinfo:
        """The technician's clock."""
        return self.now().tzinfo or UTC


def run(chat: Chat) -> None:
    """Talk until the technician leaves. What was said is kept: the next start goes on."""
    memory = Memory()
    tell = catalog(chat.language).tell
    with Session(chat.engine) as session:
        for line in standing(session, "local", chat.technician, chat.zone):
            click.echo(tell(line))
    if sys.stdin.isatty():
        click.echo(tell(say("Ctrl-D leaves. help shows what to send")))
    for text in typed(chat.history):
        if text.strip().lower() in LEAVE:
            return
        try:
            _one(chat, memory, text)
        except Exception as error:
            if os.environ.get("OHMREPLY_DEBUG"):
                raise
            said = store_trouble(error) or say("That message could not be worked on, and was not stored")
            click.secho(tell(said), err=True, fg="red")


def _one(chat: Chat, memory: Memory, text: str) -> None:
    sent = Incoming(channel="local", address=chat.technician, name=chat.technician, text=text, sent_at=chat.now())
    with Session(chat.engine) as session:
        taken = take(session, sent, memory)
        session.commit()
        paper = document_for(session, taken, chat.zone) if taken.document else None
    show(taken)
    if paper is not None:
        click.echo(catalog(taken.language).tell(say("Written: {file}", file=str(put(chat.folder, paper)))))
    click.echo()


def typed(history: Path) -> Iterator[str]:
    """What is typed, message by message: with line editing where there is a terminal, else line by line."""
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        for raw in sys.stdin.buffer:
            yield raw.decode("utf-8", "replace").rstrip("\r\n")
        return
    from prompt_toolkit import PromptSession  # noqa: PLC0415  (only where a person types)
    from prompt_toolkit.history import FileHistory  # noqa: PLC0415

    prompt: PromptSession[str] = PromptSession(history=FileHistory(str(history)))
    while True:
        try:
            yield prompt.prompt("> ")
        except KeyboardInterrupt:
            continue  # as in a shell: drops the line and not the conversation
        except EOFError:
            return


def show(taken: Taken) -> None:
    """The reply, its verdict bold and its buttons dim where the terminal can."""
    first, *rest = taken.text.split("\n")
    click.secho(first, bold=True)
    for line in rest:
        click.echo(line)
    if taken.buttons:
        click.secho("  ".join(f"[{button}]" for button in taken.buttons), dim=True)


def put(folder: Path, document: Document) -> Path:
    """Write a document beside what is there: nothing is overwritten."""
    path = folder / document.name
    number = 2
    while path.exists():
        path = folder / f"{Path(document.name).stem}-{number}{Path(document.name).suffix}"
        number += 1
    path.write_bytes(document.body)
    return path
