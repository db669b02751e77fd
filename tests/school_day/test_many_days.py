"""Weeks lived at random by two students: nothing breaks, nothing is over the limits, every digest equals a recount."""

from __future__ import annotations

import random

import pytest
from sqlalchemy.engine import Engine
from support.anything import Anything, miscounted
from support.group import Group

from bot import demo
from bot.chat.render import render
from bot.chat.rendered import faults
from bot.course.year import Course
from bot.messages import Digest, Message
from bot.records import days
from bot.records.base import transaction

DAYS = 12


@pytest.mark.parametrize("seed", [1, 2])
def test_weeks_at_random(engine: Engine, course: Course, seed: int) -> None:
    group = Group(engine, course)
    chance = random.Random(seed)
    people = [Anything(group.who(phone), chance) for phone in (demo.WREN, demo.SOL)]
    said: list[Message] = []
    for day in range(DAYS):
        group.at(8, day=day)
        said += group.tick()
        for each in people:
            me = each.who.id
            with transaction(engine) as s:
                newest = days.newest_day(s, me)
            if newest is not None and newest.stage == "pushed" and chance.random() < 0.85:
                each.live(60)
        group.at(19, day=day)
        evening = group.tick()
        for digest in (
            m for m in evening if isinstance(m, Digest) and m.variant not in ("test", "our-fault")
        ):
            assert miscounted(engine, digest) == {}
        said += evening
    said += [message for each in people for message in each.said]
    broken = {type(m).__name__: found for m in said if (found := faults(render(m, "en")))}
    assert broken == {}
