"""What the steps of a change do, and how each is taken back: columns, items of a day, a day made small or free."""

from __future__ import annotations

from datetime import date

from sqlalchemy.orm import Session

from bot.course.draw import draw
from bot.messages import Message
from bot.records import days, people
from bot.records.days import Fresh, ItemState, SchoolDay, Sent, Stage
from bot.records.people import Student
from bot.school.changes import Did, Effects, Scene, Stale, Step
from bot.school.standing import relearn
from bot.vocabulary import DayId, HouseholdId, ItemId, Outcome, Part, StudentId, TemplateId, Why

SMALL = 6
"""Review items of a small day."""


def _number(step: Step, name: str) -> int:
    value = step[name]
    assert isinstance(value, int)
    return value


def _values(step: Step, name: str) -> dict[str, object]:
    value = step[name]
    assert isinstance(value, dict)
    return {str(key): _as_date(str(key), each) for key, each in value.items()}


def _as_date(name: str, value: object) -> object:
    return date.fromisoformat(value) if name == "first_day" and isinstance(value, str) else value


def _set_student(scene: Scene, step: Step) -> Did:
    student = people.student(scene.s, StudentId(_number(step, "student")))
    values = _values(step, "set")
    was = {name: getattr(student, name) for name in values}
    people.change_student(scene.s, student.id, **values, next_look=people.EARLY)
    return Did({**step, "was": was})


def _reset_student(scene: Scene, step: Step) -> list[Message] | None:
    student = people.student(scene.s, StudentId(_number(step, "student")))
    return _reset(step, student, lambda values: people.change_student(scene.s, student.id, **values))


def _set_household(scene: Scene, step: Step) -> Did:
    home = people.household(scene.s, HouseholdId(_number(step, "household")))
    values = _values(step, "set")
    was = {name: getattr(home, name) for name in values}
    people.change_household(scene.s, home.id, **values)
    return Did({**step, "was": was})


def _reset_household(scene: Scene, step: Step) -> list[Message] | None:
    home = people.household(scene.s, HouseholdId(_number(step, "household")))
    return _reset(step, home, lambda values: people.change_household(scene.s, home.id, **values))


def _reset(step: Step, now: object, change: object) -> list[Message] | None:
    """Put back what still stands as the step left it; what was changed since then stays."""
    left, was = _values(step, "set"), _values(step, "was")
    back = {name: was[name] for name, value in left.items() if getattr(now, name) == value}
    if back:
        change(back)  # type: ignore[operator]
    return [] if len(back) == len(left) else None


def _item(s: Session, step: Step) -> Sent:
    sent = days.find_item(s, _number(step, "item"))
    if sent is None or sent.student != step["student"]:
        raise Stale
    return sent


def _set_item(scene: Scene, step: Step) -> Did:
    """Change how an item stands, if it still stands as it was when the change was shown."""
    sent = _item(scene.s, step)
    values, shown = _values(step, "set"), _values(step, "was")
    if any(getattr(sent, name) != value for name, value in shown.items()):
        raise Stale
    _change_item(scene, sent, values)
    return Did(step)


def _reset_item(scene: Scene, step: Step) -> list[Message] | None:
    sent = _item(scene.s, step)
    if any(getattr(sent, name) != value for name, value in _values(step, "set").items()):
        return None
    _change_item(scene, sent, _values(step, "was"))
    return []


def _change_item(scene: Scene, sent: Sent, values: dict[str, object]) -> None:
    days.change_item(scene.s, sent.id, **values)
    day = days.day(scene.s, sent.day)
    if day.closed_at is not None and values.get("outcome", sent.outcome) != sent.outcome:
        relearn(scene.s, scene.school, sent.student)


def item_step(sent: Sent, **values: object) -> Step:
    """A step that changes how an item stands."""
    was = {name: getattr(sent, name) for name in values}
    return {"op": "item", "student": sent.student, "item": sent.id, "set": values, "was": was}


def _add_item(scene: Scene, step: Step) -> Did:
    """Add an item to a day that was made already, at the end of its review."""
    day = days.find_day(scene.s, _number(step, "day"))
    if day is None or day.closed_at is not None or day.stage is Stage.DONE:
        raise Stale
    item = draw(scene.school.course, TemplateId(str(step["template"])), _number(step, "seed"))
    place = days.last_place(scene.s, day.id, Part.REVIEW) + 1
    fresh = Fresh(Part.REVIEW, place, item, Why.TUTOR_ASKED, {})
    (made,) = days.add_items(scene.s, day.id, day.student, [fresh])
    return Did({**step, "item": made})


def _remove_item(scene: Scene, step: Step) -> list[Message] | None:
    sent = days.item(scene.s, ItemId(_number(step, "item")))
    if sent.state is not ItemState.WAITING:
        return None
    days.change_item(scene.s, sent.id, state=ItemState.DROPPED)
    return []


def add_step(student: Student, day: SchoolDay, template: str, seed: int) -> Step:
    """A step that adds an item to a day that was made already."""
    return {"op": "add-item", "student": student.id, "day": day.id, "template": template, "seed": seed}


def make_small(s: Session, day: SchoolDay) -> list[Sent]:
    """Make a day small: no lesson, six review items. What was done stays done. Gives what was taken out."""
    out = []
    if not day.notes.get("lesson_met"):
        out += [each for each in days.items_of(s, day.id, Part.GUIDED) if each.state is not ItemState.DONE]
    review = days.items_of(s, day.id, Part.REVIEW)
    started = [each for each in review if each.state is ItemState.DONE]
    waiting = [each for each in review if each.state is not ItemState.DONE]
    out += waiting[max(0, SMALL - len(started)) :]
    for sent in out:
        days.change_item(s, sent.id, state=ItemState.DROPPED)
    stage = day.stage if day.stage in (Stage.PUSHED, Stage.WARM_UP) else Stage.REVIEW
    lesson = day.lesson if day.notes.get("lesson_met") else None
    days.change_day(s, day.id, small=True, lesson=lesson, stage=stage)
    return out


def _small(scene: Scene, step: Step) -> Did:
    day = days.day(scene.s, DayId(_number(step, "day")))
    if day.small or day.closed_at is not None or day.stage is Stage.DONE:
        raise Stale
    out = make_small(scene.s, day)
    kept = [[sent.id, sent.state.value] for sent in out]
    return Did({**step, "out": kept, "lesson": day.lesson, "stage": day.stage.value})


def _full_again(scene: Scene, step: Step) -> list[Message] | None:
    """Give a day made small its items back, unless it came further since."""
    day = days.day(scene.s, DayId(_number(step, "day")))
    if day.closed_at is not None or day.stage is Stage.DONE or not day.small:
        return None
    out = step["out"]
    assert isinstance(out, list)
    for item, state in out:
        if days.item(scene.s, ItemId(item)).state is ItemState.DROPPED:
            days.change_item(scene.s, ItemId(item), state=ItemState(state))
    begun = {Stage.CARD.value, Stage.GUIDED.value} & {step["stage"]}
    stage = Stage(str(step["stage"])) if begun else day.stage
    days.change_day(scene.s, day.id, small=False, lesson=step["lesson"], stage=stage)
    return []


def _free(scene: Scene, step: Step) -> Did:
    """A day that was made becomes free: what was not done is excused, and the day is over."""
    day = days.day(scene.s, DayId(_number(step, "day")))
    if day.closed_at is not None:
        raise Stale
    out = [
        each
        for each in days.items_of(scene.s, day.id)
        if each.state is not ItemState.DONE and each.outcome is None
    ]
    for sent in out:
        days.change_item(scene.s, sent.id, state=ItemState.DONE, outcome=Outcome.EXCUSED)
    kept = [[sent.id, sent.state.value] for sent in out]
    days.note_day(scene.s, day, off=True)
    days.change_day(scene.s, day.id, stage=Stage.DONE, ended_at=scene.at)
    return Did({**step, "out": kept, "stage": day.stage.value})


def _not_free(scene: Scene, step: Step) -> list[Message] | None:
    day = days.day(scene.s, DayId(_number(step, "day")))
    if day.closed_at is not None:
        return None
    out = step["out"]
    assert isinstance(out, list)
    for item, state in out:
        sent = days.item(scene.s, ItemId(item))
        if sent.outcome is Outcome.EXCUSED:
            days.change_item(scene.s, sent.id, state=ItemState(state), outcome=None)
    days.note_day(scene.s, day, off=False)
    days.change_day(scene.s, day.id, stage=Stage(str(step["stage"])), ended_at=None)
    return []


EFFECTS: Effects = {
    "student": (_set_student, _reset_student),
    "household": (_set_household, _reset_household),
    "item": (_set_item, _reset_item),
    "add-item": (_add_item, _remove_item),
    "small": (_small, _full_again),
    "free": (_free, _not_free),
}
"""The effects that a parent's and a tutor's changes share."""
