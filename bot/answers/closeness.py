"""How near a typed value comes to the expected one: equal, rounded where that is not exact, or another."""

from __future__ import annotations

from fractions import Fraction

from bot.answers.expected import Expected
from bot.answers.shapes import shown_places
from bot.maths import Tree
from bot.maths.exact import Quotient, Sum
from bot.maths.tree import ending_places
from bot.maths.value import power

USUAL_PI = (Fraction(314, 100), Fraction(22, 7))
"""What schools take for π (Prealgebra 2e, section 5.3)."""


def half_up(number: Fraction, places: int) -> Fraction:
    """Rounded to places after the point, halves away from zero."""
    scaled = abs(number) * 10**places
    whole = (scaled + Fraction(1, 2)).__floor__()
    rounded = Fraction(whole, 10**places)
    return -rounded if number < 0 else rounded


def cut_off(number: Fraction, places: int) -> Fraction:
    """Without what stands behind these places."""
    scaled = abs(number) * 10**places
    cut = Fraction(scaled.__floor__(), 10**places)
    return -cut if number < 0 else cut


def with_pi(form: Quotient, pi: Fraction) -> Fraction | None:
    """The value with a fraction put for π; None if roots or letters occur too."""

    def of(terms: Sum) -> Fraction | None:
        total = Fraction(0)
        for term, c in terms.items():
            product = Fraction(c)
            for atom, n in term:
                if atom != "π" or abs(Fraction(n)) > 20:
                    return None
                product *= power(pi, Fraction(n))
            total += product
        return total

    top, bottom = of(form.top), of(form.bottom)
    return None if top is None or not bottom else top / bottom


def nearness(value: Quotient, tree: Tree | None, want: Expected, scale: Fraction) -> str | None:
    """ "" where equal, a reason where it is the value but not exactly (R9), None where it is another value.

    `scale` is the size of the expected unit in the unit that was typed.
    """
    target = want.form
    if scale != 1:
        target = Quotient({term: c * scale for term, c in target.top.items()}, target.bottom)
    if value.same_as(target):
        return ""
    number = value.rational()
    if number is None or want.near is None or tree is None:
        return None
    places = shown_places(tree)
    if want.has_pi:
        for pi in USUAL_PI:
            worked = with_pi(target, pi)
            if worked is None:
                continue
            if worked == number or (places is not None and places >= 2 and half_up(worked, places) == number):
                return "exact-pi"
    near = want.near * scale
    if places is None or places < 2 or places > 40:
        return None
    exact = want.number is not None
    if exact and ending_places(near) is not None:
        return None
    if number in (half_up(near, places), cut_off(near, places)):
        return "exact-pi" if want.has_pi else "exact"
    return None
