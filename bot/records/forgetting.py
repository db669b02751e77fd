"""The retention limit: photos, and answers as typed, that are older than an installation keeps them."""

from __future__ import annotations

from datetime import UTC, date, datetime, time

from sqlalchemy import delete, select, update
from sqlalchemy.orm import Session

from bot.records.attempts import AttemptRow, GradingRow
from bot.records.days import ItemRow, SchoolDayRow
from bot.records.doubts import DoubtRow
from bot.records.files import FileRow
from bot.records.outbox import OutboxRow, State
from bot.records.sheets import SheetRow


def limit(today: date, months: int) -> date:
    """The first day that is kept: so many months back, on the same day or the month's last. 0 months: all is kept."""
    if months <= 0:
        return date.min
    years, month = divmod(today.year * 12 + today.month - 1 - months, 12)
    for day in range(today.day, 0, -1):
        try:
            return date(years, month + 1, day)
        except ValueError:
            continue
    return date.min


def forget_before(s: Session, before: date) -> tuple[list[str], int]:
    """Remove photos and answers of the days before a date, and what was said then.

    Days, outcomes and minutes stay, since a family has to keep records of them; so does what is believed of a skill.
    Returns the paths of the photos, whose bytes the caller deletes, and how many rows were removed.
    """
    paths = [path for path in s.scalars(select(FileRow.path).where(FileRow.date < before)) if path]
    days = select(SchoolDayRow.id).where(SchoolDayRow.date < before)
    items = select(ItemRow.id).where(ItemRow.day_id.in_(days))
    tried = select(AttemptRow.id).where(AttemptRow.item_id.in_(items))
    moment = datetime.combine(before, time(), UTC)
    gone = 0
    for removal in (
        delete(FileRow).where(FileRow.date < before),
        delete(DoubtRow).where(DoubtRow.item_id.in_(items)),
        delete(GradingRow).where(GradingRow.attempt_id.in_(tried)),
        delete(AttemptRow).where(AttemptRow.item_id.in_(items)),
        delete(OutboxRow).where(OutboxRow.sent_at < moment, OutboxRow.state != State.WAITING.value),
    ):
        gone += s.execute(removal).rowcount  # type: ignore[attr-defined]
    s.execute(
        update(SheetRow).where(SheetRow.day_id.in_(days), SheetRow.typed.is_not(None)).values(typed=None)
    )
    return paths, gone
