"""The study group of the demo, a tutor of another group, and a Monday on which Wren has worked."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from sqlalchemy.engine import Engine
from support.group import Group, Somebody

from bot import demo
from bot.course.load import load_course
from bot.course.year import Course

CONTENT = Path(__file__).parents[2] / "content"


@pytest.fixture(scope="session")
def course() -> Course:
    return load_course(CONTENT)


@pytest.fixture
def group(engine: Engine, course: Course) -> Iterator[Group]:
    """Monday at eight, all days pushed."""
    group = Group(engine, course)
    group.at(8)
    group.tick()
    yield group


@pytest.fixture
def ines(group: Group) -> Somebody:
    return group.who(demo.INES)


@pytest.fixture
def tove(group: Group) -> Somebody:
    return group.who(demo.TOVE)


@pytest.fixture
def anselm(group: Group) -> Somebody:
    return group.who(demo.ANSELM)


@pytest.fixture
def wren(group: Group) -> Somebody:
    return group.who(demo.WREN)


@pytest.fixture
def worked(group: Group, wren: Somebody) -> Somebody:
    """Wren, in the middle of the review: item 1 missed for good, item 2 right, item 3 asked about."""
    group.at(9)
    first = wren.gets_to_review()
    for _ in range(3):
        group.later(20)
        wren.types("123454321")
    wren.presses("show", first.id)
    for expected in (2, 3):
        group.later(20)
        shown = wren.presses("on")
        current = next(each for each in wren.items("review") if each.state == "shown")
        assert current.place == expected, shown
        if expected == 2:
            wren.answers(current)
        else:
            wren.types("123454321")
            wren.presses("ask", current.id)
    group.at(10)
    return wren
