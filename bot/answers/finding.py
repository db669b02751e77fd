"""The verdict on one reading of a reply."""

from __future__ import annotations

from dataclasses import dataclass

from bot.answers.amounts import Amount
from bot.answers.units import Unit
from bot.maths import Tree, Unreadable
from bot.maths.exact import Quotient
from bot.vocabulary import Verdict

RIGHT, FORM, UNIT, WRONG = Verdict.RIGHT, Verdict.FORM, Verdict.UNIT, Verdict.WRONG
_RANK = {WRONG: 0, UNIT: 1, FORM: 2, RIGHT: 3}


@dataclass(frozen=True, slots=True)
class Finding:
    """The verdict on one reading of a reply, with a reason code and the tree that was read."""

    verdict: Verdict
    reason: str = ""
    tree: Tree | None = None
    value: Quotient | None = None
    unit: Unit | None = None
    amount: Amount | None = None

    def better(self, other: Finding) -> Finding:
        return self if _RANK[self.verdict] >= _RANK[other.verdict] else other


def _two_units(one: Finding, other: Finding) -> bool:
    return one.unit is not None and other.unit is not None and one.unit != other.unit


def all_the_same(findings: list[Finding]) -> Finding:
    """Several ways to say one thing are fine, two different answers are not graded."""
    first = findings[0]
    for other in findings[1:]:
        if first.verdict == WRONG or other.verdict == WRONG:
            if first.verdict != other.verdict or first.value is None or other.value is None:
                raise Unreadable("several-answers")
            if not first.value.same_as(other.value):
                raise Unreadable("several-answers")
        elif (first.verdict == UNIT) != (other.verdict == UNIT) and _two_units(first, other):
            raise Unreadable("several-answers")  # 12 cm or 12 cm2
        first = first.better(other)
    return first
