"""A sticker and a voice message to send from the phone page where no real one is at hand."""

from __future__ import annotations

import io

from PIL import Image, ImageDraw

from bot.standin.model import Upload


def _leaf() -> bytes:
    picture = Image.new("RGBA", (512, 512), (0, 0, 0, 0))
    draw = ImageDraw.Draw(picture)
    draw.ellipse((130, 60, 382, 400), fill=(74, 112, 66, 255))
    draw.line((256, 110, 256, 470), fill=(44, 68, 40, 255), width=14)
    made = io.BytesIO()
    picture.save(made, "WEBP")
    return made.getvalue()


# An Ogg page head with nothing behind it: enough to be a file, nobody listens to it.
STICKER = Upload("leaf.webp", "image/webp", _leaf())
VOICE = Upload("voice.oga", "audio/ogg", b"OggS" + bytes(24))
