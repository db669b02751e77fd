"""One way to write every sign: what phones, keyboards and autocorrect make of maths is put back.

`normal` is a projection: what it gives is not changed by it again.
"""

from __future__ import annotations

import re
import unicodedata

from bot.maths.patterns import regex

LONGEST = 4096
"""Characters of one message of the chat service."""

_MINUS = "−–—‐‑‒―﹣－➖˗⁃"
_TIMES = "×·∙⋅✕✖⨯∗⁎•ˑ"
_DIVIDE = "÷➗"
_SLASH = "∕⁄／⧸"
_SPACES = "\t\v\f\r   \u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a　"
_QUOTES = {**dict.fromkeys("‘’‚‛′`´ʹʼ", "'"), **dict.fromkeys("“”„‟″«»ʺ", '"')}

_SIGNS: dict[str, str] = {
    **dict.fromkeys(_MINUS, "-"),
    **dict.fromkeys(_TIMES, "*"),
    **dict.fromkeys(_DIVIDE, "÷"),
    **dict.fromkeys(_SLASH, "/"),
    **dict.fromkeys(_SPACES, " "),
    **_QUOTES,
    "\\": "/",
    "➕": "+",
    "⩽": "≤",
    "≦": "≤",
    "⩾": "≥",
    "≧": "≥",
    "∶": ":",
    "꞉": ":",
    "º": "°",
    "˚": "°",
    "⁰C": "°C",
    "℃": "°C",
    "℉": "°F",
    "∼": "~",
    "≅": "≈",
    "≃": "≈",
    "￠": "¢",
    "￡": "£",
    "٪": "%",
    "﹪": "%",
    "𝜋": "π",
    "П": "π",
    "∏": "π",
    "ℼ": "π",
    "＆": "&",
    "＾": "^",
    "ˆ": "^",
    "⟨": "(",
    "⟩": ")",
    "、": ",",
    "。": ".",
}

_VULGAR = {
    "½": "1/2",
    "⅓": "1/3",
    "⅔": "2/3",
    "¼": "1/4",
    "¾": "3/4",
    "⅕": "1/5",
    "⅖": "2/5",
    "⅗": "3/5",
    "⅘": "4/5",
    "⅙": "1/6",
    "⅚": "5/6",
    "⅐": "1/7",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
    "⅑": "1/9",
    "⅒": "1/10",
}

_RAISED = dict(zip("⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻ⁿˣʸᵃᵇᵐ⁽⁾", "0123456789+-nxyabm()", strict=True))
_LOWERED = dict(zip("₀₁₂₃₄₅₆₇₈₉", "0123456789", strict=True))
_KEPT_PICTURES = frozenset("👍👎✅❌✓✔✗✘°√∛π∞∅±∓≈~<>=+-|^$¢£€¥%")

_RUN_RAISED = regex("[" + "".join(map(re.escape, _RAISED)) + "]+")
_RUN_VULGAR = regex("(?<=([0-9]))?([" + "".join(_VULGAR) + "])")
_OVERLINED = regex(r"(?<=[.,\d])((?:\d[\u0304\u0305\u0307])+)")
_ONE = {
    "&gt;": ">",
    "&lt;": "<",
    "**": "^",
    "<=": "≤",
    "=<": "≤",
    "=>": "≥",
    ">=": "≥",
    "!=": "≠",
    "=/=": "≠",
    "<>": "≠",
}
_SPACED = regex(r" {2,}")
_AROUND_LINE = regex(r" *\n[ \n]*")


def normal(text: str) -> str:
    """The text with one way to write each sign: - * ÷ / ^ < ≤ > ≥ ≠ √ π, plain digits, single spaces.

    Emoji, control, invisible and direction marks are dropped; superscripts become powers, vulgar fractions
    fractions; line breaks stay. Letters keep their case and accents.
    """
    text = text[: LONGEST + 1]
    for _ in range(4):
        once = _once(text)
        if once == text:
            break
        text = once[: LONGEST + 1]
    return text


def _once(text: str) -> str:
    if not text.isascii():
        text = _signs(text)
    elif "\\" in text or not text.isprintable():
        text = "".join(c for c in text.replace("\\", "/").replace("\t", " ") if c.isprintable() or c == "\n")
    if "=" in text or "*" in text or ";" in text or "<" in text:
        text = _entities(text)
    if "  " in text:
        text = _SPACED.sub(" ", text)
    if "\n" in text:
        text = _AROUND_LINE.sub("\n", text)
    return text.strip(" \n")


def _entities(text: str) -> str:
    text = text.replace("&gt;", ">").replace("&lt;", "<")
    return _PAIRS.sub(lambda m: _ONE[m.group()], text)


_PAIRS = regex(r"\*\*|<=|=<|=>|>=|!=|=/=|<>")


_INVISIBLE = regex("[\u00ad\u061c\u200b-\u200f\u202a-\u202e\u2060-\u2064\u2066-\u2069\ufe00-\ufe0f\ufeff]")
_WIDE_DIGITS = str.maketrans("０１２３４５６７８９．，", "0123456789.,")


_SINGLE = str.maketrans({sign: plain for sign, plain in _SIGNS.items() if len(sign) == 1})
_WRITTEN_BY_US = regex(r"[ -~÷√∛π≤≥≠°]*")


def _signs(text: str) -> str:
    # What lessons write holds no more than these, and is read back hundreds of thousands of times in a proof.
    quick = text.translate(_SINGLE)
    if _WRITTEN_BY_US.fullmatch(quick):
        return quick
    text = _INVISIBLE.sub("", text).translate(_WIDE_DIGITS)
    text = _OVERLINED.sub(lambda m: "(" + re.sub(r"\D", "", m.group()) + ")", text)
    text = _RUN_RAISED.sub(_power, text)
    text = _RUN_VULGAR.sub(lambda m: (" " if m.group(1) else "") + _VULGAR[m.group(2)], text)
    out = []
    for c in text:
        if c.isascii():
            out.append(c if c.isprintable() or c == "\n" else " " if c in "\t\r" else "")
        elif c in _SIGNS:
            out.append(_SIGNS[c])
        elif c in _LOWERED:
            out.append(_LOWERED[c])
        else:
            kind = unicodedata.category(c)
            if c in _KEPT_PICTURES:
                out.append(c)
            elif kind[0] in "LN":
                out.append(unicodedata.normalize("NFKC", c))
            elif kind == "Zl" or kind == "Zp":
                out.append("\n")
            elif kind[0] == "Z":
                out.append(" ")
            elif kind[0] in "PS" and kind not in ("So", "Sk"):
                out.append(unicodedata.normalize("NFKC", c))
            elif kind == "Mn" and c in "\u0301\u0303\u0308\u0327":
                out.append(c)  # accents of a decomposed é, ñ, ü, ç
    return unicodedata.normalize("NFC", "".join(out))


def _power(found: re.Match[str]) -> str:
    inside = "".join(_RAISED[c] for c in found.group())
    plain = inside.lstrip("-").isdigit() or len(inside) == 1
    return f"^{inside}" if plain else f"^({inside})"
