"""A test or a second look that was set: a wish for a day of its own, laid over that day's plan."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta

from bot.planner.plan import DayKind, DayPlan
from bot.records.wishes import Wish
from bot.school.wishes import WishKind

WAITS = timedelta(days=30)
"""How long a test that was set waits for a day that has room for it."""
KINDS = (WishKind.TEST, WishKind.SECOND_LOOK)


def test_wished(wishes: Sequence[Wish]) -> Wish | None:
    """The test or second look that is set for a day; of several the first."""
    return next((w for w in wishes if w.kind in KINDS), None)


def lay_over_test(plan: DayPlan, wishes: Sequence[Wish]) -> DayPlan:
    """The plan as a test day, where one is set; small, gentle and holiday days stay what they are."""
    wish = test_wished(wishes)
    usual = (DayKind.LESSON, DayKind.LIGHT, DayKind.REVIEW_ONLY, DayKind.TEST)
    number = wish.what.get("test") if wish is not None else None
    if not isinstance(number, int) or plan.kind not in usual:
        return plan
    return replace(
        plan,
        kind=DayKind.TEST,
        lesson=None,
        sitting=1,
        guided=(),
        review=(),
        own_items=0,
        test=number,
        hands_on=None,
        minutes=float(str(wish.what.get("minutes", 40))) if wish is not None else plan.minutes,
        size=0,
        dropped=(),
    )


def used_up(wishes: Sequence[Wish], plan: DayPlan) -> list[Wish]:
    """The wish that made a day a test day: it is given."""
    wish = test_wished(wishes)
    return [wish] if wish is not None and plan.test is not None and plan.test == wish.what.get("test") else []
