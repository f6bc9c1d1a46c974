"""German, what is said of today alone: short of time, another kit, nudges, things taken back. Key to template."""
# ruff: noqa: E501 - a row is a sentence as it is sent

from collections.abc import Mapping
from typing import Final

GERMAN_TODAY: Final[Mapping[str, str | tuple[str, str]]] = {
    "undone.again": "Wieder wie vorher: {sets}.",
    "undone.again.many": "Wieder wie vorher: {n} Sätze.",
    "trim.fits": "Was heute noch bleibt, passt so in {n} Minuten.",
    "trim.stays": "{n} Minuten, also bleibt, was am meisten zählt: {list}.",
    "trim.gone": '{list}: fällt heute aus. "whole session after all" holt es zurück.',
    "trim.tight": "Das dauert schon allein länger, also mach so viele Sätze, wie hineinpassen.",
    "trim.nothing": "Vom heutigen Plan ist nichts mehr zu kürzen.",
    "kit.today": "Nur für heute: {list}.",
    "kit.today.gym": "Nur für heute: ein volles Studio.",
    "kit.today.odd": "Mit {list} weiß ich nichts anzufangen.",
    "kit.today.off": 'Damit geht nicht: {list}. "swap {one}" zeigt, was geht.',
    "today.all": "Heute ist wieder alles dabei, mit deiner gewohnten Ausrüstung.",
    "today.all.already": "Heute war nichts gestrichen.",
    "nudge": "Die Pause ist um.",
    "about.nudges.on": 'Ich sage Bescheid, wenn eine Pause um ist; dein nächster Satz hebt das auf. "no nudges" schaltet es ab.',
    "about.nudges.off": "Kein Bescheid mehr, wenn eine Pause um ist.",
    "about.kit.bands.plain": "Bänder",
    "begin.all_off": 'Begonnen. Alle Übungen von heute fallen aus; schreib, was du stattdessen machst, oder sag "swap" und die Übung.',
    "list.waits": '{list}: vorerst nicht. "swap {one}" zeigt, was stattdessen geht.',
    "twice": 'Dasselbe kam gerade eben. Wenn es doppelt gesendet wurde, nimmt "undo" das hier wieder heraus.',
    "kit.today.without": "Nur für heute: ohne {what}.",
    "next.rest_waits": 'Der Rest von heute wartet. Schreib, was du stattdessen machst, oder sag "done" für den Rückblick.',
    "list.head.day": "{title} am {day} um {time}, etwa {n} Minuten.",
    "moved.off.day": "{day} fällt aus. Nichts nachzuholen.",
    "moved.travelling.day": "Gute Reise. {day} ist von der Liste; was du machst, schreib, und es wird behalten.",
    "prompt.buttons.off.day": "morgen nicht",
    "moved.taken": "{day} hat schon ein Training, {title}. Welcher Tag sonst?",
    "moved.none": "Heute ist nichts geplant, das sich verlegen ließe.",
    # the words in pictures
    "picture.reps": "Wiederholungen",
    "picture.once": "einmal zu heben, {unit}",
    "picture.sets": "Sätze der Woche (blass: der gewünschte Bereich)",
    "picture.week": ("{title}\n{kept} von {planned} Training", "{title}\n{kept} von {planned} Trainings"),
    "picture.week.unplanned": ("{title}\n{kept} Training", "{title}\n{kept} Trainings"),
    "picture.day": "%-d.%-m.",
    "picture.way.form": "Technik",
    "picture.way.reps": "Wdh.",
    "picture.way.tempo": "Tempo",
    "picture.way.range": "Weg",
    "picture.way.rest": "Pause",
    "picture.way.load": "Last",
}
