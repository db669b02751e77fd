"""The one process that sends and looks at the clock, however many take updates from the service."""

from __future__ import annotations

import fcntl
import os
import threading
from contextlib import suppress
from pathlib import Path

from sqlalchemy import Connection, Engine, text
from sqlalchemy.exc import SQLAlchemyError

_PLACE = {"a": 0x4556, "b": 1}  # two small numbers, a space apart from the locks on chats


class Leader:
    """A lock on a database that ends with the process that holds it.

    On PostgreSQL an advisory lock of one connection; with SQLite a lock on a file beside the database.
    """

    def __init__(self, engine: Engine) -> None:
        self._engine = engine
        self._connection: Connection | None = None
        self._file: int | None = None
        self._over = False
        self._guard = threading.Lock()  # it is asked in one thread and may be told to step down in another

    def try_to_lead(self) -> bool:
        """Return whether this process leads from now on (or did already)."""
        with self._guard:
            return False if self._over else self._try()

    def _try(self) -> bool:
        if self._engine.dialect.name == "sqlite":
            return self._lock_file()
        if self._connection is not None:
            return self._leads()
        connection = self._engine.connect().execution_options(isolation_level="AUTOCOMMIT")
        if connection.execute(text("SELECT pg_try_advisory_lock(:a, :b)"), _PLACE).scalar_one():
            self._connection = connection
            return True
        connection.close()
        return False

    def _lock_file(self) -> bool:
        if self._file is not None:
            return True
        place = Path(f"{self._engine.url.database}.lock")
        file = os.open(place, os.O_RDWR | os.O_CREAT, 0o600)
        try:
            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError:
            os.close(file)
            return False
        self._file = file
        return True

    def leads(self) -> bool:
        """Return whether this process still leads; a connection that was cut has lost the lock."""
        with self._guard:
            return self._leads()

    def _leads(self) -> bool:
        if self._file is not None:
            return True
        if self._connection is None:
            return False
        try:
            self._connection.execute(text("SELECT 1"))
        except SQLAlchemyError:
            self._connection.invalidate()
            self._connection = None
            return False
        return True

    def step_down(self) -> None:
        """Let another process lead, for good."""
        with self._guard:
            self._over = True
            if self._file is not None:
                os.close(self._file)
                self._file = None
            if self._connection is not None:
                with suppress(SQLAlchemyError):  # a cut connection has lost the lock already
                    self._connection.execute(text("SELECT pg_advisory_unlock(:a, :b)"), _PLACE)
                self._connection.close()
                self._connection = None
