"""What is known of an expected answer before anything is typed: worked out once, kept for the next reply."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from bot.answers.units import Wanted, wanted
from bot.maths import Tree, Undefined, Unreadable, normal, read
from bot.maths.exact import Beyond, Quotient, approximate, normal_form
from bot.maths.patterns import regex
from bot.maths.tree import ending_places, letters_in


@dataclass(frozen=True, slots=True)
class Expected:
    """An expected number or expression.

    `number` is its fraction where it is one, `near` a close fraction where it is a number with roots or π.
    `ends` tells whether its decimal ends. `letters` are the letters it is written with, small.
    """

    text: str
    tree: Tree
    form: Quotient
    number: Fraction | None
    near: Fraction | None
    ends: bool
    letters: frozenset[str]
    asked: Wanted | None

    @property
    def has_pi(self) -> bool:
        return any(atom == "π" for term in self.form.top for atom, _ in term)


_TIMES_TEN = regex(r"(?<=\d) ?x ?(?=10\b)")


class BadKey(ValueError):
    """The item's own answer can't be read: the lesson has to be mended, the student did nothing wrong."""


@lru_cache(maxsize=4096)
def expected_of(answer: str, unit: str | None) -> Expected:
    """Read an expected number or expression. Raises BadKey."""
    text = (
        _TIMES_TEN.sub("*", normal(answer).lower()).replace("sqrt", "√").replace("pi", "π").replace("$", "")
    )
    try:
        if "..." in text:
            from bot.answers.marks import plain_marks

            text = plain_marks(text)
        tree = read(text, "reply")
        form = normal_form(tree)
    except (Unreadable, Undefined, Beyond) as trouble:
        raise BadKey(answer) from trouble
    number = form.rational()
    near = number
    if number is None and not form.letters():
        near = approximate(form)
    return Expected(
        text=text,
        tree=tree,
        form=form,
        number=number,
        near=near,
        ends=number is not None and ending_places(number) is not None,
        letters=letters_in(tree),
        asked=wanted(unit) if unit else None,
    )
