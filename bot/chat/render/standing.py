"""How we say how a student stands: map, one item's record, pace, agenda, doubts, and a tutor's people."""

from __future__ import annotations

from bot.chat.render.registry import button, cut, renders, say
from bot.chat.render.tutoring import clock, fitted, in_rows, line_text, shortened, week_in_words
from bot.chat.rendered import Rendered
from bot.chat.typography import typographic
from bot.chat.words import Text, Words, bold, join, plain
from bot.messages import (
    AgendaShown,
    DoubtShown,
    FamilyChanged,
    HoldsShown,
    MapShown,
    NoDoubts,
    PaceShown,
    PeopleShown,
    RecordShown,
)

NOT_COUNTED = ("wrong", "form", "unit", "unreadable")


@renders(MapShown)
def map_shown(words: Words, m: MapShown) -> Rendered:
    """Lessons by unit."""
    lines = []
    for unit, steady, shaky, not_met in m.units:
        lines.append(bold(unit))
        if not_met and not steady and not shaky:
            lines.append(words("map-none-met", count=len(not_met)))
            continue
        for key, titles in (("map-steady", steady), ("map-shaky", shaky), ("map-not-met", not_met)):
            if titles:
                lines.append(words(key, titles=", ".join(titles)))
    coming = words("map-next", lesson=m.lesson) if m.lesson else Text()
    return say(
        words("map-head", name=m.name),
        fitted(words, lines),
        coming,
        words("map-note").marked("italic"),
        buttons=[[button(words, "button-map-picture", f"t-run:map #{m.student} picture")]],
    )


@renders(RecordShown)
def record_shown(words: Words, m: RecordShown) -> Rendered:
    """One item with all that was typed."""
    lines = []
    rows = []
    for attempt, typed, read_as, verdict, say_, hints, by_tutor in m.attempts:
        parts = [plain(typed).marked("code"), words(f"verdict-{verdict}")]
        if read_as and read_as != typed:
            parts.append(words("record-read", read=read_as))
        if hints:
            parts.append(words("record-hints", hints=hints))
        if by_tutor:
            parts.append(words("record-by-tutor"))
        if say_:
            parts.append(words("record-may", say=say_))
        lines.append(join(parts, " · "))
        if verdict in NOT_COUNTED:
            data = f"t-run:accept @{attempt}"
            rows.append([button(words, "button-accept-n", data, typed=cut(typed, 20))])
        elif verdict == "right":
            data = f"t-run:reject @{attempt}"
            rows.append([button(words, "button-reject-n", data, typed=cut(typed, 20))])
    if m.outcome != "excused":
        rows.append([button(words, "button-excuse", f"t-run:excuse #{m.student} {m.n} {m.date}")])
    outcome = words(f"outcome-{m.outcome}") if m.outcome else Text()
    return say(
        words("record-head", name=m.name, day=words.date(m.date), n=m.n, title=m.title),
        join([shortened(plain(typographic(m.ask)), 1200), words("record-answer", answer=m.answer)], "\n"),
        fitted(words, lines, 1800) if lines else words("record-none"),
        outcome,
        buttons=rows,
    )


@renders(PaceShown)
def pace_shown(words: Words, m: PaceShown) -> Rendered:
    """How far a student is."""
    if m.lesson:
        at = words("pace-lesson", n=m.n, out_of=m.out_of, lesson=m.lesson)
    else:
        at = words("pace-lesson-end", written=m.written)
    lines = [words("pace-head", name=m.name), at]
    if m.written < m.out_of:
        lines.append(words("pace-written", written=m.written, out_of=m.out_of))
    lines.append(words("pace-week", week=week_in_words(words, m.week)))
    if m.planned:
        lines.append(words("pace-taken", taken=m.taken, planned=m.planned))
    lines.append(words("pace-left", left=m.left))
    if m.early and m.late:
        lines.append(
            words("pace-finish", early=words.date(m.early, "d MMMM y"), late=words.date(m.late, "d MMMM y"))
        )
    return say(join(lines, "\n"))


@renders(PeopleShown)
def people_shown(words: Words, m: PeopleShown) -> Rendered:
    """Households and their people."""
    lines = []
    for name, zone, at, agreed, people in m.households:
        lines.append(words("people-household", name=name, zone=zone, at=clock(at), agreed=agreed))
        lines += [
            plain(f"· {each.name}: ") + words(f"role-{each.role}") + ", " + words(f"phone-{each.phone}")
            for each in people
        ]
        if not people:
            lines.append(plain("· ") + words("people-empty"))
    return say(fitted(words, lines))


@renders(DoubtShown)
def doubt_shown(words: Words, m: DoubtShown) -> Rendered:
    """The oldest doubt."""
    row = m.row
    facts = [plain(typographic(row.ask))] if row.ask else []
    if row.typed:
        facts.append(words("doubt-typed", typed=join([plain(t).marked("code") for t in row.typed], ", ")))
    if row.answer:
        facts.append(words("doubt-key", answer=row.answer))
    if row.count and row.student:
        facts.append(words("doubt-many", count=row.count))
    buttons = [button(words, "button-seen", f"t-run:doubts seen {row.ref}")]
    if row.attempt:
        buttons.insert(0, button(words, "button-accept", f"t-accept:{row.attempt}"))
    if row.excuse:
        buttons.append(button(words, "button-excuse", f"t-run:excuse {row.excuse}"))
    head = {"student": row.student} if row.student else {"count": row.count}
    return say(
        words(f"doubt-{row.kind}", title=row.title, day=words.date(row.since), **head),
        shortened(join(facts, "\n"), 3000),
        words("doubts-left", count=m.left),
        buttons=[buttons],
    )


@renders(NoDoubts)
def no_doubts(words: Words, m: NoDoubts) -> Rendered:
    """The queue is empty."""
    return say(words("doubts-none"))


@renders(AgendaShown)
def agenda_shown(words: Words, m: AgendaShown) -> Rendered:
    """What to do in a live lesson."""
    parts = [words("agenda-head", name=m.name)]
    if m.well:
        parts.append(words("agenda-well", titles=words.list(list(m.well))))
    if not m.points:
        parts.append(words("agenda-none"))
    for n, point in enumerate(m.points, start=1):
        lines = [words("agenda-point", n=n, title=point.title)]
        if point.typed:
            typed = plain(point.typed).marked("code")
            lines.append(words("agenda-typed", ask=point.ask[:300], typed=typed))
        if point.say:
            lines.append(words("record-may", say=point.say))
        lines.append(words("agenda-fresh", ask=point.fresh[:500], answer=point.answer))
        parts.append(join(lines, "\n"))
    return say(*parts)


@renders(HoldsShown)
def holds_shown(words: Words, m: HoldsShown) -> Rendered:
    """What holds for a while."""
    if not m.rows:
        return say(words("holds-none", name=m.name))
    lines = [plain(f"{n}. ") + line_text(words, line) for n, (_, line) in enumerate(m.rows, start=1)]
    buttons = [
        button(words, "button-end-n", f"t-run:end {wish}", n=n)
        for n, (wish, _) in enumerate(m.rows[:40], start=1)
    ]
    return say(words("holds-head", name=m.name), fitted(words, lines), buttons=in_rows(buttons, 4))


@renders(FamilyChanged)
def family_changed(words: Words, m: FamilyChanged) -> Rendered:
    """To the tutor: a parent changed something."""
    key = "family-took-back" if m.back else "family-changed"
    head = words(key, name=m.name, household=m.household)
    return say(head, fitted(words, [line_text(words, line) for line in m.lines]))
