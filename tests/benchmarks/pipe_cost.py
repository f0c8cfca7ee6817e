"""
What a reply through `pipe` costs, with all readings of its job folded.

    python -m tests.benchmarks.pipe_cost [FILE.jsonl]

CPU milliseconds a line, reading the JSON, answering, storing and writing the record included. The lines are the messages of the demo
conversations, each conversation a job, played several times; or the "text" of each line of a file, ten to a job.
"""

import io
import json
import statistics
import sys
import time
from pathlib import Path

from bot import one_thread  # noqa: F401  (as the commands do, before numpy)
from bot.channels.json_lines import Pipe, answer
from bot.channels.replay import demos
from bot.desk import Memory
from bot.script.scene import read_scene
from bot.store.schema import open_store

TIMES = 4
MEDIAN_MS = 15.0
P99_MS = 40.0
WARM = 20
"""Lines before the clock starts: the first ones load tables that all share."""


def spoken(files: list[str]) -> list[tuple[str, str]]:
    """(job, text) of every line."""
    if files:
        texts = [json.loads(line)["text"] for file in files for line in Path(file).read_text(encoding="utf-8").splitlines()]
        return [(f"job {number // 10}", text) for number, text in enumerate(texts)]
    scenes = [(file.stem, read_scene(file.read_text(encoding="utf-8"))) for file in demos()]
    return [(f"{stem} {time_}", s.text) for time_ in range(TIMES) for stem, scene in scenes for s in scene.spoken]


def main() -> int:
    """Measure, show, and leave with 1 where a limit is passed."""
    pipe = Pipe(open_store("sqlite://"), Memory())
    costs: list[float] = []
    for job, text in spoken(sys.argv[1:]):
        line = json.dumps({"technician": "t1", "text": text, "job": job}).encode()
        out = io.StringIO()
        before = time.process_time()
        json.dump(answer(pipe, line), out, ensure_ascii=False)
        costs.append((time.process_time() - before) * 1000)
    warm = sorted(costs[WARM:])
    median, p99 = statistics.median(warm), warm[int(len(warm) * 0.99)]
    print(
        f"{len(warm)} replies: median {median:.1f} ms (limit {MEDIAN_MS:.0f}), 99th percentile {p99:.1f} ms (limit {P99_MS:.0f}) of CPU"
    )
    print(f"the first reply of the run: {costs[0]:.0f} ms")
    return 0 if median <= MEDIAN_MS and p99 <= P99_MS else 1


if __name__ == "__main__":
    sys.exit(main())
