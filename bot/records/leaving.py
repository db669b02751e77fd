"""A household leaves: everything that is kept of it, to take along; and its rows removed for good."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, datetime
from typing import Any

from sqlalchemy import Column, Engine, Table, delete, or_, select, update
from sqlalchemy.orm import Session

from bot.records import inbox, outbox, own, people
from bot.records.attempts import AttemptRow, GradingRow
from bot.records.base import Base, UtcDateTime
from bot.records.days import ItemRow, SchoolDayRow
from bot.records.doubts import DoubtRow
from bot.records.files import FileRow
from bot.records.focus import FocusRow
from bot.records.handovers import HandoverRow
from bot.records.invites import ConsentRow, InviteRow
from bot.records.memories import MemoryRow
from bot.records.outbox import OutboxRow, State
from bot.records.people import ChatRow, HouseholdRow, MembershipRow, PersonRow, StudentRow
from bot.records.sheets import SheetRow
from bot.records.talks import TalkRow
from bot.records.wishes import ChangeRow, WishRow
from bot.vocabulary import HouseholdId, PersonId, Role

BLANK = "[]"
"""The preview of a tutor's change that named somebody who left."""


def _plain(value: object) -> object:
    return value.isoformat() if isinstance(value, date | datetime) else value


def _rows(s: Session, kind: type[Base], *where: Any, without: Iterable[str] = ()) -> list[dict[str, object]]:
    table = kind.__table__
    assert isinstance(table, Table)
    hidden = set(without)
    columns = [column for column in table.columns if column.name not in hidden]
    query = select(*columns).where(*where).order_by(*table.primary_key.columns)
    return [{name: _plain(value) for name, value in row._mapping.items()} for row in s.execute(query)]


def everything_of(s: Session, home: HouseholdId) -> dict[str, list[dict[str, object]]]:
    """Return all rows that are kept of a household, by table, as plain data; link tokens are left out."""
    members = {each.person for each in people.members_of(s, home)}
    students = {each.person for each in people.members_of(s, home) if each.role is Role.STUDENT}
    of_day = select(SchoolDayRow.id).where(SchoolDayRow.student_id.in_(students))
    of_item = select(ItemRow.id).where(ItemRow.student_id.in_(students))
    of_attempt = select(AttemptRow.id).where(AttemptRow.item_id.in_(of_item))
    return {
        "household": _rows(s, HouseholdRow, HouseholdRow.id == home),
        "person": _rows(s, PersonRow, PersonRow.id.in_(members)),
        "membership": _rows(s, MembershipRow, MembershipRow.household_id == home),
        "chat": _rows(s, ChatRow, ChatRow.person_id.in_(members)),
        "consent": _rows(s, ConsentRow, ConsentRow.household_id == home),
        "invite": _rows(s, InviteRow, InviteRow.person_id.in_(members), without=("token_hash",)),
        "student": _rows(s, StudentRow, StudentRow.id.in_(students)),
        "school_day": _rows(s, SchoolDayRow, SchoolDayRow.student_id.in_(students)),
        "sheet": _rows(s, SheetRow, SheetRow.day_id.in_(of_day)),
        "item": _rows(s, ItemRow, ItemRow.student_id.in_(students)),
        "attempt": _rows(s, AttemptRow, AttemptRow.item_id.in_(of_item)),
        "grading": _rows(s, GradingRow, GradingRow.attempt_id.in_(of_attempt)),
        "memory": _rows(s, MemoryRow, MemoryRow.student_id.in_(students)),
        "doubt": _rows(s, DoubtRow, DoubtRow.student_id.in_(students)),
        "talk": _rows(s, TalkRow, TalkRow.student_id.in_(students)),
        "file": _rows(s, FileRow, FileRow.student_id.in_(students)),
        "wish": _rows(s, WishRow, or_(WishRow.student_id.in_(students), WishRow.household_id == home)),
    }


_TYPES = {int: "integer", bool: "boolean", float: "number", str: "string"}


def schema(version: int) -> dict[str, object]:
    """Return a JSON Schema of `everything_of`, made from the tables, so that it can't go out of date."""
    tables: dict[str, object] = {}
    for name, without in EXPORTED.items():
        columns = {each.name: each for each in Base.metadata.tables[name].columns if each.name not in without}
        rows = {
            "type": "object",
            "properties": {key: _schema_of(each) for key, each in columns.items()},
            "required": list(columns),
            "additionalProperties": False,
        }
        tables[name] = {"type": "array", "items": rows}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Everything that Evensum keeps of a household",
        "type": "object",
        "properties": {
            "schema": {"const": version},
            "rows": {"type": "object", "properties": tables, "required": list(tables)},
        },
        "required": ["schema", "rows"],
    }


def _schema_of(column: Column[Any]) -> dict[str, object]:
    kind = datetime if isinstance(column.type, UtcDateTime) else column.type.python_type
    said: dict[str, object] = {"type": _TYPES.get(kind, "string")}
    if kind is datetime:
        said["format"] = "date-time"
    elif kind is date:
        said["format"] = "date"
    return {**said, "type": [said["type"], "null"]} if column.nullable else said


EXPORTED: dict[str, tuple[str, ...]] = {
    **dict.fromkeys(("household", "person", "membership", "chat", "consent", "student", "school_day"), ()),
    **dict.fromkeys(("sheet", "item", "attempt", "grading", "memory", "doubt", "talk", "file", "wish"), ()),
    "invite": ("token_hash",),
}
"""The tables of an export, and what is left out of each."""


def erase(s: Session, home: HouseholdId) -> list[str]:
    """Remove a household with everybody who has no other place; return the paths of their photos.

    A student who is at home elsewhere as well stays there; a parent who is a tutor stays one.
    """
    house = people.household(s, home)
    members = people.members_of(s, home)
    gone: set[PersonId] = set()
    for member in members:
        others = [held for held in people.memberships_of(s, member.person) if held[0] != home]
        if member.role is Role.STUDENT and others:
            s.execute(
                update(StudentRow)
                .where(StudentRow.id == member.person, StudentRow.household_id == home)
                .values(household_id=others[0][0])
            )
        elif not others and Role.TUTOR not in people.roles_of(s, member.person):
            gone.add(member.person)
    students = {each.person for each in members if each.role is Role.STUDENT and each.person in gone}
    own.forget_named(s, house.tutor, [each.name for each in members if each.person in gone])
    paths = _erase_work(s, students)
    _erase_changes(s, home, students, gone, house.tutor)
    _erase_talk_of(s, gone, house.tutor)
    for member in members:
        people.remove_member(s, member.person, home, member.role)
    s.execute(delete(ConsentRow).where(or_(ConsentRow.household_id == home, ConsentRow.parent_id.in_(gone))))
    s.execute(delete(InviteRow).where(InviteRow.person_id.in_(gone)))
    s.execute(update(InviteRow).where(InviteRow.by_id.in_(gone)).values(by_id=None))
    s.execute(update(ChatRow).where(ChatRow.speaking_id.in_(students)).values(speaking_id=None))
    s.execute(delete(ChatRow).where(ChatRow.person_id.in_(gone)))
    s.execute(delete(HandoverRow).where(HandoverRow.household_id == home))
    s.execute(delete(StudentRow).where(StudentRow.id.in_(students)))
    s.execute(delete(HouseholdRow).where(HouseholdRow.id == home))
    s.execute(delete(PersonRow).where(PersonRow.id.in_(gone)))
    return paths


def _erase_work(s: Session, students: set[PersonId]) -> list[str]:
    """Remove all that students did."""
    of_item = select(ItemRow.id).where(ItemRow.student_id.in_(students))
    of_attempt = select(AttemptRow.id).where(AttemptRow.item_id.in_(of_item))
    paths = [path for path in s.scalars(select(FileRow.path).where(FileRow.student_id.in_(students))) if path]
    s.execute(delete(DoubtRow).where(DoubtRow.student_id.in_(students)))
    s.execute(delete(GradingRow).where(GradingRow.attempt_id.in_(of_attempt)))
    s.execute(delete(AttemptRow).where(AttemptRow.item_id.in_(of_item)))
    s.execute(delete(TalkRow).where(TalkRow.student_id.in_(students)))
    s.execute(delete(FocusRow).where(or_(FocusRow.item_id.in_(of_item), FocusRow.speaker.in_(students))))
    s.execute(delete(FocusRow).where(FocusRow.speaker.in_({-student for student in students})))
    for kind in (ItemRow, SheetRow, FileRow, SchoolDayRow, MemoryRow):
        s.execute(delete(kind).where(kind.student_id.in_(students)))
    return paths


def _erase_changes(
    s: Session, home: HouseholdId, students: set[PersonId], gone: set[PersonId], tutor: PersonId
) -> None:
    """Remove wishes for those who left, and their names from the tutor's changes."""
    about = or_(WishRow.student_id.in_(students), WishRow.household_id == home)
    touched = set(s.scalars(select(WishRow.change_id).where(about)))
    s.execute(delete(WishRow).where(about))
    own = set(s.scalars(select(ChangeRow.id).where(ChangeRow.by_id.in_(gone))))
    s.execute(delete(WishRow).where(WishRow.change_id.in_(own)))
    s.execute(delete(ChangeRow).where(ChangeRow.id.in_(own)))
    # Steps and previews of the tutor's changes hold names and ids; which of them can't be told apart in SQL.
    still_used = set(s.scalars(select(WishRow.change_id)))
    of_tutor = set(s.scalars(select(ChangeRow.id).where(ChangeRow.by_id == tutor)))
    s.execute(delete(ChangeRow).where(ChangeRow.id.in_((of_tutor | touched) - still_used)))
    s.execute(
        update(ChangeRow).where(ChangeRow.id.in_(of_tutor & still_used)).values(preview=BLANK, before="{}")
    )


def _erase_talk_of(s: Session, gone: set[PersonId], tutor: PersonId) -> None:
    """Remove what was said in the chats of those who left, and to the tutor, where they were named."""
    for person in gone:
        phone = people.reach(s, person)
        if phone is None:
            continue
        outbox.forget_chat(s, phone.chat)
        inbox.forget_chat(s, phone.chat)
        s.execute(delete(FocusRow).where(FocusRow.chat_id == phone.chat))
    of_tutor = people.reach(s, tutor)
    if of_tutor is not None:
        s.execute(
            delete(OutboxRow).where(OutboxRow.chat == of_tutor.chat, OutboxRow.state != State.WAITING.value)
        )
        s.execute(delete(FocusRow).where(FocusRow.chat_id == of_tutor.chat))


def scrub(engine: Engine) -> None:
    """Overwrite what was removed: on SQLite the file is written anew and its log emptied.

    On PostgreSQL the rows are gone from the tables; the server's own log and backups age out in their time.
    """
    if engine.dialect.name != "sqlite":
        return
    with engine.connect() as connection:
        raw = connection.connection.driver_connection
        assert raw is not None
        connection.rollback()  # neither may run inside a transaction
        raw.execute("VACUUM")
        raw.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchall()
