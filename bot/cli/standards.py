"""The table of standards for a terminal, and for programs."""

from __future__ import annotations

from typing import Any

from bot.course.standards import OURS, Coverage
from bot.school.course_papers import by_domain

BY_PARTS = "by its parts"


def as_text(found: Coverage) -> str:
    """A line a standard, with a count of what is met below."""
    lines: list[str] = []
    for (grade, domain), rows in by_domain(found):
        lines.append(f"\nGrade {grade}: {domain}")
        for row in rows:
            lessons = ", ".join(lesson.title for lesson in row.lessons) or (
                BY_PARTS if row.parts_met else "-"
            )
            tests = ", ".join(test.title for test in row.tests)
            lines.append(f"  {row.standard.code:13} {row.items:3} items  {lessons}" + _after(tests))
    lines.append("")
    for grade, count, missing in _counts(found):
        met = count - len(missing)
        lines.append(f"Grade {grade}: {met} of {count} met by what is written.")
        if missing and grade in OURS:
            lines.append(f"  Not yet: {', '.join(missing)}")
    return "\n".join(lines).lstrip("\n")


def as_data(found: Coverage) -> dict[str, Any]:
    """The same for programs."""
    return {
        "standards": [
            {
                "code": row.standard.code,
                "grade": row.standard.grade,
                "domain": row.standard.domain,
                "gist": row.standard.gist,
                "met": row.is_met,
                "lessons": [lesson.id for lesson in row.lessons],
                "items": row.items,
                "tests": [test.id for test in row.tests],
            }
            for row in found.rows
        ],
        "grades": [
            {"grade": grade, "standards": count, "met": count - len(missing), "not_yet": list(missing)}
            for grade, count, missing in _counts(found)
        ],
    }


def _counts(found: Coverage) -> list[tuple[int, int, tuple[str, ...]]]:
    grades = sorted({row.standard.grade for row in found.rows})
    return [(grade, len(found.of_grade(grade)), found.missing(grade)) for grade in grades]


def _after(tests: str) -> str:
    return f"  [{tests}]" if tests else ""
