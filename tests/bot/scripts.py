"""Conversation scripts: the format of fixtures/conversations, and a player that holds them with core alone.

Run as a module it prints scripts as they would be right now, answers renewed.
"""

import json
import re
import sys
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from pydantic import TypeAdapter

from core.checkin import answer, remind
from core.due import ahead
from core.evidence.exercises import EXERCISES
from core.model.acts import SetAct
from core.model.book import Book, Incoming, Profile
from core.model.lifter import Kit, Lifter
from core.model.outcome import Button, Outcome
from core.model.plan import Plan
from core.model.working import count_of
from core.notation.read import read_plan
from tests.bot.keeper import Keeper

FOLDER = Path(__file__).parents[2] / "fixtures" / "conversations"
BETWEEN = timedelta(minutes=1)
SAYS = ("lifter", "press", "press data", "media")
STEPS = {"m": "minutes", "h": "hours", "d": "days"}
HEADS = re.compile(
    r"^(person|plan|usual|clock|lifter|press data|press|media|edit \d+|service|coach|note|kept)( [^:]*)?:"
)


@dataclass(frozen=True, slots=True)
class Entry:
    """One entry of a script: what it is, its text (further lines without their indent), the lines as they stand."""

    head: str
    text: str


@dataclass(slots=True)
class Talk:
    """A conversation under way."""

    keeper: Keeper
    now: datetime
    zone: ZoneInfo
    sent: int = 0
    buttons: tuple[Button, ...] = ()
    out: list[Entry] = field(default_factory=list)

    def play(self, entry: Entry) -> None:
        """One step of the script: what comes of it is appended to ``out``."""
        if entry.head == "clock":
            self._clock(entry.text)
        elif entry.head == "kept":
            self.out.append(entry)
            self.out[-1] = Entry("kept", self._kept(entry.text.split(":")[0]))
        elif entry.head.startswith("edit") or entry.head in SAYS:
            self.now += BETWEEN
            self._ring()
            self.out.append(entry)
            self._say(self._incoming(entry))

    def _incoming(self, entry: Entry) -> Incoming:
        if entry.head.startswith("edit"):
            number = int(entry.head.split()[1])
            self.keeper.reopen(number)
            return Incoming(number, entry.text, edit=True)
        self.sent += 1
        if entry.head == "press":
            by_label = {button.label: button.data for button in self.buttons}
            data = by_label.get(entry.text) or self.buttons[int(entry.text) - 1].data
            return Incoming(self.sent, "", press=data)
        if entry.head == "press data":
            return Incoming(self.sent, "", press=entry.text)
        if entry.head == "media":
            return Incoming(self.sent, "", media=entry.text)
        return Incoming(self.sent, entry.text)

    def _say(self, incoming: Incoming) -> None:
        outcome = answer(incoming, self.keeper.at(self.now), self.now)
        self._carry(outcome, incoming)

    def _carry(self, outcome: Outcome, incoming: Incoming | None) -> None:
        self.keeper.apply(outcome, incoming, self.now)
        for reply in outcome.replies:
            row = " ".join(f"[{button.label}]" for button in reply.buttons)
            text = "\n".join(filter(None, (reply.text, row)))
            self.out.append(Entry("service" if reply.to == "sender" else "coach", text))
            self.buttons = reply.buttons or self.buttons
        self.out += [Entry("note", note) for note in outcome.notes]

    def _clock(self, text: str) -> None:
        self.out.append(Entry("clock", text))
        jump = re.fullmatch(r"\+(\d+)([mhd])", text)
        if jump:
            until = self.now + timedelta(**{STEPS[jump[2]]: int(jump[1])})
        else:
            until = datetime.fromisoformat(text).replace(tzinfo=self.zone).astimezone(UTC)
        while due := self._next_due(until):
            self.now = max(self.now, due)
            self._ring()
        self.now = until

    def _next_due(self, until: datetime) -> datetime | None:
        return min((due for due in self.keeper.agenda.values() if due <= until), default=None)

    def _ring(self) -> None:
        """Work everything that has come due, the earliest first."""
        due = sorted((at, key) for key, at in self.keeper.agenda.items() if at <= self.now)
        for _, (kind, on) in due:
            if self.keeper.agenda.get((kind, on), self.now + BETWEEN) > self.now:
                continue
            del self.keeper.agenda[kind, on]
            self._carry(remind(kind, on, self.keeper.at(self.now), self.now), None)

    def _kept(self, day: str) -> str:
        on = date.fromisoformat(day)
        sets = [one.act for one in self.keeper.everything if one.on == on and isinstance(one.act, SetAct)]
        return f"{day}: " + "; ".join(_plain(one) for one in sets)


def _plain(one: SetAct) -> str:
    load = "-" if one.load is None or one.load.kg is None else f"{one.load.kg:g}"
    count = count_of(one)
    return f"{one.exercise} {load} x {count:g}" if count is not None else f"{one.exercise} {load}"


def parse(text: str) -> tuple[list[str], list[Entry]]:
    """A script's remarks at its top, and its entries in order."""
    remarks: list[str] = []
    entries: list[Entry] = []
    for line in text.splitlines():
        head = HEADS.match(line)
        if head:
            name = head[1] + (head[2] or "")
            entries.append(Entry(name, line[head.end() :].strip()))
        elif line.startswith("#"):
            if not entries:
                remarks.append(line)
        elif line.strip() and entries:
            last = entries.pop()
            entries.append(Entry(last.head, f"{last.text}\n{line.strip()}".lstrip("\n")))
        elif line.strip():
            raise ValueError(f"not a line of a script: {line!r}")
    return remarks, entries


def opened(entries: list[Entry]) -> Talk:
    """The conversation of a script, before its first message."""
    told = {one.head: one.text for one in reversed(entries) if one.head in ("person", "plan", "usual", "clock")}
    person = _person(told["person"])
    zone = ZoneInfo(person.pop("zone", "Europe/Berlin"))
    plan = read_plan(told["plan"], lambda name: (name,) if name in EXERCISES else ()) if "plan" in told else None
    assert plan is None or not plan.unread, plan.unread
    now = datetime.fromisoformat(told["clock"]).replace(tzinfo=zone).astimezone(UTC)
    usual = {name: float(kg) for name, _, kg in (pair.partition("=") for pair in told.get("usual", "").split())}
    book = Book(_profile(person, zone), _lifter(person), plan.plan if plan else Plan(), usual=usual)
    keeper = Keeper(book, now.astimezone(zone).date())
    keeper.apply(Outcome(agenda=ahead(book.profile, book.plan, now)), None, now)
    return Talk(keeper, now, zone)


def _person(text: str) -> dict[str, str]:
    return dict(re.findall(r"(\w+)=(\{.*?\}(?=\s|$)|\S+)", text))


def _profile(person: dict[str, str], zone: ZoneInfo) -> Profile:
    decimal: Any = person.get("decimal", ".")
    language = person.get("language", "en")
    nudges = person.get("nudges") == "yes"
    return Profile(person["name"], zone, language=language, coach=person.get("coach"), decimal=decimal, nudges=nudges)


def _lifter(person: dict[str, str]) -> Lifter:
    unit: Any = person.get("unit", "kg")
    experience: Any = person.get("experience", "some")
    weight = float(person["bodyweight"]) if "bodyweight" in person else None
    kit = TypeAdapter(Kit).validate_python(json.loads(person["kit"])) if "kit" in person else None
    return Lifter(unit, weight, experience, kit, no_heavier=person.get("no_heavier") == "yes")


def played(entries: list[Entry]) -> list[Entry]:
    """The script as it is now: its own steps, with the answers that they get."""
    talk = opened(entries)
    head = [one for one in entries if one.head in ("person", "plan", "usual")]
    first_clock = next(i for i, one in enumerate(entries) if one.head == "clock")
    talk.out = [*head, entries[first_clock]]
    for entry in entries[first_clock + 1 :]:
        talk.play(entry)
    return talk.out


def printed(remarks: list[str], entries: list[Entry]) -> str:
    """A script as text."""
    lines = [*remarks]
    for entry in entries:
        if entry.head in (*SAYS, "clock", "kept") or entry.head.startswith("edit"):
            lines.append("")
        first, *rest = entry.text.split("\n")
        block = entry.head == "plan"
        lines.append(f"{entry.head}:" if block else f"{entry.head}: {first}".rstrip())
        lines += [f"  {line}" for line in ((first, *rest) if block else rest)]
    return "\n".join(lines) + "\n"


def scripts() -> Iterator[Path]:
    """All scripts, by name."""
    return iter(sorted(FOLDER.glob("*.script")))


def main(names: list[str]) -> None:
    """Print scripts as they would be right now; ``--write`` in front writes them."""
    write = "--write" in names
    for name in (one for one in names if one != "--write"):
        path = Path(name)
        remarks, entries = parse(path.read_text(encoding="utf-8"))
        text = printed(remarks, played(entries))
        if write:
            path.write_text(text, encoding="utf-8")
        else:
            sys.stdout.write(text)


if __name__ == "__main__":
    main(sys.argv[1:])
