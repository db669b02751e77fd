"""The one place that sets type: data and a layout file in, PNG, SVG or PDF out.

Fonts come with the project's packages (PT Sans, SIL Open Font License 1.1; the rest is built into the
typesetter: Libertinus Serif and New Computer Modern Math, both SIL OFL / GUST Font License). Nothing is fetched, and
fonts of the machine are not looked at, so the same data give the same bytes anywhere.
"""

from __future__ import annotations

import json
from datetime import datetime
from functools import lru_cache
from pathlib import Path
from typing import Literal

import typst

from bot.pictures.labels import FONTS

HERE = Path(__file__).parent
PIXELS_PER_POINT = 3
"""A sheet 360 points wide is 1080 pixels wide."""

Format = Literal["png", "svg", "pdf"]


@lru_cache(maxsize=8)
def _compiler(layout: str) -> typst.Compiler:
    file = HERE / layout if layout else None
    return typst.Compiler(input=file, root=HERE, font_paths=[FONTS], ignore_system_fonts=True)


def typeset(layout: str, data: object, into: Format = "png", *, made: datetime | None = None) -> bytes:
    """The layout file with the data in it. The same arguments give the same bytes.

    `made` is the date a PDF carries; without it none is. Raises typst.TypstError if the layout can't take the data.
    """
    return _compile(layout, None, data, into, made)


def typeset_source(source: str, data: object, into: Format = "png", *, made: datetime | None = None) -> bytes:
    """A source that imports layout files, for documents with formulas. It may hold nothing that a person typed."""
    return _compile("", source.encode(), data, into, made)


def _compile(layout: str, source: bytes | None, data: object, into: Format, made: datetime | None) -> bytes:
    set_as = _compiler(layout).compile(
        input=source,
        format=into,
        ppi=72 * PIXELS_PER_POINT if into == "png" else None,
        sys_inputs={"sheet": json.dumps(data, ensure_ascii=False)},
        timestamp=made or 0,
    )
    if isinstance(set_as, list):  # a picture is one page; if a text ran over, the first is what fits
        return bytes(set_as[0])
    if set_as is None:
        raise TypeError(layout)
    return bytes(set_as)
