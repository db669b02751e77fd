"""The form inequality: solved, either way round, in signs or words."""

from __future__ import annotations

import re
from fractions import Fraction
from functools import lru_cache

from bot.answers.expected import BadKey
from bot.answers.expressions import expression_text
from bot.answers.finding import Finding
from bot.answers.key import Key
from bot.answers.shapes import WORKED_OUT, shape
from bot.answers.spoken import HAS_WORDS, spoken
from bot.maths import Tree, Undefined, Unreadable, letters_in, normal
from bot.maths.algebra import EVERYTHING, NOTHING, TURNED, Interval, lifted, where
from bot.maths.exact import Beyond, Sum, normal_form, plus
from bot.maths.patterns import regex
from bot.maths.read import read_normal
from bot.maths.tree import Equation, Inequality, Letter
from bot.vocabulary import Verdict

RIGHT, FORM, WRONG = Verdict.RIGHT, Verdict.FORM, Verdict.WRONG

_SIGN = regex(r"[<>≤≥≠]")
_APART = regex(r"([<>]) =")
_OR_EQUAL = regex(r"([<>]) ?(?:or (?:it )?(?:=|equal(?:s)?(?: to)?)|o (?:=|igual(?: a)?)) ?")
_CANT_BE = regex(
    r"\b(?:cant|cannot|can not|must not|mustnt|should not|shouldnt|no puede|no debe) (?:be|ser) "
    r"(?=(?:more|greater|bigger|larger|less|fewer|smaller|mayor|menor|mas|menos)\b)"
)
_THEN = regex(r"(?<=er )then\b|(?<=less )then\b|(?<=more )then\b")
_BEHIND = regex(r"^(-? ?[\d./]+) (at (?:most|least)|max(?:imum)?|min(?:imum)?|como (?:maximo|minimo))$")
_OR_EQUAL_BEHIND = regex(
    r"\b((?:less|greater|more|bigger|smaller) than) (-? ?[\d./]+) or equal(?: to)?(?: it)?$"
)
_OR_MORE = regex(
    r"(-? ?[\d./]+) (?:(?:or|and) (?:more|greater|higher|above|larger|bigger|up|over)|o mas|"
    r"o mayor|en adelante)\b(?! (?:than|then|que|or equal))"
)
_OR_LESS = regex(
    r"(-? ?[\d./]+) (?:(?:or|and) (?:less|fewer|lower|below|smaller|under|down)|o menos|"
    r"o menor)\b(?! (?:than|then|que|or equal))"
)
_BETWEEN = regex(
    r"\b(?:is |are )?(?:in )?(?:between|entre) (-? ?[\d./]+) (?:and|y) (-? ?[\d./]+)( inclusive| included)?"
)
_INTERVAL = regex(
    r"^(?:[a-z] ?(?:∈|in|is in) ?)?([\[(]) ?([-+]? ?[\d./∞π√]+) ?[,;] ?([-+]? ?[\d./∞π√]+) ?([\])])$"
)
_DECIMAL_COMMA = regex(r"(?<=\d),(?=\d{1,2}(?!\d))|(?<=\b0),(?=\d)")
"""No space behind it, and not three digits, which would be thousands."""
_BUILDER = regex(r"^\{ ?[a-z] ?[|:] ?(.*?)\}?$")
_PLAIN_WORDS = regex(r"\b(?!sqrt\b|abs\b)[a-z]{2,}\b")
_PIECES = regex(r" ?(?:[,;&]|\band\b|(?<=\d )y(?= [a-z])|\bbut\b|\bpero\b|\n|∩) ?")


@lru_cache(maxsize=1024)
def _wanted(answer: str) -> tuple[Inequality | None, frozenset[str], Interval | None, bool]:
    """The expected inequality, its letters, where it holds, and whether it has two ends."""
    text = normal(answer).lower()
    if "≠" in text:
        left, _, right = text.partition("≠")
        read_normal(right, "reply")
        return None, letters_in(read_normal(left, "reply")), None, False
    pieces = [piece for piece in _PIECES.split(text) if piece]
    interval = EVERYTHING
    trees = []
    for piece in pieces:
        tree = read_normal(piece, "reply")
        if not isinstance(tree, Inequality):
            raise BadKey(answer)
        trees.append(tree)
        letters = letters_in(tree)
        if len(letters) == 1:
            found = _holds(tree, next(iter(letters)))
            if found is None:
                raise BadKey(answer)
            interval = interval.and_also(found)
    letters = frozenset().union(*(letters_in(tree) for tree in trees))
    two = interval.low is not None and interval.high is not None
    return trees[0], letters, interval if len(letters) == 1 else None, two


def _holds(tree: Inequality, letter: str) -> Interval | None:
    """Where all comparisons of a chain hold."""
    found = EVERYTHING
    try:
        forms = [normal_form(side) for side in tree.sides]
    except (Undefined, Beyond):
        return None
    for left, sign, right in zip(forms, tree.signs, forms[1:], strict=False):
        one = where(left, sign, right, letter)
        if one is None:
            return None
        found = found.and_also(one)
    return found


_SHORT_UNIT = regex(r"(?<=\d) ?([smhglt])$")


def grade_inequality(text: str, key: Key) -> Finding:
    """Grade the form inequality. Raises Unreadable."""
    tree, letters, interval, two = _wanted(key.answer)
    letter = next(iter(sorted(letters)), "x")
    text = _in_signs(text.strip(" .!?;,"), letter)
    if interval is not None and (found := _INTERVAL.match(text)) is not None:
        return _as_interval(found, interval)
    text = _DECIMAL_COMMA.sub(".", text)
    if (found := _SHORT_UNIT.search(text)) is not None and found.group(1) not in letters:
        text = text[: found.start()]  # t > 3 s: seconds
    if not text:
        raise Unreadable("no-maths")
    if not _SIGN.search(text):
        return _no_sign(text, letter)
    if re.search(r"[<>≤≥≠=]\s*-?\s*$", text):
        raise Unreadable("unfinished")
    if tree is None:
        return _not_equal(text, key.answer)
    if "≠" in text:
        return Finding(WRONG)
    options = [one for one in re.split(r" ?\b(?:or|o)\b ?|∪", text) if one.strip()]
    if len(options) > 12:
        raise Unreadable("several-answers")
    if len(options) > 1:
        if interval is not None and _or_equal(options, letters) == interval:
            return Finding(RIGHT)
        findings = [_grade(one, tree, letters, interval, two) for one in options]
        if all(f.verdict != WRONG for f in findings):
            return findings[-1]
        if two or all(f.verdict == WRONG for f in findings):
            return Finding(WRONG)
        raise Unreadable("several-answers")
    return _grade(text, tree, letters, interval, two)


def _in_signs(text: str, letter: str) -> str:
    """Words and brackets for an inequality written with signs and the expected letter."""
    if (found := _BUILDER.match(text)) is not None:
        text = found.group(1).strip()
    text = _APART.sub(lambda m: "≤" if m.group(1) == "<" else "≥", text)
    if HAS_WORDS.search(text):
        text = _CANT_BE.sub("no ", _THEN.sub("than", text))
        text = _BEHIND.sub(r"\2 \1", text)
        text = _OR_EQUAL_BEHIND.sub(r"\1 or equal to \2", text)
        text = _OR_MORE.sub(rf" {letter} ≥ \1", text)
        text = _OR_LESS.sub(rf" {letter} ≤ \1", text)
        text = _BETWEEN.sub(_between(letter), text)
        text = spoken(text, orders=True)
        text = _OR_EQUAL.sub(lambda m: "≤ " if m.group(1) == "<" else "≥ ", text)
        text = re.sub(r"([<>]) ?(-? ?[\d./]+) or (?:[a-z] )?= ?\2(?![\d.])", _closed, text)
        text = re.sub(r"\bor\b|\band\b", lambda m: f" {m.group()} ", text)
        text = _PLAIN_WORDS.sub(lambda m: m.group() if m.group() in ("or", "and", "but") else "", text)
        text = re.sub(r"\s+", " ", text).strip(" ,")
        text = text.replace("()", "").replace("( )", "")
        text = re.sub(r"^(?:and|or) | (?:and|but)$", "", text).strip()
        text = re.sub(rf"\b{letter} {letter}\b", letter, text)
    pieces = re.split(r"( ?(?:\band\b|\bor\b|(?<=\d )y(?= [a-z])|[,;&]) ?)", text)
    for i, piece in enumerate(pieces):
        if piece[:1] in tuple("<>≤≥") and piece:
            pieces[i] = f"{letter} {piece}"
    return "".join(pieces).strip()


def _closed(found: re.Match[str]) -> str:
    """`> 3 or = 3` is `≥ 3`."""
    return f"{'≤' if found.group(1) == '<' else '≥'} {found.group(2)}"


def _between(letter: str):  # type: ignore[no-untyped-def]
    def write(found: re.Match[str]) -> str:
        sign = "≤" if found.group(3) else "<"
        before = found.string[: found.start()].rstrip()
        middle = "" if before.endswith(letter) else letter
        if middle:
            return f"{found.group(1)} {sign} {letter} {sign} {found.group(2)}"
        return f" {'≥' if found.group(3) else '>'} {found.group(1)} and {letter} {sign} {found.group(2)}"

    return write


def _end(text: str) -> Fraction | None:
    from bot.maths import value

    text = text.replace(" ", "")
    return None if "∞" in text else value(read_normal(text, "reply"))


def _as_interval(found: re.Match[str], interval: Interval) -> Finding:
    opened, low, high, closed = found.groups()
    try:
        typed = Interval(
            _end(low),
            opened == "[" and "∞" not in low,
            _end(high),
            closed == "]" and "∞" not in high,
        )
    except Undefined:
        raise Unreadable("no-number") from None
    if "∞" in low and not low.strip().startswith("-"):
        return Finding(WRONG)
    return Finding(FORM, "interval") if typed == interval else Finding(WRONG)


def _no_sign(text: str, letter: str) -> Finding:
    """No sign of order: another answer, or the sign was lost."""
    text = text.strip()
    if re.match(r"^[a-z] [-\d]", text) or re.match(r"^[-\d./]+ [a-z]$", text):
        raise Unreadable("signs-lost")
    if text.endswith("="):
        raise Unreadable("unfinished")
    if not any(c.isdigit() for c in text):
        raise Unreadable("letter-alone" if len(text) == 1 else "no-maths")
    try:
        tree = read_normal(expression_text(text, frozenset(letter)), "reply")
    except Unreadable as trouble:
        if trouble.kind == "no-maths":
            raise
        raise Unreadable("signs-lost") from None
    return Finding(WRONG, "", tree)


def _not_equal(text: str, answer: str) -> Finding:
    wanted = normal(answer).lower().replace(" ", "")
    typed = text.replace(" ", "")
    left, _, right = wanted.partition("≠")
    return Finding(RIGHT if typed in (wanted, f"{right}≠{left}") else WRONG)


def _or_equal(options: list[str], letters: frozenset[str]) -> Interval | None:
    """`x > 5 or x = 5`: the end point belongs as well."""
    if len(options) != 2:
        return None
    one, other = (_read(option, letters) for option in options)
    if isinstance(one, Equation):
        one, other = other, one
    found = _interval(one)
    if found is None or not isinstance(other, Equation) or len(other.sides) != 2:
        return None
    sides = [side for side in other.sides if not isinstance(side, Letter)]
    if len(sides) != 1 or letters_in(sides[0]):
        return None
    end = normal_form(sides[0]).rational()
    return Interval(
        found.low, found.low_in or found.low == end, found.high, found.high_in or found.high == end
    )


def _grade(
    text: str, tree: Inequality, letters: frozenset[str], interval: Interval | None, two: bool
) -> Finding:
    pieces = [piece.strip() for piece in _PIECES.split(text) if piece.strip()]
    if len(pieces) > 12:
        raise Unreadable("several-answers")
    trees = [_read(piece, letters) for piece in pieces]
    last = trees[-1]
    if interval is None:
        return _several_letters(last, tree)
    typed = _interval(last)
    if typed == interval:
        return _in_form(trees[-1:], letters)
    if two and len(trees) > 1:
        found: Interval | None = EVERYTHING
        for one in trees:
            part = _interval(one)
            found = None if part is None or found is None else found.and_also(part)
        if found == interval:
            return _in_form(trees, letters)
    if isinstance(last, Equation) and len(trees) > 1:
        return Finding(WRONG, "", last)
    return Finding(WRONG, "", last)


def _read(piece: str, letters: frozenset[str]) -> Tree:
    text = expression_text(piece, letters)
    if not text:
        raise Unreadable("no-maths")
    return read_normal(text, "reply")


def _interval(tree: Tree) -> Interval | None:
    if not isinstance(tree, Inequality):
        return None
    letters = letters_in(tree)
    if len(letters) != 1:
        return None
    found = _holds(tree, next(iter(letters)))
    return None if found == NOTHING else found


def _in_form(trees: list[Tree], letters: frozenset[str]) -> Finding:
    reason = ""
    for tree in trees:
        assert isinstance(tree, Inequality)
        if letters_in(tree) != letters:
            reason = reason or "letter"
        alone = [side for side in tree.sides if isinstance(side, Letter)]
        others = [side for side in tree.sides if not isinstance(side, Letter)]
        if len(alone) != 1 or any(letters_in(side) for side in others):
            reason = "solve"
        elif any(shape(side) not in WORKED_OUT for side in others):
            reason = reason or "work-out"
    return Finding(FORM, reason, trees[-1]) if reason else Finding(RIGHT, "", trees[-1])


def _several_letters(typed: Tree, wanted: Inequality) -> Finding:
    """Two letters: the same half plane, whichever way it is written."""
    if not isinstance(typed, Inequality) or len(typed.signs) != 1 or len(wanted.signs) != 1:
        return Finding(WRONG, "", typed)
    try:
        one, other = _side_difference(typed), _side_difference(wanted)
    except (Undefined, Beyond):
        return Finding(WRONG, "", typed)
    if one.keys() != other.keys() or not one:
        return Finding(WRONG, "", typed)
    term = next(iter(one))
    ratio = Fraction(one[term]) / Fraction(other[term])
    if any(Fraction(c) != ratio * Fraction(other[t]) for t, c in one.items()):
        return Finding(WRONG, "", typed)
    sign = wanted.signs[0] if ratio > 0 else TURNED[wanted.signs[0]]
    return Finding(RIGHT if typed.signs[0] == sign else WRONG, "", typed)


def _side_difference(tree: Inequality) -> Sum:
    left, right = (normal_form(side) for side in tree.sides)
    if left.bottom != right.bottom:
        raise Beyond
    return lifted(plus(left.top, right.top, -1))
