"""`ohmreply invite`: a code for somebody, made at the machine."""

import click

from bot.commands.options import database


@click.command()
@database
def invite(database: str | None) -> None:
    """
    Make a code that lets one person write to the bot.

    It is good for 2 days. Whoever gets it sends the bot: /start CODE. The owner can do the same in Telegram: /invite
    """
    from datetime import UTC, datetime  # noqa: PLC0415

    from sqlalchemy.orm import Session  # noqa: PLC0415

    from bot import members  # noqa: PLC0415
    from bot.settings import database_url  # noqa: PLC0415
    from bot.store.schema import open_store  # noqa: PLC0415

    engine = open_store(database_url(database))
    with Session(engine) as session, session.begin():
        code = members.invite(session, 0, datetime.now(UTC))
    engine.dispose()
    click.echo(f"/start {code}")
