"""How long a sizing answer takes. Run it: `python tests/benchmarks/sizing_time.py`. Ten milliseconds of processor time are the most allowed."""

import time

from core.readings import Fact, Job
from core.sizing import size

LOADS = tuple(Fact(fact="load", device=device, count=2, value=6.0) for device in ("contactor", "relay", "zone valve"))
WHOLE = Job(
    facts=(
        *LOADS,
        Fact(fact="load", device="board"),
        Fact(fact="run_feet", value=120.0),
        Fact(fact="wire_awg", value=18.0),
        Fact(fact="supply_volts", value=208.0),
        Fact(fact="tap_volts", value=208.0),
    ),
    asks=("size", "fuse", "wire_run", "parallel"),
)
RUNS = 500


def main() -> None:
    """Print the mean processor time of an answer that has everything in it."""
    size(WHOLE)
    start = time.process_time()
    for _ in range(RUNS):
        size(WHOLE)
    spent_ms = 1000.0 * (time.process_time() - start) / RUNS
    print(f"sizing answer: {spent_ms:.3f} ms of processor time")
    assert spent_ms < 10.0, "a sizing answer must stay under 10 ms"


if __name__ == "__main__":
    main()
