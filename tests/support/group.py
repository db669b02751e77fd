"""A study group on a real database, driven through the real route: what somebody does goes in, messages come out."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import TypeAlias, TypeVar
from zoneinfo import ZoneInfo

from sqlalchemy.engine import Engine
from support.answering import right_choice, right_text

from bot import demo
from bot.chat.route import Route
from bot.course.year import Course
from bot.happened import Command, Edited, Happened, Pressed, SentFile, Typed
from bot.messages import Message
from bot.records import days, outbox, people
from bot.records.base import transaction
from bot.records.days import SchoolDay, Sent
from bot.records.outbox import Settled, State
from bot.school.school import School, make_school
from bot.school_day import hours
from bot.vocabulary import ChatId, Part, StudentId

CONTENT = Path(__file__).parents[2] / "content"
M = TypeVar("M", bound=Message)


class StillClock:
    """A clock that stands where it was put."""

    def __init__(self, at: datetime) -> None:
        self.at = at

    def now(self) -> datetime:
        return self.at


@dataclass(frozen=True)
class Lived:
    """A database in which a group lived a while, to be copied, and what it doesn't hold of that group."""

    database: str
    at: datetime
    updates: int
    message_ids: Mapping[ChatId, int]


class Group:
    """The demo's people; time stands still unless somebody moves it.

    `lived` is what the database is a copy of, if it isn't empty.
    """

    def __init__(self, engine: Engine, course: Course, lived: Lived | None = None) -> None:
        self.engine = engine
        self.school: School = make_school(course, "evensum_bot")
        self.clock = StillClock(lived.at if lived else demo.START)
        self.route = Route(self.school, self.clock)
        self.updates = lived.updates if lived else 0
        self.message_ids: dict[ChatId, int] = dict(lived.message_ids if lived else {})
        if lived is None:
            with transaction(engine) as s:
                demo.seed(s, self.clock.now())

    def at(self, hour: int, minute: int = 0, day: int = 0) -> None:
        """Set the clock to an hour at home, `day` days after the first Monday."""
        home = datetime(2026, 9, 14, hour, minute, tzinfo=ZoneInfo(demo.ZONE)) + timedelta(days=day)
        self.clock.at = home.astimezone(UTC)

    def later(self, seconds: int) -> None:
        self.clock.at += timedelta(seconds=seconds)

    def tick(self) -> list[Message]:
        """What the clock does: everything that is due, one transaction each."""
        said: list[Message] = []
        with transaction(self.engine) as s:
            due = hours.due(s, self.clock.now())
        for student in due:
            with transaction(self.engine) as s:
                found = hours.look(s, self.school, student, self.clock.now())
                outbox.put(s, found, self.clock.now())
            said += found
        self.deliver()
        return said

    def happens(self, what: Happened) -> list[Message]:
        with transaction(self.engine) as s:
            said = self.route(s, what)
            outbox.put(s, said, self.clock.now(), what.update)
        self.deliver()
        return said

    def deliver(self) -> None:
        """Everything that waits arrives at once, with the service's ids and dates."""
        with transaction(self.engine) as s:
            now = self.clock.now().replace(microsecond=0)
            while claimed := outbox.claim(s, self.clock.now(), 100):
                results = []
                for one in claimed:
                    chat = one.message.to
                    self.message_ids[chat] = self.message_ids.get(chat, 0) + 1
                    results.append(Settled(one.row, State.SENT, self.message_ids[chat], now))
                outbox.settle(s, results)

    def update(self) -> int:
        self.updates += 1
        return self.updates

    def who(self, phone: demo.Phone) -> Somebody:
        return Somebody(self, phone.chat)


LiveOnce: TypeAlias = Callable[[str, Course, Callable[[Group], object]], Lived]
"""Has a group live something under a name, in a database that is kept."""


class Somebody:
    """Somebody with a phone."""

    def __init__(self, group: Group, chat: ChatId) -> None:
        self.group = group
        self.chat = chat

    def types(self, text: str, replying_to: int | None = None) -> list[Message]:
        at = self.group.clock.now().replace(microsecond=0)
        if text.startswith("/"):
            name, _, rest = text[1:].partition(" ")
            return self.group.happens(Command(self.group.update(), self.chat, name, rest.strip(), at))
        return self.group.happens(Typed(self.group.update(), self.chat, text, at, 0, replying_to))

    def presses(self, verb: str, ref: object = "", message: int = 0) -> list[Message]:
        what = Pressed(self.group.update(), self.chat, verb, str(ref), self.group.clock.now(), message)
        return self.group.happens(what)

    def sends(self, what: str, **more: object) -> list[Message]:
        sent = SentFile(self.group.update(), self.chat, what, self.group.clock.now(), **more)  # type: ignore[arg-type]
        return self.group.happens(sent)

    def edits(self, text: str) -> list[Message]:
        return self.group.happens(Edited(self.group.update(), self.chat, text, self.group.clock.now()))

    @property
    def id(self) -> StudentId:
        with transaction(self.group.engine) as s:
            person = people.who(s, self.chat)
        assert person is not None
        return person.speaking or StudentId(person.id)

    def day(self) -> SchoolDay:
        with transaction(self.group.engine) as s:
            found = days.newest_day(s, self.id)
        assert found is not None
        return found

    def items(self, part: Part | None = None) -> list[Sent]:
        with transaction(self.group.engine) as s:
            return days.items_of(s, self.day().id, part)

    def item(self, item_id: int) -> Sent:
        with transaction(self.group.engine) as s:
            return days.item(s, item_id)  # type: ignore[arg-type]

    def starts(self) -> list[Message]:
        return self.presses("start", self.day().id)

    def gets_to_review(self) -> Sent:
        """Through warm-up, card and guided practice, to the first review item."""
        self.starts()
        for _ in range(60):
            day = self.day()
            if day.stage == "review":
                return next(each for each in self.items(Part.REVIEW) if each.state == "shown")
            if day.stage == "warm-up":
                shown = [each for each in self.items(Part.WARM_UP) if each.state == "shown"]
                self.presses("leave", shown[0].id) if shown else self.presses("leave-facts", 0)
            elif day.stage == "card":
                self.presses("go", day.id)
            else:
                shown = next(each for each in self.items(Part.GUIDED) if each.state == "shown")
                self.answers(shown)
        raise AssertionError("the review never came")

    def answers(self, sent: Sent) -> list[Message]:
        """Answer an item right, as its key has it."""
        if sent.item.choices:
            return self.presses("choose", f"{sent.id}:{right_choice(sent)}")
        return self.types(right_text(sent))


def wrong_answer(sent: Sent) -> str:
    """Something that is certainly wrong for a typed item."""
    return "123454321"


def only(kind: type[M], said: Sequence[Message]) -> M:
    """The one message of a class among those said."""
    found = [message for message in said if isinstance(message, kind)]
    assert len(found) == 1, [type(message).__name__ for message in said]
    return found[0]
