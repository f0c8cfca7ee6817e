"""How much of the volts a run may lose: advice, no law."""

from typing import Final

from core.said import say
from core.standards.rule import Rule
from core.standards.source import Source

SOURCE: Final = Source("NEC", "210.19(A) informational note, 3 % on a branch", "read in the 2011 edition")

ADVISED_SHARE: Final = 0.03

ADVISED_DROP: Final = Rule(
    says=say("3 %, advice: NEC 210.19(A) note"),
    source=SOURCE,
    limits="Written for branch circuits and not enforceable; on 24 V controls the coil's 85 % is what counts.",
)
