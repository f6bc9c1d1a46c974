"""English, what is said of today alone: short of time, another kit, nudges, things taken back. Key to template."""
# ruff: noqa: E501 - a row is a sentence as it is sent

from collections.abc import Mapping
from typing import Final

ENGLISH_TODAY: Final[Mapping[str, str | tuple[str, str]]] = {
    "undone.again": "As before: {sets}.",
    "undone.again.many": "As before: {n} sets.",
    "trim.fits": "The rest of today fits into {n} minutes as it is.",
    "trim.stays": "{n} minutes, so what matters most stays: {list}.",
    "trim.gone": '{list}: off for today. "whole session after all" brings it back.',
    "trim.tight": "It takes longer than that on its own, so do as many sets as fit.",
    "trim.nothing": "There is nothing left of today's plan to cut.",
    "kit.today": "Only for today: {list}.",
    "kit.today.gym": "Only for today: a full gym.",
    "kit.today.odd": "I don't know what to do with {list}.",
    "kit.today.off": 'Not possible with that: {list}. "swap {one}" shows what is.',
    "today.all": "All of today is back, with your usual kit.",
    "today.all.already": "Nothing was left out of today.",
    "nudge": "The rest is over.",
    "about.nudges.on": 'I\'ll say when a rest is over; your next set cancels it. "no nudges" turns that off.',
    "about.nudges.off": "No word when a rest is over.",
    "about.kit.bands.plain": "bands",
    "begin.all_off": 'Started. All of today\'s exercises are off; write what you do instead, or say "swap" and the exercise.',
    "list.waits": '{list}: not for now. "swap {one}" shows what could be done instead.',
    "twice": 'The same came a moment ago. If it was sent twice, "undo" takes this one out.',
    "kit.today.without": "Only for today: without {what}.",
    "next.rest_waits": 'The rest of today waits. Write what you do instead, or say "done" for the recap.',
    "list.head.day": "{title} on {day} at {time}, about {n} minutes.",
    "moved.off.day": "{day} is off. Nothing to make up for.",
    "moved.travelling.day": "Safe travels. {day} is off the list; whatever you do, write it and it is kept.",
    "prompt.buttons.off.day": "not tomorrow",
    "moved.taken": "{day} has its own session, {title}. Which other day?",
    "moved.none": "Nothing is planned today that could move.",
    # the words in pictures
    "picture.reps": "repetitions",
    "picture.once": "could lift once, {unit}",
    "picture.sets": "sets this week (pale: the range asked for)",
    "picture.week": ("{title}\n{kept} of {planned} session", "{title}\n{kept} of {planned} sessions"),
    "picture.week.unplanned": ("{title}\n{kept} session", "{title}\n{kept} sessions"),
    "picture.day": "%-d %b",
    "picture.way.form": "form",
    "picture.way.reps": "reps",
    "picture.way.tempo": "tempo",
    "picture.way.range": "range",
    "picture.way.rest": "rest",
    "picture.way.load": "load",
}
