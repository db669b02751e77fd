"""What a parent does beside orders: hand the phone to a child."""

from __future__ import annotations

from bot.messages import Message, NotForYou, WhoSpeaks
from bot.records import people
from bot.school.asking import Asked


def hand(asked: Asked) -> list[Message]:
    """Give the phone to a child: which one?"""
    students = people.shares_phone(asked.s, asked.person.chat)
    if not students:
        return [NotForYou(to=asked.person.chat, why="no-student")]
    named = tuple((each.id, each.name) for each in students)
    return [WhoSpeaks(to=asked.person.chat, students=named)]
