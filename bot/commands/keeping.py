"""`ohmreply backup`, `restore`, `check`, `retention`: looking after the store."""

from pathlib import Path

import click

from bot.commands.options import database


@click.command()
@click.argument("file", type=click.Path(dir_okay=False, path_type=Path))
@database
@click.option("--yes", is_flag=True, help="Replace FILE where it exists.")
def backup(file: Path, database: str | None, *, yes: bool) -> None:
    """
    Copy the whole store into FILE, also while it is used.

    \b
    ohmreply backup jobs-friday.sqlite
    """
    from bot.commands.store_work import backup  # noqa: PLC0415

    backup(database, file, replace=yes)


@click.command()
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@database
@click.option("--yes", is_flag=True, help="Replace the jobs that are there now.")
def restore(file: Path, database: str | None, *, yes: bool) -> None:
    """
    Put a backup back. Jobs that are there now are replaced, and only with --yes.

    \b
    ohmreply restore jobs-friday.sqlite --yes
    """
    from bot.commands.store_work import restore  # noqa: PLC0415

    restore(database, file, replace=yes)


@click.command()
@database
def check(database: str | None) -> None:
    """
    Check the store: the file, and each job's log against its replies. Exits 1 where something is wrong.

    \b
    ohmreply check
    """
    from bot.commands.store_work import check  # noqa: PLC0415

    check(database)


@click.command()
@click.argument("days", required=False, metavar="[DAYS|forever]")
@database
@click.option("--technician", metavar="NAME", help="Only for this one, of the terminal. Default: for everybody.")
def retention(days: str | None, database: str | None, technician: str | None) -> None:
    """
    Show or set how long closed jobs are kept, and delete what is older.

    \b
    ohmreply retention
    ohmreply retention 365
    ohmreply retention forever
    """
    from bot.commands.store_work import retention  # noqa: PLC0415

    retention(database, days, technician)
