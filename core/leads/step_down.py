"""Why a step-down transformer has more turns and more ohms on its primary: the sentences to the picture."""

from typing import Final

from core.advice import Answer
from core.readings import Job
from core.said import say

TITLE: Final = say("More turns, more volts, more ohms")
RULE: Final = (
    say("Every turn has the same volts, on both sides"),
    say("The primary's wire is long and thin: more ohms"),
    say("The secondary's is short and thick: few ohms"),
)


def step_down(job: Job) -> Answer:  # noqa: ARG001  # every question is answered alike
    """
    The answer to "why does the primary have more turns".

    Args:
        job: Not needed: it is the same in every unit.
    """
    return Answer(lines=(TITLE, *RULE), picture="step_down")
