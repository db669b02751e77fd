"""The study group of the demo, a tutor of another group, and a Monday on which Wren has worked."""

from __future__ import annotations

import pytest
from sqlalchemy.engine import Engine
from support.courses import whole_course
from support.group import Group, Lived, LiveOnce, Somebody

from bot import demo
from bot.course.year import Course


@pytest.fixture(scope="session")
def course() -> Course:
    return whole_course()


@pytest.fixture(scope="session")
def monday(course: Course, live_once: LiveOnce) -> Lived:
    """Monday at eight, all days pushed."""
    return live_once("monday", course, group_on_monday)


@pytest.fixture(scope="session")
def working_monday(course: Course, live_once: LiveOnce) -> Lived:
    """Monday at ten, Wren in the middle of the review."""
    return live_once("working_monday", course, works_on_monday)


@pytest.fixture
def lived(request: pytest.FixtureRequest) -> Lived:
    """What was lived before this test begins."""
    name = "working_monday" if "worked" in request.fixturenames else "monday"
    found: Lived = request.getfixturevalue(name)
    return found


@pytest.fixture
def database_to_copy(lived: Lived) -> str:
    return lived.database


@pytest.fixture
def group(engine: Engine, course: Course, lived: Lived) -> Group:
    """Monday at eight, all days pushed; at ten, where Wren has worked."""
    return Group(engine, course, lived)


def group_on_monday(group: Group) -> None:
    group.at(8)
    group.tick()


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
def worked(wren: Somebody) -> Somebody:
    """Wren, in the middle of the review: item 1 missed for good, item 2 right, item 3 asked about."""
    return wren


def works_on_monday(group: Group) -> None:
    group_on_monday(group)
    wren = group.who(demo.WREN)
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
