"""How we say what families keep of some days: in a message, as a PDF, as files for a spreadsheet."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from bot.chat.render.paper_shapes import chart_words, duration, look, marked, table, typed, year_chart
from bot.chat.render.registry import button, renders, say
from bot.chat.rendered import Document, Drawing, Kept, Picture, Rendered
from bot.chat.words import Words, join, plain
from bot.messages import (
    RecordDay,
    RecordOf,
    RecordPaper,
    RecordsShown,
    RecordTables,
    SamplesShown,
    YearSoFar,
)

RECORD = "record"
"""The recipe of a record; the photos in its data are paths, which who draws it fills in."""
PHOTOS_ON_PAPER = 24
"""Photos on a record, spread over its days; the rest is in its list."""
LESSONS_FOR_CHART = 10
"""Lessons from which a chart of them says something."""


def _span(words: Words, first: str, last: str) -> dict[str, str]:
    days = {"first": words.date(first, "d MMMM y"), "last": words.date(last, "d MMMM y")}
    return {"span": words.label("span-day" if first == last else "span", **days)}


@renders(RecordsShown)
def records_shown(words: Words, m: RecordsShown) -> Rendered:
    """What a record of some days would hold."""
    lines = [words("records-days", opened=m.opened, time=duration(words, m.minutes))]
    if m.on_paper:
        lines.append(words("records-paper", days=m.on_paper))
    lines += [
        words(f"records-{key}", count=count)
        for key, count in (
            ("lessons", m.lessons),
            ("tests", m.tests),
            ("hands-on", m.hands_on),
            ("standards", m.standards),
            ("samples", m.samples),
        )
        if count
    ]
    ref = f"{m.side}-run:records #{m.student} %s {m.first} - {m.last}"
    rows = [
        [button(words, "button-record-pdf", ref % "pdf"), button(words, "button-record-csv", ref % "csv")],
        [button(words, "button-record-handover", ref % "handover")],
    ]
    if m.samples:
        rows.insert(1, [button(words, "button-record-photos", ref % "photos")])
    return say(
        words("records-head", name=m.name, **_span(words, m.first, m.last)),
        join(lines, "\n"),
        words("records-law"),
        buttons=rows,
    )


@renders(SamplesShown)
def samples_shown(words: Words, m: SamplesShown) -> Rendered:
    """Photos of work, and what each is."""
    span = _span(words, m.first, m.last)
    if not m.photos:
        return say(words("samples-none", name=m.name, **span))
    lines = []
    for date, lesson, caption in m.rows:
        said = [words.date(date, "EEE d MMM y"), *([lesson] if lesson else [])]
        lines.append(plain(", ".join(said) + (f": {caption[:120]}" if caption else "")))
    alts = [words.label("pages-alt", name=m.name, day=words.date(date)) for date, _, _ in m.rows]
    shown = tuple(Picture(Kept(each), alt) for each, alt in zip(m.photos, alts, strict=True))
    rows = []
    if m.further:
        first, last = m.further
        ref = (
            f"records #{m.student} photos {first} - {last}" if first < last else f"pages #{m.student} {first}"
        )
        rows.append([button(words, "button-more-photos", f"{m.side}-run:{ref}", left=m.left)])
    return say(
        words("samples-here", name=m.name, count=len(m.photos), **span),
        join(lines, "\n"),
        pictures=shown,
        buttons=rows,
    )


@renders(RecordTables)
def record_tables(words: Words, m: RecordTables) -> Rendered:
    """A record as files for a spreadsheet."""
    documents = tuple(Document(name, content) for name, content in m.files)
    return say(
        words("records-csv", name=m.name, **_span(words, m.first, m.last)),
        words("records-law"),
        documents=documents,
    )


@renders(RecordPaper)
def record_paper(words: Words, m: RecordPaper) -> Rendered:
    """A record as a PDF."""
    record = m.record
    kind = "handover" if m.handover else "record"
    span = _span(words, record.first, record.last)
    under = words.label(
        "record-under", name=record.name, household=record.household, tutor=record.tutor, **span
    )
    footer = words.label("record-footer", name=record.name, **span)
    year = None
    if record.met_by and record.met_by[-1][1] >= LESSONS_FOR_CHART:
        so_far = YearSoFar(
            start=record.first, end=record.last, lessons=record.met_by[-1][1], done=record.met_by
        )
        year = year_chart(words, so_far, record.name)
    notes = [words.label("records-law")]
    if m.handover:
        notes.insert(0, marked(words("record-firm-note")))
    photos = [] if m.handover else _on_paper(words, record)
    data = {
        "photos": photos,
        "title": words.label(f"{kind}-title"),
        "under": under,
        "intro": _about_the_course(words, record) if m.handover else [],
        "facts": _record_facts(words, record),
        "year": year,
        "tables": list(_handover_tables(words, record) if m.handover else _record_tables(words, record)),
        "skills": _skills(words, record) if m.handover else None,
        "notes": notes,
        "blanks": [words.label(f"record-blank-{key}") for key in ("mark", "by", "date")]
        if m.handover
        else [],
        "look": look(words, m.size, m.big, m.made, footer),
    }
    name = f"{words.label(f'{kind}-file')}-{record.first}-{record.last}.pdf"
    return say(
        words(f"{kind}-here", name=record.name, **span), documents=(Document(name, Drawing(RECORD, data)),)
    )


def _record_facts(words: Words, record: RecordOf) -> list[tuple[str, str]]:
    time = duration(words, record.minutes).words()
    if record.on_paper:
        time = f"{time}; {words.label('record-time-paper', days=record.on_paper)}"
    counts = (("days", len(record.days)), ("lessons", len(record.lessons)), ("tests", len(record.tests)))
    facts = [(words.label(f"record-{key}"), str(count)) for key, count in counts]
    facts.insert(1, (words.label("record-time"), time))
    if record.hands_on:
        facts.append((words.label("record-hands-on"), str(len(record.hands_on))))
    facts.append((words.label("record-standards"), str(len(record.standards))))
    facts.append((words.label("record-samples"), str(len(record.work))))
    return facts


def _head_of(words: Words, *keys: str) -> list[str]:
    return [words.label(f"record-{key}") for key in keys]


def _record_tables(words: Words, record: RecordOf) -> Iterator[dict[str, object]]:
    """Day by day, as a family keeps it."""
    rows = [
        [
            words.date(day.date, "EEE d MMM y"),
            ", ".join(day.lessons) or words.label(f"record-kind-{day.kind}"),
            words.label("record-on-paper") if day.on_paper else str(day.minutes),
            f"{day.solved} / {day.items}" if day.items else "",
        ]
        for day in record.days
    ]
    if rows:
        head = _head_of(words, "day", "what", "minutes", "solved")
        yield table(words.label("record-days"), head, rows, (1.7, 4, 1.1, 1))
    yield from _shared_tables(words, record)
    if record.work:
        rows = [
            [words.date(one.date, "EEE d MMM y"), one.lesson or "–", typed(one.caption) or "–"]
            for one in record.work
        ]
        keys = ("below", "note") if any(one.path for one in record.work) else ("note",)
        note = " ".join(words.label(f"record-samples-{key}") for key in keys)
        head = _head_of(words, "day", "lesson", "caption")
        yield table(words.label("record-samples"), head, rows, (1.6, 2.6, 2.8), note)


def _on_paper(words: Words, record: RecordOf) -> list[dict[str, str]]:
    """Some of the photos, evenly over the days where there are many."""
    here = [one for one in record.work if one.path]
    count = min(len(here), PHOTOS_ON_PAPER)
    chosen = [here[n * len(here) // count] for n in range(count)]
    return [
        {
            "path": one.path,
            "under": ", ".join(part for part in (words.date(one.date, "d MMM y"), one.lesson) if part),
        }
        for one in chosen
    ]


def _shared_tables(words: Words, record: RecordOf) -> Iterator[dict[str, object]]:
    if record.tests:
        rows = [[words.date(t.date, "d MMM y"), t.title, f"{t.right} / {t.out_of}"] for t in record.tests]
        head = _head_of(words, "day", "test", "right")
        yield table(words.label("record-tests"), head, rows, (1.5, 4, 1.2), words.label("record-tests-note"))
    if record.hands_on:
        rows = [[words.date(day, "d MMM y"), title] for day, title in record.hands_on]
        yield table(words.label("record-hands-on"), _head_of(words, "day", "task"), rows, (1.5, 4))
    if record.lessons:
        rows = [[words.date(one.date, "d MMM y"), one.title, one.unit] for one in record.lessons]
        head = _head_of(words, "first-met", "lesson", "unit")
        yield table(words.label("record-lessons"), head, rows, (1.2, 3.4, 3.6))
    if record.standards:
        rows = [[code, gist, ", ".join(titles)] for code, gist, titles in record.standards]
        head = _head_of(words, "code", "gist", "met-by")
        note = words.label("record-standards-note")
        yield table(words.label("record-standards"), head, rows, (0.9, 3.3, 3.3), note)


def _about_the_course(words: Words, record: RecordOf) -> list[str]:
    units = [f"{n}. {unit.title}" for n, unit in enumerate(record.units, start=1)]
    return [
        marked(words("handover-course", course=record.course)),
        marked(words("handover-way")),
        marked(words("handover-units", units="; ".join(units))),
    ]


def _handover_tables(words: Words, record: RecordOf) -> Iterator[dict[str, object]]:
    """Month by month, and unit by unit what stands firm."""
    months: dict[str, list[RecordDay]] = {}
    for day in record.days:
        months.setdefault(day.date[:7], []).append(day)
    met = Counter(lesson.date[:7] for lesson in record.lessons)
    rows = [
        [
            words.date(f"{month}-01", "LLLL y"),
            str(len(days)),
            duration(words, sum(day.minutes for day in days)).words(),
            str(met[month]),
        ]
        for month, days in months.items()
    ]
    if rows:
        yield table(
            words.label("record-hours"),
            _head_of(words, "month", "days", "time", "lessons"),
            rows,
            (2, 1, 1.4, 1),
        )
    firm = [
        [unit.title, *(str(unit.states.count(state)) for state in ("steady", "shaky", "not met"))]
        for unit in record.units
        if set(unit.states) != {"not met"}
    ]
    if firm:
        head = [
            words.label("record-unit"),
            *(words.label(f"chart-{key}") for key in ("steady", "shaky", "not-met")),
        ]
        yield table(words.label("record-firm"), head, firm, (4, 1, 1, 1))
    yield from _shared_tables(words, record)


def _skills(words: Words, record: RecordOf) -> dict[str, object]:
    return {
        "units": [[unit.title, list(unit.states)] for unit in record.units],
        "name": record.name,
        "words": chart_words(words),
    }
