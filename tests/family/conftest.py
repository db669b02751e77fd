"""A tutor who has just come, with nobody yet; and the demo's group for what comes later."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import pytest
from sqlalchemy.engine import Engine
from support.courses import whole_course
from support.group import Group, Somebody, only
from support.steering import does

from bot import demo, family
from bot.course.year import Course
from bot.messages import Changed, InviteShown
from bot.records.base import transaction
from bot.vocabulary import ChatId


@pytest.fixture(scope="session")
def course() -> Course:
    return whole_course()


@pytest.fixture
def group(engine: Engine, course: Course) -> Iterator[Group]:
    """The demo's people on the first Monday at eight."""
    group = Group(engine, course)
    group.at(8)
    yield group


@dataclass
class New:
    """People who join, each by a link on a phone of their own."""

    group: Group
    phones: int = 5000

    def phone(self) -> Somebody:
        self.phones += 1
        return Somebody(self.group, ChatId(self.phones))

    def opens(self, token: str, phone: Somebody | None = None) -> Somebody:
        """Open a link on a phone and say *Yes*."""
        phone = phone or self.phone()
        shown = only(InviteShown, phone.types(f"/start {token}"))
        assert shown.token == token
        phone.presses("f-yes", token)
        return phone

    def tutor(self, name: str = "Rosalind") -> Somebody:
        with transaction(self.group.engine) as s:
            token = family.first_tutor(s, name, self.group.clock.now())
        return self.opens(token)

    def link_of(self, tutor: Somebody, command: str) -> str:
        """What a command of the tutor's gives to hand on."""
        link = only(Changed, does(tutor, command)).link
        return link.partition("?start=")[2]


@pytest.fixture
def new(group: Group) -> New:
    return New(group)


@pytest.fixture
def rosalind(new: New) -> Somebody:
    """A new tutor with a household of one parent and two students, nobody linked yet."""
    tutor = new.tutor()
    does(tutor, f"/household Hazel {demo.ZONE}")
    return tutor
