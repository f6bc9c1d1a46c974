"""The pictures of README, drawn from an invented lifter who follows the advice: python -m tests.bot.drawn writes them.

``--shown FOLDER`` puts them on a light and a dark chat as well, at a phone's width, to be looked at.
"""

import sys
from datetime import date, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

from bot.pictures import course_picture, week_picture
from core.advising import absorb, advise_from, begin
from core.coursing import Past, course_of
from core.evidence.desk import desk_value
from core.model.acts import SetAct
from core.model.course import Course, MuscleSets, WeekView
from core.model.lifter import Kit, Lifter
from core.model.target import Aim, Session, Target
from core.say import progress as say_progress
from core.say.render import Voice

FOLDER = Path(__file__).parents[2] / "fixtures" / "pictures"
VOICE = Voice("Mira", ZoneInfo("Europe/Berlin"))
BODY = Lifter("kg", 68.0, "some", Kit(dumbbells_kg=(8.0, 10.0, 12.5, 15.0, 17.5, 20.0, 22.5, 25.0)))
AIM = Aim(3, (8, 12), 2.0, None, 90.0, ("reps", "tempo", "load"))
FIRST_DAY = date(2026, 1, 5)
SESSIONS = 14
MORE = {4: -2, 9: 0}
"""On these sessions so many repetitions more than asked; on the others three."""


def course(voice: Voice = VOICE) -> Course:
    """Seven weeks of goblet squats, twice a week."""
    past: list[Past] = []
    progress = begin(BODY, "goblet-squat")
    for number in range(SESSIONS):
        on = FIRST_DAY + timedelta(days=7 * (number // 2) + 3 * (number % 2))
        advice = advise_from(progress, BODY, "goblet-squat", AIM, on)
        session = Session(on, _done(number, Target(advice.way, advice.sets)), Target(advice.way, advice.sets))
        past.append((BODY, AIM, session))
        progress = absorb(progress, BODY, AIM, session)
    found = course_of("goblet-squat", voice.heading("goblet-squat"), BODY, tuple(past))
    assert found is not None
    return Course(found.title, found.unit, found.in_reps, found.points, say_progress.course_words(voice, found))


def _done(number: int, target: Target) -> tuple[SetAct, ...]:
    """Three more than asked, with one or two left, except on two bad days."""
    more = MORE.get(number, 3)
    return tuple(
        SetAct("goblet-squat", one.load, one.reps[0] + more, rir=3.0 - number % 2, form="clean", tempo=one.tempo)
        for one in target.sets
    )


def week(voice: Voice = VOICE) -> WeekView:
    """A week with muscles under, in and over the range."""
    low, high = desk_value("sets.low"), desk_value("sets.high")
    sets = {
        "quads": 12.0,
        "glutes": 9.5,
        "chest": 6.0,
        "lats": 10.0,
        "front-delts": 4.5,
        "triceps": 22.0,
        "calves": 3.0,
    }
    rows = tuple(MuscleSets(say_progress.muscle(voice, name), count, low, high) for name, count in sets.items())
    first, last = FIRST_DAY + timedelta(weeks=6), FIRST_DAY + timedelta(weeks=6, days=6)
    title = voice.say("about.week.title", first=voice.date(first), last=voice.date(last))
    return WeekView(title, 2, 3, rows, say_progress.week_words(voice, title, 2, 3))


def main(words: list[str]) -> None:
    """Draw them."""
    drawn = {"progress.png": course_picture(course()), "week.png": week_picture(week())}
    for name, content in drawn.items():
        (FOLDER / name).write_bytes(content)
    if words[:1] == ["--shown"]:
        _shown(Path(words[1]))


def _shown(folder: Path) -> None:
    """Each language's pictures on both papers, in one image."""
    import io

    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure
    from matplotlib.image import imread

    figure = Figure(figsize=(14, 9), dpi=100)
    FigureCanvasAgg(figure)
    voices = [Voice("Mira", ZoneInfo("Europe/Berlin"), "kg", tongue, decimal=",") for tongue in ("en", "es", "de")]
    for column, voice in enumerate(voices):
        for row, content in enumerate((course_picture(course(voice)), week_picture(week(voice)))):
            axes = figure.add_axes((column / 3 + 0.01, 0.5 - row / 2 + 0.02, 0.31, 0.46))
            axes.set_facecolor("#17212b" if row else "#ffffff")
            axes.imshow(imread(io.BytesIO(content)))
            axes.set_axis_off()
    figure.savefig(folder / "shown.png", facecolor="#17212b")


if __name__ == "__main__":
    main(sys.argv[1:])
