"""Working lines: the first line that doesn't follow is named, and nobody is accused where it can't be told."""

from __future__ import annotations

from support.group import Somebody, only

from bot.course.draw import draw
from bot.messages import ItemShown, WorkingSeen
from bot.records import days
from bot.records.base import transaction
from bot.records.days import Fresh
from bot.vocabulary import Part, TemplateId, Why


def asked(wren: Somebody, template: str):
    """Wren is asked one item of a template, now."""
    sent = wren.gets_to_review()
    me = wren.id
    with transaction(wren.group.engine) as s:
        item = draw(wren.group.school.course, TemplateId(template), 5)
        fresh = Fresh(Part.REVIEW, 99, item, Why.TUTOR_ASKED, {})
        (new,) = days.add_items(s, sent.day, me, [fresh])
    wren.presses("again", new)
    return wren.item(new)


def test_first_line_that_does_not_follow_is_named(wren: Somebody) -> None:
    sent = asked(wren, "order-of-operations/plus-and-times")
    a, _, rest = (sent.item.key.given or "").partition("+")
    b, _, c = rest.partition("×")
    wrong = (int(a) + int(b)) * int(c)

    said = only(WorkingSeen, wren.types(f"{a}+{b}×{c}\n{int(a) + int(b)} × {c}\n{wrong}"))

    assert (said.line, said.fine) == (2, 1)
    assert wren.item(sent.id).tries == 1


def test_working_that_ends_right_is_right(wren: Somebody) -> None:
    sent = asked(wren, "order-of-operations/plus-and-times")

    said = wren.types(f"{sent.item.key.given}\n{sent.item.key.answer}")

    assert wren.item(sent.id).outcome == "first-try"
    assert only(ItemShown, said).lead.kind == "right"
