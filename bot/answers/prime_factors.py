"""The form prime-factors: a product of primes, powers or written out."""

from __future__ import annotations

import re

from bot.answers.around import sides
from bot.answers.expected import BadKey, Expected
from bot.answers.expressions import read_expression, same
from bot.answers.finding import FORM, RIGHT, WRONG, Finding
from bot.answers.key import Key
from bot.answers.marks import digits_for_letters, plain_marks
from bot.answers.spoken import spoken
from bot.answers.writing import factors_of
from bot.maths import Unreadable, letters_in, normal
from bot.maths.patterns import regex
from bot.maths.primes import prime_powers
from bot.maths.read import read_normal
from bot.maths.tree import Number

_RUN = regex(r"[a-z]{2,}")
_RUN_OR_LONE = regex(r"[a-z]{2,}|\b[ai]\b")
_NUMBER_IS = regex(r"(?<=\d) (?:is|es) (?=\d)")
_AROUND_POWER = regex(r" ?\^ ?")
_DOTTED = regex(r"^\d+(?:\.\d+){2,}$")
_JUST_LIST = regex(r"^[\d^]+(?:(?: ?[,;&] ?| and | y | )[\d^]+)+$")


def is_product_of_primes(answer: str) -> bool:
    """Whether a stored answer is a product of primes, as 2^3*5 is."""
    try:
        tree = read_normal(normal(answer).lower(), "reply")
        factors = factors_of(tree)
    except (Unreadable, BadKey):
        return False
    if factors is None or len(factors) < 2 or letters_in(tree):
        return False
    return all(isinstance(one, Number) and not one.places and _is_prime(int(one.value)) for one in factors)


def _is_prime(n: int) -> bool:
    return 1 < n < 10**10 and prime_powers(n) == {n: 1}


def grade_primes(text: str, key: Key, want: Expected) -> Finding:
    """Grade a product of primes; the number itself may stand on the other side. Raises Unreadable."""
    parts = sides(_NUMBER_IS.sub(" = ", text))
    if not parts or not parts[-1]:
        raise Unreadable("unfinished")
    last = _primes(parts[-1], want)
    if last.verdict == FORM and len(parts) == 2 and _primes(parts[0], want).verdict == RIGHT:
        return Finding(RIGHT, "", last.tree)
    return last


def _primes(text: str, want: Expected) -> Finding:
    text = text.strip(" .,;")
    text = _AROUND_POWER.sub("^", spoken(digits_for_letters(text)))
    if _DOTTED.match(text):
        text = text.replace(".", "*")
    if _JUST_LIST.match(text):
        product = read_normal(re.sub(r" ?[,;&] ?| and | y | ", "*", text), "reply")
        return Finding(FORM, "product") if same(product, want) else Finding(WRONG)
    if _RUN.search(re.sub(r"\bx\b", "", text)):
        text = _RUN_OR_LONE.sub(" ", text).strip()
    if not text or not any(c.isdigit() for c in text):
        raise Unreadable("no-number")
    if text[-1] in "+-*/÷^x(":
        raise Unreadable("unfinished")
    tree = read_expression(plain_marks(text, wants=want.number), frozenset())
    if not same(tree, want):
        return Finding(WRONG, "", tree)
    factors = factors_of(tree)
    if factors is None or not all(isinstance(one, Number) and not one.places for one in factors):
        return Finding(FORM, "primes", tree)
    values = [int(one.value) for one in factors if isinstance(one, Number)]
    if len(values) < 2 and not _is_prime(values[0]):
        return Finding(FORM, "product", tree)
    return Finding(RIGHT if all(_is_prime(n) for n in values) else FORM, "primes", tree)
