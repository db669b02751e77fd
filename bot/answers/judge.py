"""Typed text and a key: what a fair teacher says of it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from bot.answers.around import (
    TICKS,
    asks_for_help,
    last_line,
    newest,
    small,
    trimmed,
    without_help,
    without_lead,
    without_reason,
)
from bot.answers.expected import expected_of
from bot.answers.expressions import (
    grade_equation,
    grade_expression,
)
from bot.answers.finding import Finding
from bot.answers.given import accepting, given_tree, length_of
from bot.answers.inequalities import grade_inequality
from bot.answers.key import Judgement, Key
from bot.answers.lists import grade_list, grade_point
from bot.answers.missteps import misstep_of
from bot.answers.naming import grade_choice, grade_words, grade_yes_no
from bot.answers.numbers import NUMBER_FORMS, grade_number
from bot.answers.prime_factors import grade_primes, is_product_of_primes
from bot.answers.ratios import grade_ratio, grade_remainder
from bot.answers.solution_sets import grade_solutions
from bot.answers.solutions import grade_solution
from bot.answers.times import grade_time
from bot.answers.units import name_of
from bot.answers.writing import writing
from bot.maths import Unreadable, normal, plain
from bot.maths.exact import Beyond
from bot.maths.normal import LONGEST
from bot.maths.patterns import regex
from bot.maths.read import LONGEST as LONGEST_ANSWER
from bot.vocabulary import Verdict


def judge(typed: str, key: Key, taught: Mapping[str, str] = MappingProxyType({})) -> Judgement:
    """Read a reply as a fair teacher would and say the most useful true thing about it.

    `taught` maps replies that a tutor accepted *from now on* (as `taught_form` writes them) to the expected
    answer they were accepted for. Never raises; bounded in time and memory whatever is typed.
    """
    if len(typed) > LONGEST:
        return Judgement(Verdict.UNREADABLE, trouble="too-long")
    if typed.strip() == _as_stored(key):
        return Judgement(Verdict.RIGHT, read_as=typed.strip())
    if taught and taught.get(taught_form(typed)) == key.answer:
        return Judgement(Verdict.RIGHT, read_as=typed.strip(), reason="taught")
    return judge_by_reading(typed, key)


def judge_by_reading(typed: str, key: Key) -> Judgement:
    """As `judge`, without its short cut for an answer exactly as stored: for proofs that a key reads its own."""
    text = small(normal(typed))
    try:
        finding = _graded(text, key)
    except Unreadable as trouble:
        return Judgement(Verdict.UNREADABLE, trouble=trouble.kind)
    except (ValueError, ArithmeticError, Beyond, RecursionError):
        return Judgement(Verdict.UNREADABLE, trouble="too-long")
    return _judgement(finding, text, key)


def taught_form(typed: str) -> str:
    """A reply as it is kept when a tutor says that it counts from now on."""
    return small(normal(typed))


def _judgement(finding: Finding, text: str, key: Key) -> Judgement:
    verdict = finding.verdict
    if verdict is Verdict.HELP:
        return Judgement(verdict)
    read_as = _echo(finding, text)
    if verdict is Verdict.WRONG:
        return Judgement(verdict, read_as, misstep=misstep_of(text, finding, key))
    started = verdict is not Verdict.FORM or not key.form_is_the_skill or not _typed_back(finding, key)
    return Judgement(verdict, read_as, finding.reason, not_started=not started)


def _echo(finding: Finding, text: str) -> str:
    """What was understood, in one line; the words as typed where nothing was typeset."""
    if finding.tree is None:
        return text[:80]
    return plain(finding.tree) + (f" {name_of(finding.unit)}" if finding.unit is not None else "")


def _typed_back(finding: Finding, key: Key) -> bool:
    """Whether the question itself, or something no nearer to the form, was typed."""
    if key.given is None or finding.tree is None or finding.reason == "factor-inside":
        return False
    given = given_tree(key.given)
    if given is None:
        return False
    return writing(finding.tree) == writing(given) or length_of(finding.tree) >= length_of(given)


def _as_stored(key: Key) -> str:
    """The expected answer as stored, with its unit where that is required."""
    if key.unit and key.form.startswith("quantity"):
        return f"{key.answer} {key.unit}"
    return key.answer


def _graded(text: str, key: Key) -> Finding:
    """Take away what stands around the answer, then let the form's own reader grade it."""
    form = key.form
    if form in NAMING:
        return _named(text, key)
    if not text.isascii():
        text = TICKS.sub("", text).strip()
    if not _BARE.fullmatch(text):
        if asks_for_help(text):
            return Finding(Verdict.HELP)
        text = _peeled(text, form)
    if key.accept is not None:
        key = accepting(text, key)
    if form in NUMBER_FORMS:
        return grade_number(text, key, expected_of(key.answer, key.unit))
    if form in ("expression", "expression-any", "factored"):
        if form == "factored" and is_product_of_primes(key.answer):
            return grade_primes(text, key, expected_of(key.answer, None))
        return grade_expression(text, key, expected_of(key.answer, None))
    if form == "prime-factors":
        return grade_primes(text, key, expected_of(_TIMES_X.sub("*", key.answer), None))
    return OTHERS[form](text, key)


def _peeled(text: str, form: str) -> str:
    """The answer without what stands around it. Raises Unreadable."""
    if "<" in text and _MARKUP.search(text):
        raise Unreadable("code")
    text = without_reason(without_help(text))
    if form not in LINES_JOIN:
        text = last_line(text)
    elif "\n" in text:
        text = LINES_JOIN[form].join(line for line in text.split("\n") if line.strip())
    if len(text) > 2 * LONGEST_ANSWER:
        raise Unreadable("too-long")
    text = trimmed(text)
    if form == "list":
        text = _ARROWS.sub(", ", text)
    text = newest(_ANSWER.sub("", text))
    text = trimmed(without_lead(text))
    if not text:
        raise Unreadable("no-number")
    if len(text) > LONGEST_ANSWER:
        raise Unreadable("too-long")
    return text


def _named(text: str, key: Key) -> Finding:
    """Words and letters: what was named counts even beside a call for help."""
    grade = NAMING[key.form]
    reply = trimmed(without_reason(last_line(text)))[:LONGEST_ANSWER]
    if not asks_for_help(text):
        return grade(reply, key)
    try:
        return grade(trimmed(without_help(reply)) or "?", key)
    except Unreadable:
        return Finding(Verdict.HELP)


_BARE = regex(r"-?\d{1,15}(?:[./]\d{1,15})?")
"""A number with nothing around it, as many replies are."""
_MARKUP = regex(r"</ ?[a-z]+ ?>|<(?:br|div|script|span|img)\b[^<]*>")
_TIMES_X = regex(r"(?<=\d) ?x ?(?=\d)")
_ANSWER = regex(r"^a ?: ?(?=\S)")
_ARROWS = regex(r" ?(?:-+>|→) ?")
NAMING: dict[str, Callable[[str, Key], Finding]] = {
    "choice": grade_choice,
    "yes-no": grade_yes_no,
    "words": grade_words,
}
OTHERS: dict[str, Callable[[str, Key], Finding]] = {
    "equation": grade_equation,
    "equation-solution": grade_solution,
    "solutions-set": grade_solutions,
    "inequality": grade_inequality,
    "ratio": grade_ratio,
    "point": grade_point,
    "list": grade_list,
    "remainder": grade_remainder,
    "time": grade_time,
}
LINES_JOIN = {"solutions-set": ", ", "list": ", ", "point": " ", "time": " ", "remainder": " "}
"""Forms whose answer may take several lines, and what joins them."""

FORMS = frozenset(
    (*NUMBER_FORMS, *NAMING, *OTHERS, "expression", "expression-any", "factored", "prime-factors")
)
"""Every answer form there is."""
