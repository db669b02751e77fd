"""Pictures and papers are made in a process of their own, so that what makes them never weighs on the bot.

The process starts when something is asked for and ends by itself after ten idle minutes. If it dies over a job, that
job is tried once more in a new one. What comes from the course alone is kept on disk by its content; what holds a
student's data is made anew each time and never kept.
"""

from __future__ import annotations

import asyncio
import contextlib
import hashlib
import os
import select
import struct
import subprocess
import sys
import tempfile
import threading
import time
from functools import lru_cache
from pathlib import Path
from typing import BinaryIO

import msgspec

IDLE = 600.0
"""Seconds without a job after which the process ends."""
PATIENCE = 30.0
"""Seconds a job may take; a year's record takes about one."""
ROOM = 64 * 2**20
"""Bytes that kept pictures may take on disk."""
MOST_JOBS = 1000
"""Jobs after which the process makes way for a fresh one: what sets type keeps a memory of what it has set."""
KEPT = frozenset({"figure", "figure-svg", "maths"})
"""Recipes whose data come from the course, not from a student."""

_HEAD = struct.Struct(">cI")
_GOOD, _BAD = b"g", b"b"


class CannotMake(ValueError):
    """A picture or paper can't be made from its data, or its process failed twice. The message says why."""


class Pictures:
    """Makes pictures and papers. May be used from several threads; jobs wait for one another."""

    def __init__(self, folder: Path | None = None, *, idle: float = IDLE, room: int = ROOM) -> None:
        self._folder = folder
        self._idle = idle
        self._room = room
        self._process: subprocess.Popen[bytes] | None = None
        self._lock = threading.Lock()
        self._writes = 0

    async def make(self, recipe: str, data: object) -> bytes:
        """The bytes of a recipe (see `recipes.RECIPES`), without holding up the event loop. Raises CannotMake."""
        return await asyncio.to_thread(self.make_now, recipe, data)

    def make_now(self, recipe: str, data: object) -> bytes:
        """The bytes of a recipe, in this thread. Raises CannotMake."""
        job = msgspec.json.encode((recipe, data), order="sorted")
        kept = self._file(recipe, job)
        if kept is not None and (found := _read(kept)):
            return found
        with self._lock:
            made = self._ask(job)
        if kept is not None:
            self._keep(kept, made)
        return made

    def close(self) -> None:
        """End the process, if there is one. A later job starts another."""
        with self._lock:
            self._end()

    def _ask(self, job: bytes) -> bytes:
        for last_try in (False, True):
            try:
                good, answer = self._send(job)
            except (OSError, EOFError, TimeoutError) as trouble:
                # It ended by itself in the meantime, or was killed; a job that takes too long isn't tried again.
                self._end()
                if last_try or isinstance(trouble, TimeoutError):
                    raise CannotMake(
                        f"The process that makes pictures failed: {trouble or 'it ended'}."
                    ) from trouble
                continue
            if not good:
                raise CannotMake(answer.decode())
            return answer
        raise AssertionError

    def _send(self, job: bytes) -> tuple[bool, bytes]:
        if self._process is None or self._process.poll() is not None:
            self._end()
            self._process = subprocess.Popen(
                [sys.executable, "-m", "bot.pictures", str(self._idle)],
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
            )
        assert self._process.stdin is not None and self._process.stdout is not None
        deadline = time.monotonic() + PATIENCE
        self._process.stdin.write(_HEAD.pack(_GOOD, len(job)) + job)
        self._process.stdin.flush()
        out = self._process.stdout.fileno()
        mark, length = _HEAD.unpack(_take(out, _HEAD.size, deadline))
        return mark == _GOOD, _take(out, length, deadline)

    def _end(self) -> None:
        process, self._process = self._process, None
        if process is None:
            return
        process.kill()
        process.wait()
        for pipe in (process.stdin, process.stdout):
            if pipe is not None:
                with contextlib.suppress(OSError):
                    pipe.close()

    def _file(self, recipe: str, job: bytes) -> Path | None:
        if self._folder is None or recipe not in KEPT:
            return None
        return self._folder / hashlib.sha256(_look() + job).hexdigest()

    def _keep(self, file: Path, made: bytes) -> None:
        """Keep a picture. A full disk or a folder that can't be written costs only the time to make it again."""
        with contextlib.suppress(OSError):
            file.parent.mkdir(parents=True, exist_ok=True)
            handle, half = tempfile.mkstemp(dir=file.parent, prefix=".half-")
            with os.fdopen(handle, "wb") as out:
                out.write(made)
            Path(half).replace(file)
            self._writes += 1
            if self._writes % 20 == 1:
                _make_room(file.parent, self._room)


def _take(fd: int, length: int, deadline: float) -> bytes:
    """So many bytes from a pipe. Raises TimeoutError and EOFError."""
    got = bytearray()
    while len(got) < length:
        ready, _, _ = select.select([fd], [], [], max(0.0, deadline - time.monotonic()))
        if not ready:
            raise TimeoutError("it took too long")
        piece = os.read(fd, min(length - len(got), 2**20))
        if not piece:
            raise EOFError("it ended over the job")
        got += piece
    return bytes(got)


def _read(file: Path) -> bytes:
    try:
        content = file.read_bytes()
        os.utime(file)  # the least recently used go first
    except OSError:
        return b""
    return content


def _make_room(folder: Path, room: int) -> None:
    """Take away the least recently used files until the rest fits; halves that a crash left behind too."""
    files = sorted(
        (file.stat().st_mtime, file.stat().st_size, file) for file in folder.iterdir() if file.is_file()
    )
    taken = sum(size for _, size, _ in files)
    for used, size, file in files:
        if taken <= room and not (file.name.startswith(".half-") and used < time.time() - 3600):
            continue
        with contextlib.suppress(OSError):
            file.unlink()
            taken -= size


@lru_cache(maxsize=1)
def _look() -> bytes:
    """Changes whenever the way pictures are drawn changes, so that no picture of an earlier release is shown."""
    here = Path(__file__).parent
    figures = here.parent / "course" / "figures"
    files = sorted([*here.rglob("*.py"), *here.rglob("*.typ"), *figures.rglob("*.py")])
    total = hashlib.sha256()
    for file in files:
        total.update(file.read_bytes())
    return total.digest()


def serve(into: BinaryIO, out: BinaryIO, idle: float) -> None:
    """The process's own side: one job after the other until none comes for so many seconds."""
    # Only here, so that nothing heavy is ever loaded by who asks.
    from bot.pictures.recipes import make, warm

    warm()
    source = into.fileno()
    for _ in range(MOST_JOBS):
        try:
            _, length = _HEAD.unpack(_take(source, _HEAD.size, time.monotonic() + idle))
            recipe, data = msgspec.json.decode(
                _take(source, length, time.monotonic() + PATIENCE), type=tuple[str, object]
            )
        except (EOFError, TimeoutError):
            return
        try:
            mark, answer = _GOOD, make(recipe, data)
        except KeyError:
            mark, answer = _BAD, f"There is no recipe '{recipe}'.".encode()
        except Exception as fault:  # whatever the data do, the next job is served
            mark, answer = _BAD, (str(fault) or type(fault).__name__).encode()
        out.write(_HEAD.pack(mark, len(answer)) + answer)
        out.flush()
