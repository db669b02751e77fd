"""Where to start: a day of twelve to twenty questions, each chosen by the answers before. It is never a mark.

A wish of a grown-up's asks for it; its answers belong to that wish, so it may be broken off and go on on
another day.
"""

from __future__ import annotations

from datetime import date, datetime, timedelta

from sqlalchemy.orm import Session

from bot.answers import Judgement, examples, judge
from bot.course.lesson import Lesson
from bot.happened import Typed
from bot.messages import (
    Lead,
    Line,
    Message,
    NotForYou,
    PlacementDone,
    PlacementFound,
    PlacementPaused,
    PlacementUnread,
)
from bot.planner.placement import NEAR, Answer, Placed, next_item, placed
from bot.planner.plan import DayKind
from bot.records import days, focus, people
from bot.records.days import ItemState, SchoolDay, Sent, Stage
from bot.records.people import Student
from bot.records.wishes import Wish, end_wish, find_wish
from bot.school.asking import TUTOR, Asked
from bot.school.changes import store, student_step
from bot.school.drawing import draw_all
from bot.school.school import School
from bot.school.wishes import WishKind, in_force, of_kind
from bot.school_day.asking import Here, show
from bot.school_day.grading import keep, work
from bot.vocabulary import DayId, Outcome, Part, SkillId, Verdict

MINUTES = 30
"""About how long it takes, said beforehand (common practice, no source)."""
PATCHED = 21
"""Days for which what should be patched is practised more (common practice, no source)."""
MOST_PATCHED = 6


def wished(s: Session, student: Student, on: date) -> Wish | None:
    """The wish for a look at where to start, if one is in force on a day and not yet answered."""
    found = of_kind(in_force(s, student, on), WishKind.PLACEMENT)
    return found[-1] if found else None


def make_day(
    s: Session, student: Student, wish: Wish, on: date, now: datetime, *, late: bool = False
) -> DayId | None:
    """Make a day that only looks where to start; its questions are drawn one by one."""
    notes: dict[str, object] = {"placement": wish.id, "minutes": MINUTES}
    return days.add_day(s, student.id, on, DayKind.PLACEMENT, None, now, late=late, notes=notes)


def onward(s: Session, here: Here, day: SchoolDay, lead: Lead | None = None) -> list[Message]:
    """The question that is open, else the next one; none is needed any more: say so, and tell the tutor."""
    open_now = days.next_item(s, day.id, Part.PLACEMENT)
    if open_now is not None:
        return [show(s, here, day, open_now, lead)]
    wish = _wish_of(s, day)
    if wish is None:
        return [NotForYou(to=here.chat, why="gone")]
    answers = _answers(s, here.student, wish, day.date)
    pick = next_item(here.school.syllabus, answers, wish.starts, here.student.id)
    if pick is None:
        return _finish(s, here, day, wish, answers)
    place = len(answers) + 1
    days.add_items(s, day.id, here.student.id, draw_all(here.school, [pick], Part.PLACEMENT, place))
    fresh = days.next_item(s, day.id, Part.PLACEMENT)
    assert fresh is not None
    return [show(s, here, day, fresh, lead)]


def _wish_of(s: Session, day: SchoolDay) -> Wish | None:
    number = day.notes.get("placement")
    return find_wish(s, number) if isinstance(number, int) else None


def _answers(s: Session, student: Student, wish: Wish, until: date) -> list[Answer]:
    """All answers that were given for one wish, on whichever days."""
    return [
        Answer(sent.template, sent.outcome is Outcome.FIRST_TRY)
        for day in days.days_between(s, student.id, wish.starts - timedelta(days=1), until)
        if day.notes.get("placement") == wish.id
        for sent in days.items_of(s, day.id, Part.PLACEMENT)
        if sent.outcome is not None
    ]


def note_answer(s: Session, here: Here, day: SchoolDay, sent: Sent, typed: Typed, text: str) -> list[Message]:
    """Note an answer and ask the next question; what can't be read may be typed again."""
    if sent.state is ItemState.DONE or day.stage is not Stage.PLACING:
        return [NotForYou(to=here.chat, why="gone")]
    judgement = judge(text, sent.item.key)
    keep(s, sent, typed, text, judgement, free=True)
    work(s, day, typed)
    if judgement.verdict is Verdict.UNREADABLE:
        form = sent.item.key.form
        return [
            PlacementUnread(
                to=here.chat,
                item=sent.id,
                form=form,
                read_as=judgement.read_as,
                examples=() if sent.item.choices else examples(form),
            )
        ]
    return _noted(s, here, day, sent, known=_knows(sent, judgement))


def _knows(sent: Sent, judgement: Judgement) -> bool:
    """The right value shows that it is known; its form only where the form is the skill."""
    if judgement.verdict is Verdict.FORM:
        return not sent.item.key.form_is_the_skill
    return judgement.verdict in (Verdict.RIGHT, Verdict.UNIT)


def _noted(
    s: Session, here: Here, day: SchoolDay, sent: Sent, *, known: bool, lead: str = "noted"
) -> list[Message]:
    outcome = Outcome.FIRST_TRY if known else Outcome.UNSOLVED
    days.change_item(s, sent.id, state=ItemState.DONE, outcome=outcome)
    return onward(s, here, days.day(s, day.id), Lead(kind=lead))


def not_met(s: Session, here: Here, sent: Sent) -> list[Message]:
    """*I haven't met this*: as good an answer as any."""
    day = days.day(s, sent.day)
    if sent.part is not Part.PLACEMENT or sent.state is ItemState.DONE or day.stage is not Stage.PLACING:
        return [NotForYou(to=here.chat, why="gone")]
    return _noted(s, here, day, sent, known=False, lead="not-met")


def stop(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """Enough for today: the rest follows on the next school day."""
    wish = _wish_of(s, day)
    if day.kind != DayKind.PLACEMENT or day.stage is Stage.DONE or wish is None:
        return [NotForYou(to=here.chat, why="gone")]
    for sent in days.items_of(s, day.id, Part.PLACEMENT):
        if sent.outcome is None:
            days.change_item(s, sent.id, state=ItemState.DROPPED)
    days.change_day(s, day.id, stage=Stage.DONE, ended_at=here.at)
    focus.clear_focus(s, here.chat, here.student.id)
    asked = len(_answers(s, here.student, wish, day.date))
    return [PlacementPaused(to=here.chat, day=day.id, asked=asked)]


def stop_here(s: Session, here: Here, sent: Sent) -> list[Message]:
    """The button *Enough for today* under a question."""
    return stop(s, here, days.day(s, sent.day))


def _finish(s: Session, here: Here, day: SchoolDay, wish: Wish, answers: list[Answer]) -> list[Message]:
    found = placed(here.school.syllabus, answers)
    end_wish(s, wish.id, day.date)
    days.note_day(s, day, placed=found.start or "", placed_sure=round(100 * found.sure))
    days.change_day(s, day.id, stage=Stage.DONE, ended_at=here.at)
    focus.clear_focus(s, here.chat, here.student.id)
    said: list[Message] = [PlacementDone(to=here.chat, name=here.student.name, asked=found.asked)]
    return said + _tell_tutor(s, here, wish, found)


def _tell_tutor(s: Session, here: Here, wish: Wish, found: Placed) -> list[Message]:
    """What was found, with a change that does it all at one press."""
    student = here.student
    where = people.reach(s, student.tutor)
    tutor = people.who(s, where.chat) if where is not None else None
    if tutor is None:
        return []
    lesson = here.school.course.lesson(found.start) if found.start else None
    home = people.household(s, student.household)
    patch = _patches(here.school, found.patch)
    safer = _safer(here.school, found, lesson.n) if lesson is not None else None
    change = 0
    if lesson is not None:
        line = Line("line-place", {"name": student.name, "title": lesson.title, "n": lesson.n})
        lines = [line]
        if patch:
            lines.append(Line("line-patch", {"titles": list(patch.values())}))
        starts = wish.starts
        asked = Asked(s, here.school, tutor, here.at, 0, TUTOR, "placement", "")
        wishes = [
            Wish(
                WishKind.MORE,
                {"skill": skill},
                starts,
                here.at.date() + timedelta(days=PATCHED),
                student=student.id,
            )
            for skill in patch
        ]
        change = store(
            asked,
            "placement",
            lines,
            wished=wishes,
            steps=[student_step(student.id, lesson=lesson.n, sitting=1)],
        )
    return [
        PlacementFound(
            to=tutor.chat,
            key=f"placed/{wish.id}",
            student=student.id,
            name=student.name,
            household=home.name,
            lesson=lesson.title if lesson else "",
            n=lesson.n if lesson else 0,
            asked=found.asked,
            sure=round(100 * found.sure),
            patch=tuple(dict.fromkeys(patch.values())),
            change=change,
            safer=safer.title if safer else "",
            safer_n=safer.n if safer else 0,
        )
    ]


def _safer(school: School, found: Placed, start: int) -> Lesson | None:
    """The lesson from which on at least half of what lies before the start seems not known; None if none does.

    What the next lessons need may be known although much in between was never met.
    """
    gaps = {lesson.n for lesson in school.course.lessons if set(lesson.skills) & set(found.patch)}
    for lesson in school.course.lessons:
        between = start - lesson.n
        if between < NEAR or lesson.n not in gaps:
            continue
        if 2 * sum(lesson.n <= n < start for n in gaps) >= between:
            return lesson
    return None


def _patches(school: School, skills: tuple[SkillId, ...]) -> dict[SkillId, str]:
    """What to patch first: skills with the titles of the lessons that own them, the latest lessons first."""
    owner = {skill: lesson for lesson in school.course.lessons for skill in lesson.skills}
    known = [skill for skill in skills if skill in owner]
    latest = sorted(known, key=lambda skill: -owner[skill].n)[:MOST_PATCHED]
    return {skill: owner[skill].title for skill in latest}
