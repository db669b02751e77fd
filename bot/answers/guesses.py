"""General missteps that need no template: what a wrong answer looks like beside the right one."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from bot.answers.amounts import Amount
from bot.answers.expected import Expected
from bot.answers.key import Key
from bot.answers.shapes import bare, shape
from bot.maths import normal
from bot.maths.build import number_from
from bot.maths.exact import Quotient
from bot.maths.patterns import regex
from bot.maths.tree import Mixed, Percent

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
        if unit.kinds == (("time", 1),):
            yield from _hours(amount, typed, right * asked.unit.size / 3600)
        typed = typed * unit.size / asked.unit.size
    elif (key.form == "money") and unit is not None:
        typed = typed * unit.size
    elif (unit is None and asked is not None and typed and right) or (
        unit is not None and asked is not None and typed and right
    ):
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
    ratio = typed / right
    top, bottom = abs(ratio.numerator), ratio.denominator
    if (top in _TENS and bottom == 1) or (bottom in _TENS and top == 1):
        yield "point-misplaced"


_TENS = frozenset(10**power for power in range(1, 7))


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
    return re.sub(r"[^\d.]", "", amount.text)


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


# Several numbers ------------------------------------------------------------------------------------------------


_DASH_BETWEEN = regex(r"(\d)\s*-\s*(?=\d)")
_NUMBERS = regex(r"(-?)(?:(\d+) (?=\d+/))?(\d*\.?\d+)(?:/(\d+))?")


def numbers_in(text: str) -> list[Fraction] | None:
    """All plain numbers and fractions of a text, in order."""
    found = []
    text = _DASH_BETWEEN.sub(r"\1 -", text.replace("- ", "-"))
    for minus, whole, top, bottom in _NUMBERS.findall(text):
        if bottom and not int(bottom):
            return None
        size = number_from(top).value / int(bottom or 1) + int(whole or 0)
        found.append(-size if minus else size)
    return found if len(found) <= 30 else None


def guess_list(text: str, key: Key) -> Iterator[str]:
    """Missteps between two lists, points, ratios, sets or remainders."""
    right, typed = numbers_in(normal(key.answer)), numbers_in(text)
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
    if typed == right:
        return  # the numbers are right, what stands between them is not
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
    elif said == {-n for n in wants} or (
        len(said) == len(wants) and {abs(n) for n in said} == {abs(n) for n in wants}
    ):
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
