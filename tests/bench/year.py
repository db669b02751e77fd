"""A school year lived at random by the demo's students, through the real route: what it costs and what breaks.

    python tests/bench/year.py --weeks 40 --seed 1

Prints days, digests against a recount by SQL, messages over the service's limits, the kinds of days, the lesson
reached, and the longest time a skill was away; exits 1 if a count is wrong or a message too long.
"""

from __future__ import annotations

import argparse
import random
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from support.anything import Anything, miscounted
from support.group import Group

from bot import demo
from bot.chat.render import render
from bot.chat.rendered import faults
from bot.course.load import load_course
from bot.messages import Digest, Message
from bot.records import days, people
from bot.records.base import create_engine, transaction
from bot.records.migrating import migrate

SILLY = 0.15
WORKED = ("worked", "all-right", "enough", "only-begun", "nothing-started", "only-paper")
"""Variants of a digest that count review items."""


def live(weeks: int, seed: int) -> int:
    """Live so many weeks; give the number of faults."""
    chance = random.Random(seed)
    with tempfile.TemporaryDirectory() as folder:
        engine = create_engine(f"sqlite:///{folder}/year.sqlite")
        migrate(engine)
        group = Group(engine, load_course(Path(__file__).parents[2] / "content"))
        phones = {demo.WREN: demo.TOVE, demo.SOL: demo.TOVE}
        students = {phone: Anything(group.who(phone), chance, SILLY) for phone in phones}
        kinds: Counter[str] = Counter()
        digests = wrong = over = said = 0
        began = time.perf_counter()

        def heard(messages: list[Message]) -> None:
            nonlocal said, over
            for message in messages:
                said += 1
                found = [*faults(render(message, "en")), *faults(render(message, "es"))]
                if found:
                    over += 1
                    print(f"  over the limits: {type(message).__name__}: {found[:2]}")

        for day in range(7 * weeks):
            group.at(8, day=day)
            heard(group.tick())
            for phone, somebody in students.items():
                me = somebody.who.id
                with transaction(group.engine) as s:
                    newest = days.newest_day(s, me)
                if newest is None or newest.stage != "pushed" or chance.random() > 0.93:
                    continue
                kinds[newest.kind] += 1
                if newest.kind == "test":
                    parent = group.who(phones[phone])
                    somebody.live_a_test(lambda ref, parent=parent: parent.presses("open-test", ref))
                else:
                    somebody.live(90)
                heard(somebody.said)
                somebody.said = []
            group.at(20, day=day)
            evening = group.tick()
            heard(evening)
            for digest in (m for m in evening if isinstance(m, Digest) and m.variant in WORKED):
                digests += 1
                bad = miscounted(group.engine, digest)
                if bad:
                    wrong += 1
                    print(f"  miscounted: {digest.name} {digest.date}: {bad}")
        took = time.perf_counter() - began
        lived = sum(kinds.values())
        print(
            f"{lived} student days in {took:.0f} s ({1000 * took / max(1, lived):.0f} ms a day); {dict(kinds)}"
        )
        print(f"{digests} digests, {wrong} unlike the recount; {said} messages, {over} over the limits")
        reached = [each.who.id for each in students.values()]
        with transaction(group.engine) as s:
            for me in reached:
                student = people.student(s, me)
                lesson = group.school.lesson_at(student.lesson)
                print(
                    f"  {student.name}: at lesson {student.lesson}, {lesson.title if lesson else 'past the last'}"
                )
        return wrong + over


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--weeks", type=int, default=40)
    parser.add_argument("--seed", type=int, default=1)
    given = parser.parse_args()
    sys.exit(1 if live(given.weeks, given.seed) else 0)
