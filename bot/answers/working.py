"""The working, line by line: which line doesn't follow from the one before, and what probably happened."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

from bot.answers.around import small, trimmed, without_reason
from bot.answers.closeness import half_up
from bot.answers.expressions import expression_text
from bot.answers.faults import faulty, faulty_relations, first_number, one_number_changed
from bot.answers.shapes import shown_places
from bot.answers.solutions import special
from bot.answers.spoken import sign_words, spoken
from bot.answers.writing import ungrouped
from bot.maths import Tree, Undefined, Unreadable, letters_in, normal
from bot.maths.algebra import (
    EVERYTHING,
    Interval,
    coefficients,
    equivalent,
    lifted,
    proportional,
    where,
    without_root,
)
from bot.maths.exact import ONE, Beyond, Sum, approximate, normal_form, plus, times
from bot.maths.read import read_normal
from bot.maths.tree import Divide, Equation, Inequality, Letter, every

MOST_LINES = 60


@dataclass(frozen=True, slots=True)
class Looked:
    """What came of looking over the working.

    `first_wrong` counts from 0, None if every line follows. `unsure` where a line before it, or the end,
    could not be decided; then nobody is accused. `fine` are the lines that surely follow.
    """

    first_wrong: int | None
    misstep: str | None
    unsure: bool
    fine: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Roots:
    """The solutions of an equation in one letter: some fractions, or every number."""

    values: frozenset[Fraction]
    every: bool = False


Meaning: TypeAlias = Roots | Interval | Sum


@dataclass(frozen=True, slots=True)
class Line:
    """One line read: its statements (more than one: joined by *or*), or the sides of a chain."""

    trees: tuple[Tree, ...]
    goes_on: bool
    nearly: bool = False


class _Unsure(Exception):
    """A line that can't be decided."""


class _Bad(Exception):
    """A line that doesn't follow, and the misstep if one is plain."""

    def __init__(self, misstep: str | None = None) -> None:
        super().__init__(misstep)
        self.misstep = misstep


def first_wrong_line(lines: Sequence[str], given: str) -> int | None:
    """The first line that doesn't follow from the one before, counted from 0; None if all do or nobody can say."""
    return look_over(lines, given).first_wrong


def look_over(lines: Sequence[str], given: str) -> Looked:
    """Judge each line against the one before; the first against `given`. Never raises."""
    fine: list[int] = []
    unsure = False
    start = _read_line(given, None)
    if start is None or not start.trees:
        return Looked(None, None, True, ())
    relation = isinstance(start.trees[0], (Equation, Inequality))
    work = _Work(start, relation)
    for n, text in enumerate(lines[:MOST_LINES]):
        try:
            work.take(text)
            fine.append(n)
        except _Bad as bad:
            return Looked(n, bad.misstep, unsure, tuple(fine))
        except (_Unsure, Unreadable, Undefined, Beyond, RecursionError):
            unsure = True
            work.lost()
    if len(lines) > MOST_LINES:
        return Looked(None, None, True, tuple(fine))
    if not unsure and fine and work.ends_elsewhere():
        return Looked(fine[-1], work.why_elsewhere(), False, tuple(fine[:-1]))
    return Looked(None, None, unsure, tuple(fine))


# Reading a line ---------------------------------------------------------------------------------------------

_RELATION = re.compile(r"[=<>≤≥≈]")
_PERCENT_CHANGE = re.compile(r"([\d.]+) (increased|decreased|raised|reduced|more|less|off) by ([\d./ ]+)%")
_OF = re.compile(r"(?<=[\d%)]) (?:of|de) (?=[\d(])")
_WORDS = re.compile(
    r"[a-z]{2,}(?:[ ,]+(?:[a-z]{2,}|[ai]\b))*|(?<![a-z\d]) ?\bi\b(?= [a-z]{2})|^a (?=[a-z]{2})"
)
_NOTE = re.compile(
    r"^(?:[-+*/÷:] ?\(?-?[\d./]*[a-z]?\)?[ ,|]*)+$|^[|: ]*[-+*/÷:] ?[\d./]+[a-z]?(?: [-+*/÷:] ?[\d./]+[a-z]?)*[| ]*$"
)
_KEPT = frozenset(("or", "and", "sqrt", "abs"))


def _read_line(text: str, before: Line | None) -> Line | None:
    """What a line states; None for words alone and notes of what is done. Raises Unreadable."""
    text = small(normal(text))
    text = without_reason(text)
    text = trimmed(text.replace("->", " so ").replace("→", " so ").replace("⇒", " so "))
    goes_on = text.startswith("=") or text.startswith("≈")
    piece = _statement(text, before)
    if piece is None:
        return None
    nearly = "≈" in piece
    piece = piece.replace("≈", "=").strip("= ") if goes_on else piece.replace("≈", "=")
    trees = []
    for option in re.split(r" ?\bor\b ?|(?<=\d), ?(?=[a-z] ?=)", piece):
        if not option.strip():
            raise Unreadable("unfinished")
        option = re.sub(r"\+ ?/ ?-", "±", option)
        for one in (option.replace("±", "+"), option.replace("±", "-")) if "±" in option else (option,):
            trees.append(_tree(one))
    return Line(tuple(trees), goes_on, nearly)


def _tree(text: str) -> Tree:
    if re.search(r"\band\b", text):
        raise Unreadable("no-maths")
    letters = frozenset("abcdefghijklmnopqrstuvwxyz") if len(text) < 40 else frozenset("x")
    return read_normal(expression_text(text.strip(" ,"), letters), "reply")


def _statement(text: str, before: Line | None) -> str | None:
    """The mathematics of a line with words."""
    if (found := _PERCENT_CHANGE.search(text)) is not None:
        sign = "+" if found.group(2) in ("increased", "raised", "more") else "-"
        text = f"{text[: found.start()]}{found.group(1)}*(1{sign}{found.group(3)}%){text[found.end() :]}"
    text = _OF.sub(" * ", text)
    if re.search(r"[a-z]{2}", text):
        if not re.search(r"\d", text) and not _RELATION.search(text):
            return None
        head, colon, tail = text.rpartition(":")
        if colon and re.search(r"[a-z]{2}", head) and re.search(r"\d", tail):
            text = tail.strip()
        if re.search(r"[a-z]{2}", text):
            text = _among_words(text)
            if text is None:
                return None
    if not re.search(r"[\da-z]", text):
        return None
    if not _RELATION.search(text) and _NOTE.match(text) and (before is None or _is_note(text, before)):
        return None
    return text


def _is_note(text: str, before: Line) -> bool:
    """`-3   -3` and `÷2` under an equation; in an expression a line may begin with a minus."""
    if isinstance(before.trees[0], (Equation, Inequality)):
        return True
    return text[0] in "*/÷:" or len(set(text.split())) == 1 and len(text.split()) > 1


def _among_words(text: str) -> str | None:
    """The last piece of mathematics between words, one with a sign of relation before one without."""
    if any(word in sign_words() for word in re.findall(r"[a-z]{2,}", text)):
        text = spoken(
            re.sub(r"\bis\b(?= [\d-])", "=", text) if re.search(r"\b[a-z] is [\d-]", text) else text
        )
    text = re.sub(r"(?<![a-z\d])[ai] (?=[a-z]{2})|(?<=[a-z]{2}) [ai](?= [a-z]{2}|$)", " ", text)
    text = re.sub(r"\s+", " ", text).strip()
    pieces = []
    place = 0
    for found in re.finditer(r"[a-z]{2,}", text):
        if found.group() in _KEPT or _is_product(found.group()):
            continue
        pieces.append(text[place : found.start()])
        place = found.end()
    pieces.append(text[place:])
    pieces = [
        re.sub(r"^(?:or|and)\b|\b(?:or|and)$", "", piece.strip(" ,.;:()!?'\"-")).strip()
        if piece.count("(") != piece.count(")")
        else re.sub(r"^(?:or|and)\b|\b(?:or|and)$", "", piece.strip(" ,.;:!?'\"")).strip()
        for piece in pieces
    ]
    related = [
        piece for piece in pieces if _RELATION.search(piece) and re.search(r"[\da-z]", piece.strip("= "))
    ]
    if related:
        return related[-1]
    plain = [piece for piece in pieces if re.search(r"\d", piece)]
    if (
        plain
        and re.fullmatch(r"[-+*/÷ ]*[\d./]+[a-z]?", plain[-1])
        and re.search(r"\b(?:both|each|side|sides|divide|subtract|add|multiply|times|from|lados)\b", text)
    ):
        return None  # what is done, not what comes out
    return plain[-1] if plain else None


def _is_product(word: str) -> bool:
    return len(word) == 2 and word in ("ab", "bh", "lw", "xy", "rt", "mn", "pq", "ac", "bc", "xz", "yz")


# Meaning of a statement -----------------------------------------------------------------------------------


def _difference(tree: Equation) -> Sum:
    left, right = normal_form(tree.sides[0]), normal_form(tree.sides[-1])
    return lifted(plus(times(left.top, right.bottom), times(right.top, left.bottom), -1))


def _roots(terms: Sum, letter: str) -> Roots | None:
    """The solutions of a sum in one letter set equal to 0; None where they are not all fractions."""
    numbers = coefficients(terms, letter)
    if numbers is None:
        return None
    if not numbers:
        return Roots(frozenset(), every=True)
    found: set[Fraction] = set()
    while len(numbers) > 2:
        root = _one_root(numbers)
        if root is None:
            if len(numbers) == 3 and numbers[1] ** 2 - 4 * numbers[0] * numbers[2] < 0:
                return Roots(frozenset(found))
            return None
        found.add(root)
        numbers, _ = without_root(numbers, root)
    if len(numbers) == 2:
        found.add(-numbers[0] / numbers[1])
    return Roots(frozenset(found))


def _one_root(numbers: list[Fraction]) -> Fraction | None:
    """A fraction at which the sum is 0, by the rational root rule; bounded."""
    if numbers[0] == 0:
        return Fraction(0)
    bottom = 1
    for c in numbers:
        bottom = bottom * c.denominator // _gcd(bottom, c.denominator)
    first, last = abs(int(numbers[0] * bottom)), abs(int(numbers[-1] * bottom))
    if first > 20_000 or last > 2_000:
        return None
    for p in _divisors(first):
        for q in _divisors(last):
            for root in (Fraction(p, q), Fraction(-p, q)):
                if sum(c * root**n for n, c in enumerate(numbers)) == 0:
                    return root
    return None


def _gcd(a: int, b: int) -> int:
    while b:
        a, b = b, a % b
    return a


def _divisors(n: int) -> list[int]:
    return [d for d in range(1, min(n, 20_000) + 1) if n % d == 0]


def _interval(tree: Inequality) -> Interval | None:
    letters = letters_in(tree)
    if len(letters) != 1:
        return None
    found = EVERYTHING
    forms = [normal_form(side) for side in tree.sides]
    for left, sign, right in zip(forms, tree.signs, forms[1:], strict=False):
        one = where(left, sign, right, next(iter(letters)))
        if one is None:
            return None
        found = found.and_also(one)
    return found


def _meaning(trees: tuple[Tree, ...]) -> tuple[str, Roots | Interval] | None:
    """The letter and the solutions of statements in one letter; None where that can't be said."""
    if len(trees) == 1 and isinstance(trees[0], Inequality):
        interval = _interval(trees[0])
        return None if interval is None else (next(iter(letters_in(trees[0]))), interval)
    values: set[Fraction] = set()
    all_numbers = False
    letters: set[str] = set()
    for tree in trees:
        if not isinstance(tree, Equation):
            return None
        terms = _difference(tree)
        own = {atom for term in terms for atom, _ in term} | letters_in(tree)
        letters |= own
        if len(letters) > 1:
            return None
        roots = _roots(terms, next(iter(own), "x"))
        if roots is None:
            return None
        values |= roots.values
        all_numbers = all_numbers or roots.every
    return next(iter(letters), "x"), Roots(frozenset(values), all_numbers)


# The work as a whole ----------------------------------------------------------------------------------------


class _Work:
    """The line that the next one is compared with, and how to compare."""

    def __init__(self, given: Line, relation: bool) -> None:
        self.given = given
        self.before: Line | None = given
        self.relation = relation
        self.unknown = bool(letters_in(given.trees[0])) if not relation else True
        self.last_value: Tree | None = None
        self.last_line: Line | None = None

    def lost(self) -> None:
        """A line could not be read: the next one is not compared with anything."""
        self.before = None

    def take(self, text: str) -> None:
        """Take a line; raises _Bad, _Unsure, or what reading raises."""
        line = _read_line(text, self.given)
        if line is None:
            if (
                self.relation
                and self.before is not None
                and (words := special(small(normal(text)))) is not None
            ):
                self.concluded(words)
            return
        if self.relation:
            self.relation_line(line)
        else:
            self.expression_line(line)

    def concluded(self, words: str) -> None:
        """`no solution`, `all numbers`."""
        assert self.before is not None
        meaning = _meaning(self.before.trees)
        if meaning is None or not isinstance(meaning[1], Roots) or words == "counted":
            raise _Unsure
        roots = meaning[1]
        if (words == "all") != roots.every or (words == "none" and roots.values):
            raise _Bad

    # Expressions -------------------------------------------------------------------------------------------

    def expression_line(self, line: Line) -> None:
        if len(line.trees) != 1:
            raise _Unsure
        tree = line.trees[0]
        if isinstance(tree, Inequality):
            raise _Unsure
        sides = list(tree.sides) if isinstance(tree, Equation) else [tree]
        if (
            len(sides) == 2
            and isinstance(sides[0], Letter)
            and sides[0].name not in letters_in(self.given.trees[0])
        ):
            sides = sides[1:]  # A = 1/2 b h, y = ...
        self.chain(sides, line.nearly)
        if (
            line.goes_on
            or len(sides) == 1
            or (self.before is not None and self.same(self.value_before(), sides[0]))
        ):
            if self.before is not None and not self.same_or_nearly(
                self.value_before(), sides[0], line.nearly and len(sides) == 1
            ):
                raise _Bad(why_expression(self.value_before(), sides[0]))
            self.before = Line((sides[-1],), False)
        elif any(letters_in(side) for side in sides):
            raise _Bad(why_expression(self.value_before(), sides[0])) if self.before is not None else _Unsure
        self.last_value = sides[-1]
        self.last_line = line

    def value_before(self) -> Tree:
        assert self.before is not None
        return self.before.trees[0]

    def same(self, one: Tree, other: Tree) -> bool:
        return equivalent(one, other)

    def same_or_nearly(self, one: Tree, other: Tree, nearly: bool) -> bool:
        return equivalent(one, other) or (nearly and _rounds_to(one, other))

    def chain(self, sides: list[Tree], nearly: bool) -> None:
        """Every equals sign of a chain has to hold."""
        for one, other in zip(sides, sides[1:], strict=False):
            if not self.same_or_nearly(one, other, nearly):
                runs_on = first_number(other)
                if runs_on is not None and len(sides) > 2 and _value(one) == runs_on:
                    raise _Bad("run-on-equals")
                raise _Bad(why_expression(one, other))

    def ends_elsewhere(self) -> bool:
        """Whether true side calculations end at another number than the question's."""
        if self.relation or self.unknown or self.last_value is None or self.before is None:
            return False
        return not self.same(self.given.trees[0], self.last_value) and not (
            self.last_line is not None and self.last_line.nearly
        )

    def why_elsewhere(self) -> str | None:
        assert self.last_value is not None
        return why_expression(self.given.trees[0], self.last_value)

    # Equations and inequalities -------------------------------------------------------------------------------

    def relation_line(self, line: Line) -> None:
        trees = line.trees
        if len(trees) == 1 and not isinstance(trees[0], (Equation, Inequality)):
            self.bare_line(trees[0], line)
            return
        if not any(letters_in(tree) for tree in trees):
            self.side_calculation(line)
            return
        if len(trees) == 1 and isinstance(trees[0], Equation) and len(trees[0].sides) > 2:
            sides = list(trees[0].sides)
            with_letters = [side for side in sides if letters_in(side)]
            without = [side for side in sides if not letters_in(side)]
            if len(with_letters) == 1 and with_letters[0] == sides[0]:
                self.chain(without, line.nearly)
                trees = (Equation((sides[0], sides[-1])),)
            else:
                raise _Unsure
        if self.before is None:
            self.before = Line(trees, False)
            raise _Unsure
        decided = _same_solutions(self.before.trees, trees, line.nearly)
        if decided is None:
            self.before = Line(trees, False)
            raise _Unsure
        if not decided:
            raise _Bad(why_relation(self.before.trees, trees))
        self.before = Line(trees, False)

    def bare_line(self, tree: Tree, line: Line) -> None:
        """A lone number after an equation: the answer."""
        if self.before is None or letters_in(tree):
            raise _Unsure
        meaning = _meaning(self.before.trees)
        number = _value(tree)
        if meaning is None or number is None or not isinstance(meaning[1], Roots):
            raise _Unsure
        if meaning[1].every or meaning[1].values == {number}:
            return
        if len(meaning[1].values) > 1 and number in meaning[1].values:
            raise _Unsure
        raise _Bad(why_relation(self.before.trees, (Equation((Letter(meaning[0]), tree)),)))

    def side_calculation(self, line: Line) -> None:
        """A statement without the unknown: fine if it is true, or if the equation has no solution."""
        for tree in line.trees:
            if isinstance(tree, Equation):
                try:
                    self.chain(list(tree.sides), line.nearly)
                except _Bad:
                    meaning = _meaning(self.before.trees) if self.before is not None else None
                    if meaning is not None and meaning[1] == Roots(frozenset()):
                        return
                    raise
            elif isinstance(tree, Inequality):
                if _interval_of_numbers(tree) is False:
                    raise _Bad


def _interval_of_numbers(tree: Inequality) -> bool | None:
    from bot.maths import holds

    try:
        return holds(tree)
    except Undefined:
        return None


def _value(tree: Tree) -> Fraction | None:
    try:
        return normal_form(tree).rational()
    except (Undefined, Beyond):
        return None


def _rounds_to(exact: Tree, rounded: Tree) -> bool:
    places = shown_places(rounded)
    if places is None:
        return False
    try:
        return half_up(approximate(normal_form(exact)), places) == _value(rounded)
    except (Undefined, Beyond):
        return False


def _same_solutions(before: tuple[Tree, ...], after: tuple[Tree, ...], nearly: bool) -> bool | None:
    """Whether two statements have the same solutions; None where that can't be decided."""
    one, other = _meaning(before), _meaning(after)
    if one is not None and other is not None:
        if isinstance(one[1], Roots) and isinstance(other[1], Roots):
            if one[0] != other[0] and letters_in(after[0]) and letters_in(before[0]):
                return None
            if nearly and len(one[1].values) == len(other[1].values) == 1:
                tree = after[0]
                if isinstance(tree, Equation) and shown_places(tree.sides[-1]) is not None:
                    places = shown_places(tree.sides[-1]) or 0
                    return half_up(next(iter(one[1].values)), places) == next(iter(other[1].values))
            return one[1] == other[1]
        return one[1] == other[1]
    if len(before) == len(after) == 1:
        first, second = before[0], after[0]
        if isinstance(first, Equation) and isinstance(second, Equation):
            d1, d2 = _difference(first), _difference(second)
            if proportional(d1, d2):
                return True
            linear = all(sum(n for _, n in term) <= 2 for term in (*d1, *d2))
            if one is None and other is not None and isinstance(other[1], Roots):
                letters = letters_in(first)
                if len(letters) == 1 and letters == letters_in(second):
                    return _root_by_root(d1, next(iter(letters)), other[1])
            return (
                False
                if linear and letters_in(first) == letters_in(second) and len(letters_in(first)) > 1
                else None
            )
    return None


def _root_by_root(terms: Sum, letter: str, roots: Roots) -> bool | None:
    """Solutions that are no fractions on one side: decided only where a root surely fails."""
    numbers = coefficients(terms, letter)
    if numbers is None:
        return None
    for root in roots.values:
        if sum(c * root**n for n, c in enumerate(numbers)) != 0:
            return False
    return None


# What happened ----------------------------------------------------------------------------------------------


def why_expression(before: Tree, after: Tree) -> str | None:
    """The misstep that turns one expression into the other, where one explains it."""
    try:
        target = normal_form(after)
    except (Undefined, Beyond):
        return None
    for name, tree in faulty(before):
        try:
            if normal_form(tree).same_as(target):
                return name
        except (Undefined, Beyond, ArithmeticError):
            continue
    if any(node for node in every(before) if type(node).__name__ == "Root"):
        return None
    if _as_decimal_digits(before, after):
        return "fraction-as-decimal"
    if one_number_changed(before, after):
        return "copied-wrong"
    if not letters_in(before):
        typed, right = target.rational(), _value(before)
        if typed is None or right is None:
            return None
        return "sign-lost" if typed == -right != 0 else "arithmetic"
    try:
        right_form = normal_form(before)
    except (Undefined, Beyond):
        return None
    if target.bottom is ONE and right_form.bottom is ONE and target.top.keys() == right_form.top.keys():
        off = [t for t in target.top if target.top[t] != right_form.top[t]]
        if len(off) == 1:
            return "sign-lost" if target.top[off[0]] == -right_form.top[off[0]] else "arithmetic"
    return None


def _as_decimal_digits(before: Tree, after: Tree) -> bool:
    """3/4 as 0.34 or 3.4."""
    before = ungrouped(before)
    if not isinstance(before, Divide) or shown_places(after) is None:
        return False
    top, bottom = _value(before.left), _value(before.right)
    typed = _value(after)
    if top is None or bottom is None or typed is None or top.denominator != 1 or bottom.denominator != 1:
        return False
    return typed in (Fraction(f"{top}.{abs(bottom)}"), Fraction(f"0.{abs(top)}{abs(bottom)}"))


def why_relation(before: tuple[Tree, ...], after: tuple[Tree, ...]) -> str | None:
    """The misstep between two equations or inequalities, where one explains the change."""
    try:
        return _why_relation(before, after)
    except (Undefined, Beyond, ArithmeticError, Unreadable):
        return None


def _why_relation(before: tuple[Tree, ...], after: tuple[Tree, ...]) -> str | None:
    one, other = _meaning(before), _meaning(after)
    if one and other and isinstance(one[1], Roots) and isinstance(other[1], Roots):
        lost = one[1].values - other[1].values
        if other[1].values and other[1].values < one[1].values:
            return "divided-by-unknown" if lost == {0} else "root-lost"
    if len(before) != 1 or len(after) != 1:
        return None
    first, second = before[0], after[0]
    if isinstance(first, Inequality) and isinstance(second, Inequality):
        turned = _turned(first, second)
        if turned is not None:
            return turned
    if isinstance(first, Equation) and isinstance(second, Equation) and len(letters_in(first)) > 1:
        target = _difference(second)
        for name, tree in faulty_relations(first):
            if isinstance(tree, Equation) and proportional(_difference(tree), target):
                return name
        return None
    if other is None or other[1] == Roots(frozenset()):
        return None
    if one_number_changed(first, second):
        return "copied-wrong"
    negated = (
        one is not None
        and isinstance(one[1], Roots)
        and isinstance(other[1], Roots)
        and other[1].values == {-v for v in one[1].values}
    )
    found: str | None = None
    for name, tree in faulty_relations(first):
        try:
            meaning = _meaning((tree,))
        except (Undefined, Beyond):
            continue
        if meaning is not None and meaning[1] == other[1]:
            found = name
            break
    if negated and found not in ("left-to-right", "minus-not-distributed", "first-term-only"):
        return "sign-lost"
    if found is not None:
        return found
    return "arithmetic" if _off_by_arithmetic(first, second, one, other) else None


def _turned(first: Inequality, second: Inequality) -> str | None:
    """The sign of order not turned, or turned without need."""
    if len(first.signs) != 1 or len(second.signs) != 1:
        return None
    one, other = _interval(first), _interval(second)
    if one is None or other is None:
        return None
    ends = {e for e in (one.low, one.high) if e is not None}
    if ends != {e for e in (other.low, other.high) if e is not None} or one == other:
        return None
    if (one.low is None) == (other.low is None):
        return None
    letter = next(iter(letters_in(first)))
    before, after = (_slope(tree, letter) for tree in (first, second))
    return "inequality-not-turned" if before * after < 0 else "inequality-turned-needlessly"


def _slope(tree: Inequality, letter: str) -> Fraction:
    left, right = normal_form(tree.sides[0]), normal_form(tree.sides[1])
    numbers = coefficients(plus(left.top, right.top, -1), letter) or []
    return numbers[1] if len(numbers) > 1 else Fraction(0)


def _off_by_arithmetic(
    first: Tree, second: Tree, one: tuple[str, Roots | Interval] | None, other: tuple[str, Roots | Interval]
) -> bool:
    """A solution close to the right one after a step that looks right: the calculation went wrong."""
    if one is None or not isinstance(one[1], Roots) or not isinstance(other[1], Roots):
        return False
    if len(one[1].values) != 1 or len(other[1].values) != 1 or not isinstance(second, Equation):
        return False
    right, typed = next(iter(one[1].values)), next(iter(other[1].values))
    return abs(right - typed) <= max(2, abs(right) / 4)
