"""Readings as rows of a report."""

from collections.abc import Sequence
from datetime import datetime, tzinfo

from bot.report.amounts import amount
from bot.report.job_log import Taken, latest_per_place
from bot.report.paper import Table, Tell
from core.measures import MEASURES
from core.readings import Reading
from core.said import say


def place(reading: Reading, tell: Tell) -> str:
    """
    Where a reading was taken, its leads named.

    Args:
        reading: The reading.
        tell: The reader's language.
    """
    where = capital(tell(MEASURES[reading.measure].place))
    if reading.leads is None:
        return where
    first, second = reading.leads
    between = tell(say("{first} to {second}", first=first, second=second))
    return capital(between) if MEASURES[reading.measure].pair else f"{where} ({between})"


def capital(sentence: str) -> str:
    """
    A sentence that begins a line.

    Args:
        sentence: In any language.

    >>> capital("across the secondary: 24 V")
    'Across the secondary: 24 V'
    """
    return sentence[:1].upper() + sentence[1:]


def shown(reading: Reading) -> str:
    """
    The value as sent.

    Args:
        reading: The reading.
    """
    return amount(reading.value, MEASURES[reading.measure].unit)


def remark(taken: Taken, tell: Tell) -> str:
    """
    What must be known of a reading beside its value.

    Args:
        taken: The reading.
        tell: The reader's language.
    """
    reading = taken.reading
    remarks = (
        (not taken.stands, say("taken back")),
        (taken.old, say("before the repair")),
        (reading.assumed, say("place or unit guessed")),
        (reading.low_impedance, say("low-impedance mode")),
        (reading.not_isolated, say("not isolated")),
    )
    return ", ".join(tell(words) for holds, words in remarks if holds)


def clock(at: datetime, zone: tzinfo, *, days: bool) -> str:
    """
    A time of day, with its day where a job took several.

    Args:
        at: The moment.
        zone: The reader's clock.
        days: True to write the day too.
    """
    return at.astimezone(zone).strftime("%m-%d %H:%M" if days else "%H:%M")


def table(taken: Sequence[Taken], zone: tzinfo, tell: Tell, count: int | None = None) -> Table:
    """
    Readings in the order in which they were sent.

    Args:
        taken: What was read.
        zone: The reader's clock.
        tell: The reader's language.
        count: How many there are in all; None where these are all.
    """
    every = len(taken) if count is None else count

    def note(rows: int) -> str:
        said = say(
            "{shown:d} of {all:d} readings, the latest at each place. The text, CSV and JSON of this report have all",
            shown=rows,
            all=every,
        )
        return "" if rows == every else tell(said)

    days = len({t.at.astimezone(zone).date() for t in taken}) > 1
    return Table(
        heads=(tell(say("Time")), tell(say("Place")), tell(say("Reading")), tell(say("Remark"))),
        rows=tuple((clock(t.at, zone, days=days), place(t.reading, tell), shown(t.reading), remark(t, tell)) for t in taken),
        note=note,
    )


def short_table(taken: Sequence[Taken], zone: tzinfo, tell: Tell) -> Table | None:
    """
    Only the latest standing reading at each place.

    Args:
        taken: What was read.
        zone: The reader's clock.
        tell: The reader's language.

    Returns:
        The table, or None where it would not be shorter.
    """
    kept = latest_per_place(tuple(t for t in taken if t.stands))
    return table(kept, zone, tell, count=len(taken)) if len(kept) < len(taken) else None
