"""The real course, read once for all tests of a process."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from pathlib import Path

from bot.course.faults import Fault
from bot.course.load import load_with_faults
from bot.course.year import Course

CONTENT = Path(__file__).parents[2] / "content"


@cache
def read_content() -> tuple[Course, Sequence[Fault]]:
    """The course and all faults of its files: a file with faults takes nothing from the others."""
    return load_with_faults(CONTENT)


def whole_course() -> Course:
    """The course without lessons of anybody's own; what is made ready of it, is ready for all."""
    return replace(read_content()[0], own={})
