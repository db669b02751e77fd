"""Missteps with figures that the numbers show: the way around for what lies inside, radius for diameter."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from bot.answers.closeness import USUAL_PI, half_up, with_pi
from bot.answers.writing import ungrouped
from bot.maths import Tree, letters_in
from bot.maths.exact import Beyond, Quotient, normal_form
from bot.maths.tree import Add, Multiply, Number, Pi, Power, every
from bot.maths.value import Undefined


def guess_figure(typed: Quotient, places: int, right: Quotient, given: Tree, power: int) -> Iterator[str]:
    """Missteps between two measures of a figure.

    `places` are the places typed, `power` is 1 where a length is asked, 2 for an area. `given` is the
    question's own expression where it has one: `6 * 4`, `2(6 + 4)`, `pi * 5^2`.
    """
    for name, value in (*_of_circle(right, power), *_of_sides(given, power)):
        if not value.same_as(right) and _is(typed, places, value):
            yield name


def _is(typed: Quotient, places: int, value: Quotient) -> bool:
    """Whether that was typed: exactly, or with a usual value of π, rounded or not."""
    if typed.same_as(value):
        return True
    number = typed.rational()
    if number is None or value.rational() is not None:
        return False
    for pi in USUAL_PI:
        worked = with_pi(value, pi)
        if worked is not None and number in (worked, half_up(worked, places) if places else worked):
            return True
    return False


def _of_circle(right: Quotient, power: int) -> Iterator[tuple[str, Quotient]]:
    """What else could have been worked out of a circle: its area is kπ = r²π, its circumference kπ = 2rπ."""
    k = _times_pi(right)
    if k is None or k <= 0:
        return
    if power == 1:
        radius = k / 2
        yield "area-for-perimeter", _pi_times(radius**2)
        yield "radius-for-diameter", _pi_times(k * 2)
        yield "radius-for-diameter", _pi_times(k / 2)
        return
    root = _square_root(k)
    if root is None:
        return
    yield "perimeter-for-area", _pi_times(2 * root)
    yield "radius-for-diameter", _pi_times(4 * k)
    yield "radius-for-diameter", _pi_times(k / 4)


def _of_sides(given: Tree, power: int) -> Iterator[tuple[str, Quotient]]:
    """The other measure of a rectangle or square, from `6 * 4`, `5^2`, `2(6 + 4)`, `4 * 5`."""
    if letters_in(given) or any(isinstance(one, Pi) for one in every(given)):
        return
    tree = ungrouped(given)
    if power == 2:
        sides = _two_numbers(tree)
        if sides is not None:
            yield "perimeter-for-area", _number(2 * (sides[0] + sides[1]))
    else:
        sides = _around(tree)
        if sides is not None:
            yield "area-for-perimeter", _number(sides[0] * sides[1])


def _two_numbers(tree: Tree) -> tuple[Fraction, Fraction] | None:
    """The sides of `6 * 4` and of `5^2`."""
    if isinstance(tree, Multiply):
        one, other = ungrouped(tree.left), ungrouped(tree.right)
        if isinstance(one, Number) and isinstance(other, Number):
            return one.value, other.value
    if isinstance(tree, Power) and isinstance(base := ungrouped(tree.base), Number):
        exponent = ungrouped(tree.exponent)
        if isinstance(exponent, Number) and exponent.value == 2:
            return base.value, base.value
    return None


def _around(tree: Tree) -> tuple[Fraction, Fraction] | None:
    """The sides of `2(6 + 4)`, `4 * 5`, `6 + 4 + 6 + 4` and `2*6 + 2*4`."""
    if isinstance(tree, Multiply):
        for count, rest in ((tree.left, tree.right), (tree.right, tree.left)):
            times, inside = ungrouped(count), ungrouped(rest)
            if not isinstance(times, Number):
                continue
            if times.value == 2 and isinstance(inside, Add):
                one, other = ungrouped(inside.left), ungrouped(inside.right)
                if isinstance(one, Number) and isinstance(other, Number):
                    return one.value, other.value
            if times.value == 4 and isinstance(inside, Number):
                return inside.value, inside.value
        return None
    numbers = _summands(tree)
    if len(numbers) == 4 and len(set(numbers)) <= 2 and numbers.count(numbers[0]) in (2, 4):
        return min(numbers), max(numbers)
    return None


def _summands(tree: Tree) -> list[Fraction]:
    """The numbers of a plain sum, twice each that stands behind a 2; empty for anything else."""
    found: list[Fraction] = []
    waiting = [tree]
    while waiting:
        one = ungrouped(waiting.pop())
        if isinstance(one, Add):
            waiting += [one.left, one.right]
        elif isinstance(one, Number):
            found.append(one.value)
        elif isinstance(one, Multiply) and (pair := _two_numbers(one)) is not None and 2 in pair:
            found += [pair[0] if pair[1] == 2 else pair[1]] * 2
        else:
            return []
    return found


def _times_pi(value: Quotient) -> Fraction | None:
    """k where the value is kπ."""
    try:
        share = normal_form(Multiply(Number(Fraction(1)), Pi()))
    except (Undefined, Beyond):
        return None
    ((atom, _),) = share.top.items()
    if value.bottom != share.bottom or set(value.top) != {atom}:
        return None
    return Fraction(value.top[atom])


def _pi_times(k: Fraction) -> Quotient:
    return normal_form(Multiply(Number(k), Pi()))


def _number(value: Fraction) -> Quotient:
    return normal_form(Number(value))


def _square_root(number: Fraction) -> Fraction | None:
    from math import isqrt

    top, bottom = isqrt(number.numerator), isqrt(number.denominator)
    return Fraction(top, bottom) if Fraction(top, bottom) ** 2 == number else None
