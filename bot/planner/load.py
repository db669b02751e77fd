"""How much a day holds: the number of review items, from how the last days went and from the family's
minutes.
"""

from __future__ import annotations

from bot.planner.history import History, Paces, PastDay, Wishes

FIRST_WEEKS = 10
"""School days on which review starts small."""
START_SMALL, START = 8, 12
FEWEST, MOST = 6, 24
STEP = 2
STEADY_DAYS = 10
"""School days inside the minutes after which review grows by one step."""
SMALL_DAY_ITEMS = 6
GENTLE_ITEMS = 8
OFF_SEASON_MINUTES = 10


def review_size(history: History, minutes: int) -> int:
    """Review items that this student's next full day should hold, 6 to 24, from the last days.

    Starts at 12 (8 on the first ten school days), rises by two after ten school days in a row that ended
    inside the family's minutes, falls by two at once after one that didn't.
    """
    full_days = [day for day in history.days if day.size > 0]
    if not full_days:
        return START_SMALL if history.school_day <= FIRST_WEEKS else START
    size = full_days[-1].size
    if not _went_well(full_days[-1], minutes):
        return max(FEWEST, size - STEP)
    if history.school_day <= FIRST_WEEKS:
        return size
    if full_days[-1].number <= FIRST_WEEKS:
        return size + START - START_SMALL
    in_a_row = 0
    for day in reversed(full_days):
        if day.size != size or not _went_well(day, minutes) or day.number <= FIRST_WEEKS:
            break
        in_a_row += 1
    return min(MOST, size + STEP) if in_a_row >= STEADY_DAYS else size


def fits(paces: Paces, minutes: int, lesson: bool, guided: int) -> int:
    """Most review items that fit into the family's minutes beside warm-up and, if there is one, the
    lesson.
    """
    left = minutes - fixed_minutes(paces, lesson, guided)
    return max(0, int(left / paces.review_item))


def fixed_minutes(paces: Paces, lesson: bool, guided: int) -> float:
    """Minutes of the day apart from review."""
    return paces.warm_up + (paces.lesson + guided * paces.guided_item if lesson else 0.0)


def day_size(history: History, wishes: Wishes, lesson: bool, guided: int) -> int:
    """Review items of a full day: the wished number, or the student's own size as far as the minutes go."""
    if wishes.review_items is not None:
        return wishes.review_items
    size = review_size(history, wishes.minutes)
    return max(FEWEST, min(size, fits(history.paces, wishes.minutes, lesson, guided)))


def _went_well(day: PastDay, minutes: int) -> bool:
    return day.finished and (day.minutes is None or day.minutes <= minutes)
