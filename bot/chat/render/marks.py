"""How we say the marks of a page."""

from __future__ import annotations

from bot.chat.render.registry import button, renders, say
from bot.chat.rendered import Button, Rendered
from bot.chat.words import Text, Words, bold, from_content, join
from bot.messages import AdjustmentsShown, AskWritten, GraderTold, MarksShown

SOLVED = ("first-try", "later-try")


@renders(MarksShown)
def marks_shown(words: Words, m: MarksShown) -> Rendered:
    """A page's marks, the misses with a button each."""
    solved = [row for row in m.rows if row[1] in SOLVED]
    key = "marks-entered" if m.entered else "marks-head"
    lines = [words(key, name=m.name, day=words.date(m.date), right=len(solved), out_of=len(m.rows))]
    missed = [row for row in m.rows if row[1] == "unsolved"]
    lines += [_missed(words, n, written) for n, _, written, _ in missed]
    chat = [str(n) for n, _, _, in_chat in m.rows if in_chat]
    if chat:
        lines.append(words("marks-in-chat", numbers=", ".join(chat)))
    waiting = [str(n) for n, outcome, _, _ in m.rows if outcome in ("", "untouched")]
    if waiting:
        lines.append(words("marks-waiting", numbers=", ".join(waiting)))
    if m.entered:
        lines.append(words("marks-again" if m.misses else "marks-none-missed"))
    ref = f"{m.side}-run:marks #{m.student} {m.date} %s ?"
    buttons = [Button(words.label("button-written", n=n), ref % n) for n in m.misses[:24]]
    rows = [buttons[at : at + 4] for at in range(0, len(buttons), 4)]
    rows.append([button(words, "button-key", f"{m.side}-run:key #{m.student} {m.date}")])
    if m.others:
        rows.append([button(words, "button-pages-waiting", f"{m.side}-run:marks waiting", count=m.others)])
    return say(join(lines, "\n"), buttons=rows)


def _missed(words: Words, n: int, written: str) -> Text:
    if written:
        return words("marks-missed-written", n=n, written=bold(written))
    return words("marks-missed", n=n)


@renders(AskWritten)
def ask_written(words: Words, m: AskWritten) -> Rendered:
    """What is written there?"""
    ref = f"{m.side}-run:marks #{m.student} {m.date} {m.n} empty"
    return say(
        words("ask-written", n=m.n, name=m.name),
        from_content(m.ask),
        buttons=[[button(words, "button-left-empty", ref)]],
    )


@renders(GraderTold)
def grader_told(words: Words, m: GraderTold) -> Rendered:
    """To the student: who looks at pages."""
    return say(words("grader-told", name=m.name, grader=m.grader))


@renders(AdjustmentsShown)
def adjustments_shown(words: Words, m: AdjustmentsShown) -> Rendered:
    """What is adjusted for one student."""
    lines = [words(f"adjust-{name}") for name in m.on]
    lines.append(words("adjust-timed" if m.timing else "adjust-untimed"))
    ref = f"{m.side}-run:adjust #{m.student} "
    buttons = [button(words, f"button-adjust-{name}", ref + name) for name in m.off]
    buttons += [button(words, f"button-adjust-{name}-off", f"{ref}{name} off") for name in m.on]
    rows = [buttons[at : at + 2] for at in range(0, len(buttons), 2)]
    head = words("adjust-head" if m.on else "adjust-head-none", name=m.name)
    return say(head, join(lines, "\n"), words("adjust-note"), buttons=rows)
