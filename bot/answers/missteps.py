"""The likely misstep behind a wrong answer.

First the template's own missteps, then what a faulty step makes of the question's own expression, then
general ones that need neither. A name is given only where nothing else explains the answer as well.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from functools import cache, lru_cache

from bot.answers.around import newest, small, trimmed, without_lead
from bot.answers.expected import BadKey, Expected, expected_of
from bot.answers.faults import faulty
from bot.answers.finding import Finding
from bot.answers.given import given_tree
from bot.answers.guesses import guess_list, guess_number
from bot.answers.guesses_algebra import guess_expression, guess_other
from bot.answers.guesses_of_figures import guess_figure
from bot.answers.key import Key
from bot.answers.numbers import NUMBER_FORMS
from bot.answers.shapes import shown_places
from bot.answers.tables import table
from bot.answers.undoing import faulty_relations
from bot.answers.units import wanted
from bot.maths import Tree, Undefined, Unreadable, letters_in, normal
from bot.maths.algebra import coefficients
from bot.maths.exact import Beyond, Quotient, normal_form, plus, times
from bot.maths.tree import Equation, Inequality

MOST_TRIED = 400
"""Faulty steps tried on one question: bounds the time of one wrong answer (about a millisecond)."""


@cache
def names() -> dict[str, str]:
    """Every misstep that the checker names by itself, and what happened."""
    return table("missteps")


def misstep_of(text: str, finding: Finding, key: Key) -> str | None:
    """The name of the likely misstep, or None where none explains the answer better than the others."""
    try:
        own = _own(text, finding, key)
        if own is not None or key.given is None:
            return own or _general(text, finding, key)
        found = {*_figures(finding, key), _from_given(text, finding, key)} - {None}
        if found:
            return found.pop() if len(found) == 1 else None
        return _general(text, finding, key)
    except (Unreadable, Undefined, Beyond, BadKey, ArithmeticError, ValueError):
        return None


# The template's own ---------------------------------------------------------------------------------------


def _own(text: str, finding: Finding, key: Key) -> str | None:
    """The template's misstep whose wrong answer was typed."""
    from bot.answers.judge import judge
    from bot.vocabulary import Verdict

    # Most are typed as the template would write them; asking the judge about each is slow.
    unit = f" {key.unit}" if key.unit else ""
    for misstep in key.missteps:
        if text in (_as_read(misstep.answer), _as_read(misstep.answer + unit)):
            return misstep.name
    for misstep in key.missteps:
        wrong = replace(key, answer=misstep.answer, missteps=(), given=None, accept=None)
        if judge(text, wrong).verdict in (Verdict.RIGHT, Verdict.FORM, Verdict.UNIT):
            return misstep.name
    return None


@lru_cache(maxsize=4096)
def _as_read(answer: str) -> str:
    return small(normal(answer))


# From the question's expression -----------------------------------------------------------------------------


def _figures(finding: Finding, key: Key) -> Iterator[str]:
    """Another measure of the same figure, where a length or an area is worked out of the question's numbers."""
    asked = wanted(key.unit).unit.kinds if key.unit else ()
    amount = finding.amount
    if amount is None or key.given is None or len(asked) != 1 or asked[0][0] not in ("length", "unit"):
        return
    given = given_tree(key.given)
    if given is not None and asked[0][1] in (1, 2):
        places = shown_places(amount.tree) or 0
        yield from guess_figure(amount.value, places, normal_form(given), given, asked[0][1])


def _from_given(text: str, finding: Finding, key: Key) -> str | None:
    if key.given is None:
        return None
    given = given_tree(key.given)
    typed = _typed_form(text, finding, key)
    if given is None or typed is None:
        return None
    if isinstance(given, (Equation, Inequality)):
        return _from_equation(given, typed)
    for n, (name, tree) in enumerate(faulty(given)):
        if n > MOST_TRIED:
            return None
        try:
            if normal_form(tree).same_as(typed):
                return name
        except (Undefined, Beyond):
            continue
    return None


def _from_equation(given: Tree, typed: Quotient) -> str | None:
    number = typed.rational()
    letters = letters_in(given)
    if number is None or len(letters) != 1 or not isinstance(given, Equation):
        return None
    letter = next(iter(letters))
    for n, (name, tree) in enumerate(faulty_relations(given)):
        if n > MOST_TRIED or not isinstance(tree, Equation):
            return None
        if _solves(tree, letter, number):
            return name
    return None


def _solves(tree: Equation, letter: str, number: Fraction) -> bool:
    """Whether a linear equation has this one solution."""
    try:
        left, right = normal_form(tree.sides[0]), normal_form(tree.sides[-1])
        difference = plus(times(left.top, right.bottom), times(right.top, left.bottom), -1)
    except (Undefined, Beyond):
        return False
    numbers = coefficients(difference, letter)
    return numbers is not None and len(numbers) == 2 and -numbers[0] / numbers[1] == number


def _typed_form(text: str, finding: Finding, key: Key) -> Quotient | None:
    """The normal form of what was typed, where it is one number or expression."""
    if finding.value is not None:
        return finding.value
    tree = finding.tree
    if isinstance(tree, (Equation, Inequality)):
        tree = tree.sides[-1]
    if tree is not None:
        try:
            return normal_form(tree)
        except (Undefined, Beyond):
            return None
    return None


# General ----------------------------------------------------------------------------------------------------


def _general(text: str, finding: Finding, key: Key) -> str | None:
    found: list[str] = []
    for name in _guesses(trimmed(without_lead(newest(text, no=False))), finding, key):
        if name not in found:
            found.append(name)
        if len(found) > 1:
            break
    return found[0] if found else None


def _guesses(text: str, finding: Finding, key: Key) -> Iterator[str]:
    form = key.form
    if form in NUMBER_FORMS or form == "equation-solution":
        want = _expected_number(key)
        if want is not None and want.letters:
            yield from guess_expression(finding, want)
        elif want is not None and finding.amount is not None:
            yield from guess_number(text, finding.amount, want, key)
    elif form in ("expression", "expression-any", "factored"):
        yield from guess_expression(finding, expected_of(key.answer, None))
    elif form in ("list", "point", "ratio", "solutions-set", "remainder"):
        yield from guess_list(text, key)
    else:
        yield from guess_other(text, finding, key)


def _expected_number(key: Key) -> Expected | None:
    answer = key.answer
    if key.form == "equation-solution":
        if "=" not in answer:
            if not re.search(r"\d", answer):
                return None
        else:
            left, _, right = normal(answer).partition("=")
            answer = right if len(left.strip()) == 1 else left
    return expected_of(answer.strip(), key.unit)
