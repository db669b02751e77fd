"""Forms that ask for an expression or an equation: expression, expression-any, factored, equation, prime-factors."""

from __future__ import annotations

import re
from fractions import Fraction
from functools import lru_cache

from bot.answers.around import alternatives, sides
from bot.answers.expected import BadKey, Expected
from bot.answers.finding import Finding, all_the_same
from bot.answers.key import Key
from bot.answers.marks import plain_marks
from bot.answers.spoken import HAS_WORDS, spoken
from bot.answers.units import is_unit
from bot.answers.writing import content, factors_of, is_plain_number, simplified, writing
from bot.maths import Tree, Unreadable, letters_in, normal
from bot.maths.algebra import equivalent, lifted, proportional
from bot.maths.exact import Beyond, Sum, normal_form, plus, times
from bot.maths.patterns import regex
from bot.maths.read import LONGEST, read_normal
from bot.maths.tree import Add, Equation, Listing, Number, Power, Subtract, every
from bot.maths.value import Undefined
from bot.vocabulary import Verdict

RIGHT, FORM, WRONG = Verdict.RIGHT, Verdict.FORM, Verdict.WRONG

_RUN = regex(r"[a-z]{2,}")
_KEPT = frozenset(("abs", "sqrt"))
_X_TIMES = regex(r"(?<=[a-z\d)]) ?x ?(?=[a-z\d(√π])|(?<=[a-wyz\d)]) x (?=-)")
_LETTER_DIGIT = regex(r"(?<![a-z])([a-z])(\d+)(?![\d.])")
_UNDER_BAR = regex(r"(\d+)/(\d*[a-z](?:\^\d+)?(?: ?[a-z](?:\^\d+)?)*)")
_OF = regex(r"(?<=[\d%]) of (?=[a-z\d(])")
_PART_OF = regex(r"(?<=\d) of (?=[a-z(])")
_TWICE = regex(r"\b(?:twice|double|el doble de) (?=[a-z(])")
_SIMPLE = r"([-a-z\d/^]+)"
_PHRASES = (
    (regex(rf"^{_SIMPLE} (?:less|fewer) than {_SIMPLE}$"), r"\2 - \1"),
    (regex(rf"^{_SIMPLE} more than {_SIMPLE}$"), r"\2 + \1"),
    (regex(rf"^subtract {_SIMPLE} from {_SIMPLE}$"), r"\2 - \1"),
    (regex(rf"^add {_SIMPLE} to {_SIMPLE}$"), r"\2 + \1"),
    (regex(rf"^multiply {_SIMPLE} by {_SIMPLE}$"), r"(\1) * (\2)"),
    (regex(rf"^divide {_SIMPLE} by {_SIMPLE}$"), r"(\1)/(\2)"),
    (regex(rf"\b(?:the )?sum of {_SIMPLE} and {_SIMPLE}"), r"(\1 + \2)"),
    (regex(rf"\b(?:the )?difference (?:of|between) {_SIMPLE} and {_SIMPLE}"), r"(\1 - \2)"),
    (regex(rf"\b(?:the )?product of {_SIMPLE} and {_SIMPLE}"), r"(\1 * \2)"),
    (regex(rf"\b(?:the )?quotient of {_SIMPLE} and {_SIMPLE}"), r"(\1)/(\2)"),
)
_COMES_TO = regex(
    r"^(?:to|into) (?=[-\d(])|^.*\b(?:(?:simplif(?:ies|y|ied)|factors?|reduces|comes|expands|works out|"
    r"se simplifica) (?:to|into|as|a)|becomes|"
    r"turns into|queda|is|es) (?=[-\d(a-z√])"
)
_THINGS = regex(r"[a-z]{4,}s")
_LAST_WORD = regex(r"(?<=[\da-z)]) ([a-z]{3,})$")


def read_expression(text: str, letters: frozenset[str]) -> Tree:
    """An expression as students type it; `letters` are those of the expected answer. Raises Unreadable."""
    text = expression_text(text, letters)
    if not text:
        raise Unreadable("no-maths")
    return read_normal(text, "reply")


def expression_text(text: str, letters: frozenset[str]) -> str:
    """Words, marks and letters side by side written so that the grammar reads them."""
    text = text.strip(" ,;:!?\"'$").rstrip(".")
    if HAS_WORDS.search(text):
        text = _TWICE.sub("2 ", text)
        text = _OF.sub(" * ", text)
        for phrase, signs in _PHRASES:
            text = phrase.sub(signs, text)
        text = spoken(text)
        text = _PART_OF.sub(" ", text)
    if "," in text or ".." in text or "." in text:
        text = plain_marks(text)
    if "x" in text and "x" not in letters:
        text = _X_TIMES.sub(" * ", text)
    if "$" in text:
        text = text.replace("$", "")
    if (found := _LAST_WORD.search(text)) is not None and (
        is_unit(found.group(1)) or (_THINGS.fullmatch(found.group(1)) and not set(found.group(1)) <= letters)
    ):
        text = text[: found.start()]
    for run in _RUN.findall(text):
        if run not in _KEPT and not frozenset(run) <= letters and (len(run) > 3 or run in _ENGLISH):
            raise Unreadable("no-maths")
    if len(text) > LONGEST:
        raise Unreadable("too-long")
    return text


_ENGLISH = frozenset(
    (
        "is", "it", "in", "of", "the", "and", "or", "to", "no", "yes", "lol", "idk", "so", "my", "me", "we",
        "he", "she",
        "you", "an", "at", "on", "do", "was", "are", "but", "not", "ok", "um", "hi", "hey", "bro", "bye",
        "why", "how",
        "all", "any", "one", "el", "la", "es", "de", "un", "que", "wat", "omg", "wtf", "haha", "lmk", "as",
        "by", "if",
        "for", "has", "get", "got", "can", "its", "let", "now", "out", "put", "see", "too", "use", "who", "did",
    )
)  # fmt: skip


def same(tree: Tree, want: Expected) -> bool:
    """Whether a typed expression equals the expected one for all values of its letters."""
    try:
        return normal_form(tree).same_as(want.form)
    except Undefined as trouble:
        if trouble.kind == "too-big":
            raise Unreadable("too-long") from None
        return False
    except Beyond:
        return equivalent(tree, want.tree)


def grade_expression(text: str, key: Key, want: Expected) -> Finding:
    """Grade in the forms expression, expression-any and factored. Raises Unreadable."""
    if HAS_WORDS.search(text):
        text = _COMES_TO.sub("", text)
    options = alternatives(text)
    if len(options) > 1:
        given = [one for one in options if one]
        if not given or len(given) > 12:
            raise Unreadable("several-answers")
        if key.form == "factored" and all("=" in one for one in given):
            return Finding(WRONG)  # solved instead of factored
        findings = [_sides(one, key, want) for one in given]
        if any(f.verdict == WRONG for f in findings) and any(f.verdict != WRONG for f in findings):
            raise Unreadable("several-answers")
        return all_the_same(findings)
    return _sides(text, key, want)


def _sides(text: str, key: Key, want: Expected) -> Finding:
    parts = sides(text)
    if not parts or not parts[-1]:
        raise Unreadable("unfinished")
    if len(parts) > 30:
        raise Unreadable("too-long")
    last = _one(parts[-1], key, want)
    if last.verdict == FORM:
        for side in parts[:-1]:
            try:
                if _one(side, key, want).verdict == RIGHT:
                    return Finding(RIGHT, "", last.tree, last.value)
            except Unreadable:
                continue
    return last


def _one(text: str, key: Key, want: Expected) -> Finding:
    if "," in text and key.form == "factored":
        try:
            if isinstance(read_normal(text, "reply"), (Listing, Equation)):
                return Finding(WRONG)
        except Unreadable:
            pass
    tree = read_expression(text, want.letters)
    if isinstance(tree, (Listing, Equation)):
        return Finding(WRONG, "", tree)
    if not same(tree, want):
        _ask(text, want)
        return Finding(WRONG, "", tree)
    if key.form == "expression-any":
        return Finding(RIGHT, "", tree)
    if key.form == "factored":
        reason = _not_factored(tree, want)
    elif writing(tree) == writing(want.tree) and not _needless(tree):
        reason = ""
    else:
        reason = simplified(tree, _keeps_power(want))
    return Finding(FORM, reason, tree) if reason else Finding(RIGHT, "", tree)


def _needless(tree: Tree) -> bool:
    """A factor 1 or two signs in a row: not the same writing, though the key looks alike."""
    return simplified(tree, True) in ("signs", "coefficient", "exponent")


def _keeps_power(want: Expected) -> bool:
    return not want.letters and any(
        isinstance(one, Power) and isinstance(one.base, Number) for one in every(want.tree)
    )


def _ask(text: str, want: Expected) -> None:
    """Two plain readings, of which the other one would be right: ask."""
    text = expression_text(text, want.letters)
    if _LETTER_DIGIT.search(text) and "^" not in text:
        other = _LETTER_DIGIT.sub(r"\2\1", text)
        if _is_wanted(other, want):
            raise Unreadable("power-or-times")
    if "/" in text and _UNDER_BAR.search(text):
        other = _UNDER_BAR.sub(r"\1/(\2)", text)
        if _is_wanted(other, want):
            raise Unreadable("under-the-bar")


def _is_wanted(text: str, want: Expected) -> bool:
    try:
        return normal_form(read_normal(text, "reply")).same_as(want.form)
    except (Unreadable, Undefined, Beyond):
        return False


# Factored ------------------------------------------------------------------------------------------------


@lru_cache(maxsize=1024)
def _expected_factors(text: str) -> tuple[int, bool]:
    """How many factors with letters the expected answer has; whether it is a product of numbers alone."""
    tree = read_normal(text, "reply")
    factors = factors_of(tree) or [tree]
    return sum(1 for one in factors if letters_in(one)), not letters_in(tree)


def _not_factored(tree: Tree, want: Expected) -> str:
    count, numbers_only = _expected_factors(want.text)
    if numbers_only:
        return "" if writing(tree) == writing(want.tree) else "factor"
    factors = factors_of(tree)
    if factors is None:
        return "factor"
    if len(factors) == 1 and isinstance(factors[0], (Add, Subtract)):
        return "factor"
    letters = 0
    ones = 0
    for factor in factors:
        if not letters_in(factor):
            if not is_plain_number(factor):
                return "factor"
            number = normal_form(factor).rational()
            if number is None or number.denominator != 1:
                return "factor"
            ones += number == 1
            continue
        letters += 1
        form = normal_form(factor)
        if isinstance(factor, (Add, Subtract)):
            divides, letter = content(form)
            if divides != 1 or letter:
                return "factor-inside"
        if any(n < 0 for term in form.top for _, n in term) or any(
            Fraction(c).denominator != 1 for c in form.top.values()
        ):
            return "factor"
    if letters < count:
        return "factor"
    return "factor" if ones else ""


# Equations -------------------------------------------------------------------------------------------------

_FUNCTION = regex(r"\b[fgh] ?\( ?([a-z]) ?\)")
_LABEL_COLON = regex(r"^([a-z]) ?: ?(?=[-\da-z(])")
_NAMED_LETTER = regex(r"^([a-z])[a-z]{2,}(?= ?=)")
_EQUALS_WORD = regex(r"(?<=[a-z\d)]) (?:is|are|es|son) (?=[-\da-z(])")


@lru_cache(maxsize=2048)
def expected_equation(answer: str) -> tuple[Tree, Sum, frozenset[str], Tree]:
    """The expected equation: tree, difference of its sides as one sum, letters, and its right side. Raises BadKey."""
    text = normal(answer).lower()
    try:
        tree = read_normal(text.replace("sqrt", "√").replace("pi", "π"), "reply")
        if not isinstance(tree, Equation) or len(tree.sides) != 2:
            raise BadKey(answer)
        return tree, _difference(tree), letters_in(tree), tree.sides[1]
    except (Unreadable, Undefined, Beyond) as trouble:
        raise BadKey(answer) from trouble


def _difference(tree: Equation) -> Sum:
    left, right = (normal_form(side) for side in tree.sides)
    return lifted(plus(times(left.top, right.bottom), times(right.top, left.bottom), -1))


def grade_equation(text: str, key: Key) -> Finding:
    """Any equation that holds for the same values is right; every letter counts. Raises Unreadable."""
    _, difference, letters, right = expected_equation(key.answer)
    if HAS_WORDS.search(text):
        text = _EQUALS_WORD.sub(" = ", spoken(text))
    if not letters & set("fgh") or "(" in text:
        dependent = "y" if "y" in letters else next(iter(sorted(letters)), "y")
        if not _FUNCTION.search(normal(key.answer).lower()):
            text = _FUNCTION.sub(dependent, text)
    text = _LABEL_COLON.sub(r"\1 = ", text)
    if (found := _NAMED_LETTER.match(text)) is not None and found.group(1) in letters:
        text = found.group(1) + text[found.end() :]  # area = bh/2
    options = [one for one in alternatives(text) if one]
    if len(options) > 12 or not options:
        raise Unreadable("several-answers")
    findings = [_equation(one, difference, letters, right) for one in options]
    if len(findings) > 1 and len({f.verdict for f in findings}) > 1:
        raise Unreadable("several-answers")
    return findings[0]


def _ask_about_equation(other: str, difference: Sum) -> None:
    """`y = x2 + 1` where y = 2x + 1 is expected."""
    tree = read_normal(other, "reply")
    try:
        meant = isinstance(tree, Equation) and proportional(_difference(tree), difference)
    except (Undefined, Beyond):
        return
    if meant:
        raise Unreadable("power-or-times")


def _equation(text: str, difference: Sum, letters: frozenset[str], right: Tree) -> Finding:
    text = expression_text(text, letters)
    if text.endswith("=") or text.startswith("="):
        text = text.strip("= ")
        if text.count("=") == 0 and (not text or text in letters):
            raise Unreadable("unfinished")
    if not text or (len(text) == 1 and text.isalpha()):
        raise Unreadable("letter-alone" if text else "no-maths")
    pieces = [piece for piece in re.split(r" ?[,;\n] ?", text) if piece]
    tree = read_normal(pieces[-1], "reply")
    if isinstance(tree, Equation):
        if len(tree.sides) != 2:
            tree = Equation((tree.sides[0], tree.sides[-1]))
        try:
            typed = _difference(tree)
        except Beyond:
            return Finding(WRONG, "", tree)
        except Undefined as trouble:
            if trouble.kind == "too-big":
                raise Unreadable("too-long") from None
            return Finding(WRONG, "", tree)
        if proportional(typed, difference):
            return Finding(RIGHT, "", tree)
        if _LETTER_DIGIT.search(pieces[-1]) and "^" not in pieces[-1]:
            _ask_about_equation(_LETTER_DIGIT.sub(r"\2\1", pieces[-1]), difference)
        return Finding(WRONG, "", tree)
    try:
        if normal_form(tree).same_as(normal_form(right)):
            return Finding(FORM, "left-side", tree)
    except (Undefined, Beyond):
        pass
    return Finding(WRONG, "", tree)
