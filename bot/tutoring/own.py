"""The tutor's own items and lessons: typed or sent as a file, proved, shown, and given to the students named."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import date, timedelta

import msgspec
from sqlalchemy.orm import Session

from bot.answers import examples
from bot.course.draw import draw
from bot.course.faults import Fault
from bot.course.item import Item, plain_text
from bot.course.lesson import Lesson
from bot.course.own import own_id, read_own_items, with_own
from bot.course.year import Course
from bot.happened import SentFile
from bot.messages import FaultRow, FileComes, Line, Message, OwnFaults, OwnListed, OwnRow, OwnShown
from bot.planner.plan import DayKind
from bot.planner.plan_day import seed_of
from bot.records import own
from bot.records.own import Own
from bot.records.people import Person, Student
from bot.records.wishes import Wish
from bot.school.asking import Asked, Unclear, row_number
from bot.school.changes import Did, Scene, Stale, Step, propose
from bot.school.drawing import short
from bot.school.names import name_of, take_students
from bot.school.planning import plan_for
from bot.school.when import Span, fold
from bot.school.wishes import WishKind
from bot.tutoring.adjust import day_and_rest, target
from bot.vocabulary import LessonId, TemplateId

WAITS = timedelta(days=30)
"""How long something of one's own waits for a day that has room for it."""
MOST_SHOWN = 12
MOST_FAULTS = 12
MOST_GIVEN = 12
MOST_BYTES = 200_000
MOST_WAITING = 5
ENDINGS = (".md", ".markdown", ".txt")
_PIECE = re.compile(r"(\d{1,9})(?:\s+(.*))?", re.DOTALL)
_VERSION = re.compile(r"v(?:ersion)?\s*(\d{1,4})", re.IGNORECASE)
_GIVEN = re.compile(r"(\d{1,9})(?:\s+(\d{1,2}))?")
_AWAY = {"away", "fuera"}


def own_(asked: Asked) -> list[Message]:
    """What is the tutor's own: listed, looked at, typed anew, an older version put back, put away."""
    text = asked.text.strip()
    if not text:
        return [_listed(asked)]
    number = _PIECE.fullmatch(text)
    if number:
        return _one_piece(asked, _piece(asked, int(number[1])), (number[2] or "").strip())
    students, rest = take_students(asked)
    if not rest.strip() or "//" not in rest:
        raise asked.wrong("why-own", students[0])
    made, faults = read_own_items(rest)
    if faults:
        return [faults_shown(asked, "", faults)]
    return _propose_items(asked, students, made)


def _listed(asked: Asked) -> OwnListed:
    rows = tuple(
        OwnRow(each.id, each.kind, each.title, each.version, each.versions)
        for each in own.all_own(asked.s, asked.person.id)
    )
    return OwnListed(to=asked.person.chat, rows=rows[-40:])


def _piece(asked: Asked, number: int) -> Own:
    found = own.find_own(asked.s, asked.person.id, number)
    if found is None:
        raise asked.wrong("why-no-such-own", n=number)
    return found


def _one_piece(asked: Asked, piece: Own, rest: str) -> list[Message]:
    version = _VERSION.fullmatch(rest)
    if not rest:
        return [_shown(asked, piece)]
    if version:
        return _put_back(asked, piece, int(version[1]))
    if fold(rest) in _AWAY:
        step: Step = {"op": "own-set", "own": piece.id, "set": {"away": True}, "was": {"away": False}}
        return propose(
            asked, "own", [Line("line-own-away", {"n": piece.id, "title": piece.title})], steps=[step]
        )
    if "//" not in rest or piece.kind != "item":
        raise asked.wrong("why-own-file" if piece.kind == "lesson" else "why-own-again")
    made, faults = read_own_items(rest)
    if faults or len(made) != 1:
        faults = faults or [Fault("several", "", 2, "One item, in one line, please.")]
        return [faults_shown(asked, piece.title, faults)]
    ((line, item),) = made
    lines = [Line("line-own-version", {"n": piece.id, "title": item.lesson_title}), _item_line(item)]
    return propose(asked, "own", lines, steps=[_keep("item", line, item.lesson_title, piece.id)])


def _shown(asked: Asked, piece: Own) -> OwnShown:
    versions = own.versions_of(asked.s, piece.id)
    return OwnShown(
        to=asked.person.chat,
        own=piece.id,
        what=piece.kind,
        title=piece.title,
        text=piece.text[:1500],
        more=len(piece.text) > 1500,
        version=piece.version,
        versions=tuple((each.n, each.made_at.date().isoformat()) for each in versions[-MOST_SHOWN:]),
        students=tuple((each.id, each.name) for each in asked.students[:MOST_SHOWN]),
    )


def _put_back(asked: Asked, piece: Own, n: int) -> list[Message]:
    version = next((each for each in own.versions_of(asked.s, piece.id) if each.n == n), None)
    if version is None:
        raise asked.wrong("why-no-such-version", n=piece.id, last=piece.versions)
    if n == piece.version:
        raise asked.wrong("why-that-version")
    step: Step = {
        "op": "own-set",
        "own": piece.id,
        "set": {"version": n},
        "was": {"version": piece.version},
    }
    line = Line("line-own-back", {"n": piece.id, "title": version.title, "v": n, "before": piece.version})
    return propose(asked, "own", [line, Line("line-own-stays")], steps=[step])


def faults_shown(asked: Asked, title: str, faults: Sequence[Fault]) -> OwnFaults:
    """What does not hold, line by line."""
    rows = tuple(FaultRow(each.line, each.what, each.fix, each.shown[:80]) for each in faults[:MOST_FAULTS])
    return OwnFaults(to=asked.person.chat, title=title, rows=rows, more=max(0, len(faults) - MOST_FAULTS))


# Giving ------------------------------------------------------------------------------------------------


def give(asked: Asked) -> list[Message]:
    """Give a piece of one's own to the students named: an item, a lesson, or so many items of a lesson."""
    students, rest = take_students(asked)
    span, words = day_and_rest(asked, students, rest)
    found = _GIVEN.fullmatch(words.strip())
    if not found:
        raise asked.wrong("why-give", students[0])
    piece = _piece(asked, int(found[1]))
    if piece.kind == "item":
        made, _ = read_own_items(piece.text)
        return _propose_items(asked, students, made, span, keep=False)
    lesson = asked.school.course.own.get(LessonId(piece.code))
    if lesson is None:
        raise asked.wrong("why-own-lost", n=piece.id)
    if found[2]:
        count = max(1, min(int(found[2]), MOST_GIVEN))
        return _propose_draws(asked, students, lesson, count, span)
    lines, wished = _lesson_for(asked, students, lesson, span)
    return propose(asked, "give", lines, wished=wished)


def _open(asked: Asked, student: Student, span: Span | None) -> date:
    """The day it is for: one to come, and no test day."""
    where = target(asked, student, span)
    if where.made is not None:
        raise asked.wrong("why-own-made", student, name=student.name)
    plan, _ = plan_for(asked.s, asked.school, student, where.on)
    if plan.kind is DayKind.TEST:
        raise asked.wrong("why-test-day", student, name=student.name, date_day=where.on.isoformat())
    return where.on


def _given(asked: Asked, student: Student, on: date, item: Item) -> Wish:
    what: dict[str, object] = {
        "item": msgspec.to_builtins(item),
        "title": item.lesson_title,
        "tutor": asked.person.name,
    }
    return Wish(WishKind.OWN_ITEM, what, on, on + WAITS, student=student.id)


def _propose_items(
    asked: Asked,
    students: Sequence[Student],
    made: Sequence[tuple[str, Item]],
    span: Span | None = None,
    *,
    keep: bool = True,
) -> list[Message]:
    lines: list[Line] = []
    wished: list[Wish] = []
    for student in students:
        on = _open(asked, student, span)
        lines.append(Line("line-day-of", {"name": name_of(asked, student), "date_day": on.isoformat()}))
        wished += [_given(asked, student, on, item) for _, item in made]
    lines += [_item_line(item) for _, item in made]
    forms = dict.fromkeys(item.key.form for _, item in made if not item.choices)
    notes = [
        Line("note-own-like", {"examples": ",  ".join(examples(form))}) for form in forms if examples(form)
    ]
    steps = [_keep("item", line, item.lesson_title) for line, item in made] if keep else []
    return propose(
        asked, "give", lines, wished=wished, steps=steps, notes=[*notes[:2], Line("note-own-instead")]
    )


def _item_line(item: Item) -> Line:
    answer = f"{item.answer_shown} {item.unit_shown}".strip()
    if item.choices:
        return Line(
            "line-own-choice", {"ask": short(item.ask, 200), "answer": answer, "names": list(item.choices)}
        )
    return Line("line-own-in", {"ask": short(item.ask, 200), "answer": answer})


def _propose_draws(
    asked: Asked, students: Sequence[Student], lesson: Lesson, count: int, span: Span | None
) -> list[Message]:
    lines: list[Line] = []
    wished: list[Wish] = []
    for student in students:
        on = _open(asked, student, span)
        lines.append(Line("line-day-of", {"name": name_of(asked, student), "date_day": on.isoformat()}))
        for n in range(count):
            template = lesson.templates[n % len(lesson.templates)]
            seed = seed_of(student.id, on, TemplateId(template.id), 40 + n)
            item = draw(asked.school.course, template.id, seed)
            lines.append(_item_line(item))
            wished.append(_given(asked, student, on, item))
    return propose(asked, "give", lines, wished=wished, notes=[Line("note-own-instead")])


def _lesson_for(
    asked: Asked, students: Sequence[Student], lesson: Lesson, span: Span | None
) -> tuple[list[Line], list[Wish]]:
    lines: list[Line] = []
    wished: list[Wish] = []
    for student in students:
        on = _open(asked, student, span)
        holes: dict[str, str | int | list[str]] = {
            "name": name_of(asked, student),
            "title": lesson.title,
            "date_day": on.isoformat(),
        }
        lines.append(Line("line-own-lesson", holes))
        what: dict[str, object] = {"lesson": lesson.id, "title": lesson.title}
        wished.append(Wish(WishKind.OWN_LESSON, what, on, on + WAITS, student=student.id))
    return lines, wished


# Files -------------------------------------------------------------------------------------------------


def take_file(s: Session, person: Person, sent: SentFile) -> list[Message] | None:
    """A lesson's file: noted, to be fetched and read; None for what is none."""
    if sent.what != "document" or not sent.name.lower().endswith(ENDINGS):
        return None
    if sent.size > MOST_BYTES:
        row = FaultRow(0, f"The file has {sent.size // 1000} kB; {MOST_BYTES // 1000} are read.", "", "")
        return [OwnFaults(to=person.chat, title=sent.name, rows=(row,))]
    waiting = [each for each in own.coming(s, 50) if each.by == person.id]
    if len(waiting) >= MOST_WAITING:
        return [FileComes(to=person.chat, name=sent.name, full=True)]
    own.add_file(s, person.id, person.chat, sent.file_id, sent.name, sent.caption, sent.at)
    return [FileComes(to=person.chat, name=sent.name)]


def lesson_proposed(
    asked: Asked, course: Course, name: str, text: str, lesson: Lesson, notes: Sequence[Fault], draws: int
) -> list[Message]:
    """A lesson that was proved, shown as it would come: for the students named beside the file, or kept only."""
    words = asked.text.strip()
    piece = _meant(asked, words, name)
    students: list[Student] = []
    unknown = ""
    if words and not words.isdecimal():
        students = _named(asked)
        unknown = "" if students else words
    lines, wished = _lesson_for(asked, students, lesson, None)
    if piece is not None:
        lines.append(Line("line-own-version", {"n": piece.id, "title": lesson.title}))
    elif not students:
        lines.append(Line("line-own-kept", {"title": lesson.title}))
    card = plain_text(lesson.cards[0].text) if lesson.cards else ""
    lines.append(Line("line-own-card", {"text": short(card, 240)}))
    beside = with_own(course, lesson)
    for template in lesson.templates[:3]:
        item = draw(beside, template.id, 1)
        lines.append(Line("line-own-draw", {"ask": short(item.ask, 120), "answer": item.answer_shown}))
    counted = {"count": len(lesson.templates), "draws": draws * len(lesson.templates)}
    shown = [Line("note-own-proved", {**counted})]
    shown += [Line("note-own-look", {"line": each.line, "what": each.what}) for each in notes[:3]]
    if unknown:
        shown.append(Line("note-own-who", {"words": unknown[:60]}))
    elif not students:
        shown.append(Line("note-own-give"))
    step = _keep("lesson", text, lesson.title, piece.id if piece else 0, name)
    return propose(asked, "own", lines, wished=wished, steps=[step], notes=shown)


def _named(asked: Asked) -> list[Student]:
    """The students named beside a file; none where that isn't clear, since the file must not be lost over it."""
    try:
        students, rest = take_students(asked)
    except Unclear:
        return []
    return [] if rest.strip() else students


def _meant(asked: Asked, words: str, name: str) -> Own | None:
    """The piece of which a file is the next version: named by its number, or by the file's name."""
    number = row_number(words)
    mine = own.all_own(asked.s, asked.person.id)
    if number is not None:
        return next((each for each in mine if each.id == number and each.kind == "lesson"), None)
    return next((each for each in mine if each.kind == "lesson" and each.name == name), None)


# Effects -----------------------------------------------------------------------------------------------


def _keep(kind: str, text: str, title: str, piece: int = 0, name: str = "") -> Step:
    return {
        "op": "own-keep",
        "kind": kind,
        "text": text,
        "title": title,
        "code": own_id(text),
        "own": piece,
        "name": name,
    }


def _do_keep(scene: Scene, step: Step) -> Did:
    tutor, code = scene.person.id, str(step["code"])
    mine = own.all_own(scene.s, tutor)
    number = int(str(step["own"]))
    piece = next((each for each in mine if each.id == number or (not number and each.code == code)), None)
    if number and piece is None:
        raise Stale
    before = piece.version if piece else 0
    made = piece.id if piece else own.keep_own(scene.s, tutor, str(step["kind"]), str(step["name"]), scene.at)
    n = own.keep_version(scene.s, made, code, str(step["title"]), str(step["text"]), scene.at)
    return Did({**step, "own": made, "before": before, "n": n})


def _do_not_keep(scene: Scene, step: Step) -> list[Message] | None:
    """The version before stands again; a piece that was new is put away. No text is lost."""
    piece = own.find_own(scene.s, scene.person.id, int(str(step["own"])))
    if piece is None or piece.version != step["n"]:
        return None
    before = int(str(step["before"]))
    own.change_own(scene.s, piece.id, **({"version": before} if before else {"away": True}))
    return []


def _set(scene: Scene, step: Step) -> Did:
    _change(scene, step, "was", "set")
    return Did(step)


def _reset(scene: Scene, step: Step) -> list[Message] | None:
    try:
        _change(scene, step, "set", "was")
    except Stale:
        return None
    return []


def _change(scene: Scene, step: Step, stands: str, to: str) -> None:
    piece = own.find_own(scene.s, scene.person.id, int(str(step["own"])))
    values, now = step[to], step[stands]
    assert isinstance(values, dict) and isinstance(now, dict)
    if piece is None or now.get("version", piece.version) != piece.version:
        raise Stale
    own.change_own(scene.s, piece.id, **values)


KEEP = (_do_keep, _do_not_keep)
"""The effect of keeping a text as the newest version of a piece."""
SET = (_set, _reset)
"""The effect of putting an older version back, or a piece away."""
