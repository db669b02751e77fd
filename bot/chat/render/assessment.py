"""How we say what is said around a test."""

from __future__ import annotations

from bot.chat.render.registry import button, renders, say
from bot.chat.rendered import Button, Rendered
from bot.chat.words import Text, Words, join, plain
from bot.messages import (
    TestCountedAgain,
    TestDone,
    TestList,
    TestNoted,
    TestReopened,
    TestWaits,
    TypeAgain,
)


@renders(TestWaits)
def test_waits(words: Words, m: TestWaits) -> Rendered:
    """To a grown-up, before the test."""
    key = "test-intro-second" if m.second else "test-intro"
    intro = words(key, name=m.name, title=m.title, items=m.items, minutes=m.minutes)
    if m.opened:
        return say(words("test-opened", name=m.name))
    return say(intro, buttons=[[button(words, "button-open-test", f"open-test:{m.day}")]])


@renders(TestReopened)
def test_reopened(words: Words, m: TestReopened) -> Rendered:
    """Open again."""
    if m.date:
        answers = [[button(words, "button-test-list", f"test-list:{m.day}")]]
        day = words.date(m.date)
        return say(words("test-reopened-closed", name=m.name, day=day), buttons=answers)
    start = [[button(words, "button-start", f"start:{m.day}")]]
    return say(words("test-reopened", name=m.name), buttons=start)


@renders(TestCountedAgain)
def test_counted_again(words: Words, m: TestCountedAgain) -> Rendered:
    """One line to grown-ups; on a phone that children use too without the count."""
    key = "test-late" if m.was is None else "test-again"
    day = words.date(m.date)
    holes = {"name": m.name, "day": day, "right": m.right, "out_of": m.out_of, "was": m.was or 0}
    text = words(f"{key}-shared", name=m.name, day=day) if m.shared else words(key, **holes)
    rows = [[button(words, "button-open-digest", f"digest:{m.day}")]] if m.button else []
    return say(text, buttons=rows)


@renders(TestNoted)
def test_noted(words: Words, m: TestNoted) -> Rendered:
    """Noted, and the number left."""
    return say(words("test-noted", left=m.left))


@renders(TestList)
def test_list(words: Words, m: TestList) -> Rendered:
    """All answers so far."""
    lines = [plain(f"{n}) {typed or '–'}") for n, _, typed in m.rows]
    numbers = [Button(str(n), f"test-show:{item}") for n, item, _ in m.rows]
    rows = [numbers[n : n + 5] for n in range(0, len(numbers), 5)]
    rows.append([button(words, "button-hand-in", f"hand-in:{m.day}")])
    blank = words("test-list-blank", blank=m.blank) if m.blank else Text()
    return say(words("test-list"), join(lines, "\n"), blank, buttons=rows)


@renders(TypeAgain)
def type_again(words: Words, m: TypeAgain) -> Rendered:
    """Answers to be typed once more."""
    lines = [words("test-retype-row", n=n, why=words(f"test-retype-{verdict}")) for n, _, verdict in m.rows]
    numbers = [Button(str(n), f"test-show:{item}") for n, item, _ in m.rows]
    rows = [numbers[n : n + 5] for n in range(0, len(numbers), 5)]
    rows.append([button(words, "button-count-now", f"count-now:{m.day}")])
    return say(words("test-retype", count=len(m.rows)), join(lines, "\n"), buttons=rows)


@renders(TestDone)
def test_done(words: Words, m: TestDone) -> Rendered:
    """The count, what stands firm, what to rework."""
    lines = [words("test-done", right=m.right, out_of=m.out_of, name=m.name)]
    if m.firm:
        lines.append(words("test-done-firm", titles=words.list([f"{title}" for title in m.firm[:4]])))
    if m.rework:
        lines.append(words("test-done-rework", titles=words.list([f"{title}" for title in m.rework[:4]])))
    if m.right < m.out_of:
        lines.append(words("test-done-small", out_of=m.out_of))
    if m.second_look:
        lines.append(words("test-done-second"))
    return say(join(lines, " "))
