"""The form solutions-set: all solutions of an equation."""

from __future__ import annotations

import re
from fractions import Fraction
from functools import lru_cache

from bot.answers.amounts import read_amounts
from bot.answers.closeness import nearness
from bot.answers.expected import Expected, expected_of
from bot.answers.expressions import _difference, expression_text
from bot.answers.finding import Finding
from bot.answers.key import Key
from bot.answers.marks import plain_marks
from bot.answers.no_or_all import special
from bot.answers.shapes import WORKED_OUT, shape
from bot.answers.solutions import IS, NEXT, ORDER, order_typed
from bot.answers.spoken import HAS_WORDS, spoken
from bot.maths import Unreadable, normal
from bot.maths.algebra import has_just_roots
from bot.maths.exact import Sum, times
from bot.maths.patterns import regex
from bot.maths.read import read_normal
from bot.maths.tree import Add, Equation, Subtract, Tree
from bot.vocabulary import Verdict

RIGHT, FORM, WRONG = Verdict.RIGHT, Verdict.FORM, Verdict.WRONG

_PLUS_MINUS = regex(
    r"(?:\+ ?/ ?-|\+ ?, ?-|\+-|-\+|\+ ?or ?-|∓|\bplus (?:or|and|/) minus\b|\bpositive (?:and|"
    r"or) negative\b) ?(?=[\d(√.])"
)
_LABEL = regex(r"(?<![a-z])[a-z](?:_? ?[12])? ?= ?(?=[-+±\d.√π(a-z])")
_SEPARATOR = regex(
    r" ?(?:[,;\n]|\band also\b|\bor\b|\band\b|&|\balso\b|(?<=\d) o (?=-?\d)|(?<=\d) [yu] (?=-?\d)) ?"
)
_TWO_NUMBERS = regex(r"^(-?\d*\.?\d+) (-?\d*\.?\d+)$")
_BARS_EQUAL = regex(r"^(?:\||abs\()([^|()=]*[a-z][^|()=]*)(?:\||\)) ?= ?(\d[\d./]*)$")
_SPACE_MINUS = regex(r"(?<=[\d)]) (?=-\d)")


@lru_cache(maxsize=1024)
def _wanted_set(answer: str) -> tuple[str | None, tuple[Expected, ...]]:
    text = normal(answer).lower()
    if special(text) in ("none", "all"):
        return special(text), ()
    text = _LABEL.sub("", text.strip("{}"))
    values: list[Expected] = []
    for piece in _SEPARATOR.split(text):
        for one in _both_signs(piece.strip()):
            values.append(expected_of(one, None))
    return None, tuple(values)


def _both_signs(piece: str) -> list[str]:
    if "±" not in piece:
        return [piece]
    return [piece.replace("±", "+").lstrip("+ "), piece.replace("±", "-")]


def grade_solutions(text: str, key: Key) -> Finding:
    """All solutions, in any order, repeats harmless. Raises Unreadable."""
    kind, wants = _wanted_set(key.answer)
    found = special(text)
    if found is not None:
        return Finding(RIGHT if found == kind else WRONG)
    if ORDER.search(text):
        return order_typed(text)
    text = re.sub(r"^[a-z] ?(?:∈|=) ?(?=\{)", "", text.strip(" .!?:")).strip("{}[] ")
    if re.search(r"(?:[,;]|\bor|\band|\bo|\by)$", text):
        raise Unreadable("unfinished")
    text = _PLUS_MINUS.sub("±", text)
    text = spoken(IS.sub(" = ", text)) if HAS_WORDS.search(text) else text
    text = plain_marks(text, separate=True)
    text = _SPACE_MINUS.sub(", ", text)
    text = NEXT.sub(", ", text)
    if len(wants) == 2 and (two := _TWO_NUMBERS.match(text)) is not None:
        text = f"{two.group(1)}, {two.group(2)}"
    if (bars := _BARS_EQUAL.match(text)) is not None:
        inside, size = bars.groups()
        return _unsolved_set([f"{inside} - {size} = 0", f"{inside} + {size} = 0"], wants)
    pieces = [piece.strip() for piece in _SEPARATOR.split(text) if piece.strip()]
    if not pieces or len(pieces) > 30:
        raise Unreadable("no-number" if not pieces else "several-answers")
    unsolved = [piece for piece in pieces if "=" in piece and not _LABEL.match(piece)]
    if unsolved and len(unsolved) == len(pieces):
        return _unsolved_set(pieces, wants)
    pieces = [_LABEL.sub("", piece) for piece in pieces if piece not in unsolved]
    return _compare_sets([one for piece in pieces for one in _both_signs(piece)], wants, key, "±" in text)


def _unsolved_set(pieces: list[str], wants: tuple[Expected, ...]) -> Finding:
    product: Sum = {(): 1}
    for piece in pieces:
        tree = read_normal(expression_text(piece, frozenset("x")), "reply")
        if not isinstance(tree, Equation) or len(tree.sides) != 2:
            raise Unreadable("sign-misplaced")
        product = times(product, _difference(tree))
    letters = {atom for term in product for atom, _ in term}
    roots = frozenset(want.number for want in wants if want.number is not None)
    if len(letters) == 1 and len(roots) == len(wants) and has_just_roots(product, letters.pop(), roots):
        return Finding(FORM, "solve")
    return Finding(WRONG)


def _compare_sets(pieces: list[str], wants: tuple[Expected, ...], key: Key, both_signs: bool) -> Finding:
    missing = set(range(len(wants)))
    reason = ""
    wrong = False
    for piece in pieces:
        if "=" in piece:
            piece = piece.rpartition("=")[2].strip()
        piece = piece.replace(" ", "", 1) if piece.startswith(("- ", "+ ")) else piece
        amounts = read_amounts(
            piece.strip("()") if piece.count("(") != piece.count(")") else piece, None, "number"
        )
        for amount in amounts:
            for i, want in enumerate(wants):
                near = nearness(amount.value, amount.tree, want, Fraction(1))
                if near is not None:
                    missing.discard(i)
                    reason = reason or near
                    if shape(amount.tree) not in WORKED_OUT and not (
                        both_signs and _plain_terms(amount.tree)
                    ):
                        reason = reason or "work-out"
                    break
            else:
                wrong = True
    if wrong or missing:
        return Finding(WRONG)
    return Finding(FORM, reason) if reason else Finding(RIGHT)


def _plain_terms(tree: Tree) -> bool:
    """Whether a sum, as one of `2 ± 3` is, holds nothing else to work out."""
    if isinstance(tree, (Add, Subtract)):
        return shape(tree.left) in WORKED_OUT and shape(tree.right) in WORKED_OUT
    return False
