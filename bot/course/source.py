"""A lesson's Markdown taken apart: front matter, headings, blocks of YAML, hints, numbered lines. No meaning yet."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

import yaml

from bot.course.faults import Fault
from bot.course.lesson import Written

# The fast reader of libyaml where there is one; both leave every value a string (12:30 stays 12:30).
_Loader: type = getattr(yaml, "CBaseLoader", yaml.BaseLoader)

_HEADING = re.compile(r"^(#{1,3}) +(.+?) *$")
_STEP = re.compile(r"^(\d+)\. +(.*)$")
_HINT = re.compile(r"^\*\*Hint(?: (\d))?\.\*\* *(.*)$")
_CHECK = re.compile(r"^- Check: *(.*)$")
_BULLET = re.compile(r"^- (.*)$")


@dataclass
class Section:
    """What stands under one heading: prose, YAML block, hints, steps, checks, bullets, and smaller headings."""

    title: str
    line: int
    prose: list[Written] = field(default_factory=list)
    recipe: Written | None = None
    hints: list[Written] = field(default_factory=list)
    steps: list[Written] = field(default_factory=list)
    checks: list[Written] = field(default_factory=list)
    bullets: list[Written] = field(default_factory=list)
    parts: list[Section] = field(default_factory=list)

    def text(self) -> str:
        """The prose, paragraphs separated by an empty line."""
        return "\n\n".join(paragraph.text for paragraph in self.prose)


@dataclass
class Source:
    """One file of content, taken apart."""

    file: str
    lines: Sequence[str]
    front: Written | None
    sections: list[Section]
    faults: list[Fault]

    def shown(self, line: int) -> str:
        """The line as written, for a fault."""
        return self.lines[line - 1].strip() if 0 < line <= len(self.lines) else ""

    def fault(self, kind: str, line: int, what: str, fix: str = "", where: str = "", mark: str = "") -> None:
        """Note a fault of this file."""
        self.faults.append(Fault(kind, self.file, line, what, fix, where, self.shown(line), mark))


def take_apart(file: str, text: str) -> Source:
    """Take a file apart. Faults of layout are noted in the result, nothing is raised."""
    lines = text.splitlines()
    source = Source(file, lines, None, [], [])
    at = _front_matter(source)
    section: Section | None = None
    last: list[Written] | None = None  # where a line that goes on belongs
    while at < len(lines):
        line, number = lines[at], at + 1
        at += 1
        if line.startswith("```"):
            at = _block(source, section, at)
            last = None
            continue
        if not line.strip():
            last = None
            continue
        heading = _HEADING.match(line)
        if heading:
            section = _open(source, heading, number)
            last = None
            continue
        if section is None:
            source.fault(
                "text-before-heading",
                number,
                "This text stands before the first heading.",
                "A lesson begins with its front matter between two lines of ---, then # Card.",
            )
            continue
        last = _line(section, line, number, last)
    return source


def _front_matter(source: Source) -> int:
    lines = source.lines
    if not lines or lines[0].strip() != "---":
        source.fault(
            "no-front-matter",
            1,
            "The file doesn't begin with its front matter.",
            "Begin with a line of ---, then title, objective, skills and so on, then --- again.",
        )
        return 0
    for end in range(1, len(lines)):
        if lines[end].strip() == "---":
            source.front = Written("\n".join(lines[1:end]), 2)
            return end + 1
    source.fault(
        "no-front-matter", 1, "The front matter is never closed.", "Put a line of --- after its last key."
    )
    return len(lines)


def _block(source: Source, section: Section | None, at: int) -> int:
    """Take in a fenced block whose first line is `at` (from 0); return the index after it."""
    opened = at
    while at < len(source.lines) and not source.lines[at].startswith("```"):
        at += 1
    if at == len(source.lines) or source.lines[at].strip() != "```":
        source.fault("block-not-closed", opened, "This block is never closed.", "Put a line of ``` after it.")
        return at  # where the next block begins, if there is one
    if section is None:
        source.fault("text-before-heading", opened, "This block stands before the first heading.")
    else:
        if section.recipe is not None:
            source.fault(
                "two-blocks",
                opened,
                "A second block of YAML stands under one heading.",
                "Put everything into one block.",
            )
        section.recipe = Written("\n".join(source.lines[opened:at]), opened + 1)
    return at + 1


def _open(source: Source, heading: re.Match[str], number: int) -> Section:
    section = Section(heading[2], number)
    if len(heading[1]) == 1 or not source.sections:
        source.sections.append(section)
    else:
        source.sections[-1].parts.append(section)
    return section


def _line(section: Section, line: str, number: int, last: list[Written] | None) -> list[Written]:
    """Put one line of text where it belongs and say where a next line would go on."""
    for pattern, group, target in (
        (_HINT, 2, section.hints),
        (_STEP, 2, section.steps),
        (_CHECK, 1, section.checks),
        (_BULLET, 1, section.bullets),
    ):
        found = pattern.match(line)
        if found:
            target.append(Written(found[group].strip(), number))
            return target
    if last:
        before = last.pop()
        last.append(Written(f"{before.text} {line.strip()}", before.line))
        return last
    section.prose.append(Written(line.strip(), number))
    return section.prose


# YAML read as text --------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Entry:
    """A value of a YAML block with its line: text, a list of entries, or a mapping to entries."""

    value: str | Sequence[Entry] | Mapping[str, Entry]
    line: int

    @property
    def text(self) -> str | None:
        """The value if it is plain text."""
        return self.value if isinstance(self.value, str) else None


def read_yaml(source: Source, block: Written, where: str) -> dict[str, Entry]:
    """Read a block in which every value stays text. Faults are noted; what could be read is returned."""
    if _layout_faults(source, block, where):
        return {}
    try:
        node = yaml.compose(block.text, Loader=_Loader)
    except yaml.YAMLError as error:
        mark = getattr(error, "problem_mark", None)
        line = block.line + (mark.line if mark else 0)
        source.fault(
            "yaml",
            line,
            "This line can't be read as `name: value`.",
            "Look for a colon inside the value, a bracket that isn't closed, or a line that stands too far "
            "in. A value with `: ` in it goes between quotation marks.",
            where,
        )
        return {}
    if node is None:
        return {}
    if not isinstance(node, yaml.MappingNode):
        source.fault("yaml", block.line, "A block holds lines of `name: value`.", "", where)
        return {}
    return dict(_mapping(source, node, block.line, where))


def _layout_faults(source: Source, block: Written, where: str) -> bool:
    """Note what YAML would swallow or misread in silence."""
    before = len(source.faults)
    for offset, line in enumerate(block.text.split("\n")):
        number = block.line + offset
        if line.lstrip().startswith("#"):
            continue
        if "\t" in line:
            source.fault("tab", number, "There is a tab in this line.", "Use spaces.", where)
        if re.search(r"\s#", line):
            source.fault(
                "hash",
                number,
                "Everything after # would be lost.",
                "Put the value between quotation marks.",
                where,
                "#",
            )
        value = re.match(r"^\s*(?:- +)?[^:\[{'\"]*: +([|>%@*!?&`])", line)
        if value:
            kind = "backtick" if value[1] == "`" else "yaml-sign"
            fix = (
                "In a recipe everything is maths already: leave the backticks out."
                if value[1] == "`"
                else "Write abs(a - b) for |a - b|; put other text between quotation marks."
            )
            source.fault(kind, number, f"A value can't begin with {value[1]}", fix, where, value[1])
    return len(source.faults) > before


def _mapping(source: Source, node: yaml.MappingNode, first: int, where: str) -> Iterator[tuple[str, Entry]]:
    seen: dict[str, int] = {}
    for key, value in node.value:
        name, line = str(key.value), first + key.start_mark.line
        if name in seen:
            if len(name) == 1:
                what = f"{name} is drawn twice, in lines {seen[name]} and {line}."
            else:
                what = f"`{name}` stands twice, in lines {seen[name]} and {line}."
            source.fault("twice", line, what, "Keep one of the two.", where, name)
            continue
        seen[name] = line
        yield name, _entry(source, value, first, where)


def _entry(source: Source, node: yaml.Node, first: int, where: str) -> Entry:
    line = first + node.start_mark.line
    if isinstance(node, yaml.MappingNode):
        return Entry(dict(_mapping(source, node, first, where)), line)
    if isinstance(node, yaml.SequenceNode):
        return Entry([_entry(source, one, first, where) for one in node.value], line)
    return Entry(str(node.value), line)
