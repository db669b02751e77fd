"""Tree to what people read: plain text with Unicode signs, and typst for pictures.

Both tidy as a teacher writes: `1 x` is x, `+ -3` is − 3, two numbers side by side get a times sign,
and brackets come where they would be needed.
"""

from __future__ import annotations

from typing import ClassVar

from bot.maths.tree import (
    Group,
    Negative,
    Number,
    Tree,
)
from bot.maths.writer import (
    ATOM,
    BAR,
    ONE,
    POWER,
    SIGNED,
    Shown,
    Writer,
    starts_with_digit,
)


def plain(tree: Tree) -> str:
    """The tree as text: `2 1/2`, `3x − 4`, `x²`, `(2, −3)`, `5 : 2`."""
    return _Plain().whole(tree)


def typst(tree: Tree) -> str:
    """The tree as typst maths, to stand between dollar signs."""
    return _Typst().whole(tree)


_RAISED = str.maketrans("0123456789-−nxyabm", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻⁻ⁿˣʸᵃᵇᵐ")


class _Plain(Writer):
    minus = "−"
    times = "×"
    divided = "÷"

    def bar(self, left: Tree, right: Tree) -> Shown:
        if isinstance(left, Negative) and isinstance(left.of, Number):  # (-3)/4 is −3/4
            return Shown(f"{self.minus}{self.bar(left.of, right).text}", SIGNED)
        if right == ONE and not starts_with_digit(left):  # x/1 is x
            return self.show(left)
        return Shown(f"{self.at(left, POWER)}/{self.at(right, POWER)}", BAR)

    def mixed(self, whole: int, top: int, bottom: int) -> str:
        return f"{whole} {top}/{bottom}"

    def fraction(self, top: str, bottom: str) -> str:
        return f"{top}/{bottom}"

    def power(self, base: str, exponent: Tree) -> str:
        text = self.whole(_bare(exponent))
        if text.lstrip("−").isdigit() or text in ("n", "x", "y", "a", "b", "m"):
            return base + text.translate(_RAISED)
        return f"{base}^{text}" if text.isalnum() else f"{base}^({text})"

    def root(self, inner: Tree, degree: int) -> str:
        sign = "√" if degree == 2 else "∛"
        return sign + self.at(inner, ATOM)

    def percent(self, inner: str) -> str:
        return f"{inner}%"

    def pi(self) -> str:
        return "π"

    def dollar(self) -> str:
        return "$"


class _Typst(Writer):
    minus = "-"
    times = "times"
    divided = "div"
    plus_minus = "plus.minus"
    signs: ClassVar[dict[str, str]] = {"=": "=", "≠": "!=", "<": "<", "≤": "<=", ">": ">", "≥": ">="}

    def bar(self, left: Tree, right: Tree) -> Shown:
        top, bottom = _bare(left), _bare(right)
        if bottom == ONE and not starts_with_digit(top):
            return self.show(left)
        if isinstance(top, Negative) and isinstance(top.of, Number):
            return Shown(f"-{self.bar(top.of, bottom).text}", SIGNED)
        return Shown(f"frac({self.whole(top)}, {self.whole(bottom)})", BAR)

    def mixed(self, whole: int, top: int, bottom: int) -> str:
        return f"{whole} frac({top}, {bottom})"

    def fraction(self, top: str, bottom: str) -> str:
        return f"frac({top}, {bottom})"

    def run_together(self, start: str, end: str, left: Tree, right: Tree) -> str:
        return f"{start} {end}"  # two letters side by side would be one word

    def power(self, base: str, exponent: Tree) -> str:
        return f"{base}^({self.whole(_bare(exponent))})"

    def root(self, inner: Tree, degree: int) -> str:
        text = self.whole(_bare(inner))
        return f"sqrt({text})" if degree == 2 else f"root(3, {text})"

    def percent(self, inner: str) -> str:
        return f"{inner} %"

    def pi(self) -> str:
        return "pi"

    def dollar(self) -> str:
        return "\\$"


def _bare(tree: Tree) -> Tree:
    return tree.of if isinstance(tree, Group) else tree
