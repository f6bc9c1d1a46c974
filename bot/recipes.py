"""The values of recipes as text: what a letter's picture is made of. Knows no store and draws nothing."""

from typing import Final

from pydantic import TypeAdapter

from core.model.course import Course, WeekView

COURSE: Final = TypeAdapter(Course)
WEEK: Final = TypeAdapter(WeekView)
