"""
How long the printed report of a job of 40 messages takes, pictures and photos and all.

Run it: `python -m tests.benchmarks.report_time`. In a new process at most 2 seconds of processor time, with everything loaded at most half a second.
"""

import pickle
import resource
import subprocess
import sys
import time

COLD_MOST_S = 2.0
WARM_MOST_S = 0.5
RUNS = 5


def report(log_bytes: bytes, paper: str) -> float:
    """Processor time of one report, from the log of the conversation to the bytes, in seconds."""
    turns, about = pickle.loads(log_bytes)
    start = time.process_time()
    from bot.report import as_csv, as_json, as_pdf, as_text, compose
    from bot.report.gather import gather
    from bot.report.pictures import drawn
    from bot.wording.catalog import catalog

    tell = catalog("en").tell
    log = gather(turns, about)
    laid = compose(log, tell)
    if paper == "pdf":
        assert as_pdf(laid, drawn(log, tell), log.photos).startswith(b"%PDF")
    else:
        assert all((as_text(laid), as_csv(laid), as_json(laid)))
    return time.process_time() - start


def whole_process(log_bytes: bytes) -> float:
    """Processor time of a new process that prints the report of a log that it is given, in seconds."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    code = "import sys; from tests.benchmarks.report_time import report; report(sys.stdin.buffer.read(), 'pdf')"
    subprocess.run([sys.executable, "-c", code], input=log_bytes, check=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def main() -> None:
    """Print the least of five of each, since whatever else runs only adds, and fail where it is too much."""
    from tests.benchmarks.long_job import forty_messages  # what a new process must not load

    log_bytes = pickle.dumps(forty_messages())
    cold = min(whole_process(log_bytes) for _ in range(RUNS))
    report(log_bytes, "pdf")
    warm = min(report(log_bytes, "pdf") for _ in range(RUNS))
    other = min(report(log_bytes, "others") for _ in range(RUNS))
    print(
        f"report of 40 messages, 2 pictures, 2 photos: cold {cold:.2f} s, warm {warm:.2f} s; text, CSV and JSON {other:.3f} s"
    )
    assert cold < COLD_MOST_S, "too slow in a new process"
    assert warm < WARM_MOST_S, "too slow with everything loaded"


if __name__ == "__main__":
    main()
