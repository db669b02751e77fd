"""How we say what concerns the year as a whole."""

from __future__ import annotations

from bot.chat.render.paper_shapes import look, table
from bot.chat.render.registry import button, renders, say
from bot.chat.render.shapes import examples_text, lesson_button
from bot.chat.rendered import Document, Drawing, Rendered
from bot.chat.words import Text, Words, bold, join
from bot.messages import (
    CourseDone,
    DaysUnfinished,
    FinishShown,
    FoundationsPaper,
    HalfYearLook,
    OffSeason,
    PlacementDone,
    PlacementFound,
    PlacementPaused,
    PlacementUnread,
    StudyList,
    WeekAhead,
)

SURE, LIKELY = 85, 65
"""Chances in percent from which a start is called sure, or likely."""


@renders(PlacementUnread)
def placement_unread(words: Words, m: PlacementUnread) -> Rendered:
    """It couldn't be read; how it can be typed."""
    lines = [words("placement-unread")]
    if m.examples:
        lines.append(words("placement-unread-examples", examples=examples_text(m.examples)))
    return say(join(lines, " "), buttons=[[button(words, "button-not-met", f"place-skip:{m.item}")]])


@renders(PlacementPaused)
def placement_paused(words: Words, m: PlacementPaused) -> Rendered:
    """Enough for today."""
    return say(words("placement-paused", asked=m.asked))


@renders(PlacementDone)
def placement_done(words: Words, m: PlacementDone) -> Rendered:
    """That was all."""
    return say(words("placement-done", name=m.name, asked=m.asked))


@renders(PlacementFound)
def placement_found(words: Words, m: PlacementFound) -> Rendered:
    """To the tutor: where to start, what to patch, how sure."""
    head = words("placement-found", name=m.name, household=m.household, asked=m.asked)
    if not m.lesson:
        return say(head, words("placement-found-all"))
    lines = [words("placement-found-start", lesson=bold(m.lesson), n=m.n)]
    lines.append(words(f"placement-{how_sure(m.sure)}", sure=m.sure))
    patch = words("placement-found-patch", titles=words.list(list(m.patch))) if m.patch else Text()
    rows = [
        [
            button(words, "button-begin-there", f"t-do:{m.change}"),
            button(words, "button-leave-it", f"t-leave:{m.change}"),
        ]
    ]
    if m.safer_n:
        lines.append(words("placement-found-safer", lesson=bold(m.safer), n=m.safer_n))
        label = button(words, "button-begin-at", f"t-run:lesson #{m.student} {m.safer_n}", n=m.safer_n)
        rows.insert(1, [label])
    return say(head, join(lines, " "), patch, words("placement-found-else", name=m.name), buttons=rows)


def how_sure(percent: int) -> str:
    """How sure a start is, as a word of the catalogue's keys."""
    return "sure" if percent >= SURE else "likely" if percent >= LIKELY else "guess"


@renders(FinishShown)
def finish_shown(words: Words, m: FinishShown) -> Rendered:
    """When the course may be done."""
    at = "finish-at" if m.lesson else "finish-at-end"
    lines = [words(at, name=m.name, n=m.n, out_of=m.out_of, lesson=m.lesson)]
    if m.planned:
        lines.append(words("finish-taken", taken=m.taken, planned=m.planned))
    if m.early:
        lines.append(words("finish-range", early=_long(words, m.early), late=_long(words, m.late)))
    if m.wanted:
        lines.append(words("finish-wanted-own" if m.own else "finish-wanted", day=_long(words, m.wanted)))
    if m.early and m.wanted:
        lines.append(words(f"finish-{_in_time(m.early, m.late, m.wanted)}"))
    return say(join(lines, "\n"))


def _long(words: Words, iso: str) -> str:
    return words.date(iso, "d MMMM y")


def _in_time(early: str, late: str, wanted: str) -> str:
    """Whether the whole range, part of it or nothing of it lies before the day that is wanted."""
    return "in-time" if late <= wanted else "perhaps" if early <= wanted else "later"


@renders(HalfYearLook)
def half_year_look(words: Words, m: HalfYearLook) -> Rendered:
    """To the tutor: where the year is heading, and a suggestion."""
    lines = [words("half-year", name=m.name, household=m.household)]
    if m.early:
        lines.append(words("finish-range", early=_long(words, m.early), late=_long(words, m.late)))
    lines.append(words("half-year-wanted", day=_long(words, m.wanted)))
    advice = [words(f"half-year-{m.advice}")]
    if m.advice == "leave-out-extras":
        early, late = _long(words, m.core_early), _long(words, m.core_late)
        advice.append(words("half-year-core", count=len(m.extras), titles=words.list(list(m.extras))))
        advice.append(words("half-year-core-range", early=early, late=late))
    rows = []
    if m.change:
        rows = [
            [button(words, "button-leave-out", f"t-do:{m.change}")],
            [button(words, "button-keep-extras", f"t-leave:{m.change}")],
        ]
    return say(join(lines, "\n"), join(advice, " "), words("half-year-yours", name=m.name), buttons=rows)


@renders(DaysUnfinished)
def days_unfinished(words: Words, m: DaysUnfinished) -> Rendered:
    """To the tutor: days in a row that were not finished."""
    name = m.name.lower()
    rows = [
        [
            button(words, "button-look-today", f"t-run:today #{m.student}"),
            button(words, "button-small-next", f"t-run:small #{m.student}"),
        ]
    ]
    return say(
        words("days-unfinished", name=m.name, household=m.household, days=m.days, who=name), buttons=rows
    )


@renders(WeekAhead)
def week_ahead(words: Words, m: WeekAhead) -> Rendered:
    """The coming school days, and why."""
    lines = []
    for iso, kind, lesson, sitting, sittings, test, review, why in m.rows:
        if test:
            what = words("ahead-test", title=test)
        elif lesson:
            key = "ahead-lesson-part" if sittings > 1 else "ahead-lesson"
            what = words(key, lesson=lesson, sitting=sitting, sittings=sittings)
        else:
            what = words(f"ahead-{kind}")
        line = join([bold(words.date(iso, "EEE d MMM")), what], ": ")
        if review:
            reasons = [words(f"ahead-why-{each}", count=count).words() for each, count in why]
            line = line + " " + words("ahead-review", count=review, why=words.list(reasons))
        lines.append(line)
    name = m.name.lower()
    return say(
        words("ahead-head", name=m.name),
        join(lines, "\n"),
        words("ahead-note").marked("italic"),
        words("ahead-change", who=name),
    )


@renders(OffSeason)
def off_season(words: Words, m: OffSeason) -> Rendered:
    """To the student: on or off."""
    return say(words("offseason-on" if m.on else "offseason-off"))


@renders(StudyList)
def study_list(words: Words, m: StudyList) -> Rendered:
    """On the evening before a test."""
    lines = [words("study-head", test=m.test, day=words.date(m.date))]
    if m.new:
        lines.append(words("study-new", titles=words.list(list(m.new))))
    again = words("study-again") if m.again else words("study-nothing")
    rows = [[lesson_button(words, lesson, title)] for lesson, title in zip(m.lessons, m.again, strict=True)]
    return say(join(lines, " "), again, buttons=rows)


@renders(CourseDone)
def course_done(words: Words, m: CourseDone) -> Rendered:
    """The course is done; what can be had now."""
    rows = [
        [button(words, "button-standing", f"{m.side}-run:standing #{m.student}")],
        [button(words, "button-off-season", f"{m.side}-run:offseason #{m.student} on")],
    ]
    who = m.name.lower()
    return say(
        words("course-is-done", name=m.name, household=m.household),
        words("course-done-next", who=who),
        buttons=rows,
    )


@renders(FoundationsPaper)
def foundations_paper(words: Words, m: FoundationsPaper) -> Rendered:
    """The page for the family."""
    rows = [
        [names.get(words.language, names["en"]), words.label(f"course-standing-{stands}")]
        for names, stands in m.rows
    ]
    head = [words.label("course-skill"), words.label("course-standing")]
    data = {
        "title": f"{m.name}: {words.label('course-foundations-title')}",
        "tables": [table("", head, rows, (3, 2), note=words.label("course-foundations-intro"))],
        "notes": [words.label("course-foundations-note"), words.label("course-foundations-limits")],
        "look": look(words, "a4", False, m.made),
    }
    name = f"{words.label('standing-file')}-{m.made}.pdf"
    return say(words("standing-here", name=m.name), documents=(Document(name, Drawing("record", data)),))
