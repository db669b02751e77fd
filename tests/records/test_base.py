"""Times are kept in UTC, transactions are whole, and two writers wait for each other."""

from __future__ import annotations

import threading
from datetime import UTC, datetime, timedelta
from enum import StrEnum
from zoneinfo import ZoneInfo

import msgspec
import pytest
from sqlalchemy import Engine, MetaData, insert, select
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column

from bot.records.base import Base, Packed, transaction
from bot.vocabulary import ChatId, LessonId


class Colour(StrEnum):
    RED = "red"


class Thing(msgspec.Struct, frozen=True):
    name: str
    size: int = 1


class Apart(DeclarativeBase):
    type_annotation_map = Base.type_annotation_map
    metadata = MetaData()


class Row(Apart):
    __tablename__ = "row"
    id: Mapped[int] = mapped_column(primary_key=True)
    chat: Mapped[ChatId | None]
    at: Mapped[datetime | None]
    lesson: Mapped[LessonId | None]
    colour: Mapped[Colour | None]
    thing: Mapped[Thing | None] = mapped_column(Packed(Thing))
    count: Mapped[int] = mapped_column(default=0)


@pytest.fixture
def rows(engine: Engine) -> Engine:
    Apart.metadata.create_all(engine)
    return engine


def test_a_time_comes_back_as_the_same_moment_in_utc(rows):
    sydney = datetime(2026, 10, 4, 3, 0, 0, 123456, tzinfo=ZoneInfo("Australia/Sydney"))
    with transaction(rows) as s:
        s.execute(insert(Row).values(at=sydney))
        back = s.scalar(select(Row.at))
    assert back == sydney and back.tzinfo is UTC


def test_a_time_without_a_zone_is_refused(rows):
    with pytest.raises(Exception, match="without a zone"), transaction(rows) as s:
        s.execute(insert(Row).values(at=datetime(2026, 9, 14)))  # noqa: DTZ001


def test_words_large_ids_and_structs_come_back_as_they_were(rows):
    chat = ChatId(2**52 - 1)
    with transaction(rows) as s:
        s.execute(
            insert(Row).values(chat=chat, lesson="ratio-tables", colour=Colour.RED, thing=Thing("sack"))
        )
    with transaction(rows) as s:
        row = s.execute(select(Row.chat, Row.lesson, Row.colour, Row.thing)).one()
    assert tuple(row) == (chat, "ratio-tables", Colour.RED, Thing("sack", 1))


def test_a_transaction_that_raises_leaves_nothing(rows):
    with pytest.raises(ZeroDivisionError), transaction(rows) as s:
        s.execute(insert(Row).values(count=1))
        raise ZeroDivisionError
    with transaction(rows) as s:
        assert s.scalars(select(Row.count)).all() == []


def test_writers_that_read_first_wait_for_each_other(rows, database_kind):
    # On PostgreSQL whoever reads before writing locks the row; SQLite has the write lock from the start.
    locking = select(Row.count).with_for_update()
    query = locking if database_kind == "postgresql" else select(Row.count)
    with transaction(rows) as s:
        s.execute(insert(Row).values(count=0))

    def add_ten() -> None:
        for _ in range(10):
            with transaction(rows) as s:
                count = s.scalar(query)
                s.execute(Row.__table__.update().values(count=count + 1))

    threads = [threading.Thread(target=add_ten) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    with transaction(rows) as s:
        assert s.scalar(select(Row.count)) == 40


def test_times_sort_as_moments(rows):
    noon = datetime(2026, 9, 14, 12, tzinfo=UTC)
    with transaction(rows) as s:
        s.execute(insert(Row), [{"at": noon + timedelta(microseconds=n)} for n in (0, 1, 500_000)])
        assert s.scalars(select(Row.count).where(Row.at > noon)).all() == [0, 0]
