"""Photos of a family's, packed to take along; large ones are made smaller, so that the chat service takes the file."""

from __future__ import annotations

import io
import re
import zipfile
from pathlib import Path

from PIL import Image, ImageOps, UnidentifiedImageError

LARGE = 2_000_000
"""Bytes of a photo above which it is made smaller: twenty of them still fit into one file of 50 MB."""
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
