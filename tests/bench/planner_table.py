"""Make the tables of `bot/planner/README.md` again: every student class, every policy, as Markdown.

    python tests/bench/planner_table.py [--students 20] [--seed 1] [--sequence] [--class NAME ...]

Four minutes on two quiet cores with 20 students a class. Runs are of the same students under every policy.
"""

from __future__ import annotations

import argparse
from datetime import UTC, datetime
from pathlib import Path

from bot.simulation.report import OWN_STUDENTS, Interval, Run, interval, paired, run_years

DAYS = 180
USUAL = ("fixed-lags", "random")
LOADS = (24, 12, 8)
TUNED_ON = ("half-lives", "many-traces")
CONTENT = Path(__file__).resolve().parents[2] / "content"

HEADS = (
    "| students | items a day | planner | fixed-lags | random | boxes |\n|---|---|---|---|---|---|",
    "| students | items | last day, best | last day, boxes | sample of the last 30 days, best | "
    "mean of days 30 to 180, fixed-lags | worst unit to mean | "
    "below half: planner, boxes | longest gap, most items |\n|---|---|---|---|---|---|---|---|---|",
    "| students | 17 against 24 | 11 against 16 | planner minus massed at 12 |\n|---|---|---|---|",
)


def points(found: Interval) -> str:
    """A share as percent, with its interval."""
    return f"{100 * found.mean:.1f} ({100 * found.low:.1f} to {100 * found.high:.1f})"


def rows(student: str, count: int, seed: int, content: Path | None) -> tuple[list[str], list[str], str]:
    """The class's lines for each of the three tables."""

    def run(items: int, *policies: str) -> dict[str, Run]:
        years = run_years(student, policies, count, DAYS, items, seed, content=content)
        return {each.policy: each for each in years}

    name = f"{student} (tuned on)" if student in TUNED_ON else student
    shares, gains = [], []
    lags24 = None
    for items in LOADS:
        runs = run(items, "planner", *USUAL, "boxes")
        planner, boxes = runs["planner"], runs["boxes"]
        lags24 = lags24 or runs["fixed-lags"]
        columns = [points(interval(each.values("known_share"))) for each in runs.values()]
        shares.append(f"| {name} | {items} | " + " | ".join(columns) + " |")

        def best(figure: str, runs: dict[str, Run] = runs) -> str:
            against = max(USUAL, key=lambda policy: interval(runs[policy].values(figure)).mean)
            return f"{points(paired(runs['planner'], runs[against], figure))} ({against})"

        below = ", ".join(
            f"{100 * interval(each.values('below_half')).mean:.1f} %" for each in (planner, boxes)
        )
        most = f"{max(planner.values('longest_gap')):.0f}, {max(planner.values('most_items')):.0f}"
        gains.append(
            f"| {name} | {items} | {best('known_share')} | {points(paired(planner, boxes, 'known_share'))} | "
            f"{best('sample')} | "
            f"{points(paired(planner, runs['fixed-lags'], 'known_mean'))} | "
            f"{100 * planner.worst_unit():.1f} | {below} | {most} |"
        )
        if items == 12:
            massed = points(paired(planner, run(12, "massed")["massed"], "known_share"))
    assert lags24 is not None
    fewer = points(paired(run(17, "planner")["planner"], lags24, "known_share"))
    fewest = points(paired(run(11, "planner")["planner"], run(16, "fixed-lags")["fixed-lags"], "known_share"))
    return shares, gains, f"| {name} | {fewer} | {fewest} | {massed} |"


def main() -> None:
    """Run the classes one after another and print the tables as far as they stand."""
    asked = argparse.ArgumentParser()
    asked.add_argument("--students", type=int, default=20)
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--sequence", action="store_true")
    asked.add_argument("--class", dest="classes", nargs="*", default=list(reversed(OWN_STUDENTS)))
    given = asked.parse_args()
    content = None if given.sequence else CONTENT
    print(
        f"{datetime.now(UTC):%d %B %Y}, seed {given.seed}, {given.students} students a class, {DAYS} school days"
    )
    tables: tuple[list[str], list[str], list[str]] = ([], [], [])
    for student in given.classes:
        shares, gains, fewer = rows(student, given.students, given.seed, content)
        tables[0].extend(shares)
        tables[1].extend(gains)
        tables[2].append(fewer)
        print("\n".join([*shares, *gains, fewer]), flush=True)
    for head, lines in zip(HEADS, tables, strict=True):
        print("\n" + head + "\n" + "\n".join(lines))


if __name__ == "__main__":
    main()
