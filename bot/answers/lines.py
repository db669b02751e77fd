"""One line of working: what it states, among words, notes and labels."""

from __future__ import annotations

import re
from dataclasses import dataclass

from bot.answers.around import TICKS, small, trimmed, without_reason
from bot.answers.expressions import expression_text
from bot.answers.spoken import sign_words, spoken
from bot.maths import Tree, Unreadable, normal
from bot.maths.patterns import regex
from bot.maths.read import LONGEST, read_normal
from bot.maths.tree import Equation, Inequality


@dataclass(frozen=True, slots=True)
class Line:
    """One line read: its statements (more than one: joined by *or*), or the sides of a chain."""

    trees: tuple[Tree, ...]
    goes_on: bool
    nearly: bool = False
    told: bool = False
    """A lone number among words that do not say that it is the answer: it may be what was done."""


# Reading a line ---------------------------------------------------------------------------------------------

_RELATION = regex(r"[=<>≤≥≈]")
_PERCENT_CHANGE = regex(r"([\d.]+) (increased|decreased|raised|reduced|more|less|off) by ([\d./ ]+)%")
_PERCENT_OFF = regex(
    r"([\d./]+)% (off|more|less|greater|de descuento)(?: of| than| de| en| sobre)? ?(?=[\d.])"
)
_OF = regex(r"(?<=[\d%)]) (?:of|de) (?=[\d(])")
_WORDS = regex(r"[a-z]{2,}(?:[ ,]+(?:[a-z]{2,}|[ai]\b))*|(?<![a-z\d]) ?\bi\b(?= [a-z]{2})|^a (?=[a-z]{2})")
_NOTE = regex(
    # Possessive throughout: no way back, so that a long row of bars takes no longer than it is.
    r"^(?:[-+*/÷:] ?+\(?+-?+(?:[\d.]++(?:/[\d.]++)?+)?+[a-z]?+\)?+[ ,|]*+)++$|"
    r"^[|: ]*[-+*/÷:] ?[\d./]+[a-z]?(?: [-+*/÷:] ?[\d./]+[a-z]?)*[| ]*$"
)
_BARE = regex(r"-? ?[\d./]+")
_NAMED = regex(r"[a-z] ?=")  # x = 5 or -5
_TOLD = regex(r"[a-z]{3}|\bis\b")
_KEPT = frozenset(("or", "and", "sqrt", "abs"))


def read_line(text: str, before: Line | None) -> Line | None:
    """What a line states; None for words alone and notes of what is done. Raises Unreadable."""
    text = TICKS.sub("", small(normal(text[: 4 * LONGEST])))
    if len(text) > LONGEST:
        raise Unreadable("too-long")
    text = without_reason(text)
    goes_on = text.lstrip().startswith(("=", "≈"))
    text = trimmed(text.replace("->", " so ").replace("→", " so ").replace("⇒", " so "))
    piece = _statement(text, before)
    if piece is None:
        return None
    nearly = "≈" in piece
    piece = piece.replace("≈", "=").strip("= ") if goes_on else piece.replace("≈", "=")
    trees: list[Tree] = []
    for option in re.split(r" ?\bor\b ?|(?<=\d), ?(?=[a-z] ?=)", piece):
        if not option.strip():
            raise Unreadable("unfinished")
        option = re.sub(r"\+ ?/ ?-", "±", option)
        if trees and isinstance(trees[-1], Equation) and (bare := _BARE.fullmatch(option.strip())):
            option = f"{named.group()} {bare.group()}" if (named := _NAMED.match(piece)) else option
        for one in (option.replace("±", "+"), option.replace("±", "-")) if "±" in option else (option,):
            trees.append(_tree(one))
    told = bool(_TOLD.search(text)) and not re.search(r"[=<>≤≥≈]|\banswer|\bequals\b", text)
    return Line(tuple(trees), goes_on, nearly, told and len(trees) == 1)


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
    text = _PERCENT_OFF.sub(
        lambda off: f"(1{'+' if off.group(2) in ('more', 'greater') else '-'}{off.group(1)}%)*", text
    )
    text = _OF.sub(" * ", text)
    if re.search(r"[a-z]{2}", text):
        if not re.search(r"\d", text) and not _RELATION.search(text):
            return None
        head, colon, tail = text.rpartition(":")
        if colon and re.search(r"[a-z]{2}", head) and re.search(r"\d", tail):
            text = tail.strip()
        if re.search(r"[a-z]{2}", text):
            piece = _among_words(text)
            if piece is None:
                return None
            text = piece
    if not re.search(r"[\da-z]", text):
        return None
    if not _RELATION.search(text) and _NOTE.match(text) and before is not None and _is_note(text, before):
        return None
    return text


def _is_note(text: str, before: Line) -> bool:
    """`-3   -3` and `÷2` under an equation; in an expression a line may begin with a minus."""
    if isinstance(before.trees[0], (Equation, Inequality)):
        return True
    return text[0] in "*/÷:" or (len(set(text.split())) == 1 and len(text.split()) > 1)


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
