"""Each mistake an author will make is told with its place, what is wrong and one way to mend it."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from bot.course.prove import check_folder

PLANTED = yaml.safe_load((Path(__file__).parent / "planted_faults.yaml").read_text(encoding="utf-8"))
LESSON = Path("unit-01/two-step-equations.md")


def test_the_small_lesson_has_no_fault(small: Path) -> None:
    assert [str(fault) for fault in check_folder(small, draws=120).faults] == []


@pytest.mark.parametrize("planted", PLANTED, ids=[planted["name"] for planted in PLANTED])
def test_fault_is_told_with_place_and_fix(small: Path, planted: dict[str, str]) -> None:
    before = (small / LESSON).read_text(encoding="utf-8")
    assert before.count(planted["instead of"]) == 1
    spoiled = before.replace(planted["instead of"], planted["typed"])
    (small / LESSON).write_text(spoiled, encoding="utf-8")

    faults = check_folder(small, draws=120).faults

    told = [fault for fault in faults if fault.kind == planted["kind"]]
    assert told, [str(fault) for fault in faults]
    assert planted["says"] in f"{told[0].what} {told[0].fix}"
    assert told[0].file == "content/unit-01/two-step-equations.md"
    at = spoiled.splitlines()[: told[0].line]
    near = len(before[: before.index(planted["instead of"])].splitlines())
    if told[0].kind not in ("skill-not-taught", "yaml"):
        assert abs(len(at) - near) <= 30
