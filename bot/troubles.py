"""The few errors that people see: what is wrong, where, and what to do next. No traceback, exit code 2."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Fault:
    """One thing that is wrong. `where` is a file with a line, a setting or a command."""

    what: str
    where: str = ""
    fix: str = ""

    def __str__(self) -> str:
        where = f"\n  {self.where}" if self.where else ""
        fix = f"\n{self.fix}" if self.fix else ""
        return f"{self.what}{where}{fix}"


class Trouble(Exception):
    """Something that whoever runs Evensum can mend."""

    def __init__(self, what: str, where: str = "", fix: str = "") -> None:
        self.faults: tuple[Fault, ...] = (Fault(what, where, fix),)
        super().__init__(str(self.faults[0]))


class SettingsError(Trouble):
    """All faults of the settings at once."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        Exception.__init__(self, "\n".join(map(str, faults)))
        self.faults = faults
