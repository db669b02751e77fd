"""A study group on a real database, on the first Monday morning."""

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
    """The first Monday at eight, with the days pushed."""
    return live_once("monday", course, begins)


@pytest.fixture
def lived(request: pytest.FixtureRequest) -> Lived | None:
    """What was lived before this test begins: nothing, or the morning that Wren's tests begin with."""
    return request.getfixturevalue("monday") if "wren" in request.fixturenames else None


@pytest.fixture
def database_to_copy(lived: Lived | None, empty_database: str) -> str:
    return lived.database if lived else empty_database


@pytest.fixture
def group(engine: Engine, course: Course, lived: Lived | None) -> Group:
    return Group(engine, course, lived)


@pytest.fixture
def wren(group: Group) -> Somebody:
    """Wren, on the first Monday at eight, with the day pushed."""
    return group.who(demo.WREN)


def begins(group: Group) -> None:
    group.at(8)
    group.tick()
