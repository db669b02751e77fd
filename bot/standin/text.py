"""Text and its entities: lengths in UTF-16 units, what is refused, what the service finds by itself."""

from __future__ import annotations

import re
from typing import Any

from bot.standin import limits
from bot.standin.model import Json
from bot.standin.refusal import bad

_FOUND = re.compile(
    r"(?P<url>https?://[^\s<>\"]+|\bt\.me/[^\s<>\"]+)"
    r"|(?P<email>\b[\w.+-]+@[\w-]+(?:\.[\w-]+)+)"
    r"|(?P<mention>(?<!\w)@[A-Za-z]\w{2,31})"
    r"|(?<![\w/<>])(?P<bot_command>/[A-Za-z0-9_]{1,64}(?:@\w{3,32})?)(?![\w/<>])"
    r"|(?P<hashtag>(?<!\w)#\w*[^\W\d_]\w*)"
)
_HTTP = re.compile(
    r"(?:(?:https?://)?[^\s/?#:@]+\.[^\s/?#]+|https?://(?:localhost|\d+\.\d+\.\d+\.\d+)(?::\d+)?)(?:[/?#].*)?"
)


def units(text: str) -> int:
    """Return the length of a text in UTF-16 code units; an emoji outside the basic plane counts two."""
    return len(text) if text.isascii() else len(text.encode("utf-16-le")) // 2


def clean(
    text: str, entities: Any, *, longest: int, empty: str | None, too_long: str
) -> tuple[str, list[Json]]:
    """Return text and entities as the service keeps them, or refuse them.

    White space at both ends goes (from memory), entities move with it. `empty` is the refusal of an empty
    text, None where it may be empty. Entities that the service finds by itself are added.
    """
    given = _given(entities)
    if given:
        _check_bounds(text, given)
    kept = text.rstrip()
    dropped = len(kept) - len(kept.lstrip())
    if dropped:
        given = [{**one, "offset": one["offset"] - dropped} for one in given]
        kept = kept[dropped:]
    if not kept and empty is not None:
        raise bad(empty)
    length = units(kept)
    if length > longest:
        raise bad(too_long)
    if given:
        given = [one for one in (_within(one, length) for one in given) if one is not None]
    return kept, _with_found(kept, given)[: limits.ENTITIES]


def found(text: str) -> list[Json]:
    """Return the commands, links, mentions and tags that the service finds in a plain text."""
    if not any(mark in text for mark in "/@#") and "t.me" not in text:
        return []
    return [
        {
            "offset": units(text[: match.start(match.lastgroup or 0)]),
            "length": units(match[match.lastgroup or 0]),
            "type": match.lastgroup,
        }
        for match in _FOUND.finditer(text)
    ]


def _given(entities: Any) -> list[Json]:
    """Return the entities of a request, in order of place, or refuse the list for its shape."""
    if entities is None:
        return []
    if not isinstance(entities, list):
        raise bad("can't parse entities: expected an Array of MessageEntity")
    checked: list[Json] = []
    for one in entities:
        if not isinstance(one, dict):
            raise bad("can't parse MessageEntity: expected an Object")
        for name in ("offset", "length"):
            if name not in one:
                raise bad(f"can't parse MessageEntity: Can't find field \"{name}\"")
            if type(one[name]) is not int:
                raise bad(f'can\'t parse MessageEntity: Field "{name}" must be of type Number')
        _check_kind(one)
        if one["length"] > 0 and one["offset"] >= 0:
            checked.append({name: part for name, part in one.items() if part is not None})
    checked.sort(key=lambda one: (one["offset"], -one["length"]))
    return checked


def _check_kind(one: Json) -> None:
    if one.get("type") not in limits.ENTITY_KINDS:
        raise bad("can't parse MessageEntity: Unsupported type specified")
    if one["type"] == "text_link":
        if "url" not in one:
            raise bad("can't parse MessageEntity: Can't find field \"url\"")
        url = str(one["url"])
        if not (url.startswith("tg://") or _HTTP.fullmatch(url)):
            raise bad(f"entity URL '{url}' is invalid: Wrong HTTP URL")


def _check_bounds(text: str, entities: list[Json]) -> None:
    """Refuse what lies outside the text, halves a character, or crosses another entity."""
    length = units(text)
    ends: list[int] = []
    for one in entities:
        start, end = one["offset"], one["offset"] + one["length"]
        if start > length:
            raise bad(f"entity begins after the end of the text at UTF-16 offset {start}")
        while ends and ends[-1] <= start:
            ends.pop()
        if end > length or (ends and end > ends[-1]):
            raise bad(
                f"entity beginning at UTF-16 offset {start} ends after the end of the text at UTF-16 offset {end}"
            )
        ends.append(end)
    if not text.isascii() and length != len(text):
        _check_halves(text, entities)


def _check_halves(text: str, entities: list[Json]) -> None:
    raw = text.encode("utf-16-le")
    for one in entities:
        for place, verb in ((one["offset"], "begins"), (one["offset"] + one["length"], "ends")):
            unit = raw[2 * place : 2 * place + 2]
            if unit and 0xDC00 <= int.from_bytes(unit, "little") < 0xE000:
                raise bad(
                    f"entity beginning at UTF-16 offset {one['offset']} {verb} in a middle of a UTF-16 symbol"
                )


def _within(one: Json, length: int) -> Json | None:
    """Return an entity cut to the trimmed text, or None if nothing of it is left."""
    start = max(0, one["offset"])
    end = min(length, one["offset"] + one["length"])
    if end <= start:
        return None
    return {**one, "offset": start, "length": end - start}


def _with_found(text: str, given: list[Json]) -> list[Json]:
    """Return the given entities and, where none of them covers the place, those found in the text."""
    more = found(text)
    if not more:
        return given
    covering = [one for one in given if one["type"] in ("code", "pre", "text_link", "text_mention")]
    fresh = [
        one
        for one in more
        if not any(
            other["offset"] < one["offset"] + one["length"]
            and one["offset"] < other["offset"] + other["length"]
            for other in covering
        )
        and one not in given
    ]
    return sorted([*given, *fresh], key=lambda one: (one["offset"], -one["length"]))
