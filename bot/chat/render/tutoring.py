"""How we say what a grown-up hears on a command: changes, questions, lists, one student's day."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta

from babel.dates import format_date

from bot.chat.render.evening import SIGNS
from bot.chat.render.registry import button, cut, renders, say
from bot.chat.rendered import TEXT, Button, Rendered, units
from bot.chat.words import Text, Words, bold, join, plain
from bot.messages import (
    CannotUndo,
    Changed,
    ChangesShown,
    Choose,
    CommandShown,
    CommandsShown,
    DayRow,
    DayShown,
    DaysShown,
    FromTutor,
    ItemLine,
    LeftAsIs,
    Line,
    NeedsShown,
    PlanShown,
    Preview,
    TakenBack,
    WrongCommand,
)
from bot.school.commands import commands_for
from bot.vocabulary import Part, Role

STANDS = {
    "first-try": "●",
    "later-try": "◐",
    "unsolved": "○",
    "excused": "–",
    "done": "●",
}
"""Signs of items; all others are still to come."""
ROOM = TEXT - 300
MOST_BUTTONS = 60
_MONDAY = date(2024, 1, 1)


def clock(minutes: int) -> str:
    """Minutes after midnight as a time of day."""
    return f"{minutes // 60}:{minutes % 60:02d}"


def week_in_words(words: Words, signs: str) -> Text:
    """A school week by its short day names, the light day marked."""
    names = []
    for n, sign in enumerate(signs):
        if sign != "0":
            name = format_date(_MONDAY + timedelta(days=n), "EEE", locale=words.locale)
            names.append(words("week-light", day=name).words() if sign == "2" else name)
    return words.list(names)


def week_so_far(words: Words, signs: str) -> Text:
    """The days of a week that had school, each with its sign; nothing where there is none yet."""
    days = [
        f"{format_date(_MONDAY + timedelta(days=n), 'EEE', locale=words.locale)} {SIGNS[sign]}"
        for n, sign in enumerate(signs)
        if SIGNS.get(sign)
    ]
    return words("digest-week", week="  ".join(days)) if days else Text()


def line_text(words: Words, line: Line) -> Text:
    """One line of data in words."""
    filled: dict[str, object] = {}
    for name, value in line.holes.items():
        if isinstance(value, list):
            filled[name] = words.list(value)
        elif name.startswith("date_"):
            filled[name] = words.date(str(value)) if value else ""
        elif name.startswith("key_"):
            others = {name: value for name, value in line.holes.items() if not name.startswith("key_")}
            filled[name] = line_text(words, Line(str(value), others))
        elif name.startswith("time_") and isinstance(value, int):
            filled[name] = clock(value)
        elif name.startswith("week"):
            filled[name] = week_in_words(words, str(value))
        else:
            filled[name] = value
    return words(line.key, **filled)


def lines_text(words: Words, lines: Sequence[Line]) -> Text:
    """Lines one under another."""
    return join([line_text(words, line) for line in lines], "\n")


def fitted(words: Words, lines: Sequence[Text], room: int = ROOM) -> Text:
    """Lines one under another, as many as one message holds, and how many there are besides."""
    kept: list[Text] = []
    used = 0
    for n, line in enumerate(lines):
        used += units(line.words()) + 1
        if used > room:
            kept.append(words("day-more", count=len(lines) - n))
            break
        kept.append(line)
    return join(kept, "\n")


def shortened(text: Text, room: int) -> Text:
    """A text cut to some units, its marks dropped where it had to be cut."""
    found = text.words()
    return text if units(found) <= room else plain(found[: room // 2 - 1] + "…")


@renders(Preview)
def preview(words: Words, m: Preview) -> Rendered:
    """A change as it would be."""
    rows: list[list[Button]] = []
    if m.ways:
        turned_down = m.ways[0][1] == "button-not-from-now-on"
        first = "button-once-not" if turned_down else "button-once" if m.ways[0][0] else m.ways[0][1]
        rows.append([button(words, first, f"{m.side}-do:{m.change}")])
        rows += [[button(words, key, f"{m.side}-do:{other}")] for other, key in m.ways if other]
    else:
        rows.append([button(words, "button-do", f"{m.side}-do:{m.change}")])
    rows[-1 if not m.ways else len(rows) - 1].append(
        button(words, "button-leave-it", f"{m.side}-leave:{m.change}")
    )
    return say(
        words("preview-head"),
        fitted(words, [line_text(words, line) for line in m.lines], ROOM - 800),
        lines_text(words, m.notes),
        words("preview-not-yet"),
        buttons=rows,
    )


@renders(Changed)
def changed(words: Words, m: Changed) -> Rendered:
    """A change took effect."""
    undo = [button(words, "button-undo", f"{m.side}-undo:{m.change}")] if m.undo else []
    link = [words("changed-link", name=m.name), plain(m.link)] if m.link else []
    return say(
        words("changed-already" if m.already else "changed-head"),
        fitted(words, [line_text(words, line) for line in m.lines]),
        join(link, "\n"),
        buttons=[undo],
    )


@renders(LeftAsIs)
def left_as_is(words: Words, m: LeftAsIs) -> Rendered:
    """Nothing changed."""
    return say(words("left-as-is"))


@renders(TakenBack)
def taken_back(words: Words, m: TakenBack) -> Rendered:
    """A change was undone."""
    kept = [words("taken-back-kept"), lines_text(words, m.kept)] if m.kept else []
    lines = fitted(words, [line_text(words, line) for line in m.lines])
    return say(words("taken-back-head"), lines, join(kept, "\n"))


@renders(CannotUndo)
def cannot_undo(words: Words, m: CannotUndo) -> Rendered:
    """Nothing was taken back."""
    return say(words(f"cannot-undo-{m.why}"))


@renders(ChangesShown)
def changes_shown(words: Words, m: ChangesShown) -> Rendered:
    """The last changes, an undo button for each."""
    lines = [
        plain(f"{n}. ") + join([line_text(words, line) for line in short], " ")
        for n, (_, _, short) in enumerate(m.rows, start=1)
    ]
    buttons = [
        button(words, "button-undo-n", f"{m.side}-undo:{change}", n=n)
        for n, (change, _, _) in enumerate(m.rows, start=1)
    ]
    return say(words("changes-head"), fitted(words, lines), buttons=in_rows(buttons, 3))


def in_rows(buttons: Sequence[Button], width: int) -> list[list[Button]]:
    """Buttons side by side, so many in a row."""
    return [list(buttons[n : n + width]) for n in range(0, len(buttons), width)]


@renders(Choose)
def choose(words: Words, m: Choose) -> Rendered:
    """A question with buttons."""
    buttons = [Button(cut(label, 40), f"{m.side}-pick:{m.ref}.{n}") for n, label in enumerate(m.options)]
    return say(line_text(words, m.question), buttons=[[each] for each in buttons])


@renders(WrongCommand)
def wrong_command(words: Words, m: WrongCommand) -> Rendered:
    """Why it can't be followed, and what would have worked."""
    examples = [words("wrong-examples")] + [plain(each).marked("code") for each in m.examples]
    return say(line_text(words, m.why), join(examples, "\n") if m.examples else Text())


def offered(words: Words, roles: Sequence[str], *, shared: bool = False) -> tuple[tuple[str, str], ...]:
    """The commands that a chat is offered, with what they do."""
    names = commands_for([Role(role) for role in roles], shared)
    return tuple((name, words.label(f"command-{name}")) for name in names)


@renders(CommandsShown)
def commands_shown(words: Words, m: CommandsShown) -> Rendered:
    """What one can do, by groups."""
    groups = []
    for group, names in m.groups:
        lines = [words(f"group-{group}").marked("bold")]
        lines += [plain(f"/{name}  ") + words(f"command-{name}") for name in names]
        groups.append(join(lines, "\n"))
    commands = offered(words, m.roles) if m.roles else None
    return say(words(f"commands-head-{m.side}"), *groups, words("commands-more"), commands=commands)


@renders(CommandShown)
def command_shown(words: Words, m: CommandShown) -> Rendered:
    """One command with its examples."""
    head = bold(f"/{m.command}") + "  " + words(f"command-{m.command}")
    return say(head, join([plain(each).marked("code") for each in m.examples], "\n"))


@renders(NeedsShown)
def needs_shown(words: Words, m: NeedsShown) -> Rendered:
    """Who needs the tutor now."""
    lines = []
    for row in m.rows:
        reasons = join([line_text(words, reason) for reason in row.reasons], "; ")
        lines.append(bold(row.name) + f" ({row.household}): " + reasons)
    rows = [[button(words, "button-doubts", "t-run:doubts", count=m.doubts)]] if m.doubts else []
    if m.pages:
        rows.append([button(words, "button-pages-waiting", "t-run:pages waiting", count=m.pages)])
    rows += in_rows([Button(cut(row.name), f"t-run:today #{row.student}") for row in m.rows[:24]], 3)
    if not m.rows:
        return say(words("needs-none"), words("needs-all-fine", count=m.quiet), buttons=rows)
    quiet = words("needs-quiet", count=m.quiet)
    return say(words("needs-head"), fitted(words, lines), quiet, buttons=rows)


def day_row(words: Words, row: DayRow) -> Text:
    """How a day stands, in a line."""
    stands = words(f"day-row-{row.stage}", done=row.done, out_of=row.out_of, first=row.first_try)
    return stands + words("day-open", open=row.open) if row.open else stands


@renders(DaysShown)
def days_shown(words: Words, m: DaysShown) -> Rendered:
    """Today, a line for each student."""
    lines = [bold(row.name) + f" ({row.household}): " + day_row(words, row) for row in m.rows]
    if m.side == "t":
        buttons = [Button(cut(row.name), f"t-run:today #{row.student}") for row in m.rows]
        rows = in_rows(buttons[:MOST_BUTTONS], 3)
    else:
        lines = [bold(row.name) + ": " + day_row(words, row) for row in m.rows]
        rows = [
            [button(words, "button-digest-of", f"f-run:digest #{row.student}", name=cut(row.name, 20))]
            for row in m.rows[:MOST_BUTTONS]
        ]
    if m.pages:
        page = button(words, "button-pages-waiting", f"{m.side}-run:pages waiting", count=m.pages)
        rows = [[page], *rows[: MOST_BUTTONS - 1]]
    return say(words("days-head"), fitted(words, lines), buttons=rows)


def item_line(item: ItemLine, sign: str) -> Text:
    """One item of a list: its number, a sign, its lesson, its question."""
    head = bold(item.n) + (f" {sign} " if sign else " ")
    return head + plain(item.title).marked("italic") + f": {item.ask}"


@renders(DayShown)
def day_shown(words: Words, m: DayShown) -> Rendered:
    """One student's day."""
    student = m.row.student
    head = bold(m.row.name) + f", {words.date(m.date)}: " + day_row(words, m.row)
    facts = [head]
    if m.row.lesson:
        facts.append(words("day-lesson", lesson=m.row.lesson))
    if m.minutes:
        facts.append(words("day-minutes", minutes=m.minutes))
    facts.append(week_so_far(words, m.week))
    lines = []
    for item in m.items:
        sign = STANDS.get(item.stands, "·") + ("?" if item.with_tutor else "")
        line = item_line(item, sign)
        if item.typed and item.stands == "unsolved":
            line = line + " → " + plain(item.typed).marked("code")
        lines.append(line)
    if m.more:
        lines.append(words("day-more", count=m.more))
    return say(
        join(facts, "\n"),
        fitted(words, lines),
        words("day-legend") if m.items else Text(),
        buttons=[
            [
                button(words, "button-plan", f"t-run:plan #{student}"),
                button(words, "button-map", f"t-run:map #{student}"),
                button(words, "button-agenda", f"t-run:agenda #{student}"),
            ]
        ],
    )


@renders(PlanShown)
def plan_shown(words: Words, m: PlanShown) -> Rendered:
    """What a day is going to hold."""
    kind = f"plan-kind-{m.day_kind}" + ("-part" if m.day_kind == "lesson" and m.sitting > 1 else "")
    head = [
        words("plan-head", name=m.name, day=words.date(m.date)),
        words(kind, lesson=m.lesson, sitting=m.sitting),
        words("plan-minutes", minutes=m.minutes, family=m.family_minutes),
    ]
    lines: list[Text] = []
    for part, key in ((Part.GUIDED, "plan-guided"), (Part.REVIEW, "plan-review")):
        own = [item_line(item, "") for item in m.items if item.part == part]
        lines += [words(key), *own] if own else []
    wishes = join([line_text(words, note) for note in m.notes], "; ")
    row = [
        button(words, "button-make-small", f"t-run:small #{m.student} {m.date}"),
        button(words, "button-no-lesson", f"t-run:review #{m.student} {m.date}"),
    ]
    return say(
        join(head, "\n"),
        fitted(words, lines, ROOM - 400),
        words("plan-notes", wishes=shortened(wishes, 300)) if wishes else Text(),
        words("plan-how"),
        buttons=[row],
    )


@renders(FromTutor)
def from_tutor(words: Words, m: FromTutor) -> Rendered:
    """A tutor's words."""
    key = "from-tutor-for" if m.name else "from-tutor"
    return say(words(key, tutor=m.tutor, text=m.text, name=m.name))
