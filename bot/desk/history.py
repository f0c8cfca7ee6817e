"""What happened on a unit before."""

from bot.desk.deed import At, Deed
from bot.desk.jobs import past
from bot.store.history import jobs_on
from bot.store.jobs import units_meant
from core.said import Said, say


def history(at: At) -> Deed:
    """The earlier jobs on the unit named."""
    if at.name is None:
        return Deed(alone="never")  # the conversation tells what this job has
    name = at.name
    owned = units_meant(at.session, at.technician, name)
    jobs = jobs_on(at.session, owned, but=at.job) if owned else ()
    if not jobs:
        return Deed(lines=(say("Nothing on {name} before", name=name),))
    names = {unit.id: unit for unit in owned}
    lines: list[Said] = []
    spoken_of = None
    for job in jobs:
        unit = names.get(job.unit_id or 0)
        if unit is not None and unit is not spoken_of:
            lines.append(say("Before on {name}:", name=unit.name))
            spoken_of = unit
        lines.append(say("- {job}", job=past(job, at)))
        if job.supply_volts is not None and job.tap_volts is not None:
            lines.append(say("  supply {supply:.0f} V, tap {tap:.0f} V", supply=job.supply_volts, tap=job.tap_volts))
        elif job.supply_volts is not None:
            lines.append(say("  supply {supply:.0f} V", supply=job.supply_volts))
        if job.rated_va is not None:
            lines.append(say("  transformer {rated:.0f} VA", rated=job.rated_va))
    return Deed(lines=tuple(lines))
