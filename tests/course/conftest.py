"""The real course, read once (a file with faults takes nothing from the others), and a folder that a test may spoil."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from support.courses import whole_course

from bot.course.year import Course


@pytest.fixture(scope="session")
def course() -> Course:
    return whole_course()


@pytest.fixture
def small(tmp_path: Path) -> Path:
    """A copy of a course of one lesson."""
    folder = tmp_path / "content"
    shutil.copytree(Path(__file__).parent / "small", folder)
    return folder
