"""What holds for a student beyond the next day: pins, extra practice, days off, pages; and how it ends early."""

from __future__ import annotations

from datetime import date, timedelta

from bot.messages import HoldsShown, Line, Message
from bot.records import wishes
from bot.records.people import Student
from bot.records.wishes import Wish
from bot.school import dates
from bot.school.asking import Asked, row_number
from bot.school.changes import Did, Scene, Stale, Step, propose
from bot.school.names import take_student
from bot.school.wishes import WishKind
from bot.tutoring.listing import title_of

AHEAD = timedelta(days=400)
HIDDEN = (WishKind.REVIEW_ITEMS, WishKind.ERASE)
"""Kinds that go along with others, or are a family's own."""


def show(asked: Asked) -> list[Message]:
    """The wishes in force or to come for a student, each with a button that ends it."""
    student, rest = take_student(asked)
    if rest:
        raise asked.wrong("why-only-a-name", student)
    rows = tuple((wish.id, line_of(asked, wish)) for wish in _wishes(asked, student))
    return [HoldsShown(to=asked.person.chat, student=student.id, name=student.name, rows=rows)]


def _wishes(asked: Asked, student: Student) -> list[Wish]:
    today = dates.today(student, asked.at)
    found = wishes.wishes_for(asked.s, student.id, student.household, student.tutor, today, today + AHEAD)
    return [wish for wish in found if wish.kind not in HIDDEN]


def line_of(asked: Asked, wish: Wish) -> Line:
    """A wish with its days, in a line."""
    what = wish.what
    holes: dict[str, str | int | list[str]] = {"date_from": wish.starts.isoformat()}
    lessons = what.get("lessons")
    if "template" in what:
        holes["title"] = title_of(asked, str(what["template"]))
    elif "skill" in what:
        holes["title"] = asked.school.skill_title(str(what["skill"]))
    elif isinstance(lessons, list):
        found = [asked.school.course.lesson_number(n) for n in lessons if isinstance(n, int)]
        holes["title"] = ", ".join(lesson.title for lesson in found if lesson)
    elif "title" in what:
        holes["title"] = str(what["title"])[:120]
    elif "lesson" in what:
        holes["title"] = asked.school.title(str(what["lesson"]))
    holes |= {name: str(what[name])[:120] for name in ("url", "typed", "text") if name in what}
    if wish.ends is None:
        return Line(f"holds-{wish.kind}", {**holes, "key_days": "holds-days-open"})
    if wish.ends == wish.starts:
        return Line(f"holds-{wish.kind}", {**holes, "key_days": "holds-days-one"})
    return Line(f"holds-{wish.kind}", {**holes, "key_days": "holds-days", "date_to": wish.ends.isoformat()})


def end(asked: Asked) -> list[Message]:
    """End a wish before its time, from tomorrow on; what it did so far stays."""
    number = row_number(asked.text.strip())
    for student in asked.students:
        for wish in _wishes(asked, student):
            if wish.id == number:
                return _propose_end(asked, student, wish)
    raise asked.wrong("why-no-such-wish")


def _propose_end(asked: Asked, student: Student, wish: Wish) -> list[Message]:
    step: Step = {"op": "end-wish", "wish": wish.id, "was": wish.ends.isoformat() if wish.ends else None}
    if wish.student is not None:
        step["student"] = wish.student
    elif wish.household is not None:
        step["household"] = wish.household
    today = dates.today(student, asked.at)
    last = max(today, wish.starts) if wish.starts < today else wish.starts - timedelta(days=1)
    step["last"] = last.isoformat()
    return propose(asked, "end", [Line("line-end"), line_of(asked, wish)], steps=[step])


def _end(scene: Scene, step: Step) -> Did:
    number = int(str(step["wish"]))
    now = wishes.find_wish(scene.s, number)
    if now is None or (now.ends.isoformat() if now.ends else None) != step["was"]:
        raise Stale
    wishes.end_wish(scene.s, number, date.fromisoformat(str(step["last"])))
    return Did(step)


def _go_on(scene: Scene, step: Step) -> list[Message] | None:
    was = step["was"]
    wishes.end_wish(scene.s, int(str(step["wish"])), date.fromisoformat(str(was)) if was else None)
    return []


END = (_end, _go_on)
"""The effect of ending a wish."""
