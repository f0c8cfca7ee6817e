"""`ohmreply jobs`, `report` and `stats`: what the crew did."""

from pathlib import Path

import click

from bot.commands.options import database


@click.command()
@database
@click.option("--open", "only_open", is_flag=True, help="Only jobs that are not closed.")
@click.option("--limit", default=50, show_default=True, type=click.IntRange(1), help="As many as this, the latest first.")
@click.option("--json", "as_json", is_flag=True, help="JSON instead of a table.")
def jobs(database: str | None, limit: int, *, only_open: bool, as_json: bool) -> None:
    """
    List the jobs of everybody.

    \b
    ohmreply jobs --open
    ohmreply jobs --limit 500 --json
    """
    from bot.commands.crew_tables import show_jobs  # noqa: PLC0415

    show_jobs(database, only_open=only_open, limit=limit, as_json=as_json)


@click.command()
@click.argument("job")
@database
@click.option("--pdf", "pdf", type=click.Path(dir_okay=False, path_type=Path), help="Write one page PDF.")
@click.option("--text", "text", type=click.Path(dir_okay=False, path_type=Path), help="Write plain text.")
@click.option("--csv", "csv", type=click.Path(dir_okay=False, path_type=Path), help="Write CSV, units in the heads.")
@click.option("--json", "json", type=click.Path(dir_okay=False, path_type=Path), help="Write JSON.")
@click.option("--language", type=click.Choice(["en", "es"]), help="Default: that of the machine.")
def report(
    job: str,
    database: str | None,
    pdf: Path | None,
    text: Path | None,
    csv: Path | None,
    json: Path | None,
    language: str | None,
) -> None:
    """
    Report one JOB, by its number or name. Without a file the text is shown.

    \b
    ohmreply report 12
    ohmreply report "rtu 3 library" --pdf rtu-3.pdf --csv rtu-3.csv
    """
    from bot.commands.crew_tables import write_report  # noqa: PLC0415

    write_report(database, job, {"pdf": pdf, "text": text, "csv": csv, "json": json}, language)


@click.command()
@database
@click.option("--json", "as_json", is_flag=True, help="JSON instead of tables.")
def stats(database: str | None, *, as_json: bool) -> None:
    """
    Count failures by cause, by supply and by tap, and the transformers condemned.

    \b
    ohmreply stats
    """
    from bot.commands.crew_tables import show_stats  # noqa: PLC0415

    show_stats(database, as_json=as_json)
