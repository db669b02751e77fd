"""Forms with several numbers in order: list, point."""

from __future__ import annotations

import re
from fractions import Fraction
from functools import lru_cache

from bot.answers.amounts import Amount, read_amounts
from bot.answers.around import alternatives, sides
from bot.answers.closeness import nearness
from bot.answers.expected import Expected, expected_of
from bot.answers.expressions import read_expression, same
from bot.answers.finding import Finding
from bot.answers.key import Key
from bot.answers.marks import digits_for_letters, plain_marks
from bot.answers.shapes import WORKED_OUT, shape
from bot.answers.spoken import HAS_WORDS, number_words, spoken
from bot.maths import Unreadable, normal
from bot.maths.patterns import regex
from bot.vocabulary import Verdict

RIGHT, FORM, WRONG = Verdict.RIGHT, Verdict.FORM, Verdict.WRONG
MOST_ENTRIES = 60

# Entries of a list -------------------------------------------------------------------------------------------

_BETWEEN_ENTRIES = regex(
    r" ?(?:[,;]|\band then\b|\bthen\b|\band\b|&|\bfollowed by\b|\bluego\b|\by\b|→|->|[<>≤≥]) ?"
)
_NUMERAL = regex(r"-?[\d./]*\d")
_NUMBERED = regex(r"(?:(?<=^)|(?<= )|(?<=[,;]))(\d)[.)] ")
_ORDER_SIGN = regex(r"[<>≤≥]")
_DASHED = regex(r"^\d+(?:-\d+){2,}$")
_POINTS = regex(r"\(([^()]*)\)")
_SPACE_MINUS = regex(r"(?<=[\d)]) (?=-\d)")


def _entries(text: str, count: int) -> list[str]:
    """The entries of a list as typed, where commas, words, order signs or only spaces stand between them."""
    found = [entry.strip() for entry in _BETWEEN_ENTRIES.split(text)]
    found = [entry for entry in found if entry]
    if 1 < len(found) < count:
        single = [one for entry in found for one in entry.split()]
        if len(single) == count and all(_NUMERAL.fullmatch(one) for one in single):
            return single
    if len(found) >= count or (len(found) > 1 and not all(" " in one for one in found)):
        return found
    return _by_spaces(text, count)


def _by_spaces(text: str, count: int) -> list[str]:
    tokens = [token for token in re.split(r"[ ,;]+", text) if token]
    if len(tokens) == count or len(tokens) == 1:
        return tokens
    joined: list[str] = []
    for token in tokens:  # 1 1/2 2 3/4: a whole number before a fraction is one mixed number
        if joined and re.fullmatch(r"\d+/\d+", token) and re.fullmatch(r"-?\d+", joined[-1]):
            joined[-1] += " " + token
        else:
            joined.append(token)
    if len(joined) == count or any(c in text for c in "+*÷("):
        return joined if len(joined) == count else [text]
    return tokens


@lru_cache(maxsize=1024)
def _wanted_entries(answer: str) -> tuple[tuple[Expected, ...], bool]:
    text = normal(answer).lower().strip("{}")
    points = _POINTS.findall(text)
    if points and re.fullmatch(r"(?:\([^()]*,[^()]*\)[,; ]*)+", text):
        return tuple(expected_of(part.strip(), None) for point in points for part in point.split(",")), True
    parts = text.split(";") if ";" in text else text.split(",")
    return tuple(expected_of(part.strip(), None) for part in parts), False


def grade_list(text: str, key: Key) -> Finding:
    """Numbers (or points) in order. Raises Unreadable."""
    wants, points = _wanted_entries(key.answer)
    text = re.sub(r"(?: ?,)? ?\.\.+$", "", text) if not re.search(r"\.(\d+)\1 ?\.\.+$", text) else text
    text = re.sub(r"(?<=\d{2}) ?,? (?:etc|and so on|so on)$", "", text.strip())
    if re.search(r"(?:[,;<>≤≥]|\b(?:and|then|y|or))$", text.strip()):
        raise Unreadable("unfinished")
    if re.search(r"\?|\.\.\.+[ ,]|_", text):
        raise Unreadable("unfinished")
    options = [one for one in alternatives(text) if one]
    if len(options) > 1:
        raise Unreadable("several-answers")
    if "=" in text and not re.search(r"[a-z] ?=", text):
        text = (sides(text) or [""])[-1]
    text = re.sub(r"(?<![a-z])[a-z] ?= ?", "", text)
    if not text:
        raise Unreadable("unfinished")
    text = _without_numbering(digits_for_letters(text), len(wants))
    if points:
        return _points(text, wants)
    text = text.strip("{}[] ")
    if text.startswith("(") and text.endswith(")") and "(" not in text[1:]:
        text = text[1:-1]
    text = plain_marks(text, separate=True) if ";" not in text else plain_marks(text)
    if "," in text or ";" in text:
        text = _SPACE_MINUS.sub(", ", text)
    if HAS_WORDS.search(text):
        text = _from_to(text)
        text = _BETWEEN_ENTRIES.sub(lambda m: m.group() if _ORDER_SIGN.search(m.group()) else ", ", text)
        if not re.search(r"[,;<>≤≥]", text):
            text = _words_apart(text)
    if _DASHED.match(text):
        text = text.replace("-", ", ")
    if text.count(" / ") == len(wants) - 1 > 1:
        text = text.replace(" / ", ", ")
    entries = _entries(text, len(wants))
    if len(entries) > MOST_ENTRIES:
        raise Unreadable("several-answers")
    return _compare(entries, wants, _ORDER_SIGN.findall(text))


def _without_numbering(text: str, count: int) -> str:
    """`1) 0.05 2) 0.3 3) 0.45`: entries numbered from 1 on, as many as there should be."""
    if _NUMBERED.findall(text) != [str(n) for n in range(1, count + 1)]:
        return text
    return ", ".join(entry.strip(" ,;") for entry in _NUMBERED.split(text)[2::2])


def _from_to(text: str) -> str:
    return re.sub(
        r"^(?:from |in order[: ]+|least to greatest[: ]+|greatest to least[: ]+|smallest to (?:largest|"
        r"biggest)[: ]+)",
        "",
        text,
    )


def _words_apart(text: str) -> str:
    """Number words without commas between them: `two four eight`."""
    words = text.split()
    if all(word in number_words() for word in words):
        return ", ".join(words)
    return text


def _compare(entries: list[str], wants: tuple[Expected, ...], signs: list[str]) -> Finding:
    amounts: list[Amount | None] = []
    for entry, want in zip(entries, (*wants, *[None] * len(entries)), strict=False):
        if want is not None and want.letters:
            amounts.append(None)
            continue
        found = read_amounts(entry, want, "list")
        if len(found) > 1:
            raise Unreadable("several-answers")
        amounts.append(found[0])
    if len(entries) != len(wants):
        return Finding(WRONG)
    reason = ""
    for entry, amount, want in zip(entries, amounts, wants, strict=True):
        if amount is None:
            if not same(read_expression(entry, want.letters), want):
                return Finding(WRONG)
            continue
        near = nearness(amount.value, amount.tree, want, Fraction(1))
        if near is None:
            return Finding(WRONG)
        reason = reason or near or ("" if shape(amount.tree) in WORKED_OUT else "work-out")
    if signs and not _true_order(signs, wants):
        return Finding(WRONG)
    return Finding(FORM, reason) if reason else Finding(RIGHT)


def _true_order(signs: list[str], wants: tuple[Expected, ...]) -> bool:
    if len(signs) != len(wants) - 1:
        return len(signs) < len(wants)
    for one, sign, other in zip(wants, signs, wants[1:], strict=False):
        if one.near is None or other.near is None:
            return True
        ok = {"<": one.near < other.near, ">": one.near > other.near}
        ok |= {"≤": one.near <= other.near, "≥": one.near >= other.near}
        if not ok[sign]:
            return False
    return True


def _points(text: str, wants: tuple[Expected, ...]) -> Finding:
    points = _POINTS.findall(text)
    if not points:
        points = [text]
    entries: list[str] = []
    for point in points:
        entries += _coordinates(point)
    return _compare(entries, wants, [])


# Points --------------------------------------------------------------------------------------------------------

_NAME = regex(r"^(?:the |point |points |punto |pt |el |at |vertex |intercept )*(?:[a-z]'? ?=? ?)?(?=[(\[{])")
_ORIGIN = regex(r"\b(?:the )?origin\b|\b(?:el )?origen\b")
_AFTER_POINT = regex(r"(?<=\)) [a-z ]+$")


def _coordinates(text: str) -> list[str]:
    """The coordinates of one point, in order."""
    text = text.strip(" ,;")
    text = plain_marks(text, separate=True) if ";" not in text else plain_marks(text)
    text = _SPACE_MINUS.sub(", ", text)
    parts = [part.strip() for part in re.split(r" ?(?:[,;]|\band\b|\by\b|&) ?", text)]
    parts = [part for part in parts if part]
    if len(parts) == 1 and " " in text and re.fullmatch(r"-?[\d./]+ +-?[\d./]+", text):
        parts = text.split()
    return parts


_BARE_LABELS = regex(r"^([a-z]) (-?[\d./]+),? (?:and )?([a-z]) (-?[\d./]+)$")


def _by_labels(text: str) -> list[str] | None:
    """`x=2, y=-3`, `y is -3 and x is 2`: labels decide the order."""
    text = re.sub(r"\b(?:is|es igual a|igual a|es|equals|equal to)\b", "=", text)
    text = text.replace(":", "=")
    found = re.findall(
        r"(?<![a-z])([a-z]) ?= ?([^=]*?)(?=(?:[ ,;]|\band\b|\by\b(?! ?=))*(?<![a-z])[a-z] ?=|$)", text
    )
    if len(found) < 2 or len({letter for letter, _ in found}) != len(found):
        return None
    if {letter for letter, _ in found} <= {"x", "y"}:
        found.sort()
    parts = [part.strip(" ,;()[]") for _, part in found]
    return [re.sub(r"(?: and| y)$", "", part).strip(" ,;") for part in parts]


@lru_cache(maxsize=1024)
def _wanted_point(answer: str) -> tuple[Expected, ...]:
    text = normal(answer).lower().strip()
    inner = text.strip("()[] ")
    return tuple(expected_of(part.strip(), None) for part in inner.split(","))


_BAR_BETWEEN = regex(r"^(\(? ?-?[\d./]+ ?)\|(?=[^|]*$)")
"""`(-2|1)`, as points are written in some countries."""


def grade_point(text: str, key: Key) -> Finding:
    """Two numbers in order, brackets free, labels decide the order. Raises Unreadable."""
    wants = _wanted_point(key.answer)
    options = [one for one in alternatives(text) if one]
    if len(options) > 12 or not options:
        raise Unreadable("several-answers" if options else "no-number")
    findings = [_point(one, wants) for one in options]
    if len({f.verdict for f in findings}) > 1:
        raise Unreadable("several-answers")
    return findings[0]


def _point(text: str, wants: tuple[Expected, ...]) -> Finding:
    text = _BAR_BETWEEN.sub(r"\1,", text)
    text = _AFTER_POINT.sub("", _ORIGIN.sub("(0, 0)", digits_for_letters(text.strip())))
    if re.search(r"\bquadrant\b|\bcuadrante\b", text):
        raise Unreadable("no-number")
    if re.search(r"[,;] ?\)?$", text):
        raise Unreadable("unfinished")
    if (found := _BARE_LABELS.match(text)) is not None:
        text = f"{found.group(1)}={found.group(2)}, {found.group(3)}={found.group(4)}"
    labelled = _by_labels(text)
    if labelled is None and "=" in text:
        last = sides(text)[-1] if sides(text) else ""
        if not last:
            raise Unreadable("unfinished")
        text = last
    if labelled is not None:
        parts = [plain_marks(part) for part in labelled]
    else:
        text = _NAME.sub("", text).strip()
        if text.count("(") > 2 or len(text) > 200:
            raise Unreadable("several-answers")
        brackets = re.search(r"[(\[{](.*)[)\]}]?$", text)
        if brackets and text[:1] in "([{":
            text = text.strip("()[]{} ") if text.count("(") <= 1 else text[1:].rstrip(" )]}")
        else:
            text = text.strip("()[]{} ")
        if HAS_WORDS.search(text):
            text = re.sub(r"\bcomma\b|\bcoma\b", ",", text)
            text = spoken(text)
        parts = _coordinates(text)
    if not parts or not any(any(c.isdigit() for c in part) or HAS_WORDS.search(part) for part in parts):
        raise Unreadable("no-number")
    if len(parts) == 1 and re.search(r"[a-z]{2}", parts[0]):
        amounts = read_amounts(parts[0], None, "point")
        if len(amounts) == 1:
            raise Unreadable("no-number")
    return _compare(parts, wants, [])
