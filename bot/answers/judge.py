"""Typed text and a key: what a fair teacher says of it."""

from __future__ import annotations

from collections.abc import Mapping

from bot.answers.around import (
    asks_for_help,
    last_line,
    newest,
    small,
    trimmed,
    without_help,
    without_lead,
    without_reason,
)
from bot.answers.expected import expected_of
from bot.answers.key import Judgement, Key
from bot.answers.numbers import NUMBER_FORMS, Finding, grade_number
from bot.maths import Undefined, Unreadable, normal, plain
from bot.maths.exact import Beyond
from bot.maths.normal import LONGEST
from bot.vocabulary import Verdict


def judge(typed: str, key: Key, taught: Mapping[str, str] = {}) -> Judgement:
    """Read a reply as a fair teacher would and say the most useful true thing about it.

    `taught` maps normal, small texts that a tutor accepted *from now on* to the expected answer they were
    accepted for. Never raises; bounded in time and memory whatever is typed.
    """
    if len(typed) > LONGEST:
        return Judgement(Verdict.UNREADABLE, trouble="too-long")
    if typed.strip() == _as_stored(key):
        return Judgement(Verdict.RIGHT, read_as=typed.strip())
    text = small(normal(typed))
    if taught and taught.get(text) == key.answer:
        return Judgement(Verdict.RIGHT, read_as=typed.strip(), reason="taught")
    try:
        finding = _graded(text, key)
    except Unreadable as trouble:
        return Judgement(Verdict.UNREADABLE, trouble=trouble.kind)
    except (Undefined, Beyond, RecursionError, OverflowError):
        return Judgement(Verdict.UNREADABLE, trouble="too-long")
    if finding.verdict is Verdict.HELP:
        return Judgement(Verdict.HELP)
    read_as = plain(finding.tree) if finding.tree is not None else text
    return Judgement(finding.verdict, read_as=read_as, reason=finding.reason)


def _as_stored(key: Key) -> str:
    if key.unit and key.form.startswith("quantity"):
        return f"{key.answer} {key.unit}"
    return key.answer


def _graded(text: str, key: Key) -> Finding:
    if asks_for_help(text):
        return Finding(Verdict.HELP)
    text = without_help(text)
    text = without_reason(text)
    if key.form in NUMBER_FORMS:
        text = trimmed(without_lead(newest(trimmed(last_line(text)))))
        if not text:
            raise Unreadable("no-number")
        return grade_number(text, key, expected_of(key.answer, key.unit))
    raise Unreadable("no-number")
