"""
How long a job of 5,000 stored messages takes to fold.

Run it: `python -m tests.benchmarks.fold_time`. One second of processor time is the most allowed, and twice the messages may take 3.5 times as long.
"""

import time

from bot.conversation import fold
from tests.benchmarks.long_job import stored

MESSAGES = 5000
MOST_S = 1.0
MOST_GROWTH = 3.5


def spent(count: int) -> float:
    """Processor time of one fold. [s]."""
    turns = stored(count)
    start = time.process_time()
    state = fold(turns)
    seconds = time.process_time() - start
    assert len(state.turns) == count
    return seconds


def main() -> None:
    """Print both, and fail where it is too much."""
    spent(100)
    half, whole = (min(spent(count) for _ in range(3)) for count in (MESSAGES // 2, MESSAGES))
    print(f"fold of {MESSAGES} messages: {whole:.3f} s, of {MESSAGES // 2}: {half:.3f} s")
    assert whole < MOST_S, "too slow"
    assert whole < MOST_GROWTH * half, "grows faster than the log"


if __name__ == "__main__":
    main()
