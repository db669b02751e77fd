"""What all records share: the table base, times in UTC, the engine, and one way to open a transaction."""

from __future__ import annotations

import enum
import importlib
import pkgutil
from collections.abc import Generator, Mapping, Sequence
from contextlib import contextmanager
from datetime import UTC, date, datetime
from functools import lru_cache
from typing import Any, Generic, TypeVar, cast

import msgspec
from sqlalchemy import (
    BigInteger,
    Connection,
    CursorResult,
    Date,
    DateTime,
    Enum,
    Executable,
    Integer,
    LargeBinary,
    MetaData,
    String,
    Table,
    Text,
    bindparam,
    event,
    insert,
    text,
    update,
)
from sqlalchemy import create_engine as create_sqlalchemy_engine
from sqlalchemy.engine import Dialect, Engine, make_url
from sqlalchemy.orm import DeclarativeBase, Session
from sqlalchemy.types import TypeDecorator, TypeEngine

from bot import vocabulary as words

T = TypeVar("T")


class UtcDateTime(TypeDecorator[datetime]):
    """An aware time, kept in UTC; a naive one is refused, since nobody can say what it means."""

    impl = DateTime(timezone=True)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        """Store in UTC."""
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError("a time without a zone can't be stored")
        utc = value.astimezone(UTC)
        return utc.replace(tzinfo=None) if dialect.name == "sqlite" else utc

    def process_result_value(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        """Give back aware, in UTC."""
        if value is None:
            return None
        return value.replace(tzinfo=UTC) if value.tzinfo is None else value.astimezone(UTC)


class Packed(TypeDecorator[T], Generic[T]):
    """A frozen dataclass or msgspec Struct as JSON text: `mapped_column(Packed(Item))`.

    A field that is added later needs a default, so that rows of earlier releases can be read.
    """

    impl = Text
    cache_ok = True

    def __init__(self, kind: type[T]) -> None:
        super().__init__()
        self.kind = kind

    def process_bind_param(self, value: T | None, dialect: Dialect) -> str | None:
        """Pack."""
        return None if value is None else msgspec.json.encode(value).decode()

    def process_result_value(self, value: str | None, dialect: Dialect) -> T | None:
        """Unpack; raises msgspec.ValidationError when the row is of another shape."""
        return None if value is None else msgspec.json.decode(value, type=self.kind)


# SQLite numbers rows by itself only where the key is exactly INTEGER; chats need 52 bits on PostgreSQL.
BigKey = BigInteger().with_variant(Integer, "sqlite")

_IDS = (
    words.PersonId,
    words.StudentId,
    words.HouseholdId,
    words.DayId,
    words.ItemId,
    words.AttemptId,
    words.ChatId,
)
_NAMES = (words.LessonId, words.SkillId, words.TemplateId)


def _words_of(kind: type[enum.Enum]) -> list[str]:
    return [str(member.value) for member in kind]


_TYPES: dict[Any, TypeEngine[Any]] = {
    datetime: UtcDateTime(),
    date: Date(),
    bytes: LargeBinary(),
    **dict.fromkeys(_IDS, BigKey),
    **{kind: String(120) for kind in _NAMES},
    # The words themselves are stored, without a database type of their own: adding a word needs no migration.
    enum.StrEnum: Enum(enum.StrEnum, native_enum=False, length=20, values_callable=_words_of),
}


class Base(DeclarativeBase):
    """Base of all tables. Rows never leave `bot.records`: functions give frozen data."""

    type_annotation_map = _TYPES
    metadata = MetaData(
        naming_convention={
            "ix": "ix_%(table_name)s_%(column_0_N_name)s",
            "uq": "uq_%(table_name)s_%(column_0_N_name)s",
            "ck": "ck_%(table_name)s_%(constraint_name)s",
            "fk": "fk_%(table_name)s_%(column_0_N_name)s",
            "pk": "pk_%(table_name)s",
        }
    )


def all_tables() -> MetaData:
    """Return the metadata with every table in it, whichever modules were imported before."""
    package = importlib.import_module("bot.records")
    for module in pkgutil.iter_modules(package.__path__):
        importlib.import_module(f"bot.records.{module.name}")
    return Base.metadata


def create_engine(url: str) -> Engine:
    """Return an engine for `sqlite:///file` or `postgresql://…` (driver: psycopg 3)."""
    parsed = make_url(url)
    if parsed.get_backend_name() == "postgresql":
        return create_sqlalchemy_engine(
            parsed.set(drivername="postgresql+psycopg"), pool_pre_ping=True, pool_size=10, max_overflow=10
        )
    engine = create_sqlalchemy_engine(parsed, connect_args={"timeout": 30})
    event.listen(engine, "connect", _prepare_sqlite)
    event.listen(engine, "begin", _begin_with_write_lock)
    return engine


def _prepare_sqlite(connection: Any, _record: object) -> None:
    connection.isolation_level = None  # the driver opens no transaction of its own; see below
    for pragma in ("journal_mode=WAL", "synchronous=FULL", "foreign_keys=ON", "temp_store=MEMORY"):
        connection.execute(f"PRAGMA {pragma}").close()


def _begin_with_write_lock(connection: Connection) -> None:
    # A deferred transaction that reads first and writes later fails with "database is locked"
    # when another one wrote in between. Taking the write lock at once waits instead.
    # Whoever only reads, at length, says so and keeps nobody from writing.
    reads = connection.get_execution_options().get("reading")
    connection.exec_driver_sql("BEGIN" if reads else "BEGIN IMMEDIATE")


@contextmanager
def transaction(engine: Engine) -> Generator[Session, None, None]:
    """Open a transaction; it commits at the end of the block, or rolls back if the block raises."""
    with Session(engine, expire_on_commit=False) as session, session.begin():
        yield session


def new_rows_of(s: Session, table: type[Base]) -> Any:
    """Return an insert that skips rows whose unique key exists; `.returning(…)` gives the new ones only."""
    insert_of = importlib.import_module(f"sqlalchemy.dialects.{s.get_bind().dialect.name}").insert
    return insert_of(table.__table__).on_conflict_do_nothing()


@lru_cache(maxsize=16)
def _insert_or_skip(table: type[Base], names: tuple[str, ...]) -> Executable:
    # Written out, since SQLAlchemy makes its own ON CONFLICT anew each time it is used.
    columns = table.__table__.columns
    into = ", ".join(f'"{name}"' for name in names)
    values = ", ".join(f":{name}" for name in names)
    return text(
        f'INSERT INTO "{table.__tablename__}" ({into}) VALUES ({values}) ON CONFLICT DO NOTHING'
    ).bindparams(*(bindparam(name, type_=columns[name].type) for name in names))


def insert_or_skip(s: Session, table: type[Base], rows: Sequence[Mapping[str, object]]) -> None:
    """Add rows, all with the same columns; one whose unique key exists is skipped."""
    if rows:
        s.connection().execute(_insert_or_skip(table, tuple(rows[0])), rows)


def lock_chat(s: Session, chat: int) -> None:
    """Wait until no other transaction works on this chat. On SQLite the transaction holds the write lock anyway."""
    if s.get_bind().dialect.name == "postgresql":
        s.execute(_LOCK_CHAT, {"chat": chat})


def lock_named(s: Session, name: str) -> None:
    """Wait until no other transaction holds this name; it is free again when this one ends."""
    if s.get_bind().dialect.name == "postgresql":
        s.execute(_LOCK_NAME, {"name": name})


_LOCK_CHAT = text("SELECT pg_advisory_xact_lock(:chat)")
_LOCK_NAME = text("SELECT pg_advisory_xact_lock(hashtextextended(:name, 1))")


def ask(s: Session, statement: Executable, **given: object) -> CursorResult[Any]:
    """Run a statement that was made once, at import, with what is asked for now.

    Making a statement anew and running it as a mapped one takes four times as long; a reply runs twenty.
    """
    return s.connection().execute(statement, given)


@lru_cache(maxsize=256)
def _change(table: type[Base], names: tuple[str, ...]) -> Executable:
    plain = cast(Table, table.__table__)
    return (
        update(plain)
        .where(plain.c.id == bindparam("of_row"))
        .values({n: bindparam(f"new_{n}") for n in names})
    )


def change(s: Session, table: type[Base], row: int, values: Mapping[str, object]) -> None:
    """Change columns of the row with that id."""
    if values:
        given = {f"new_{name}": value for name, value in values.items()}
        ask(s, _change(table, tuple(values)), of_row=row, **given)


@lru_cache(maxsize=64)
def _add(table: type[Base]) -> Executable:
    plain = cast(Table, table.__table__)
    return insert(plain).returning(plain.c.id)


def add(s: Session, table: type[Base], **values: object) -> int:
    """Add a row and return its id."""
    return int(ask(s, _add(table), **values).scalar_one())
