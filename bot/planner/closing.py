"""The end of the year: a week of review, a strand a day, before the final; and what a test will ask for."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from enum import StrEnum

from bot.planner.history import History, Wishes
from bot.planner.memory import STEADY, Memory, recall
from bot.planner.syllabus import Syllabus, TestPlace
from bot.vocabulary import LessonId, Part, SkillId

LOOK_AGAIN = 5
"""Lessons at most that a study list says to look at again; more is no list for one evening."""


class Standing(StrEnum):
    """What is said of a skill to a family."""

    STEADY = "steady"
    SHAKY = "shaky"
    NOT_MET = "not-met"


@dataclass(frozen=True, slots=True)
class StudyList:
    """For the day before a test: what it covers for the first time, and lessons worth another look, weakest first."""

    test: int
    new: tuple[LessonId, ...]
    look_again: tuple[LessonId, ...]


def strand_due(syllabus: Syllabus, history: History, further: int = 0) -> int | None:
    """The strand of today's review, counted from 0, once every lesson is behind; None before, and after the week.

    A day counts that held review and no lesson since the last lesson that was met; `further` days are added.
    """
    behind = history.taught | history.left_out
    if not syllabus.strands or any(lesson.n not in behind for lesson in syllabus.lessons):
        return None
    finals = [test for test in syllabus.tests if test.final]
    if finals and all(test.n in history.tests_done for test in finals):
        return None
    done = _review_days(history) + further
    return done if done < len(syllabus.strands) else None


def _review_days(history: History) -> int:
    done = 0
    for past in reversed(history.days):
        if past.lesson is not None:
            return done
        done += any(item.part is Part.REVIEW for item in past.items)
    return done


def of_strand(syllabus: Syllabus, wishes: Wishes, strand: int) -> Wishes:
    """The wishes with everything outside the strand left out for the day; what the tutor pinned stays."""
    lessons = syllabus.strands[strand]
    outside = {
        template.id
        for template in syllabus.templates
        if template.id not in wishes.pinned
        and (template.lesson not in syllabus.by_id or syllabus.by_id[template.lesson].n not in lessons)
    }
    return replace(wishes, dropped=wishes.dropped | outside)


def due_test(syllabus: Syllabus, history: History, further: int = 0) -> TestPlace | None:
    """The next test whose lessons are all behind; a part of the final only after the week of review.

    `further` counts days of that week beyond the history, such as today's.
    """
    behind = history.taught | history.left_out
    for test in syllabus.tests:
        if test.n in history.tests_done or (
            test.final and strand_due(syllabus, history, further) is not None
        ):
            continue
        if all(lesson.n in behind for lesson in syllabus.lessons if lesson.n <= test.after):
            return test
    return None


def due_after_today(
    syllabus: Syllabus, history: History, lesson: int | None, strand: int | None
) -> TestPlace | None:
    """The test that is due next time once today's lesson, or today's strand of review, is done; None if none is.

    Give the lesson's number only where its last sitting is today.
    """
    taught = history.taught | ({lesson} if lesson is not None else frozenset())
    return due_test(syllabus, replace(history, taught=taught), further=int(strand is not None))


def study_list(syllabus: Syllabus, place: TestPlace, history: History, day: date) -> StudyList:
    """What to look at on the day before a test: up to five lessons it may ask for that aren't steady, weakest first."""
    covered = [
        lesson
        for lesson in syllabus.lessons
        if lesson.n in history.taught
        and (
            place.new[0] <= lesson.n <= place.new[1] or place.cumulative[0] <= lesson.n <= place.cumulative[1]
        )
        and (place.only is None or lesson.n in place.only)
    ]
    new = tuple(lesson.id for lesson in covered if place.new[0] <= lesson.n <= place.new[1])
    known = {lesson.id: _weakest(history.memories, lesson.skills, day) for lesson in covered}
    shaky = sorted((name for name in known if known[name] < STEADY), key=lambda name: known[name])
    return StudyList(place.n, new, tuple(shaky[:LOOK_AGAIN]))


def _weakest(memories: Mapping[SkillId, Memory], skills: Sequence[SkillId], day: date) -> float:
    return min((recall(memories[skill], day) for skill in skills if skill in memories), default=1.0)


def standing_of(memories: Mapping[SkillId, Memory], skills: Iterable[SkillId], day: date) -> Standing:
    """Steady where every skill was met and is steady by recall today, not met where none was met, else shaky."""
    wanted = tuple(skills)
    held = [memories[skill] for skill in wanted if skill in memories]
    if not held:
        return Standing.NOT_MET
    firm = all(recall(memory, day) >= STEADY for memory in held)
    return Standing.STEADY if firm and len(held) == len(wanted) else Standing.SHAKY
