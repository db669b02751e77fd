"""Working lines: a student sends the steps, and hears which is the first that doesn't follow."""

from __future__ import annotations

from sqlalchemy.orm import Session

from bot.answers import look_over
from bot.messages import Message, WorkingSeen
from bot.records import doubts
from bot.records.days import Sent
from bot.records.doubts import DoubtKind
from bot.school_day import stuck
from bot.school_day.asking import Here
from bot.school_day.grading import Graded, tries_of
from bot.vocabulary import Verdict

SHORTEST = 2
"""Fewer lines are an answer, not working."""
MOST_SHOWN = 80
"""Characters of a line that are shown again."""


def lines_of(text: str) -> list[str]:
    """The lines of a reply that hold something; a chain with several equals signs is one line of its own."""
    return [line.strip() for line in text.splitlines() if line.strip()]


def is_working(sent: Sent, text: str) -> bool:
    """Whether a reply shows steps of the item's own expression or equation."""
    if not sent.item.key.given or sent.item.choices:
        return False
    return len(lines_of(text)) >= SHORTEST or text.count("=") >= SHORTEST


def say(s: Session, here: Here, graded: Graded) -> list[Message] | None:
    """What to say of a reply that shows its working; None where its lines tell nothing more."""
    sent = graded.sent
    if graded.judgement.verdict is not Verdict.WRONG or not is_working(sent, graded.typed):
        return None
    lines = lines_of(graded.typed)
    looked = look_over(lines, sent.item.key.given or "")
    if looked.first_wrong is None and not looked.unsure:
        return None
    if looked.unsure:
        doubts.add_doubt(
            s,
            DoubtKind.WORKING,
            here.student.tutor,
            sent.template,
            here.at,
            student=here.student.id,
            item=sent.id,
        )
    bad = looked.first_wrong
    says = {misstep.name: misstep.say for misstep in sent.item.key.missteps}
    return [
        WorkingSeen(
            to=here.chat,
            item=sent.id,
            line=0 if bad is None else bad + 1,
            text="" if bad is None else lines[bad][:MOST_SHOWN],
            fine=len([n for n in looked.fine if bad is None or n < bad]),
            misstep=says.get(looked.misstep or "", ""),
            misstep_name=looked.misstep or "",
            last_go=sent.tries == tries_of(sent) - 1,
            show=stuck.may_see_solution(sent),
            hints_left=len(sent.item.hints) - sent.hints,
            lesson=sent.lesson,
        )
    ]
