"""Photos of a family's, packed to take along or small on a paper.

Large ones are made smaller, so that the chat service takes the file.
"""

from __future__ import annotations

import base64
import io
import re
import zipfile
from collections.abc import Mapping
from pathlib import Path

from PIL import Image, ImageOps, UnidentifiedImageError

LARGE = 2_000_000
"""Bytes of a photo above which it is made smaller: twenty of them still fit into one file of 50 MB."""
ON_PAPER = 700
"""Pixels of the longer side of one on a paper, where it is about six centimetres wide."""
SIDE = 2400
"""Pixels of the longer side of one that was made smaller; handwriting stays readable."""


def pack(folder: Path, photos: object) -> bytes:
    """Return a zip of photos, given as (path below the folder, name without ending); those that are gone are left out.

    A path that leads out of the folder is left out too.
    """
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_STORED) as into:
        for path, name in photos if isinstance(photos, list | tuple) else ():
            file = (folder / str(path)).resolve()
            if file.is_relative_to(folder.resolve()) and file.is_file():
                into.writestr(re.sub(r"[^\w .-]", "_", str(name)) + file.suffix, smaller(file.read_bytes()))
    return packed.getvalue()


def onto_paper(folder: Path, data: object) -> object:
    """Put the photos of a record into its data, small; one that is gone or can't be read is left out.

    Each is decoded here and written anew, so that nothing of the file as it came reaches what sets type.
    """
    if not isinstance(data, Mapping):
        return data
    photos = data.get("photos")
    shown = [
        {**photo, "picture": picture}
        for photo in (photos if isinstance(photos, list | tuple) else ())
        if (picture := _small(folder, str(photo.get("path", ""))))
    ]
    return {**data, "photos": shown}


def _small(folder: Path, path: str) -> str:
    """A photo as a small picture that a paper takes: SVG with a JPEG in it. Empty where it can't be had."""
    file = (folder / path).resolve()
    if not path or not file.is_relative_to(folder.resolve()) or not file.is_file():
        return ""
    try:
        with Image.open(file) as opened:
            opened.draft("RGB", (2 * ON_PAPER, 2 * ON_PAPER))  # a large JPEG is read at a part of its size
            image = ImageOps.exif_transpose(opened).convert("RGB")
    except (OSError, ValueError, SyntaxError, Image.DecompressionBombError):
        return ""
    image.thumbnail((ON_PAPER, ON_PAPER))
    made = io.BytesIO()
    image.save(made, "JPEG", quality=75)
    wide, high = image.size
    written = base64.b64encode(made.getvalue()).decode()
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide}" height="{high}">'
        f'<image width="{wide}" height="{high}" href="data:image/jpeg;base64,{written}"/></svg>'
    )


def smaller(content: bytes) -> bytes:
    """Return a photo as it is, or a smaller JPEG of a large one; one that can't be read stays as it is."""
    if len(content) <= LARGE:
        return content
    try:
        with Image.open(io.BytesIO(content)) as opened:
            image = ImageOps.exif_transpose(opened).convert("RGB")
    except (UnidentifiedImageError, OSError, ValueError, Image.DecompressionBombError):
        return content
    image.thumbnail((SIDE, SIDE))
    made = io.BytesIO()
    image.save(made, "JPEG", quality=82)
    return min(made.getvalue(), content, key=len)
