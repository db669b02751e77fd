"""Orders about the year as a whole that a parent and a tutor may both give."""

from __future__ import annotations

from datetime import timedelta

from bot.messages import Line, Message
from bot.records.wishes import Wish, wishes_for
from bot.school.asking import Asked
from bot.school.changes import propose
from bot.school.names import list_names, take_students
from bot.school.planning import open_date
from bot.school.wishes import WishKind

FAR = timedelta(days=400)


def placement(asked: Asked) -> list[Message]:
    """The next day looks where to start."""
    students, rest = take_students(asked)
    if rest:
        raise asked.wrong("why-only-a-name", students[0])
    wished = []
    for student in students:
        on = open_date(asked.s, student, asked.at)
        if on is None:
            raise asked.wrong("why-no-day-ahead", student, name=student.name)
        coming = wishes_for(asked.s, student.id, student.household, student.tutor, on, on + FAR)
        if any(wish.kind == WishKind.PLACEMENT for wish in coming):
            raise asked.wrong("why-placement-already", student, name=student.name)
        wished.append(Wish(WishKind.PLACEMENT, {}, on, None, student=student.id))
    line = Line(
        "line-placement",
        {"names": list_names(asked, students), "date_day": min(wish.starts for wish in wished).isoformat()},
    )
    return propose(asked, "placement", [line], wished=wished)
