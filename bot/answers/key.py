"""What a reply is graded against, and what comes of it."""

from __future__ import annotations

import re
from dataclasses import dataclass

from bot.maths.patterns import regex
from bot.vocabulary import Verdict

_PI = regex(r"π|\bpi\b|(?<!\d)3\.14|(?<!\d)22/7(?!\d)", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Misstep:
    """A named wrong path of a template: the wrong answer it leads to, and one sentence to the student."""

    name: str
    answer: str
    say: str


@dataclass(frozen=True, slots=True)
class Key:
    """The expected answer of an item and how it has to look.

    `answer` holds no unit; in the forms *choice* and *words* `|` separates listed wordings. `unit` is the
    unit asked for or printed in the question. `given` is the question's own expression or equation, where
    it has one. `accept` is a condition on `it` for items with many right answers: `1/3 < it < 1/2`.
    `circles` tells whether the question has to do with π (`tells_of_pi`); None where nobody knows the question,
    and its numbers have to tell.
    """

    answer: str
    form: str
    unit: str | None = None
    given: str | None = None
    accept: str | None = None
    choices: tuple[str, ...] = ()
    form_is_the_skill: bool = False
    missteps: tuple[Misstep, ...] = ()
    circles: bool | None = None


@dataclass(frozen=True, slots=True)
class Judgement:
    """What a fair teacher says of one reply.

    `read_as` is what was understood, to be shown where it was not plain. `reason` is a code of
    `reasons.toml` for a *form*, *unit* or *right* that deserves a word, else "". `misstep` names the likely
    wrong path of a wrong answer. `trouble` is a kind of `unreadable.toml` when nothing could be graded.
    `not_started` is set when the question itself was typed back: free once, then it costs a try.
    """

    verdict: Verdict
    read_as: str = ""
    reason: str = ""
    misstep: str | None = None
    trouble: str | None = None
    not_started: bool = False


def tells_of_pi(question: str) -> bool:
    """Whether a question names π or one of its usual values."""
    lower = question.lower()  # few questions hold any of these, and the pattern is slow to see that
    return any(one in lower for one in ("π", "pi", "3.14", "22/7")) and _PI.search(question) is not None
