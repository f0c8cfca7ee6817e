"""`ohmreply serve`: the messenger."""

from pathlib import Path

import click

from bot.commands.options import database


@click.command()
@database
@click.option(
    "--token-file",
    type=click.Path(exists=True, dir_okay=False, path_type=Path),
    help="File with the bot's token. Default: OHMREPLY_TOKEN.",
)
@click.option("--api-url", metavar="URL", help="A self-hosted Bot API server. Default: Telegram's own.")
@click.option("--webhook", metavar="URL", help="The address that Telegram is to call. Default: long polling.")
@click.option(
    "--listen",
    metavar="HOST:PORT",
    default="127.0.0.1:8080",
    show_default=True,
    help="Where the webhook listens, behind whatever ends TLS.",
)
@click.option(
    "--health",
    metavar="HOST:PORT",
    help="Where a supervisor asks how we are: GET /health. Default: OHMREPLY_HEALTH, or nowhere.",
)
def serve(
    database: str | None, token_file: Path | None, api_url: str | None, webhook: str | None, listen: str, health: str | None
) -> None:
    """
    Serve technicians on Telegram.

    The token comes from OHMREPLY_TOKEN or --token-file, the owner's Telegram id from OHMREPLY_OWNER.

    \b
    OHMREPLY_TOKEN=... OHMREPLY_OWNER=123456 ohmreply serve
    """
    from bot.settings import serving  # noqa: PLC0415

    settings = serving(database, token_file, api_url=api_url, webhook=webhook, listen=listen, health=health)
    from bot.channels.telegram import serve  # noqa: PLC0415

    serve(settings)
