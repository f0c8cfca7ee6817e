"""Which side of the transformer a fuse question means."""

from core.readings import Job


def is_line_side(job: Job) -> bool:
    """
    True where only the line side is asked about: the supply is told beside the rating, and nothing of the 24 V side.

    Args:
        job: What is known.
    """
    if "fuse" not in job.asks and "fuse_amps" not in job.fresh:
        return False
    told = {f.fact for f in job.facts} & (job.fresh or {f.fact for f in job.facts})
    return "supply_volts" in told and not told & {"rated_secondary_volts", "load", "run_feet", "wire_awg"}
