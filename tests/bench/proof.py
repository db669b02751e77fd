"""Measure the proof of the course beside drawing the same items one by one, unchecked, in the same run on one core.

    .venv/bin/python tests/bench/proof.py [--draws 300] [--every 12]

A proof draws a template hundreds of times and looks at every item. It shares between draws what they have in common,
so that all its checks together shouldn't cost more than the sharing saves. Times are CPU time of this process, so
that other work on the machine does not count. Ends with exit code 1 if the figure is missed.
"""

from __future__ import annotations

import argparse
import sys
import time
from collections.abc import Callable
from pathlib import Path

from bot.course.draw import draw_whole
from bot.course.load import load_course
from bot.course.prove import check_lesson

AT_MOST = 1.3
"""Times as long as drawing alone: 1.12 when this was written, 1.47 before draws shared anything."""


def clock(work: Callable[[], object]) -> float:
    start = time.process_time()
    work()
    return time.process_time() - start


def main() -> int:
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--draws", type=int, default=300)
    options.add_argument("--every", type=int, default=12, help="Which share of the lessons is taken.")
    given = options.parse_args()
    course = load_course(Path(__file__).parents[2] / "content")
    holders = course.holders[:: given.every]
    templates = [template for holder in holders for template in holder.templates]

    def one_by_one() -> None:
        for template in templates:
            for seed in range(given.draws):
                draw_whole(course, template, seed)

    def proof() -> None:
        for holder in holders:
            check_lesson(course, holder, given.draws)

    for template in templates:  # whatever is read once and kept is there for both
        draw_whole(course, template, 0)
    alone, proved = clock(one_by_one), clock(proof)
    ratio = proved / alone
    print(f"Proof: {len(templates)} templates of {len(holders)} lessons, {given.draws} draws each")
    print(f"  drawn one by one, unchecked: {alone:.1f} s of CPU time; drawn and proved: {proved:.1f} s")
    print(
        f"  {'ok  ' if ratio <= AT_MOST else 'MISS'} proof: {ratio:.2f} times as long (at most {AT_MOST:g})"
    )
    return 1 if ratio > AT_MOST else 0


if __name__ == "__main__":
    sys.exit(main())
