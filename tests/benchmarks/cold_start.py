"""
What a cold `ohmreply ask` costs, against importing the libraries that it can't do without.

    python -m tests.benchmarks.cold_start

CPU seconds of whole processes, each with its byte code already written, taken by turns so that a busy machine is busy for both.
The figure that counts is the ratio of the medians.
"""

import resource
import statistics
import subprocess
import sys

ROUNDS = 15
LIMIT = 1.5
MESSAGE = "pri 118V sec 0V pri-ohm open"
LIBRARIES = "import click, lark, numpy, pint, rapidfuzz"
"""What reading a message, the arithmetic and the command itself stand on."""

BARE = (sys.executable, "-c", LIBRARIES)
ASK = (sys.executable, "-c", "from bot.command_line import main; main()", "ask", MESSAGE)


def cpu_s(command: tuple[str, ...]) -> float:
    """CPU seconds of one run of a command, its start and end included."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(command, check=True, capture_output=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def main() -> int:
    """Measure, show, and leave with 1 where the limit is passed."""
    cpu_s(BARE), cpu_s(ASK)  # writes the byte code
    pairs = [(cpu_s(BARE), cpu_s(ASK)) for _ in range(ROUNDS)]
    bare, ask = (statistics.median(times) for times in zip(*pairs, strict=True))
    ratio = ask / bare
    print(f"libraries alone {bare * 1000:.0f} ms, ohmreply ask {ask * 1000:.0f} ms of CPU: {ratio:.2f} times (limit {LIMIT})")
    return 0 if ratio <= LIMIT else 1


if __name__ == "__main__":
    sys.exit(main())
