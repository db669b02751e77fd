"""What happened, line by line in a file, so that a killed stand-in comes back as it was."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import msgspec


class Journal:
    """Appends lines of JSON, `[kind, data]`; without a path it keeps nothing.

    Each line reaches the operating system before the request is answered: enough for a killed process,
    not for a machine that loses its power.
    """

    def __init__(self, path: Path | None) -> None:
        self.on = path is not None
        self._path = path
        self._file = path.open("ab", buffering=0) if path is not None else None
        self._encode = msgspec.json.Encoder().encode
        # A kill may have cut the last line short: what comes next begins a line of its own.
        if self._file is not None and self._file.tell() > 0:
            self._file.write(b"\n")

    def note(self, kind: str, data: Any) -> None:
        """Write one line."""
        if self._file is not None:
            self._file.write(self._encode([kind, data]) + b"\n")

    def lines(self) -> Iterator[tuple[str, Any]]:
        """Read back every whole line; one that a kill cut short is left out."""
        if self._path is None:
            return
        decode = msgspec.json.Decoder().decode
        for line in self._path.read_bytes().splitlines():
            try:
                kind, data = decode(line)
            except (msgspec.DecodeError, ValueError):
                continue
            yield kind, data

    def close(self) -> None:
        """Close the file."""
        if self._file is not None:
            self._file.close()
        self.on = False
        self._file = None
