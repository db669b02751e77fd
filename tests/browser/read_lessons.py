"""Live lessons on the phone page as a student, and keep what stands in the chat, to be read from start to end.

    python tests/browser/read_lessons.py FOLDER LESSON [LESSON ...]

A lesson is its name, or a unit's number for all of its lessons. Each is lived on a first morning of its own: the
student is placed there with all earlier tests behind, the tutor gives one item of every template, and the student
misses some of them twice, looks at the solution, and answers the others right. Writes LESSON.png into the folder:
the chat at phone width, cut into columns side by side.
"""

from __future__ import annotations

import asyncio
import json
import sys
import tempfile
from datetime import datetime, timedelta
from io import BytesIO
from pathlib import Path

import msgspec
from PIL import Image
from playwright.async_api import Page
from sqlalchemy import update

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE.parent)]

from support.answering import right_choice, right_text, wrong_text  # noqa: E402  # as above
from support.living import GO, Life, text_of  # noqa: E402  # the tests' folder is put on the path above
from support.page import browser_page  # noqa: E402  # as above

from bot import demo  # noqa: E402  # as above
from bot.app import build_demo  # noqa: E402  # as above
from bot.course.draw import draw  # noqa: E402  # as above
from bot.course.item import plain_text  # noqa: E402  # as above
from bot.course.lesson import Lesson  # noqa: E402  # as above
from bot.course.usable import usable_course  # noqa: E402  # as above
from bot.course.year import Course  # noqa: E402  # as above
from bot.planner.plan import DayKind  # noqa: E402  # as above
from bot.records import people, wishes  # noqa: E402  # as above
from bot.records.base import transaction  # noqa: E402  # as above
from bot.records.day_tables import SchoolDayRow, Stage  # noqa: E402  # as above
from bot.records.people_tables import StudentRow  # noqa: E402  # as above
from bot.school.wishes import WishKind  # noqa: E402  # as above

WREN = int(demo.WREN.chat)
WIDE, TALL = 390, 1560
"""A phone's width, and how tall a column may be, in pixels of the page."""
MOST_ACTS = 80
MISSED = (2, 6)
"""Which of the lesson's items are missed, counted from 1."""
LAST_WORDS = "See you next time."


def place(life: Life, course: Course, lesson: Lesson) -> None:
    """Put the student at the lesson, and give one item of each of its templates, as a tutor would."""
    at = demo.START
    with transaction(life.engine) as s:
        wren, ines = (people.who(s, phone.chat) for phone in (demo.WREN, demo.INES))
        assert wren is not None and ines is not None
        student = wren.speaking
        s.execute(
            update(StudentRow)
            .where(StudentRow.id == student)
            .values(lesson=lesson.n, review_items=len(lesson.templates))
        )
        s.add_all(
            _handed_in(student, test.n, at - timedelta(days=60 + test.n))
            for test in course.tests
            if course.lesson(test.after).n < lesson.n
        )
        items = [draw(course, each.id, seed) for seed, each in enumerate(lesson.templates, start=1)]
        given = [
            wishes.Wish(
                WishKind.OWN_ITEM,
                {"item": msgspec.to_builtins(each), "title": lesson.title, "tutor": demo.INES.first_name},
                at.date(),
                student=student,
            )
            for each in items
        ]
        wishes.confirm(s, wishes.propose(s, ines.id, "give", given, at), at)


def _handed_in(student: int, test: int, at: datetime) -> SchoolDayRow:
    notes = json.dumps({"test": test, "handed_in": True})
    return SchoolDayRow(
        student_id=student, date=at.date(), kind=DayKind.TEST, stage=Stage.DONE, notes=notes, opened_at=at
    )


async def live_through(life: Life, lesson: Lesson) -> None:
    """Go through the morning; a few of the lesson's items are missed twice, then answered right."""
    asked: list[int] = []
    shown: set[int] = set()
    for _ in range(MOST_ACTS):
        await life.quiet(WREN)
        if any(LAST_WORDS in text_of(m) for m in life.from_bot(WREN, life.seen.get(WREN, 0))):
            return
        waits_for, sent, keys = life.middle(WREN)
        if waits_for == "sheet":
            life.types(WREN, keys)
        elif sent is None:
            shows = life.newest_button(WREN, "Show me")
            if shows and shows[0] not in shown and shows[0] == life.from_bot(WREN)[-1]["message_id"]:
                shown.add(shows[0])
                await life.presses(WREN, "Show me")
                continue
            go = next((each for each in GO if life.newest_button(WREN, each)), None)
            assert go, f"nothing to press after: {text_of(life.from_bot(WREN)[-1])}"
            await life.presses(WREN, go)
        else:
            if sent.template.startswith(f"{lesson.id}/"):
                asked.append(sent.id)
            misses = len(set(asked)) in MISSED and 0 < asked.count(sent.id) < 3
            if sent.item.choices:
                right = right_choice(sent)
                choice = (right + asked.count(sent.id)) % len(sent.item.choices) if misses else right
                await life.presses(WREN, plain_text(sent.item.choices[choice]))
            else:
                life.types(WREN, wrong_text(sent) if misses else right_text(sent))
    raise AssertionError(f"the morning never ended; it stands at {life.middle(WREN)}")


async def chat_picture(page: Page, address: str) -> Image.Image:
    """The student's whole chat at phone width."""
    await page.set_viewport_size({"width": WIDE, "height": 844})
    await page.goto(f"{address}#{WREN}")
    await page.get_by_text(LAST_WORDS).last.wait_for()
    log = page.locator(".sheet:not([hidden]) .log")
    tall = await log.evaluate("log => log.scrollHeight")
    await page.set_viewport_size({"width": WIDE, "height": int(tall) + 400})
    await page.wait_for_function("() => [...document.images].every(i => i.complete)")
    taken = await log.screenshot(scale="css")
    await page.goto("about:blank")  # the page waits for news, and would keep its service from stopping
    return Image.open(BytesIO(taken))


def in_columns(picture: Image.Image) -> Image.Image:
    """Cut a tall picture into columns, a little of each repeated at the top of the next."""
    again = 40
    tops = range(0, max(1, picture.height - again), TALL - again)
    sheet = Image.new("RGB", (len(tops) * (picture.width + 10), min(TALL, picture.height)), "#3a3f45")
    for n, top in enumerate(tops):
        piece = picture.crop((0, top, picture.width, min(top + TALL, picture.height)))
        sheet.paste(piece, (n * (picture.width + 10), 0))
    return sheet


def chosen(course: Course, names: list[str]) -> list[Lesson]:
    """The lessons that are meant, in the order of the year."""
    units = {name.zfill(2) for name in names if name.isdecimal()}
    return [
        each
        for each in course.lessons
        if each.id in names or any(f"unit-{unit}" in str(each.file) for unit in units)
    ]


async def main(folder: Path, names: list[str]) -> None:
    """Live the lessons one after another, with one browser."""
    course, _ = usable_course(Path("content"))
    async with browser_page("about:blank", WIDE, 844) as page:
        for lesson in chosen(course, names):
            with tempfile.TemporaryDirectory() as scratch:
                async with build_demo(Path(scratch), paced=False) as running:
                    life = Life(running)
                    try:
                        place(life, course, lesson)
                        await life.clock("morning")
                        await live_through(life, lesson)
                        picture = await chat_picture(page, running.served.address)
                    except AssertionError as trouble:
                        print(f"{lesson.id}: {trouble}", flush=True)
                        continue
                    finally:
                        await life.close()
            in_columns(picture).save(folder / f"{lesson.id}.png")
            print(folder / f"{lesson.id}.png", flush=True)


if __name__ == "__main__":
    Path(sys.argv[1]).mkdir(parents=True, exist_ok=True)
    asyncio.run(main(Path(sys.argv[1]), sys.argv[2:]))
