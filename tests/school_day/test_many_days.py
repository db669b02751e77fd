"""Weeks lived at random by two students: nothing breaks, nothing is over the limits, every digest equals a recount."""

from __future__ import annotations

import random

import pytest
from sqlalchemy import text
from sqlalchemy.engine import Engine
from support.answering import wrong_text
from support.group import Group, Somebody

from bot import demo
from bot.chat.render import render
from bot.chat.rendered import faults
from bot.course.year import Course
from bot.messages import Digest, Message
from bot.records import days, focus
from bot.records.base import transaction

DAYS = 12
BUTTONS = ("later", "about", "hint", "step", "show", "again", "ask", "pass", "leave", "words", "card", "type")


class Week:
    """Somebody who does anything, in any order."""

    def __init__(self, who: Somebody, chance: random.Random) -> None:
        self.who = who
        self.chance = chance
        self.said: list[Message] = []

    def live(self, steps: int) -> None:
        self.said += self.who.starts()
        for _ in range(steps):
            if self.who.day().stage == "done":
                return
            self.said += self.one_step()
            self.who.group.later(self.chance.randint(3, 120))

    def one_step(self) -> list[Message]:
        who, chance = self.who, self.chance
        me = who.id
        with transaction(who.group.engine) as s:
            middle = focus.focus(s, who.chat, me)
        if middle is None:
            return who.presses("on")
        if middle.waits_for == "sheet":
            answers = " ".join(str(chance.randint(1, 99)) for _ in range(chance.choice((12, 12, 11))))
            return who.types(answers) if chance.random() < 0.8 else who.presses("leave-facts", middle.ref)
        if middle.waits_for == "paper":
            left = [each for each in who.items("review") if each.state != "done"]
            return who.types("  ".join(f"{each.place}) {each.item.key.answer}" for each in left[:5]))
        if middle.item is None:
            verb = chance.choice(("go", "on", "enough", "paper", "small", "known"))
            return who.presses(verb, who.day().id)
        sent = who.item(middle.item)
        dice = chance.random()
        if dice < 0.1:
            return who.types(chance.choice(("idk", "((((", "7 or 8", "🐝", "x")))
        if dice < 0.3 and not sent.item.choices:
            return who.types(wrong_text(sent))
        if dice < 0.55:
            return who.presses(chance.choice(BUTTONS), sent.id)
        return who.answers(sent)


def recount(engine: Engine, student: int, date: str) -> dict[str, int]:
    """How a day's review items stand, by SQL alone."""
    query = (
        "select coalesce(item.outcome, 'untouched'), count(*) from item join school_day d on d.id = item.day_id "
        "where d.student_id = :w and d.date = :d and item.part = 'review' and item.state <> 'dropped' group by 1"
    )
    with transaction(engine) as s:
        return dict(tuple(row) for row in s.execute(text(query), {"w": student, "d": date}))


@pytest.mark.parametrize("seed", [1, 2])
def test_weeks_at_random(engine: Engine, course: Course, seed: int) -> None:
    group = Group(engine, course)
    chance = random.Random(seed)
    people = [Week(group.who(phone), chance) for phone in (demo.WREN, demo.SOL)]
    said: list[Message] = []
    for day in range(DAYS):
        group.at(8, day=day)
        said += group.tick()
        for each in people:
            with transaction(engine) as s:
                newest = days.newest_day(s, each.who.id)
            if newest is not None and newest.stage == "pushed" and chance.random() < 0.85:
                each.live(60)
        group.at(19, day=day)
        evening = group.tick()
        for digest in (
            m for m in evening if isinstance(m, Digest) and m.variant not in ("test", "our-fault")
        ):
            counted = recount(engine, digest.student, digest.date)
            assert digest.first_try == counted.get("first-try", 0)
            assert digest.later_try == counted.get("later-try", 0)
            assert digest.unsolved == counted.get("unsolved", 0)
            assert digest.untouched == counted.get("untouched", 0)
        said += evening
    said += [message for each in people for message in each.said]
    broken = {type(m).__name__: found for m in said if (found := faults(render(m, "en")))}
    assert broken == {}
