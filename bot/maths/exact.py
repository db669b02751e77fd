"""The normal form of an expression: a quotient of sums of terms, with letters, π and roots, all exact.

Two expressions are equal if and only if their normal forms are: π is transcendental and products of roots
of different primes are linearly independent over the fractions, so after reduction every number has one way
to be written. Nothing here uses floating point.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

from bot.maths.primes import prime_powers
from bot.maths.tree import (
    Add,
    Call,
    Divide,
    Group,
    Letter,
    Mixed,
    Multiply,
    Negative,
    Number,
    Percent,
    Pi,
    Positive,
    Power,
    Root,
    Subtract,
    Tree,
)
from bot.maths.value import MOST_BITS, SHOWN_AS, Undefined, power, value

Coefficient: TypeAlias = int | Fraction
Term: TypeAlias = tuple[tuple[str, Coefficient], ...]
"""Letters and other atoms with their powers, in order: x²y is (("x", 2), ("y", 1)). Powers may be negative.

An atom is a letter, `π`, a prime under a root (`#3` with power 1/2), or a power with a letter above (`2^n`).
"""
Sum: TypeAlias = dict[Term, Coefficient]

ONE: Sum = {(): 1}
MOST_TERMS = 600
MOST_STEPS = 6_000
"""Products of single terms in one multiplication: bounds the time of any expression."""


class Beyond(Exception):
    """An expression that this normal form does not cover: a root or absolute value of letters."""


@dataclass(frozen=True, slots=True)
class Quotient:
    """A sum of terms over a sum of terms; a single term below has gone above with its powers turned."""

    top: Sum
    bottom: Sum

    def rational(self) -> Fraction | None:
        """The fraction that this is, if it has no letters, roots or π."""
        if self.bottom is not ONE and self.bottom != ONE:
            return None
        if len(self.top) > 1 or (self.top and () not in self.top):
            return None
        return Fraction(self.top.get((), 0))

    def same_as(self, other: Quotient) -> bool:
        """Whether both are the same for all values of the letters."""
        if self.bottom is ONE and other.bottom is ONE:
            return self.top == other.top
        return times(self.top, other.bottom) == times(other.top, self.bottom)

    def letters(self) -> frozenset[str]:
        """Letters that really occur, as x does not in x − x."""
        return frozenset(
            letter
            for term in (*self.top, *self.bottom)
            for atom, _ in term
            if atom[0] != "#" and atom != "π"
            for letter in atom
            if letter.isalpha()
        )


def normal_form(tree: Tree) -> Quotient:
    """The normal form of an expression; raises Undefined (no such number, too big) or Beyond."""
    kind = type(tree)
    if kind is Number:
        return _constant(tree.value.numerator if tree.value.denominator == 1 else tree.value)  # type: ignore[union-attr]
    if kind is Letter:
        return Quotient({((tree.name, 1),): 1}, ONE)  # type: ignore[union-attr]
    if kind is Divide or kind is Multiply:
        join = divided if kind is Divide else multiplied
        return join(normal_form(tree.left), normal_form(tree.right))  # type: ignore[union-attr, arg-type]
    return _other_form(tree)


def _other_form(tree: Tree) -> Quotient:
    match tree:
        case Number(value=number):
            return _constant(number.numerator if number.denominator == 1 else number)
        case Letter(name=name):
            return Quotient({((name, 1),): 1}, ONE)
        case Add(left=left, right=right):
            return _added(normal_form(left), normal_form(right), 1)
        case Subtract(left=left, right=right):
            return _added(normal_form(left), normal_form(right), -1)
        case Multiply(left=left, right=right):
            return multiplied(normal_form(left), normal_form(right))
        case Divide(left=left, right=right):
            return divided(normal_form(left), normal_form(right))
        case Negative(of=inner):
            form = normal_form(inner)
            return Quotient({term: -c for term, c in form.top.items()}, form.bottom)
        case Group(of=inner) | Positive(of=inner):
            return normal_form(inner)
        case Power(base=base, exponent=exponent):
            return _power(normal_form(base), normal_form(exponent))
        case Mixed(whole=whole, top=top, bottom=bottom):
            if bottom == 0:
                raise Undefined("zero-bottom")
            return _constant(whole + Fraction(top, bottom))
        case Percent(of=inner):
            return multiplied(normal_form(inner), _constant(Fraction(1, 100)))
        case Pi():
            return Quotient({(("π", 1),): 1}, ONE)
        case Root(of=inner, degree=degree):
            return _root(normal_form(inner), degree)
        case Call(name="sqrt", parts=(part,)):
            return _root(normal_form(part), 2)
        case Call(name="abs", parts=(part,)):
            return _absolute(normal_form(part))
        case Call(name=name, parts=(part,)) if name in SHOWN_AS:
            return normal_form(part)
        case Call():
            return _constant(value(tree))
    raise Undefined("no-number", type(tree).__name__)


def _constant(number: Coefficient) -> Quotient:
    return Quotient({(): number} if number else {}, ONE)


def plus(one: Sum, other: Sum, sign: int = 1) -> Sum:
    """The sum (or with −1 the difference) of two sums."""
    found = dict(one)
    for term, c in other.items():
        c = found.get(term, 0) + sign * c
        if c:
            found[term] = c
        else:
            found.pop(term, None)
    if len(found) > MOST_TERMS:
        raise Undefined("too-big")
    return found


def times(one: Sum, other: Sum) -> Sum:
    """The product of two sums."""
    if one is ONE:
        return other
    if other is ONE:
        return one
    if len(one) * len(other) > MOST_STEPS:
        raise Undefined("too-big")
    found: Sum = {}
    for t1, c1 in one.items():
        for t2, c2 in other.items():
            term, c = _joined(t1, t2)
            c = found.get(term, 0) + c * c1 * c2
            if c:
                found[term] = c
            else:
                found.pop(term, None)
    if len(found) > MOST_TERMS:
        raise Undefined("too-big")
    return found


def _joined(one: Term, other: Term) -> tuple[Term, Coefficient]:
    """The product of two terms, and the number that comes out of roots: √3 · √3 is 3."""
    if not one:
        return other, 1
    if not other:
        return one, 1
    powers = dict(one)
    out: Coefficient = 1
    for atom, n in other:
        n = powers.get(atom, 0) + n
        if atom[0] == "#":
            whole = math.floor(n)
            if whole:
                out *= Fraction(int(atom[1:])) ** whole
                n -= whole
        if n:
            powers[atom] = n
        else:
            powers.pop(atom, None)
    return tuple(sorted(powers.items())), out


def _added(one: Quotient, other: Quotient, sign: int) -> Quotient:
    if one.bottom is other.bottom or one.bottom == other.bottom:
        return Quotient(plus(one.top, other.top, sign), one.bottom)
    top = plus(times(one.top, other.bottom), times(other.top, one.bottom), sign)
    return Quotient(top, times(one.bottom, other.bottom))


def multiplied(one: Quotient, other: Quotient) -> Quotient:
    """The product of two quotients."""
    return _tidy(times(one.top, other.top), times(one.bottom, other.bottom))


def divided(one: Quotient, other: Quotient) -> Quotient:
    """The quotient of two; raises Undefined when the second is zero."""
    if not other.top:
        raise Undefined("zero-bottom")
    return _tidy(times(one.top, other.bottom), times(one.bottom, other.top))


def _tidy(top: Sum, bottom: Sum) -> Quotient:
    """A single term below goes above."""
    if bottom is ONE:
        return Quotient(top, ONE)
    if len(bottom) == 1:
        ((term, c),) = bottom.items()
        if not term:
            return Quotient({t: Fraction(above, c) for t, above in top.items()}, ONE)
        turned, out = _joined((), tuple((atom, -n) for atom, n in term))
        extra: Coefficient = 1
        if any(atom[0] == "#" for atom, _ in turned):  # 1/√3 is √3/3
            fixed = []
            for atom, n in turned:
                if atom[0] == "#" and n < 0:
                    extra *= Fraction(1, int(atom[1:]))
                    n += 1
                fixed.append((atom, n))
            turned = tuple(fixed)
        return Quotient(times(top, {turned: Fraction(1) / c * out * extra}), ONE)
    return Quotient(top, bottom)


def _power(base: Quotient, exponent: Quotient) -> Quotient:
    n = exponent.rational()
    if n is None:
        return _letter_power(base, exponent)
    if n.denominator != 1:
        if n.denominator > 6:
            raise Beyond
        return _power(_root(base, n.denominator), _constant(n.numerator))
    return whole_power(base, n.numerator)


def whole_power(base: Quotient, n: int) -> Quotient:
    """A quotient to a whole power, in bounded time."""
    if n < 0:
        return whole_power(divided(_constant(1), base), -n)
    number = base.rational()
    if number is not None:
        size = max(number.numerator.bit_length(), number.denominator.bit_length())
        if size > 1 and n * size > MOST_BITS:
            raise Undefined("too-big")
        return _constant(Fraction(number ** (n if size > 1 else 1 + (n + 1) % 2 if n else 0)))
    if n > 10_000 or ((len(base.top) > 1 or len(base.bottom) > 1) and n > 40):
        raise Undefined("too-big")
    found = Quotient(ONE, ONE)
    while n:
        if n % 2:
            found = multiplied(found, base)
        n //= 2
        if n:
            base = multiplied(base, base)
        _check_size(found)
    return found


def _check_size(form: Quotient) -> None:
    if any(max(c.numerator.bit_length(), c.denominator.bit_length()) > MOST_BITS for c in form.top.values()):
        raise Undefined("too-big")


def _letter_power(base: Quotient, exponent: Quotient) -> Quotient:
    """2^(n + 1), x^n: a power with letters above."""
    if exponent.bottom is not ONE or len(base.top) != 1 or base.bottom is not ONE:
        raise Beyond
    ((term, c),) = base.top.items()
    number = Fraction(c)
    if number <= 0 or any(atom[0] == "#" or len(atom) > 1 for atom, _ in term):
        raise Beyond
    factors: list[tuple[str, Coefficient]] = list(term)
    factors += [(str(p), k) for p, k in prime_powers(number.numerator).items()]
    factors += [(str(p), -k) for p, k in prime_powers(number.denominator).items()]
    found = Quotient(ONE, ONE)
    for above, k in exponent.top.items():
        for atom, n in factors:
            total = Fraction(n * k)
            if total.denominator != 1:
                raise Beyond
            if above == ():
                plain = (
                    Quotient({((atom, 1),): 1}, ONE)
                    if atom.isalpha() or atom == "π"
                    else _constant(int(atom))
                )
                found = multiplied(found, whole_power(plain, int(total)))
            else:
                name = f"{atom}^" + "".join(f"{a}{m if m != 1 else ''}" for a, m in above)
                found = multiplied(found, Quotient({((name, int(total)),): 1}, ONE))
    return found


def _root(inner: Quotient, degree: int) -> Quotient:
    number = inner.rational()
    if number is None:
        return _letter_root(inner, degree)
    if number < 0:
        if degree % 2 == 0:
            raise Undefined("not-real")
        form = _root(_constant(-number), degree)
        return Quotient({term: -c for term, c in form.top.items()}, form.bottom)
    if number == 0:
        return _constant(0)
    if max(number.numerator, number.denominator).bit_length() > 64:
        raise Undefined("too-big")
    outside: Coefficient = Fraction(1)
    term: dict[str, Coefficient] = {}
    for n, sign in ((number.numerator, 1), (number.denominator, -1)):
        for p, k in prime_powers(n).items():
            whole, rest = divmod(sign * k, degree)
            outside *= Fraction(p) ** whole
            if rest:
                term[f"#{p}"] = Fraction(rest, degree)
    return Quotient({tuple(sorted(term.items())): outside}, ONE)


def _letter_root(inner: Quotient, degree: int) -> Quotient:
    """A root with letters below is covered only where an odd root comes out whole: ∛(x³)."""
    if degree % 2 == 0 or len(inner.top) != 1 or inner.bottom is not ONE:
        raise Beyond
    ((term, c),) = inner.top.items()
    if any(n % degree for _, n in term):
        raise Beyond
    outside = _root(_constant(c), degree)
    return multiplied(outside, Quotient({tuple((atom, n // degree) for atom, n in term): 1}, ONE))


def _absolute(inner: Quotient) -> Quotient:
    if inner.letters():
        raise Beyond
    if approximate(inner) < 0:
        return Quotient({term: -c for term, c in inner.top.items()}, inner.bottom)
    return inner


_SCALE = 10**60
_PI = Fraction(3141592653589793238462643383279502884197169399375105820974944, 10**60)
"""π to 60 places (OEIS A000796), for rounding only; equality never uses it."""


def approximate(form: Quotient) -> Fraction:
    """A fraction within about 10⁻⁵⁰ of a number with roots and π, to decide its sign and its rounding.

    Raises Undefined if letters occur.
    """
    return _approximate(form.top) / _approximate(form.bottom)


def _approximate(terms: Sum) -> Fraction:
    total = Fraction(0)
    for term, c in terms.items():
        product = Fraction(c)
        for atom, n in term:
            if atom == "π":
                if abs(Fraction(n)) > 50:
                    raise Undefined("too-big")
                product *= power(_PI, Fraction(n))
            elif atom[0] == "#":
                exponent = Fraction(n)
                product *= _near_root(int(atom[1:]) ** exponent.numerator, exponent.denominator)
            else:
                raise Undefined("unbound", atom)
        total += product
    return total


def _near_root(n: int, degree: int) -> Fraction:
    scaled = n * _SCALE**degree
    if degree == 2:
        return Fraction(math.isqrt(scaled), _SCALE)
    low, high = 0, 1 << (scaled.bit_length() // degree + 1)
    while low < high:
        middle = (low + high + 1) // 2
        if middle**degree <= scaled:
            low = middle
        else:
            high = middle - 1
    return Fraction(low, _SCALE)
