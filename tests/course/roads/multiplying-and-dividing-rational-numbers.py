"""Products and quotients as printed, by Python's fractions; the sign found by counting minus signs."""

from __future__ import annotations

import re
from fractions import Fraction


def _plain(ask, before, after):
    return re.search(rf"{before}(.*?){after}", ask)[1].replace("−", "-").replace("×", "*").replace("÷", "/")


def _worth(text):
    """A slash without spaces is a fraction bar: it is read before × and ÷."""
    text = re.sub(r"(\d+)/(\d+)", r"F('\1/\2')", text)
    text = re.sub(r"(?<!['\d/.])(\d+(?:\.\d+)?)(?![\d'/.])", r"F('\1')", text)
    return eval(text, {"F": Fraction})


def _sign(text):
    return -1 if len(re.findall(r"(?<![\d)])\s*-(?=\d|\()", text)) % 2 else 1


def decimal_signs(ask, choices):
    product = _worth(_plain(ask, "much is ", r"\?"))
    return [choice for choice in choices if Fraction(choice.replace("−", "-")) == product]


def times_a_fraction(ask):
    text = _plain(ask, "Work out ", r"\.$")
    return _sign(text) * abs(_worth(text))


def turn_over_keep_sign(ask, f, g):
    """What has to be multiplied by the second to make the first: found by trying the candidates."""
    tops = (n for n in range(-200, 201) if n)
    return next(Fraction(n, d) for n in tops for d in range(1, 90) if Fraction(n, d) * g == f)


def fraction_over_fraction(a, b, c, d, choices):
    wanted = Fraction(-int(a), int(b)) / Fraction(int(c), int(d))
    return [choice for choice in choices if _worth(choice.replace("−", "-").replace("×", "*")) == wanted]


def level_falls(p, h):
    """Half a step at a time."""
    level, gone = Fraction(0), Fraction(0)
    while gone < h:
        level, gone = level - p / 2, gone + Fraction(1, 2)
    return level


def three_in_a_row(ask):
    text = _plain(ask, "Work out ", r"\.$")
    return _sign(text) * abs(_worth(text))
