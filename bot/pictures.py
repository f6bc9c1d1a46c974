"""Charts as PNG bytes, drawn with matplotlib's Figure and Agg (never pyplot, which keeps figures alive).

Drawn in a worker process so that a picture never delays a reply. It knows core's values and nothing of stores or
channels. One card with its own paper reads the same in light and dark chats; hues are told apart without colour
vision as well, and every mark carries its word.
"""

import asyncio
import io
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from typing import TYPE_CHECKING, Any, Final, ParamSpec

from core.model.challenge import Table
from core.model.course import Ahead, Course, Glance, WeekView
from core.model.quantities import from_kg

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

P = ParamSpec("P")

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
_TEXT_PT: Final = 13
"""Figures are 960 pixels wide; at a phone's width of about 360 points this text is about as big as the chat's own."""


_COLUMNS: Final = 3
_PANEL_IN: Final = 1.25
_NAME_FITS: Final = 14
"""Three small charts side by side are still read on a phone, with names of so many letters."""


class Pictures:
    """Draws in one worker process, started at the first picture and renewed now and then."""

    def __init__(self) -> None:
        """Nothing is started yet."""
        self._pool: ProcessPoolExecutor | None = None

    async def draw(self, picture: Callable[P, bytes], *args: P.args, **kwargs: P.kwargs) -> bytes:
        """Run one of the functions below in the worker."""
        if self._pool is None:
            self._pool = ProcessPoolExecutor(1, mp_context=get_context("spawn"), max_tasks_per_child=200)
        return await asyncio.wrap_future(self._pool.submit(picture, *args, **kwargs))

    def close(self) -> None:
        """Let the worker go."""
        if self._pool is not None:
            self._pool.shutdown(cancel_futures=True)


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
                point.way,
                (point.on, value),
                (point.on, value + gap),
                color=_MARK,
                fontsize=_TEXT_PT - 2,
                ha="center",
                rotation=90,
                va="bottom",
            )
    axes.set_ylim(min(low) - gap, top + 5 * gap)
    axes.set_ylabel("repetitions" if course.in_reps else f"could lift once, {course.unit}", fontsize=_TEXT_PT)
    _date_axis(axes, len(days))
    return _png(figure)


def week_picture(week: WeekView) -> bytes:
    """Sets for each muscle as bars, the coach's range as a bracket behind them, kept sessions in the title."""
    figure, axes = _card(f"{week.title}: {week.kept} of {week.planned} sessions")
    names = [row.muscle.replace("-", " ") for row in week.muscles]
    places = range(len(names))
    for place, row in zip(places, week.muscles, strict=True):
        axes.barh(place, row.high - row.low, left=row.low, height=0.8, color=_BAND)
        inside = row.low <= row.sets <= row.high
        axes.barh(place, row.sets, height=0.36, color=_LINE if inside else _MARK)
        axes.text(row.sets + 0.2, place, f"{row.sets:g}", va="center", color=_INK, fontsize=_TEXT_PT - 1)
    axes.set_yticks(list(places), names, fontsize=_TEXT_PT)
    axes.invert_yaxis()
    axes.set_xlabel("sets this week (pale: the range asked for)", fontsize=_TEXT_PT)
    return _png(figure)


def standings_picture(title: str, table: Table) -> bytes:
    """Points of a hundred as bars, best first, by the names that are shown; who has no place yet is left out."""
    figure, axes = _card(title)
    placed = [line for line in table.standings if line.points is not None][:_MOST_NAMES]
    for place, line in enumerate(placed):
        axes.barh(place, line.points or 0, height=0.6, color=_MARK if line.place == 1 else _LINE)
        axes.text((line.points or 0) + 1.5, place, f"{line.points}", va="center", color=_INK, fontsize=_TEXT_PT - 1)
    axes.set_yticks(range(len(placed)), [f"{line.place}. {line.shown}" for line in placed], fontsize=_TEXT_PT)
    axes.invert_yaxis()
    axes.set_xlim(0, _HUNDRED)
    axes.set_xlabel("points of a hundred", fontsize=_TEXT_PT)
    return _png(figure)


def overview_picture(people: tuple[Glance, ...]) -> bytes:
    """Everyone at a glance, one small chart each: sessions kept against planned by week, steps as figures above."""
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    columns = _COLUMNS if len(people) > _COLUMNS else max(len(people), 1)
    rows = max(-(-len(people) // columns), 1)
    size = (_SIZE_IN[0], max(rows * _PANEL_IN, _PANEL_IN * 1.4))
    figure = Figure(figsize=size, dpi=_DPI, facecolor=_PAPER, layout="constrained")
    FigureCanvasAgg(figure)
    for place, one in enumerate(people, 1):
        axes = figure.add_subplot(rows, columns, place, facecolor=_PAPER)
        _panel(axes, one)
    figure.supxlabel("pale: planned, full: kept, figure: steps", fontsize=_TEXT_PT - 3, color=_INK)
    return _png(figure)


def _panel(axes: "Axes", one: Glance) -> None:
    places = range(len(one.weeks))
    color = _MARK if one.word else _LINE
    axes.bar(places, [planned for _, planned, _ in one.weeks], width=0.8, color=_BAND)
    axes.bar(places, [kept for kept, _, _ in one.weeks], width=0.5, color=color)
    top = max([1, *(max(kept, planned) for kept, planned, _ in one.weeks)])
    for place, (kept, planned, steps) in zip(places, one.weeks, strict=True):
        if steps:
            axes.text(place, max(kept, planned) + 0.1, str(steps), ha="center", fontsize=_TEXT_PT - 4, color=_INK)
    axes.set_ylim(0, top * 1.45)
    axes.set_title(one.name[:_NAME_FITS], loc="left", color=color, fontsize=_TEXT_PT - 2, pad=4)
    axes.set_xticks([])
    axes.set_yticks([0, top], ["0", str(top)])
    axes.tick_params(colors=_INK, labelsize=_TEXT_PT - 4, length=0)
    for side in ("top", "right", "left"):
        axes.spines[side].set_visible(False)
    axes.spines["bottom"].set_color(_FAINT)


def ahead_picture(ahead: Ahead) -> bytes:
    """Two orders of ways run forward: the middle as a line, the span behind it."""
    figure, axes = _card(ahead.title)
    days: list[Any] = list(ahead.days)
    for color, style, (name, rows) in zip((_LINE, _MARK), ("-", "--"), ahead.courses, strict=False):
        shown = [[one if ahead.in_reps else from_kg(one, ahead.unit) for one in row] for row in rows]
        middle, low, high = (list(column) for column in zip(*shown, strict=True))
        axes.fill_between(days, low, high, color=color, alpha=0.16, linewidth=0)
        axes.plot(days, middle, color=color, linewidth=2.5, linestyle=style, label=name)
    axes.set_ylabel("repetitions asked" if ahead.in_reps else f"load asked, {ahead.unit}", fontsize=_TEXT_PT)
    axes.legend(fontsize=_TEXT_PT - 2, frameon=False, labelcolor=_INK, loc="best")
    _date_axis(axes, len(days))
    return _png(figure)


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


def _date_axis(axes: "Axes", count: int) -> None:
    from matplotlib.dates import AutoDateLocator, DateFormatter

    axes.xaxis.set_major_locator(AutoDateLocator(minticks=min(3, count), maxticks=5))  # type: ignore[no-untyped-call]
    axes.xaxis.set_major_formatter(DateFormatter("%-d %b"))  # type: ignore[no-untyped-call]


def _png(figure: "Figure") -> bytes:
    out = io.BytesIO()
    figure.savefig(out, format="png", metadata={"Software": None})
    return out.getvalue()
