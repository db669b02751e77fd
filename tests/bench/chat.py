"""How fast replies are graded and answered, beside a bare echo bot of the same client library.

    python tests/bench/chat.py [--quick]

The stand-in runs in this process, each bot in one of its own, on loopback. Baselines: the library's echo
example with its default HTTP transport (httpx), its own polling, nothing stored; once with
concurrent_updates(True) (256 at a time on a pool of 256 connections), once with one update at a time. Ours:
polling, aiohttp transport with 40 connections, SQLite with synchronous=FULL, every reply stored, graded and
followed by the next item. Runs are interleaved; medians are printed. CPU is the bot process's alone.
"""

from __future__ import annotations

import argparse
import asyncio
import os
import shutil
import statistics
import sys
import tempfile
import time
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path

import chat_school
import psutil
from chat_school import FIRST_CHAT, School

from bot.messages import Reminder
from bot.now import RealClock
from bot.records import outbox
from bot.records.base import create_engine, transaction
from bot.standin import Person, StandIn, serve
from bot.vocabulary import DayId

BOTS = Path(__file__).parent / "chat_bots.py"
TOKEN = "900000001:loopback-only"
STUDENTS = 1000


@dataclass
class Seen:
    """When messages of the bot arrived at the service, per chat."""

    times: list[float] = field(default_factory=list)
    first: dict[int, float] = field(default_factory=dict)
    arrived: asyncio.Event = field(default_factory=asyncio.Event)


@dataclass
class Bench:
    """A stand-in that watches, and a bot beside it."""

    standin: StandIn
    seen: Seen
    process: asyncio.subprocess.Process
    database: Path

    def cpu(self) -> float:
        spent = psutil.Process(self.process.pid).cpu_times()
        return float(spent.user + spent.system)

    def mebibytes(self) -> float:
        return float(psutil.Process(self.process.pid).memory_info().rss) / 2**20

    async def until(self, true, seconds: float = 180.0) -> None:
        async with asyncio.timeout(seconds):
            while not true():
                if self.process.returncode is not None:
                    raise RuntimeError("the bot ended by itself; --verbose shows what it said")
                await asyncio.sleep(0.02)


@asynccontextmanager
async def bench(
    kind: str, school: School, *options: str, people: int = STUDENTS, waiting: bool = False
) -> AsyncIterator[Bench]:
    """Start the stand-in and a bot; with `waiting` everybody's reply waits before the bot starts."""
    standin = StandIn(
        RealClock(), TOKEN, [Person(FIRST_CHAT + n, "Wren", started=True) for n in range(people)]
    )
    seen = watch(standin)
    with tempfile.TemporaryDirectory() as folder:
        database = Path(folder) / "bench.sqlite"
        shutil.copy(school.file, database)
        async with serve(standin) as served:
            if waiting:
                for chat, answer in list(school.answers.items())[:people]:
                    standin.phones.say(chat, answer)
            process = await asyncio.create_subprocess_exec(
                sys.executable, str(BOTS), kind, served.address, f"sqlite:///{database}", *options,
                stderr=None if "--verbose" in sys.argv else asyncio.subprocess.DEVNULL,
            )  # fmt: skip
            try:
                yield Bench(standin, seen, process, database)
            finally:
                if process.returncode is None:
                    process.kill()
                await process.wait()


def watch(standin: StandIn) -> Seen:
    """Note the moment at which each message of the bot arrives."""
    seen = Seen()
    post = standin.world.post

    def noted(chat, who, *rest, from_bot, **more):
        if from_bot:
            now = time.perf_counter()
            seen.times.append(now)
            seen.first.setdefault(chat.id, now)
        return post(chat, who, *rest, from_bot=from_bot, **more)

    standin.world.post = noted
    return seen


async def throughput(kind: str, school: School) -> tuple[float, float, float]:
    """Replies a second with everybody waiting, CPU milliseconds a reply of the bot, its memory."""
    async with bench(kind, school, waiting=True) as running:
        first = running.seen.first
        await running.until(lambda: first)
        before, began = running.cpu(), len(first)
        await running.until(lambda: len(first) == STUDENTS)
        spent = running.cpu() - before
        rate = (STUDENTS - 1) / (max(first.values()) - min(first.values()))
        return rate, spent / max(1, STUDENTS - began) * 1000, running.mebibytes()


async def latency(school: School, a_second: float, seconds: float) -> list[float]:
    """Milliseconds from the service's having a reply to its having the answer, pace lifted."""
    async with bench("ours", school) as running:
        await warm_up(running, school)
        return await replies(running, list(school.answers.items())[20:], a_second, seconds)


async def warm_up(running: Bench, school: School) -> None:
    for chat, answer in list(school.answers.items())[:20]:
        running.standin.phones.say(chat, answer)
    await running.until(lambda: len(running.seen.first) >= 20)


async def replies(
    running: Bench, answers: list[tuple[int, str]], a_second: float, seconds: float
) -> list[float]:
    said: dict[int, float] = {}
    began = time.perf_counter()
    for n, (chat, answer) in enumerate(answers[: int(a_second * seconds)]):
        await asyncio.sleep(max(0.0, began + n / a_second - time.perf_counter()))
        running.seen.first.pop(chat, None)
        said[chat] = time.perf_counter()
        running.standin.phones.say(chat, answer)
    await running.until(lambda: said.keys() <= running.seen.first.keys())
    return [(running.seen.first[chat] - at) * 1000 for chat, at in said.items()]


async def push(school: School, a_second: float) -> tuple[list[float], float, int]:
    """Latencies of replies while a push to everybody goes out; messages a second, and in the fullest."""
    async with bench("ours", school, "paced") as running:
        await warm_up(running, school)
        engine = create_engine(f"sqlite:///{running.database}")
        answering = list(school.answers.items())[20:]
        with transaction(engine) as s:
            outbox.put(
                s,
                [Reminder(to=chat, key=f"b/{chat}", day=DayId(1), name="Wren") for chat in school.answers],
                datetime.now(UTC),
            )
        engine.dispose()
        running.standin.phones.say(*answering.pop())  # wakes the sender
        before = len(running.seen.times)
        await running.until(lambda: len(running.seen.times) > before + 10)
        taken = await replies(running, answering, a_second, 20.0) if a_second else []
        await running.until(lambda: len(running.seen.times) - before >= STUDENTS)
        times = running.seen.times[before:][:STUDENTS]
        fullest = max(sum(1 for other in times[n : n + 60] if other < at + 1) for n, at in enumerate(times))
        return taken, (len(times) - 1) / (times[-1] - times[0]), fullest


def percentile(values: list[float], share: float) -> float:
    return sorted(values)[min(len(values) - 1, int(len(values) * share))]


def line(what: str, measured: str, wanted: str, reached: bool) -> None:
    print(f"{what:58} {measured:>22}   {wanted:16} {'reached' if reached else 'NOT reached'}", flush=True)


async def main() -> None:
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawTextHelpFormatter)
    options.add_argument("--quick", action="store_true", help="one run of each instead of five")
    options.add_argument("--verbose", action="store_true", help="show what the bots say")
    given = options.parse_args()
    runs = 1 if given.quick else 5
    with tempfile.TemporaryDirectory() as folder:
        school = chat_school.make(Path(folder) / "school.sqlite", STUDENTS)
        print(f"{os.cpu_count()} cores, load {os.getloadavg()[0]:.1f}, {runs} interleaved run(s), medians\n")
        ms = school.open_ms
        shown = f"{ms:.1f} ms ({school.open_cpu_ms:.1f} CPU)"
        line("opening a day (plan, draw, store, enqueue), a student", shown, "< 20 ms", ms < 20)
        await compare(school, runs)
        taken = [one for _ in range(runs) for one in await latency(school, 50, 8)]
        p99 = percentile(taken, 0.99)
        shown = f"p50 {percentile(taken, 0.5):.0f}, p99 {p99:.0f} ms"
        line("50 replies a second from different chats, pace lifted", shown, "p99 < 60 ms", p99 < 60)
        taken, _, fullest = await push(school, 20)
        p99 = percentile(taken, 0.99)
        shown = f"p50 {percentile(taken, 0.5):.0f}, p99 {p99:.0f} ms"
        line("20 replies a second while a push to 1,000 goes out", shown, "p99 < 150 ms", p99 < 150)
        line("  messages in the fullest second", f"{fullest}", "<= 30", fullest <= 30)
        _, average, fullest = await push(school, 0)
        line("a push to 1,000 alone: messages a second", f"{average:.2f}", ">= 28.5", average >= 28.5)
        line("  messages in the fullest second", f"{fullest}", "<= 30", fullest <= 30)


async def compare(school: School, runs: int) -> None:
    kinds = ("bare-concurrent", "bare-one", "ours")
    found: dict[str, list[tuple[float, float, float]]] = {kind: [] for kind in kinds}
    for _ in range(runs):
        for kind in kinds:
            found[kind].append(await throughput(kind, school))
    rate = {kind: statistics.median(one[0] for one in found[kind]) for kind in kinds}
    for kind in kinds:
        cpu = statistics.median(one[1] for one in found[kind])
        print(f"{kind:16} {rate[kind]:7.0f} replies a second, {cpu:.2f} ms of CPU each")
    ours = rate["ours"]
    line("replies a second, 1,000 chats waiting, pace lifted", f"{ours:.0f}", ">= 350", ours >= 350)
    ratio = ours / rate["bare-concurrent"]
    line("  over the bare echo, concurrent_updates(True)", f"{ratio:.2f}", ">= 1.5", ratio >= 1.5)
    ratio = ours / rate["bare-one"]
    line("  over the bare echo, one update at a time", f"{ratio:.2f}", ">= 0.6", ratio >= 0.6)
    memory = max(one[2] for one in found["ours"])
    line("memory of the bot's process, 1,000 students", f"{memory:.0f} MiB", "< 150 MiB", memory < 150)


if __name__ == "__main__":
    asyncio.run(main())
