"""Number marks: thousands, decimal commas, stray spaces, letters for digits, repeating decimals.

What comes out holds plain numbers only: `1250`, `0.75`, `0.1(6)`.
"""

from __future__ import annotations

import re
from fractions import Fraction

from bot.maths import Unreadable
from bot.maths.patterns import regex

_FOR_DIGITS = str.maketrans("oli", "011")
_WITH_LETTERS = regex(r"(?:(?<![a-z\d])|(?<=\dx))(?=[oli.,]*\d)[\doli.,]*[oli][\doli.,]*(?![a-z\d])")
_LONE_O = regex(r"(?<![a-z\d] )(?<![a-z\d])o(?![a-z\d])(?! [a-z\d])")
_STRAY_SPACE = regex(r"(?<![\d.,])(\d*)(?: ?\. (\d+)|(?<=\d) \.(\d+))(?![\d.,]*\d)")
_GROUPED = r"[1-9]\d{0,2}"
_SPACED = regex(rf"(?<![\d.,/]){_GROUPED}(?: \d{{3}})+(?![\d]| ?/| \d)")
_MARKED = regex(r"\d*(?:[.,]\d+)+")
_DOTS = regex(r"(\d*)\.(\d+) ?(\.\.+)")
_REPEATING = regex(
    r"(\d*)\.(\d+) ?\(? ?(?:is |and |with )?(?:the |a )?(?:bar|line|repeating|repeats|repeat|repeated|reapeating|"
    r"repeting|recurring|recurs|forever|periodico|periodica|se repite|on and on|infinitely)\b"
    r"(?: over(?: the)?(?: top)?(?: \d+)?| on(?: top)?| forever| decimal)*\)?"
)


def plain_marks(text: str, *, separate: bool = False, wants: Fraction | None = None) -> str:
    """Numbers with their marks written plainly.

    `separate` where commas separate entries (lists, points, sets); then `;` lets commas be decimal.
    `wants` is the expected value: a number that is right in one reading of its mark and wrong in the other
    is asked about. Raises Unreadable: comma-groups, two-points, thousands-or-decimal.
    """
    if not separate and " " in text:
        text = _STRAY_SPACE.sub(_unspaced, text)
        text = _SPACED.sub(lambda m: m.group().replace(" ", ""), text)
    if ".." in text:
        text = _DOTS.sub(_dots, text)
    if "." in text or "," in text:
        if separate and ";" not in text:
            if re.search(r"\d\.\d+\.\d", text):
                raise Unreadable("two-points")
        else:
            text = _MARKED.sub(lambda m: _marked(m.group(), wants), text)
    return text


def digits_for_letters(text: str, *, keep_l: bool = False) -> str:
    """o among digits, or alone, is 0; l and i among digits are 1. `keep_l` where litres may be meant."""
    if keep_l:
        return _WITH_LETTERS.sub(_keeping_l, text)
    text = _WITH_LETTERS.sub(lambda m: m.group().translate(_FOR_DIGITS), text)
    return _LONE_O.sub("0", text)


def _keeping_l(found: re.Match[str]) -> str:
    number = found.group()
    end = "l" if number.endswith("l") else ""
    return number[: len(number) - len(end)].translate(_FOR_DIGITS) + end


def _unspaced(found: re.Match[str]) -> str:
    whole, after, after_space = found.groups()
    return f"{whole}.{after or after_space}"


def _marked(number: str, wants: Fraction | None) -> str:
    commas, points = number.count(","), number.count(".")
    if commas and points:
        decimal = "," if number.rindex(",") > number.rindex(".") else "."
        other = "." if decimal == "," else ","
        whole, _, places = number.rpartition(decimal)
        if decimal in whole or not _well_grouped(whole, other):
            raise Unreadable("comma-groups")
        return whole.replace(other, "") + "." + places
    if points == 1:
        if wants is not None and _well_grouped(number, ".") and Fraction(number.replace(".", "")) == wants:
            raise Unreadable("thousands-or-decimal")
        return number
    if points > 1:
        if _well_grouped(number, "."):
            return number.replace(".", "")
        raise Unreadable("two-points")
    if commas == 1:
        decimal_reading = number.replace(",", ".")
        if not _well_grouped(number, ","):
            return decimal_reading
        if wants is not None and Fraction(decimal_reading) == wants and not number.endswith("000"):
            raise Unreadable("thousands-or-decimal")
        return number.replace(",", "")
    if _well_grouped(number, ","):
        return number.replace(",", "")
    raise Unreadable("comma-groups")


def _well_grouped(number: str, mark: str) -> bool:
    first, *others = number.split(mark)
    if not others:
        return True
    return 1 <= len(first) <= 3 and first[0] != "0" and all(len(group) == 3 for group in others)


def _dots(found: re.Match[str]) -> str:
    """Three dots repeat; two do where the digits repeat already, else they are a slip."""
    whole, places, dots = found.groups()
    if len(dots) == 2 and not re.search(r"(\d+)\1$", places):
        return f"{whole}.{places}"
    return repeated(whole, places)


def repeated(whole: str, places: str) -> str:
    """Dots repeat the shortest block that ends the digits twice, else the last digit."""
    for size in range(1, len(places) // 2 + 1):
        block = places[-size:]
        if places[-2 * size : -size] == block:
            return f"{whole or '0'}.{places}({block})"
    return f"{whole or '0'}.{places}({places[-1]})"


def said_to_repeat(text: str) -> list[str]:
    """`0.16 repeating`: the readings, with the last digit repeating and with all of them."""
    if not (found := _REPEATING.search(text)):
        return [text]
    whole, places = found.group(1) or "0", found.group(2)
    blocks = {places[-1], places}
    if len(places) > 1:
        shortest = repeated(whole, places).partition("(")[2][:-1]
        if len(shortest) < len(places) and places.endswith(shortest * 2):
            blocks = {shortest}
    before, after = text[: found.start()], text[found.end() :]
    return [f"{before}{whole}.{places[: len(places) - len(b)]}({b}){after}" for b in sorted(blocks, key=len)]
