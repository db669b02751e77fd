"""Numbers put into everything an author may write: words of rows, labels, thousands set apart, buttons with units."""

from __future__ import annotations

from pathlib import Path

import pytest

from bot.course.draw import draw
from bot.course.item import plain_text
from bot.course.load import load_with_faults
from bot.course.showing import item_as_text
from bot.course.year import Course
from bot.vocabulary import TemplateId

LESSON = Path("unit-01/two-step-equations.md")


def changed(small: Path, *changes: tuple[str, str]) -> Course:
    text = (small / LESSON).read_text(encoding="utf-8")
    for before, after in changes:
        assert text.count(before) == 1
        text = text.replace(before, after)
    (small / LESSON).write_text(text, encoding="utf-8")
    course, faults = load_with_faults(small)
    assert [str(fault) for fault in faults] == []
    return course


def test_maths_in_the_words_of_a_row_gets_its_numbers(small: Path) -> None:
    course = changed(
        small,
        ("words:\n  who: people\n", "words:\n  who: ['Wren with `p` coins', 'Sol with `p` coins']\n"),
    )
    item = draw(course, TemplateId("two-step-equations/tram-pass"), 1)
    price = plain_text(item.ask).split("costs ")[1].split()[0]
    assert f"with {price} coins has spent" in plain_text(item.ask)


def test_maths_in_a_word_stands_without_backticks_on_a_button(small: Path) -> None:
    course = changed(
        small,
        (
            '  c: 21..80\nanswer: "take away `b`"',
            "  c: 21..80\nwords:\n  first: ['take away `b`', 'first take away `b`']\nanswer: \"{first}\"",
        ),
        ('  - "take away `b`"\n', '  - "{first}"\n'),
    )
    item = draw(course, TemplateId("two-step-equations/which-move"), 1)
    assert item.key.answer in item.choices
    assert item.key.answer.rpartition(" ")[2].isdigit() and "`" not in item.key.answer


@pytest.mark.parametrize(
    ("typed", "shown"),
    [("`150,000,000`", "150,000,000"), ("`1,500`, `2`", "1,500, 2"), ("`4, 100`", "4, 100")],
)
def test_thousands_set_apart_are_one_number(small: Path, typed: str, shown: str) -> None:
    course = changed(
        small,
        ("Think of how the left side was built.", f"Think of {typed}."),
        ("{who} has spent", f"Of {typed}: {{who}} has spent"),
    )
    lesson = course.lesson("two-step-equations")
    assert plain_text(lesson.cards[0].text).startswith(f"Think of {shown}.")
    assert f"Of {shown}: " in plain_text(draw(course, lesson.templates[3].id, 1).ask)


@pytest.mark.parametrize(
    ("label", "shown"),
    [
        ("x + p", "x + {p}"),
        ("p x + f", "{p}x + {f}"),
        ("p - x", "{p} − x"),
        ("p m", "{p} m"),
        ("p x", "{p}x"),
        ("x", "x"),
    ],
)
def test_a_label_with_a_sum_gets_its_numbers(small: Path, label: str, shown: str) -> None:
    course = changed(
        small,
        (
            "  stops-early: t - p\n```",
            f'  stops-early: t - p\nfigure: area-model\nacross: ["{label}", f]\ndown: [t]\n```',
        ),
    )
    item = draw(course, TemplateId("two-step-equations/tram-pass"), 1)
    words = plain_text(item.ask).split()
    p, f = (words[n + 1] for n, word in enumerate(words) if word in ("costs",))
    assert item.figure is not None
    assert item.figure["across"] == f"{shown.format(p=p, f=f)}, {f}"


def test_preview_says_the_unit_of_a_button_once(small: Path) -> None:
    course = changed(
        small,
        ("answer: (t - p)/f\nform: whole\nunit: rides", "answer: (t - p)/f\nform: choice\nunit: rides"),
    )
    item = draw(course, TemplateId("two-step-equations/tram-pass"), 1)
    shown = item_as_text(item)
    assert f"  answer    {item.key.answer}   (choice)" in shown
    assert item.key.answer.endswith(" rides")
