"""The study group of the demo, a tutor of another group, and a Monday on which Wren has worked."""

from __future__ import annotations

import shutil
import time
from dataclasses import dataclass

import pytest
from sqlalchemy.engine import Engine
from support.courses import whole_course
from support.group import Group, Somebody

from bot import demo
from bot.course.year import Course
from bot.records.base import create_engine
from bot.vocabulary import ChatId


@pytest.fixture(scope="session")
def course() -> Course:
    return whole_course()


@dataclass(frozen=True)
class Monday:
    """A database in which all days of the first Monday are pushed: what it is copied from, and what was delivered."""

    database: str
    message_ids: dict[ChatId, int]


@pytest.fixture(scope="session")
def monday(
    database_kind: str,
    empty_database: str,
    course: Course,
    request: pytest.FixtureRequest,
    tmp_path_factory: pytest.TempPathFactory,
) -> Monday:
    """Monday at eight, made once: to push three days takes longer than most tests here."""
    if database_kind == "sqlite":
        database = str(tmp_path_factory.mktemp("monday") / "monday.sqlite")
        shutil.copy(empty_database, database)
        url = f"sqlite:///{database}"
    else:
        database = f"monday_{time.time_ns()}"
        server = request.getfixturevalue("postgresql")
        server.say(f"create database {database} template {empty_database} strategy file_copy")
        url = server.url(database)
    engine = create_engine(url)
    group = Group(engine, course)
    group.at(8)
    group.tick()
    engine.dispose()
    return Monday(database, group.message_ids)


@pytest.fixture(scope="session")
def database_to_copy(monday: Monday) -> str:
    return monday.database


@pytest.fixture
def group(engine: Engine, course: Course, monday: Monday) -> Group:
    """Monday at eight, all days pushed."""
    group = Group(engine, course, monday.message_ids)
    group.at(8)
    return group


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
