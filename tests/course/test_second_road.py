"""Each answer is found a second time, by plain Python that knows the numbers but not the template's formula.

`roads/<lesson>.py` holds a function for each template, named as the template. It asks for what it needs by the names
of its arguments: a drawn letter (`a`), `ask` (the question as read aloud), `maths` (the pieces of maths in it, as
Python can evaluate them), `words` (the drawn words), `choices`. It gives back the answer as a number, text, True or
False, a tuple for a list, a function of the unknown for an expression, or a list of all solutions, of which there must
be exactly one: that is how puzzles are proved unique.
"""

from __future__ import annotations

import inspect
import re
import runpy
from collections.abc import Callable
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import sympy
from support.courses import whole_course

from bot.course.draw import draw_whole
from bot.course.item import RunKind, plain_text, runs
from bot.course.lesson import HandsOn, Lesson, Template
from bot.course.make_item import Drawn
from bot.course.year import Course

HERE = Path(__file__).parent
DRAWS = 25
WITHOUT = dict(
    line.split("\t")
    for line in (HERE / "roads" / "none.tsv").read_text(encoding="utf-8").splitlines()
    if line
)
# A lesson with a fault takes nothing away from the others; `evensum check-content` names its fault.
HOLDERS = whole_course().holders


@cache
def roads_of(lesson: str) -> dict[str, Any]:
    """The functions for a lesson; read when it is their turn, so that a broken file stops no other."""
    path = HERE / "roads" / f"{lesson}.py"
    return runpy.run_path(str(path)) if path.is_file() else {}


def road_for(template: Template) -> Callable[..., Any] | None:
    """The function that works this template out in another way."""
    return roads_of(template.lesson).get(template.name.replace("-", "_"))


def pythonic(shown: str) -> str:
    """Maths as printed, as Python can evaluate it: every whole number a Fraction."""
    text = re.sub(r"(?<=\d),(?=\d{3})", "", shown)
    text = text.replace("−", "-").replace("×", "*").replace("÷", "/")
    return re.sub(r"\d+(\.\d+)?", lambda found: f"F('{found[0]}')", text)


def number(text: str) -> Fraction:
    """A typed number, by rules of its own: 3/4, -2.5, 2 1/2, 45%."""
    text = text.replace("−", "-").replace(",", "").strip()
    percent = text.endswith("%")
    text = text.removesuffix("%").removeprefix("$")
    sign = -1 if text.startswith("-") else 1
    value = sign * sum((Fraction(part) for part in text.removeprefix("-").split()), Fraction(0))
    return value / 100 if percent else value


def agrees(found: Any, answer: str) -> bool:
    """Whether what the second road found is the stored answer."""
    if isinstance(found, list):
        return len(found) == 1 and agrees(found[0], answer)
    if isinstance(found, bool):
        return answer == ("yes" if found else "no")
    if isinstance(found, str):
        return plain_text(found) == answer
    if isinstance(found, tuple):
        return tuple(number(part) for part in answer.split(", ")) == tuple(Fraction(one) for one in found)
    if callable(found):
        (name,) = inspect.signature(found).parameters
        written = re.sub(r"(?<=[\d)a-z])\s*(?=[a-z(])", "*", answer.replace("−", "-").replace("×", "*"))
        expression = sympy.sympify(written)
        return all(expression.subs(name, trial) == found(trial) for trial in (3, 7, 20, -4))
    return number(answer.partition(" = ")[2] or answer) == Fraction(found)


@pytest.mark.parametrize("holder", HOLDERS, ids=[holder.id for holder in HOLDERS])
def test_answers_are_found_by_a_second_road(course: Course, holder: Lesson | HandsOn) -> None:
    for template in holder.templates:
        road = road_for(template)
        if road is None:
            assert template.id in WITHOUT, f"roads/{template.lesson}.py has no function for {template.name}"
            continue
        for seed in range(DRAWS):
            drawn = draw_whole(course, template, seed)
            found = travel(road, drawn)
            answer = drawn.item.key.answer
            assert agrees(found, answer), f"{template.id}, seed {seed}: {drawn.item.ask} {answer} {found}"


def travel(road: Callable[..., Any], drawn: Drawn) -> Any:
    """What a second road finds, given what it asks for."""
    item = drawn.item
    at_hand = {
        **drawn.draw.letters,
        "ask": plain_text(item.ask),
        "maths": [pythonic(run.text) for run in runs(item.ask) if run.kind is RunKind.MATHS],
        "words": drawn.draw.words,
        "choices": item.choices,
    }
    return road(**{name: at_hand[name] for name in inspect.signature(road).parameters})


def test_a_road_belongs_to_a_template() -> None:
    names = {
        (template.lesson, template.name.replace("-", "_"))
        for holder in HOLDERS
        for template in holder.templates
    }
    for path in (HERE / "roads").glob("*.py"):
        for name, function in roads_of(path.stem).items():
            if inspect.isfunction(function) and not name.startswith("_"):
                assert (path.stem, name) in names, f"roads/{path.name}: no template is called {name}"
