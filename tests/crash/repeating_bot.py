"""A bot process to be killed: it notes what it hears, says it again, and pushes once to each chat.

    python repeating_bot.py DATABASE_URL API_URL [HOLD] [CHATS]

HOLD: "route" or "render": print "holding" and stay there, so that a kill lands in the middle.
CHATS: how many chats get a push, ids from 1001.
"""

import asyncio
import sys
import time
from concurrent.futures import ThreadPoolExecutor

from sqlalchemy import text

from bot.chat.rendered import Rendered
from bot.chat.side import ChatSide, Line, Saying
from bot.clock.ticks import Ticks
from bot.happened import Typed
from bot.messages import Help, Reminder
from bot.now import RealClock
from bot.records.base import create_engine
from bot.vocabulary import DayId

url, api = sys.argv[1:3]
hold = sys.argv[3] if len(sys.argv) > 3 else ""
chats = int(sys.argv[4]) if len(sys.argv) > 4 else 0


def stay(where):
    if hold == where:
        print("holding", flush=True)
        time.sleep(60)


def route(s, what):
    assert isinstance(what, Typed)
    s.execute(
        text("insert into heard values (:u, :c, :w)"), {"u": what.update, "c": what.chat, "w": what.text}
    )
    stay("route")
    return [Help(to=what.chat, role="student", topic=what.text)]


def render(message, language):
    stay("render")
    return Rendered(text=message.topic if isinstance(message, Help) else f"push {message.name}")


def due(s, now):
    done = {row[0] for row in s.execute(text("select chat from pushed"))}
    return [1001 + n for n in range(chats) if 1001 + n not in done]


def look(s, chat, now):
    s.execute(text("insert into pushed values (:c)"), {"c": chat})
    return [Reminder(to=chat, key=f"day/{chat}", day=DayId(1), name=str(chat))]


async def draw(drawing):
    raise LookupError


async def main():
    engine = create_engine(url)
    executor = ThreadPoolExecutor(1 if engine.dialect.name == "sqlite" else 4)
    clock = RealClock()
    saying = Saying(route, lambda s, what: [], render, lambda s, c: {}, lambda s, chat: [], draw)
    ticks = Ticks(engine, executor, clock, due, look)
    side = ChatSide(
        engine,
        executor,
        clock,
        Line("900000001:loopback-only", api),
        lambda name: saying,
        leading=[ticks.run],
    )
    await side.run(asyncio.Event())


asyncio.run(main())
