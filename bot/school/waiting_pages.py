"""Pages done on paper that wait to be looked at: photos that came, items that nobody marked yet."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime, timedelta

from sqlalchemy.orm import Session

from bot.messages import Message, PagesWaiting, WaitingPage
from bot.records import attempts, files
from bot.records.people import Student
from bot.school import dates
from bot.school.asking import GRADER, Asked
from bot.school.sheets import is_printed

REACH = timedelta(days=14)
"""How far back a page is brought up by itself (common practice, no source); older ones may still be entered."""
WAITING = frozenset({"waiting", "esperan", "pendientes"})


def pages_waiting(s: Session, students: Sequence[Student], at: datetime) -> list[WaitingPage]:
    """Pages that wait, the oldest first: unmarked ones of a paper day, and photos that came today.

    A day on paper that is still under way waits only once a photo of it came.
    """
    known = {each.id: each for each in students}
    if not known:
        return []
    today = {each.id: dates.today(each, at) for each in students}
    first, last = min(today.values()) - REACH, max(today.values())
    photos = files.count_by_day(s, list(known), first, last)
    unmarked = {(row.student, row.date): row for row in attempts.unmarked(s, list(known), first, last)}
    found = []
    for student, on in sorted({*photos, *unmarked}, key=lambda key: (key[1], known[key[0]].name)):
        page, came = unmarked.get((student, on)), photos.get((student, on), 0)
        paper = page is not None and page.closed and (page.on_paper or is_printed(s, known[student], on))
        items = page.items if page is not None and (came or paper) else 0
        if items or (came and on == today[student]):
            found.append(WaitingPage(student, known[student].name, on.isoformat(), came, items))
    return found


def is_asked_for(asked: Asked) -> bool:
    """Whether the pages that wait are asked for: by the word, or with no word while some wait."""
    words = asked.text.strip().casefold()
    if words:
        return words in WAITING
    return bool(pages_waiting(asked.s, asked.students, asked.at))


def waiting(asked: Asked) -> list[Message]:
    """The list, with buttons for each page. Who only marks pages isn't shown the photos."""
    rows = tuple(pages_waiting(asked.s, asked.students, asked.at))
    if asked.side == GRADER:
        rows = tuple(row for row in rows if row.items)
    return [PagesWaiting(to=asked.person.chat, rows=rows, side=asked.side)]


def still_waiting(asked: Asked, but: tuple[int, date]) -> int:
    """How many pages wait to be marked beside one."""
    rows = pages_waiting(asked.s, asked.students, asked.at)
    return sum(1 for row in rows if row.items and (row.student, row.date) != (but[0], but[1].isoformat()))
