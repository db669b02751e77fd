"""Measure pictures and papers: each sample once, in a process that has just warmed up.

    python tests/bench/pictures.py

Wanted, on two cores: a picture 30 ms at the median and 60 at worst once warm; a sheet under 100 ms; a year's record
under 1.5 s.
"""

from __future__ import annotations

import time
from pathlib import Path
from statistics import median

import psutil
import yaml

from bot.pictures import Pictures

SAMPLES = yaml.load(
    (Path(__file__).parents[1] / "pictures" / "samples.yaml").read_text("utf-8"), Loader=yaml.BaseLoader
)
ITEM = {
    "number": "1",
    "ask": "Work out `3/4 ÷ 2/5`.",
    "source": "from Dividing by a fraction",
    "answer": "`15/8`",
}
ROW = ["14 September 2026", "Dividing by a fraction", "6.NS.A.1", "48 min", "9 of 12"]


def timed(pictures: Pictures, recipe: str, data: object) -> float:
    """Milliseconds until the bytes are there."""
    start = time.perf_counter()
    pictures.make_now(recipe, data)
    return (time.perf_counter() - start) * 1000


def main() -> None:
    pictures = Pictures(None)
    print(f"first picture, process and all: {timed(pictures, 'figure', SAMPLES[0]):.0f} ms")
    times = sorted(timed(pictures, "figure", figure) for figure in SAMPLES[1:])
    print(f"{len(times)} pictures: median {median(times):.1f} ms, worst {times[-1]:.1f} ms")
    sheets = [
        timed(
            pictures,
            "worksheet",
            {"title": f"Sheet {n}", "items": [{**ITEM, "number": str(k)} for k in range(12)]},
        )
        for n in range(8)
    ]
    print(f"sheet of 12: median {median(sheets):.1f} ms, worst {max(sheets):.1f} ms")
    tables = [
        {"heading": f"Part {n}", "head": ["Date", "Lesson", "Code", "Time", "Count"], "rows": [ROW] * 60}
        for n in range(8)
    ]
    print(
        f"record of a year (480 rows): {timed(pictures, 'record', {'title': 'Year', 'tables': tables}):.0f} ms"
    )
    assert pictures._process is not None
    print(f"the process takes {psutil.Process(pictures._process.pid).memory_info().rss / 2**20:.0f} MiB")
    pictures.close()


if __name__ == "__main__":
    main()
