"""The course as an author wrote it: units, lessons, templates, tests, hands-on lessons.

In an author's text backticks hold maths with letters ("Work out `a/b ÷ c/d`."); `draw` puts the numbers in.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from bot.course import figures
from bot.course.item import Figure, Level, Step
from bot.vocabulary import LessonId, SkillId, TemplateId


@dataclass(frozen=True, slots=True)
class Written:
    """A piece of an author's text and the line of the file it stands in, so that a fault can be found."""

    text: str
    line: int


@dataclass(frozen=True, slots=True)
class Card:
    """The idea of a lesson, readable alone in a minute. Paragraphs are separated by an empty line."""

    text: str
    figure: Figure | None = None
    line: int = 0


@dataclass(frozen=True, slots=True)
class WorkedExample:
    """One problem with fixed numbers, worked through."""

    ask: str
    steps: tuple[Step, ...]
    figure: Figure | None = None
    checks: tuple[str, ...] = ()
    line: int = 0


@dataclass(frozen=True, slots=True)
class MisstepNote:
    """What is said to a student when an answer looks like this misstep: one question about the step."""

    name: str
    say: str
    lesson: LessonId
    line: int = 0


@dataclass(frozen=True, slots=True)
class Recipe:
    """How an item is made, as written: maths stays text until something is drawn.

    `words` are lists of rows, of which one is drawn. `answer` and the missteps may be cases:
    `yes if n/9 is whole, otherwise no`.
    """

    draw: Mapping[str, Written]
    answer: Written
    form: str
    where: Written | None = None
    words: tuple[tuple[Mapping[str, str], ...], ...] = ()
    accept: Written | None = None
    example: Written | None = None
    given: Written | None = None
    unit: Written | None = None
    places: int | None = None
    form_is_the_skill: bool = False
    missteps: Mapping[str, Written] = field(default_factory=dict)
    choices: tuple[Written, ...] = ()
    shuffle: bool = False
    figure: figures.Figure | None = None
    figure_line: int = 0


@dataclass(frozen=True, slots=True)
class Template:
    """An item's recipe with its question, hints and worked solution.

    `sitting` says from which day of a two-day lesson on it may be drawn, `opens_after` after which lesson a
    warm-up may. `version` changes with the text.
    """

    id: TemplateId
    lesson: LessonId
    level: Level
    skills: tuple[SkillId, ...]
    recipe: Recipe
    ask: Written
    hints: tuple[Written, ...]
    steps: tuple[tuple[Written, Written], ...]
    checks: tuple[Written, ...]
    version: str
    line: int
    sitting: int = 1
    opens_after: LessonId | None = None

    @property
    def name(self) -> str:
        """The heading: the part of the id after the slash."""
        return self.id.partition("/")[2]

    @property
    def by_button(self) -> bool:
        """Whether it is answered by pressing a button."""
        return self.recipe.form in ("choice", "yes-no")


@dataclass(frozen=True, slots=True)
class Lesson:
    """One lesson as written. `n` is its place in the year, from 1; lessons of "before we start" have 0.

    `cards` and `examples` have one entry a sitting.
    """

    id: LessonId
    n: int
    title: str
    unit: int
    objective: str
    skills: tuple[SkillId, ...]
    needs: tuple[SkillId, ...]
    standards: tuple[str, ...]
    cards: tuple[Card, ...]
    examples: tuple[WorkedExample, ...]
    missteps: tuple[MisstepNote, ...]
    templates: tuple[Template, ...]
    core: bool = True
    sittings: int = 1
    calculator: bool = False
    minutes: int = 10
    video: str | None = None
    file: str = ""


@dataclass(frozen=True, slots=True)
class Unit:
    """A few weeks of lessons. Unit 0 is "before we start": reviewed, never taught."""

    n: int
    title: str
    lessons: tuple[LessonId, ...]
    """In the order of the year, whether written yet or not."""


@dataclass(frozen=True, slots=True)
class TestBlueprint:
    """What a test holds: `items`, of which `new_share` are on lessons examined for the first time.

    `new` and `cumulative` are the first and last lesson of a stretch of the year. It may be opened once the
    lesson `after` is done. A final has two parts, each a blueprint: the first on lessons without a calculator, the
    second on those with one and on those that are named in `also`.
    """

    __test__ = False  # it is no test case, whatever a test runner thinks of the name

    n: int
    id: str
    title: str
    unit: int
    after: LessonId
    new: tuple[LessonId, LessonId]
    cumulative: tuple[LessonId, LessonId]
    items: int = 20
    new_share: Fraction = Fraction(2, 5)
    calculator: bool = False
    final: bool = False
    also: tuple[LessonId, ...] = ()


@dataclass(frozen=True, slots=True)
class HandsOn:
    """A lesson with things instead of a card: a task, a checklist, a few answers to send.

    The answers are templates like any other, `accept` holding a range where measuring varies.
    """

    id: LessonId
    title: str
    unit: int
    after: LessonId
    objective: str
    idea: str
    materials: tuple[str, ...]
    checklist: tuple[str, ...]
    safety: str
    minutes: int
    skills: tuple[SkillId, ...]
    templates: tuple[Template, ...]
    file: str = ""


@dataclass(frozen=True, slots=True)
class Strategy:
    """A way to work in one's head, or a way to attack a puzzle: its name, a sentence on it, its templates."""

    id: str
    title: str
    say: str
    opens_after: LessonId | None
    templates: tuple[TemplateId, ...]


@dataclass(frozen=True, slots=True)
class SyllabusLesson:
    """What a planner needs to know of a lesson: ids and sizes, no text."""

    n: int
    id: LessonId
    title: str
    unit: int
    skills: tuple[SkillId, ...]
    needs: tuple[SkillId, ...]
    prerequisites: tuple[LessonId, ...]
    core: bool
    sittings: int
    calculator: bool
    templates: tuple[SyllabusTemplate, ...]


@dataclass(frozen=True, slots=True)
class SyllabusTemplate:
    """What a planner needs to know of a template."""

    id: TemplateId
    skills: tuple[SkillId, ...]
    level: Level
    sitting: int
    by_button: bool
