"""What the commands for the crew show."""

import json
from collections.abc import Callable, Collection, Mapping, Sequence
from datetime import UTC, datetime
from pathlib import Path

import click
from rich.console import Console
from rich.table import Table
from rich.text import Text
from sqlalchemy import Engine
from sqlalchemy.orm import Session

from bot.commands.waiting import waiting
from bot.desk.deed import title, verdict_of
from bot.desk.documents import Paper, report
from bot.settings import SettingError, database_url, machine_language
from bot.store.crew import all_jobs, jobs_named
from bot.store.schema import open_store
from bot.store.stats import Count, by_cause, by_supply, by_tap
from bot.store.tables import Job, Technician
from bot.wording.catalog import Catalog, catalog
from bot.wording.verdict import LIKELY
from core.findings import FINDINGS
from core.said import Said, say

HERE = datetime.now().astimezone().tzinfo or UTC


def words() -> Catalog:
    """The sentences in the machine's language."""
    return catalog(machine_language())


def reading(database: str | None) -> Engine:
    """The store, to be read only: a store that can't be written can still be shown."""
    return open_store(database_url(database)).execution_options(reading=True)


def show_jobs(database: str | None, *, only_open: bool, limit: int, as_json: bool) -> None:
    """A row a job."""
    tell = words().tell
    with Session(reading(database)) as session:
        rows = all_jobs(session, only_open=only_open, limit=limit)
        if as_json:
            click.echo(json.dumps([_job_record(job, owner) for job, owner in rows], ensure_ascii=False, indent=2))
            return
        if not rows:
            click.echo(tell(say("No job yet")))
            return
        heads = (say("No."), say("Job"), say("Technician"), say("Last"), say("Verdict"), say("Done"))
        table = _table(tell, heads, whole={0, 3}, wide={4: 5, 5: 4, 1: 4, 2: 2})
        for job, owner in rows:
            found = verdict_of(job)
            table.add_row(
                Text(str(job.id)),
                Text(tell(title(job, HERE))),
                Text(owner.name),
                Text(job.last_at.astimezone(HERE).strftime("%Y-%m-%d")),
                Text("" if found is None else tell(found)),
                Text(job.outcome or (tell(say("closed")) if job.closed_at else "")),
            )
        Console().print(table)


def _job_record(job: Job, owner: Technician) -> dict[str, object]:
    times = {name: at.isoformat() if (at := getattr(job, name)) else None for name in ("opened_at", "last_at", "closed_at")}
    plain = ("id", "name", "outcome", "turns", "finding", "transformer", "confidence", "settled")
    told = ("supply_volts", "tap_volts", "rated_va")
    return {name: getattr(job, name) for name in (*plain, *told)} | times | {"technician": owner.name}


def _table(
    tell: Callable[[Said], str], heads: Sequence[Said], *, whole: Collection[int] = (), wide: Mapping[int, int] | None = None
) -> Table:
    """A table of which some columns are never broken, and the others share what is left of the screen."""
    table = Table(box=None, pad_edge=False, row_styles=("", "dim"))
    for i, head in enumerate(heads):
        table.add_column(tell(head), overflow="fold", no_wrap=i in whole, ratio=(wide or {}).get(i))
    return table


def write_report(database: str | None, asked: str, files: Mapping[str, Path | None], language: str | None) -> None:
    """The report of one job, to the files named or to the screen."""
    tell = words().tell
    with Session(reading(database)) as session:
        found = jobs_named(session, asked)
        if not found:
            raise SettingError(say("No job is called {name}. ohmreply jobs lists them", name=asked))
        if len({job.name for job in found}) > 1:
            numbers = ", ".join(f"{job.id} {job.name}" for job in found[:8])
            raise SettingError(say("Which one? {jobs}", jobs=numbers))
        spoken = language or machine_language()
        wanted: dict[Paper, Path] = {paper: path for paper in PAPERS if (path := files[paper]) is not None}
        if not wanted:
            click.echo(report(session, found[0], "text", HERE, spoken).body.decode())
        for paper, path in wanted.items():
            with waiting(say("Writing {file}", file=path.name)):
                body = report(session, found[0], paper, HERE, spoken).body
            path.write_bytes(body)
            click.echo(tell(say("Written: {file}", file=str(path))))


PAPERS: tuple[Paper, ...] = ("pdf", "text", "csv", "json")


def show_stats(database: str | None, *, as_json: bool) -> None:
    """Three tables: by cause, by supply, by tap."""
    tell = words().tell
    with Session(reading(database)) as session:
        parts = {"cause": by_cause(session, LIKELY), "supply_volts": by_supply(session), "tap_volts": by_tap(session)}
    if as_json:
        record = {name: [_count_record(count) for count in counts] for name, counts in parts.items()}
        click.echo(json.dumps(record, ensure_ascii=False, indent=2))
        return
    if not parts["cause"]:
        click.echo(tell(say("No verdict yet")))
        return
    heads = {"cause": say("Cause"), "supply_volts": say("Supply"), "tap_volts": say("Tap")}
    none = {"cause": say("Not clear yet")}
    for name, counts in parts.items():
        table = _table(tell, (heads[name], say("Jobs"), say("Transformer bad"), say("Settled")))
        for count in counts:
            table.add_row(
                _of(count, tell, none.get(name, say("not told"))), str(count.jobs), str(count.condemned), str(count.settled)
            )
        Console().print(table, "")


def _count_record(count: Count) -> dict[str, object]:
    return {"of": count.of, "jobs": count.jobs, "transformer_bad": count.condemned, "settled": count.settled}


def _of(count: Count, tell: Callable[[Said], str], none: Said) -> Text:
    match count.of:
        case None:
            return Text(tell(none))
        case float():
            return Text(tell(say("{volts:g} V", volts=count.of)))
        case str():
            return Text(tell(FINDINGS[count.of].says))
