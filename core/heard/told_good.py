"""A fuse that is called good without a number. Common practice, no source."""

from core.heard.record import Heard
from core.heard.spoken import Spoken
from core.said import say


def told_good(_: Heard) -> Spoken:
    """
    What a fuse that looks good proves.

    Args:
        _: That it is called good.
    """
    return Spoken(
        lines=(say("A fuse can look good and be open: send its ohms out of its holder, or the volts across it"),), decides=False
    )
