"""Every script of a day in this folder, lived through real HTTP."""

from __future__ import annotations

from pathlib import Path

import pytest
from support.living import Life, live

from bot.app import build_demo

SCRIPTS = sorted(Path(__file__).parent.glob("*.day"))


@pytest.mark.parametrize("script", SCRIPTS, ids=lambda path: path.stem)
async def test_day(script: Path, tmp_path: Path) -> None:
    lines = script.read_text("utf-8")  # noqa: ASYNC240  # a few lines, before anything runs
    async with build_demo(tmp_path, paced=False) as demo:
        life = Life(demo)
        try:
            await live(life, lines)
        finally:
            await life.close()
