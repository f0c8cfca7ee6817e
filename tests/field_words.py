"""Words of the field, for texts that are made up by chance."""

WORDS = (
    "pri",
    "sec",
    "118v",
    "24.6",
    "ohms",
    "blk-wht",
    "to",
    "case",
    "OL",
    "not",
    "no",
    "contactor",
    "8VA",
    "loaded",
    "one",
    "eighteen",
    "point",
    "fuse",
    "why",
    "which",
)
