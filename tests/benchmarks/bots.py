"""
The bots that are measured beside ours, each run as a process of its own.

    echo        the library's own application, one committed row a message: the least that keeps anything
    lean        the same with our HTTP client
    constant    our delivery with a desk that says the same to everything: what delivery costs without any thinking
"""

import asyncio
import os
import sys
from typing import Any

from sqlalchemy import Column, Integer, MetaData, Table, Text, insert

from bot.store.engine import engine_for


def echo(request: Any = None) -> None:
    """A bare echo bot, with the settings of the database that ours has."""
    from telegram import Update
    from telegram.ext import Application, ContextTypes, MessageHandler, filters

    engine = engine_for(os.environ["OHMREPLY_DATABASE"])
    with engine.connect() as connection:
        connection.connection.driver_connection.execute("PRAGMA journal_mode=WAL")
    table = Table("echoed", MetaData(), Column("id", Integer, primary_key=True), Column("text", Text))
    table.metadata.create_all(engine)
    row = insert(table)

    async def answer(update: Update, _: ContextTypes.DEFAULT_TYPE) -> None:
        message = update.effective_message
        assert message is not None
        with engine.begin() as connection:
            connection.execute(row, {"text": message.text})
        await message.reply_text(message.text or "")

    base = os.environ["API_URL"]
    builder = (
        Application.builder().token(os.environ["OHMREPLY_TOKEN"]).base_url(f"{base}/bot").base_file_url(f"{base}/file/bot")
    )
    builder = builder.connection_pool_size(16) if request is None else builder.request(request()).get_updates_request(request())
    application = builder.build()
    application.add_handler(MessageHandler(filters.TEXT, answer))
    application.run_polling(timeout=50, poll_interval=0.0)


def lean() -> None:
    """The echo bot with our HTTP client in the place of the library's."""
    from bot.delivery.wire import Wire

    echo(lambda: Wire(16, 60.0))


def constant() -> None:
    """Our delivery alone."""
    from bot.channels.telegram import turn
    from bot.desk import Taken
    from bot.settings import serving

    record = {"reply": "The primary is open\nTransformer bad", "buttons": [], "verdict": None, "asks": []}
    taken = Taken(record=record, language="en", technician_id=1, job_id=None)

    def take(*_: Any) -> Taken:
        return taken

    turn.take = take
    from bot.channels.telegram import serve

    serve(serving(None, None, api_url=os.environ["API_URL"]))


if __name__ == "__main__":
    asyncio.set_event_loop(asyncio.new_event_loop())
    {"echo": echo, "lean": lean, "constant": constant}[sys.argv[1]]()
