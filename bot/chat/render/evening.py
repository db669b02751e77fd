"""How we say what a parent reads of a day: at most twelve lines before the buttons."""

from __future__ import annotations

from bot.chat.render.paper_shapes import week_chart
from bot.chat.render.registry import button, renders, say
from bot.chat.render.year import how_sure
from bot.chat.rendered import Button, Drawing, Picture, Rendered
from bot.chat.typography import typographic
from bot.chat.words import Text, Words, bold, from_content, join, plain
from bot.messages import (
    Accepted,
    Digest,
    DigestLine,
    MyWeek,
    OpenInFull,
    OpenItem,
    StillHard,
    Talk,
    TalkNoted,
    Unreachable,
    WeekPicture,
    WrittenEnds,
)

QUIET = ("all-right", "test", "test-begun", "paper-waiting")
"""Variants that name nothing that went well: all did, or nothing says so yet."""
SIGNS = {"d": "●", "p": "◐", "t": "■", "n": "○", "o": "–", "f": "", ".": "·"}
"""One sign a day: done, partly, test, not opened, day off, no school, still to come."""
DRAW = {
    "bar": "bar",
    "number-line": "number-line",
    "rectangle": "rectangle",
    "composite": "rectangle",
    "grid": "grid",
    "table": "table",
    "balance": "balance",
    "fraction-simplest": "fraction",
    "mixed": "fraction",
    "equation-solution": "balance",
    "quantity": "picture",
    "ratio": "bar",
    "percent": "bar",
}
"""What to draw, by the item's figure or form; else the item is told as a story."""


@renders(Digest)
def digest(words: Words, m: Digest) -> Rendered:
    """How a day went."""
    if m.variant in ("nothing-started", "our-fault", "day-off"):
        lines = [words(f"digest-{m.variant}", name=m.name)]
        lines += _facts_of_the_day(words, m) + _frame(words, m)
        return say(_head(words, m), join(lines, "\n"))
    lines = [_first_sentence(words, m)]
    lines += _facts_of_the_day(words, m)
    talk = _talk(words, m)
    return say(
        _head(words, m),
        join(lines, "\n"),
        join(_open_items(words, m), "\n"),
        talk,
        join(_frame(words, m), "\n"),
        buttons=_buttons(words, m),
    )


def _head(words: Words, m: Digest) -> Text:
    return words("digest-day-of", day=words.date(m.date)) if m.on_demand else Text()


def _first_sentence(words: Words, m: Digest) -> Text:
    if m.variant in ("placing", "placed"):
        start = [words(f"placement-{how_sure(m.sure)}")] if m.start else []
        key = "digest-placed-all" if m.variant == "placed" and not m.start else f"digest-{m.variant}"
        return join([words(key, name=m.name, questions=m.questions, lesson=m.start), *start], " ")
    done = m.first_try + m.later_try
    key = "enough" if m.enough and m.variant == "worked" else m.variant
    first = words(f"digest-{key}", name=m.name, done=done, out_of=m.out_of, first=m.first_try)
    well = [words("digest-well", well=m.well)] if m.well and m.variant not in QUIET else []
    new = [words("digest-new", lesson=m.lesson)] if m.lesson else []
    return join([first, *new, *well], " ")


def _facts_of_the_day(words: Words, m: Digest) -> list[Text]:
    lines = []
    if m.variant in ("worked", "enough", "only-paper") and (
        m.later_try or m.unsolved or m.untouched or m.excused
    ):
        counts = words(
            "digest-counts",
            first=m.first_try,
            later=m.later_try,
            unsolved=m.unsolved,
            untouched=m.untouched,
            excused=m.excused,
        )
        if m.later_try:
            counts = counts + " " + words("digest-tries", later=m.later_try, tries=m.tries)
        lines.append(counts)
    if m.facts:
        rate = f"{m.per_minute:g}" if m.per_minute is not None else "none"
        best = f"{m.best:g}" if m.best is not None else "none"
        right, out_of = m.facts
        lines.append(words.case("digest-facts", right=right, out_of=out_of, rate=rate, best=best))
    if m.late_answers:
        lines.append(words("digest-late", count=m.late_answers, right=m.late_right))
    if m.accepted:
        lines.append(words("digest-accepted", lessons=words.list(list(m.accepted))))
    return lines


def _open_items(words: Words, m: Digest) -> list[Text]:
    lines = []
    for item in m.open_items:
        line = words(
            "digest-put-right" if item.put_right else "digest-open", title=item.title, ask=_one_line(item.ask)
        )
        if item.answered:
            line = line + " " + words("digest-answered", name=m.name, answered=bold(item.answered))
        lines.append(line)
    if m.more_open:
        lines.append(words("digest-more-open", count=m.more_open))
    return lines


def _one_line(text: str) -> Text:
    line = " ".join(typographic(text).split())
    return plain(line if len(line) <= 160 else line[:159].rpartition(" ")[0] + " …")


def _talk(words: Words, m: Digest) -> Text:
    if not m.talk:
        return words("digest-nothing-to-talk") if m.variant == "all-right" else Text()
    first = m.talk[0]
    if len(m.talk) > 1:
        head = words("digest-talk-two", title=first.title, other=m.talk[1].title)
    else:
        head = words("digest-talk", title=first.title)
    tears = words("digest-talk-tears")
    return join([head, _ask(words, m, first), words(_draw_key(first), name=m.name), tears], " ")


def _ask(words: Words, m: Digest, talk: Talk) -> Text:
    shown_above = any(item.item == talk.item for item in m.open_items)
    sentence = _misstep(words, talk.say)
    key = "digest-talk-ask" if sentence else "digest-talk-ask-plain"
    if shown_above:
        key += "-above"
    return words(key, ask=_one_line(talk.ask), say=sentence)


def _misstep(words: Words, said: str) -> Text:
    """The misstep's sentence; one of the checker's own is in the catalogue under its name."""
    if not said.startswith("="):
        return from_content(said)
    key = f"misstep-{said[1:]}"
    return words(key) if words.has(key) else Text()


def _draw_key(talk: Talk) -> str:
    return f"draw-{DRAW.get(talk.draw, 'story')}"


def _frame(words: Words, m: Digest) -> list[Text]:
    lines = []
    if m.note:
        lines.append(words("digest-note", note=m.note))
    signs = " ".join(SIGNS[sign] for sign in m.week if SIGNS[sign])
    if signs:
        lines.append(words("digest-week", week=signs))
    if m.tomorrow_date:
        day = words.date(m.tomorrow_date)
        key = "digest-tomorrow" if m.tomorrow else "digest-tomorrow-review"
        lines.append(words(key, day=day, lesson=m.tomorrow))
    if m.study is not None:
        test, again = m.study
        lines.append(words("digest-study", test=test))
        if again:
            lines.append(words("digest-study-again", titles=words.list(list(again))))
    if m.half_year[0]:
        early, late = (words.date(each, "d MMMM y") for each in m.half_year)
        lines.append(words("digest-half-year", name=m.name, early=early, late=late))
    if m.long_break:
        lines.append(words("digest-long-break", name=m.name, command=f"/offseason {m.name.lower()} on"))
    return lines


def _buttons(words: Words, m: Digest) -> list[list[Button]]:
    look = [button(words, "button-second-look", f"{m.side}-run:second #{m.student}")] if m.second_look else []
    return [*_rows(words, m), look]


def _rows(words: Words, m: Digest) -> list[list[Button]]:
    rows = []
    if m.talk:
        item = m.talk[0].item
        rows.append(
            [
                button(words, "button-did-it", f"talk-did-it:{item}"),
                button(words, "button-still-hard", f"talk-still-hard:{item}"),
                button(words, "button-not-tonight", f"talk-not-tonight:{item}"),
            ]
        )
        rows.append([button(words, "button-solution", f"talk-solution:{item}")])
    if m.unsolved:
        more = button(words, "button-in-full", f"in-full:{m.day}")
        rows = [*rows[:-1], [*rows[-1], more]] if rows else [[more]]
    rows.append([button(words, "button-week-picture", f"week:{m.day}")])
    return rows


@renders(DigestLine)
def digest_line(words: Words, m: DigestLine) -> Rendered:
    """One line, on a phone that children use too."""
    return say(
        words("digest-line", name=m.name),
        buttons=[[button(words, "button-open-digest", f"digest:{m.day}")]],
    )


@renders(WeekPicture)
def week_picture(words: Words, m: WeekPicture) -> Rendered:
    """The week as a picture, with its words."""
    return week_said(words, m)


def week_said(words: Words, m: WeekPicture | MyWeek) -> Rendered:
    """A week as a picture, and a line for each day of it; what was not there isn't counted up."""
    lines = []
    for date, *counts in m.days:
        kinds = zip(("first", "later", "open", "rest"), counts, strict=True)
        what = [words.label(f"week-day-{kind}", count=count) for kind, count in kinds if count]
        said = ", ".join(what) or words.label("week-day-nothing")
        lines.append(words.label("week-day", day=words.date(date, "EEEE"), what=said))
    alt = "\n".join(lines) or words("week-empty").words()
    title = words("week-title", name=m.name, monday=words.date(m.monday, "d MMMM"))
    return say(title, plain(alt), pictures=(Picture(Drawing("week", week_chart(words, m)), alt),))


@renders(OpenInFull)
def open_in_full(words: Words, m: OpenInFull) -> Rendered:
    """All unsolved items, with what was typed and the answer."""
    if not m.items:
        return say(words("open-in-full-none"))
    return say(words("open-in-full", name=m.name), *[_in_full(words, item) for item in m.items[:12]])


def _in_full(words: Words, item: OpenItem) -> Text:
    head = words("open-item", title=item.title, ask=_one_line(item.ask))
    if item.answered:
        rest = words("open-item-answered", answered=bold(item.answered), answer=item.answer)
    else:
        rest = words("open-item-blank", answer=item.answer)
    sentence = _misstep(words, item.misstep)
    may = words("digest-may", say=sentence) if sentence else Text()
    return join([head, join([rest, may], " ")], "\n")


@renders(TalkNoted)
def talk_noted(words: Words, m: TalkNoted) -> Rendered:
    """After a press under the digest."""
    if m.how == "still-hard" and m.tutor:
        return say(words("talk-still-hard-tutor", tutor=m.tutor))
    return say(words(f"talk-{m.how}"))


@renders(StillHard)
def still_hard(words: Words, m: StillHard) -> Rendered:
    """To the tutor."""
    return say(words("still-hard", student=m.student, household=m.household, title=m.title))


@renders(Accepted)
def accepted(words: Words, m: Accepted) -> Rendered:
    """To the student: it counts."""
    return say(words("accepted", tutor=m.tutor, typed=bold(m.typed), ask=plain(typographic(m.ask))))


@renders(WrittenEnds)
def written_ends(words: Words, m: WrittenEnds) -> Rendered:
    """To the tutor: the lessons run out."""
    return say(words("written-ends", student=m.student, household=m.household, lessons=m.lessons))


@renders(Unreachable)
def unreachable(words: Words, m: Unreachable) -> Rendered:
    """To the tutor: nothing reaches them."""
    return say(words("unreachable", name=m.name, household=m.household))
