"""What time it is: one object that the whole program reads, so that a demo can live a year quickly."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from typing import Protocol


class Clock(Protocol):
    """Gives the present as an aware time in UTC."""

    def now(self) -> datetime:
        """Return the present, aware, in UTC."""
        ...


class RealClock:
    """The machine's own clock."""

    def now(self) -> datetime:
        """Return the machine's time."""
        return datetime.now(UTC)


class DemoClock:
    """A clock that runs on from where it is put; only the demo and tests put it anywhere."""

    def __init__(self, start: datetime) -> None:
        self._shift = start - datetime.now(UTC)

    def now(self) -> datetime:
        """Return the machine's time, shifted."""
        return datetime.now(UTC) + self._shift

    def go_to(self, when: datetime) -> None:
        """Jump so that it is `when` now; backwards is allowed, as with a real clock that is set."""
        self._shift = when - datetime.now(UTC)

    def go_on(self, by: timedelta) -> None:
        """Jump by a stretch of time."""
        self._shift += by
