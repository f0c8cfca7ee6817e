"""At what volts an AC coil pulls in, holds and lives."""

from typing import Final

from core.said import say
from core.standards.rule import Rule
from core.standards.source import Source

SOURCE: Final = Source("TM 5-683 / NAVFAC MO-116 / AFJMAN 32-1083", "chapter 5, 85 to 110 % of rated volts")

PULL_IN_SHARE: Final = 0.85
HIGHEST_SHARE: Final = 1.10

COIL_RANGE: Final = Rule(
    says=say("coil 85 to 110 %: TM 5-683"),
    source=SOURCE,
    limits="AC coils of contactors and relays; the maker's own range decides where the label gives one.",
)
