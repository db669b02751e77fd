"""General missteps in expressions, equations, inequalities, products of primes and times."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from bot.answers.expected import Expected
from bot.answers.finding import Finding
from bot.answers.guesses import numbers_in
from bot.answers.key import Key
from bot.answers.writing import factors_of
from bot.maths import Tree, Undefined, normal
from bot.maths.algebra import lifted
from bot.maths.exact import Beyond, Coefficient, Quotient, Sum, Term, normal_form, plus, times
from bot.maths.read import read_normal
from bot.maths.tree import Equation, Inequality, Letter, Multiply, Number, Power

# Expressions --------------------------------------------------------------------------------------------------


def guess_expression(finding: Finding, want: Expected) -> Iterator[str]:
    """Missteps between two expressions: signs, letters, exponents, brackets."""
    tree = finding.tree
    if isinstance(tree, Equation):
        tree = tree.sides[-1]
    if tree is None:
        return
    try:
        typed = normal_form(tree)
    except (Undefined, Beyond):
        return
    right = want.form
    if typed.same_as(_negated(right)):
        yield "sign-lost"
        return
    yield from _powers_ofnumbers_in(tree, want)
    if len(right.bottom) != 1 or len(typed.bottom) != 1:
        return
    yield from _between_sums(typed.top, right.top)
    yield from _factored(tree, want)


def _negated(form: Quotient) -> Quotient:
    return Quotient({t: -c for t, c in form.top.items()}, form.bottom)


def _powers_ofnumbers_in(tree: Tree, want: Expected) -> Iterator[str]:
    expected = want.tree
    if isinstance(expected, Power):
        try:
            base, above = normal_form(expected.base), normal_form(expected.exponent)
            typed = normal_form(tree)
        except (Undefined, Beyond):
            return
        if typed.same_as(Quotient(times(base.top, above.top), base.bottom)):
            yield "exponent-as-product"
        turned = Power(expected.exponent, expected.base)
        try:
            if typed.same_as(normal_form(turned)):
                yield "base-and-exponent-swapped"
        except (Undefined, Beyond):
            return


def _between_sums(typed: Sum, right: Sum) -> Iterator[str]:
    terms = set(typed) | set(right)
    changed = [t for t in terms if typed.get(t, 0) != right.get(t, 0)]
    if typed.keys() == right.keys():
        if all(typed[t] == -right[t] for t in changed):
            yield "sign-lost"
            return
        if len(right) > 1 and () in right and changed == [()]:
            divisor = _common(right)
            if divisor > 1 and typed[()] * divisor == right[()]:
                yield "first-term-only"
            return
        return
    lost = [t for t in right if t not in typed]
    new = [t for t in typed if t not in right]
    if len(lost) == 1 and not new and len(right) > 1 and len(changed) == 1:
        yield "term-lost"
    elif len(lost) == 1 and len(new) == 1 and len(changed) == 2:
        yield from _one_term(lost[0], right[lost[0]], new[0], typed[new[0]])
    elif len(lost) == 1 and len(new) == 0 and len(changed) == 2:
        yield from _square_as_double(lost[0], right, typed)
    elif len(lost) == 2 and len(new) == 1 and len(typed) == len(right) - 1:
        (t1, t2), t = lost, new[0]
        powers = dict(t)
        joined: dict[str, object] = {}
        for one in (t1, t2):
            for a, n in one:
                joined[a] = joined.get(a, 0) + n  # type: ignore[operator]
        if powers == joined and typed[t] == right[t1] + right[t2]:
            yield "unlike-terms-combined"


def _common(terms: Sum) -> int:
    import math

    found = 0
    for c in terms.values():
        if Fraction(c).denominator != 1:
            return 1
        found = math.gcd(found, int(c))
    return found


def _one_term(lost: Term, c: Coefficient, new: Term, d: Coefficient) -> Iterator[str]:
    one, other = dict(lost), dict(new)
    if c != d:
        if len(one) == 1 and not [a for a in other if a not in one] and one != other:
            ((atom, n),) = one.items()
            if other.get(atom) == 1 and n > 1 and d == n * c:
                yield "exponent-as-product"
        return
    if {a: -n for a, n in one.items()} == other:
        yield "upside-down" if c == 1 and not any(n in (1, -1) for n in one.values()) else "letter-under-bar"
    elif set(other) < set(one) and all(one[a] == other[a] for a in other):
        yield "letter-lost"
    elif set(one) == set(other) and sorted(one.values()) == sorted(other.values()):
        yield "exponent-misplaced"


def _square_as_double(lost: Term, right: Sum, typed: Sum) -> Iterator[str]:
    """x² − 4x as 2x − 4x."""
    if len(lost) != 1:
        return
    ((atom, n),) = lost
    double: Sum = {((atom, 1),): n * right[lost]}
    rest: Sum = {t: c for t, c in right.items() if t != lost}
    if plus(rest, double) == typed:
        yield "exponent-as-product"


def _factored(tree: Tree, want: Expected) -> Iterator[str]:
    """A factor left out of a product."""
    expected, typed = factors_of(want.tree), factors_of(tree)
    if not expected or not typed or len(expected) < 2:
        return
    try:
        left = [normal_form(one) for one in expected]
        found = [normal_form(one) for one in typed]
    except (Undefined, Beyond):
        return
    for one in found:
        for i, other in enumerate(left):
            if one.same_as(other):
                del left[i]
                break
        else:
            return
    if len(left) == 1:
        yield "factor-lost"


# Inequalities, equations, primes, times ------------------------------------------------------------------------------

_TURN = {"<": ">", ">": "<", "≤": "≥", "≥": "≤"}
_CLOSED = {"<": "≤", ">": "≥", "≤": "<", "≥": ">"}


def guess_other(text: str, finding: Finding, key: Key) -> Iterator[str]:
    """Missteps in an inequality, an equation, a product of primes or a time."""
    if key.form == "inequality":
        yield from _inequality(finding, key)
    elif key.form == "equation":
        yield from _equation(finding, key)
    elif key.form == "prime-factors":
        yield from _primes(text, finding, key)
    elif key.form == "time":
        yield from _time(text, key)


def _inequality(finding: Finding, key: Key) -> Iterator[str]:
    from bot.answers.inequalities import _interval

    right = read_normal(normal(key.answer).lower(), "reply")
    typed = finding.tree
    if not isinstance(right, Inequality) or not isinstance(typed, Inequality):
        return
    one, other = _interval(typed), _interval(right)
    if other is None:
        return
    if one is None:
        if (
            len(typed.signs) == 2
            and len(right.signs) == 2
            and tuple(_TURN[s][0] for s in typed.signs) == tuple(s[0] for s in right.signs)
        ):
            yield "inequality-not-turned"
        return
    ends = (one.low, one.high)
    wants = (other.low, other.high)
    if ends == wants:
        yield "end-point"
        return
    if len(right.signs) == 2 and len(typed.signs) == 1:
        if ends in ((wants[0], None), (None, wants[1])):
            yield "one-part-missing"
        return
    if len(typed.signs) == 1 and len(right.signs) == 1:
        end, want = (e[0] if e[0] is not None else e[1] for e in (ends, wants))
        turned = (ends[0] is None) != (wants[0] is None)
        closed = (one.low_in or one.high_in) == (other.low_in or other.high_in)
        if end == want and turned and closed:
            yield "inequality-not-turned"
        elif not turned and closed and end is not None and want and end == -want:
            yield "sign-lost"
        elif not turned and closed and end is not None and want and end == 1 / want:
            yield "upside-down"


def _equation(finding: Finding, key: Key) -> Iterator[str]:
    from bot.answers.expressions import expected_equation

    tree = finding.tree
    expected, difference, letters, _ = expected_equation(key.answer)
    if not isinstance(tree, Equation) or len(tree.sides) != 2 or not isinstance(expected, Equation):
        return
    left, right = tree.sides
    if isinstance(left, Letter) and left == expected.sides[0]:
        want = Expected(
            key.answer, expected.sides[1], normal_form(expected.sides[1]), None, None, False, letters, None
        )
        if isinstance(want.tree, Multiply) and normal_form(right).same_as(_summed_factors(want.tree)):
            yield "times-as-plus"
        typed = normal_form(right)
        for term, c in want.form.top.items():
            d = typed.top.get(term)
            if (
                term
                and d
                and Fraction(c) not in (1, -1)
                and Fraction(d) == 1 / Fraction(c)
                and typed.top.keys() == want.form.top.keys()
            ):
                yield "upside-down" if len(want.form.top) > 1 else "wrong-inverse"
                return
        yield from guess_expression(Finding(finding.verdict, "", right), want)
        return
    typed_difference = lifted(plus(normal_form(left).top, normal_form(right).top, -1))
    if typed_difference.keys() == difference.keys() and all(
        abs(Fraction(typed_difference[t])) == abs(Fraction(difference[t])) for t in typed_difference
    ):
        yield "sign-lost"


def _summed_factors(tree: Multiply) -> Quotient:
    factors = factors_of(tree) or []
    total: Sum = {}
    for one in factors:
        total = plus(total, normal_form(one).top)
    return Quotient(total, normal_form(tree).bottom)


def _primes(text: str, finding: Finding, key: Key) -> Iterator[str]:
    expected = factors_of(read_normal(normal(key.answer).lower(), "reply"))
    if expected is None:
        return
    primes = [int(one.value) for one in expected if isinstance(one, Number)]
    typed = numbers_in(text)
    if (
        typed
        and sorted(set(primes)) == sorted(int(n) for n in typed)
        and len(set(primes)) < len(primes)
        and "^" not in text
    ):
        yield "repeat-left-out"
        return
    powers = {p: primes.count(p) for p in primes}
    written = sorted(list(powers) + [n for n in powers.values() if n > 1])
    if typed and "^" not in text and sorted(int(n) for n in typed) == written and "+" not in text:
        yield "exponent-as-product"
    if finding.tree is not None:
        plus_form = {f"{p}^{n}" if n > 1 else str(p) for p, n in powers.items()}
        if set(text.replace(" ", "").split("+")) == plus_form:
            yield "times-as-plus"
        for p, n in powers.items():
            swapped = dict(powers)
            del swapped[p]
            swapped[n] = swapped.get(n, 0) + p
            if n > 1 and normal_form(finding.tree).rational() == _product(swapped):
                yield "base-and-exponent-swapped"


def _product(powers: dict[int, int]) -> int:
    total = 1
    for p, n in powers.items():
        total *= p**n if n < 60 else 0
    return total


def _time(text: str, key: Key) -> Iterator[str]:
    answer = key.answer.lower()
    halves = [half for half in ("am", "pm") if half in answer.replace(".", "")]
    said = [half for half in ("am", "pm") if re.search(rf"{half[0]}\.? ?m", text)]
    if halves and said and halves != said and numbers_in(answer) == numbers_in(text):
        yield "am-for-pm"
    right, typed = numbers_in(answer), numbers_in(text)
    hours = right and typed and len(right) == 2 and not halves and len(typed) == 1 and "h" in text
    if right and typed and hours and str(float(typed[0])) == f"{int(right[0])}.{int(right[1])}".rstrip("0"):
        yield "decimal-hours"
    if (
        right
        and typed
        and len(right) == len(typed) == 2
        and right[0] == typed[0]
        and typed[1]
        and right[1] / typed[1] in (10, Fraction(1, 10))
    ):
        yield "zero-misplaced"
