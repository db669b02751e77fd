"""What a chat is in the middle of: the item or sheet that the next unnumbered word is meant for."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

import msgspec
from sqlalchemy import BigInteger, ForeignKey, Text, bindparam, delete, insert, select, update
from sqlalchemy.orm import Mapped, Session, mapped_column

from bot.records.base import Base, UtcDateTime, ask
from bot.vocabulary import ChatId, ItemId


class FocusRow(Base):
    """One chat and one speaker there: a phone that goes round keeps everybody's place.

    `speaker` is the student's id, 0 for the person whose chat it is when no student speaks.
    """

    __tablename__ = "focus"

    chat_id: Mapped[int] = mapped_column(BigInteger, primary_key=True)
    speaker: Mapped[int] = mapped_column(primary_key=True)
    waits_for: Mapped[str]
    item_id: Mapped[int | None] = mapped_column(ForeignKey("item.id"))
    ref: Mapped[int] = mapped_column(default=0)
    data: Mapped[str] = mapped_column(Text, default="{}")
    since: Mapped[datetime] = mapped_column(UtcDateTime)


@dataclass(frozen=True, slots=True)
class Focus:
    """What the next word is meant for: "item", "sheet", "paper", "typing", or a half-said command."""

    waits_for: str
    item: ItemId | None
    ref: int
    data: dict[str, object]
    since: datetime


_focus = select(FocusRow.waits_for, FocusRow.item_id, FocusRow.ref, FocusRow.data, FocusRow.since).where(
    FocusRow.chat_id == bindparam("chat"), FocusRow.speaker == bindparam("speaker")
)


def focus(s: Session, chat: ChatId, speaker: int) -> Focus | None:
    """Return what a chat is in the middle of, or None."""
    row = ask(s, _focus, chat=chat, speaker=speaker).one_or_none()
    if row is None:
        return None
    item = None if row.item_id is None else ItemId(row.item_id)
    return Focus(row.waits_for, item, row.ref, msgspec.json.decode(row.data), row.since)


_change = (
    update(FocusRow.__table__)  # type: ignore[arg-type]  # a plain table: this is on every reply's way
    .where(FocusRow.chat_id == bindparam("chat"), FocusRow.speaker == bindparam("speaking"))
    .values({name: bindparam(f"new_{name}") for name in ("waits_for", "item_id", "ref", "data", "since")})
)


def set_focus(
    s: Session,
    chat: ChatId,
    speaker: int,
    waits_for: str,
    at: datetime,
    *,
    item: ItemId | None = None,
    ref: int = 0,
    data: dict[str, object] | None = None,
) -> None:
    """Note what a chat is in the middle of; what it was before is forgotten."""
    values = {
        "waits_for": waits_for,
        "item_id": item,
        "ref": ref,
        "data": msgspec.json.encode(data or {}).decode(),
        "since": at,
    }
    if not ask(
        s, _change, chat=chat, speaking=speaker, **{f"new_{n}": v for n, v in values.items()}
    ).rowcount:
        s.execute(insert(FocusRow).values(chat_id=chat, speaker=speaker, **values))


def clear_focus(s: Session, chat: ChatId, speaker: int) -> None:
    """Forget what a chat was in the middle of."""
    s.execute(delete(FocusRow).where(FocusRow.chat_id == chat, FocusRow.speaker == speaker))
