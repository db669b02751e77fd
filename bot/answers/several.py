"""Several answers in one message: `3) 1/2  4) -7`."""

from __future__ import annotations

import re
from collections.abc import Mapping

from bot.maths.patterns import regex

# From the clearest way to number an answer to the least clear; the first that is found is taken throughout.
_STYLES = (
    regex(
        r"(?:^|(?<=[\s,;]))\(?#?(?:q|no\.? ?|n[º°]\.? ?)?(\d{1,2}) ?\.?\)[:.]?(?=\s|[^\s)])", re.IGNORECASE
    ),
    regex(
        r"(?:^|(?<=[\s,;]))(?:#|q|no\.? |n[º°]\.? ?|number |question |item |ex\.? )(\d{1,2}) ?[:.)=\-]?(?=\s)",
        re.IGNORECASE,
    ),
    regex(r"^[ \t]*(\d{1,2}) ?(?:[.:]|-|=|->|→)[ \t]+(?=\S)", re.MULTILINE),
    regex(r"(?:^|(?<=[\s,;]))(\d{1,2})[.:] (?=\S)"),
)


def split_numbered(typed: str) -> Mapping[int, str]:
    """The answers of a message by the number written before each; empty if no numbers stand there.

    The same number twice: the last answer counts. What stands before the first number is left out.
    """
    text = typed[:4096]
    for style in _STYLES:
        marks = list(style.finditer(text))
        if not marks:
            continue
        found: dict[int, str] = {}
        ends = [mark.start() for mark in marks[1:]] + [len(text)]
        for mark, end in zip(marks, ends, strict=True):
            answer = text[mark.end() : end].strip(" \t\r\n,;")
            if answer:
                found[int(mark.group(1))] = answer
        return found
    return {}
