"""Live lessons on the phone page as a student, and keep what stands in the chat, to be read from start to end.

    python tests/browser/read_lessons.py FOLDER LESSON [LESSON ...] [--day 2]

A lesson is its name, that of a hands-on lesson as well, or a unit's number for all of its lessons. Each is lived on
a first morning of its own: the student is placed there with all earlier tests behind, the tutor gives one item of
every template, and the student misses some of them twice, looks at the solution, and answers the others right.
`--day 2` lives the second day of lessons that take two, and passes over the others. A hands-on lesson is lived on a
light day, after a small review. Writes LESSON.png (LESSON-2.png) into the folder: the chat at phone width, cut into
columns side by side.
"""

from __future__ import annotations

import argparse
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
from bot.app import Demo, build_demo  # noqa: E402  # as above
from bot.course.draw import draw  # noqa: E402  # as above
from bot.course.item import plain_text  # noqa: E402  # as above
from bot.course.lesson import HandsOn, Lesson  # noqa: E402  # as above
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
FEW = 4
"""Review items of a light day before a hands-on lesson."""
MISSED = (2, 6)
"""Which of the lesson's items are missed, counted from 1."""
LAST_WORDS = "See you next time."


def place(life: Life, course: Course, lesson: Lesson, day: int = 1) -> None:
    """Put the student at a day of the lesson, and give one item of each of its templates, as a tutor would."""
    at = demo.START
    with transaction(life.engine) as s:
        wren, ines = (people.who(s, phone.chat) for phone in (demo.WREN, demo.INES))
        assert wren is not None and ines is not None
        student = wren.speaking
        s.execute(
            update(StudentRow)
            .where(StudentRow.id == student)
            .values(lesson=lesson.n, sitting=day, review_items=len(lesson.templates))
        )
        s.add_all(_tests_behind(course, student, lesson.n))
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


def place_at_task(life: Life, course: Course, task: HandsOn) -> None:
    """Put the student behind the lesson after which a hands-on lesson is offered, with all earlier ones done."""
    with transaction(life.engine) as s:
        wren = people.who(s, demo.WREN.chat)
        assert wren is not None
        student = wren.speaking
        lesson = course.lesson(task.after).n + 1
        s.execute(update(StudentRow).where(StudentRow.id == student).values(lesson=lesson, review_items=FEW))
        s.add_all(_tests_behind(course, student, lesson))
        before = course.hands_on[: course.hands_on.index(task)]
        s.add_all(
            SchoolDayRow(
                student_id=student,
                date=(demo.START - timedelta(days=7 + n)).date(),
                kind=DayKind.LIGHT,
                stage=Stage.DONE,
                notes=json.dumps({"hands_on": each.id, "hands_on_done": True}),
                opened_at=demo.START - timedelta(days=7 + n),
            )
            for n, each in enumerate(before)
        )


def _tests_behind(course: Course, student: int, lesson: int) -> list[SchoolDayRow]:
    return [
        _handed_in(student, test.n, demo.START - timedelta(days=60 + test.n))
        for test in course.tests
        if course.lesson(test.after).n < lesson
    ]


def _handed_in(student: int, test: int, at: datetime) -> SchoolDayRow:
    notes = json.dumps({"test": test, "handed_in": True})
    return SchoolDayRow(
        student_id=student, date=at.date(), kind=DayKind.TEST, stage=Stage.DONE, notes=notes, opened_at=at
    )


async def live_task(life: Life, task: HandsOn) -> None:
    """Do the light day, open its hands-on lesson, and send the answers."""
    await live_through(life, task)
    await life.presses(WREN, "Show me what to do")
    await life.quiet(WREN)
    shown = life.from_bot(WREN)[-1]
    assert task.title in text_of(shown), f"another task came: {text_of(shown)}"
    await life.presses(WREN, shown["reply_markup"]["inline_keyboard"][0][0]["text"])
    await live_through(life, task)


async def live_through(life: Life, lesson: Lesson | HandsOn) -> None:
    """Go on to the day's end; a few of the lesson's items are missed twice, then answered right."""
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


def chosen(course: Course, names: list[str], day: int) -> list[Lesson | HandsOn]:
    """The lessons that are meant, in the order of the year, hands-on lessons last."""
    units = {name.zfill(2) for name in names if name.isdecimal()}
    lessons = [
        each
        for each in course.lessons
        if (each.id in names or any(f"unit-{unit}" in str(each.file) for unit in units))
        and len(each.cards) >= day
    ]
    return [*lessons, *(each for each in course.hands_on if each.id in names and day == 1)]


async def live_one(
    page: Page, running: Demo, course: Course, lesson: Lesson | HandsOn, day: int
) -> Image.Image:
    """Live a lesson on a morning of its own, and picture the student's chat."""
    life = Life(running)
    try:
        if isinstance(lesson, HandsOn):
            place_at_task(life, course, lesson)
            await life.clock("friday")
            await live_task(life, lesson)
        else:
            place(life, course, lesson, day)
            await life.clock("morning")
            await live_through(life, lesson)
        return await chat_picture(page, running.served.address)
    finally:
        await life.close()


async def main(folder: Path, names: list[str], day: int) -> None:
    """Live the lessons one after another, with one browser."""
    course, _ = usable_course(Path("content"))
    async with browser_page("about:blank", WIDE, 844) as page:
        for lesson in chosen(course, names, day):
            with tempfile.TemporaryDirectory() as scratch:
                async with build_demo(Path(scratch), paced=False) as running:
                    try:
                        picture = await live_one(page, running, course, lesson, day)
                    except AssertionError as trouble:
                        print(f"{lesson.id}: {trouble}", flush=True)
                        continue
            path = folder / (f"{lesson.id}.png" if day == 1 else f"{lesson.id}-{day}.png")
            in_columns(picture).save(path)
            print(path, flush=True)


if __name__ == "__main__":
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("folder", type=Path)
    parser.add_argument("lessons", nargs="+")
    parser.add_argument("--day", type=int, choices=(1, 2), default=1)
    given = parser.parse_args()
    given.folder.mkdir(parents=True, exist_ok=True)
    asyncio.run(main(given.folder, given.lessons, given.day))
