"""How fast the checker is, beside two general-purpose ways, in the same run on the same rows, one core.

    .venv/bin/python tests/bench/checker.py [--rounds 3]

The plainest SymPy comparison parses both texts, subtracts and simplifies; `math-verify` (PyPI) is a
general-purpose comparer of maths output. Times are CPU time of this process, so that other work on the
machine does not count. Ends with exit code 1 if a figure is missed.
"""

from __future__ import annotations

import argparse
import json
import logging
import os
import subprocess
import sys
import time
import tracemalloc
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory

from bot.answers import Key, judge
from bot.answers.batch import key_from
from bot.maths.read import the_machine

ROWS = Path(__file__).parent.parent / "answers" / "data" / "typed_answers.jsonl"
missed: list[str] = []


def clock(work: Callable[[], object]) -> float:
    start = time.process_time()
    work()
    return time.process_time() - start


def figure(name: str, value: float, bound: float, unit: str, at_most: bool = True) -> None:
    ok = value <= bound if at_most else value >= bound
    print(
        f"  {'ok  ' if ok else 'MISS'} {name}: {value:.3f} {unit} ({'at most' if at_most else 'at least'} {bound:g})"
    )
    if not ok:
        missed.append(name)


def ours(rows: list[tuple[str, Key]], rounds: int) -> tuple[float, list[float]]:
    best, times = 0.0, []
    for _ in range(rounds):
        each = [clock(lambda typed=typed, key=key: judge(typed, key)) for typed, key in rows]
        took = clock(lambda: [judge(typed, key) for typed, key in rows])
        best = max(best, len(rows) / took)
        times.append(sorted(each))
    return best, min(times, key=lambda each: each[len(each) // 2])


def plain_sympy(rows: list[dict[str, str]]) -> tuple[float, float]:
    from sympy import simplify
    from sympy.parsing.sympy_parser import (
        convert_xor,
        implicit_multiplication_application,
        parse_expr,
        standard_transformations,
    )

    how = (*standard_transformations, implicit_multiplication_application, convert_xor)

    def verdict(row: dict[str, str]) -> str:
        try:
            difference = parse_expr(row["typed"], transformations=how) - parse_expr(
                row["expected"], transformations=how
            )
            return "right" if simplify(difference) == 0 else "wrong"
        except Exception:
            return "unreadable"

    agreed = 0

    def work() -> None:
        nonlocal agreed
        agreed = sum(verdict(row) == row["verdict"] for row in rows)

    return len(rows) / clock(work), agreed / len(rows)


def math_verify(rows: list[dict[str, str]], rounds: int) -> tuple[float, float]:
    from math_verify import parse, verify

    logging.disable(logging.CRITICAL)

    def verdict(row: dict[str, str]) -> str:
        try:
            typed = parse(row["typed"], parsing_timeout=None)
            if not typed:
                return "unreadable"
            expected = parse(row["expected"], parsing_timeout=None)
            return "right" if verify(expected, typed, timeout_seconds=None) else "wrong"
        except Exception:
            return "unreadable"

    agreed = 0

    def work() -> None:
        nonlocal agreed
        agreed = sum(verdict(row) == row["verdict"] for row in rows)

    work()
    return len(rows) / min(clock(work) for _ in range(rounds)), agreed / len(rows)


def import_time() -> float:
    """Milliseconds of CPU time to import bot.answers in a fresh interpreter; the best of five.

    As at every start but the first: the first one compiles, and keeps what it compiled.
    """
    program = (
        "import time; t = time.process_time(); import bot.answers; print((time.process_time() - t) * 1000)"
    )
    with TemporaryDirectory() as compiled:
        around = {**os.environ, "PYTHONPYCACHEPREFIX": compiled}
        around.pop("PYTHONDONTWRITEBYTECODE", None)
        start = [sys.executable, "-c", program]
        return min(
            float(subprocess.run(start, env=around, capture_output=True, text=True, check=True).stdout)
            for _ in range(6)
        )


def hostile(rows: list[dict[str, str]]) -> None:
    worst, most = 0.0, 0
    for row in rows:
        key = key_from(row)
        worst = max(worst, min(clock(lambda key=key, row=row: judge(row["typed"], key)) for _ in range(3)))
        tracemalloc.start()
        judge(row["typed"], key)
        most = max(most, tracemalloc.get_traced_memory()[1])
        tracemalloc.stop()
    figure("slowest hostile row", worst * 1000, 50, "ms")
    figure("most memory for a hostile row", most / 2**20, 4, "MiB")


def main() -> int:
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--rounds", type=int, default=3)
    rounds = options.parse_args().rounds
    every = [json.loads(line) for line in ROWS.read_text(encoding="utf-8").splitlines()]
    ordinary = [row for row in every if not row.get("hostile")]
    the_machine()
    rate, times = ours([(row["typed"], key_from(row)) for row in ordinary], rounds)
    print(f"Checker: {rate:,.0f} rows a second over {len(ordinary)} ordinary rows")
    figure("median", times[len(times) // 2] * 1000, 0.15, "ms")
    figure("99th percentile", times[int(len(times) * 0.99)] * 1000, 2, "ms")
    figure("slowest ordinary row", times[-1] * 1000, 50, "ms")
    hostile([row for row in every if row.get("hostile")])
    figure("import of bot.answers", import_time(), 150, "ms")
    sympy_rate, sympy_right = plain_sympy(ordinary)
    print(f"Plainest SymPy comparison: {sympy_rate:,.0f} rows a second, {sympy_right:.0%} of verdicts right")
    figure("times as fast as the plainest SymPy comparison", rate / sympy_rate, 20, "times", at_most=False)
    verify_rate, verify_right = math_verify(ordinary, rounds)
    print(f"math-verify: {verify_rate:,.0f} rows a second, {verify_right:.0%} of verdicts right")
    figure("times as fast as math-verify", rate / verify_rate, 6, "times (we aim at 8)", at_most=False)
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
