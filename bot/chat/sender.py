"""The sender: claim what waits, render it, send it, settle how that ended. No transaction is open meanwhile.

There is one sender at a time on a database, so that the pace holds whatever the number of processes.
"""

from __future__ import annotations

import asyncio
import logging
from collections import defaultdict
from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import Executor
from contextlib import suppress
from dataclasses import dataclass
from datetime import timedelta
from heapq import heappop, heappush

from aiolimiter import AsyncLimiter
from sqlalchemy import Engine
from sqlalchemy.orm import Session
from telegram.error import BadRequest, ChatMigrated, Forbidden, InvalidToken, NetworkError, RetryAfter

from bot.chat import pace
from bot.chat.calls import Service, carry_out
from bot.chat.rendered import Rendered
from bot.chat.transport import NotReached
from bot.messages import Message
from bot.now import Clock
from bot.records import outbox
from bot.records.base import transaction
from bot.records.outbox import Claimed, Settled, State
from bot.vocabulary import ChatId

log = logging.getLogger(__name__)

AT_ONCE = 60
"""Messages under way at one time."""
LONGEST_PAUSE = 30.0
"""Seconds between two looks whether the service is back."""

Render = Callable[[Message, str], Rendered]
LanguageOf = Callable[[Session, Sequence[ChatId]], Mapping[ChatId, str]]
Blocked = Callable[[Session, ChatId], list[Message]]
"""What is said to whom when a chat has blocked the bot: a note to the tutor."""


_BLOCKED = "blocked"
_NOTHING = Rendered()


@dataclass(frozen=True, slots=True)
class _Ready:
    claimed: Claimed
    what: Rendered


class Sender:
    """Sends what the outbox holds. `limiter` None lifts the pace, which only a benchmark may do."""

    def __init__(
        self,
        engine: Engine,
        executor: Executor,
        clock: Clock,
        service: Service,
        render: Render,
        language_of: LanguageOf,
        blocked: Blocked,
        *,
        limiter: AsyncLimiter | None,
        look_every: float = 5.0,
    ) -> None:
        self._engine = engine
        self._executor = executor
        self._clock = clock
        self._service = service
        self._render = render
        self._language_of = language_of
        self._blocked = blocked
        self._limiter = limiter
        self._look_every = look_every
        self._chats = pace.ChatPace()
        self._some = asyncio.Event()
        self._over: list[Settled] = []
        self._gone: list[ChatId] = []
        self._sending: set[asyncio.Task[None]] = set()
        self._under_way = 0
        self._looks: list[float] = []
        """A heap of moments at which a message that was held back may leave."""
        self._pause_until = 0.0
        self._away = False
        self._trouble = 1.0
        self._too_many: dict[ChatId, float] = {}

    def wake(self) -> None:
        """Say that something new waits. Call it in the event loop's thread."""
        self._some.set()

    async def run(self) -> None:
        """Send until cancelled; first settle what was being sent when the last process died."""
        found = await asyncio.get_running_loop().run_in_executor(self._executor, self._recover)
        if found:
            log.warning("%d messages were being sent when the last run ended", found)
        try:
            while True:
                await self._permit()
                while not await self._send_some():
                    await self._wait()
        finally:
            await self._finish()

    async def _finish(self) -> None:
        """Let what is under way end, and note how it ended."""
        if self._sending:
            await asyncio.wait(self._sending, timeout=10)
        await self._settle_and_claim(0, ())

    async def _permit(self) -> None:
        if self._limiter is not None:
            await self._limiter.acquire()

    async def _wait(self) -> None:
        """Wait until something may have changed."""
        now = asyncio.get_running_loop().time()
        while self._looks and self._looks[0] <= now:
            heappop(self._looks)
        until = min([now + self._look_every, *self._looks[:1]])
        # Not `wait_for`: before Python 3.12 it may swallow being cancelled just as the event comes.
        with suppress(TimeoutError):
            async with asyncio.timeout(max(until - now, 0.001)):
                await self._some.wait()

    async def _send_some(self) -> bool:
        """Settle what is over, claim what may leave now, and send it on. False: nothing left."""
        loop = asyncio.get_running_loop()
        self._some.clear()
        room = 0 if not await self._reachable() else AT_ONCE - self._under_way
        if self._limiter is not None:
            room = min(room, 1)
        if not room and not self._over:
            return False
        resting = self._chats.resting(loop.time()) if self._limiter is not None else {}
        for until in resting.values():
            heappush(self._looks, until)
        ready = await self._settle_and_claim(room, tuple(resting))
        by_chat: dict[ChatId, list[_Ready]] = defaultdict(list)
        for one in ready:
            by_chat[one.claimed.message.to].append(one)
        for chat, turn in by_chat.items():
            self._under_way += len(turn)
            task = loop.create_task(self._send_in_turn(chat, turn))
            self._sending.add(task)
            task.add_done_callback(self._sending.discard)
        return bool(ready)

    async def _settle_and_claim(self, room: int, not_to: Sequence[ChatId]) -> list[_Ready]:
        over, self._over = self._over, []
        gone, self._gone = self._gone, []
        loop = asyncio.get_running_loop()
        try:
            return await loop.run_in_executor(self._executor, self._in_one, over, gone, room, not_to)
        except Exception as error:
            log.error("the outbox can't be had, next try in a second: %s", type(error).__name__)
            self._over, self._gone = over + self._over, gone + self._gone
            heappush(self._looks, loop.time() + 1)
            return []

    def _in_one(
        self, over: list[Settled], gone: list[ChatId], room: int, not_to: Sequence[ChatId]
    ) -> list[_Ready]:
        """Settle and claim in one transaction, then render outside of it."""
        claimed: list[Claimed] = []
        languages: Mapping[ChatId, str] = {}
        with transaction(self._engine) as s:
            outbox.settle(s, over)
            for chat in gone:
                outbox.withdraw(s, chat, fault=_BLOCKED)
                outbox.put(s, self._blocked(s, chat), self._clock.now())
            if room:
                claimed = outbox.claim(s, self._clock.now(), room, not_to)
            if claimed:
                languages = self._language_of(s, [one.message.to for one in claimed])
        return [_Ready(one, self._rendered(one, languages.get(one.message.to, ""))) for one in claimed]

    def _rendered(self, one: Claimed, language: str) -> Rendered:
        try:
            return self._render(one.message, language)
        except Exception as error:
            log.error("%s (row %d) can't be rendered: %r", type(one.message).__name__, one.row, error)
            return _NOTHING

    def _recover(self) -> int:
        with transaction(self._engine) as s:
            return outbox.recover(s)

    async def _send_in_turn(self, chat: ChatId, turn: Sequence[_Ready]) -> None:
        """Send messages to one chat one after the other; after one that has to wait, the rest waits too."""
        for n, one in enumerate(turn):
            settled = await self._send(chat, one)
            self._over.append(settled)
            self._under_way -= 1
            if settled.state is State.WAITING:
                rest = turn[n + 1 :]
                self._over += [Settled(left.claimed.row, State.WAITING) for left in rest]
                self._under_way -= len(rest)
                break
        self.wake()

    async def _send(self, chat: ChatId, one: _Ready) -> Settled:
        row, loop = one.claimed.row, asyncio.get_running_loop()
        if one.what is _NOTHING:
            return Settled(row, State.GIVEN_UP, fault="can't be rendered")
        self._chats.sent(chat, loop.time())
        try:
            shown = await carry_out(self._service, chat, one.what, self._permit)
        except RetryAfter as error:
            return self._after_too_many(chat, row, error)
        except Forbidden:
            return self._blocked_by(chat, row)
        except (BadRequest, ChatMigrated) as error:
            if "chat not found" in error.message.lower():
                return self._blocked_by(chat, row)
            return _given_up(one, error.message)
        except NotReached:
            return self._again(one, "not reached")
        except InvalidToken:
            log.error("the service doesn't know this token (EVENSUM_TOKEN); messages wait")
            return self._again(one, "unknown token")
        except NetworkError as error:
            self._step_back()
            state = outbox.after_unsure(one.claimed.message)
            if state is State.WAITING:
                return self._again(one, str(error))
            log.warning("%s (row %d) may have arrived and is held", type(one.claimed.message).__name__, row)
            return Settled(row, state, fault=str(error))
        except Exception as error:
            return _given_up(one, repr(error))
        at = shown.at if shown and shown.at else self._clock.now()
        return Settled(row, State.SENT, shown.message_id if shown else None, at)

    def _blocked_by(self, chat: ChatId, row: int) -> Settled:
        """Nothing more is sent to that chat until somebody there writes again; the tutor hears of it."""
        self._gone.append(chat)
        return Settled(row, State.GIVEN_UP, fault=_BLOCKED)

    def _again(self, one: _Ready, fault: str) -> Settled:
        """Back to the queue, a little later each time."""
        self._step_back()
        after = min(2.0**one.claimed.tries, LONGEST_PAUSE)
        return self._later(one.claimed.row, after, fault)

    def _later(self, row: int, seconds: float, fault: str) -> Settled:
        heappush(self._looks, asyncio.get_running_loop().time() + seconds)
        until = self._clock.now() + timedelta(seconds=seconds)
        return Settled(row, State.WAITING, not_before=until, fault=fault)

    def _after_too_many(self, chat: ChatId, row: int, error: RetryAfter) -> Settled:
        """Obey the service: this chat rests; where it says so of two chats, it means us, and all rest."""
        now = asyncio.get_running_loop().time()
        given = error.retry_after
        seconds = (given.total_seconds() if isinstance(given, timedelta) else float(given)) + 0.1
        self._too_many = {one: until for one, until in self._too_many.items() if until > now}
        self._too_many[chat] = now + seconds
        if len(self._too_many) > 1:
            self._pause(max(self._too_many.values()))
        log.warning(
            "too many messages: %.1f s rest for %s", seconds, "all" if len(self._too_many) > 1 else "a chat"
        )
        return self._later(row, seconds, "too many requests")

    def _step_back(self) -> None:
        """The service is in trouble: look whether it answers before anything else is put at risk."""
        self._away = True
        self._pause(asyncio.get_running_loop().time() + 1)

    def _pause(self, until: float) -> None:
        self._pause_until = max(self._pause_until, until)
        heappush(self._looks, self._pause_until)

    async def _reachable(self) -> bool:
        """Tell whether messages may be sent now; after trouble a harmless call has to succeed first."""
        loop = asyncio.get_running_loop()
        if loop.time() < self._pause_until:
            return False
        if not self._away:
            return True
        try:
            await self._service.bot.get_me()
        except Exception as error:
            self._trouble = min(2 * self._trouble, LONGEST_PAUSE)
            self._pause(loop.time() + self._trouble)
            log.warning("the service is away, next look in %.0f s: %s", self._trouble, type(error).__name__)
            return False
        self._away, self._trouble = False, 1.0
        return True


def _given_up(one: _Ready, why: str) -> Settled:
    """A fault of ours (too long, broken button): it would be refused again, and must not hold up its chat."""
    log.error("%s (row %d) can't be sent: %s", type(one.claimed.message).__name__, one.claimed.row, why)
    return Settled(one.claimed.row, State.GIVEN_UP, fault=why)
