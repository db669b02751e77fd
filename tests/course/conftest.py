"""The real course, read once (a file with faults takes nothing from the others), and a folder that a test may spoil."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from bot.course.load import load_with_faults
from bot.course.year import Course

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="session")
def course() -> Course:
    return load_with_faults(ROOT / "content")[0]


@pytest.fixture
def small(tmp_path: Path) -> Path:
    """A copy of a course of one lesson."""
    folder = tmp_path / "content"
    shutil.copytree(Path(__file__).parent / "small", folder)
    return folder
