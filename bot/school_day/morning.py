"""The morning: plan the day, draw its items, store them whole, and push one message."""

from __future__ import annotations

import random
from collections.abc import Collection, Sequence
from datetime import date, datetime

import msgspec
from sqlalchemy.orm import Session

from bot.course.draw import draw
from bot.course.lesson import Strategy
from bot.messages import (
    DayReady,
    DaysUnfinished,
    FinishFirst,
    Message,
    NothingNow,
    PhoneForStudent,
    WrittenEnds,
)
from bot.planner.calendar import days_away, next_school_day
from bot.planner.pace import TELL_TUTOR_AFTER
from bot.planner.plan import DayKind, DayPlan, WarmUp
from bot.planner.plan_day import seed_of
from bot.records import days, people
from bot.records import wishes as wishes_kept
from bot.records.days import Fresh, ItemState, SchoolDay, Stage
from bot.records.people import Student
from bot.records.wishes import Wish
from bot.school import dates, pacing, set_tests, sheets
from bot.school.adjustments import with_calculator
from bot.school.drawing import draw_all
from bot.school.planning import plan_for
from bot.school.school import School
from bot.school.wishes import MORE_TIME, WishKind, adjusted_in, of_kind
from bot.school_day import assessment, placing, speaking, warm_up
from bot.school_day.asking import Here
from bot.school_day.onward import onward
from bot.vocabulary import ChatId, DayId, LessonId, Part, TemplateId, Why

WEEK = 4
"""New lessons of a usual school week."""
STRINGS = 3
"""Mental-math strings of a warm-up."""


def make_day(
    s: Session, school: School, student: Student, on: date, now: datetime, *, late: bool = False
) -> SchoolDay | None:
    """Plan, draw and store a day; None where that date has one already."""
    look = placing.wished(s, student, on)
    if look is not None:
        made = placing.make_day(s, student, look, on, now, late=late)
        return days.day(s, made) if made is not None else None
    plan, wishes = plan_for(s, school, student, on)
    adjusted = adjusted_in(wishes)
    last = days.newest_day(s, student.id)
    calendar = dates.calendar_of(s, student, on)
    notes: dict[str, object] = {
        "size": plan.size,
        "minutes": round(plan.minutes * (MORE_TIME if "time" in adjusted else 1)),
        "warm_up": [str(piece) for piece in plan.warm_up],
        "days_away": days_away(calendar, last.date, on) if last else 0,
    }
    if plan.test is not None:
        notes["test"] = plan.test
        notes |= assessment.second_look_of(wishes, plan)
    if plan.strand is not None:
        notes["strand"] = plan.strand
    if plan.hands_on is not None:
        notes["hands_on"] = plan.hands_on
    day_id = days.add_day(
        s,
        student.id,
        on,
        plan.kind,
        plan.lesson,
        now,
        sitting=plan.sitting,
        small=plan.kind is DayKind.SMALL,
        late=late,
        notes=notes,
    )
    if day_id is None:
        return None
    fresh = _warm_up(s, school, student, day_id, on, plan)
    fresh += with_calculator(draw_all(school, plan.guided, Part.GUIDED), adjusted)
    review = sheets.printed(wishes)
    if review is None:
        review = [*sheets.own_items(wishes, plan.own_items), *draw_all(school, plan.review, Part.REVIEW)]
    fresh += with_calculator(review, adjusted)
    days.add_items(s, day_id, student.id, _numbered(fresh))
    _use_up(s, wishes, plan, on)
    if plan.test is not None:
        assessment.draw_test(s, school, student, days.day(s, day_id))
    if student.first_day is None:
        people.change_student(s, student.id, first_day=on)
    return days.day(s, day_id)


def _numbered(fresh: Sequence[Fresh]) -> list[Fresh]:
    """Places within each part, from 1, in the order given: the tutor's own items stand before the others."""
    places: dict[Part, int] = {}
    numbered = []
    for each in fresh:
        places[each.part] = places.get(each.part, 0) + 1
        numbered.append(Fresh(each.part, places[each.part], each.item, each.why, each.because))
    return numbered


def _use_up(s: Session, wishes: list[Wish], plan: DayPlan, on: date) -> None:
    """What is the tutor's own and stands in the day is given; what had no room waits for the next day."""
    used = of_kind(wishes, WishKind.OWN_ITEM)[: plan.own_items]
    used += [w for w in of_kind(wishes, WishKind.OWN_LESSON) if w.what.get("lesson") == plan.lesson]
    for wish in [*used, *set_tests.used_up(wishes, plan)]:
        wishes_kept.end_wish(s, wish.id, on)


def _warm_up(
    s: Session, school: School, student: Student, day: DayId, on: date, plan: DayPlan
) -> list[Fresh]:
    """A sheet of facts, and three strings or a puzzle, by turns; a test day begins with the test."""
    fresh: list[Fresh] = []
    for piece in plan.warm_up if plan.test is None else ():
        seed = seed_of(student.id, on, TemplateId(f"warm-up/{piece}"))
        match piece:
            case WarmUp.NUMBER_FACTS:
                warm_up.make_sheet(s, school, student, day, seed)
            case WarmUp.MENTAL_MATH:
                fresh += strings(school, student, seed)
            case WarmUp.PUZZLE:
                fresh += _from(school, student, school.course.puzzles, seed, 1)
    return fresh


def strings(school: School, student: Student, seed: int) -> list[Fresh]:
    """The strings of a warm-up: of one strategy, with numbers that the student has met, easy to hard."""
    return _from(school, student, school.course.mental_math, seed, STRINGS)


def _from(
    school: School, student: Student, strategies: Sequence[Strategy], seed: int, count: int
) -> list[Fresh]:
    """Items of one strategy, one that is open by now; they climb from easy to hard."""
    met = {lesson.id for lesson in school.course.lessons if lesson.n < student.lesson}
    open_now = [
        (each, templates)
        for each in strategies
        if (each.opens_after is None or each.opens_after in met) and (templates := _open(school, each, met))
    ]
    if not open_now:
        return []
    chance = random.Random(seed)
    strategy, templates = chance.choice(open_now)
    fresh: list[Fresh] = []
    asked: set[str] = set()
    for n in range(count * 4):
        template = templates[(seed + n) % len(templates)]
        item = draw(school.course, template, chance.getrandbits(30))
        if item.ask not in asked:
            asked.add(item.ask)
            fresh.append(Fresh(Part.WARM_UP, 0, item, Why.MIXED_IN, {"strategy": strategy.title}))
        if len(fresh) == count:
            break
    return sorted(fresh, key=lambda each: each.item.level)


def _open(school: School, strategy: Strategy, met: Collection[LessonId]) -> list[TemplateId]:
    """The templates of a strategy whose numbers the student has met: tenths wait for decimals."""
    found = [(name, school.course.template(name).opens_after) for name in strategy.templates]
    return [name for name, opens in found if opens is None or opens in met]


def push(s: Session, student: Student, school: School, day: SchoolDay, to: ChatId) -> DayReady:
    """The morning message of a day."""
    lesson = school.lesson_still_here(day.lesson)
    _, review = days.count_items(s, day.id, Part.REVIEW)
    earlier = days.last_days(s, student.id, day.date, 2)
    unfinished = sum(1 for each in earlier if each.ended_at is None)
    left = 0
    if earlier and earlier[0].started_at is not None:
        left = sum(
            1
            for each in days.items_of(s, earlier[0].id, Part.REVIEW)
            if each.state in (ItemState.WAITING, ItemState.SHOWN)
        )
    minutes, away = day.notes.get("minutes"), day.notes.get("days_away")
    pieces = day.notes.get("warm_up")
    strand = day.notes.get("strand")
    return DayReady(
        to=to,
        key=f"day/{student.id}/{day.date}",
        day=day.id,
        name=student.name,
        day_kind="second-look" if day.notes.get("second_of") else day.kind,
        lesson=lesson.title if lesson else "",
        sitting=day.sitting,
        sittings=lesson.sittings if lesson else 1,
        warm_up=tuple(str(piece) for piece in pieces) if isinstance(pieces, list) else (),
        review=review,
        minutes=minutes if isinstance(minutes, int) else 0,
        back_after=away if isinstance(away, int) and day.kind != DayKind.LESSON else 0,
        late=day.late,
        unfinished=left,
        strand=school.course.strands[strand].title if isinstance(strand, int) else "",
        strand_n=strand + 1 if isinstance(strand, int) else 0,
        strands=len(school.course.strands),
        small_offered=unfinished == 2 and not day.small,
    )


def ends_soon(s: Session, school: School, student: Student) -> list[Message]:
    """A week before the last written lesson the tutor is told, once."""
    left = sum(1 for lesson in school.course.lessons if lesson.n >= student.lesson)
    tutor = people.reach(s, student.tutor)
    if left > WEEK or tutor is None:
        return []
    last = school.course.lessons[-1].id if school.course.lessons else ""
    return [
        WrittenEnds(
            to=tutor.chat,
            key=f"written-ends/{student.id}/{last}",
            student=student.name,
            household=people.household(s, student.household).name,
            lessons=left,
        )
    ]


def _unfinished(s: Session, student: Student, on: date) -> list[Message]:
    """After three school days in a row that were not finished the tutor is told, once for each such run."""
    run = 0
    for day in days.last_days(s, student.id, on, TELL_TUTOR_AFTER + 1):
        if day.ended_at is not None or day.kind == "missed" or day.notes.get("off"):
            break
        run += 1
    tutor = people.reach(s, student.tutor)
    if run != TELL_TUTOR_AFTER or tutor is None:
        return []
    return [
        DaysUnfinished(
            to=tutor.chat,
            key=f"unfinished/{student.id}/{on}",
            student=student.id,
            name=student.name,
            household=people.household(s, student.household).name,
            days=run,
        )
    ]


def open_day(
    s: Session, school: School, student: Student, on: date, now: datetime, *, late: bool = False
) -> list[Message]:
    """Make the day and push it to where the student is met. A day that exists is not made twice."""
    where = people.chat_of_student(s, student.id)
    if where is None:
        return []
    day = make_day(s, school, student, on, now, late=late)
    if day is None:
        return []
    chat, shared = where
    soon = [*ends_soon(s, school, student), *_unfinished(s, student, on)]
    soon += assessment.tell_parents(s, school, student, day)
    if not shared:
        told = [] if student.told else [speaking.tell(s, chat, student, key=f"told/{student.id}")]
        return [*told, push(s, student, school, day, chat), *soon]
    phone = PhoneForStudent(to=chat, key=f"day/{student.id}/{on}", student=student.id, name=student.name)
    return [phone, *soon]


def bring_up(s: Session, here: Here) -> list[Message]:
    """The student asks for the day: show where it stands, or make it early where it is a school day."""
    student, now = here.student, here.at
    on = dates.today(student, now)
    newest = days.newest_day(s, student.id)
    if newest is not None and newest.date == on:
        if newest.stage is Stage.PUSHED:
            return [_as_answer(push(s, student, here.school, newest, here.chat))]
        return onward(s, here, newest)
    if student.paused or not student.consented:
        return [NothingNow(to=here.chat, why="paused" if student.paused else "no-consent")]
    calendar = dates.calendar_of(s, student, on)
    if not dates.has_school(s, student, on) and not dates.is_off_season(s, student, on):
        comes = next_school_day(calendar, on)
        return [NothingNow(to=here.chat, why="day-off", at=comes.isoformat() if comes else "")]
    if pacing.is_over(s, here.school, student, on) and not dates.off_season_wanted(s, student, on):
        return [NothingNow(to=here.chat, why="course-over")]
    if dates.local(student, now).hour < 5:
        return [NothingNow(to=here.chat, why="night")]
    day = make_day(s, here.school, student, on, now)
    if day is None:
        return [NothingNow(to=here.chat, why="not-yet")]
    return [_as_answer(push(s, student, here.school, day, here.chat))]


def _as_answer(message: DayReady) -> Message:
    """The push, asked for: it may be shown again, so it goes by the key of the answer."""
    return msgspec.structs.replace(message, key="")


def pressed_start(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """Start was pressed. On a day gone by, the newest day is what starts."""
    newest = days.newest_day(s, here.student.id)
    if newest is not None and newest.id != day.id:
        left = [
            each
            for each in days.items_of(s, day.id, Part.REVIEW)
            if each.state in (ItemState.WAITING, ItemState.SHOWN)
        ]
        if day.stage is not Stage.PUSHED and left and newest.stage is Stage.PUSHED:
            return [FinishFirst(to=here.chat, day=day.id, left=len(left))]
        day = newest
    if (
        day.closed_at is not None
        and day.stage is Stage.PUSHED
        and day.date < dates.today(here.student, here.at)
    ):
        return bring_up(s, here)
    return onward(s, here, day)
