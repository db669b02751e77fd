"""Messages as decided: what to say is a row before anything leaves; the sender turns rows into calls.

A row waits, is being sent, and ends as sent, unsure (it may or may not have arrived) or given up. None of
the last three ever holds up its chat.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from sqlalchemy import (
    BigInteger,
    ColumnElement,
    Index,
    String,
    Text,
    bindparam,
    delete,
    func,
    literal_column,
    or_,
    select,
    text,
    update,
)
from sqlalchemy.orm import Mapped, Session, aliased, mapped_column

from bot import messages
from bot.messages import IfUnsure, Message
from bot.records.base import Base, BigKey, UtcDateTime, ask, insert_or_skip
from bot.vocabulary import ChatId

FARTHEST = timedelta(hours=1)
"""No message is held back longer. A date farther off means that the clock was set back: it counts as past."""


class State(StrEnum):
    """Where a message stands."""

    WAITING = "waiting"
    SENDING = "sending"
    SENT = "sent"
    UNSURE = "unsure"
    GIVEN_UP = "given up"


# Spelled out: with bound parameters SQLite could not tell that the indexes below cover the query.
_WAITING: ColumnElement[str] = literal_column("'waiting'")
_SENDING: ColumnElement[str] = literal_column("'sending'")
_WAITS = text("state = 'waiting'")
_OPEN = text("state IN ('waiting', 'sending')")


class OutboxRow(Base):
    """One message. `id` is its turn: messages of one chat leave in this order, but answers before pushes."""

    __tablename__ = "outbox"
    __table_args__ = (
        Index("ix_outbox_waiting", "push", "id", sqlite_where=_WAITS, postgresql_where=_WAITS),
        Index("ix_outbox_open", "chat", "id", sqlite_where=_OPEN, postgresql_where=_OPEN),
        Index("ix_outbox_shown", "chat", "message_id"),
        Index("ix_outbox_about", "chat", "about"),
    )

    id: Mapped[int] = mapped_column(BigKey, primary_key=True)
    key: Mapped[str] = mapped_column(String(120), unique=True)
    chat: Mapped[ChatId]
    push: Mapped[bool]
    kind: Mapped[str] = mapped_column(String(60))
    data: Mapped[str] = mapped_column(Text)
    about: Mapped[str] = mapped_column(String(60))
    """What it shows ("item/12"); with `message_id` it tells what a reply or a button means."""
    state: Mapped[str] = mapped_column(String(10))
    made_at: Mapped[datetime]
    tries: Mapped[int] = mapped_column(default=0)
    not_before: Mapped[datetime | None]
    message_id: Mapped[int | None] = mapped_column(BigInteger)
    sent_at: Mapped[datetime | None]
    """The service's date of it, whole seconds."""
    fault: Mapped[str | None] = mapped_column(String(200))


@dataclass(frozen=True, slots=True)
class Claimed:
    """One message that is ours to send now."""

    row: int
    message: Message
    tries: int


@dataclass(frozen=True, slots=True)
class Settled:
    """How sending one message ended. `not_before` is for a row that waits again."""

    row: int
    state: State
    message_id: int | None = None
    sent_at: datetime | None = None
    not_before: datetime | None = None
    fault: str | None = None


def put(s: Session, what: Sequence[Message], now: datetime, update: int | None = None) -> None:
    """Store messages, in order; one whose key exists is skipped, so doing it twice says it once.

    `update` is the number of the update that they answer. A message without a key needs it.
    """
    rows = []
    for n, message in enumerate(what):
        kind = type(message).__name__
        if not message.key and update is None:
            raise ValueError(f"{kind} has no key and answers no update")
        rows.append(
            {
                "key": message.key or f"reply/{update}/{n}",
                "chat": message.to,
                "push": message.push,
                "kind": kind,
                "data": messages.encode(message),
                "about": message.about,
                "state": State.WAITING.value,
                "made_at": now,
                "tries": 0,
            }
        )
    insert_or_skip(s, OutboxRow, rows)


def _ready(row: type[OutboxRow], now: ColumnElement[datetime]) -> ColumnElement[bool]:
    return or_(
        row.not_before.is_(None), row.not_before <= now, row.not_before > bindparam("farthest", type_=_TIME)
    )


_TIME = UtcDateTime()
_now = bindparam("now", type_=_TIME)
_earlier = aliased(OutboxRow)
_held_up = (
    select(1)
    .select_from(_earlier)
    .where(_earlier.chat == OutboxRow.chat, _earlier.state.in_([_WAITING, _SENDING]))
    .where(
        or_(
            _earlier.state == _SENDING,
            (_earlier.state == _WAITING)
            & (_earlier.id < OutboxRow.id)
            & (_earlier.push == OutboxRow.push)
            & ~_ready(_earlier, _now),
        )
    )
    .exists()
)
_claim = (
    select(OutboxRow.id, OutboxRow.kind, OutboxRow.data, OutboxRow.tries)
    .where(OutboxRow.state == _WAITING, _ready(OutboxRow, _now), ~_held_up)
    .where(OutboxRow.chat.not_in(bindparam("not_to", expanding=True)))
    .order_by(OutboxRow.push, OutboxRow.id)
    .limit(bindparam("limit"))
    .with_for_update(skip_locked=True)
)
_mark_sending = (
    update(OutboxRow.__table__)  # type: ignore[arg-type]
    .where(OutboxRow.id.in_(bindparam("rows", expanding=True)))
    .values(state=State.SENDING.value, tries=OutboxRow.tries + 1)
)


def claim(s: Session, now: datetime, limit: int, not_to: Sequence[ChatId] = ()) -> list[Claimed]:
    """Take messages to send now: answers before pushes, the oldest first; they are marked as being sent.

    A chat where one is being sent, or is held back, gives none. `not_to`: chats that just got one.
    """
    asked = {"now": now, "farthest": now + FARTHEST, "limit": limit, "not_to": list(not_to)}
    connection = s.connection()  # plain rows, without the cost of mapped ones
    rows = connection.execute(_claim, asked).all()
    if rows:
        connection.execute(_mark_sending, {"rows": [row.id for row in rows]})
    return [Claimed(row.id, messages.decode(row.kind, row.data), row.tries) for row in rows]


_settle = (
    update(OutboxRow.__table__)  # type: ignore[arg-type]  # a plain table takes many rows in one statement
    .where(OutboxRow.id == bindparam("row"), OutboxRow.state == State.SENDING.value)
    .values(
        {name: bindparam(f"new_{name}") for name in ("state", "message_id", "sent_at", "not_before", "fault")}
    )
)


def settle(s: Session, results: Sequence[Settled]) -> None:
    """Note how sending ended. A row that somebody settled in the meantime stays as it is."""
    rows = [
        {
            "row": one.row,
            "new_state": one.state.value,
            "new_message_id": one.message_id,
            "new_sent_at": one.sent_at,
            "new_not_before": one.not_before,
            "new_fault": one.fault and one.fault[:200],
        }
        for one in results
    ]
    if rows:
        s.connection().execute(_settle, rows)


def after_unsure(message: Message) -> State:
    """Return where a message goes that may have arrived: again, or held, as its class says."""
    return State.WAITING if message.if_unsure is IfUnsure.SEND_AGAIN else State.UNSURE


def recover(s: Session) -> int:
    """Settle what a process was sending when it died, and return how many those were.

    Only for whoever is the one sender: nobody else may be sending at that moment.
    """
    rows = s.execute(
        select(OutboxRow.id, OutboxRow.kind, OutboxRow.data).where(OutboxRow.state == State.SENDING.value)
    ).all()
    settle(
        s,
        [
            Settled(
                row.id,
                after_unsure(messages.decode(row.kind, row.data)),
                fault="the process ended while sending",
            )
            for row in rows
        ],
    )
    return len(rows)


_shown = select(OutboxRow.about).where(
    OutboxRow.chat == bindparam("chat"), OutboxRow.message_id == bindparam("message_id")
)


def shown(s: Session, chat: ChatId, message_id: int) -> str | None:
    """Return what a message of ours shows ("item/12"), or None."""
    about = s.scalar(
        select(OutboxRow.about).where(OutboxRow.chat == chat, OutboxRow.message_id == message_id)
    )
    return about or None


def newest_shown(s: Session, chat: ChatId, before: datetime, kind: str = "item/") -> str | None:
    """Return what the newest message showed that had been sent by `before` and is about such a thing."""
    query = (
        select(OutboxRow.about)
        .where(OutboxRow.chat == chat, OutboxRow.about.startswith(kind, autoescape=True))
        .where(OutboxRow.sent_at <= before)
        .order_by(OutboxRow.sent_at.desc(), OutboxRow.id.desc())
        .limit(1)
    )
    return s.scalar(query)


def message_ids(s: Session, chat: ChatId, about: str) -> list[int]:
    """Return the service's ids of all messages that showed something, oldest first."""
    query = select(OutboxRow.message_id).where(
        OutboxRow.chat == chat, OutboxRow.about == about, OutboxRow.message_id.is_not(None)
    )
    return [int(found) for found in s.scalars(query.order_by(OutboxRow.id)) if found is not None]


def arrived(s: Session, chat: ChatId, about: str, message_id: int) -> None:
    """Note that an unsure message did arrive: somebody pressed or replied to it."""
    s.execute(
        update(OutboxRow)
        .where(OutboxRow.chat == chat, OutboxRow.about == about, OutboxRow.state == State.UNSURE.value)
        .values(state=State.SENT.value, message_id=message_id)
    )


def withdraw(s: Session, chat: ChatId, *, pushes_only: bool = False, fault: str = "withdrawn") -> int:
    """Drop what waits for a chat (consent withdrawn, phone handed over); return how many those were."""
    statement = update(OutboxRow).where(OutboxRow.chat == chat, OutboxRow.state == State.WAITING.value)
    if pushes_only:
        statement = statement.where(OutboxRow.push)
    done = s.execute(statement.values(state=State.GIVEN_UP.value, fault=fault))
    return int(done.rowcount)  # type: ignore[attr-defined]


def forget_chat(s: Session, chat: ChatId) -> None:
    """Remove every message to a chat (*erase*)."""
    s.execute(delete(OutboxRow).where(OutboxRow.chat == chat))


def count(s: Session) -> dict[State, int]:
    """Return how many messages stand where."""
    rows = s.execute(select(OutboxRow.state, func.count()).group_by(OutboxRow.state))
    return {State(state): number for state, number in rows}


_shown_when = select(OutboxRow.state, OutboxRow.sent_at).where(
    OutboxRow.chat == bindparam("chat"), OutboxRow.about == bindparam("about")
)


def could_be_seen(s: Session, chat: ChatId, about: str, by: datetime) -> bool:
    """Tell whether a message that shows `about` can have been on the screen at a moment (whole seconds).

    One that is being sent may have been; one that waits, or that the service dates later, was not.
    """
    rows = ask(s, _shown_when, chat=chat, about=about).all()
    return any(
        state in (State.SENDING, State.UNSURE) or (sent_at is not None and sent_at <= by)
        for state, sent_at in rows
    )


def sent_at(s: Session, chat: ChatId, about: str) -> datetime | None:
    """Return the service's date of the first message that showed something, or None."""
    return s.scalar(
        select(func.min(OutboxRow.sent_at)).where(OutboxRow.chat == chat, OutboxRow.about == about)
    )


def shown_kinds(s: Session, chat: ChatId, kinds: Sequence[str], since: datetime) -> list[int]:
    """Return the service's ids of messages of some classes sent to a chat since a moment, oldest first."""
    query = select(OutboxRow.message_id).where(
        OutboxRow.chat == chat,
        OutboxRow.kind.in_(kinds),
        OutboxRow.message_id.is_not(None),
        OutboxRow.sent_at >= since,
    )
    return [int(found) for found in s.scalars(query.order_by(OutboxRow.id)) if found is not None]


def key_exists(s: Session, key: str) -> bool:
    """Tell whether a message of that key was stored before."""
    return s.scalar(select(OutboxRow.id).where(OutboxRow.key == key)) is not None
