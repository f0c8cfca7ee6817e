"""Coverage-guided fuzzing of the reading: `python -m tests.benchmarks.fuzz_reading [-max_total_time=60]`."""

import sys
import time

import atheris

with atheris.instrument_imports(include=["grammar"]):
    from grammar import read
    from grammar.reader import LONGEST

from tests.grammar.test_any_text import FIELD, sound

MOST_MS = 200.0
"""CPU that one text may take here: the instrumented code is several times slower than the real one. [ms]"""


def one(data: bytes) -> None:
    """Reads one text made of what the fuzzer gives: plain Unicode, or words of the field in a row."""
    given = atheris.FuzzedDataProvider(data)
    if given.ConsumeBool():
        text = given.ConsumeUnicode(LONGEST)
    else:
        join = given.PickValueInList([" ", "", "\n", ", "])
        text = join.join(given.PickValueInList(list(FIELD)) for _ in range(given.ConsumeIntInRange(0, 60)))
    start = time.process_time()
    message = read(text)
    spent_ms = (time.process_time() - start) * 1e3
    if not sound(message):
        raise AssertionError(f"not sound: {text!r} -> {message}")
    if spent_ms > MOST_MS:
        raise AssertionError(f"{spent_ms:.0f} ms for {len(text)} characters: {text[:200]!r}")


def main() -> None:
    """Runs until a text breaks the reading, or for as long as it is told."""
    read("pri 118V sec 0V")  # built before the clock counts
    atheris.Setup(sys.argv, one)
    atheris.Fuzz()


if __name__ == "__main__":
    main()
