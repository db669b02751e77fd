"""Throws odd texts at the checker: none may raise, none may take long.

    .venv/bin/python tests/bench/checker_soak.py [--inputs 1000000] [--seed 1]

Texts are rows of ours cut up and joined, tokens of every form in any order, and characters from all of Unicode.
Prints the slowest input; ends with exit code 1 if anything was raised or took more than 50 ms of CPU time.
"""

from __future__ import annotations

import argparse
import json
import random
import sys
import time
from pathlib import Path

from bot.answers import FORMS, Judgement, Key, judge, look_over, split_numbered
from bot.maths import normal
from bot.maths.normal import LONGEST
from bot.maths.read import the_machine
from bot.vocabulary import Verdict

DATA = Path(__file__).parent.parent / "answers" / "data"
TOKENS = [
    "0",
    "1",
    "2",
    "3",
    "7",
    "12",
    "1/2",
    "3/4",
    "0.5",
    ".5",
    "1,250",
    "1.250",
    "0.333...",
    "0.(3)",
    "2½",
    "²",
    "³",
    "⁻¹",
    "x",
    "y",
    "n",
    "ab",
    "π",
    "√",
    "∛",
    "sqrt(",
    "abs(",
    "|",
    "(",
    ")",
    "[",
    "]",
    "{",
    "}",
    "+",
    "-",
    "−",
    "–",
    "*",
    "×",
    "·",
    "÷",
    "/",
    "^",
    "%",
    "$",
    "€",
    "°",
    "'",
    '"',
    "=",
    "≠",
    "<",
    ">",
    "≤",
    "≥",
    "<=",
    ">=",
    "=>",
    "=<",
    ":",
    ";",
    ",",
    ".",
    "...",
    "?",
    "!",
    "&",
    "#",
    "@",
    "~",
    "≈",
    "±",
    "+-",
    "∞",
    "∅",
    "→",
    "->",
    "ft",
    "in",
    "cm",
    "m²",
    "sq",
    "ft",
    "mi/h",
    "mph",
    "h",
    "min",
    "am",
    "pm",
    "lb",
    "apples",
    "and",
    "or",
    "no",
    "wait",
    "so",
    "because",
    "then",
    "to",
    "a",
    "the",
    "is",
    "of",
    "not",
    "half",
    "quarter",
    "third",
    "three",
    "twenty",
    "hundred",
    "million",
    "point",
    "minus",
    "plus",
    "times",
    "over",
    "squared",
    "percent",
    "root",
    "remainder",
    "R",
    "r",
    "x10^",
    "e5",
    "E-3",
    "y=",
    "x=",
    "N/A",
    "none",
    "all",
    "real",
    "numbers",
    "yes",
    "no",
    "idk",
    "help",
    "obtuse",
    "mean",
    "B",
    "C)",
    "option",
    "siete",
    "medio",
    "y",
    "por",
    "ciento",
    "es",
    "igual",
    "a",
    "menos",
    "grados",
    "👍",
    "🙃",
    "\u202e",
    "\u200b",
    "̅",
    "\x00",
    "\n",
    "\t",
    "שלום",
    "１２",
    "ｘ",
    "&lt;",
    "<b>",
    "lambda",
    "%s",
]


def keys() -> list[Key]:
    """A key of every form, from our rows, some with the question's expression."""
    found: dict[tuple[str, str], Key] = {}
    for line in (DATA / "typed_answers.jsonl").read_text(encoding="utf-8").splitlines():
        row = json.loads(line)
        key = Key(row["expected"], row["form"], row["unit"])
        found.setdefault((row["form"], row["expected"]), key)
    given = [
        Key("x = 4", "equation-solution", given="2x + 3 = 11"),
        Key("2x + 6", "expression", given="2(x + 3)", form_is_the_skill=True),
        Key("11/12", "fraction-simplest", given="2/3 + 1/4"),
        Key("5/12", "number", accept="1/3 < it < 1/2"),
    ]
    assert {key.form for key in found.values()} == set(FORMS)
    return [*found.values(), *given]


def texts() -> list[str]:
    lines = (DATA / "typed_answers.jsonl").read_text(encoding="utf-8").splitlines()
    return [json.loads(line)["typed"] for line in lines]


REPEATED = (
    ".", ". ", "!?", ",;", "- - ", "i am ", "not sure ", "7, not sure ", " i think so", "because ", "7 because ",
    "i did it, ", "no wait ", "so ", "=> ", "not 7, ", "not a, ", "a b ", "1 a 2 left ", "ten", "twenty", "5to",
    "xo1", "3x1o", "0xo", "no s", "no soluti ", "5% off of ", "check: ", "i,", "and i ", "a", "so i ", "7 left ",
    "la quinta parte ", "5 each, ", "5,", "1/", "(", "2^", "|", "√", "-", "x=", "y<", "7 R ", ":", "9",
)  # fmt: skip
"""Pieces that fill a whole message: where a pattern goes back over what it read, time grows with the square."""


def repeats(wanted: list[Key]) -> tuple[float, str]:
    """Judge messages filled with one piece. Gives the longest time in seconds, and what took it."""
    longest, slowest = 0.0, ""
    by_form = {key.form: key for key in wanted}
    for piece in REPEATED:
        for form, key in by_form.items():
            for text in (piece * (LONGEST // len(piece)), f"5 {piece * (LONGEST // len(piece) - 2)} 5"):
                start = time.process_time()
                judge(text, key)
                took = time.process_time() - start
                if took > longest:
                    longest, slowest = took, f"{piece!r} for {form}"
    return longest, slowest


def odd_text(dice: random.Random, rows: list[str]) -> str:
    kind = dice.random()
    if kind < 0.35:
        one, other = dice.choice(rows)[:200], dice.choice(rows)[:200]
        cut, place = dice.randint(0, len(one)), dice.randint(0, len(other))
        return one[:cut] + other[place:]
    if kind < 0.75:
        return dice.choice(("", " ")).join(dice.choice(TOKENS) for _ in range(dice.randint(1, 14)))
    if kind < 0.9:
        text = list(dice.choice(rows)[:200])
        for _ in range(dice.randint(1, 4)):
            text.insert(
                dice.randint(0, len(text)),
                chr(dice.choice((dice.randint(0, 0x2FF), dice.randint(0x2000, 0x2BFF)))),
            )
        return "".join(text)
    if kind < 0.97:
        return "".join(chr(c) for c in (dice.randint(1, 0x10FFFF) for _ in range(dice.randint(1, 30))))
    return dice.choice(TOKENS + rows[:50]) * dice.randint(50, 2000)


def soak(inputs: int, seed: int) -> tuple[int, float, str]:
    """Judge that many odd texts. Gives how many raised, the longest time in seconds, and the text it took."""
    dice = random.Random(seed)
    rows, wanted = texts(), keys()
    raised, longest, slowest = 0, 0.0, ""
    for n in range(inputs):
        text, key = odd_text(dice, rows), dice.choice(wanted)
        start = time.process_time()
        try:
            judged = judge(text, key)
            assert isinstance(judged, Judgement)
            assert (judged.trouble is not None) == (judged.verdict is Verdict.UNREADABLE)
            if n % 10 == 0:
                look_over(text.split("\n"), "2x + 3 = 11" if n % 20 else "3/4 + 1/8")
                split_numbered(text)
                assert normal(normal(text)) == normal(text)
        except Exception as error:
            raised += 1
            if raised < 20:
                print(f"raised {error!r} on {text!r} for {key}")
        took = time.process_time() - start
        if took > longest:
            longest, slowest = took, f"{text!r} for {key.form} {key.answer}"
    return raised, longest, slowest


def main() -> int:
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--inputs", type=int, default=1_000_000)
    options.add_argument("--seed", type=int, default=1)
    chosen = options.parse_args()
    the_machine()
    for typed, key in zip(texts(), keys(), strict=False):
        judge(typed, key)
    most, piece = repeats(keys())
    print(f"messages filled with one piece: slowest {most * 1000:.1f} ms: {piece}")
    raised, longest, slowest = soak(chosen.inputs, chosen.seed)
    print(f"{chosen.inputs:,} inputs, {raised} raised, slowest {longest * 1000:.1f} ms: {slowest[:200]}")
    return 1 if raised or max(longest, most) > 0.05 else 0


if __name__ == "__main__":
    sys.exit(main())
