"""Updates as the service sent them: stored before they are acknowledged, done once.

The service counts its updates anew after a quiet week, so its number alone is no key. What happens later
goes by the number of our own row (`Happened.update`), which never comes twice.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import Enum

from sqlalchemy import (
    BigInteger,
    Index,
    Select,
    String,
    UniqueConstraint,
    bindparam,
    delete,
    func,
    select,
    text,
    update,
)
from sqlalchemy.orm import Mapped, Session, aliased, mapped_column

from bot.records.base import Base, BigKey, new_rows_of
from bot.vocabulary import ChatId


class InboxRow(Base):
    """One update. Its JSON is emptied once it is done; row and number stay."""

    __tablename__ = "inbox"
    __table_args__ = (
        UniqueConstraint("bot", "update_id", "dated"),
        Index(
            "ix_inbox_undone",
            "chat",
            "id",
            sqlite_where=text("done_at IS NULL"),
            postgresql_where=text("done_at IS NULL"),
        ),
    )

    id: Mapped[int] = mapped_column(BigKey, primary_key=True)
    bot: Mapped[int] = mapped_column(BigInteger)
    update_id: Mapped[int] = mapped_column(BigInteger)
    dated: Mapped[int] = mapped_column(BigInteger)
    """The date inside the update, Unix seconds, 0 where it has none: the same whenever it is delivered again."""
    chat: Mapped[ChatId | None]
    raw: Mapped[bytes]
    received_at: Mapped[datetime]
    done_at: Mapped[datetime | None]
    tries: Mapped[int] = mapped_column(default=0)
    fault: Mapped[str | None] = mapped_column(String(200))


@dataclass(frozen=True, slots=True)
class Received:
    """One update on its way in. `raw` is its JSON."""

    update_id: int
    dated: int
    chat: ChatId | None
    raw: bytes


@dataclass(frozen=True, slots=True)
class Unfinished:
    """One update that is stored and not done. `update` is our own number for it."""

    update: int
    raw: bytes


class Turn(Enum):
    """Whether an update may be handled now."""

    OURS = 1
    """It is marked done within this transaction: handle it."""
    DONE_BEFORE = 2
    """Do nothing."""
    NOT_YET = 3
    """An earlier update of the same chat isn't done."""


def receive(s: Session, bot: int, updates: Sequence[Received], now: datetime) -> list[Unfinished]:
    """Store updates and return those not seen before, in the order given."""
    rows = [
        {
            "bot": bot,
            "update_id": one.update_id,
            "dated": one.dated,
            "chat": one.chat,
            "raw": one.raw,
            "received_at": now,
            "tries": 0,
        }
        for one in updates
    ]
    if not rows:
        return []
    new = new_rows_of(s, InboxRow).returning(InboxRow.id, InboxRow.update_id, InboxRow.dated)
    numbers = {(update_id, dated): row for row, update_id, dated in s.connection().execute(new, rows)}
    return [
        Unfinished(numbers.pop((one.update_id, one.dated)), one.raw)
        for one in updates
        if (one.update_id, one.dated) in numbers
    ]


_finish = (
    update(InboxRow.__table__)  # type: ignore[arg-type]  # a plain table: this is on every reply's way
    .where(InboxRow.id == bindparam("row"), InboxRow.done_at.is_(None))
    .where(
        ~select(1)
        .select_from(earlier := aliased(InboxRow))
        .where(earlier.chat == bindparam("in_chat"), earlier.id < bindparam("row"), earlier.done_at.is_(None))
        .exists()
    )
    .values(done_at=bindparam("now"), raw=b"")
)


def finish(s: Session, row: int, chat: ChatId, now: datetime) -> Turn:
    """Mark an update done, if it is its turn; what it leads to belongs into the same transaction."""
    if s.connection().execute(_finish, {"row": row, "in_chat": chat, "now": now}).rowcount:
        return Turn.OURS
    done_at = s.execute(select(InboxRow.done_at).where(InboxRow.id == row)).scalar_one_or_none()
    return Turn.DONE_BEFORE if done_at else Turn.NOT_YET


def note_fault(s: Session, row: int, fault: str) -> int:
    """Note that handling an update failed, and return how often it has. Nothing typed belongs into `fault`."""
    s.execute(update(InboxRow).where(InboxRow.id == row).values(tries=InboxRow.tries + 1, fault=fault[:200]))
    return s.execute(select(InboxRow.tries).where(InboxRow.id == row)).scalar_one()


def set_aside(s: Session, row: int, now: datetime) -> None:
    """Stop trying, so that the chat goes on. The JSON stays, and `evensum doctor` names the row."""
    s.execute(update(InboxRow).where(InboxRow.id == row).values(done_at=now))


def take_up_again(s: Session, rows: Sequence[int]) -> None:
    """Undo `set_aside`, once the fault is mended; they are handled at the next start."""
    s.execute(
        update(InboxRow).where(InboxRow.id.in_(rows), InboxRow.raw != b"").values(done_at=None, tries=0)
    )


def unfinished(s: Session, bot: int, before: datetime | None = None) -> list[Unfinished]:
    """Return what is stored and not done, oldest first; with `before`, only what came in earlier than that."""
    query: Select[tuple[int, bytes]] = (
        select(InboxRow.id, InboxRow.raw)
        .where(InboxRow.done_at.is_(None), InboxRow.bot == bot)
        .order_by(InboxRow.id)
    )
    if before is not None:
        query = query.where(InboxRow.received_at < before)
    return [Unfinished(row, raw) for row, raw in s.execute(query)]


def aside(s: Session) -> list[tuple[int, str]]:
    """Return the updates that were set aside, with the fault of each."""
    query = select(InboxRow.id, InboxRow.fault).where(InboxRow.done_at.is_not(None), InboxRow.raw != b"")
    return [(row, fault or "") for row, fault in s.execute(query.order_by(InboxRow.id))]


def bots(s: Session) -> set[int]:
    """Return the bots whose updates this database has seen; more than one means that the token was changed."""
    return set(s.scalars(select(InboxRow.bot).distinct()))


def forget_chat(s: Session, chat: ChatId) -> None:
    """Remove all updates of a chat (*erase*)."""
    s.execute(delete(InboxRow).where(InboxRow.chat == chat))


def count_unfinished(s: Session) -> int:
    """Return how many updates wait."""
    return s.execute(
        select(func.count()).select_from(InboxRow).where(InboxRow.done_at.is_(None))
    ).scalar_one()
