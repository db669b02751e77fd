"""A folder of content read into a course; every fault with its file, line and a fix, all of them at once."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from pathlib import Path

from bot.course.closing import closing_faults, read_foundations, read_strands
from bot.course.faults import CourseErrors, Fault, nearest
from bot.course.formulas import FormulaPart, read_formulas
from bot.course.glossary import GlossaryWord, read_words
from bot.course.lesson import HandsOn, Lesson, MisstepNote, Strategy, TestBlueprint, Unit, Written
from bot.course.lesson_file import read_hands_on, read_lesson, read_warm_up
from bot.course.recipes import Rows, word_rows
from bot.course.source import Entry, Source, read_yaml, take_apart
from bot.course.year import Course
from bot.vocabulary import LessonId, SkillId

BEFORE = "before-we-start"


def load_course(folder: Path) -> Course:
    """Read the course in a folder.

    Raises CourseErrors with every fault of structure; what the maths claims is checked by `prove`.
    """
    reader = _Reader(folder)
    course = reader.course()
    if reader.faults:
        raise CourseErrors(reader.faults)
    return course


def load_with_faults(folder: Path) -> tuple[Course, list[Fault]]:
    """As `load_course`, but with the faults beside what could be read, for a checker that goes on."""
    reader = _Reader(folder)
    return reader.course(), reader.faults


class _Reader:
    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.faults: list[Fault] = []
        self.lists: dict[str, Rows] = {}
        self.plurals: dict[str, str] = {}

    def course(self) -> Course:
        if not (self.folder / "course.yaml").is_file():
            self.faults.append(
                Fault(
                    "no-course",
                    self.folder.name,
                    1,
                    "There is no course.yaml in this folder.",
                    "It names the units and their lessons in order.",
                )
            )
            return Course("", (), ())
        self._words()
        plan = self._yaml("course.yaml")
        units = tuple(self._units(plan))
        numbers = {lesson: n for n, lesson in enumerate((one for unit in units for one in unit.lessons), 1)}
        unit_of = {lesson: unit.n for unit in units for lesson in unit.lessons}
        found = {path.stem: path for path in sorted(self.folder.glob("*/*.md"))}
        lessons = [
            self._lesson(found[name], numbers[name], unit_of[name]) for name in numbers if name in found
        ]
        before = [self._lesson(path, 0, 0) for name, path in found.items() if path.parent.name == BEFORE]
        hands_on = [self._hands_on(entry, found, unit_of) for entry in _rows(plan.get("hands-on"))]
        warm_ups = [self._warm_up(path) for path in found.values() if path.parent.name == "warm-ups"]
        placed = {*numbers, *(task.id for task in hands_on if task)}
        for name, path in found.items():
            if name not in placed and path.parent.name not in (BEFORE, "warm-ups"):
                self.faults.append(
                    Fault(
                        "not-in-course",
                        self._name(path),
                        1,
                        f"course.yaml doesn't name the lesson {name}.",
                        nearest(name, placed) or "Add it where it belongs in the year.",
                    )
                )
        written = tuple(lessons)
        known = {lesson.id for lesson in written}
        begun, warm = tuple(before), warm_ups
        course = Course(
            title=_text(plan.get("title")),
            units=units,
            lessons=written,
            before=begun,
            tests=tuple(test for test in self._tests(plan, unit_of) if {test.after, *test.new} <= known),
            hands_on=tuple(task for task in hands_on if task is not None),
            mental_math=tuple(
                s for lesson, strategies in warm if lesson.id == "mental-math" for s in strategies
            ),
            puzzles=tuple(s for lesson, strategies in warm if lesson.id == "puzzles" for s in strategies),
            warm_ups=tuple(lesson for lesson, _ in warm),
            missteps=self._missteps((*begun, *written, *(lesson for lesson, _ in warm))),
            planned=self._planned({lesson.id for lesson in written}),
            former_names=self._former_names(plan),
            plurals=self.plurals,
            lists=self.lists,
            glossary=self._glossary(unit_of),
            formulas=self._formulas(unit_of),
            strands=read_strands(_rows(plan.get("strands"))),
            foundations=read_foundations(_rows(plan.get("foundations"))),
            materials=tuple(
                (_text(row.get("thing")), _text(row.get("for"))) for row in _rows(plan.get("materials"))
            ),
            stressed=self._listed("glossary/stressed.txt"),
            known_words=self._listed("known-words.txt"),
        )
        self._names_unique(course)
        skills = {skill for lesson in written for skill in lesson.skills} | self._planned(set()).keys()
        file = f"{self.folder.name}/course.yaml"
        self.faults += closing_faults(file, course.strands, course.foundations, unit_of, skills)
        return course

    # Files ---------------------------------------------------------------------------------------------

    def _name(self, path: Path) -> str:
        return f"{self.folder.name}/{path.relative_to(self.folder).as_posix()}"

    def _source(self, path: Path) -> Source:
        try:
            text = path.read_text(encoding="utf-8")
        except UnicodeDecodeError:
            self.faults.append(
                Fault(
                    "not-utf-8",
                    self._name(path),
                    1,
                    "This file isn't plain text in UTF-8.",
                    "Save it again as UTF-8.",
                )
            )
            text = path.read_text(encoding="utf-8", errors="replace")
        source = take_apart(self._name(path), text)
        self.faults_of(source)
        return source

    def faults_of(self, source: Source) -> None:
        """From now on what is wrong with this file is wrong with the course."""
        self.faults += source.faults
        source.faults = self.faults

    def _yaml(self, name: str) -> dict[str, Entry]:
        path = self.folder / name
        if not path.is_file():
            return {}
        text = path.read_text(encoding="utf-8")
        source = Source(self._name(path), text.splitlines(), None, [], self.faults)
        return read_yaml(source, Written(text, 1), "")

    def _words(self) -> None:
        for name, entry in self._yaml("words.yaml").items():
            if name == "plurals" and isinstance(entry.value, Mapping):
                self.plurals = {one: _text(more) for one, more in entry.value.items()}
                continue
            rows = word_rows(entry, name, {})
            if rows is None:
                self.faults.append(
                    Fault(
                        "words",
                        f"{self.folder.name}/words.yaml",
                        entry.line,
                        f"The list {name} can't be read.",
                        "Words with commas between, or rows with the same names in each.",
                    )
                )
            else:
                self.lists[name] = rows

    def _lesson(self, path: Path, n: int, unit: int) -> Lesson:
        return read_lesson(self._source(path), LessonId(path.stem), n, unit, self.lists)

    def _warm_up(self, path: Path) -> tuple[Lesson, tuple[Strategy, ...]]:
        return read_warm_up(self._source(path), LessonId(path.stem), self.lists)

    def _glossary(self, unit_of: Mapping[LessonId, int]) -> tuple[GlossaryWord, ...]:
        words: list[GlossaryWord] = []
        for path in sorted(self.folder.glob("glossary/*.yaml")):
            text = path.read_text(encoding="utf-8")
            source = Source(self._name(path), text.splitlines(), None, [], self.faults)
            words += read_words(source, read_yaml(source, Written(text, 1), ""))
        order = {lesson: n for n, lesson in enumerate(unit_of)}
        for word in words:
            if word.lesson not in order:
                what = f"No unit holds a lesson called '{word.lesson}'."
                fix = nearest(word.lesson, order)
                self.faults.append(Fault("glossary", word.file, word.line, what, fix, f"word {word.term}"))
        return tuple(sorted(words, key=lambda word: order.get(word.lesson, len(order))))

    def _formulas(self, unit_of: Mapping[LessonId, int]) -> tuple[FormulaPart, ...]:
        path = self.folder / "formulas.yaml"
        if not path.is_file():
            return ()
        text = path.read_text(encoding="utf-8")
        source = Source(self._name(path), text.splitlines(), None, [], self.faults)
        parts = tuple(read_formulas(source, read_yaml(source, Written(text, 1), "")))
        for row in (row for part in parts for row in part.rows):
            if row.lesson not in unit_of:
                what = f"No unit holds a lesson called '{row.lesson}'."
                self.faults.append(Fault("formulas", row.file, row.line, what, nearest(row.lesson, unit_of)))
        return parts

    def _listed(self, name: str) -> frozenset[str]:
        """The lines of a plain list; a line that begins with # is a note."""
        path = self.folder / name
        lines = path.read_text(encoding="utf-8").splitlines() if path.is_file() else []
        return frozenset(line.strip().casefold() for line in lines if line.strip() and line[0] != "#")

    # course.yaml ---------------------------------------------------------------------------------------

    def _units(self, plan: Mapping[str, Entry]) -> Iterator[Unit]:
        for n, row in enumerate(_rows(plan.get("units")), 1):
            lessons = row.get("lessons")
            names = [] if lessons is None or isinstance(lessons.value, (str, Mapping)) else lessons.value
            yield Unit(n, _text(row.get("title")), tuple(LessonId(one.text or "") for one in names))

    def _known(self, name: str, unit_of: Mapping[LessonId, int], line: int) -> LessonId:
        if name not in unit_of:
            self.faults.append(
                Fault(
                    "unknown-lesson",
                    f"{self.folder.name}/course.yaml",
                    line,
                    f"No unit holds a lesson called '{name}'.",
                    nearest(name, unit_of),
                )
            )
        return LessonId(name)

    def _tests(self, plan: Mapping[str, Entry], unit_of: Mapping[LessonId, int]) -> Iterator[TestBlueprint]:
        for n, row in enumerate(_rows(plan.get("tests")), 1):
            line = next(iter(row.values())).line
            after = self._known(_text(row.get("after")), unit_of, line)
            spans = []
            for key in ("new", "cumulative"):
                first, _, last = _text(row.get(key)).partition(" .. ")
                spans.append(
                    (self._known(first.strip(), unit_of, line), self._known(last.strip(), unit_of, line))
                )
            yield TestBlueprint(
                n=n,
                id=f"test-{n}",
                title=_text(row.get("title")),
                unit=unit_of.get(after, 0),
                after=after,
                new=spans[0],
                cumulative=spans[1],
                items=int(_text(row.get("items")) or 20),
                new_share=Fraction(_text(row.get("new-share")) or "2/5"),
                calculator=_text(row.get("calculator")) == "yes",
                final=_text(row.get("final")) == "yes",
                also=tuple(self._known(one, unit_of, line) for one in _names(row.get("also"))),
            )

    def _hands_on(
        self, row: Mapping[str, Entry], found: Mapping[str, Path], unit_of: Mapping[LessonId, int]
    ) -> HandsOn | None:
        entry = row.get("lesson")
        name = _text(entry)
        line = entry.line if entry else 1
        after = self._known(_text(row.get("after")), unit_of, line)
        if name not in found:
            return None
        source = self._source(found[name])
        # Until the lesson it belongs to is written, it is offered after the last one before that.
        written = (
            [one for one in list(unit_of)[: list(unit_of).index(after) + 1] if one in found]
            if after in unit_of
            else []
        )
        return read_hands_on(
            source, LessonId(name), written[-1] if written else after, unit_of.get(after, 0), self.lists
        )

    def _planned(self, written: set[LessonId]) -> dict[SkillId, LessonId]:
        """Skills of lessons that have their place but aren't written: planned.yaml, one line a lesson."""
        found: dict[SkillId, LessonId] = {}
        for name, entry in self._yaml("planned.yaml").items():
            if name not in written:
                for skill in _text(entry).split(","):
                    found[SkillId(skill.strip())] = LessonId(name)
        return found

    def _former_names(self, plan: Mapping[str, Entry]) -> dict[str, str]:
        entry = plan.get("formerly")
        value = entry.value if entry else {}
        return {old: _text(new) for old, new in value.items()} if isinstance(value, Mapping) else {}

    # Across files --------------------------------------------------------------------------------------

    def _missteps(self, lessons: tuple[Lesson, ...]) -> dict[str, MisstepNote]:
        found: dict[str, MisstepNote] = {}
        for lesson in lessons:
            for note in lesson.missteps:
                if note.name in found:
                    first = found[note.name].lesson
                    self.faults.append(
                        Fault(
                            "misstep-twice",
                            lesson.file,
                            note.line,
                            f"The misstep {note.name} has its sentence in {first} already.",
                            "Use it here without a sentence, or give this one another name.",
                            shown=note.name,
                        )
                    )
                else:
                    found[note.name] = note
        return found

    def _names_unique(self, course: Course) -> None:
        taught: dict[SkillId, Lesson] = {}
        for lesson in (*course.before, *course.lessons):
            for skill in lesson.skills:
                if skill in taught:
                    self.faults.append(
                        Fault(
                            "skill-twice",
                            lesson.file,
                            2,
                            f"The skill {skill} is taught in {taught[skill].title} already.",
                            "Each skill is taught once; name it under needs here.",
                        )
                    )
                taught[skill] = lesson
        for holder in course.holders:
            names: dict[str, int] = {}
            for template in holder.templates:
                if template.id in names:
                    self.faults.append(
                        Fault(
                            "template-twice",
                            holder.file,
                            template.line,
                            f"Two templates are called {template.name}, in lines {names[template.id]} "
                            f"and {template.line}.",
                            "Names of templates differ within a lesson.",
                        )
                    )
                names[template.id] = template.line


def _rows(entry: Entry | None) -> list[Mapping[str, Entry]]:
    if entry is None or isinstance(entry.value, (str, Mapping)):
        return []
    return [row.value for row in entry.value if isinstance(row.value, Mapping)]


def _names(entry: Entry | None) -> list[str]:
    listed = [] if entry is None or isinstance(entry.value, (str, Mapping)) else entry.value
    return [one.text or "" for one in listed]


def _text(entry: Entry | None) -> str:
    return "" if entry is None else entry.text or ""
