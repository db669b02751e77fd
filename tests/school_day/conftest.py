"""A study group on a real database, on the first Monday morning."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from sqlalchemy.engine import Engine
from support.courses import whole_course
from support.group import Group, Somebody

from bot import demo
from bot.course.year import Course


@pytest.fixture(scope="session")
def course() -> Course:
    return whole_course()


@pytest.fixture
def group(engine: Engine, course: Course) -> Iterator[Group]:
    yield Group(engine, course)


@pytest.fixture
def wren(group: Group) -> Somebody:
    """Wren, on the first Monday at eight, with the day pushed."""
    group.at(8)
    group.tick()
    return group.who(demo.WREN)
