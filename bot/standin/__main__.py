"""`python -m bot.standin`: the stand-in as a process of its own, for whoever wants to kill one.

    python -m bot.standin --port 8081 --token 900:letters --state standin.jsonl

It prints one line with its address once it listens. With --state a killed stand-in comes back as it was.
"""

from __future__ import annotations

import argparse
import asyncio
import signal
import sys
from dataclasses import replace
from datetime import datetime
from pathlib import Path

from bot.now import DemoClock, RealClock
from bot.standin import Group, Person, StandIn, moment, serve

PEOPLE = (
    Person(101, "Ines", "Okafor-Lund", about="tutor"),
    Person(102, "Tove", "Bramble", about="parent"),
    Person(103, "Wren", "Bramble", about="student, 12"),
    Person(104, "Sol", "Bramble", about="student, 13"),
    Person(105, "Anselm", "Quill", about="parent"),
    Person(106, "Juniper", "Quill", about="student, 12"),
)
GROUP = Group(-1001, "Harrow Mill neighbours", (101, 102, 105))


def main() -> None:
    """Read the options and serve until told to stop."""
    parser = argparse.ArgumentParser(
        prog="python -m bot.standin", description="Loopback Bot API and phone page."
    )
    parser.add_argument("--port", type=int, default=0, help="0 takes a free one")
    parser.add_argument("--token", default="900000001:loopback-only", help="what the bot must present")
    parser.add_argument(
        "--state", type=Path, help="a file that keeps everything; it is taken up if it is there"
    )
    parser.add_argument(
        "--people", type=int, default=0, help="so many people instead of the demo's, ids from 1001"
    )
    parser.add_argument("--started", action="store_true", help="everybody has pressed Start already")
    parser.add_argument("--zone", default="Europe/London", help="the household's time zone")
    parser.add_argument("--at", type=datetime.fromisoformat, help="when it is, with offset: a demo clock")
    options = parser.parse_args()
    asyncio.run(_run(options))


async def _run(options: argparse.Namespace) -> None:
    clock = DemoClock(options.at) if options.at else RealClock()

    def move(to: str) -> None:
        if isinstance(clock, DemoClock):
            clock.go_to(moment(clock.now(), to, options.zone))

    if options.people:
        people = [
            Person(1000 + n, f"Person {n}", started=options.started) for n in range(1, options.people + 1)
        ]
    else:
        people = [_started(one) for one in PEOPLE] if options.started else list(PEOPLE)
    standin = StandIn(
        clock,
        options.token,
        people,
        groups=() if options.people else (GROUP,),
        on_clock=move if options.at else None,
        zone=options.zone,
        journal=options.state,
    )
    stop = asyncio.Event()
    loop = asyncio.get_running_loop()
    for kind in (signal.SIGINT, signal.SIGTERM):
        loop.add_signal_handler(kind, stop.set)
    async with serve(standin, options.port) as served:
        sys.stdout.write(f"{served.address}\n")
        sys.stdout.flush()
        await stop.wait()


def _started(person: Person) -> Person:
    return replace(person, started=True)


if __name__ == "__main__":
    main()
