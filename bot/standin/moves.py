"""Where the demo clock's words lead: morning, evening, next day, Monday, +minutes."""

from __future__ import annotations

import re
from datetime import UTC, datetime, time, timedelta
from zoneinfo import ZoneInfo

WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")


def moment(
    now: datetime, to: str, zone: str, *, morning: time = time(8), evening: time = time(19)
) -> datetime:
    """Return the next moment (UTC) that a word means in a zone, always later than `now`.

    morning, evening: the next such hour. next day: tomorrow at the morning hour. A weekday's name: its next
    morning. +90: so many minutes on. ValueError says what can be asked.
    """
    word = to.strip().lower()
    minutes = re.fullmatch(r"\+\s*(\d{1,6})", word)
    if minutes:
        return now + timedelta(minutes=int(minutes[1]))
    local = now.astimezone(ZoneInfo(zone))
    match word:
        case "morning":
            return _next(local, morning)
        case "evening":
            return _next(local, evening)
        case "next day":
            return _at(local, 1, morning)
        case _ if word in WEEKDAYS:
            days = (WEEKDAYS.index(word) - local.weekday()) % 7
            meant = _at(local, days, morning)
            return meant if meant > now else _at(local, days + 7, morning)
    raise ValueError("The clock goes on to: morning, evening, next day, a weekday, or +minutes.")


def _next(local: datetime, hour: time) -> datetime:
    today = _at(local, 0, hour)
    return today if today > local else _at(local, 1, hour)


def _at(local: datetime, days: int, hour: time) -> datetime:
    day = local.date() + timedelta(days=days)
    return datetime.combine(day, hour, local.tzinfo).astimezone(UTC)
