"""A tutor's own items and lessons as texts, every version kept; and files of theirs that are still to be read."""

from __future__ import annotations

import re
from collections.abc import Collection
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import BigInteger, ForeignKey, Text, UniqueConstraint, delete, func, insert, select, update
from sqlalchemy.orm import Mapped, Session, mapped_column

from bot.records.base import Base, UtcDateTime
from bot.vocabulary import ChatId, PersonId


class OwnRow(Base):
    """One item or lesson of a tutor's own, whatever its version."""

    __tablename__ = "own"

    id: Mapped[int] = mapped_column(primary_key=True)
    tutor_id: Mapped[int] = mapped_column(ForeignKey("person.id"), index=True)
    kind: Mapped[str]
    """item or lesson."""
    name: Mapped[str] = mapped_column(default="")
    """Of the file that a lesson came in: a file of the same name is its next version."""
    version: Mapped[int] = mapped_column(default=1)
    """Which version stands now."""
    away: Mapped[bool] = mapped_column(default=False)
    """Put away: not listed any more."""
    made_at: Mapped[datetime] = mapped_column(UtcDateTime)


class OwnVersionRow(Base):
    """A text, as typed or sent. It never changes; items that were drawn from it name it by its code."""

    __tablename__ = "own_version"
    __table_args__ = (UniqueConstraint("own_id", "n"),)

    id: Mapped[int] = mapped_column(primary_key=True)
    own_id: Mapped[int] = mapped_column(ForeignKey("own.id"), index=True)
    n: Mapped[int]
    code: Mapped[str] = mapped_column(index=True)
    title: Mapped[str]
    text: Mapped[str] = mapped_column(Text)
    made_at: Mapped[datetime] = mapped_column(UtcDateTime)


class OwnFileRow(Base):
    """A file that a tutor sent, until its bytes were fetched and read."""

    __tablename__ = "own_file"

    id: Mapped[int] = mapped_column(primary_key=True)
    by_id: Mapped[int] = mapped_column(ForeignKey("person.id"))
    chat: Mapped[int] = mapped_column(BigInteger)
    file_id: Mapped[str]
    name: Mapped[str]
    caption: Mapped[str] = mapped_column(Text, default="")
    sent_at: Mapped[datetime] = mapped_column(UtcDateTime)
    read_at: Mapped[datetime | None] = mapped_column(UtcDateTime)


@dataclass(frozen=True, slots=True)
class Own:
    """A piece of a tutor's own as it stands now; `versions` is how many there are."""

    id: int
    tutor: PersonId
    kind: str
    name: str
    version: int
    code: str
    title: str
    text: str
    versions: int


@dataclass(frozen=True, slots=True)
class Version:
    """One version of a piece."""

    n: int
    code: str
    title: str
    text: str
    made_at: datetime


@dataclass(frozen=True, slots=True)
class Coming:
    """A file of a tutor's that is to be fetched and read."""

    id: int
    by: PersonId
    chat: ChatId
    file_id: str
    name: str
    caption: str
    sent_at: datetime


_many = select(func.count()).where(OwnVersionRow.own_id == OwnRow.id).correlate(OwnRow).scalar_subquery()
_own = select(
    OwnRow.id,
    OwnRow.tutor_id,
    OwnRow.kind,
    OwnRow.name,
    OwnRow.version,
    OwnVersionRow.code,
    OwnVersionRow.title,
    OwnVersionRow.text,
    _many,
).join(OwnVersionRow, (OwnVersionRow.own_id == OwnRow.id) & (OwnVersionRow.n == OwnRow.version))


def all_own(s: Session, tutor: PersonId) -> list[Own]:
    """Return a tutor's pieces in the order in which they were made, without those put away."""
    rows = s.execute(_own.where(OwnRow.tutor_id == tutor, OwnRow.away.is_(False)).order_by(OwnRow.id))
    return [Own(*row) for row in rows]


def find_own(s: Session, tutor: PersonId, own: int) -> Own | None:
    """Return one piece of a tutor's, also one put away; None where it is somebody else's or none."""
    row = s.execute(_own.where(OwnRow.tutor_id == tutor, OwnRow.id == own)).one_or_none()
    return Own(*row) if row else None


def versions_of(s: Session, own: int) -> list[Version]:
    """Return all versions of a piece, the oldest first."""
    rows = s.execute(
        select(
            OwnVersionRow.n,
            OwnVersionRow.code,
            OwnVersionRow.title,
            OwnVersionRow.text,
            OwnVersionRow.made_at,
        )
        .where(OwnVersionRow.own_id == own)
        .order_by(OwnVersionRow.n)
    )
    return [Version(*row) for row in rows]


def keep_own(s: Session, tutor: PersonId, kind: str, name: str, at: datetime) -> int:
    """Make a piece, without a text yet; return its number."""
    made = s.execute(
        insert(OwnRow).values(tutor_id=tutor, kind=kind, name=name[:120], made_at=at).returning(OwnRow.id)
    )
    return int(made.scalar_one())


def keep_version(s: Session, own: int, code: str, title: str, text: str, at: datetime) -> int:
    """Add a text to a piece, which stands from now on; return the version's number.

    The text that stands already isn't kept twice.
    """
    known = versions_of(s, own)
    same = next((each for each in known if each.code == code), None)
    n = same.n if same else max((each.n for each in known), default=0) + 1
    if same is None:
        s.execute(
            insert(OwnVersionRow).values(own_id=own, n=n, code=code, title=title[:120], text=text, made_at=at)
        )
    change_own(s, own, version=n, away=False)
    return n


def change_own(s: Session, own: int, **values: object) -> None:
    """Change which version of a piece stands, or whether it is put away."""
    s.execute(update(OwnRow).where(OwnRow.id == own).values(**values))


def lessons_state(s: Session) -> tuple[int, int]:
    """Return (newest row, number of rows) of all texts: it changes whenever one comes."""
    row = s.execute(select(func.max(OwnVersionRow.id), func.count(OwnVersionRow.id))).one()
    return row[0] or 0, row[1]


def lesson_texts(s: Session, without: Collection[str]) -> list[tuple[str, str]]:
    """Return (code, text) of all versions of lessons but those of some codes."""
    codes = s.execute(
        select(OwnVersionRow.id, OwnVersionRow.code)
        .join(OwnRow, OwnRow.id == OwnVersionRow.own_id)
        .where(OwnRow.kind == "lesson")
    )
    new = {code: row for row, code in codes if code not in without}
    rows = s.execute(select(OwnVersionRow.code, OwnVersionRow.text).where(OwnVersionRow.id.in_(new.values())))
    return [(each[0], each[1]) for each in rows]


def add_file(
    s: Session, by: PersonId, chat: ChatId, file_id: str, name: str, caption: str, at: datetime
) -> int:
    """Note a file that is to be read; return its row."""
    made = s.execute(
        insert(OwnFileRow)
        .values(by_id=by, chat=chat, file_id=file_id, name=name[:120], caption=caption[:1024], sent_at=at)
        .returning(OwnFileRow.id)
    )
    return int(made.scalar_one())


def coming(s: Session, limit: int = 5) -> list[Coming]:
    """Return the files that are still to be read, the oldest first."""
    rows = s.execute(
        select(
            OwnFileRow.id,
            OwnFileRow.by_id,
            OwnFileRow.chat,
            OwnFileRow.file_id,
            OwnFileRow.name,
            OwnFileRow.caption,
            OwnFileRow.sent_at,
        )
        .where(OwnFileRow.read_at.is_(None))
        .order_by(OwnFileRow.id)
        .limit(limit)
    )
    return [Coming(*row) for row in rows]


def was_read(s: Session, row: int, at: datetime) -> bool:
    """Note that a file was read; False where that was noted before."""
    done = s.execute(
        update(OwnFileRow).where(OwnFileRow.id == row, OwnFileRow.read_at.is_(None)).values(read_at=at)
    )
    return bool(done.rowcount)  # type: ignore[attr-defined]


def forget_named(s: Session, tutor: PersonId, names: Collection[str]) -> None:
    """Remove a tutor's own texts in which somebody is named who leaves, and all files that were read."""
    wanted = {name.casefold() for name in names}
    s.execute(delete(OwnFileRow).where(OwnFileRow.by_id == tutor, OwnFileRow.read_at.is_not(None)))
    for piece in list(s.scalars(select(OwnRow.id).where(OwnRow.tutor_id == tutor))):
        versions = versions_of(s, piece)
        kept = [each for each in versions if not wanted & set(re.findall(r"\w+", each.text.casefold()))]
        gone = {each.n for each in versions} - {each.n for each in kept}
        s.execute(delete(OwnVersionRow).where(OwnVersionRow.own_id == piece, OwnVersionRow.n.in_(gone)))
        if not kept:
            s.execute(delete(OwnRow).where(OwnRow.id == piece))
        elif gone:
            change_own(s, piece, version=kept[-1].n)
