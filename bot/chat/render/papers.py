"""How we say what families keep or print: the week's letter, short and as a PDF."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta

from bot.chat.render.paper_shapes import (
    duration,
    look,
    marked,
    table,
    typed,
    week_chart,
    year_chart,
)
from bot.chat.render.registry import button, cut, renders, say
from bot.chat.rendered import Document, Drawing, Kept, Picture, Rendered
from bot.chat.words import Text, Words, bold, join
from bot.messages import (
    KeyPaper,
    LetterPaper,
    PagesShown,
    PagesWaiting,
    SheetPaper,
    SheetRow,
    WeekLetter,
    WeekLetterLine,
    WeekOf,
    WeekTest,
)

FEW = 5
"""Answers below which we say that there are only few (common practice, no source)."""
MOST_TITLES = 4
MOST_PAGES = 12
"""Pages that wait listed in one message; the oldest come first."""


def titles(words: Words, rows: Sequence[tuple[str, int]], most: int = 99) -> Text:
    """Titles one after another, those with only few answers marked."""
    named = [
        words("paper-few", title=title, answers=answers).words() if answers < FEW else title
        for title, answers in rows[:most]
    ]
    if len(rows) > most:
        named.append(words("paper-more", count=len(rows) - most).words())
    return words.list(named)


def _head(words: Words, week: WeekOf) -> Text:
    monday = words.date(week.monday, "d MMMM")
    if not week.opened:
        return words("week-head-none", name=week.name, monday=monday)
    asked = sum(sum(day[1:]) for day in week.days)
    done = sum(day[1] + day[2] for day in week.days)
    first = sum(day[1] for day in week.days)
    head = words("week-head", name=week.name, monday=monday, opened=week.opened, planned=week.planned)
    counted = words("week-counted", done=done, out_of=asked, first=first) if asked else Text()
    return join([head, counted], " ")


def _time(words: Words, week: WeekOf) -> Text:
    if week.untimed and not week.minutes:
        return words("week-time-paper", days=week.untimed)
    time = words("week-time", time=duration(words, week.minutes))
    return join([time, words("week-time-besides", days=week.untimed)], " ") if week.untimed else time


def _time_only(words: Words, week: WeekOf) -> str:
    besides = words("week-time-besides", days=week.untimed) if week.untimed else Text()
    return join([duration(words, week.minutes) + ".", besides], " ").words()


def _test(words: Words, test: WeekTest) -> Text:
    return words("week-test", title=test.title, right=test.right, out_of=test.out_of, missed=len(test.missed))


def _next(words: Words, week: WeekOf) -> Text:
    lessons = [f"*{title}*" for title in dict.fromkeys(row[2] for row in week.coming) if title]
    tests = [title for title in dict.fromkeys(row[3] for row in week.coming) if title]
    if not week.coming:
        return words("week-next-none")
    if not lessons and not tests:
        return words("week-next-review")
    named = [Text((("italic", title.strip("*"), ""),)) for title in lessons] + [
        bold(title) for title in tests
    ]
    return words("week-next", what=join(named, ", "))


def _finish(words: Words, week: WeekOf) -> Text:
    if not week.early:
        return Text()
    early, late = (words.date(each, "d MMMM y") for each in (week.early, week.late))
    return words("finish-range", early=early, late=late)


@renders(WeekLetter)
def week_letter(words: Words, m: WeekLetter) -> Rendered:
    """A week in a short message."""
    week = m.week
    ref = f"letter #{week.student} pdf {week.monday}"
    if not week.opened:
        return say(_head(words, week), _next(words, week))
    lines = [_head(words, week), _time(words, week)]
    if week.learned:
        lines.append(words("week-learned", titles=words.list(list(week.learned))))
    firm = []
    if week.steady:
        firm.append(words("week-steady", titles=titles(words, week.steady, MOST_TITLES)))
    if week.shaky:
        firm.append(words("week-shaky", titles=titles(words, week.shaky, MOST_TITLES)))
    return say(
        join(lines, "\n"),
        join(firm, "\n"),
        join([_test(words, test) for test in week.tests], "\n"),
        join([_next(words, week), _finish(words, week)], "\n"),
        buttons=[[button(words, "button-letter-pdf", f"{m.side}-run:{ref}")]],
    )


@renders(WeekLetterLine)
def week_letter_line(words: Words, m: WeekLetterLine) -> Rendered:
    """One line, on a phone that children use too."""
    ref = f"f-run:letter #{m.student} {m.monday}"
    return say(words("week-line", name=m.name), buttons=[[button(words, "button-open-digest", ref)]])


@renders(LetterPaper)
def letter_paper(words: Words, m: LetterPaper) -> Rendered:
    """The weekly letter as a PDF."""
    week = m.week
    monday = date.fromisoformat(week.monday)
    first, last = (words.date(each.isoformat(), "d MMMM") for each in (monday, monday + timedelta(days=6)))
    facts = []
    if week.learned:
        facts.append((words.label("letter-new"), words.list(list(week.learned)).words()))
    facts.append((words.label("letter-time"), _time_only(words, week)))
    if week.early:
        facts.append((words.label("letter-finish"), _finish(words, week).words()))
    data = {
        "title": words.label("letter-title", name=week.name),
        "under": words.label("letter-under", first=first, last=last, tutor=m.tutor),
        "paragraphs": [_head(words, week).words()],
        "facts": facts,
        "week": week_chart(words, week) if week.days else None,
        "tables": [*_standing(words, week), *_tests(words, week), *_plan(words, week)],
        "year": year_chart(words, m.year, week.name) if m.year and len(m.year.done) > 2 else None,
        "closing": words.label("letter-closing"),
        "look": look(words, m.size, m.big, m.made, words.label("letter-footer", name=week.name)),
    }
    title = words("letter-here", name=week.name, first=first, last=last)
    return say(
        title,
        documents=(Document(f"{words.label('letter-file')}-{week.monday}.pdf", Drawing("letter", data)),),
    )


def _standing(words: Words, week: WeekOf) -> list[dict[str, object]]:
    rows = [[title, words.label("chart-steady"), _answers(words, answers)] for title, answers in week.steady]
    rows += [[title, words.label("chart-shaky"), _answers(words, answers)] for title, answers in week.shaky]
    if not rows:
        return []
    head = [words.label(f"letter-{key}") for key in ("lesson", "stands", "answers")]
    return [table(words.label("letter-standing"), head, rows, (4, 1.4, 2.2), marked(words("letter-unsure")))]


def _answers(words: Words, answers: int) -> str:
    return words.label("letter-answers-few" if answers < FEW else "letter-answers-many", answers=answers)


def _tests(words: Words, week: WeekOf) -> list[dict[str, object]]:
    tables = []
    for test in week.tests:
        head = [words.label(f"letter-{key}") for key in ("lesson", "question", "wrote", "answer")]
        rows = [
            [each.title, each.ask, typed(each.answered) or words.label("letter-blank"), each.answer]
            for each in test.missed
        ]
        heading = words.label(
            "letter-test", title=test.title, day=words.date(test.date), right=test.right, out_of=test.out_of
        )
        note = words.label("letter-test-note" if rows else "letter-test-all", out_of=test.out_of)
        tables.append(table(heading, head if rows else [], rows, (2, 4, 1.4, 1.4), note))
    return tables


def _plan(words: Words, week: WeekOf) -> list[dict[str, object]]:
    if not week.coming:
        return []
    rows = [[words.date(iso), _what(words, kind, lesson, test)] for iso, kind, lesson, test in week.coming]
    return [table(words.label("letter-plan"), [], rows, (2, 4), words.label("letter-plan-note"))]


def _what(words: Words, kind: str, lesson: str, test: str) -> str:
    return test or lesson or words.label(f"ahead-{kind}").rstrip(".")


def _sheet_data(words: Words, m: SheetPaper | KeyPaper) -> dict[str, object]:
    day = words.date(m.date)
    return {
        "title": words.label("sheet-title", day=day),
        "under": words.label("sheet-under", name=m.name, items=len(m.rows)),
        "intro": marked(
            words("sheet-intro-dictated" if isinstance(m, SheetPaper) and m.dictated else "sheet-intro")
        ),
        "items": [_sheet_item(words, row) for row in m.rows],
        "key_title": words.label("sheet-key"),
        "look": look(words, m.size, m.big, m.date, words.label("sheet-footer", name=m.name, day=day)),
    }


def _sheet_item(words: Words, row: SheetRow) -> dict[str, object]:
    source = marked(words("sheet-source", lesson=row.source)) if row.source else ""
    if row.calculator:
        source = " · ".join(filter(None, [source, words.label("sheet-calculator")]))
    return {
        "number": str(row.n),
        "ask": row.ask,
        "source": source,
        "figure": row.figure,
        "choices": list(row.choices),
        "lines": row.lines,
        "answer": f"{row.answer} {row.unit}".strip(),
        "steps": [list(step) for step in row.steps],
    }


@renders(SheetPaper)
def sheet_paper(words: Words, m: SheetPaper) -> Rendered:
    """A day's review to print."""
    name = f"{words.label('sheet-file')}-{m.date}.pdf"
    lines = [words("sheet-here", name=m.name, day=words.date(m.date), items=len(m.rows))]
    if m.fixed:
        lines.append(words("sheet-fixed"))
    lines.append(words("sheet-how"))
    ref = f"{m.side}-run:key #{m.student} {m.date} {m.size}" + (" big" if m.big else "")
    rows = [[button(words, "button-key", ref)]] if m.side else []
    content = Drawing("worksheet", _sheet_data(words, m))
    return say(join(lines, "\n"), documents=(Document(name, content),), buttons=rows)


@renders(KeyPaper)
def key_paper(words: Words, m: KeyPaper) -> Rendered:
    """The answers to a sheet."""
    name = f"{words.label('sheet-key-file')}-{m.date}.pdf"
    content = Drawing("key", _sheet_data(words, m))
    return say(words("key-here", name=m.name, day=words.date(m.date)), documents=(Document(name, content),))


@renders(PagesWaiting)
def pages_waiting(words: Words, m: PagesWaiting) -> Rendered:
    """Pages that wait, with buttons for the marks and the photos of each."""
    if not m.rows:
        return say(words("waiting-none"))
    lines, rows = [], []
    for row in m.rows[:MOST_PAGES]:
        said = [words("waiting-items", count=row.items)] if row.items else []
        said += [words("waiting-photos", count=row.photos)] if row.photos else []
        lines.append(words("waiting-page", name=row.name, day=words.date(row.date), what=join(said, ", ")))
        about = {"name": cut(row.name, 16), "day": words.date(row.date, "EEE d")}
        buttons = []
        if row.items:
            ref = f"{m.side}-run:marks #{row.student} {row.date}"
            buttons.append(button(words, "button-waiting-marks", ref, **about))
        if row.photos and m.side != "g":
            ref = f"{m.side}-run:pages #{row.student} {row.date}"
            buttons.append(button(words, "button-waiting-photos", ref, **about))
        rows.append(buttons)
    if len(m.rows) > MOST_PAGES:
        lines.append(words("waiting-more", count=len(m.rows) - MOST_PAGES))
    how = words("waiting-how") if any(row.items for row in m.rows) else Text()
    return say(words("waiting-head"), join(lines, "\n"), how, buttons=rows)


@renders(PagesShown)
def pages_shown(words: Words, m: PagesShown) -> Rendered:
    """Photos that a student sent."""
    day = words.date(m.date)
    if not m.pages:
        return say(words("pages-none", name=m.name, day=day))
    captions = [caption for _, caption in m.pages if caption]
    alt = words.label("pages-alt", name=m.name, day=day)
    shown = tuple(Picture(Kept(file_id), alt) for file_id, _ in m.pages)
    said = words("pages-said", words=" · ".join(captions)) if captions else Text()
    return say(words("pages-here", name=m.name, day=day, count=len(m.pages)), said, pictures=shown)
