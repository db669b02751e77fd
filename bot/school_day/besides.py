"""What isn't an answer: photos, stickers, voice messages, edited messages."""

from __future__ import annotations

from datetime import datetime

from sqlalchemy.orm import Session

from bot.happened import Edited, SentFile
from bot.messages import FirstCounts, Message, NotText, PhotoKept
from bot.records import days, files, focus
from bot.records.days import ItemState
from bot.school import dates
from bot.school_day.asking import Here

PHOTOS = 10
"""Photos kept a day, as the consent says."""


def take_file(s: Session, here: Here, sent: SentFile) -> list[Message]:
    """Keep a photo as a work sample, ten a day; an album gets one answer; other things get a kind word."""
    if sent.what not in ("photo", "document"):
        return [NotText(to=here.chat, what=sent.what)]
    on = dates.today(here.student, sent.at)
    if sent.what == "document" and not _is_picture(sent.name):
        return [NotText(to=here.chat, what="document")]
    answered = bool(sent.album) and files.album_seen(s, here.student.id, sent.album)
    kept = files.count_files(s, here.student.id, on)
    if kept >= PHOTOS:
        return [] if answered else [PhotoKept(to=here.chat, full=True)]
    day = days.newest_day(s, here.student.id)
    files.add_file(
        s,
        here.student.id,
        day.id if day else None,
        on,
        sent.file_id,
        sent.at,
        album=sent.album,
        caption=sent.caption,
    )
    return [] if answered else [PhotoKept(to=here.chat, first=kept == 0, no_day=day is None)]


def _is_picture(name: str) -> bool:
    return name.lower().endswith((".jpg", ".jpeg", ".png", ".heic", ".webp"))


def edited(s: Session, here: Here, changed: Edited) -> list[Message]:
    """An edited message: the first text counted; an item that is still open may be answered anew."""
    middle = focus.focus(s, here.chat, here.student.id)
    open_now = False
    if middle is not None and middle.item is not None:
        sent = days.find_item(s, middle.item)
        open_now = sent is not None and sent.state is ItemState.SHOWN
    return [FirstCounts(to=here.chat, open=open_now)]


def photo_folder(student: int, at: datetime) -> str:
    """Where a photo is kept, below the folder beside the database."""
    return f"{student}/{at:%Y-%m}"
