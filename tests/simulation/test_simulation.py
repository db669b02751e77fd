"""The simulated year: the same students for all, looks that teach nobody, and what the command prints."""

from __future__ import annotations

import json
import pickle
from pathlib import Path
from random import Random

import pytest
from typer.testing import CliRunner

from bot.cli import app
from bot.cli.simulating import POLICIES as NAMED
from bot.simulation import year as year_module
from bot.simulation.course import course_rows, read_sequence, syllabus_at, timetable
from bot.simulation.placing import place
from bot.simulation.policies import BOXES, LAGS, POLICIES
from bot.simulation.report import OWN_STUDENTS, StudentClassError, interval, paired, run_years, student_class
from bot.simulation.year import live

STRANGER = '''
class Stranger:
    """Knows what it has met in the last ten days."""

    def __init__(self, seed, course):
        self.skills = {row["n"]: row["skills"] for row in course}
        self.met = {}

    def study(self, lesson_n, day):
        self.met.update(dict.fromkeys(self.skills[lesson_n], day))

    def attempt(self, skills, day, rng):
        right = all(day - self.met.get(skill, -99) <= 10 for skill in skills) and rng.random() < 0.95
        self.met.update(dict.fromkeys(skills, day))
        return right, 30.0

    def known_share(self, day):
        return sum(day - met <= 10 for met in self.met.values()) / max(1, len(self.met))
'''


@pytest.fixture(scope="module")
def course():
    return read_sequence()


@pytest.fixture(scope="module")
def short(course):
    return timetable(course, 40)


@pytest.fixture(scope="module", params=sorted(POLICIES))
def policy(request):
    return request.param


def chosen(course, plan, name, items=12, knows=0.7):
    policy, rng, days = POLICIES[name](course, items, 1), Random(1), []
    for day, lesson in enumerate(plan.lessons, start=1):
        days.append(policy.begin(day, lesson))
        for template in days[-1]:
            policy.hear(day, template, rng.random() < knows)
    return days


def test_the_sequence_is_whole(course):
    assert len(course.lessons) == 128
    assert sum(lesson.core for lesson in course.lessons) == 116
    assert all(m < lesson.n for lesson in course.lessons for m in lesson.prerequisites)
    skills = [skill for lesson in course.lessons for skill in lesson.skills]
    assert len(set(skills)) == len(skills)


def test_a_course_that_is_not_whole_gives_way_to_the_sequence(course, tmp_path):
    assert syllabus_at(None) == syllabus_at(tmp_path) == syllabus_at(tmp_path / "missing") == course


def test_of_the_written_course_only_skills_are_asked_that_a_student_class_was_told_of():
    written = syllabus_at(Path(__file__).parents[2] / "content")
    told = {skill for row in course_rows(written) for skill in row["skills"]}
    assert all(template.skills and told.issuperset(template.skills) for template in written.templates)
    assert any(len(template.skills) > 1 for template in written.templates)


def test_a_year_of_180_days_teaches_every_lesson_in_order(course):
    taught = [n for n in timetable(course, 180).lessons if n is not None]
    assert taught == list(range(1, 129))


def test_every_policy_gives_the_same_number_of_items_of_what_was_taught(course, short, policy):
    taught = set()
    for lesson, day in zip(short.lessons, chosen(course, short, policy), strict=True):
        taught |= {lesson} if lesson else set()
        assert len(day) == 12
        assert all(course.needed_lesson[template.id] <= taught for template in day)


def test_massed_stays_with_the_lesson_of_the_day(course, short):
    for lesson, day in zip(short.lessons, chosen(course, short, "massed"), strict=True):
        if lesson:
            assert {template.lesson for template in day} == {f"lesson-{lesson}"}


def test_fixed_lags_bring_a_lesson_back_after_its_lags(course, short):
    days = chosen(course, short, "fixed-lags", items=24)
    seen = [n for n, day in enumerate(days) if any(template.lesson == "lesson-1" for template in day)]
    assert seen == [0, *LAGS[:-1]]  # the 40th school day after it lies beyond


def test_boxes_move_on_when_right_and_back_when_wrong(course):
    boxes = POLICIES["boxes"](course, 1, 1)
    template = boxes.begin(1, 1)[0]
    for box in (1, 2, 3):
        boxes.hear(1, template, True)
        assert boxes.due[1] == 1 + BOXES[box]
    boxes.hear(1, template, False)
    assert boxes.due[1] == 1 + BOXES[0]


@pytest.mark.parametrize("name", sorted(OWN_STUDENTS))
def test_students_are_the_same_under_every_policy_and_every_run(course, short, name):
    one, other = (live(OWN_STUDENTS[name], course, short, "random", 8, 5) for _ in range(2))
    assert one == other
    born = [OWN_STUDENTS[name](5, course_rows(course)) for _ in range(2)]
    assert born[0].ease == born[1].ease != OWN_STUDENTS[name](6, course_rows(course)).ease


@pytest.mark.parametrize("name", sorted(OWN_STUDENTS))
def test_looking_teaches_nobody(course, name):
    student = OWN_STUDENTS[name](1, course_rows(course))
    for n in range(1, 6):
        student.study(n, n)
    before = pickle.dumps(student)
    year_module._look(student, [list(course.by_number[n].skills) for n in range(1, 6)], 9, 1)
    year_module._chances(student, list(course.by_number[3].skills), 9, 1)
    student.known_share(9)
    assert pickle.dumps(student) == before


@pytest.mark.parametrize("name", sorted(OWN_STUDENTS))
def test_students_forget_and_practice_helps(course, name):
    rng = Random(1)
    idle, busy = [], []
    for seed in range(20):
        for group, practises in ((idle, False), (busy, True)):
            student = OWN_STUDENTS[name](seed, course_rows(course))
            student.study(1, 1)
            for day in (2, 5, 10) if practises else ():
                student.attempt(list(course.by_number[1].skills), day, rng)
            group.append((student.known_share(11), student.known_share(60)))
    assert all(soon >= late for soon, late in idle + busy)
    assert sum(late for _, late in busy) > sum(late for _, late in idle)


def test_a_gap_to_the_last_day_counts(course, short):
    assert live(OWN_STUDENTS["half-lives"], course, short, "massed", 8, 1).longest_gap == 39


def test_differences_are_taken_student_by_student(course):
    runs = run_years("half-lives", ["planner", "massed"], 3, 20, 8, 1, processes=1)
    gap = paired(*runs, "known_share")
    each = [a.known_share - b.known_share for a, b in zip(runs[0].years, runs[1].years, strict=True)]
    assert gap == interval(each) and gap.low < gap.mean < gap.high


def test_the_interval_is_students_t():
    # Ten values 1 to 10: mean 5.5, half-width 2.2622 * 3.02765 / sqrt(10) (t table, common knowledge).
    found = interval(range(1, 11))
    assert found.high - found.mean == pytest.approx(2.2622 * 3.02765 / 10**0.5, rel=1e-3)


def run(*words):
    # A folder without a course, so that what is tested doesn't change while lessons are written.
    return CliRunner().invoke(whole_app(), ["simulate", "--processes", "1", "--sequence", *words])


def whole_app():
    import typer

    from bot.cli.simulating import add_to

    made = typer.Typer()
    made.callback()(lambda: None)
    add_to(made)
    return made


def test_json_is_one_object_with_a_value_a_student():
    done = run("--students", "2", "--days", "12", "--items", "6", "--policy", "planner", "--json")
    made = json.loads(done.stdout)
    assert (made["policy"], made["students"], made["days"], made["items"], made["seed"]) == (
        "planner",
        2,
        12,
        6,
        1,
    )
    for name in ("known_share", "sample", "first_try", "below_half", "longest_gap", "minutes"):
        assert len(made[name]) == 2


def test_a_student_class_of_ones_own_is_taken_from_its_file(tmp_path):
    file = tmp_path / "stranger.py"
    file.write_text(STRANGER)
    done = run("--students", "2", "--days", "15", "--items", "6", "--student", f"{file}:Stranger", "--json")
    assert [one["policy"] for one in json.loads(done.stdout)["runs"]] == list(NAMED)


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["--policy", "tarot"], "no policy 'tarot'"),
        (["--student", "nobody"], "FILE.py:CLASS"),
        (["--student", "missing.py:Child"], "no file missing.py"),
    ],
)
def test_what_cannot_be_run_says_why_and_ends_with_2(words, says):
    done = run("--students", "1", "--days", "5", *words)
    assert done.exit_code == 2 and says in done.output


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("class Other: ...", "no class Child"),
        ("class Child: ...", "lacks study"),
        ("1 / 0", "can't be loaded"),
    ],
)
def test_a_student_class_that_does_not_fit_says_what_is_missing(tmp_path, text, says):
    file = tmp_path / "child.py"
    file.write_text(text)
    with pytest.raises(StudentClassError, match=says):
        student_class(f"{file}:Child")


def test_plots_are_written(tmp_path):
    words = ["--students", "2", "--days", "12", "--policy", "planner", "--policy", "random"]
    assert run(*words, "--plots", str(tmp_path / "plots")).exit_code == 0
    names = {path.name for path in (tmp_path / "plots").glob("*.png")}
    assert names == {"known_by_day.png", "known_by_unit.png", "differences.png", "calibration.png"}


def test_help_shows_an_example():
    assert "evensum simulate --students 50" in " ".join(run("--help").stdout.split())


def test_placing_is_repeatable_and_of_allowed_length(course):
    one, other = (place(OWN_STUDENTS["half-lives"], course, 3) for _ in range(2))
    assert one == other and 12 <= one.asked <= 20


def test_placement_says_how_many_came_near():
    done = run("--students", "4", "--student", "half-lives", "--placement")
    assert "of 4 within 5 lessons of the true place" in done.stdout


def test_whole_command_knows_simulate():
    from bot.cli.simulating import add_to

    add_to(app)
    assert any(command.name == "simulate" for command in app.registered_commands)
