"""TEXT -> PLAN. Reads line by line; what is not understood comes back with its line and what is wrong with it.

Nothing is guessed in silence: a line that is half understood is left out whole and named, and what was taken in
a way that its writer may not have meant comes back as a remark.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import date
from typing import Final
from unicodedata import category

from core.model.plan import Plan, Planned, TrainingDay
from core.notation import blocks, days
from core.notation.amounts import in_figures
from core.notation.clauses import NO_WORDS, Said, is_clauses_only
from core.notation.groups import headed, of_group
from core.notation.hidden import ORDERED, Trouble, asked_about
from core.notation.lifts import (
    BULLETS,
    FindExercise,
    Lift,
    lifts,
    looks_prescribed,
    name_at_start,
    opens_with_amount,
    unlabelled,
)
from core.notation.page import Draft, Page, PlanReading, Remark, Unread
from core.notation.spelling import mended
from core.notation.tables import unrolled
from core.notation.wide import whole_plan, with_parts
from core.notation.words import CHATTER, EVERYWHERE, SECTIONS

__all__ = ["FindExercise", "PlanReading", "Remark", "Unread", "read_plan"]


def read_plan(text: str, find: FindExercise, today: date | None = None) -> PlanReading:
    """Read a plan as a coach writes it: a line for a day, a line for each exercise under it.

    ``today`` gives a start without a year its year; without it such a start is asked about.
    """
    page, find = Page(today), mended(find)
    for number, line in unrolled(list(_lines(text))):
        page = _line(page, number, line, find)
    return _finished(page)


_SIGNS: Final = frozenset({"So", "Mn", "Cf"})
"""Kinds of characters that are pictures or invisible: they open lines and mean nothing."""


def _lines(text: str) -> Iterator[tuple[int, str]]:
    for number, raw in enumerate(re.split(r"\r\n|\r|\n", text), 1):
        line = "".join(" " if category(char) in _SIGNS else char for char in raw)
        line = line.strip().strip("*_").replace("**", "").strip().rstrip(";").strip()
        if line.strip("-=_*–—•# "):
            yield number, line


def _line(page: Page, number: int, line: str, find: FindExercise) -> Page:
    if page.closed:
        return _below(page)
    for reader in (whole_plan, _day_line, _copied, headed, _commons):
        done = reader(page, number, line, find)
        if done is not None:
            return done
    if page.lost:
        return _below(page)
    if looks_prescribed(line):
        return _prescribed(page, number, line, find)
    return _loose(page, number, line, find)


def _below(page: Page) -> Page:
    """The line goes the way of the heading above it."""
    last = page.unread[-1]
    return replace(page, unread=(*page.unread[:-1], replace(last, below=last.below + 1)))


_ORDERS: Final = re.compile(r"\d|(?:rests?|tempo|rir|rpe|leave|keep|all)\b.*\d|@", re.IGNORECASE)
"""How what follows a day opens when it is no title but holds for the whole day."""


def _day_line(page: Page, number: int, line: str, find: FindExercise) -> Page | None:
    opened = days.opened(line)
    if opened is None:
        return None
    if isinstance(opened, Trouble):
        return replace(page.asks(number, line, opened), open_=None, lost=True)
    title, inline = _title(opened.tail, find)
    common = is_clauses_only(_FOR_ALL.sub(", ", in_figures(title))) if _ORDERS.match(in_figures(title)) else None
    title = "" if common is not None else title
    opens = [(day, one) for one in (opened, *opened.more) for day in one.weekdays]
    fresh = tuple(Draft(day, replace(one, tail=title), number, common=common or NO_WORDS) for day, one in opens)
    places = tuple(range(len(page.drafts), len(page.drafts) + len(fresh)))
    page = replace(page, drafts=(*page.drafts, *fresh), open_=places, lost=False, group=None)
    page = page.tells(number, line, *opened.remarks)
    if not inline:
        return page
    copied = _copied(page, number, inline, find)
    if copied is not None:
        return copied
    return _prescribed(page, number, inline, find)


_SAME: Final = re.compile(
    r"(?:the\s+)?(?:same|as|repeat|copy)(?:\s+(?:as|of|like))?\s+(?:on\s+)?(?P<day>[A-Za-z’']+)\b(?P<rest>.*)$",
    re.IGNORECASE,
)


def _title(tail: str, find: FindExercise) -> tuple[str, str]:
    """What follows a day and its time: a title, exercises in the same line, or both."""
    if (found := _SAME.search(tail)) and days.weekday_named(found.group("day")) is not None:
        return tail[: found.start()].strip(" ,:-–—("), tail[found.start() :].rstrip(")")
    if not looks_prescribed(tail):
        return tail, ""
    first = lifts(tail, find)[0]
    if isinstance(first.found, Trouble) and first.found.kind in ("no_name", "unknown_exercise"):
        for sign in (":", ","):  # "Push: bench 3x8", "Push, bench 3x8"
            head, mark, rest = tail.partition(sign)
            if (
                mark
                and looks_prescribed(rest)
                and not (looks_prescribed(head) or (sign == "," and re.search(r"\d", head)))
            ):
                return head.strip(), rest.strip()
        if first.found.kind == "no_name" or opens_with_amount(tail):
            return tail, ""
    return "", tail


def _copied(page: Page, number: int, line: str, _find: FindExercise) -> Page | None:
    """ "Same as Monday" under a day."""
    found = _SAME.match(line.strip("-•* "))
    weekday = days.weekday_named(found.group("day")) if found else None
    if found is None or weekday is None or page.day() is None:
        return None
    source = next((one for one in page.drafts if one.weekday == weekday and one.lifts), None)
    if source is None:
        return page.asks(number, line, Trouble("no_such_day", name=found.group("day")))
    if found.group("rest").strip(" ."):
        return page.asks(number, line, Trouble("words_left", name=found.group("rest").strip()))
    day = page.day()
    title = source.opened.tail if day is not None and not day.opened.tail else None
    return page.onto(
        lambda draft: replace(
            draft,
            lifts=(*draft.lifts, *source.lifts),
            common=draft.common.filled(source.common),
            opened=draft.opened if title is None else replace(draft.opened, tail=title),
        )
    )


_FOR_ALL: Final = re.compile(
    rf"^\s*(?:in\s+between\s+sets\b|progress(?:ion)?(?:\s*:|\b(?=\s+by)))\s*[:,-]?\s*|[,(]?\s*\b{EVERYWHERE}\b\)?\s*[:,-]?\s*"
    r"|[,(]?\s*\b(?:unless|if\s+not)\s+(?:noted|said|written|stated)(?:\s+otherwise)?\)?|[,(]?\s*\bunless\s+otherwise\s+\w+\)?",
    re.IGNORECASE,
)
_WHO: Final = re.compile(r"^\s*(?:she|he|they|you|please)\s+(?=rests?\b|leaves?\b|keeps?\b)", re.IGNORECASE)


_LETTER: Final = re.compile(
    r"\s*(?:-\s*)?(?:superset\s+|pair\s+)?(?P<letter>[A-H])(?:s|\s+pairs?|\s+block)?\s*[:.)\-–]\s*", re.IGNORECASE
)
"""The letter of a superset before what holds for all of it: "C: rest 45 s"."""


def _commons(page: Page, number: int, line: str, _find: FindExercise) -> Page | None:
    """A line of clauses alone: for the exercise above it, or for the day or the plan."""
    if page.lost:
        return None
    day = page.day()
    letter = _LETTER.match(line)
    pair = letter.group("letter").upper() if letter else ""
    of_pair = bool(pair) and day is not None and any(one.label == pair for one in day.lifts)
    body = line[letter.end() :] if letter and of_pair else unlabelled(line)[0]
    bare = _FOR_ALL.sub(", ", _WHO.sub("", in_figures(body)))
    said = is_clauses_only(bare)
    if said is None or any(one.kind == "load_written" for one in said.remarks):
        return None
    page = page.tells(number, line, *said.remarks)
    if of_pair:
        return page.onto(lambda draft: _onto(draft, said, lambda one: one.label == pair))
    if day is None:
        return replace(page, common=said.filled(page.common))
    if _FOR_ALL.search(in_figures(body)) or not day.lifts:
        return page.onto(lambda draft: replace(draft, common=said.filled(draft.common)))
    row = day.lifts[-1].row
    return page.onto(lambda draft: _onto(draft, said, lambda one: one.row == row))


def _onto(draft: Draft, said: Said, concerned: Callable[[Lift], bool]) -> Draft:
    """The day with more said of some of its exercises: of a pair, or of those in the line above."""
    return replace(draft, lifts=tuple(_more(one, said) if concerned(one) else one for one in draft.lifts))


def _more(lift: Lift, said: Said) -> Lift:
    never = (*lift.said.never, *said.never)
    return replace(lift, said=replace(lift.said.filled(said), never=never))


def _prescribed(page: Page, number: int, line: str, find: FindExercise) -> Page:
    if page.day() is None:
        return page.asks(number, line, Trouble("no_day"))
    pieces = lifts(line, find)
    if isinstance(pieces[0].found, Trouble) and pieces[0].found.kind == "no_name" and _is_name_above(page, number):
        line = f"{page.unread[-1].text.rstrip(' :')} {line}"
        page, pieces = replace(page, unread=page.unread[:-1]), lifts(line, find)
    for piece in pieces:
        text = line if len(pieces) == 1 else piece.text
        if isinstance(piece.found, Trouble):
            page = page.asks(number, text, piece.found)
            continue
        lift = of_group(page, replace(piece.found, row=number, bullet=line[:1] in BULLETS))
        day = page.day()
        if day is not None and any(one.exercise == lift.exercise for one in day.lifts):
            page = page.asks(number, text, Trouble("exercise_twice", name=text, choices=(lift.exercise,)))
            continue
        page = page.onto(lambda draft, lift=lift: replace(draft, lifts=(*draft.lifts, lift)))  # type: ignore[misc]
        page = page.tells(number, text, *lift.said.remarks)
    return page


def _is_name_above(page: Page, number: int) -> bool:
    """The line above is a name that lacked its sets."""
    return bool(page.unread) and (page.unread[-1].line, page.unread[-1].trouble.kind) == (number - 1, "no_sets")


def _loose(page: Page, number: int, line: str, find: FindExercise) -> Page:
    """A line without sets: a heading, a note to the exercise above, or an exercise that lacks its sets."""
    body, _ = unlabelled(line.lstrip("# "))
    name = name_at_start(body, find)
    day = page.day()
    if (start := blocks.starts_within(body, page.today)) is not None and page.starts is None:
        return replace(page, starts=start)
    if day is None and (within := with_parts(page, body)) is not None:
        page = within
    if re.match(CHATTER, body, re.IGNORECASE):
        return replace(page, group=None).tells(number, line, Trouble("heading", name=body.strip(" :")))
    if day is None:
        kind = "no_day" if name else "heading"
        return page.asks(number, line, Trouble(kind)) if name else page.tells(number, line, Trouble(kind, name=body))
    if body.strip(" :()").lower() in SECTIONS or body.endswith(":"):
        return replace(page, group=None).tells(number, line, Trouble("heading", name=body.strip(" :")))
    if name is not None and not _is_note(line, body, name) and not _is_cue(line, body, name, day):
        return page.asks(number, line, Trouble("no_sets", name=name))
    if odd := asked_about(body) or _half_prescribed(body):
        return page.asks(number, line, odd)
    if page.unread and page.unread[-1].line == number - 1 and page.unread[-1].trouble.kind in _OF_A_LIFT:
        return _below(page)  # a word to an exercise that is not in the plan yet
    if ORDERED.search(body) and not body.startswith(("(", '"')) and body == line:
        return page.asks(number, line, Trouble("words_left", name=body))
    note = re.sub(r"^(?:note|cue|nb)s?\s*[:=]\s*", "", body, flags=re.IGNORECASE).strip(' "“”')
    if note.startswith("(") and note.endswith(")"):
        note = note[1:-1].strip()
    return page.onto(lambda draft: _noted(draft, note)) if note else page


_OF_A_LIFT: Final = frozenset({"unknown_exercise", "which_exercise", "no_sets", "words_left", "open_reps", "set_kind"})


def _is_cue(line: str, body: str, name: str, day: Draft) -> bool:
    """A bullet of words below an exercise that had none ("- chin tucked" under "Hip thrust 3x10")."""
    goes_on = body.lower().startswith(name.lower()) and re.fullmatch(r"[^\d]*\w[^\d]*", body[len(name) :]) is not None
    return line[:1] in BULLETS and goes_on and bool(day.lifts) and not day.lifts[-1].bullet


def _is_note(line: str, body: str, name: str) -> bool:
    """A sentence that happens to open with a name, marked as a note or going on in words ("Rows: elbows high")."""
    marked = re.match(r"(?:note|cue|nb)s?\s*[:=]|\(|\"", line, re.IGNORECASE) is not None
    rest = body[len(name) :] if body.startswith(name) else ""
    return marked or (bool(re.match(r"\s*[:,]\s*\D+$", rest)) and len(rest.split()) > 1)


_HALF: Final = re.compile(
    r"\b[x×]\s*\d|\d\s*[x×]\b|\b\d+\s*(?:sets?|reps?)\b|\b\d+\s*/\s*\d+\s*/\s*\d+|\b(?:kg|lb)\b", re.IGNORECASE
)


def _half_prescribed(body: str) -> Trouble | None:
    return Trouble("no_sets", name=body) if _HALF.search(body) else None


def _noted(draft: Draft, note: str) -> Draft:
    if not draft.lifts:
        return replace(draft, before=(*draft.before, note))
    last = draft.lifts[-1]
    return replace(
        draft, lifts=(*draft.lifts[:-1], replace(last, said=replace(last.said, notes=(*last.said.notes, note))))
    )


def _finished(page: Page) -> PlanReading:
    made: list[tuple[int, TrainingDay]] = []
    unread = list(page.unread)
    remarks = list(page.remarks)
    asked_lines = {row.line for row in unread}
    for draft in page.drafts:
        title = draft.opened.tail
        if not draft.lifts:
            if not days.is_rest_day(title) and draft.line not in asked_lines:
                unread.append(
                    Unread(draft.line, title, Trouble("empty_day", name=title, choices=(str(draft.weekday),)))
                )
                asked_lines.add(draft.line)
            continue
        if any(day.weekday == draft.weekday for _, day in made):
            unread.append(
                Unread(draft.line, title, Trouble("day_twice", choices=(str(draft.weekday),)), len(draft.lifts))
            )
            continue
        made.append((draft.line, _day(draft, page.common)))
        if draft.opened.at is None and not any(row.trouble.kind == "no_time" for row in remarks):
            remarks.append(Remark(draft.line, title, Trouble("no_time", name=f"{days.DEFAULT_TIME:%H:%M}")))
    ordered = tuple(sorted((day for _, day in made), key=lambda day: day.weekday))
    plan = Plan(ordered, page.starts, page.easier)
    order = sorted(unread, key=lambda row: row.line)
    return PlanReading(plan, tuple(order), tuple(sorted(remarks, key=lambda row: row.line)))


def _day(draft: Draft, common: Said) -> TrainingDay:
    common = draft.common.filled(common)
    labels = [lift.label for lift in draft.lifts if lift.label]
    planned: list[Planned] = []
    for lift in draft.lifts:
        notes = list(lift.said.notes)
        if not planned and draft.before:
            notes = [*draft.before, *notes]
        if labels.count(lift.label) > 1:
            notes.append(f"superset {lift.label}")
        note = ", ".join(dict.fromkeys(note for note in notes if note)) or None
        planned.append(Planned(lift.exercise, lift.said.filled(common).aim(), note))
    return TrainingDay(draft.weekday, draft.opened.at or days.DEFAULT_TIME, draft.opened.tail, tuple(planned))
