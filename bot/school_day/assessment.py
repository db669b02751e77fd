"""A test: opened by a grown-up, no clock, no hints; answers may change until *Hand in*, then each counts 1 or 0."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from sqlalchemy.orm import Session

from bot.answers import judge
from bot.happened import Typed
from bot.messages import (
    DayReady,
    Message,
    NotForYou,
    TestDone,
    TestList,
    TestNoted,
    TypeAgain,
)
from bot.planner.blueprint import read_result
from bot.planner.plan import DayPlan
from bot.records import attempts, days, focus, people
from bot.records.days import ItemState, SchoolDay, Sent, Stage
from bot.records.people import Person, Student
from bot.records.wishes import Wish
from bot.school import adjustments, dates, set_tests, testing
from bot.school.drawing import draw_all
from bot.school.school import School
from bot.school.standing import count_up
from bot.school.test_orders import MINUTES_AN_ITEM, REACH, waits
from bot.school.wishes import MORE_TIME
from bot.school_day.asking import Here, show
from bot.school_day.counted_again import count_again
from bot.school_day.grading import keep, work
from bot.vocabulary import ChatId, ItemId, Outcome, Part, Verdict

TYPE_AGAIN = (Verdict.FORM, Verdict.UNIT, Verdict.UNREADABLE)


def draw_test(s: Session, school: School, student: Student, day: SchoolDay) -> None:
    """Draw the items of a test, or of a second look, into a day; they wait until a grown-up opens it."""
    of, number = day.notes.get("second_of"), day.notes.get("test")
    assert isinstance(number, int)
    if isinstance(of, int):
        picks = testing.picks_of_second_look(s, school, student, day.date, of)
    else:
        picks = testing.picks_of_test(s, school, student, day.date, number)
    adjusted = adjustments.of_student(s, student, day.date)
    drawn = draw_all(school, adjustments.fewer(picks, adjusted), Part.TEST)
    days.add_items(s, day.id, student.id, adjustments.with_calculator(drawn, adjusted))


def second_look_of(wishes: Sequence[Wish], plan: DayPlan) -> dict[str, object]:
    """The day of the test that is looked at a second time, as a day notes it; empty where it is a test itself."""
    of = next((w.what["of"] for w in set_tests.used_up(wishes, plan) if "of" in w.what), None)
    return {} if of is None else {"second_of": of}


def tell_parents(s: Session, school: School, student: Student, day: SchoolDay) -> list[Message]:
    """On a test day the parents read what it holds, with the button that opens it."""
    if "test" not in day.notes:
        return []
    return [
        waits(s, school, student.name, day, each.chat, f"test-waits/{student.id}/{day.date}/{each.chat}")
        for each in people.parents_of(s, student.id)
        if each.speaking is None and not each.blocked
    ]


def open_it(
    s: Session, school: School, person: Person, student: Student, day: SchoolDay, at: datetime
) -> list[Message]:
    """A grown-up opens the test; the student hears of it where they are met."""
    if "test" not in day.notes or day.notes.get("handed_in"):
        return [NotForYou(to=person.chat, why="gone")]
    if not day.notes.get("test_open"):
        days.note_day(s, day, test_open=True)
    said: list[Message] = [waits(s, school, student.name, days.day(s, day.id), person.chat)]
    own = people.reach(s, student.id)
    if own is not None and day.stage is not Stage.DONE:
        said.append(_ready(s, school, student, days.day(s, day.id), own.chat))
    return said


def _minutes(s: Session, day: SchoolDay, items: int) -> int:
    """About how long a test takes; there is no clock."""
    adjusted = adjustments.of_student(s, people.student(s, day.student), day.date)
    return round(items * MINUTES_AN_ITEM * (MORE_TIME if "time" in adjusted else 1))


def _ready(s: Session, school: School, student: Student, day: SchoolDay, to: ChatId) -> DayReady:
    _, items = days.count_items(s, day.id, Part.TEST)
    minutes = _minutes(s, day, items)
    return DayReady(to=to, day=day.id, name=student.name, day_kind="test-open", minutes=minutes)


def is_open(day: SchoolDay) -> bool:
    """Whether a test was opened and not handed in yet, or was opened once more since."""
    if day.notes.get("reopened") and not day.notes.get("typing_again"):
        return True
    return bool(day.notes.get("test_open")) and not day.notes.get("handed_in")


def any_open(s: Session, student: Student, at: datetime) -> bool:
    """Whether the student has a test open: today's, or one of the last days that was opened once more."""
    today = dates.today(student, at)
    past = days.days_between(s, student.id, today - 2 * REACH, today)
    return bool(past) and (is_open(past[-1]) or any(day.notes.get("reopened") for day in past))


def note_answer(s: Session, here: Here, day: SchoolDay, sent: Sent, typed: Typed, text: str) -> list[Message]:
    """Note an answer; it may be changed until the test is handed in. Nothing is said of it."""
    if not is_open(day) and not day.notes.get("typing_again"):
        return [NotForYou(to=here.chat, why="gone")]
    judgement = judge(text, sent.item.key)
    keep(s, sent, typed, text, judgement, free=True)
    days.change_item(s, sent.id, state=ItemState.NOTED)
    work(s, day, typed)
    if day.notes.get("typing_again"):
        return _typed_again(s, here, days.day(s, day.id), sent)
    items = days.items_of(s, day.id, Part.TEST)
    answered = _answers(s, day)
    left = sum(1 for each in items if each.id not in answered)
    coming = days.next_item(s, day.id, Part.TEST)
    noted = TestNoted(to=here.chat, item=sent.id, day=day.id, left=left)
    if coming is None:
        return [noted, *list_answers(s, here, day)]
    return [noted, show(s, here, day, coming)]


def _answers(s: Session, day: SchoolDay) -> dict[int, str]:
    """The newest answer to each item, as typed."""
    return {item: tried[-1].typed for item, tried in attempts.attempts_of_day(s, day.id).items() if tried}


def onward(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """The first item without an answer, also after a break; behind the last one, the list of answers."""
    if day.notes.get("test_counted") and not day.notes.get("reopened"):
        days.change_day(s, day.id, stage=Stage.DONE, ended_at=here.at)
        return [_result(s, here, days.day(s, day.id))]
    coming = days.next_item(s, day.id, Part.TEST)
    return [show(s, here, day, coming)] if coming else list_answers(s, here, day)


def waits_for_grown_up(day: SchoolDay) -> bool:
    """Whether the day holds a test that nobody opened yet."""
    return "test" in day.notes and not day.notes.get("test_open")


def back(s: Session, here: Here, sent: Sent) -> list[Message]:
    """The item before."""
    return _neighbour(s, here, sent, -1)


def forward(s: Session, here: Here, sent: Sent) -> list[Message]:
    """The item after."""
    return _neighbour(s, here, sent, 1)


def show_one(s: Session, here: Here, sent: Sent) -> list[Message]:
    """One item of the list of answers, to change it."""
    day = days.day(s, sent.day)
    if not is_open(day) and not day.notes.get("typing_again"):
        return [NotForYou(to=here.chat, why="gone")]
    return [show(s, here, day, sent)]


def _neighbour(s: Session, here: Here, sent: Sent, by: int) -> list[Message]:
    day = days.day(s, sent.day)
    if not is_open(day):
        return [NotForYou(to=here.chat, why="gone")]
    items = days.items_of(s, day.id, Part.TEST)
    found = next((each for each in items if each.place == sent.place + by), None)
    return [show(s, here, day, found)] if found else list_answers(s, here, day)


def list_answers(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """All answers so far, with *Hand in*."""
    if not is_open(day):
        return [NotForYou(to=here.chat, why="gone")]
    answered = _answers(s, day)
    items = days.items_of(s, day.id, Part.TEST)
    rows = tuple((each.place, each.id, answered.get(each.id, "")[:40]) for each in items)
    focus.set_focus(s, here.chat, here.student.id, "go", here.at, ref=day.id)
    return [TestList(to=here.chat, day=day.id, rows=rows, blank=sum(1 for row in rows if not row[2]))]


def hand_in(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """Hand in: what only lacks its form or unit, or couldn't be read, is listed once to be typed again."""
    if not is_open(day):
        return [NotForYou(to=here.chat, why="gone")]
    rows = _to_type_again(s, day)
    days.note_day(s, day, handed_in=True, typing_again=bool(rows), again=[item for _, item, _ in rows])
    if not rows:
        return _count(s, here, days.day(s, day.id))
    focus.set_focus(s, here.chat, here.student.id, "item", here.at, item=rows[0][1], ref=day.id)
    return [TypeAgain(to=here.chat, day=day.id, rows=tuple(rows))]


def _to_type_again(s: Session, day: SchoolDay) -> list[tuple[int, ItemId, Verdict]]:
    tried = attempts.attempts_of_day(s, day.id)
    return [
        (each.place, each.id, tried[each.id][-1].verdict)
        for each in days.items_of(s, day.id, Part.TEST)
        if tried.get(each.id) and _wants_typing(each, tried[each.id][-1].verdict)
    ]


def _wants_typing(sent: Sent, verdict: Verdict) -> bool:
    # A right value in another form counts, unless the form is the skill; then there is one more go.
    return verdict in TYPE_AGAIN and not (verdict is Verdict.FORM and not sent.item.key.form_is_the_skill)


def _typed_again(s: Session, here: Here, day: SchoolDay, sent: Sent) -> list[Message]:
    listed = day.notes.get("again", [])
    left = [item for item in listed if item != sent.id] if isinstance(listed, list) else []
    days.note_day(s, day, again=left)
    if not left:
        return _count(s, here, days.day(s, day.id))
    return [show(s, here, day, days.item(s, left[0]))]


def count_now(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """*Count it as it is*: what was listed to be typed again counts as it stands."""
    counted = day.notes.get("test_counted") and not day.notes.get("reopened")
    if is_open(day) or not day.notes.get("handed_in") or counted:
        return [NotForYou(to=here.chat, why="gone")]
    return _count(s, here, day)


def _count(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """Count: each item 1 or 0. Child and parents read the same; what was wrong is reworked next day."""
    tried = attempts.attempts_of_day(s, day.id)
    items = days.items_of(s, day.id, Part.TEST)
    was = count_up(items, (Part.TEST,)).first_try if day.notes.get("test_counted") else None
    for each in items:
        mine = tried.get(each.id, [])
        good = bool(mine) and _counts(each, mine[-1].verdict)
        outcome = Outcome.FIRST_TRY if good else Outcome.UNSOLVED
        days.change_item(s, each.id, state=ItemState.DONE, outcome=outcome)
    days.note_day(s, day, typing_again=False, test_counted=True, reopened=False)
    days.change_day(s, day.id, stage=Stage.DONE, ended_at=day.ended_at or here.at)
    focus.clear_focus(s, here.chat, here.student.id)
    result = _result(s, here, days.day(s, day.id))
    if day.closed_at is None:
        return [result]
    told = count_again(s, here.school, here.student, days.day(s, day.id), was, here.at)
    return [result, *_back_to_today(s, here, day), *told]


def _back_to_today(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """After a test of a day gone by, what the chat was in the middle of."""
    from bot.school_day.onward import onward as go_on  # it knows the test's stage

    newest = days.newest_day(s, here.student.id)
    if newest is None or newest.id == day.id or newest.stage in (Stage.PUSHED, Stage.DONE):
        return []
    return go_on(s, here, newest)


def _counts(sent: Sent, verdict: Verdict) -> bool:
    return verdict is Verdict.RIGHT or (verdict is Verdict.FORM and not sent.item.key.form_is_the_skill)


def _result(s: Session, here: Here, day: SchoolDay) -> TestDone:
    items = days.items_of(s, day.id, Part.TEST)
    counts = count_up(items, (Part.TEST,))
    titles: dict[str, list[Outcome | None]] = {}
    for each in items:
        titles.setdefault(each.item.lesson_title, []).append(each.outcome)
    firm = [t for t, outcomes in titles.items() if all(o is Outcome.FIRST_TRY for o in outcomes)]
    return TestDone(
        to=here.chat,
        day=day.id,
        name=here.student.name,
        title=testing.test_title(here.school, day.notes.get("test")),
        right=counts.first_try,
        out_of=len(items),
        firm=tuple(firm),
        rework=tuple(title for title in titles if title not in firm),
        second_look=read_result(counts.first_try, max(1, len(items))).look_again
        and not day.notes.get("second_of"),
    )
