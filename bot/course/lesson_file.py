"""One file of content read into a lesson, a hands-on lesson, or warm-ups: front matter, cards, missteps, items."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from bot.course import figures
from bot.course.explain import explain
from bot.course.faults import nearest
from bot.course.fill import Draw
from bot.course.fill_figure import fill_figure
from bot.course.item import Figure, Step, grouped
from bot.course.lesson import (
    Card,
    HandsOn,
    Lesson,
    MisstepNote,
    Strategy,
    Template,
    WorkedExample,
    Written,
)
from bot.course.prepare import AS_IT_STANDS, read_once
from bot.course.recipes import Rows, read_figure, read_template, split_commas, split_step
from bot.course.source import Entry, Section, Source, read_yaml
from bot.maths.read import Unreadable
from bot.maths.show import plain
from bot.maths.value import Undefined
from bot.vocabulary import LessonId, SkillId

LESSON_KEYS = (
    "title",
    "objective",
    "skills",
    "standards",
    "needs",
    "minutes",
    "core",
    "sittings",
    "calculator",
    "video",
)
HANDS_ON_KEYS = (
    "title",
    "objective",
    "skills",
    "materials",
    "minutes",
    "safety",
)
PARTS = ("Card", "Worked example", "Second card", "Second worked example", "Missteps", "Items")


def read_lesson(source: Source, lesson: LessonId, n: int, unit: int, lists: Mapping[str, Rows]) -> Lesson:
    """Read a lesson; what is wrong with it is noted in `source`."""
    front = _front(source, LESSON_KEYS, ("title", "objective", "skills"))
    before = unit == 0
    found = {section.title: section for section in source.sections}
    for section in source.sections:
        if section.title not in PARTS:
            source.fault(
                "unknown-part",
                section.line,
                f"A lesson has no part '{section.title}'.",
                nearest(section.title, PARTS) or f"The parts are: {', '.join(PARTS)}.",
                mark=section.title,
            )
    needed = ("Items",) if before else ("Card", "Worked example", "Items")
    for part in needed:
        if part not in found:
            source.fault(
                "missing-part",
                len(source.lines),
                f"The part # {part} is missing.",
                f"The parts of a lesson are: {', '.join(PARTS)}.",
            )
    skills = tuple(SkillId(name) for name in _list(front, "skills"))
    items = found.get("Items")
    return Lesson(
        id=lesson,
        n=n,
        title=_one(front, "title"),
        unit=unit,
        objective=_one(front, "objective"),
        skills=skills,
        needs=tuple(SkillId(name) for name in _list(front, "needs")),
        standards=tuple(_list(front, "standards")),
        cards=tuple(_card(source, found[part]) for part in ("Card", "Second card") if part in found),
        examples=tuple(
            _example(source, found[part])
            for part in ("Worked example", "Second worked example")
            if part in found
        ),
        missteps=tuple(_missteps(source, found.get("Missteps"), lesson)),
        templates=_templates(source, items.parts if items else [], lesson, skills, lists),
        core=_one(front, "core") != "no",
        sittings=2 if _one(front, "sittings") == "2" else 1,
        calculator=_one(front, "calculator") == "yes",
        minutes=_whole(source, front, "minutes", 10),
        video=_one(front, "video") or None,
        file=source.file,
    )


def read_hands_on(
    source: Source, task: LessonId, after: LessonId, unit: int, lists: Mapping[str, Rows]
) -> HandsOn:
    """Read a hands-on lesson: # Task, # Checklist, # Answers to send."""
    front = _front(source, HANDS_ON_KEYS, ("title", "objective", "materials"))
    found = {section.title: section for section in source.sections}
    for part in ("Task", "Checklist", "Answers to send"):
        if part not in found:
            source.fault(
                "missing-part",
                len(source.lines),
                f"The part # {part} is missing.",
                "A hands-on lesson has # Task, # Checklist and # Answers to send.",
            )
    skills = tuple(SkillId(name) for name in _list(front, "skills"))
    answers, checklist = found.get("Answers to send"), found.get("Checklist")
    return HandsOn(
        id=task,
        title=_one(front, "title"),
        unit=unit,
        after=after,
        objective=_one(front, "objective"),
        idea=shown_text(source, found["Task"].text(), found["Task"].line) if "Task" in found else "",
        materials=tuple(_list(front, "materials")),
        checklist=tuple(
            shown_text(source, each.text, each.line) for each in (checklist.bullets if checklist else ())
        ),
        safety=_one(front, "safety"),
        minutes=_whole(source, front, "minutes", 40),
        skills=skills,
        templates=_templates(source, answers.parts if answers else [], task, skills, lists),
        file=source.file,
    )


def read_warm_up(
    source: Source, lesson: LessonId, lists: Mapping[str, Rows]
) -> tuple[Lesson, tuple[Strategy, ...]]:
    """Read mental-math strings or puzzles: a strategy a heading, its templates below it."""
    front = _front(source, ("title",), ("title",))
    strategies: list[Strategy] = []
    templates: list[Template] = []
    for section in source.sections:
        if section.title == "Missteps":
            continue
        say = section.prose[0] if section.prose else None
        made = tuple(
            # The strategy is the hint of a string, which has none of its own.
            replace(each, hints=(Written(section.text(), say.line),)) if say and not each.hints else each
            for each in _templates(source, section.parts, lesson, (), lists)
        )
        entries = read_yaml(source, section.recipe, section.title) if section.recipe else {}
        opens = entries.get("opens-after")
        strategies.append(
            Strategy(
                id=re.sub(r"[^a-z0-9]+", "-", section.title.lower()).strip("-"),
                title=section.title,
                say=shown_text(source, section.text(), section.line),
                opens_after=LessonId(opens.text) if opens and opens.text else None,
                templates=tuple(template.id for template in made),
            )
        )
        templates += made
    notes = next((section for section in source.sections if section.title == "Missteps"), None)
    holder = Lesson(
        id=lesson,
        n=0,
        title=_one(front, "title"),
        unit=0,
        objective="",
        skills=(),
        needs=(),
        standards=(),
        cards=(),
        examples=(),
        missteps=tuple(_missteps(source, notes, lesson)),
        templates=tuple(templates),
        file=source.file,
    )
    return holder, tuple(strategies)


def shown_text(source: Source, text: str, line: int) -> str:
    """A text with fixed numbers as it is shown: the maths in it spelled as people read it."""
    if text.count("`") % 2:
        source.fault(
            "backtick-missing",
            line,
            "A backtick is missing: they come in pairs.",
            "Put one before and one after the maths.",
            mark="`",
        )
        return text

    def show(found: re.Match[str]) -> str:
        if AS_IT_STANDS.fullmatch(found[1]):
            return found[0]
        try:
            return f"`{grouped(plain(read_once(found[1])))}`"
        except Unreadable as trouble:
            told = explain(found[1], "formula", trouble)
            source.fault(told.kind, line, told.what, told.fix, mark=told.mark)
            return found[0]

    return re.sub(r"`([^`]*)`", show, text)


def _front(source: Source, known: list[str] | tuple[str, ...], needed: tuple[str, ...]) -> dict[str, Entry]:
    front = read_yaml(source, source.front, "front matter") if source.front else {}
    for key, entry in front.items():
        if key not in known:
            source.fault(
                "unknown-key",
                entry.line,
                f"The front matter has no '{key}'.",
                nearest(key, known) or f"Its keys are: {', '.join(known)}.",
                mark=key,
            )
    for key in needed:
        if source.front and not _one(front, key):
            source.fault(
                "missing-key", 1, f"The front matter doesn't say its {key}.", f"Add a line `{key}: …`."
            )
    return front


def _templates(
    source: Source,
    parts: list[Section],
    lesson: LessonId,
    skills: tuple[SkillId, ...],
    lists: Mapping[str, Rows],
) -> tuple[Template, ...]:
    made = (read_template(source, part, lesson, skills, lists) for part in parts)
    return tuple(template for template in made if template is not None)


def _card(source: Source, section: Section) -> Card:
    return Card(
        shown_text(source, _with_bullets(section), section.line), _figure(source, section), section.line
    )


def _with_bullets(section: Section) -> str:
    """Prose and bullets in the order in which they were written."""
    pieces = [*section.prose, *(Written(f"• {bullet.text}", bullet.line) for bullet in section.bullets)]
    text = ""
    for piece in sorted(pieces, key=lambda one: one.line):
        text += ("\n" if piece.text.startswith("•") and text else "\n\n" if text else "") + piece.text
    return text


def _example(source: Source, section: Section) -> WorkedExample:
    steps = [split_step(step) for step in section.steps]
    return WorkedExample(
        ask=shown_text(source, section.text(), section.line),
        steps=tuple(
            Step(
                shown_text(source, f"`{write.text}`", write.line).strip("`") if write.text else "",
                shown_text(source, because.text, because.line),
            )
            for write, because in steps
        ),
        figure=_figure(source, section),
        checks=tuple(check.text for check in section.checks),
        line=section.line,
    )


def _figure(source: Source, section: Section) -> Figure | None:
    if section.recipe is None:
        return None
    recipe = read_figure(source, read_yaml(source, section.recipe, section.title), section.title)
    return fixed_figure(source, recipe, section.recipe.line)


def fixed_figure(source: Source, recipe: figures.Figure | None, line: int) -> Figure | None:
    """A figure in which no number is drawn. One that can't be made into a picture is a fault, and so is a value
    that is no exact number."""
    try:
        figure = fill_figure(recipe, Draw({}, {}, frozenset(), {}))
    except Undefined:
        source.fault(
            "figure-number",
            line,
            "A value of this figure is no exact number.",
            "Write it as a decimal or a fraction, rounded where it must be.",
        )
        return None
    for what in figures.check(figure) if figure is not None else ():
        source.fault("figure", line, what, "")
    return figure


def _missteps(source: Source, section: Section | None, lesson: LessonId) -> list[MisstepNote]:
    found = []
    for bullet in section.bullets if section else []:
        name, colon, say = bullet.text.partition(":")
        if not colon or not re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", name):
            source.fault(
                "misstep-line",
                bullet.line,
                "A misstep is written `- its-name: one sentence to the student`.",
                "Names have small letters and hyphens.",
            )
            continue
        found.append(MisstepNote(name, say.strip(), lesson, bullet.line))
    return found


def _one(front: Mapping[str, Entry], key: str) -> str:
    entry = front.get(key)
    return "" if entry is None else entry.text or ""


def _list(front: Mapping[str, Entry], key: str) -> list[str]:
    return [one for one in split_commas(_one(front, key)) if one]


def _whole(source: Source, front: Mapping[str, Entry], key: str, otherwise: int) -> int:
    text = _one(front, key)
    if text and not text.isdigit():
        source.fault("not-a-number", front[key].line, f"`{key}` is a whole number.", "", mark=text)
        return otherwise
    return int(text or otherwise)
