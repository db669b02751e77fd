"""Patterns that are compiled late are well formed all the same."""

from __future__ import annotations

import pkgutil
import re
from collections.abc import Iterator
from importlib import import_module

import bot.answers
import bot.maths
from bot.maths.patterns import Later, regex


def every_pattern(value: object) -> Iterator[Later]:
    if isinstance(value, Later):
        yield value
    elif isinstance(value, tuple):
        for part in value:
            yield from every_pattern(part)


def test_every_late_pattern_is_well_formed() -> None:
    found = 0
    for package in (bot.maths, bot.answers):
        for module in pkgutil.iter_modules(package.__path__, f"{package.__name__}."):
            for value in vars(import_module(module.name)).values():
                for pattern in every_pattern(value):
                    re.compile(pattern.text, pattern.flags)
                    found += 1
    assert found > 150


def test_a_late_pattern_does_as_the_compiled_one() -> None:
    late, compiled = regex(r"(\d+)", re.IGNORECASE), re.compile(r"(\d+)", re.IGNORECASE)

    assert late.sub("n", "a1b22") == compiled.sub("n", "a1b22") == "anbn"
    assert late.findall("a1b22") == compiled.findall("a1b22")
    found = late.fullmatch("12")
    assert found is not None and found[1] == "12"
    assert late.pattern == compiled.pattern


def test_a_calculators_power_is_found_where_the_number_begins() -> None:
    """From the middle of a long number the search would start again at each digit."""
    from bot.answers.amount_text import _CALCULATOR

    assert [found.groups() for found in _CALCULATOR.finditer("1.5e3 .5 e-2 2E4 a55e3 12e4".lower())] == [
        ("1.5", "", "3"),
        (".5", "-", "2"),
        ("2", "", "4"),
        ("12", "", "4"),
    ]
    assert _CALCULATOR.search("she has " + "9" * 300) is None
