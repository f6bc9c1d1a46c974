"""Scores the reader on labelled messages: exactly right, wrong in silence, asked without need, alarms, quiet messages.

    python -m tests.bench.score_readings FILE...      (.jsonl of the contract's shape, or .case)

Prints the rates and, with -v, every message that is not exactly right.
"""

import json
import sys
from collections.abc import Iterator
from pathlib import Path

from bot import codec
from core.read.reader import read
from tests.core import read_cases

Json = dict[str, object]


def messages(path: Path) -> Iterator[Json]:
    """The labelled messages of one file."""
    if path.suffix == ".case":
        for case in read_cases.parse(path):
            yield case.as_line()
        return
    with path.open(encoding="utf-8") as lines:
        for line in lines:
            yield json.loads(line)


def outcome(message: Json) -> tuple[str, Json]:
    """How one message was read (right, silent, asked, missed-ask), and the answer in the contract's shape."""
    setting = codec.setting_in(message.get("setting") or {})
    got = codec.reading_out(read(str(message["text"]), setting))
    want = message["want"]
    assert isinstance(want, dict)
    wanted = want.get("ask")
    wanted = wanted.get("about") if isinstance(wanted, dict) else wanted
    about = got["ask"]["about"] if got.get("ask") else None
    if about == wanted and _same(want["acts"], got["acts"]):
        return "right", got
    if about is not None and wanted is None:
        return "asked", got
    if about is not None:
        return "other-ask", got
    return "silent", got


def _same(want: list[Json], got: list[Json]) -> bool:
    return read_cases.same([read_cases.lean(act) for act in want], [read_cases.lean(act) for act in got])


def main() -> None:
    """Score the files named on the command line."""
    verbose = "-v" in sys.argv
    tally: dict[str, int] = {}
    alarms = heard = false_alarms = quiet = still = 0
    for name in [one for one in sys.argv[1:] if one != "-v"]:
        for message in messages(Path(name)):
            result, got = outcome(message)
            tally[result] = tally.get(result, 0) + 1
            want = message["want"]
            assert isinstance(want, dict)
            wanted = want["acts"]
            assert isinstance(wanted, list)
            signs = {act["sign"] for act in wanted if act["act"] == "alarm"}
            acts = got["acts"]
            assert isinstance(acts, list)
            told = {act["sign"] for act in acts if act["act"] == "alarm"}
            alarms += len(signs)
            heard += len(signs & told)
            false_alarms += bool(told - signs)
            if not want["acts"] and not want.get("ask"):
                quiet += 1
                still += not got["acts"] and not got.get("ask")
            if verbose and result != "right":
                show(message, result, got)
    total = sum(tally.values())
    print({key: f"{count} ({100 * count / total:.1f} %)" for key, count in tally.items()}, "of", total)
    print(f"alarms {heard}/{alarms}, false alarms {false_alarms}, quiet {still}/{quiet}")


def show(message: Json, result: str, got: Json) -> None:
    """One message that was not read exactly, briefly."""
    want = message["want"]
    assert isinstance(want, dict)
    print(f"## {message['id']} {result} {message['text']!r}")
    if message.get("setting"):
        print("   S", json.dumps(message["setting"]))
    print("   want", _brief(want))
    print("   got ", _brief(got))


def _brief(reading: Json) -> str:
    acts = reading["acts"]
    assert isinstance(acts, list)
    ask = reading.get("ask")
    about = ask.get("about") if isinstance(ask, dict) else ask
    rows: list[str] = []
    for act in acts:
        row = " ".join(f"{key}={json.dumps(value)}" for key, value in act.items() if key not in ("act", "span"))
        rows.append(f"{act['act']} {row}")
    out: list[str] = []
    for row in rows:
        if out and out[-1].split("* ", 1)[-1] == row:
            count = int(out[-1].split("* ", 1)[0]) if "* " in out[-1] else 1
            out[-1] = f"{count + 1}* {row}"
        else:
            out.append(row)
    return " | ".join(out) + (f" ASK {about}" if about else "")


if __name__ == "__main__":
    main()
