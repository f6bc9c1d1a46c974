"""Processor time of reading beside a general parser of quantities (quantulum3), in one run on the same messages.

    python -m tests.bench.bench_reader

quantulum3 only finds numbers with units; it is the nearest general library and knows nothing of sets.
"""

import statistics
import time
import warnings
from collections.abc import Callable

from core.model.reading import Setting
from core.read.reader import read
from tests.core import read_cases

ROUNDS = 3
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
}


def timed(what: Callable[[str], object], texts: list[str]) -> list[float]:
    """Milliseconds for each text, the best of a few rounds."""
    best = [float("inf")] * len(texts)
    for _ in range(ROUNDS):
        for n, text in enumerate(texts):
            start = time.process_time()
            what(text)
            best[n] = min(best[n], (time.process_time() - start) * 1000)
    return best


def main() -> None:
    """Print medians, 99th percentiles, ratios, and the hostile messages' times."""
    start = time.process_time()
    read("bench 60x8", Setting())
    print(f"first message, tables built: {(time.process_time() - start) * 1000:.0f} ms")
    texts = [case.text for path in sorted(read_cases.FOLDER.glob("a_*.case")) for case in read_cases.parse(path)]
    ours = timed(lambda text: read(text, Setting()), texts)
    middle, tail = statistics.median(ours), statistics.quantiles(ours, n=100)[98]
    print(f"reader: median {middle:.3f} ms, p99 {tail:.3f} ms over {len(texts)} messages")
    for name, text in HOSTILE.items():
        took = timed(lambda one: read(one, Setting(now_on="barbell-bench-press")), [text])[0]
        print(f"hostile {name} ({len(text)} characters): {took:.1f} ms")
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        from quantulum3 import classifier, parser

        classifier.USE_CLF = False

        theirs = timed(lambda text: parser.parse(text), texts[:200])
    other, far = statistics.median(theirs), statistics.quantiles(theirs, n=100)[98]
    ours_same = ours[:200]
    print(f"quantulum3: median {other:.3f} ms, p99 {far:.3f} ms")
    print(
        f"ratio: median {statistics.median(ours_same) / other:.3f}, "
        f"p99 {statistics.quantiles(ours_same, n=100)[98] / far:.3f}"
    )


if __name__ == "__main__":
    main()
