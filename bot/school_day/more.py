"""More than the day holds: a lesson passed over, a second lesson, hands-on lessons, practice that was asked for."""

from __future__ import annotations

from rapidfuzz import fuzz, process
from sqlalchemy.orm import Session

from bot.messages import HandsOnShown, Message, NotForYou, NothingToPractise
from bot.planner.extra import More, pass_over_items, plan_extra
from bot.planner.history import Wishes
from bot.planner.plan import Pick
from bot.planner.plan_day import plan_day, seed_of
from bot.records import days, people
from bot.records.days import SchoolDay, Stage
from bot.school import dates
from bot.school.drawing import draw_all
from bot.school.history import history_of
from bot.school.planning import what_lies_behind
from bot.school.wishes import in_force
from bot.school_day.asking import Here
from bot.school_day.offers import second_of
from bot.school_day.onward import onward
from bot.vocabulary import LessonId, Part, TemplateId, Why

NEAR_ENOUGH = 60
"""How alike words and a title have to be, 0 to 100."""


def pass_over(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """*I know this already*: five items on the lesson; all right at first go pass it over."""
    if day.stage is not Stage.CARD or day.lesson is None or day.lesson not in here.school.syllabus.by_id:
        return [NotForYou(to=here.chat, why="gone")]
    picks = pass_over_items(here.school.syllabus, day.lesson, day.date, here.student.id)
    days.add_items(s, day.id, here.student.id, draw_all(here.school, picks, Part.KNOWN))
    days.change_day(s, day.id, stage=Stage.KNOWN)
    return onward(s, here, days.day(s, day.id))


def ten_more(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """The button *More practice*: a mix of ten."""
    if day.stage is not Stage.DONE:
        return [NotForYou(to=here.chat, why="gone")]
    return practise(s, here, day, "")


def practise(s: Session, here: Here, day: SchoolDay, words: str) -> list[Message]:
    """Practice that was asked for: a mix, what is weak, or a lesson by words of its title."""
    lesson = _lesson_meant(here, words) if words and words != "weak" else None
    if words and words != "weak" and lesson is None:
        return [NothingToPractise(to=here.chat, titles=_nearest(here, words))]
    history, wishes = what_lies_behind(s, here.school, here.student, day.date)
    used = frozenset(TemplateId(each.template) for each in days.items_of(s, day.id))
    wanted = More(lesson=lesson, weak=words == "weak")
    seed = here.student.id
    picks = plan_extra(day.date, here.school.syllabus, history, wishes, wanted, seed, used)
    if len(picks) < wanted.items:  # early in the year: the day's own kinds once more, with new numbers
        asked = {pick.template for pick in picks}
        further = plan_extra(day.date, here.school.syllabus, history, wishes, wanted, seed)
        picks += tuple(pick for pick in further if pick.template not in asked)
        picks = picks[: wanted.items]
    if not picks:
        return [NothingToPractise(to=here.chat)]
    first = days.last_place(s, day.id, Part.EXTRA) + 1
    days.add_items(s, day.id, here.student.id, draw_all(here.school, picks, Part.EXTRA, first))
    days.change_day(s, day.id, stage=Stage.EXTRA)
    return onward(s, here, days.day(s, day.id))


def _met_titles(here: Here) -> dict[LessonId, str]:
    return {each.id: each.title for each in here.school.course.lessons if each.n < here.student.lesson}


def _lesson_meant(here: Here, words: str) -> LessonId | None:
    found = process.extractOne(words, _met_titles(here), scorer=fuzz.WRatio, score_cutoff=NEAR_ENOUGH)
    return found[2] if found else None


def _nearest(here: Here, words: str) -> tuple[str, ...]:
    found = process.extract(words, _met_titles(here), scorer=fuzz.WRatio, limit=3)
    return tuple(title for title, _, _ in found)


def hands_on(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """The hands-on lesson of the day: what to do, with what, and then the answers to send."""
    task = day.notes.get("hands_on")
    if not task or day.stage is not Stage.DONE or day.notes.get("hands_on_done"):
        return [NotForYou(to=here.chat, why="gone")]
    lesson = here.school.course.hands_on_lesson(str(task))
    if not day.notes.get("hands_on_begun"):
        picks = [_pick(here, day, template.id) for template in lesson.templates]
        days.add_items(s, day.id, here.student.id, draw_all(here.school, picks, Part.HANDS_ON))
        days.note_day(s, day, hands_on_begun=True)
    return [
        HandsOnShown(
            to=here.chat,
            day=day.id,
            title=lesson.title,
            idea=lesson.idea,
            materials=lesson.materials,
            checklist=lesson.checklist,
            safety=lesson.safety,
            answers=len(lesson.templates),
        )
    ]


def send_answers(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """The hands-on lesson was done: its answers, one by one."""
    if not day.notes.get("hands_on_begun"):
        return [NotForYou(to=here.chat, why="gone")]
    days.change_day(s, day.id, stage=Stage.HANDS_ON)
    return onward(s, here, days.day(s, day.id))


def _pick(here: Here, day: SchoolDay, template: TemplateId) -> Pick:
    return Pick(template, seed_of(here.student.id, day.date, template), Why.TODAY)


def second_lesson(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """*One more lesson*: its card and guided practice, without any more review."""
    lesson = second_of(s, here, day) if day.stage is Stage.DONE else None
    if lesson is None:
        return [NotForYou(to=here.chat, why="gone")]
    fresh = people.student(s, here.student.id)
    wishes = in_force(s, fresh, day.date)
    history = history_of(s, here.school, fresh, day.date, wishes, dates.calendar_of(s, fresh, day.date))
    plan = plan_day(day.date, here.school.syllabus, history, Wishes(lesson=lesson, review_items=0), fresh.id)
    first = days.last_place(s, day.id, Part.GUIDED) + 1
    days.add_items(s, day.id, fresh.id, draw_all(here.school, plan.guided, Part.GUIDED, first))
    days.note_day(s, day, second=lesson)
    days.change_day(s, day.id, lesson=lesson, sitting=fresh.sitting, stage=Stage.CARD)
    return onward(s, here, days.day(s, day.id))
