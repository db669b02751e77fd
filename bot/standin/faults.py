"""What may go wrong with a service far away, switched on while things run.

A fault says what it does (`kind`), to which calls (`method`, `chat`), and for how long (`times`, `for_seconds`).
"""

from __future__ import annotations

import time
from collections import deque
from dataclasses import asdict, dataclass, fields
from typing import Any

from bot.standin import limits
from bot.standin.model import Chat
from bot.standin.refusal import (
    OTHER_POLL,
    UNAUTHORIZED,
    Refusal,
    conflict,
    forbidden,
    too_many,
)

KINDS = {
    "too_many": "429 with retry_after seconds; nothing is delivered",
    "error_before": "500 and nothing is delivered",
    "error_after": "500 although the message was delivered",
    "bad_gateway": "502 with a web page instead of JSON; nothing is delivered",
    "cut_before": "the line is cut after the request was taken; nothing is delivered",
    "cut_after": "the line is cut although the message was delivered",
    "slow": "delivered, but the answer takes `seconds` longer",
    "slow_before": "waits `seconds` before anything is done",
    "down": "every call's line is cut, nothing is done",
    "refused": "nobody listens at the port for `for_seconds`; only where the stand-in serves itself",
    "blocked": "403 bot was blocked by the user",
    "deactivated": "403 user is deactivated",
    "unauthorized": "401 as if the token had been withdrawn",
    "conflict": "409 to getUpdates as if another bot instance were running",
    "twice": "each update is delivered twice",
}
BEFORE = frozenset(KINDS) - {"error_after", "cut_after", "slow", "twice", "refused"}
AFTER = frozenset({"error_after", "cut_after", "slow"})
_NOT_BY_ITSELF = frozenset({"getupdates", "getme"})  # meant only when a fault names them


@dataclass(slots=True)
class Fault:
    """One fault that is on. `times` None means until it is switched off; `skip` lets so many calls pass first."""

    kind: str
    times: int | None = 1
    method: str | None = None
    chat: int | None = None
    seconds: float = 1.0
    retry_after: int = 1
    skip: int = 0
    for_seconds: float | None = None
    id: int = 0
    until: float = float("inf")


class Faults:
    """The faults that are on, in the order in which they were switched on; the first that fits is meant."""

    def __init__(self) -> None:
        self.on: list[Fault] = []
        self._last = 0

    def switch_on(self, kind: str, **how: Any) -> Fault:
        """Switch a fault on and return it; ValueError names what it does not know."""
        if kind not in KINDS:
            raise ValueError(f"There is no fault {kind!r}. There are: {', '.join(KINDS)}.")
        known = {one.name for one in fields(Fault)} - {"kind", "id", "until"}
        if not known.issuperset(how):
            raise ValueError(
                f"A fault has no {sorted(set(how) - known)}. It has: {', '.join(sorted(known))}."
            )
        if kind in ("down", "refused", "twice", "blocked", "deactivated", "unauthorized"):
            how.setdefault("times", None)
        if how.get("for_seconds") is not None:
            how.setdefault("times", None)
        fault = Fault(kind, **how)
        if fault.method:
            fault.method = fault.method.lower()
        if fault.for_seconds is not None:
            fault.until = time.monotonic() + fault.for_seconds
        self._last += 1
        fault.id = self._last
        self.on.append(fault)
        return fault

    def switch_off(self, number: int | None = None) -> None:
        """Switch one fault off, or all."""
        self.on = [] if number is None else [one for one in self.on if one.id != number]

    def meant(self, kinds: frozenset[str], method: str, chat: int | None) -> Fault | None:
        """Return the fault of these kinds that is meant for this call, and count it."""
        if not self.on:
            return None
        now = time.monotonic()
        for fault in self.on:
            if fault.until <= now:
                self.switch_off(fault.id)
            elif fault.kind in kinds and _fits(fault, method, chat):
                if fault.skip > 0:
                    fault.skip -= 1
                    return None
                self._count(fault)
                return fault
        return None

    def doubles(self) -> bool:
        """Say whether the update that arrives now is to be delivered twice."""
        return self.meant(frozenset({"twice"}), "", None) is not None

    def _count(self, fault: Fault) -> None:
        if fault.times is None:
            return
        fault.times -= 1
        if fault.times <= 0:
            self.switch_off(fault.id)

    def shown(self) -> list[dict[str, Any]]:
        """Return the faults that are on as data."""
        return [{**asdict(one), "until": None} for one in self.on]


def _fits(fault: Fault, method: str, chat: int | None) -> bool:
    if fault.chat is not None and fault.chat != chat:
        return False
    if fault.method is not None:
        return fault.method == method
    if fault.kind == "conflict":
        return method == "getupdates"
    if fault.kind in ("blocked", "deactivated"):
        return chat is not None
    return fault.kind in ("down", "unauthorized", "twice") or method not in _NOT_BY_ITSELF


def refusal_of(fault: Fault) -> Refusal | None:
    """Return what the service answers under a fault, None where it gives no answer of its own."""
    match fault.kind:
        case "too_many":
            return too_many(fault.retry_after)
        case "error_before" | "error_after":
            return Refusal(500, "Internal Server Error: restart")
        case "blocked":
            return forbidden("bot was blocked by the user")
        case "deactivated":
            return forbidden("user is deactivated")
        case "unauthorized":
            return UNAUTHORIZED
        case "conflict":
            return conflict(OTHER_POLL)
    return None


class Flood:
    """The service's published pace, kept where it is switched on: a message that comes too soon is 429."""

    def __init__(self) -> None:
        self.on = False
        self.sent: deque[tuple[float, int]] = deque(maxlen=200_000)
        """When (seconds of the machine's steady clock) and to which chat each message went."""
        self._second: deque[float] = deque()
        self._groups: dict[int, deque[float]] = {}
        self._ready: dict[int, float] = {}

    def went(self, chat: int, messages: int = 1) -> None:
        """Count messages that went to a chat."""
        now = time.monotonic()
        for _ in range(messages):
            self.sent.append((now, chat))

    def busiest_second(self) -> int:
        """Return how many messages went within the fullest second."""
        times = [at for at, _ in self.sent]
        first = most = 0
        for last, at in enumerate(times):
            while times[first] <= at - 1:
                first += 1
            most = max(most, last - first + 1)
        return most

    def check(self, chat: Chat) -> None:
        """Refuse a message that comes too soon, with how many seconds to wait."""
        if not self.on:
            return
        now = time.monotonic()
        while self._second and self._second[0] <= now - 1:
            self._second.popleft()
        if len(self._second) >= limits.MESSAGES_A_SECOND:
            raise too_many(1)
        if chat.is_group:
            minute = self._groups.setdefault(chat.id, deque())
            while minute and minute[0] <= now - 60:
                minute.popleft()
            if len(minute) >= limits.GROUP_MESSAGES_A_MINUTE:
                raise too_many(int(minute[0] + 60 - now) + 1)
            minute.append(now)
        # One a second a chat with a burst: `ready` is when the next would be due if all had kept the pace.
        ready = max(self._ready.get(chat.id, 0.0), now - limits.CHAT_BURST)
        if ready > now:
            raise too_many(int(ready - now) + 1)
        self._ready[chat.id] = ready + 1
        self._second.append(now)
