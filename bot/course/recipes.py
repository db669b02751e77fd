"""One template as written: its YAML recipe, question, hints, numbered lines. Structure only; maths is read later."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Mapping, Sequence

from bot.course import figures
from bot.course.faults import nearest
from bot.course.item import Level
from bot.course.lesson import Recipe, Template, Written
from bot.course.source import Entry, Section, Source, read_yaml
from bot.vocabulary import LessonId, SkillId, TemplateId

FORMS = frozenset(
    [
        "number",
        "fraction-simplest",
        "mixed",
        "decimal",
        "decimal-rounded",
        "percent",
        "whole",
        "integer",
        "expression",
        "expression-any",
        "factored",
        "equation-solution",
        "solutions-set",
        "inequality",
        "ratio",
        "quantity",
        "quantity-exact-unit",
        "point",
        "list",
        "money",
        "time",
        "scientific",
        "remainder",
        "prime-factors",
        "choice",
        "yes-no",
        "words",
        "equation",
    ]
)
KEYS = (
    "level",
    "sitting",
    "opens-after",
    "skills",
    "draw",
    "where",
    "words",
    "answer",
    "accept",
    "example",
    "form",
    "unit",
    "given",
    "places",
    "graded",
    "missteps",
    "choices",
    "shuffle",
    "figure",
)
LEVELS = {"easy": Level.EASY, "middle": Level.MIDDLE, "hard": Level.HARD}
_NAME = re.compile(r"^[a-z0-9]+(-[a-z0-9]+)*$")

Rows = tuple[Mapping[str, str], ...]


def read_template(
    source: Source,
    part: Section,
    lesson: LessonId,
    own_skills: tuple[SkillId, ...],
    lists: Mapping[str, Rows],
) -> Template | None:
    """Read the template under one heading; None (and faults in `source`) where nothing can be drawn from it."""
    where = f"template {part.title}"
    if not _NAME.match(part.title):
        source.fault(
            "template-name",
            part.line,
            f"'{part.title}' can't name a template.",
            "Small letters and hyphens, like flour-sacks.",
            where,
            part.title,
        )
    if part.recipe is None:
        source.fault(
            "no-recipe",
            part.line,
            "This template has no recipe.",
            "After the heading comes a block of ```yaml with draw, answer and form.",
            where,
        )
        return None
    entries = read_yaml(source, part.recipe, where)
    if not entries:
        return None
    recipe = _Reader(source, where, entries, lists).recipe()
    if recipe is None:
        return None
    if not part.prose:
        source.fault(
            "no-question",
            part.line,
            "This template asks nothing.",
            "Write the question as a paragraph after the recipe.",
            where,
        )
        return None
    skills = tuple(SkillId(name) for name in _names(entries.get("skills"))) or own_skills
    return Template(
        id=TemplateId(f"{lesson}/{part.title}"),
        lesson=lesson,
        level=LEVELS.get(_text(entries.get("level")) or "middle", Level.MIDDLE),
        skills=skills,
        recipe=recipe,
        ask=Written(part.text(), part.prose[0].line),
        hints=tuple(part.hints),
        steps=tuple(split_step(step) for step in part.steps),
        checks=tuple(part.checks),
        version=_version(source, part),
        line=part.line,
        sitting=2 if _text(entries.get("sitting")) == "2" else 1,
        opens_after=LessonId(_text(entries.get("opens-after")) or "") or None,
    )


def split_step(step: Written) -> tuple[Written, Written]:
    """Part a numbered line into its maths (the backticks it begins with) and its reason."""
    found = re.match(r"^`([^`]*)`\s*(.*)$", step.text, re.DOTALL)
    if found is None:
        return Written("", step.line), step
    return Written(found[1], step.line), Written(found[2], step.line)


def read_figure(source: Source, entries: Mapping[str, Entry], where: str) -> figures.Figure | None:
    """Gather a figure: `figure` and all that follows it in the block. Faults are noted."""
    names = list(entries)
    if "figure" not in names:
        return None
    figure = {name: _raw(entries[name]) for name in names[names.index("figure") :]}
    faults = figures.check_recipe(figure)
    for fault in faults:
        source.fault("figure", entries["figure"].line, fault, "", where)
    return None if faults else figure


def _raw(entry: Entry) -> figures.Value:
    if isinstance(entry.value, str):
        return entry.value
    if isinstance(entry.value, Mapping):
        return [f"{name}: {_raw(one)}" for name, one in entry.value.items()]
    return [_raw(one) for one in entry.value]


def word_rows(entry: Entry, name: str, lists: Mapping[str, Rows]) -> Rows | None:
    """Read one entry of `words`: the name of a list, words with commas, or rows that belong together."""
    if isinstance(entry.value, str):
        if entry.value in lists:
            rows = lists[entry.value]
            single = next(iter(rows[0]))
            return tuple({name: row[single]} for row in rows) if len(rows[0]) == 1 else rows
        words = _names(entry)
        return tuple({name: word} for word in words) if len(words) > 1 else None
    if isinstance(entry.value, Mapping):
        return None
    if all(isinstance(one.value, str) for one in entry.value):
        return tuple({name: one.text or ""} for one in entry.value)
    rows = tuple(
        {key: value.text or "" for key, value in one.value.items()}
        for one in entry.value
        if isinstance(one.value, Mapping)
    )
    return (
        rows if len(rows) == len(entry.value) and all(row.keys() == rows[0].keys() for row in rows) else None
    )


class _Reader:
    """Reads the entries of one recipe, noting faults as it goes."""

    def __init__(
        self, source: Source, where: str, entries: Mapping[str, Entry], lists: Mapping[str, Rows]
    ) -> None:
        self.source, self.where, self.entries, self.lists = source, where, entries, lists
        names = list(entries)
        self.own = names[: names.index("figure")] if "figure" in names else names

    def fault(self, kind: str, key: str, what: str, fix: str = "", mark: str = "") -> None:
        self.source.fault(kind, self.entries[key].line, what, fix, self.where, mark)

    def recipe(self) -> Recipe | None:
        first = next(iter(self.entries.values())).line
        self._known_keys()
        answer, accept, example = (self._written(key) for key in ("answer", "accept", "example"))
        form = _text(self.entries.get("form"))
        if answer is None and (accept is None or example is None):
            self.source.fault(
                "no-answer",
                first,
                "This recipe has no answer.",
                "Write `answer:` and a formula, or `accept:` and `example:` where many are right.",
                self.where,
            )
            return None
        if form is None:
            self.source.fault(
                "no-form",
                first,
                "This recipe doesn't say how the answer has to look.",
                "Write `form: whole` or another form.",
                self.where,
            )
            return None
        if form not in FORMS:
            self.fault("unknown-form", "form", f"No form is called '{form}'.", nearest(form, FORMS), form)
            return None
        places = _text(self.entries.get("places"))
        if places is not None and not places.isdigit():
            self.fault("places", "places", "The places after the point are a whole number.", "", places)
            places = None
        if form == "decimal-rounded" and places is None:
            self.fault("places", "form", "A rounded answer needs its number of places.", "Write `places: 2`.")
            return None
        return Recipe(
            draw=self._written_map("draw"),
            answer=answer or example or Written("", first),
            form=form,
            where=self._written("where"),
            words=self._words(),
            accept=accept,
            example=example,
            given=self._written("given"),
            unit=self._written("unit"),
            places=int(places) if places else None,
            form_is_the_skill=_text(self.entries.get("graded")) == "form",
            missteps=self._written_map("missteps"),
            choices=self._choices(),
            shuffle=_text(self.entries.get("shuffle")) == "yes",
            figure=read_figure(self.source, self.entries, self.where),
            figure_line=self.entries["figure"].line if "figure" in self.entries else 0,
        )

    def _known_keys(self) -> None:
        for key in self.own:
            if key not in KEYS:
                self.fault(
                    "unknown-key",
                    key,
                    f"A recipe has no '{key}'.",
                    nearest(key, KEYS) or "What belongs to a figure stands after `figure:`.",
                    key,
                )
        for key, known in (
            ("level", tuple(LEVELS)),
            ("graded", ("form",)),
            ("shuffle", ("yes", "no")),
            ("sitting", ("1", "2")),
        ):
            if key in self.own and _text(self.entries[key]) not in known:
                self.fault("unknown-value", key, f"`{key}` is one of: {', '.join(known)}.", "")

    def _written(self, key: str) -> Written | None:
        entry = self.entries.get(key) if key in self.own else None
        if entry is None:
            return None
        if not isinstance(entry.value, str) or not entry.value:
            self.fault("empty", key, f"`{key}` needs a value on its own line.", "", key)
            return None
        return Written(entry.value, entry.line)

    def _written_map(self, key: str) -> dict[str, Written]:
        entry = self.entries.get(key) if key in self.own else None
        if entry is None:
            return {}
        if not isinstance(entry.value, Mapping):
            self.fault(
                "not-a-list-of-lines", key, f"Under `{key}` stand lines of `name: value`, two spaces in.", ""
            )
            return {}
        found: dict[str, Written] = {}
        for name, value in entry.value.items():
            if isinstance(value.value, str) and value.value:
                found[name] = Written(value.value, value.line)
            else:
                self.source.fault("empty", value.line, f"`{name}` has no value.", "", self.where, name)
        return found

    def _words(self) -> tuple[Rows, ...]:
        entry = self.entries.get("words") if "words" in self.own else None
        if entry is None:
            return ()
        named: Mapping[str, Entry] = entry.value if isinstance(entry.value, Mapping) else {"words": entry}
        result: list[Rows] = []
        for name, one in named.items():
            rows = word_rows(one, name, self.lists)
            if rows is None:
                wanted = one.text or ""
                self.source.fault(
                    "unknown-words",
                    one.line,
                    f"There is no list of words '{wanted}'.",
                    nearest(wanted, self.lists)
                    or "Lists stand in words.yaml; or write the words with "
                    "commas between them, or rows with the same names in each.",
                    self.where,
                    wanted,
                )
            else:
                result.append(rows)
        return tuple(result)

    def _choices(self) -> tuple[Written, ...]:
        entry = self.entries.get("choices") if "choices" in self.own else None
        if entry is None:
            return ()
        if isinstance(entry.value, str):
            return tuple(Written(one, entry.line) for one in split_commas(entry.value))
        if isinstance(entry.value, Mapping):
            self.fault("no-choices", "choices", "Choices are a line with commas or a list.", "")
            return ()
        return tuple(Written(one.text or "", one.line) for one in entry.value)


def split_commas(text: str) -> list[str]:
    """Part a text at its commas, but not inside brackets; the parts are trimmed."""
    parts, depth, start = [], 0, 0
    for at, sign in enumerate(text):
        depth += (sign in "([{") - (sign in ")]}")
        if sign == "," and depth == 0:
            parts.append(text[start:at])
            start = at + 1
    parts.append(text[start:])
    return [part.strip() for part in parts]


def _text(entry: Entry | None) -> str | None:
    return None if entry is None else entry.text


def _names(entry: Entry | None) -> list[str]:
    """The words of a list, written with commas or as a YAML list."""
    if entry is None:
        return []
    if isinstance(entry.value, str):
        return [word for word in split_commas(entry.value) if word]
    values: Sequence[Entry] = () if isinstance(entry.value, Mapping) else entry.value
    return [value.text or "" for value in values]


def _version(source: Source, part: Section) -> str:
    """A short name of the template's text, so that a stored item says which wording it was drawn from."""
    end = part.line
    while end < len(source.lines) and not re.match(r"^#{1,2} ", source.lines[end]):
        end += 1
    text = "\n".join(source.lines[part.line - 1 : end]).rstrip()
    return hashlib.sha256(text.encode()).hexdigest()[:10]
