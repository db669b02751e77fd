"""A lesson is taken out of the course while a student is in the middle of its school day."""

from __future__ import annotations

import pytest
from support.group import Somebody

from bot.course.lesson import Lesson
from bot.course.year import Course, NoSuchThing
from bot.messages import CardShown, Message
from bot.records import days, people
from bot.records.base import transaction
from bot.school_day import morning
from bot.vocabulary import Part


@pytest.fixture
def taken_out(wren: Somebody, monkeypatch: pytest.MonkeyPatch) -> Somebody:
    """Wren, whose lesson of today is gone since the morning."""
    gone = wren.day().lesson
    assert gone is not None
    whole = Course.lesson

    def without(course: Course, lesson: str) -> Lesson:
        if lesson == gone:
            raise NoSuchThing(lesson)
        return whole(course, lesson)

    monkeypatch.setattr(Course, "lesson", without)
    return wren


def test_the_day_goes_on_to_its_review_without_the_card(taken_out: Somebody) -> None:
    taken_out.gets_to_review()
    said: list[Message] = []
    for _ in range(60):
        items = taken_out.items(Part.REVIEW)
        shown = [each for each in items if each.state == "shown"]
        if taken_out.day().ended_at is not None:
            break
        said += taken_out.answers(shown[0]) if shown else taken_out.presses("on")

    assert not any(isinstance(message, CardShown) for message in said)
    assert taken_out.day().ended_at is not None


def test_the_morning_message_can_be_sent_again(taken_out: Somebody) -> None:
    group, student = taken_out.group, taken_out.id
    with transaction(group.engine) as s:
        day = days.newest_day(s, student)
        assert day is not None
        said = morning.push(s, people.student(s, student), group.school, day, taken_out.chat)

    assert said.lesson == ""
