"""Mutated messages by the hundred thousand: the reader answers every one, in its time and with spans inside the text.

    python -m tests.bench.fuzz_reader [COUNT] [SEED]

Mutations cut, double, swap, splice and sprinkle the labelled messages of the fixtures.
"""

import random
import sys
import time

from core.model.acts import SetAct
from core.model.quantities import Load
from core.model.reading import PlanLine, Setting
from core.read.reader import read
from tests.core import read_cases

MOST_MS = 50.0
ODD = [
    "\n",
    "\t",
    " ",
    "é",
    "½",
    "٣",
    "🔥",
    "✅",
    "x",
    "@",
    "/",
    "-",
    "+",
    ",",
    ".",
    ":",
    "0",
    "99999999",
    "’",
    "kg",
    "\x00",
    "ﬁ",
    "٪",
    "[x]",
]
SETTINGS = (
    Setting(),
    Setting(unit="lb", now_on="barbell-bench-press"),
    Setting(last=SetAct("pull-up", Load("added", 10), 7), plan=(PlanLine("pull-up", 3, (5, 8), Load("added", 10)),)),
    Setting(last=SetAct("plank", Load("body", 0), hold_s=40), now_on="plank"),
)


def seeds() -> list[str]:
    """Texts to start from."""
    return [case.text for path in sorted(read_cases.FOLDER.glob("a_*.case")) for case in read_cases.parse(path)]


def mutate(rng: random.Random, texts: list[str]) -> str:
    """One text, changed a few times."""
    text = rng.choice(texts)
    for _ in range(rng.randint(1, 4)):
        i, j = sorted((rng.randint(0, len(text)), rng.randint(0, len(text))))
        way = rng.randint(0, 5)
        if way == 0:
            text = text[:i] + text[j:]
        elif way == 1:
            text = text[:j] + text[i:j] + text[j:]
        elif way == 2:
            text = text[:i] + rng.choice(ODD) + text[i:]
        elif way == 3:
            text = text[:i] + rng.choice(texts) + text[i:]
        elif way == 4:
            text = text[j:] + rng.choice(("\n", " ", ", ")) + text[:i]
        else:
            text = "".join(rng.sample(text, len(text))) if len(text) < 40 else text.upper()
    return text[:4096]


def _again(text: str, setting: Setting) -> float:
    """Milliseconds of one more reading: a busy machine can make one slow."""
    start = time.process_time()
    read(text, setting)
    return 1000 * (time.process_time() - start)


def main() -> None:
    """Run; the first failure is raised with its text."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 200_000
    rng = random.Random(int(sys.argv[2]) if len(sys.argv) > 2 else 1)
    texts, longest = seeds(), 0.0
    for done in range(count):
        text = mutate(rng, texts)
        setting = rng.choice(SETTINGS)
        start = time.process_time()
        try:
            reading = read(text, setting)
        except Exception as wrong:
            raise SystemExit(f"after {done}: {wrong!r} on {text!r} with {setting!r}") from wrong
        took = 1000 * (time.process_time() - start)
        if took > MOST_MS:
            took = min(took, *(_again(text, setting) for _ in range(5)))
        if took > MOST_MS:
            raise SystemExit(f"after {done}: {took:.0f} ms on {text!r} with {setting!r}")
        longest = max(longest, took)
        for act in reading.acts:
            if act.span is None or not 0 <= act.span[0] < act.span[1] <= len(text):
                raise SystemExit(f"after {done}: span {act.span} of {act!r} on {text!r}")
    print(f"{count} messages read, none raised, every act has its span; the slowest took {longest:.0f} ms")


if __name__ == "__main__":
    main()
