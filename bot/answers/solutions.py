"""The form equation-solution: one unknown, or a formula solved for a letter."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import lru_cache

from bot.answers.amounts import read_amounts
from bot.answers.around import alternatives
from bot.answers.expected import BadKey, Expected, expected_of
from bot.answers.expressions import _difference, expression_text, same
from bot.answers.finding import Finding
from bot.answers.key import Key
from bot.answers.marks import digits_for_letters, plain_marks
from bot.answers.no_or_all import special
from bot.answers.numbers import _sides
from bot.answers.spoken import HAS_WORDS, spoken
from bot.answers.units import is_unit
from bot.maths import Undefined, Unreadable, letters_in, normal
from bot.maths.algebra import has_just_roots, proportional
from bot.maths.exact import Beyond, Sum
from bot.maths.patterns import regex
from bot.maths.read import read_normal
from bot.maths.tree import Equation, Letter
from bot.vocabulary import Verdict

RIGHT, FORM, WRONG = Verdict.RIGHT, Verdict.FORM, Verdict.WRONG

# One solution ----------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Solution:
    special: str | None
    letter: str | None
    want: Expected | None


@lru_cache(maxsize=2048)
def _wanted(answer: str, unit: str | None) -> _Solution:
    text = normal(answer).lower()
    found = special(text)
    if found in ("none", "all") and not re.search(r"\d", text):
        return _Solution(found, None, None)
    left, equals, right = text.partition("=")
    if not equals:
        return _Solution(None, None, expected_of(text, unit))
    if len(left.strip()) == 1 and left.strip().isalpha():
        return _Solution(None, left.strip(), expected_of(right.strip(), unit))
    if len(right.strip()) == 1 and right.strip().isalpha():
        return _Solution(None, right.strip(), expected_of(left.strip(), unit))
    raise BadKey(answer)


IS = regex(
    r"(?<=\b[a-z]) (?:is|was|es|vale|are|equal|would be|must be|should be|has to be|can only be|can be|could be|"
    r"may be|is either|puede ser|debe ser) (?=[-+\d./√π(a-z])|(?<=\d) (?:is|es) (?=[a-z]$)"
)
_COLON = regex(r"^([a-z]) ?[:~≈] ?(?=[-+\d.])")
_ARTICLE = regex(r"^(?:(?:(?:the )?value of|(?:el )?valor de|of|de|la|el|the|that) )+(?=[a-z] ?=)")
_LOST_EQUALS = regex(r"^([a-z]) (-? ?[\d.][\d./ ]*)$")
_SLIPPED_NUMBER = regex(r"(?:[a-z] ?= ?)?-?[\doli.,]+")
"""A number alone, so that letters in it are slips; in a formula they are letters."""
_UNIT_BEHIND = regex(r"(?<=[\d)]) ([a-wyz][a-z]{0,2})$")
_STUCK = regex(r"^([a-z])(\d+)$")
NEXT = regex(r"(?<=[\d)]) (?=[a-z]\d? ?=)")
_PIECES = regex(r" ?(?:[,;]|\band\b|\bthen\b|\by\b(?= ?[a-z] ?=)|\bluego\b) ?")
ORDER = regex(r"[<>≤≥≠]")


def grade_solution(text: str, key: Key) -> Finding:
    """Grade the form equation-solution. Raises Unreadable."""
    want = _wanted(key.answer, key.unit)
    found = special(text)
    if found is not None and not (
        found == "counted" and want.special is None and re.search(r"[a-z] ?=", text)
    ):
        return Finding(RIGHT if found == want.special else WRONG)
    options = alternatives(text)
    given = [one for one in options if one]
    if not given:
        raise Unreadable("no-number")
    if len(options) > 1 and len(given) < len(options) and not text.rstrip().endswith("?"):
        raise Unreadable("unfinished")
    if len(given) > 12:
        raise Unreadable("several-answers")
    findings = [_solution(one, want, key) for one in given]
    if len(findings) > 1 and len({f.verdict == WRONG for f in findings}) > 1:
        raise Unreadable("several-answers")
    if len(findings) > 1 and findings[0].verdict == WRONG and findings[0].tree != findings[1].tree:
        raise Unreadable("several-answers")
    best = findings[0]
    for one in findings[1:]:
        best = best.better(one)
    return best


def _solution(text: str, want: _Solution, key: Key) -> Finding:
    if HAS_WORDS.search(text):
        text = spoken(text) if want.want is not None and want.want.letters else text
        text = IS.sub(" = ", text)
        if " equal" in text or "igual" in text:
            text = spoken(text)
    text = _ARTICLE.sub("", _COLON.sub(r"\1 = ", text))
    if (unit := _UNIT_BEHIND.search(text)) is not None and is_unit(unit.group(1)):
        text = text[: unit.start()]
    if key.unit is None and _SLIPPED_NUMBER.fullmatch(text):
        text = digits_for_letters(text)
    if ORDER.search(text):
        return order_typed(text)
    text = NEXT.sub(", ", text)
    number = want.want.number if want.want is not None else None
    text = plain_marks(text, wants=abs(number) if number is not None else None)
    pieces = [piece.strip() for piece in _PIECES.split(text) if piece.strip()]
    if not pieces:
        raise Unreadable("no-number")
    if len(pieces) > 30:
        raise Unreadable("several-answers")
    if want.want is not None and want.want.letters:
        return _formula(pieces[-1], want)
    last = _piece(pieces[-1], want, key)
    if len(pieces) > 1:
        before = _other_answer(pieces[-2], pieces[-1], want, key)
        if before is not None and (before.verdict == WRONG) != (last.verdict == WRONG):
            raise Unreadable("several-answers")
    return last


def order_typed(text: str) -> Finding:
    """An inequality where an equation is solved: another answer, if it can be read at all."""
    if re.search(r"[<>≤≥≠] *$", text):
        raise Unreadable("unfinished")
    if not re.search(r"\d", text):
        raise Unreadable("no-number")
    return Finding(WRONG)


def _other_answer(piece: str, last: str, want: _Solution, key: Key) -> Finding | None:
    """The piece before the last one, if it is an answer of its own and no step of working."""
    left, equals, _right = piece.rpartition("=")
    if equals and not (len(left.strip()) == 1 and left.strip().isalpha()):
        return None
    if not equals and "=" in last and not re.fullmatch(r"[-+\d./ %]+", piece):
        return None
    try:
        return _piece(piece, want, key)
    except Unreadable:
        return None


def _piece(piece: str, want: _Solution, key: Key) -> Finding:
    """One statement: `4`, `x = 4`, `4 = x`, or an equation not solved yet."""
    if (found := _LOST_EQUALS.match(piece)) and want.want is not None:
        piece = found.group(2)
    if _STUCK.match(piece):
        raise Unreadable("signs-lost")
    parts = [part.strip() for part in piece.split("=")]
    while parts and not parts[0]:
        parts.pop(0)
    if not parts or not parts[-1]:
        raise Unreadable("unfinished")
    if len(parts) == 1 and len(parts[0]) == 1 and parts[0].isalpha() and parts[0] != "o":
        raise Unreadable("letter-alone")
    if len(parts) == 2 and _has_letters(piece):
        sides = [part for part in parts if not (len(part) == 1 and part.isalpha())]
        if len(sides) == 2 or parts[0] == parts[1] or (len(sides) == 1 and _has_letters(sides[0])):
            return _unsolved(piece, want)
    if want.want is None:
        return _for_special(parts, want)
    number_key = replace(key, form="number")
    return _sides("=".join(parts), number_key, want.want)


_WORDS = regex(r"[a-z]{2,}")


def _has_letters(text: str) -> bool:
    return bool(re.search(r"(?<![a-z])[a-z](?![a-z])", _WORDS.sub(" ", text)))


def _for_special(parts: list[str], want: _Solution) -> Finding:
    """A number where there is none, or every one, to find."""
    if len(parts) == 2 and not any(_has_letters(part) for part in parts):
        return _unsolved("=".join(parts), want)
    amounts = read_amounts(parts[-1], None, "number")
    return Finding(WRONG, "", amounts[0].tree, amounts[0].value)


def _unsolved(piece: str, want: _Solution) -> Finding:
    """An equation: not solved yet if it has the same solutions, else another answer."""
    text = expression_text(piece, frozenset("x"))
    tree = read_normal(text, "reply")
    if not isinstance(tree, Equation) or len(tree.sides) != 2:
        raise Unreadable("sign-misplaced")
    try:
        difference: Sum = _difference(tree)
    except (Undefined, Beyond):
        return Finding(WRONG, "", tree)
    return Finding(FORM if _same_solutions(difference, want) else WRONG, "solve", tree)


def _same_solutions(difference: Sum, want: _Solution) -> bool:
    letters = {atom for term in difference for atom, _ in term}
    if want.want is None:
        if not letters:
            return (want.special == "all") == (not difference)
        return False
    if len(letters) != 1 or want.want.number is None:
        return False
    return has_just_roots(difference, letters.pop(), frozenset((want.want.number,)))


def _formula(piece: str, want: _Solution) -> Finding:
    """A formula solved for a letter: y = 15 - 8x."""
    assert want.want is not None
    text = expression_text(piece, want.want.letters | {want.letter or "x"})
    tree = read_normal(text, "reply")
    if not isinstance(tree, Equation):
        return Finding(RIGHT if same(tree, want.want) else WRONG, "", tree)
    left, right = tree.sides[0], tree.sides[-1]
    for letter, other in ((left, right), (right, left)):
        if isinstance(letter, Letter) and letter.name == want.letter and letter.name not in letters_in(other):
            return Finding(RIGHT if same(other, want.want) else WRONG, "", tree)
    if want.letter is None:
        return Finding(WRONG, "", tree)
    try:
        expected = _difference(Equation((Letter(want.letter), want.want.tree)))
        return Finding(FORM if proportional(_difference(tree), expected) else WRONG, "solve", tree)
    except (Undefined, Beyond):
        return Finding(WRONG, "", tree)
