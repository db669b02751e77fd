"""Files: what may be uploaded, how a picture's sizes are told, what is served for download."""

from __future__ import annotations

import hashlib
import io
from typing import Any

from PIL import Image, UnidentifiedImageError

from bot.standin import limits
from bot.standin.model import Json, StoredFile, Upload
from bot.standin.parameters import Parameters
from bot.standin.refusal import bad
from bot.standin.world import World

_ENDINGS = {"image/jpeg": ".jpg", "image/png": ".png", "audio/ogg": ".oga", "image/webp": ".webp"}
_FOLDERS = {"photo": "photos", "document": "documents", "sticker": "stickers", "voice": "voice"}
SIZES = (90, 320, 800)
"""The longer side of a picture's smaller versions, pixels (from memory: thumb, medium, large)."""


def given_file(world: World, p: Parameters, name: str, value: Any, kind: str) -> StoredFile:
    """Return the file that a request means: an upload, `attach://` with a part's name, or a file's id."""
    upload = p.files.get(name)
    if upload is None and isinstance(value, str) and value.startswith("attach://"):
        upload = p.files.get(value.removeprefix("attach://"))
        if upload is None:
            raise bad("there is no file in the request with the name " + value.removeprefix("attach://"))
    if upload is not None:
        return take_upload(world, upload, kind)
    if not isinstance(value, str) or not value:
        raise bad(f"there is no {kind} in the request")
    if value.startswith(("http://", "https://")):
        raise bad("failed to get HTTP URL content")  # the stand-in fetches nothing
    known = world.files.get(value)
    if known is None:
        raise bad("wrong file identifier/HTTP URL specified")
    if known.kind != kind:
        raise bad(f"can't use file of type {known.kind.title()} as {kind.title()}")
    return known


def take_upload(world: World, upload: Upload, kind: str) -> StoredFile:
    """Check and keep an uploaded file."""
    if not upload.data:
        raise bad("file must be non-empty")
    width = height = 0
    if kind == "photo":
        if len(upload.data) > limits.PHOTO_BYTES:
            raise bad(
                f"file of size {len(upload.data)} bytes is too big for a photo; the maximum size is 10485760 bytes"
            )
        width, height = _sides(upload.data)
        if width + height > limits.PHOTO_SIDES or max(width, height) > limits.PHOTO_RATIO * min(
            width, height
        ):
            raise bad("PHOTO_INVALID_DIMENSIONS")
    number = len(world.files) + 1
    ending = _ENDINGS.get(upload.mime, "." + upload.name.rpartition(".")[2] if "." in upload.name else "")
    return world.keep_file(
        StoredFile(
            id=f"AgAC{world.bot['id']}-{number:06d}",
            unique_id="AQ" + hashlib.sha256(upload.data).hexdigest()[:14],
            path=f"{_FOLDERS[kind]}/file_{number}{ending}",
            name=upload.name,
            mime=upload.mime,
            kind=kind,
            data=upload.data,
            width=width,
            height=height,
        )
    )


def _sides(data: bytes) -> tuple[int, int]:
    """Return a picture's width and height in pixels; only its head is read."""
    try:
        with Image.open(io.BytesIO(data)) as picture:
            return picture.size
    except (UnidentifiedImageError, OSError, ValueError, Image.DecompressionBombError):
        raise bad("IMAGE_PROCESS_FAILED") from None


def photo_sizes(file: StoredFile) -> list[Json]:
    """Return a picture's versions, smallest first; the last is the one that was sent.

    A smaller version's id is the picture's with its longer side behind a dot.
    """
    longest = max(file.width, file.height)
    sizes = []
    for side in SIZES:
        if side < longest:
            share = side / longest
            width, height = max(1, round(file.width * share)), max(1, round(file.height * share))
            about = max(1, int(len(file.data) * share * share))
            sizes.append(_size(f"{file.id}.{side}", f"{file.unique_id}{side}", width, height, about))
    return [*sizes, _size(file.id, file.unique_id, file.width, file.height, len(file.data))]


def _size(number: str, unique: str, width: int, height: int, size: int) -> Json:
    return {"file_id": number, "file_unique_id": unique, "width": width, "height": height, "file_size": size}


def document(file: StoredFile) -> Json:
    """Return a document as the service puts it into a message."""
    return {
        "file_name": file.name,
        "mime_type": file.mime,
        "file_id": file.id,
        "file_unique_id": file.unique_id,
        "file_size": len(file.data),
    }


def find(world: World, number: str) -> tuple[StoredFile, int] | None:
    """Return the file with an id and the longer side that is meant (0: as sent), or None."""
    name, _, side = number.partition(".")
    file = world.files.get(name)
    if file is None or (side and (not side.isdecimal() or int(side) not in SIZES)):
        return None
    return file, int(side or 0)


def bytes_of(file: StoredFile, side: int) -> bytes:
    """Return a file's bytes; of a picture the version with this longer side, made when asked for."""
    if not side:
        return file.data
    with Image.open(io.BytesIO(file.data)) as picture:
        smaller = picture.convert("RGB")
        smaller.thumbnail((side, side))
        made = io.BytesIO()
        smaller.save(made, "JPEG", quality=85)
        return made.getvalue()


def get_file(world: World, p: Parameters) -> Json:
    """getFile: say where a file can be downloaded."""
    number = p.text("file_id")
    meant = find(world, number)
    if meant is None:
        raise bad("invalid file_id" if number else "file_id not specified")
    file, side = meant
    size = len(bytes_of(file, side))
    if size > limits.DOWNLOAD_BYTES:
        raise bad("file is too big")
    path = file.path
    if side:
        stem, dot, ending = path.rpartition(".")
        path = f"{stem}.{side}{dot}{ending}" if dot else f"{path}.{side}"
    return {"file_id": number, "file_unique_id": file.unique_id, "file_size": size, "file_path": path}


def at_path(world: World, path: str) -> bytes | None:
    """Return the bytes that a download path means, or None."""
    whole = world.files_by_path.get(path)
    if whole is not None:
        return whole.data
    for side in SIZES:
        original = world.files_by_path.get(path.replace(f".{side}.", ".", 1).removesuffix(f".{side}"))
        if original is not None and original.path != path and f".{side}" in path:
            return bytes_of(original, side)
    return None
