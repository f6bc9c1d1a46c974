"""English for a group and its challenge: key to template. Nothing here has a slot for a load, a body or a target."""

from collections.abc import Mapping
from typing import Final

ENGLISH_GROUP: Final[Mapping[str, str | tuple[str, str]]] = {
    # posts
    "group.open": "{title}: {weeks} weeks, from {first} to {last}.",
    "group.open.both": (
        "What counts: the exercises of your own plan done as asked, and the sessions kept. Weight on the bar doesn't."
    ),
    "group.open.steps": "What counts: the exercises of your own plan done as asked. Weight on the bar doesn't.",
    "group.open.sessions": "What counts: the sessions of your own plan kept. Weight on the bar doesn't.",
    "group.open.points": (
        "Points are of a hundred: what you made of your own chances. Two sessions a week or five, first month or tenth "
        "year, it is the same race. An ache or a pause costs nothing."
    ),
    "group.open.shown": (
        "Shown here: the name you choose, points, sessions kept, the trend, and in what you moved up, without figures. "
        "Nothing else."
    ),
    "group.open.shown.sessions": "Shown here: the name you choose, points, sessions kept, the trend. Nothing else.",
    "group.open.teams": 'Teams: {list}. Say which with your join, as in "join {team}".',
    "group.open.join": 'Press join, or write "join" to me. "join as NAME" for another name; "leave" ends it.',
    "group.open.door": "Not with a coach here? Begin at {link}",
    "group.button.join": "join",
    "group.button.join.team": "join {team}",
    "group.table": "{title}, week {week} of {weeks}.",
    "group.table.closed": "{title}: week {week} of {weeks} is closed.",
    "group.line": "{place}. {name}: {points}{kept}{trend}",
    "group.line.new": "No place yet (it takes {n} planned sessions): {list}",
    "group.line.points": ("{n} point", "{n} points"),
    "group.line.kept": (", {n} of {planned} session", ", {n} of {planned} sessions"),
    "group.line.up": ", up {n}",
    "group.line.down": ", down {n}",
    "group.line.even": "",
    "group.teams": "Teams: {list}.",
    "group.team": "{team} {points}",
    "group.steps": "Steps this week: {list}.",
    "group.steps.one": "{way} ({names})",
    "group.way.form": "cleaner form",
    "group.way.reps": "more repetitions",
    "group.way.tempo": "slower repetitions",
    "group.way.range": "more range",
    "group.way.rest": "less rest",
    "group.way.load": "more load",
    "group.line.new.one": "{name} {kept} of {planned}",
    "group.none": "Nobody has a place yet.",
    "group.final": "{title} is over.",
    "group.final.first": ("First, with {points}: {list}.", "First together, with {points}: {list}."),
    "group.final.team": ("First team: {list}.", "First teams, together: {list}."),
    "group.final.kept": "All together: {n} of {planned} sessions kept.",
    "group.final.picture": "{title}: points of a hundred",
    # answers
    "group.joined": "{name} is in. Counting starts tomorrow.",
    "group.joined.early": "{name} is in. Counting starts on {day}.",
    "group.joined.again": "{name}, you are in already.",
    "group.named": "Shown as {name} from now on.",
    "group.told": (
        "{title}: your session of {day} was told in one go, so it counts once the coach says yes. "
        "Told while you train, set by set or exercise by exercise, it counts by itself."
    ),
    "group.name.taken": 'Somebody here is shown as {name} already. Choose another: "join as NAME".',
    "group.name.long": "That name is too long to show. Up to {most} characters, please.",
    "group.left": "{name} is out. Coming back keeps what was.",
    "group.left.not": "You aren't in, so there is nothing to leave.",
    "group.paused": '{name} pauses from tomorrow. "back" ends the pause.',
    "group.back": "{name} is back from tomorrow.",
    "group.pause.not": "No pause is on.",
    "group.none.open": "No challenge is open here.",
    "group.team.which": "Which team? {list}",
    "group.stranger": "To take part, begin at {link}, then press join again.",
    "group.stranger.plain": "To take part you need a coach here, or an invitation of theirs.",
    "group.coach_only": "Only the coach of this group can open or end a challenge.",
    "group.cancelled": "{title} ends here, on the coach's word.",
    "group.unnamed": "the group",
    "group.opened.later": "Opened in {group}. It is quiet there now; the opening is posted in the morning.",
    "group.opened": "Opened in {group}.",
    "group.already": '{title} is still on here, until {last}. "end challenge" ends it.',
    "group.no_group": "I am in no group of yours yet. Add me to one, then write to me there.",
    "group.which_group": 'Which group? Write it with "in": {list}',
    "group.which_end": "Which one? Write it with its name, as in end challenge NAME: {list}",
    "group.which_of": "You take part in more than one: {list}. Say it in the group that you mean.",
    "group.how": (
        'Coach: challenge "Autumn" for 6 weeks from Monday, steps and sessions, teams Red and Blue; all but the first '
        "word may be left out. end challenge. To me alone: don't count NAME on Tuesday, count NAME on Tuesday.\n"
        "Members: join, join as NAME, leave, pause, back, standings."
    ),
    "group.past": "That start is past. Today, tomorrow or a later day, please.",
    "group.weeks": "Between {low} and {high} weeks, please.",
    # for the coach
    "group.ask.beyond": "{day}, {exercise}: far above the forecast",
    "group.ask.told": "{day}: not told while it happened",
    "group.ask": (
        "{title}: a report of {name} waits for your word.\n{list}\nCount it?",
        "{title}: {n} reports of {name} wait for your word.\n{list}\nCount them?",
    ),
    "group.ask.late": "{title} is over; its result stands.",
    "group.ask.some": "exercise",
    "group.ask.yes": ("count it", "count them"),
    "group.ask.always": "yes, always for {name}",
    "group.ask.no": ("don't count it", "don't count them"),
    "group.ask.done.yes": "{name}: counted.",
    "group.ask.done.always": "{name}: counted, and so is what is told in one go from now on.",
    "group.ask.done.no": "{name}: not counted.",
    "group.ask.old": "That was settled already.",
    "group.rule.not": "{title}: {name}'s session of {day} doesn't count. \"count {name} on ...\" puts it back.",
    "group.rule.counts": "{title}: {name}'s session of {day} counts.",
    "group.rule.nobody": "Nobody called {name} is in a challenge of yours.",
    "group.rule.no_day": "{title}: no session of {name} on {day} is in yet. A day is in once it is over.",
    # joining on one's own
    "group.door.in": (
        "You are in, {name}, on your own. What you report here only you see; the group sees the name you choose there, "
        'your points and your sessions of {title}. Chances come from your plan: write "plan", and below it a line for '
        "each day and each exercise. This is no medical advice; with an illness, an injury or a pregnancy, see a "
        "physician before you start."
    ),
    "own.plan.how": (
        'Write "plan", and below it your week, like:\n'
        "Monday 18:30\ngoblet squat 3x8-12, 2 in reserve\npush-up 3x5-12\nThursday 18:30\ndumbbell row 3x8-12"
    ),
    "own.plan.unread": "I can't read this yet, so nothing has changed:\n{lines}",
    "own.plan.kept": "Your plan from now on:\n{plan}",
}
