"""Somebody who does anything in any order, and a recount of what came of it by SQL alone."""

from __future__ import annotations

import random
from collections.abc import Callable

from sqlalchemy import text
from sqlalchemy.engine import Engine
from support.answering import wrong_text
from support.group import Somebody

from bot.messages import Digest, Message
from bot.records import focus
from bot.records.base import transaction
from bot.records.focus import Focus

BUTTONS = ("later", "about", "hint", "step", "show", "again", "ask", "pass", "leave", "words", "card", "type")


class Anything:
    """Somebody who does anything, in any order; so often wrong, mostly right."""

    def __init__(self, who: Somebody, chance: random.Random, silly: float = 1.0) -> None:
        """`silly`: share of steps at which anything may happen; at the others a child simply works."""
        self.who = who
        self.chance = chance
        self.silly = silly
        self.said: list[Message] = []

    def live(self, steps: int) -> None:
        self.said += self.who.starts()
        for _ in range(steps):
            if self.who.day().stage == "done":
                return
            self.said += self.one_step()
            self.who.group.later(self.chance.randint(3, 120))

    def live_a_test(self, open_it: Callable[[int], list[Message]]) -> None:
        """A test day: a grown-up opens it, everything is answered, it is handed in."""
        self.said += open_it(self.who.day().id)
        self.said += self.who.starts()
        for _ in range(80):
            day = self.who.day()
            if day.stage != "test":
                return
            me = self.who.id
            with transaction(self.who.group.engine) as s:
                middle = focus.focus(s, self.who.chat, me)
            if middle is not None and middle.item is not None:
                sent = self.who.item(middle.item)
                if sent.part == "test":
                    good = sent.item.choices or self.chance.random() < 0.8
                    self.said += self.who.answers(sent) if good else self.who.types(wrong_text(sent))
                    continue
            verb = "count-now" if day.notes.get("handed_in") else "hand-in"
            self.said += self.who.presses(verb, day.id)

    def works(self, middle: Focus) -> list[Message]:
        """Answer what is open: right in three of four, else as a known misstep has it."""
        who = self.who
        if middle.waits_for == "sheet":
            return who.presses("leave-facts", middle.ref)
        if middle.item is None:
            return who.presses("go", who.day().id)
        sent = who.item(middle.item)
        if sent.item.choices or sent.tries >= 2 or self.chance.random() < 0.75:
            return who.answers(sent)
        return who.types(wrong_text(sent))

    def one_step(self) -> list[Message]:
        who, chance = self.who, self.chance
        me = who.id
        with transaction(who.group.engine) as s:
            middle = focus.focus(s, who.chat, me)
        if middle is None:
            return who.presses("on")
        if chance.random() > self.silly:
            return self.works(middle)
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


def miscounted(engine: Engine, digest: Digest) -> dict[str, tuple[int, int]]:
    """What a digest says unlike a recount by SQL: outcome -> (said, counted)."""
    counted = recount(engine, digest.student, digest.date)
    said = {
        "first-try": digest.first_try,
        "later-try": digest.later_try,
        "unsolved": digest.unsolved,
        "untouched": digest.untouched,
    }
    return {name: (n, counted.get(name, 0)) for name, n in said.items() if n != counted.get(name, 0)}
