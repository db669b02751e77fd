"""What a phone's line may not break, and quotes as print has them.

Every change is one character for one character of the same size to the service, so that lengths and the
places of marks stay as they were. `bot.maths.normal` puts all of it back when a student copies a message.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from itertools import pairwise

SPACE = "\u00a0"
"""A space that no line ends at."""
DIVISION = "\u2215"
"""A slash that the chat service doesn't take for the beginning of a command."""
HYPHEN = "\u2011"
"""A hyphen that no line ends at."""
SHORT = 14
"""So many characters of a formula stay on one line; a longer one may break before a sign."""

_RELATIONS = frozenset("=≠≈<>≤≥")
_SUMS = frozenset("+−±")
_PRODUCTS = frozenset("×÷")
_SIGNS = _RELATIONS | _SUMS | _PRODUCTS
_SIGNS_BETWEEN_NUMBERS = frozenset(("-", "–", "·", ":", "R"))
"""Signs only where maths stands on both sides; elsewhere they are dashes, bullets and colons."""
_LEVELS = (_RELATIONS, _SUMS | {"-", "–"}, _PRODUCTS | {"·", ":", "R"})
"""Where a long formula may break, first to last."""

_TOKEN = re.compile(r"[^ \n]+")
_NUMBER = re.compile(r"[-−+$€£]*\d[\d,.]*|[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]|[a-z]")
_WHOLE = re.compile(r"[(“]*[-−]?\d+")
_FRACTION = re.compile(r"(\d+/\d+|[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒])\W*")
_WORD = re.compile(r"[^\W\d_]{3}")
_PAIR_OPENS = re.compile(r"\W?\([^\s()]{1,8},")
_PAIR_CLOSES = re.compile(r"[^\s()]{1,8}\)\W*")
# fmt: off
_UNITS = frozenset((
    "mm", "cm", "dm", "m", "km", "in", "ft", "yd", "mi", "mg", "g", "kg", "oz", "lb", "t", "mL", "cL",
    "L", "ml", "cl", "l", "gal", "qt", "pt", "s", "sec", "min", "h", "hr", "°C", "°F", "°", "%", "¢",
    "mm²", "cm²", "m²", "km²", "in²", "ft²", "yd²", "mi²", "mm³", "cm³", "m³", "km³", "in³", "ft³",
    "yd³", "mi³",
    "km/h", "mi/h", "m/s", "ft/s", "mph", "a.m.", "p.m.",
))
# fmt: on
_LINKED = re.compile(r"(?<=[)\]])/(?=[\da-zA-Z])")
"""Behind a bracket the service makes a link of `/2`, as if it were a command."""
_HYPHENATED = re.compile(r"(?<![\w/@-])(?=[\d-]*[^\W\d_])\w+(?:-\w+)+(?![\w/@-])")


@dataclass(frozen=True, slots=True)
class _Piece:
    """A stretch that stands together: from, to, and what it is as a sign ("" if it is none)."""

    first: int
    last: int
    sign: str = ""


def held_together(text: str) -> str:
    """The same text, with spaces and hyphens that no line may end at inside short formulas and the like.

    Held together are a number and its short unit, a mixed number, a pair of coordinates, *x-axis*, and
    formulas of up to SHORT characters. A longer formula may break before a sign, never after it.
    """
    held = list(text)
    for line in re.finditer(r"[^\n]+", text):
        tokens = [(line.start() + found.start(), found[0]) for found in _TOKEN.finditer(line[0])]
        for n in _kept_gaps(tokens):
            if not tokens[n][1].endswith("|"):  # a line may end behind a bar, whatever space follows
                held[tokens[n + 1][0] - 1] = SPACE
    for word in _HYPHENATED.finditer(text):
        if len(word[0]) <= SHORT and min(map(len, word[0].split("-"))) <= 2:
            for at in range(word.start(), word.end()):
                if text[at] == "-":
                    held[at] = HYPHEN
    for slash in _LINKED.finditer(text):
        held[slash.start()] = DIVISION
    return "".join(held)


def _kept_gaps(tokens: list[tuple[int, str]]) -> set[int]:
    """Which gaps (n: between token n and the next) are kept; only single spaces are."""
    single = {n for n, ((at, token), (then, _)) in enumerate(pairwise(tokens)) if at + len(token) + 1 == then}
    kept = {n for n in single if _belongs(tokens[n][1], tokens[n + 1][1])}
    pieces = []
    first = 0
    for n in range(len(tokens)):
        if n not in kept:
            alone = tokens[n][1] if first == n else ""
            sign = alone if alone in _SIGNS or alone in _SIGNS_BETWEEN_NUMBERS else ""
            pieces.append(_Piece(first, n, sign))
            first = n + 1
    for run in _formulas(tokens, pieces, single):
        kept |= _kept_of(tokens, run, 0)
    return kept


def _belongs(one: str, then: str) -> bool:
    """Whether two words are one thing: 3 cm, 2 1/2, (−2, 5)."""
    if _PAIR_OPENS.fullmatch(one) and _PAIR_CLOSES.fullmatch(then):
        return True
    if _WHOLE.fullmatch(one) and _FRACTION.fullmatch(then):
        return True
    bare = _bare(then)
    unit = bare in _UNITS or then.rstrip(",;:!?)") in _UNITS
    number = one.lstrip("(“‘~≈")
    return unit and bool(_NUMBER.fullmatch(number) or re.fullmatch(r"\d+/\d+", number))


def _bare(token: str) -> str:
    """A word without the quotes, brackets and stops around it."""
    return token.lstrip("“‘\"'([").rstrip(".,;:!?”’\"')]")


def _formulas(tokens: list[tuple[int, str]], pieces: list[_Piece], single: set[int]) -> list[list[_Piece]]:
    """Runs of pieces that signs join; a run begins with a sign where words stand before it."""
    runs: list[list[_Piece]] = []
    for n, piece in enumerate(pieces):
        if not piece.sign or n + 1 == len(pieces) or piece.last not in single:
            continue
        before = pieces[n - 1] if n and pieces[n - 1].last in single else None
        after = pieces[n + 1]
        joins_before = before is not None and not before.sign and _ends_open(tokens[before.last][1])
        if piece.sign in _SIGNS_BETWEEN_NUMBERS and not (
            joins_before
            and before is not None
            and _is_maths(tokens[before.last][1])
            and _is_maths(tokens[after.first][1])
        ):
            continue
        if after.sign or len(_bare(tokens[after.first][1])) > SHORT:
            continue
        if before is not None and joins_before and runs and runs[-1][-1] == before:
            runs[-1] += [piece, after]
        elif before is not None and joins_before:
            runs.append([before, piece, after])
        else:
            runs.append([piece, after])
    return runs


def _ends_open(token: str) -> bool:
    """Whether a formula may go on behind a word: no stop stands there."""
    return token in ("?", "□", "_", "__") or token[-1] not in ".,;:!?…"


def _is_maths(token: str) -> bool:
    bare = _bare(token) or token.strip(".,;:!")
    return any(c.isalnum() or c in "?□_" for c in bare) and not _WORD.search(bare)


def _kept_of(tokens: list[tuple[int, str]], run: list[_Piece], level: int) -> set[int]:
    """The gaps of a formula that are kept: all of a short one; a long one opens before its weakest signs."""
    length = tokens[run[-1].last][0] + len(_bare(tokens[run[-1].last][1])) - tokens[run[0].first][0]
    if length <= SHORT or level == len(_LEVELS):
        return {piece.last for piece in run[:-1]}
    parts: list[list[_Piece]] = [[]]
    for piece in run:
        if piece.sign in _LEVELS[level] and parts[-1]:
            parts.append([])
        parts[-1].append(piece)
    kept: set[int] = set()
    for part in parts:
        kept |= _kept_of(tokens, part, level + 1)
    return kept


_QUOTE = re.compile(r"`[^`]*`|[\"']")
_MARKS = "*_"


def typographic(text: str) -> str:
    """A lesson's text with its straight quotes and apostrophes as print has them; maths in backticks stays.

    A quote behind a digit that closes nothing is a prime, of feet, inches or minutes.
    """
    if "'" not in text and '"' not in text:
        return text
    opened: list[str] = []

    def shown(found: re.Match[str]) -> str:
        mark = found[0]
        if mark not in ("'", '"'):
            return mark
        before = text[: found.start()].rstrip(_MARKS)[-1:]
        after = text[found.end() :].lstrip(_MARKS)[:1]
        if (not before or before in " \n(—–/[“‘") and after.strip():
            opened.append(mark)
            return "‘" if mark == "'" else "“"
        if mark in opened and not (mark == "'" and after.isalpha()):
            opened.remove(mark)
        elif before.isdigit() and not after.isalpha():
            return "′" if mark == "'" else "″"
        return "’" if mark == "'" else "”"

    return _QUOTE.sub(shown, text)
