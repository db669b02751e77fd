"""Make the README's pictures from the demo: the day is lived in a browser, three sheets are kept, small.

Run it with `make screenshots`.
"""

from __future__ import annotations

import asyncio
import sys
import tempfile
from pathlib import Path

from PIL import Image

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE.parent), str(HERE)]

from support.page import shots_folder  # noqa: E402  # the tests' folder is put on the path above
from test_whole_day import test_a_school_day_as_student_parent_and_tutor as a_day  # noqa: E402

KEPT = {"5-not-yet": "student", "8-digest": "parent", "10-tutor-change": "tutor"}
FOLDER = HERE.parent.parent / ".screenshots"


def main() -> None:
    """Live the day, keep three pictures."""
    with tempfile.TemporaryDirectory() as folder:
        asyncio.run(a_day(Path(folder)))
    FOLDER.mkdir(exist_ok=True)
    for shot, name in KEPT.items():
        with Image.open(shots_folder() / f"{shot}.png") as picture:
            small = picture.convert("RGB").quantize(32)
            small.save(FOLDER / f"{name}.png", optimize=True)
        print(FOLDER / f"{name}.png")


if __name__ == "__main__":
    main()
