"""A message ready to leave: words, marks on them, buttons, pictures, and what to do with earlier messages.

`render` makes these without any network or library; the sender turns them into calls.
"""

from __future__ import annotations

import hashlib
from dataclasses import dataclass, field

import msgspec

# Published limits of the service (Bot API 10.0, as in telegram.constants).
TEXT = 4096
CAPTION = 1024
ENTITIES = 100
BUTTON_DATA = 64  # bytes of UTF-8
BUTTONS_IN_ROW = 8
BUTTONS = 100
ALBUM = 10


def units(text: str) -> int:
    """Return the length in UTF-16 code units, which offsets are counted in."""
    return len(text.encode("utf-16-le")) // 2


def cut_units(text: str, start: int, end: int | None = None) -> str:
    """Return a stretch of a text whose bounds are counted in UTF-16 code units."""
    return text.encode("utf-16-le")[2 * start : None if end is None else 2 * end].decode("utf-16-le")


@dataclass(frozen=True, slots=True)
class Entity:
    """A mark on a stretch of the text; offset and length in UTF-16 code units.

    `kind` is one of bold, italic, underline, strikethrough, code, pre, blockquote,
    expandable_blockquote, text_link (with `url`).
    """

    kind: str
    offset: int
    length: int
    url: str | None = None


@dataclass(frozen=True, slots=True)
class Button:
    """One inline button: `data` comes back when it is pressed (`verb:ref`), `url` opens a page."""

    label: str
    data: str = ""
    url: str = ""


@dataclass(frozen=True)
class Drawing:
    """What `bot.pictures` needs to make the bytes: the name of a recipe and plain data.

    Equal drawings give equal bytes, so they are made, and uploaded, once.
    """

    recipe: str
    data: object

    @property
    def key(self) -> str:
        """The same for equal drawings."""
        plain = msgspec.json.encode((self.recipe, self.data), order="sorted")
        return hashlib.sha256(plain).hexdigest()


@dataclass(frozen=True, slots=True)
class Kept:
    """A photo that the service has already, by its name for it."""

    file_id: str


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture and what somebody hears who can't see it. `content` may be bytes that are at hand (PNG, JPEG)."""

    content: Drawing | Kept | bytes
    alt: str


@dataclass(frozen=True, slots=True)
class Document:
    """A file to keep or print."""

    filename: str
    content: Drawing | bytes


@dataclass(frozen=True, slots=True)
class Rendered:
    """What one message of ours leads to. All is optional; the parts are done in the order of the fields."""

    delete: tuple[int, ...] = ()
    """Messages of this chat to take away; those that are gone or older than 48 hours are passed over."""
    strip: tuple[int, ...] = ()
    """Messages whose buttons are taken away."""
    text: str = ""
    """With one picture or one document this is its caption, if it fits; else it follows as a message."""
    entities: tuple[Entity, ...] = ()
    buttons: tuple[tuple[Button, ...], ...] = ()
    pictures: tuple[Picture, ...] = ()
    documents: tuple[Document, ...] = ()
    replace: int | None = None
    """A message whose text is changed to this one; if it is gone, a new message is sent."""
    reply_to: int | None = None
    quiet: bool = False
    """Without a sound on the phone."""
    commands: tuple[tuple[str, str], ...] | None = None
    """The commands that this chat is offered from now on: (name, what it does)."""
    leave: bool = False
    """Leave the group."""
    missing: str = ""
    """What is said besides where a file can't be made."""
    preview: bool = field(default=False)
    """Whether a link in the text may grow a preview."""


def faults(what: Rendered) -> list[str]:
    """Return in which ways a message would be refused or cut by the service; a test holds this for all."""
    found = []
    limit = TEXT
    if len(what.pictures) + len(what.documents) == 1 and units(what.text) <= CAPTION:
        limit = CAPTION
    if units(what.text) > limit:
        found.append(f"text of {units(what.text)} units, {limit} allowed")
    if len(what.entities) > ENTITIES:
        found.append(f"{len(what.entities)} entities, {ENTITIES} are shown")
    found += [
        f"entity {one} outside the text"
        for one in what.entities
        if one.offset < 0 or one.length < 1 or one.offset + one.length > units(what.text)
    ]
    found += [f"{len(row)} buttons in a row" for row in what.buttons if len(row) > BUTTONS_IN_ROW]
    if sum(map(len, what.buttons)) > BUTTONS:
        found.append("too many buttons")
    for button in (button for row in what.buttons for button in row):
        if bool(button.data) == bool(button.url):
            found.append(f"button {button.label!r} needs either data or url")
        if len(button.data.encode()) > BUTTON_DATA:
            found.append(f"data of button {button.label!r} is over {BUTTON_DATA} bytes")
        if not button.label.strip():
            found.append("a button without a label")
    if what.buttons and not what.text and not what.pictures and not what.documents:
        found.append("buttons without a message")
    if len(what.pictures) > ALBUM or len(what.documents) > ALBUM:
        found.append(f"more than {ALBUM} files")
    return found
