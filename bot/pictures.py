"""Charts as PNG bytes, drawn with matplotlib's Figure and Agg (never pyplot, which keeps figures alive).

Drawn in worker processes so that a picture never delays a reply. It knows core's values and nothing of stores or
channels. One card with its own paper reads the same in light and dark chats; hues are told apart without colour
vision as well, every mark carries its word, and each picture carries its facts as a table.
"""

import asyncio
import io
import json
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from multiprocessing import get_context
from textwrap import fill
from typing import TYPE_CHECKING, Any, Final, ParamSpec, TypeVar

from bot.picture_facts import FACTS, Rows, ahead_facts, course_facts, overview_facts, standings_facts, week_facts
from core.model.challenge import Table
from core.model.course import Ahead, Course, Glance, PictureWords, WeekView
from core.model.quantities import from_kg

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

P = ParamSpec("P")
T = TypeVar("T")

WORKERS: Final = 2
"""Both orders of a question "what if" run side by side."""
_LOADED: Final = ("matplotlib.figure", "matplotlib.backends.backend_agg", "core.foresight", "bot.pictures")

_PAPER: Final = "#f6f3ec"
_INK: Final = "#22303a"
_FAINT: Final = "#c9c3b6"
_LINE: Final = "#1b6f78"
_BAND: Final = "#b9d5d3"
_MARK: Final = "#a4471f"
_SIZE_IN: Final = (6.4, 4.8)
_DPI: Final = 150
_HUNDRED: Final = 112
"""A hundred points and room for the figure beside the bar."""
_MOST_NAMES: Final = 16
"""More lines than these cannot be read at a phone's width."""
_LEAST_ROWS: Final = 6
"""Fewer bars than these are drawn no thicker."""
_TITLE_FITS: Final = 46
"""Letters of a title that fit beside each other."""
_TEXT_PT: Final = 13
"""Figures are 960 pixels wide; at a phone's width of about 360 points this text is about as big as the chat's own."""


_COLUMNS: Final = 3
_PANEL_IN: Final = 1.0
_PANEL_TALL: Final = 1.9
"""Height of one small chart with its name, in heights of its tallest bar."""
_NAME_FITS: Final = 14
"""Three small charts side by side are still read on a phone, with names of so many letters."""


class Pictures:
    """Draws, and runs what takes long, in worker processes: started when first needed, renewed now and then.

    They are forked from a process of their own in which everything is loaded already, so that only the first picture
    after the start waits for that.
    """

    def __init__(self) -> None:
        """Nothing is started yet."""
        self._pool: ProcessPoolExecutor | None = None

    async def draw(self, work: Callable[P, T], *args: P.args, **kwargs: P.kwargs) -> T:
        """Run one of the functions below, or another that needs nothing but its arguments, in a worker."""
        if self._pool is None:
            context = get_context("forkserver")
            context.set_forkserver_preload(list(_LOADED))
            self._pool = ProcessPoolExecutor(WORKERS, mp_context=context, max_tasks_per_child=200)
        try:
            return await asyncio.wrap_future(self._pool.submit(work, *args, **kwargs))
        except BrokenProcessPool:
            self._pool = None  # the next picture starts anew
            raise

    def close(self) -> None:
        """Let the workers go."""
        if self._pool is not None:
            self._pool.shutdown(cancel_futures=True)
            self._pool = None


def course_picture(course: Course) -> bytes:
    """The estimate with its band, every session, and which way moved when."""
    figure, axes = _card(course.title)
    days: list[Any] = [point.on for point in course.points]
    shown = [[_shown(course, kg) for kg in (p.estimate, p.low, p.high)] for p in course.points]
    middle, low, high = (list(row) for row in zip(*shown, strict=True))
    axes.fill_between(days, low, high, color=_BAND, linewidth=0)
    axes.plot(days, middle, color=_LINE, linewidth=2.5, marker="o", markersize=6)
    top = max(high)
    gap = (top - min(low) or 1) * 0.05
    for point, value in zip(course.points, middle, strict=True):
        if point.way is not None:
            axes.annotate(
                course.words.ways.get(point.way, point.way),
                (point.on, value),
                (point.on, value + gap),
                color=_MARK,
                fontsize=_TEXT_PT - 2,
                ha="center",
                rotation=90,
                va="bottom",
            )
    axes.set_ylim(min(low) - gap, top + 5 * gap)
    axes.set_ylabel(course.words.axis, fontsize=_TEXT_PT)
    _date_axis(axes, len(days), course.words.day)
    return _png(figure, course_facts(course))


def week_picture(week: WeekView) -> bytes:
    """Sets for each muscle as bars, the coach's range as a bracket behind them, kept sessions in the title."""
    figure, axes = _card(week.words.head or week.title)
    names = [row.muscle.replace("-", " ") for row in week.muscles]
    places = range(len(names))
    for place, row in zip(places, week.muscles, strict=True):
        axes.barh(place, row.high - row.low, left=row.low, height=0.8, color=_BAND)
        inside = row.low <= row.sets <= row.high
        axes.barh(place, row.sets, height=0.36, color=_LINE if inside else _MARK)
        axes.text(
            row.sets + 0.2,
            place,
            f"{row.sets:g}".replace(".", week.words.decimal),
            va="center",
            color=_INK,
            fontsize=_TEXT_PT - 1,
        )
    axes.set_yticks(list(places), names, fontsize=_TEXT_PT)
    axes.invert_yaxis()
    axes.set_xlabel(week.words.axis, fontsize=_TEXT_PT)
    return _png(figure, week_facts(week))


def standings_picture(title: str, table: Table) -> bytes:
    """Points of a hundred as bars, best first, by the names that are shown; who has no place yet is left out.

    ``title`` says what is drawn. Letters that cannot be drawn are left out; the message has the whole names.
    """
    figure, axes = _card("")
    figure.suptitle(fill(_drawable(title), _TITLE_FITS), x=0.02, ha="left", color=_INK, fontsize=_TEXT_PT + 3)
    placed = [line for line in table.standings if line.points is not None][:_MOST_NAMES]
    beside = {"facecolor": _PAPER, "edgecolor": "none", "pad": 1.5}
    for place, line in enumerate(placed):
        axes.barh(place, line.points or 0, height=0.6, color=_MARK if line.place == 1 else _LINE)
        at = (line.points or 0) + 1.5
        axes.text(at, place, f"{line.points}", va="center", color=_INK, fontsize=_TEXT_PT - 1, bbox=beside)
    axes.set_yticks(range(len(placed)), [_drawable(f"{line.place}. {line.shown}") for line in placed])
    axes.set_ylim(max(len(placed), _LEAST_ROWS) - 0.5, -0.5)
    axes.set_xlim(0, _HUNDRED)
    axes.grid(axis="y", visible=False)
    return _png(figure, standings_facts(table))


def _drawable(text: str) -> str:
    """The text without letters that the pictures' font lacks."""
    from matplotlib.font_manager import findfont, get_font

    font = get_font(findfont("DejaVu Sans"))
    return "".join(one for one in text if font.get_char_index(ord(one)))


def overview_picture(people: tuple[Glance, ...], words: PictureWords) -> bytes:
    """Everyone at a glance, one small chart each: sessions kept against planned by week, steps as figures above.

    All charts are drawn on one pair of axes, because thirty pairs take a second to lay out and one takes none.
    """
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    columns = min(max(len(people), 1), _COLUMNS)
    rows = max(-(-len(people) // columns), 1)
    figure = Figure(figsize=(_SIZE_IN[0], rows * _PANEL_IN + 0.4), dpi=_DPI, facecolor=_PAPER)
    FigureCanvasAgg(figure)
    axes = figure.add_axes((0.02, 0.02, 0.96, 0.96), facecolor=_PAPER)
    axes.set_axis_off()
    weeks = max([len(one.weeks) for one in people] or [1])
    wide = weeks + 1.0
    axes.set_xlim(-0.7, columns * wide)
    axes.set_ylim(-rows * _PANEL_TALL - 0.5, 0.2)
    corners = [(n % columns * wide, -(n // columns + 1) * _PANEL_TALL) for n in range(len(people))]
    unit_pt = _SIZE_IN[0] * 0.96 * 72 / (columns * wide + 0.7)
    for counted, share in ((1, 0.8), (0, 0.5)):
        for word, color in ((False, _LINE), (True, _MARK)):
            bars = _bars(people, corners, counted, word=word)
            axes.vlines(*bars, color=_BAND if counted else color, linewidth=share * unit_pt)
    for one, corner in zip(people, corners, strict=True):
        _panel(axes, one, corner)
    axes.text(-0.5, -rows * _PANEL_TALL - 0.35, words.foot, fontsize=_TEXT_PT - 3, color=_INK, va="center")
    return _png(figure, overview_facts(people, words))


def _bars(
    people: tuple[Glance, ...], corners: list[tuple[float, float]], counted: int, *, word: bool
) -> tuple[list[float], list[float], list[float]]:
    """Places, feet and heads of the bars of kept (0) or planned (1) sessions, of those who need a word or not."""
    places, feet, heads = [], [], []
    for one, (left, foot) in zip(people, corners, strict=True):
        for n, week in enumerate(one.weeks if one.word == word else ()):
            places.append(left + n)
            feet.append(foot)
            heads.append(foot + week[counted] / _top(one))
    return places, feet, heads


def _top(one: Glance) -> int:
    return max([1, *(max(kept, planned) for kept, planned, _ in one.weeks)])


def _panel(axes: "Axes", one: Glance, corner: tuple[float, float]) -> None:
    left, foot = corner
    for n, (kept, planned, steps) in enumerate(one.weeks):
        if steps:
            high = foot + max(kept, planned) / _top(one) + 0.05
            axes.text(left + n, high, str(steps), ha="center", fontsize=_TEXT_PT - 4, color=_INK)
    kept, planned, _ = one.weeks[-1] if one.weeks else (0, 0, 0)
    name = f"{one.name[:_NAME_FITS]} {kept}/{planned}"
    axes.text(left - 0.4, foot + 1.42, name, fontsize=_TEXT_PT - 2, color=_MARK if one.word else _LINE, va="center")


def ahead_picture(ahead: Ahead) -> bytes:
    """Two orders of ways run forward: the middle as a line, the span behind it."""
    figure, axes = _card(ahead.title)
    days: list[Any] = list(ahead.days)
    for color, style, (name, rows) in zip((_LINE, _MARK), ("-", "--"), ahead.courses, strict=False):
        shown = [[one if ahead.in_reps else from_kg(one, ahead.unit) for one in row] for row in rows]
        middle, low, high = (list(column) for column in zip(*shown, strict=True))
        axes.fill_between(days, low, high, color=color, alpha=0.16, linewidth=0)
        axes.plot(days, middle, color=color, linewidth=2.5, linestyle=style, label=name)
    axes.set_ylabel(ahead.words.axis, fontsize=_TEXT_PT)
    axes.legend(fontsize=_TEXT_PT - 2, frameon=False, labelcolor=_INK, loc="best")
    _date_axis(axes, len(days), ahead.words.day)
    return _png(figure, ahead_facts(ahead))


def _shown(course: Course, value: float) -> float:
    return value if course.in_reps else from_kg(value, course.unit)


def _card(title: str) -> "tuple[Figure, Axes]":
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    figure = Figure(figsize=_SIZE_IN, dpi=_DPI, facecolor=_PAPER, layout="constrained")
    FigureCanvasAgg(figure)
    axes = figure.add_subplot(facecolor=_PAPER)
    axes.set_title(title, loc="left", color=_INK, fontsize=_TEXT_PT + 3, pad=12)
    axes.tick_params(colors=_INK, labelsize=_TEXT_PT, length=0)
    for side in ("top", "right", "left"):
        axes.spines[side].set_visible(False)
    axes.spines["bottom"].set_color(_FAINT)
    axes.grid(axis="both", color=_FAINT, linewidth=0.6, alpha=0.7)
    axes.set_axisbelow(True)
    axes.xaxis.label.set_color(_INK)
    axes.yaxis.label.set_color(_INK)
    return figure, axes


def _date_axis(axes: "Axes", count: int, day: str = "%-d %b") -> None:
    from matplotlib.dates import AutoDateLocator, DateFormatter

    axes.xaxis.set_major_locator(AutoDateLocator(minticks=min(3, count), maxticks=5))  # type: ignore[no-untyped-call]
    axes.xaxis.set_major_formatter(DateFormatter(day))  # type: ignore[no-untyped-call]


def _png(figure: "Figure", facts: Rows) -> bytes:
    out = io.BytesIO()
    figure.savefig(out, format="png", metadata={"Software": None, FACTS: json.dumps(facts)})
    return out.getvalue()
