"""Draw figures and lay them out on sheets to be looked at: all samples, or the figures of the course.

    python tests/pictures/contact_sheet.py FOLDER [KIND ...]
    python tests/pictures/contact_sheet.py --course content [--draws 4] FOLDER [KIND ...]

Writes sheet-01.png and so on into the folder, twelve figures a sheet, each with its alternative text below. With
`--course` these are the figures of cards, and of some draws of each template, with the name of where they stand.
"""

from __future__ import annotations

import argparse
from collections.abc import Iterator, Sequence
from io import BytesIO
from pathlib import Path

import yaml
from PIL import Image, ImageDraw, ImageFont

from bot.course.draw import draw
from bot.course.figures import Figure, alt
from bot.course.lesson import Lesson
from bot.course.load import load_course
from bot.pictures.figures import png
from bot.pictures.labels import FONTS

ACROSS, DOWN = 4, 3
WIDE, TALL = 460, 560
LINES = 6
Named = tuple[str, Figure]


def samples() -> Iterator[Named]:
    text = (Path(__file__).parent / "samples.yaml").read_text("utf-8")
    for figure in yaml.load(text, Loader=yaml.BaseLoader):
        yield "", figure


def of_the_course(folder: Path, draws: int) -> Iterator[Named]:
    """Figures of cards and worked examples, then those of the first draws of each template, lesson by lesson."""
    course = load_course(folder)
    for holder in course.holders:
        if isinstance(holder, Lesson):
            for part in (*holder.cards, *holder.examples):
                if part.figure is not None:
                    yield f"{holder.id}, line {part.line}", part.figure
        for template in holder.templates:
            for seed in range(draws if template.recipe.figure is not None else 0):
                figure = draw(course, template.id, seed).figure
                if figure is not None:
                    yield f"{template.id} {seed}", figure


def contact_sheets(folder: Path, figures: Sequence[Named]) -> int:
    folder.mkdir(parents=True, exist_ok=True)
    font = ImageFont.truetype(str(FONTS / "PT_Sans-Web-Regular.ttf"), 14)
    per_sheet = ACROSS * DOWN
    sheets = -(-len(figures) // per_sheet)
    for n in range(sheets):
        page = Image.new("RGB", (ACROSS * WIDE, DOWN * TALL), "#3a3f45")
        pen = ImageDraw.Draw(page)
        for k, (name, figure) in enumerate(figures[n * per_sheet : (n + 1) * per_sheet]):
            x, y = k % ACROSS * WIDE + 10, k // ACROSS * TALL + 10
            picture = Image.open(BytesIO(png(figure)))
            scale = min((WIDE - 20) / picture.width, (TALL - 120) / picture.height)
            small = picture.resize(
                (int(picture.width * scale), int(picture.height * scale)), Image.Resampling.LANCZOS
            )
            page.paste(small, (x, y))
            below = "\n".join(([name] if name else []) + _wrapped(alt(figure), font))
            pen.multiline_text((x, y + TALL - 114), below, fill="white", font=font)
        page.save(folder / f"sheet-{n + 1:02}.png")
    return sheets


def _wrapped(text: str, font: ImageFont.FreeTypeFont) -> list[str]:
    lines = [""]
    for word in text.split():
        longer = f"{lines[-1]} {word}".strip()
        if font.getlength(longer) <= WIDE - 20:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines[:LINES]


def main() -> None:
    asked = argparse.ArgumentParser(description="Figures on sheets to be looked at.")
    asked.add_argument("folder", type=Path)
    asked.add_argument("kinds", nargs="*")
    asked.add_argument("--course", type=Path)
    asked.add_argument("--draws", type=int, default=4)
    wanted = asked.parse_intermixed_args()
    figures = of_the_course(wanted.course, wanted.draws) if wanted.course else samples()
    chosen = [one for one in figures if not wanted.kinds or one[1]["figure"] in wanted.kinds]
    count = contact_sheets(wanted.folder, chosen)
    print(f"{len(chosen)} figures on {count} sheets in {wanted.folder}")


if __name__ == "__main__":
    main()
