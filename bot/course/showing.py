"""A lesson and its items as plain text and as data, for a writer who wants to see what a student will see."""

from __future__ import annotations

from textwrap import fill, indent
from typing import Any

from bot.course import figures
from bot.course.item import Item, plain_text
from bot.course.lesson import HandsOn, Lesson

WIDTH = 60
"""About what a phone shows in one line, doubled for a terminal."""


def lesson_as_text(lesson: Lesson | HandsOn) -> str:
    """Cards and worked examples, or the task of a hands-on lesson."""
    parts = [f"{lesson.title}\n{lesson.objective}"]
    if isinstance(lesson, HandsOn):
        parts += [plain_text(lesson.idea), "You need: " + ", ".join(lesson.materials)]
        parts += [f"Safety: {lesson.safety}"] if lesson.safety else []
        parts += ["\n".join(f"[ ] {plain_text(line)}" for line in lesson.checklist)]
    else:
        for card, example in zip(lesson.cards, lesson.examples, strict=False):
            parts.append(wrapped(plain_text(card.text)))
            if card.figure:
                parts.append(wrapped(f"[picture: {figures.alt(card.figure)}]"))
            lines = [f"{n}. {_line(step.write, step.because)}" for n, step in enumerate(example.steps, 1)]
            parts.append(wrapped(plain_text(example.ask)) + "\n" + "\n".join(lines))
    return "\n\n".join(parts) + "\n"


def item_as_text(item: Item) -> str:
    """One item with all that belongs to it."""
    key = item.key
    lines = [
        f"── {item.template}  seed {item.seed}  {item.level.name.lower()}",
        wrapped(plain_text(item.ask)),
    ]
    if item.figure:
        lines.append(wrapped(f"[picture: {figures.alt(item.figure)}]"))
    if item.choices:
        lines.append("   ".join(f"[{choice}]" for choice in item.choices))
    unit = f" {item.unit_shown}" if item.unit_shown else ""
    lines.append(
        f"  answer    {key.answer}{unit}   ({key.form}{', the form is the skill' if key.form_is_the_skill else ''})"
    )
    lines += [f"  misstep   {one.answer:12} {one.name}: {one.say}" for one in key.missteps]
    lines += [f"  hint {n}    {plain_text(hint)}" for n, hint in enumerate(item.hints, 1)]
    lines += [f"  step {n}    {_line(step.write, step.because)}" for n, step in enumerate(item.steps, 1)]
    return "\n".join(lines) + "\n"


def item_as_data(item: Item) -> dict[str, Any]:
    """One item for programs, fields named as in the handbook."""
    return {
        "lesson": item.lesson,
        "template": item.template,
        "seed": item.seed,
        "version": item.version,
        "level": item.level.name.lower(),
        "skills": list(item.skills),
        "question": plain_text(item.ask),
        "answer": item.key.answer,
        "form": item.key.form,
        "unit": item.key.unit,
        "accept": item.key.accept,
        "given": item.key.given,
        "choices": list(item.choices),
        "calculator": item.calculator,
        "missteps": [{"name": m.name, "answer": m.answer, "say": m.say} for m in item.key.missteps],
        "hints": [plain_text(hint) for hint in item.hints],
        "steps": [{"write": step.write, "because": plain_text(step.because)} for step in item.steps],
        "figure": item.figure,
        "picture": figures.alt(item.figure) if item.figure else None,
    }


def wrapped(text: str) -> str:
    """The text in lines of about a phone's width, paragraphs kept."""
    return "\n".join(indent(fill(line, WIDTH), "  ") if line else "" for line in text.split("\n"))


def _line(write: str, because: str) -> str:
    return "   ".join(part for part in (write, plain_text(because)) if part)
