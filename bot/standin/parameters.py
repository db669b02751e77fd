"""A request's parameters, however they came: in the address, as a form, as multipart or as JSON."""

from __future__ import annotations

import json
from typing import Any
from urllib.parse import parse_qsl

import msgspec
from starlette.requests import Request
from starlette.types import Receive, Scope

from bot.standin import limits
from bot.standin.model import Upload
from bot.standin.refusal import Refusal, bad

_read_json = msgspec.json.Decoder().decode


class Parameters:
    """Named values with the service's own ways of reading them; a missing or wrong one is a Refusal."""

    __slots__ = ("files", "values")

    def __init__(self, values: dict[str, Any], files: dict[str, Upload] | None = None) -> None:
        self.values = values
        self.files = files or {}

    def text(self, name: str, default: str = "") -> str:
        """Return a value as text."""
        value = self.values.get(name)
        return default if value is None else value if isinstance(value, str) else json.dumps(value)

    def whole(self, name: str, default: int | None = None) -> int | None:
        """Return a value as a whole number, the default if it is missing or not one."""
        value = self.values.get(name)
        if value is None or value == "":
            return default
        try:
            return int(value)
        except (TypeError, ValueError):
            return default

    def truth(self, name: str) -> bool:
        """Return a value as true or false."""
        value = self.values.get(name)
        return value is True or str(value).lower() in ("true", "1", "yes")

    def data(self, name: str) -> Any:
        """Return a nested value: JSON as such, or as the string that forms carry; None if it is missing."""
        value = self.values.get(name)
        if not isinstance(value, str):
            return value
        if not value:
            return None
        try:
            return _read_json(value.encode())
        except msgspec.DecodeError:
            raise bad(f"can't parse {name.replace('_', ' ')} JSON object") from None


async def read_body(receive: Receive) -> bytes:
    """Return a request's body; more than an upload may hold is refused with 413."""
    parts: list[bytes] = []
    size = 0
    while True:
        message = await receive()
        part = message.get("body", b"")
        if part:
            parts.append(part)
            size += len(part)
        if size > limits.UPLOAD_BYTES + 1_000_000:  # room for the other fields
            raise Refusal(413, "Request Entity Too Large")
        if not message.get("more_body", False):
            return parts[0] if len(parts) == 1 else b"".join(parts)


async def read_parameters(scope: Scope, receive: Receive) -> Parameters:
    """Return a request's parameters."""
    kind = b""
    for name, value in scope["headers"]:
        if name == b"content-type":
            kind = value
            break
    values: dict[str, Any] = {}
    query = scope["query_string"]
    if query:
        values.update(parse_qsl(query.decode(), keep_blank_values=True))
    if kind.startswith(b"multipart/form-data"):
        return await _multipart(scope, receive, values)
    body = await read_body(receive)
    if not body:
        return Parameters(values)
    if kind.startswith(b"application/json"):
        try:
            read = _read_json(body)
        except msgspec.DecodeError:
            raise bad("can't parse JSON object") from None
        if not isinstance(read, dict):
            raise bad("can't parse JSON object")
        values.update(read)
    else:
        values.update(parse_qsl(body.decode("utf-8", "replace"), keep_blank_values=True))
    return Parameters(values)


async def _multipart(scope: Scope, receive: Receive, values: dict[str, Any]) -> Parameters:
    files: dict[str, Upload] = {}
    request = Request(scope, receive)
    async with request.form(max_part_size=2_000_000) as form:
        for name, part in form.multi_items():
            if isinstance(part, str):
                values[name] = part
                continue
            data = await part.read()
            if len(data) > limits.UPLOAD_BYTES:
                raise Refusal(413, "Request Entity Too Large")
            # A form of the page may carry several files under one name.
            free = name if name not in files else f"{name}#{len(files)}"
            files[free] = Upload(
                part.filename or "file", part.content_type or "application/octet-stream", data
            )
    return Parameters(values, files)
