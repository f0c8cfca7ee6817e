"""The resettable breaker that sits on a transformer. Common practice, no source."""

from core.advice import NextTest
from core.heard.record import Heard
from core.heard.spoken import Spoken
from core.measures import MEASURES
from core.said import say


def button(_: Heard) -> Spoken:
    """
    What it means that the breaker on the transformer has tripped.

    Args:
        _: That it has.
    """
    return Spoken(
        lines=(
            say("Its own breaker is open: that alone makes the secondary read 0. No verdict on the winding yet"),
            say("Power off, look for the short, push it once. Trips again: it is the load, not the transformer"),
        ),
        next_test=NextTest(measure="load_ohms", instruction=MEASURES["load_ohms"].how),
    )
