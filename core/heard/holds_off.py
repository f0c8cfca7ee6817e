"""A breaker that holds once the primary is off. Common practice, no source."""

from core.advice import NextTest
from core.heard.record import Heard
from core.heard.spoken import Spoken
from core.measures import MEASURES
from core.said import say


def holds_off(_: Heard) -> Spoken:
    """
    What it means that the breaker holds without the transformer.

    Args:
        _: That it does.
    """
    return Spoken(
        lines=(say("Holds with the primary off: the line is clear, so the transformer or a short behind it trips it"),),
        cautions=("lock_out",),
        next_test=NextTest(measure="primary_ohms", instruction=MEASURES["primary_ohms"].how, buttons=(say("open"),)),
    )
