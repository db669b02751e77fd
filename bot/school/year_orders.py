"""Orders about the year as a whole that a parent and a tutor may both give."""

from __future__ import annotations

from datetime import timedelta

from bot.messages import FinishShown, FoundationsPaper, Line, Message
from bot.records.people import Student
from bot.records.wishes import Wish, wishes_for
from bot.school import closing, dates, pacing
from bot.school.asking import Asked
from bot.school.changes import propose
from bot.school.names import list_names, take_student, take_students
from bot.school.orders import NO, YES, take_span, today_of
from bot.school.planning import open_date
from bot.school.when import fold
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


def off_season(asked: Asked) -> list[Message]:
    """Ten minutes, three days a week, while there is no school: on or off."""
    students, rest = take_students(asked)
    word = fold(rest.strip())
    if word not in YES | NO:
        raise asked.wrong("why-offseason", students[0])
    on = word in YES
    today = today_of(asked, students)
    wished = [Wish(WishKind.OFF_SEASON, {"on": on}, today, None, student=each.id) for each in students]
    key = "line-offseason-on" if on else "line-offseason-off"
    return propose(asked, "offseason", [Line(key, {"names": list_names(asked, students)})], wished=wished)


def finish(asked: Asked) -> list[Message]:
    """When the course may be done; with a date, the day by which the family would like it to be."""
    students, rest = take_students(asked)
    if not rest:
        return [_finish_shown(asked, each) for each in students]
    span = take_span(asked, rest, students)
    assert span is not None
    on = today_of(asked, students)
    wanted: dict[str, object] = {"date": span.first.isoformat()}
    wished = [Wish(WishKind.FINISH_BY, wanted, on, None, student=each.id) for each in students]
    line = Line("line-finish", {"names": list_names(asked, students), "date_day": span.first.isoformat()})
    return propose(asked, "finish", [line], wished=wished)


def _finish_shown(asked: Asked, student: Student) -> FinishShown:
    on = dates.today(student, asked.at)
    now = pacing.heading(asked.s, asked.school, student, on)
    wanted, own = pacing.wanted_finish(asked.s, student, on)
    coming = asked.school.lesson_at(student.lesson)
    lessons = asked.school.course.lessons
    return FinishShown(
        to=asked.person.chat,
        student=student.id,
        name=student.name,
        lesson=coming.title if coming else "",
        n=coming.n if coming else len(lessons),
        out_of=len(lessons),
        taken=now.taken,
        planned=now.planned,
        early=now.range.early.isoformat() if now.range else "",
        late=now.range.late.isoformat() if now.range else "",
        wanted=wanted.isoformat() if wanted else "",
        own=own,
    )


def standing(asked: Asked) -> list[Message]:
    """The page for the family: the skills that algebra rests on, each steady, shaky or not met."""
    student, rest = take_student(asked)
    if rest:
        raise asked.wrong("why-only-a-name", student)
    on = dates.today(student, asked.at)
    found = closing.standings(asked.s, asked.school, student, on)
    titles = {one.title["en"]: dict(one.title) for one in asked.school.course.foundations}
    return [
        FoundationsPaper(
            to=asked.person.chat,
            student=student.id,
            name=student.name,
            made=on.isoformat(),
            rows=tuple((titles[name], stands.value) for name, stands in found),
        )
    ]
