"""The day before a test and the end of the year, from a student's own rows."""

from __future__ import annotations

from datetime import timedelta
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader
from support.courses import whole_course
from support.group import Group, only

from bot import demo
from bot.chat.render import render
from bot.chat.rendered import Drawing
from bot.course.load import load_with_faults
from bot.messages import FoundationsPaper
from bot.pictures.recipes import make
from bot.planner.closing import Standing
from bot.planner.memory import Memory
from bot.records import memories, people
from bot.records.base import transaction
from bot.school import dates
from bot.school.closing import standings, study_for
from bot.school.school import syllabus_of

COURSE = whole_course()


@pytest.fixture
def group(engine) -> Group:
    return Group(engine, COURSE)


def test_the_study_list_is_there_only_when_the_coming_day_holds_a_test(group: Group) -> None:
    with transaction(group.engine) as s:
        student = group.who(demo.WREN).id
        on = dates.today(people.student(s, student), group.clock.now()) + timedelta(days=1)
        people.change_student(s, student, lesson=5)
        assert study_for(s, group.school, people.student(s, student), on) is None
        people.change_student(s, student, lesson=12)
        found = study_for(s, group.school, people.student(s, student), on)
    assert found is not None and found.title == "Test 1"
    assert found.new[0] == "Place value and rounding" and len(found.new) == 6


def test_the_page_of_foundations_says_how_each_stands_and_what_it_cannot_tell(group: Group) -> None:
    first, second = COURSE.foundations[:2]
    with transaction(group.engine) as s:
        student = people.student(s, group.who(demo.WREN).id)
        on = dates.today(student, group.clock.now())
        believed = [Memory(skill, 400.0, 5.0, on - timedelta(days=3), 5, 0) for skill in first.skills]
        believed += [Memory(second.skills[0], 0.2, 5.0, on - timedelta(days=9), 5, 3)]
        memories.keep_memories(s, student.id, believed)
        stand = dict(standings(s, group.school, student, on))
    page = only(FoundationsPaper, group.who(demo.INES).types("/standing wren"))
    for language, state in (("en", "steady"), ("es", "firme")):
        content = render(page, language).documents[0].content
        assert isinstance(content, Drawing)
        read = PdfReader(BytesIO(make(content.recipe, content.data)))
        written = read.pages[0].extract_text()
        assert first.title[language] in written and state in written
        assert "diagn" in written and len(read.pages) == 1
    assert len(stand) == 12
    assert (stand[first.title["en"]], stand[second.title["en"]]) == (Standing.STEADY, Standing.SHAKY)
    assert list(stand.values())[2:] == [Standing.NOT_MET] * 10


def test_the_final_has_a_part_without_and_one_with_a_calculator() -> None:
    syllabus = syllabus_of(COURSE)
    without, with_one = (test for test in syllabus.tests if test.final)
    calculators = {lesson.n for lesson in COURSE.lessons if lesson.calculator}
    assert without.only is not None and with_one.only is not None
    assert not without.only & calculators and calculators <= with_one.only
    assert len(without.only) > 100 and len(with_one.only) >= 20
    assert sorted(n for strand in syllabus.strands for n in strand) == [lesson.n for lesson in COURSE.lessons]


@pytest.mark.parametrize(
    ("before", "after", "says"),
    [
        (
            "      - equations\n",
            "      - equations\n      - nowhere\n",
            "No unit holds a lesson called 'nowhere'.",
        ),
        (
            "      - equations\n",
            "      - equations\n      - equations\n",
            "equations stands in the strand All already.",
        ),
        ("      - inequalities\n", "", "inequalities stands in no strand."),
        ("skills: one-two", "skills: one-two, nothing", "No lesson teaches 'nothing'."),
    ],
)
def test_a_fault_of_the_end_of_the_year_is_told(tmp_path: Path, before: str, after: str, says: str) -> None:
    plan = (
        "title: Small\nunits:\n  - title: One\n    lessons: [equations, inequalities]\n"
        "strands:\n  - title: All\n    lessons:\n      - equations\n      - inequalities\n"
        "foundations:\n  - title: Both\n    skills: one-two\n"
    )
    (tmp_path / "course.yaml").write_text(plan.replace(before, after), encoding="utf-8")
    (tmp_path / "planned.yaml").write_text("equations: one-two\n", encoding="utf-8")
    assert says in [fault.what for fault in load_with_faults(tmp_path)[1]]
