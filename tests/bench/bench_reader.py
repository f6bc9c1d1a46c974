"""Processor time of reading beside a general parser of quantities (quantulum3), in one run on the same messages.

    python -m tests.bench.bench_reader

quantulum3 only finds numbers with units; it is the nearest general library and knows nothing of sets.
"""

import statistics
import subprocess
import sys
import time
import warnings
from collections.abc import Callable

from core.model.reading import Setting
from core.read.reader import read
from tests.core import read_cases

ROUNDS = 5
LENGTH = 4096
SAMPLE = 250
HOSTILE = {
    "one digit": "1" * 4096,
    "numbers": "8 " * 2048,
    "nested separators": "8,/-+" * 819,
    "x chain": "5x" * 2048,
    "names": "bench squat row curl press " * 151,
    "sets": "60x8, " * 682,
    "plus": "8+2" * 1365,
    "symptoms": "chest pain no " * 292,
    "words unknown": "zqxv wvbn " * 409,
    "half names": "benhc sqaut " * 341,
    "not not": "not no never " * 315,
    "rpe": "rpe 8 9 " * 512,
    "tempo": "3-1-1-0 " * 512,
    "lines": "60x8\n" * 819,
    "for for": "60 for " * 585,
    "same": "same again " * 372,
    "sorry": "60x8 sorry x9 " * 292,
    "questions": "should i? " * 409,
    "nested brackets": "(8x" * 682 + ")" * 682,
    "brackets around counts": "(8(" * 1365,
    "and": "and " * 1024,
    "names and": "bench and " * 409,
    "hyphens": "- " * 2048,
    "rests": "rest " * 819,
    "halves": "2.5 " * 1024,
    "colours": "green " * 682,
    "drops": "drop " * 819,
    "days": "yesterday " * 409,
    "sides": "left " * 819,
    "pains denied": "knee no pain but shoulder " * 157,
    "blanks": " " * 4096,
    "two, ten": "two ten " * 512,
}


def timed(texts: list[str], *readers: Callable[[str], object]) -> list[list[float]]:
    """Milliseconds of a processor for each text, the best of a few rounds.

    The readers take turns at every text, so that what else the machine does weighs on all of them.
    """
    best = [[float("inf")] * len(texts) for _ in readers]
    for _ in range(ROUNDS):
        for n, text in enumerate(texts):
            for reader, took in zip(readers, best, strict=True):
                start = time.process_time()
                reader(text)
                took[n] = min(took[n], (time.process_time() - start) * 1000)
    return best


def p99(took: list[float]) -> float:
    """The 99th percentile."""
    return statistics.quantiles(took, n=100)[98]


def plain(text: str) -> object:
    """Read without any setting."""
    return read(text, Setting())


def loading() -> float:
    """Milliseconds of a processor that a new interpreter takes to load the reader, the best of a few."""
    told = "import time; t = time.process_time(); import core.read.reader; print(time.process_time() - t)"
    runs = [subprocess.run([sys.executable, "-c", told], capture_output=True, text=True, check=True) for _ in range(5)]
    return 1000 * min(float(run.stdout) for run in runs)


def main() -> None:
    """Print medians, 99th percentiles, ratios, and the hostile messages' times."""
    start = time.process_time()
    plain("bench 60x8")
    first = (time.process_time() - start) * 1000
    print(f"loading the reader: {loading():.0f} ms; first message, tables built: {first:.0f} ms")
    texts = [case.text for path in sorted(read_cases.FOLDER.glob("a_*.case")) for case in read_cases.parse(path)]
    (ours,) = timed(texts, plain)
    print(f"reader: median {statistics.median(ours):.3f} ms, p99 {p99(ours):.3f} ms over {len(texts)} messages")
    for name, text in HOSTILE.items():
        half, whole = (
            timed([text[:length]], lambda one: read(one, Setting(now_on="barbell-bench-press")))[0][0]
            for length in (LENGTH // 2, LENGTH)
        )
        print(f"hostile {name} ({len(text)} characters): {whole:.1f} ms, {whole / half:.1f} of half its length")
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        from quantulum3 import classifier, parser

        classifier.USE_CLF = False
        same, theirs = timed(texts[:: len(texts) // SAMPLE], plain, parser.parse)
    other, far = statistics.median(theirs), p99(theirs)
    print(f"on {len(same)} of them: reader median {statistics.median(same):.3f} ms, p99 {p99(same):.3f} ms")
    print(f"quantulum3: median {other:.3f} ms, p99 {far:.3f} ms")
    print(f"ratio: median {statistics.median(same) / other:.3f}, p99 {p99(same) / far:.3f}")


if __name__ == "__main__":
    main()
