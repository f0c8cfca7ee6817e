"""What reading costs: `python -m tests.benchmarks.reading_time` prints CPU time of usual and hostile messages."""

import json
import random
import string
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from statistics import median

from grammar import read
from grammar.dangers import dangers_in
from tests.field_words import WORDS

MESSAGES = Path(__file__).parents[1] / "grammar" / "field_messages.jsonl"


def cpu(work: Callable[[], object], times: int = 5) -> float:
    """CPU of the quickest of several runs, in milliseconds."""
    best = float("inf")
    for _ in range(times):
        dangers_in.cache_clear()
        start = time.process_time()
        work()
        best = min(best, time.process_time() - start)
    return best * 1e3


def hostile(length: int) -> Iterator[tuple[str, str]]:
    """Texts that are hard to read, by name."""
    luck = random.Random(7)
    fills = {
        "one digit": "1 ", "digits": "1", "letters": "a", "commas": ",", "points": "1.", "dashes": "-", "slashes": "a/", "pairs": "blk-wht ", "no": "no ", "not 24": "not 24 ", "to": "to ",
        "number words": "one ", "tens": "twenty four point ", "places": "pri ", "place and value": "pri 118v ", "joined": "pri to ", "questions": "what which why how ", "brackets": "((((", "emoji": "😀", "letters apart": "a b c ",
        "devices": "contactor 8va ", "lines": "pri 1\n", "withdrawn": "scratch that 5 ", "spanish": "no hay voltaje en el ", "accents": "é", "greek": "Ω", "arabic": "مرحبا ", "null": "\x00", "fuse": "fuse jump bypass ", "unknown": "zqxj ",
    }  # fmt: skip
    for name, fill in fills.items():
        yield name, (fill * length)[:length]
    yield "random letters", "".join(luck.choices(string.ascii_lowercase + " ", k=length))
    yield "random signs", "".join(luck.choices(string.printable, k=length))
    yield "field words", " ".join(luck.choices(WORDS, k=length))[:length]
    yield "unicode", "".join(chr(luck.randrange(1, 0xD7FF)) for _ in range(length))


def build() -> float:
    """CPU of the first message less that of a later one, in milliseconds; in a process of its own."""
    code = "import time, grammar; s=time.process_time(); grammar.read('pri 118V sec 0V'); m=time.process_time(); grammar.read('pri 119V sec 1V'); print((m-s)-(time.process_time()-m))"
    return float(subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout) * 1e3


def main() -> None:
    """Prints the figures beside what they must stay under."""
    texts = [json.loads(line)["text"] for line in MESSAGES.read_text(encoding="utf-8").splitlines()]
    read(texts[0])
    usual = sorted(cpu(lambda text=text: read(text), 3) for text in texts)  # type: ignore[misc]
    print(f"usual message: median {median(usual):.2f} ms (at most 2), 99th percentile {usual[int(len(usual) * 0.99)]:.2f} ms")
    print(f"first message: {build():.0f} ms more than a later one (at most 60)")
    worst = 0.0
    for name, text in hostile(4096):
        spent = cpu(lambda text=text: read(text), 2)  # type: ignore[misc]
        worst = max(worst, spent)
        print(f"  4,096 characters, {name}: {spent:.1f} ms")
    print(f"worst of 4,096 characters: {worst:.1f} ms (at most 50)")
    for length in (100, 400, 1000, 2000, 4000):
        text = ("pri 118v sec 24.6, blk to wht 5.1 ohms and the contactor is humming. " * 60)[:length]
        print(f"  {length} characters: {cpu(lambda text=text: read(text)) / length * 1e3:.2f} us a character")  # type: ignore[misc]


if __name__ == "__main__":
    main()
