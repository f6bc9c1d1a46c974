"""What a coach looks at: who needs a word, weeks, the overview, the spreadsheet."""

import csv
import io
import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Final

from bot.desk import reviewing
from bot.desk.office import Office
from bot.store import records
from bot.store.outbox import Recipe
from bot.store.people import Person
from core.evidence.body import row_of
from core.model.course import Glance
from core.model.outcome import Button
from core.model.week import Concern, Record
from core.review.attention import NEEDS, concerns
from core.review.week import week_of
from core.say import desk

WEEKS: Final = 5
WEEK_OF: Final = "week_of"
OVERVIEW: Final = "overview"
"""Kinds of recipes: what is made outside of the transaction in which it was asked."""
_DONE_BY: Final = timedelta(hours=3)
"""So long after its time a session without a set counts as missed."""
_LABEL: Final = 24
_BUTTONS: Final = 10


def attention(office: Office) -> None:
    """Who needs a word, with a way to act under it."""
    text, buttons = morning(office)
    office.reply(text, buttons)


def morning(office: Office, *, daily: bool = False) -> tuple[str, list[Button]]:
    """The morning word and its buttons. ``daily``: the one of the clock, which does not repeat what lasts."""
    found = needs(office, daily=daily)
    text = desk.attention(office.voice, found, len(office.clients), office.today)
    return text, [button for one in found[: desk.SHOWN] for button in _acts_on(office, one)][:_BUTTONS]


Seen = Mapping[int, Record]
"""Records of clients by their key."""


def needs(office: Office, *, daily: bool = False, seen: Seen | None = None) -> tuple[Concern, ...]:
    """One line for each client who needs one."""
    keys = {one.id: name for name, one in office.clients.items()}
    seen = seen or records.records(office.conn, keys, office.case.now)
    named = {key: replace(record, name=keys[key]) for key, record in seen.items()}
    zones = records.zones(office.conn, keys)
    days = {id(record): office.case.now.astimezone(zones[key]).date() for key, record in named.items()}
    return concerns(named.values(), lambda record: days[id(record)], morning=daily)


_GO: Final[dict[str, tuple[tuple[str, str], ...]]] = {
    "alarm": (("attention.go.ask", "tell {name} {ask}"), ("attention.go.clear", "clear {name}")),
    "screening": (("attention.go.ask", "tell {name} {ask}"), ("attention.go.clear", "clear {name}")),
    "ache": (("attention.go.ask", "tell {name} {ache}"), ("attention.go.week", "week of {name}")),
    "old_ache": (("attention.go.ask", "tell {name} {ache}"), ("attention.go.week", "week of {name}")),
    "back": (("attention.go.back", "tell {name} {back}"), ("attention.go.week", "week of {name}")),
    "praise": (("attention.go.praise", "tell {name} {praise}"),),
    "rung": (("attention.go.swap", "swap {exercise} for {other} for {name}"), ("attention.go.week", "week of {name}")),
    "missed": (("attention.go.ask", "tell {name} {ask}"),),
    "silence": (("attention.go.ask", "tell {name} {ask}"),),
}
"""The buttons under a concern: label and the order that stands for it. Others show the week."""
_WORDS: Final = {
    "ask": "how are you?",
    "ache": "how is it today?",
    "praise": "well done",
    "back": "good to have you back",
}


def _acts_on(office: Office, one: Concern) -> Iterator[Button]:
    for label, order in _GO.get(one.row, (("attention.go.week", "week of {name}"),)):
        text = office.say(label, name=one.name)[:_LABEL]
        lifts = {"exercise": _lift(one.exercise), "other": _lift(one.other)}
        yield office.order_button(text, order.format(name=one.name, **lifts, **_WORDS))


def _lift(exercise: str | None) -> str:
    """An exercise as orders name it."""
    return row_of(exercise).name if exercise is not None else ""


def week(office: Office, who: Person, name: str) -> None:
    """One client's week, up to today."""
    text = week_text(office, who, name)
    if text is not None:
        office.reply(text)


def week_text(
    office: Office, who: Person, name: str, *, seen: Record | None = None, marked: bool = False
) -> str | None:
    """The words of a client's week; ``marked``: its estimates are noted to compare later ones with.

    ``seen``: the client's record, where it was loaded with the others'.
    """
    found = seen or records.records(office.conn, (who.id,), office.case.now).get(who.id)
    if found is None:
        return None
    record = reviewing.whole(office.conn, who.id, found, office.case.now, office.case.parts.folding)
    zone = records.zones(office.conn, (who.id,))[who.id]
    local = office.case.now.astimezone(zone)
    last = local.date()
    planned = record.plan.on(last.weekday())
    to_come = planned is not None and local.replace(tzinfo=None) < datetime.combine(last, planned.at) + _DONE_BY
    if marked:
        reviewing.mark(office.conn, who.id, record, last)
    return desk.week(
        office.voice_in(record.lifter.unit), week_of(replace(record, name=name), last, still_to_come=to_come)
    )


def weeks(office: Office) -> None:
    """Every client's week, a message each, each made in a transaction of its own; the picture comes last."""
    if not office.clients:
        office.reply(office.say("desk.weeks.none"))
        return
    for name, who in office.clients.items():
        office.promise("", Recipe("", WEEK_OF, json.dumps({"coach": office.coach.id, "who": who.id, "name": name})))
    office.promise(office.say("desk.weeks.done"), overview_recipe(office))


def overview(office: Office) -> None:
    """Everyone as small charts."""
    if not office.clients:
        office.reply(office.say("desk.weeks.none"))
        return
    office.promise(office.say("desk.overview"), overview_recipe(office))


def overview_recipe(office: Office) -> Recipe:
    """How the picture of everyone is made."""
    return Recipe("overview.png", OVERVIEW, json.dumps({"coach": office.coach.id}))


def glances(office: Office, seen: Seen | None = None) -> tuple[Glance, ...]:
    """Everyone at a glance, for the picture."""
    keys = {one.id: name for name, one in office.clients.items()}
    seen = seen or records.records(office.conn, keys, office.case.now)
    word = {one.name for one in needs(office, seen=seen) if one.row in NEEDS}
    return tuple(
        Glance(keys[key], reviewing.weekly_glance(record, office.today, WEEKS), keys[key] in word)
        for key, record in sorted(seen.items(), key=lambda pair: keys[pair[0]].casefold())
    )


def sheet(office: Office, name: str | None = None) -> None:
    """A line a set of the last weeks, of all clients or of one."""
    keys = {one.id: label for label, one in office.clients.items() if name in (None, label)}
    seen = records.records(office.conn, keys, office.case.now)
    rows = [row for key, record in seen.items() for row in _rows(keys[key], record)]
    if not rows:
        office.reply(office.say("desk.sheet.none"))
        return
    office.reply(office.say("desk.sheet"), attachment=("weeks.csv", _csv(rows)))


_HEAD: Final = ("name", "day", "exercise", "load kind", "kg", "repetitions", "seconds", "metres", "in reserve", "form",
                "rest s", "asked", "asked low", "asked high", "asked kg")  # fmt: skip


def _rows(name: str, record: Record) -> Iterator[tuple[object, ...]]:
    days = sorted((one.on, exercise, one) for exercise, some in record.sessions.items() for one in some)
    for on, exercise, session in days:
        for place, act in enumerate(session.sets):
            sets = session.target.sets if session.target is not None else ()
            asked = sets[place] if place < len(sets) else None
            kg = asked.load.kg if asked is not None and asked.load is not None else None
            low, high = asked.reps if asked is not None else (None, None)
            yield (
                name, on.isoformat(), exercise, act.load.kind if act.load else None, act.load.kg if act.load else None,
                act.reps, act.hold_s, act.distance_m, act.rir, act.form, act.rest_s,
                session.target.way if session.target is not None else None, low, high, kg,
            )  # fmt: skip


def _csv(rows: Iterable[tuple[object, ...]]) -> bytes:
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(_HEAD)
    writer.writerows([[_safe(cell) for cell in row] for row in rows])
    return out.getvalue().encode("utf-8-sig")


def _safe(cell: object) -> object:
    """A name that a spreadsheet would take for a formula is kept from it."""
    return f"'{cell}" if isinstance(cell, str) and cell[:1] in "=+-@" else cell
