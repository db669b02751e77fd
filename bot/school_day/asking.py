"""Who is speaking where, and how one item is asked."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy.orm import Session

from bot.messages import Lead, Message
from bot.records import days, focus
from bot.records.days import ItemState, SchoolDay, Sent
from bot.records.people import Student
from bot.school.drawing import show_item
from bot.school.school import School
from bot.vocabulary import ChatId


@dataclass(frozen=True, slots=True)
class Here:
    """Who is speaking where, and when: what every step of the day needs."""

    school: School
    student: Student
    chat: ChatId
    at: datetime


def show(
    s: Session, here: Here, day: SchoolDay, sent: Sent, lead: Lead | None = None, *, again: bool = False
) -> Message:
    """Ask one item, and note that the next word is meant for it."""
    if sent.state is ItemState.WAITING:
        days.change_item(s, sent.id, state=ItemState.SHOWN)
    focus.set_focus(s, here.chat, here.student.id, "item", here.at, item=sent.id, ref=day.id)
    _, out_of = days.count_items(s, day.id, sent.part)
    return show_item(here.chat, here.school, day, sent, out_of, lead=lead, again=again)
