"""General missteps that need no template: what a wrong answer looks like beside the right one."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from bot.answers.amounts import Amount
from bot.answers.expected import Expected
from bot.answers.key import Key
from bot.answers.numbers import Finding
from bot.answers.shapes import bare, scientific, shape
from bot.answers.writing import factors_of
from bot.maths import Undefined, Unreadable, normal
from bot.maths.algebra import lifted
from bot.maths.exact import Beyond, Quotient, Sum, normal_form, plus, times
from bot.maths.read import read_normal
from bot.maths.tree import Equation, Inequality, Letter, Mixed, Multiply, Number, Percent, Power

# One number ---------------------------------------------------------------------------------------------------


def guess_number(text: str, amount: Amount, want: Expected, key: Key) -> Iterator[str]:
    """Missteps between two numbers, the most telling first."""
    typed, right = amount.value.rational(), want.number
    if typed is None or right is None:
        yield from _with_roots(amount.value, want.form)
        return
    asked, unit = want.asked, amount.unit
    if key.form in ("percent",) or isinstance(bare(amount.tree), Percent):
        yield from _percents(amount, typed, right, key)
    if (
        asked is not None
        and unit is not None
        and unit.kinds == asked.unit.kinds
        and unit.size != asked.unit.size
    ):
        if (("time", 1),) == unit.kinds:
            yield from _hours(amount, typed, right * asked.unit.size / 3600)
        typed = typed * unit.size / asked.unit.size
    elif (key.form == "money") and unit is not None:
        typed = typed * unit.size
    elif unit is None and asked is not None and typed and right:
        yield from _other_unit(typed / right, asked.unit.kinds)
    elif unit is not None and asked is not None and typed and right:
        yield from _other_unit(typed / right, asked.unit.kinds)
    if typed == -right != 0:
        yield "sign-lost"
        return
    yield from _tens(typed, right)
    yield from _digits(_digits_of(amount), want, typed, right)
    if right and typed == 1 / right and typed != right:
        yield "upside-down"
    if right and typed == -1 / right:
        yield "upside-down"
    yield from _fractions(text, amount, typed, right)
    if key.form in ("decimal-rounded",) or shape(want.tree) == "decimal":
        yield from _rounded(amount, typed, right, want)
    if asked is not None and asked.unit.kinds == (("angle", 1),) and typed + right in (90, 180, 360):
        yield "part-for-rest"


def _percents(amount: Amount, typed: Fraction, right: Fraction, key: Key) -> Iterator[str]:
    is_percent = isinstance(bare(amount.tree), Percent)
    if key.form != "percent":
        if is_percent and typed * 100 == right:
            yield "percent-as-number"
        return
    if is_percent and right and typed in (right / 100, right * 100):
        yield "percent-as-number"
    if right and not is_percent and typed in (right * 100 * 100,):
        yield "percent-as-number"
    if is_percent and right and typed + right == 1:
        yield "part-for-rest"


def _tens(typed: Fraction, right: Fraction) -> Iterator[str]:
    if not typed or not right:
        return
    ratio = abs(typed / right)
    for power in range(1, 7):
        if ratio in (10**power, Fraction(1, 10**power)):
            yield "point-misplaced"
            return


_SIXTY = {
    ("time", 1): (60, 3600, 24),
    ("length", 1): (12, 3, 36, 5280),
    ("mass", 1): (16,),
    ("length", 2): (144, 9),
}


def _other_unit(ratio: Fraction, kinds: tuple[tuple[str, int], ...]) -> Iterator[str]:
    """The number of another unit of the same kind: 36 for 3 ft, 2.5 for 150 min."""
    if len(kinds) != 1:
        return
    for factor in _SIXTY.get(kinds[0], ()):
        if ratio in (factor, Fraction(1, factor)):
            yield "not-converted"
            return
        if ratio == Fraction(1, factor**2):
            yield "wrong-direction"
    if kinds[0][0] in ("length", "mass") and ratio in (Fraction(1, 10**6), 10**6):
        yield "wrong-direction"


def _hours(amount: Amount, typed: Fraction, hours: Fraction) -> Iterator[str]:
    """2.5 h as 2 h 5 min or 250 min."""
    whole = hours.__floor__()
    part = hours - whole
    if not part or amount.unit is None:
        return
    seconds = typed * amount.unit.size
    digits = str(float(part))[2:]
    for minutes in (int(digits[:2] or 0), int(digits[:2].ljust(2, "0"))):
        if seconds == whole * 3600 + minutes * 60 or seconds == (whole * 100 + minutes) * 60:
            yield "decimal-hours"
            return


def _digits_of(amount: Amount) -> str:
    text = re.sub(r"[^\d.]", "", amount.text)
    return text


def _digits(typed_digits: str, want: Expected, typed: Fraction, right: Fraction) -> Iterator[str]:
    """Two digits swapped; a zero too many or too few inside."""
    if "." in typed_digits and not typed_digits.strip("0."):
        return
    wanted = re.sub(r"[^\d.]", "", want.text)
    if "/" in want.text or not typed_digits or len(typed_digits) > 20:
        return
    if (typed < 0) != (right < 0):
        return
    one, other = typed_digits, wanted
    places = max(len(one.partition(".")[2]), len(other.partition(".")[2]))
    if places:
        one, other = _padded(one, places), _padded(other, places)
    for i in range(len(other) - 1):
        if other[i] != other[i + 1] and "." not in other[i : i + 2]:
            swapped = other[:i] + other[i + 1] + other[i] + other[i + 2 :]
            if swapped.strip("0") == one.strip("0") and len(one) == len(other):
                if one.rstrip("0").lstrip("0.") != other.rstrip("0").lstrip("0."):
                    yield "digits-swapped"
                    break
                if "0" not in (other[i], other[i + 1]):
                    yield "digits-swapped"
                    break
    short, long = sorted((_plain(typed_digits), _plain(wanted)), key=len)
    if len(long) == len(short) + 1 and len(short) > 1:
        for i in range(1, len(long)):
            if long[i] == "0" and long[:i] + long[i + 1 :] == short and i < len(long) - 1:
                yield "zero-misplaced"
                break


def _padded(digits: str, places: int) -> str:
    whole, _, part = digits.partition(".")
    return f"{whole or '0'}.{part.ljust(places, '0')}"


def _plain(digits: str) -> str:
    return digits.rstrip("0") if "." in digits else digits


def _fractions(text: str, amount: Amount, typed: Fraction, right: Fraction) -> Iterator[str]:
    if right.denominator == 1 or abs(right.denominator) > 1000:
        return
    size, said = abs(right), abs(typed)
    whole = size.__floor__()
    part = size - whole
    top, bottom = part.numerator, part.denominator
    if shape(amount.tree) in ("decimal", "whole"):
        written = {
            f"{whole}.{top}{bottom}",
            f"{size.numerator}.{size.denominator}",
            f"0.{size.denominator}",
            f"0.{size.numerator}{size.denominator}",
        }
        if re.sub(r"[^\d.]", "", amount.text) in written or amount.text.lstrip("-0") in {
            w.lstrip("0") for w in written
        }:
            yield "fraction-as-decimal"
        if said == int(f"{size.numerator}{size.denominator}"):
            yield "mixed-number-misread"
    if whole and said == part:
        yield "whole-part-lost"
    inner = bare(amount.tree)
    if isinstance(inner, Mixed) and whole and (inner.whole, inner.top, inner.bottom) == (whole, bottom, top):
        yield "upside-down"
    if size < 1 and said == 1 - size and size != Fraction(1, 2) and (typed < 0) == (right < 0):
        yield "part-for-rest"


def _rounded(amount: Amount, typed: Fraction, right: Fraction, want: Expected) -> Iterator[str]:
    from bot.answers.shapes import shown_places

    places, shown = shown_places(want.tree), shown_places(amount.tree)
    if places is None or shown is None:
        return
    if shown == places and places and abs(typed - right) == Fraction(1, 10**places):
        yield "rounded-wrong"


def _with_roots(typed: Quotient, right: Quotient) -> Iterator[str]:
    if typed.same_as(Quotient({t: -c for t, c in right.top.items()}, right.bottom)):
        yield "sign-lost"


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
    yield from _powers_of_numbers(tree, want)
    if len(right.bottom) != 1 or len(typed.bottom) != 1:
        return
    yield from _between_sums(typed.top, right.top)
    yield from _factored(tree, want)


def _negated(form: Quotient) -> Quotient:
    return Quotient({t: -c for t, c in form.top.items()}, form.bottom)


def _powers_of_numbers(tree: object, want: Expected) -> Iterator[str]:
    expected = want.tree
    if isinstance(expected, Power):
        try:
            base, above = normal_form(expected.base), normal_form(expected.exponent)
            typed = normal_form(tree)  # type: ignore[arg-type]
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


def _one_term(lost: object, c: object, new: object, d: object) -> Iterator[str]:
    one, other = dict(lost), dict(new)  # type: ignore[call-overload]
    if c != d:
        if len(one) == 1 and not [a for a in other if a not in one] and one != other:
            ((atom, n),) = one.items()
            if other.get(atom) == 1 and n > 1 and d == n * c:
                yield "exponent-as-product"
        return
    if {a: -n for a, n in one.items()} == other:
        yield "upside-down" if c == 1 and not any(abs(n) == 1 for n in one.values()) else "letter-under-bar"
    elif set(other) < set(one) and all(one[a] == other[a] for a in other):
        yield "letter-lost"
    elif set(one) == set(other) and sorted(one.values()) == sorted(other.values()):
        yield "exponent-misplaced"


def _square_as_double(lost: object, right: Sum, typed: Sum) -> Iterator[str]:
    """x² − 4x as 2x − 4x."""
    if len(lost) != 1:  # type: ignore[arg-type]
        return
    ((atom, n),) = lost  # type: ignore[misc]
    double: Sum = {((atom, 1),): n * right[lost]}  # type: ignore[index]
    rest: Sum = {t: c for t, c in right.items() if t != lost}
    if plus(rest, double) == typed:
        yield "exponent-as-product"


def _factored(tree: object, want: Expected) -> Iterator[str]:
    """A factor left out of a product."""
    expected, typed = factors_of(want.tree), factors_of(tree)  # type: ignore[arg-type]
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


# Several numbers ------------------------------------------------------------------------------------------------


def _numbers(text: str) -> list[Fraction] | None:
    """All plain numbers and fractions of a text, in order."""
    found = []
    text = re.sub(r"(\d)\s*-\s*(?=\d)", r"\1 -", text.replace("- ", "-"))
    for piece in re.findall(r"-?\d+ \d+/\d+|-?\d*\.?\d+(?:/\d+)?", text):
        whole, space, part = piece.partition(" ")
        try:
            number = Fraction(whole)
            if space:
                number = number - Fraction(part) if whole.startswith("-") else number + Fraction(part)
        except (ValueError, ZeroDivisionError):
            return None
        found.append(number)
    return found if len(found) <= 30 else None


def guess_list(text: str, key: Key) -> Iterator[str]:
    """Missteps between two lists, points, ratios, sets or remainders."""
    right, typed = _numbers(normal(key.answer)), _numbers(text)
    if not right or not typed:
        return
    if key.form == "remainder":
        yield from _remainders(text, typed, right)
        return
    if key.form == "solutions-set":
        yield from _sets(text, typed, right)
        return
    if key.form == "ratio":
        yield from _ratios(typed, right)
        return
    if len(typed) == len(right):
        if len(right) == 2 and typed == right[::-1] and key.form == "point":
            yield "operands-swapped"
        elif typed == right[::-1]:
            yield "order-reversed"
        elif [abs(n) for n in typed] == [abs(n) for n in right]:
            yield "sign-lost"
        else:
            yield from _one_entry(typed, right)
    elif len(typed) == len(right) - 1 and any(right[:i] + right[i + 1 :] == typed for i in range(len(right))):
        yield "entry-missing"


def _one_entry(typed: list[Fraction], right: list[Fraction]) -> Iterator[str]:
    changed = [(a, b) for a, b in zip(typed, right, strict=True) if a != b]
    if len(changed) != 1:
        return
    a, b = changed[0]
    if a and b and abs(a / b) in (10, 100, Fraction(1, 10), Fraction(1, 100)):
        yield "point-misplaced"
    elif (
        b and abs(a - b) < Fraction(1, 10) and a * 10 == int(a * 10) and b.denominator in (3, 6, 7, 9, 11, 12)
    ):
        yield "rounded-wrong"


def _sets(text: str, typed: list[Fraction], right: list[Fraction]) -> Iterator[str]:
    said, wants = set(typed), set(right)
    if said < wants and "±" not in text:
        yield "root-lost" if wants == {-n for n in wants} else "one-solution-lost"
    elif said == {-n for n in wants}:
        yield "sign-lost"
    elif len(said) == len(wants) and {abs(n) for n in said} == {abs(n) for n in wants}:
        yield "sign-lost"
    elif 0 not in said and said == {1 / n for n in wants if n}:
        yield "upside-down"


def _ratios(typed: list[Fraction], right: list[Fraction]) -> Iterator[str]:
    if len(right) == 1 and right[0]:
        right = [Fraction(right[0].numerator), Fraction(right[0].denominator)]
    if len(typed) == 1 and typed[0]:
        typed = [Fraction(typed[0].numerator), Fraction(typed[0].denominator)]
    if len(typed) != len(right):
        return
    if typed == right[::-1]:
        yield "operands-swapped"
    elif len(right) == 2 and typed[1] == sum(right) and typed[0] in right:
        yield "part-for-whole"
    elif [abs(n) for n in typed] == right:
        yield "sign-lost"
    elif (
        len(right) == 2
        and right[0]
        and typed[0] == right[0]
        and right[1]
        and typed[1] / right[1] in (10, Fraction(1, 10))
    ):
        yield "point-misplaced"


def _remainders(text: str, typed: list[Fraction], right: list[Fraction]) -> Iterator[str]:
    if len(right) != 2:
        return
    if len(typed) == 2 and typed == right[::-1] and typed != right:
        yield "operands-swapped"
    if len(typed) == 1 and re.search(rf"{right[0]}\.{right[1]}(?!\d)", text):
        yield "remainder-as-decimal"


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
        abs(Fraction(typed_difference[t])) == abs(Fraction(difference[t]))
        for t in typed_difference  # type: ignore[index]
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
    typed = _numbers(text)
    if (
        typed
        and sorted(set(primes)) == sorted(int(n) for n in typed)
        and len(set(primes)) < len(primes)
        and "^" not in text
    ):
        yield "repeat-left-out"
        return
    powers = {p: primes.count(p) for p in primes}
    written = sorted([p for p in powers] + [n for n in powers.values() if n > 1])
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
    if halves and said and halves != said and _numbers(answer) == _numbers(text):
        yield "am-for-pm"
    right, typed = _numbers(answer), _numbers(text)
    if right and typed and len(right) == 2 and not halves and len(typed) == 1:
        if str(float(typed[0])) == f"{int(right[0])}.{int(right[1])}".rstrip("0") and "h" in text:
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


def is_scientific(tree: object) -> bool:
    """Whether a tree is a number in scientific notation."""
    return scientific(tree) is not None  # type: ignore[arg-type]


def can_read(text: str) -> bool:
    """Whether a text is maths at all."""
    try:
        read_normal(text, "reply")
    except Unreadable:
        return False
    return True
