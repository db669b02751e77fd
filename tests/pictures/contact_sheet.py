"""Draw every sample figure and lay them out on sheets to be looked at.

    python tests/pictures/contact_sheet.py FOLDER [KIND ...]

Writes sheet-01.png and so on into the folder, twelve figures a sheet, each with its alternative text below.
"""

from __future__ import annotations

import sys
from io import BytesIO
from pathlib import Path

import yaml
from PIL import Image, ImageDraw, ImageFont

from bot.course.figures import alt
from bot.pictures.figures import png
from bot.pictures.labels import FONTS

ACROSS, DOWN = 4, 3
WIDE, TALL = 460, 560


def samples() -> list[dict[str, object]]:
    text = (Path(__file__).parent / "samples.yaml").read_text("utf-8")
    return list(yaml.load(text, Loader=yaml.BaseLoader))


def contact_sheets(folder: Path, figures: list[dict[str, object]]) -> int:
    folder.mkdir(parents=True, exist_ok=True)
    font = ImageFont.truetype(str(FONTS / "PT_Sans-Web-Regular.ttf"), 14)
    per_sheet = ACROSS * DOWN
    sheets = -(-len(figures) // per_sheet)
    for n in range(sheets):
        page = Image.new("RGB", (ACROSS * WIDE, DOWN * TALL), "#3a3f45")
        pen = ImageDraw.Draw(page)
        for k, figure in enumerate(figures[n * per_sheet : (n + 1) * per_sheet]):
            x, y = k % ACROSS * WIDE + 10, k // ACROSS * TALL + 10
            picture = Image.open(BytesIO(png(figure)))
            scale = min((WIDE - 20) / picture.width, (TALL - 120) / picture.height)
            small = picture.resize(
                (int(picture.width * scale), int(picture.height * scale)), Image.Resampling.LANCZOS
            )
            page.paste(small, (x, y))
            pen.multiline_text((x, y + TALL - 114), _wrapped(alt(figure), font), fill="white", font=font)
        page.save(folder / f"sheet-{n + 1:02}.png")
    return sheets


def _wrapped(text: str, font: ImageFont.FreeTypeFont) -> str:
    lines = [""]
    for word in text.split():
        longer = f"{lines[-1]} {word}".strip()
        if font.getlength(longer) <= WIDE - 20:
            lines[-1] = longer
        else:
            lines.append(word)
    return "\n".join(lines[:6])


if __name__ == "__main__":
    wanted = sys.argv[2:]
    chosen = [figure for figure in samples() if not wanted or figure["figure"] in wanted]
    count = contact_sheets(Path(sys.argv[1]), chosen)
    print(f"{len(chosen)} figures on {count} sheets in {sys.argv[1]}")
