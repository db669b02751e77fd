"""Expressions handed to sympy, with the numbers put in there."""

from __future__ import annotations

import re

import sympy


def _value(ask):
    """The value of the first expression in the question at the numbers named after *when*."""
    expression = re.search(
        r"(?:What is|is|costs) ((?:\d*[a-z]|\d|[ +−/])+?) (?:when|centimetres|inches|dollars)", ask
    )[1]
    text = re.sub(r"(?<=[\da-z])(?=[a-z])", "*", expression.replace("−", "-"))
    numbers = {letter: int(n) for letter, n in re.findall(r"\b([a-z]) = (\d+)", ask)}
    return sympy.parse_expr(text, evaluate=True).subs(numbers)


def one_letter(ask):
    return int(_value(ask))


def which_line(ask, choices):
    first, times, n = (
        int(shown) for shown in re.search(r"know (\d+) \+ (\d+)n when n = (\d+)", ask).groups()
    )
    worth = first + sum([n] * times)
    lines = [(choice, choice.replace("×", "*")) for choice in choices]
    same = [choice for choice, line in lines if sympy.parse_expr(line) == worth]
    return [choice for choice in same if str(n) in re.findall(r"\d+", choice) and "×" in choice]


def over_a_bar(ask):
    return str(_value(ask))


def two_letters(ask):
    return int(_value(ask))


def ribbon_around(ask):
    return int(_value(ask))


def boat_for_hours(ask, words):
    fixed, hour, person = (int(n) for n in re.search(r"costs (\d+) \+ (\d+)h \+ (\d+)p", ask).groups())
    hours, people = (int(n) for n in re.search(r"for (\d+) hours for (\d+) people", ask).groups())
    bill = [fixed, *[hour] * hours, *[person] * people]
    return sum(bill)
