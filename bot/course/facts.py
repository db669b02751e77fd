"""The number facts, by stages: the four operations to 12, then what the course adds."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from bot.vocabulary import LessonId


@dataclass(frozen=True, slots=True)
class Fact:
    """One number fact: how it stands on the sheet, which is also its name in the record of what is slow, and its
    answer as it is written ("56", "−3" as "-3", "75%", "0.375", "3/8").
    """

    id: str
    answer: str

    @property
    def ask(self) -> str:
        """How it stands on the sheet."""
        return self.id


@dataclass(frozen=True, slots=True)
class Stage:
    """A family of facts. It opens once the stages it `needs` are passed and the lesson it belongs to was met."""

    id: str
    family: str
    holds: str
    needs: tuple[str, ...]
    facts: tuple[Fact, ...]
    opens_after: LessonId | None = None


def form_of(answer: str) -> str:
    """The form that a fact's answer has to be typed in, as it shows in the key."""
    if answer.endswith("%"):
        return "percent"
    return "fraction-simplest" if "/" in answer else "decimal" if "." in answer else "number"


def _fact(ask: str, answer: int | Fraction) -> Fact:
    """A fact whose answer is written as a whole number, or as a decimal that ends."""
    return Fact(ask, _written(answer))


def _written(number: int | Fraction) -> str:
    """A number as it is typed: a whole number, or a decimal that ends."""
    exact = Fraction(number)
    if exact.denominator == 1:
        return str(exact.numerator)
    places = next(n for n in range(1, 10) if (exact * 10**n).denominator == 1)
    return f"{float(exact):.{places}f}"


def _shown(number: int) -> str:
    """A whole number with a true minus sign; a negative one after a sign stands in parentheses."""
    return str(number).replace("-", "−")


def _after(number: int) -> str:
    return f"({_shown(number)})" if number < 0 else str(number)


def _sums() -> Iterator[Fact]:
    return (_fact(f"{a} + {b}", a + b) for a in range(1, 13) for b in range(1, 13))


def _differences() -> Iterator[Fact]:
    return (_fact(f"{a + b} − {a}", b) for a in range(1, 13) for b in range(1, 13))


def _products(*of: int) -> Iterator[Fact]:
    for a in of:
        for b in range(1, 13):
            yield _fact(f"{a} × {b}", a * b)
            if b not in of:
                yield _fact(f"{b} × {a}", a * b)


def _quotients() -> Iterator[Fact]:
    return (_fact(f"{a * b} ÷ {a}", b) for a in range(2, 13) for b in range(1, 13))


def _halves_and_doubles() -> Iterator[Fact]:
    for a in range(6, 51):
        yield _fact(f"double {a}", 2 * a)
        yield _fact(f"half of {2 * a}", a)


def _tens_and_hundreds() -> Iterator[Fact]:
    for a in range(2, 10):
        for b in range(2, 10):
            yield _fact(f"{10 * a} × {b}", 10 * a * b)
            yield _fact(f"{10 * a} × {10 * b}", 100 * a * b)
            yield _fact(f"{100 * a} × {b}", 100 * a * b)
            yield _fact(f"{10 * a * b} ÷ {a}", 10 * b)


def _squares(*of: int) -> Iterator[Fact]:
    return (_fact(f"{a}²", a * a) for a in of)


def _roots() -> Iterator[Fact]:
    return (_fact(f"√{a * a}", a) for a in range(1, 16))


def _powers() -> Iterator[Fact]:
    yield from (_fact(f"2{_raised(n)}", 2**n) for n in range(1, 11))
    yield from (_fact(f"{a}³", a**3) for a in range(1, 6))
    yield from (_fact(f"10{_raised(n)}", 10**n) for n in range(1, 7))


def _raised(n: int) -> str:
    return str(n).translate(str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹"))


def _decimal_shifts() -> Iterator[Fact]:
    for digits in (34, 7, 125, 608, 9, 52):
        for places in (1, 2):
            number = Fraction(digits, 10**places)
            for by in (10, 100, 1000):
                yield _fact(f"{_written(number)} × {by}", number * by)
        for by in (10, 100, 1000):
            yield _fact(f"{digits} ÷ {by}", Fraction(digits, by))


def _same_amounts(*of: Fraction) -> Iterator[Fact]:
    """A fraction as decimal and percent, and back."""
    for part in of:
        hundredths = 100 * part
        percent = f"{_written(hundredths)}%" if _ends(hundredths) else ""
        if percent:
            yield Fact(f"{part} in percent", percent)
            yield Fact(f"{percent} as a fraction", str(part))
        if _ends(part):
            yield Fact(f"{part} as a decimal", _written(part))
            yield Fact(f"{_written(part)} as a fraction", str(part))
            yield Fact(f"{_written(part)} in percent", percent)


def _ends(number: Fraction) -> bool:
    """Whether a number has a decimal that ends."""
    left = number.denominator
    for prime in (2, 5):
        while left % prime == 0:
            left //= prime
    return left == 1


def _parts(*denominators: int) -> list[Fraction]:
    found = {Fraction(n, d) for d in denominators for n in range(1, d)}
    return sorted(part for part in found if part.denominator in denominators)


def _percents_of() -> Iterator[Fact]:
    for percent in (1, 5, 10, 20, 25, 50, 75):
        for amount in (20, 40, 60, 80, 120, 200, 300, 400):
            if Fraction(percent * amount, 100).denominator == 1:
                yield _fact(f"{percent}% of {amount}", percent * amount // 100)


def _integer_sums() -> Iterator[Fact]:
    for a in range(-10, 11):
        for b in range(-10, 11):
            if min(a, b) < 0 and a and b:
                yield _fact(f"{_shown(a)} + {_after(b)}", a + b)


def _integer_differences() -> Iterator[Fact]:
    for a in range(-10, 11):
        for b in range(-10, 11):
            if a and b and (min(a, b) < 0 or a < b):
                yield _fact(f"{_shown(a)} − {_after(b)}", a - b)


def _integer_products() -> Iterator[Fact]:
    for a in range(-10, 11):
        for b in range(-10, 11):
            if min(a, b) < 0 and abs(a) > 1 and abs(b) > 1:
                yield _fact(f"{_shown(a)} × {_after(b)}", a * b)
                yield _fact(f"{_shown(a * b)} ÷ {_after(a)}", b)


METRIC = (("cm", "mm", 10), ("m", "cm", 100), ("km", "m", 1000), ("kg", "g", 1000), ("L", "mL", 1000))
TIME = (("minutes", "seconds", 60), ("hours", "minutes", 60), ("days", "hours", 24), ("weeks", "days", 7))
CUSTOMARY = (
    ("feet", "inches", 12),
    ("yards", "feet", 3),
    ("yards", "inches", 36),
    ("pounds", "ounces", 16),
    ("pints", "cups", 2),
    ("quarts", "pints", 2),
    ("gallons", "quarts", 4),
)
"""How many of the second unit make one of the first: NIST SP 811 and the SI brochure; exact by definition."""


def _measures(units: Sequence[tuple[str, str, int]], *halves: int) -> Iterator[Fact]:
    """Whole amounts both ways, and halves of those that are wanted ("1.5 m in cm")."""
    for large, small, times in units:
        for n in (1, 2, 3, 4, 5, 6, 8, 10):
            yield _fact(f"{n} {_one(large) if n == 1 else large} in {small}", n * times)
            yield _fact(f"{n * times} {small} in {large}", n)
        for n in halves:
            if n * times % 2 == 0:
                yield _fact(f"{_written(Fraction(n, 2))} {large} in {small}", n * times // 2)


def _one(unit: str) -> str:
    """The name of a single unit."""
    return {"feet": "foot", "inches": "inch"}.get(unit, unit.removesuffix("s") if len(unit) > 2 else unit)


def _stage(
    id_: str, family: str, holds: str, needs: tuple[str, ...], facts: Iterator[Fact], after: str | None = None
) -> Stage:
    unique = {fact.id: fact for fact in facts}
    return Stage(id_, family, holds, needs, tuple(unique.values()), LessonId(after) if after else None)


FRACTIONS = "fractions, decimals, percents"
INTEGERS = "integer facts"
MEASURES = "measure facts"

STAGES: dict[str, Stage] = {
    stage.id: stage
    for stage in (
        _stage("add-12", "addition facts", "sums with both numbers 1 to 12", (), _sums()),
        _stage(
            "sub-12", "subtraction facts", "differences that undo those sums", ("add-12",), _differences()
        ),
        _stage("mul-2-5-10", "multiplication facts", "times 2, 5 and 10", (), _products(2, 5, 10)),
        _stage("mul-3-4", "multiplication facts", "times 3 and 4", ("mul-2-5-10",), _products(3, 4)),
        _stage("mul-6-9", "multiplication facts", "times 6 and 9", ("mul-3-4",), _products(6, 9)),
        _stage("mul-7-8", "multiplication facts", "times 7 and 8", ("mul-6-9",), _products(7, 8)),
        _stage(
            "div-12",
            "division facts",
            "quotients that undo products to 12 times 12",
            ("mul-7-8",),
            _quotients(),
        ),
        _stage("mul-11-12", "multiplication facts", "times 11 and 12", ("mul-7-8",), _products(11, 12)),
        _stage("half-double", "doubles and halves", "to 100", ("add-12",), _halves_and_doubles()),
        _stage("tens-scale", "tens and hundreds", "facts with zeros", ("mul-7-8",), _tens_and_hundreds()),
        _stage(
            "decimal-shifts",
            "tens and hundreds",
            "times and divided by 10, 100, 1000 with decimals",
            ("tens-scale",),
            _decimal_shifts(),
            "multiplying-decimals",
        ),
        _stage(
            "int-add",
            INTEGERS,
            "sums from −10 to 10",
            ("add-12", "sub-12"),
            _integer_sums(),
            "adding-integers",
        ),
        _stage(
            "int-sub",
            INTEGERS,
            "differences from −10 to 10",
            ("int-add",),
            _integer_differences(),
            "subtracting-integers",
        ),
        _stage(
            "int-mul",
            INTEGERS,
            "products and quotients with signs",
            ("div-12", "int-add"),
            _integer_products(),
            "dividing-integers",
        ),
        _stage(
            "measure-metric",
            MEASURES,
            "mm, cm, m, km; g, kg; mL, L",
            ("tens-scale",),
            _measures(METRIC, 1, 3, 5, 7, 9),
            "converting-units-of-measure",
        ),
        _stage(
            "measure-time",
            MEASURES,
            "seconds, minutes, hours, days, weeks",
            ("mul-6-9",),
            _measures(TIME, 1, 3, 5),
            "converting-units-of-measure",
        ),
        _stage(
            "measure-customary",
            MEASURES,
            "inch, foot, yard, mile; ounce, pound; cup, pint, quart, gallon",
            ("mul-11-12",),
            _measures(CUSTOMARY, 1, 3, 5),
            "converting-units-of-measure",
        ),
        _stage("squares-12", "squares", "of 1 to 12", ("mul-11-12",), _squares(*range(1, 13)), "exponents"),
        _stage(
            "squares-15-25",
            "squares",
            "of 1 to 15, 20, 25 and 30",
            ("squares-12",),
            _squares(*range(6, 16), 20, 25, 30),
            "exponents",
        ),
        _stage("powers", "powers", "of 2 and of ten; cubes", ("mul-7-8",), _powers(), "exponents"),
        _stage(
            "fdp-1",
            FRACTIONS,
            "halves, quarters, fifths, tenths",
            ("div-12",),
            _same_amounts(*_parts(2, 4, 5, 10)),
            "percents-decimals-fractions",
        ),
        _stage(
            "fdp-2",
            FRACTIONS,
            "eighths and twentieths",
            ("fdp-1",),
            _same_amounts(*_parts(8, 20)),
            "terminating-and-repeating-decimals",
        ),
        _stage(
            "percent-of",
            "percents of amounts",
            "1, 5, 10, 20, 25, 50, 75 percent of round amounts",
            ("fdp-1",),
            _percents_of(),
            "percent-of-a-number",
        ),
        _stage(
            "roots",
            "roots",
            "square roots of squares to 225",
            ("squares-15-25",),
            _roots(),
            "square-roots-and-cube-roots",
        ),
    )
}
"""In the order in which they are met."""
