"""Numbers as students write them, with or without a unit, read from the words around them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from bot.answers.amount_text import rewritten
from bot.answers.expected import Expected
from bot.answers.units import PERCENT, Unit, Wanted, counting, singular, tokens_of, unit_at
from bot.maths import Tree, Undefined, Unreadable
from bot.maths.exact import Beyond, Quotient, multiplied, normal_form, plus
from bot.maths.patterns import regex
from bot.maths.read import read_normal
from bot.maths.tree import Divide, Negative


@dataclass(frozen=True, slots=True)
class Amount:
    """One number as typed: how it was written, its exact value, its unit if one stands with it.

    `others` are the parts of a compound (2 ft 12 in) behind the first; `value` counts all in `unit`.
    `noun` is an unknown word behind the number that looks like the name of something counted.
    `summed` is set where units were added with a plus sign.
    """

    tree: Tree
    value: Quotient
    unit: Unit | None = None
    others: tuple[tuple[Tree, Unit], ...] = ()
    noun: str | None = None
    summed: bool = False
    text: str = ""


_LOOSE = frozenset("~≈\"'`°#:;,!?{}[]<>|@&_…★•·✓✔✅")
_SIGNS = frozenset("+-*÷/^()%√∛π±.")
_NOT_NOUNS = frozenset(
    (
        "is", "was", "as", "its", "less", "plus", "this", "thus", "has", "minus", "equals", "times", "us", "yes",
        "across", "always", "perhaps", "units", "las", "los", "es", "mas", "menos", "entonces", "grams", "does",
        "bucks", "plus", "ones", "gracias", "thanks", "tens", "pls", "guess", "lots", "places",
    )
)  # fmt: skip
_AFTER_IN = frozenset(
    (
        "all",
        "total",
        "the",
        "each",
        "a",
        "my",
        "simplest",
        "lowest",
        "one",
        "every",
        "them",
        "decimal",
        "words",
    )
)


_PLAIN = regex(r"-?\d{1,15}(?:/\d{1,15})?")


def read_amounts(text: str, want: Expected | None, form: str, asked: Wanted | None = None) -> list[Amount]:
    """All numbers of one side of an answer, in order, each with its unit.

    Raises Unreadable where nothing can be graded or a number can't be read.
    """
    if asked is None and want is not None:
        asked = want.asked
    if _PLAIN.fullmatch(text):
        negative = False
        parts: list[tuple[str, Unit | None, str | None, str]] = [
            (text, None, None, "")
        ]  # as most replies are: nothing to take apart
    else:
        text, negative = rewritten(text, want, form, asked)
        parts = _Scan(text, asked).parts()
    if not parts:
        raise Unreadable("no-number")
    found = _compound(parts, asked)
    if negative and len(found) == 1:
        one = found[0]
        turned = Quotient({term: -abs(Fraction(c)) for term, c in one.value.top.items()}, one.value.bottom)
        tree = one.tree if isinstance(one.tree, Negative) else Negative(one.tree)
        return [Amount(tree, turned, one.unit, one.others, one.noun, one.summed, one.text)]
    return found


class _Scan:
    """One pass over an answer: maths, units, and words that say nothing."""

    def __init__(self, text: str, asked: Wanted | None) -> None:
        self.tokens = tokens_of(text)
        self.asked = asked
        self.found: list[tuple[str, Unit | None, str | None, str]] = []
        self.maths = ""
        self.joint = ""
        self.before: Unit | None = None

    def parts(self) -> list[tuple[str, Unit | None, str | None, str]]:
        """Pieces of maths, each with unit, noun, and how it was joined to the one before."""
        tokens, n, i = self.tokens, len(self.tokens), 0
        if (
            self.asked is not None
            and n > 1
            and tokens[0][1].isalpha()
            and tokens[0][1] not in ("in", "m", "c")
        ):
            first = unit_at(tokens, 0, self.asked)
            if first is not None and first[1] < n and tokens[first[1]][1][0].isdigit():
                self.before, i = first
        while i < n:
            space, word = tokens[i]
            if word[0].isdigit() or (word[0] == "." and len(word) > 1):
                self.maths += space + word
            elif word == "%" and self.asked is not None:
                self.close(PERCENT)
            elif word in _SIGNS:
                if not (word == "." and not self.maths):
                    self.maths += space + word
            elif (unit := self.unit(i)) is not None:
                if self.maths.rstrip()[-1:] == "/":  # 2.50/lb: the money is missing
                    self.maths = self.maths.rstrip()[:-1]
                    self.close(unit[0] ** -1)
                else:
                    self.close(unit[0])
                i = unit[1]
                continue
            elif len(word) > 1 and word.isalpha():
                if word in ("abs", "sqrt"):
                    self.maths += space + word
                else:
                    self.word(word)
            elif word in _LOOSE:
                if word in ",;&:":
                    self.word(word)
            elif word.isalpha():
                unknown = self.asked is not None and self.maths.strip()[-1:].isdigit() and word != "x"
                if (
                    unknown
                    or (word == "y" and space and i + 1 < n and tokens[i + 1][0])
                    or (word in "ai" and (space or i == 0) and not self.maths[-1:].isdigit())
                ):
                    self.word(word)
                elif (
                    word == "n"
                    and not self.maths
                    and i + 1 < n
                    and tokens[i + 1][0]
                    and tokens[i + 1][1][0].isdigit()
                ):
                    raise Unreadable("signs-lost")
                else:
                    self.maths += space + word
            else:
                raise Unreadable("unknown-sign")
            i += 1
        self.close(None)
        if self.before is not None and len(self.found) == 1 and self.found[0][1] is None:
            text, _, noun, joint = self.found[0]
            return [(text, self.before, noun, joint)]  # ft 3
        return self.found

    def unit(self, i: int) -> tuple[Unit, int] | None:
        word = self.tokens[i][1]
        if not self.maths.strip() and not self.found:
            return None
        if not any(c.isdigit() or c == "π" for c in self.maths):
            return None
        if word == "in" and i + 1 < len(self.tokens) and self.tokens[i + 1][1] in _AFTER_IN:
            return None
        if self.maths.rstrip()[-1:] in tuple("+-*÷^(√" if self.asked is not None else "+-*÷/^(√"):
            return None
        found = unit_at(self.tokens, i, self.asked)
        if found is not None and self.asked is not None and found[1] == len(self.tokens) - 1:
            power = self.asked.unit.kinds[0][1]
            if power > 1 and self.tokens[-1][1] == str(power) and found[0] ** power == self.asked.unit:
                return found[0] ** power, found[1] + 1  # 12 cm 2
        if found is None and self.asked is None and word in ("'", '"'):
            return None
        return found

    def word(self, word: str) -> None:
        """A word that is no unit: the maths before it ends."""
        had = bool(self.maths.strip())
        self.close(None)
        a_noun = word.isalpha() and word.endswith("s") and len(word) > 3 and word not in _NOT_NOUNS
        if had and a_noun and self.found:
            last = self.found[-1]
            self.found[-1] = (last[0], last[1], singular(word), last[3])
        if word in ("and", "&", "y", "con", "with", ",", "or"):
            self.joint = word
        elif word.isalpha():
            self.joint = self.joint or "word"

    def close(self, unit: Unit | None) -> None:
        text = self.maths.strip()
        self.maths = ""
        joint = self.joint
        if text and self.found and text[0] == "+" and self.found[-1][1] is not None:
            joint, text = "+", text[1:].strip()
        if text.startswith("(") and text.count("(") > text.count(")"):
            text = text[1:].strip()
        if text.endswith(")") and text.count(")") > text.count("("):
            text = text[:-1].strip()
        if text in (")", "(", ".", ""):
            if unit is not None and self.found and self.found[-1][1] is None:
                return
            return
        if not any(c.isalnum() or c == "π" for c in text):
            if unit is None and text.strip(" .") in ("", "-", "+") and self.found:
                if text.strip() == "-":
                    raise Unreadable("unfinished")
                return
            raise Unreadable("no-number")
        if not any(c.isdigit() or c == "π" for c in text):
            if self.asked is not None and self.found:
                return
            raise Unreadable("letter-alone")
        self.found.append((text, unit, None, joint))
        self.joint = ""


MOST_PARTS = 20


def _compound(parts: list[tuple[str, Unit | None, str | None, str]], asked: Wanted | None) -> list[Amount]:
    """Pieces read; those of one kind behind each other become one amount: 2 ft 12 in."""
    amounts: list[Amount] = []
    joints: list[str] = []
    if len(parts) > MOST_PARTS:
        raise Unreadable("several-answers")
    for text, unit, noun, joint in parts:
        tree = read_normal(text, "reply")
        try:
            value = normal_form(tree)
        except Beyond:
            raise Unreadable("no-number") from None
        except Undefined as trouble:
            raise Unreadable("too-long" if trouble.kind == "too-big" else "no-number") from None
        amounts.append(Amount(tree, value, unit, noun=noun, text=text))
        joints.append(joint)
    if len(amounts) == 1:
        return amounts
    if len(amounts) == 2 and _smaller_first(amounts):
        amounts.reverse()
    first = amounts[0]
    if first.unit is None or any(joint == "word" for joint in joints[1:]):
        return amounts
    total = first.value
    others: list[tuple[Tree, Unit]] = []
    size = first.unit.size
    for one in amounts[1:]:
        unit = one.unit
        if unit is None and len(amounts) == 2:
            part = one.value.rational()
            half = isinstance(one.tree, Divide) and part is not None and part < 1
            unit = first.unit if half else _understood(first.unit)
            size = size + 1 if half else size
        if unit is None or unit.kinds != first.unit.kinds:
            return amounts
        if unit.size >= size and "+" not in joints:
            return amounts
        size = unit.size
        share = Quotient(
            {(): unit.size / first.unit.size}, total.bottom if not total.top else first.value.bottom
        )
        counted = multiplied(one.value, share)
        sign = -1 if isinstance(first.tree, Negative) else 1
        total = Quotient(plus(total.top, counted.top, sign), total.bottom)
        others.append((one.tree, unit))
    return [Amount(first.tree, total, first.unit, tuple(others), summed="+" in joints, text=first.text)]


def _smaller_first(amounts: list[Amount]) -> bool:
    """`15 min 2 h`: two parts of one amount in the other order, not the same amount said twice."""
    one, other = amounts
    if one.unit is None or other.unit is None or one.unit.kinds != other.unit.kinds:
        return False
    least, most = one.value.rational(), other.value.rational()
    if least is None or most is None or one.unit.size >= other.unit.size:
        return False
    return 0 <= least * one.unit.size < other.unit.size and most.denominator == 1


def _understood(unit: Unit) -> Unit | None:
    """The unit left out behind a first one: 1 hr 40, 5 ft 3, 4 dollars 50."""
    kind, power = unit.kinds[0] if len(unit.kinds) == 1 else ("", 0)
    if power != 1:
        return None
    if kind == "time" and unit.size in (3600, 60):
        return Unit(unit.kinds, Fraction(60 if unit.size == 3600 else 1))
    if kind == "length" and unit.size == Fraction("0.3048"):
        return Unit(unit.kinds, Fraction("0.0254"))
    if kind == "money" and unit.size == 1:
        return Unit(unit.kinds, Fraction(1, 100))
    return None


def same_noun(noun: str, asked: Wanted) -> bool:
    """Whether an unknown noun is the one that is counted."""
    return noun in asked.own or counting(noun) == asked.unit
