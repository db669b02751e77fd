"""What is told to an author who errs: where, what is wrong, what would be right; every fault, not the first."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from rapidfuzz import fuzz, process


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing to mend in one line of one file.

    `kind` is a stable name for programs; `what` and `fix` are sentences. `shown` is the line as written and
    `mark` the part of it that is meant (found in `shown` when the fault is printed).
    """

    kind: str
    file: str
    line: int
    what: str
    fix: str = ""
    where: str = ""
    shown: str = ""
    mark: str = ""

    def __str__(self) -> str:
        head = f"{self.file}:{self.line}" + (f"  {self.where}" if self.where else "")
        lines = [head]
        if self.shown:
            lines.append(f"    {self.shown}")
            at = self.shown.find(self.mark) if self.mark else -1
            if at >= 0:
                lines.append("    " + " " * at + "^" * len(self.mark))
        lines += [f"    {sentence}" for sentence in (self.what, self.fix) if sentence]
        return "\n".join(lines)


class CourseErrors(ValueError):
    """The course has faults; `faults` holds all of them, in the order of files and lines."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults: Sequence[Fault] = sorted(faults, key=lambda fault: (fault.file, fault.line))
        super().__init__("\n\n".join(str(fault) for fault in self.faults))


def nearest(name: str, known: Iterable[str]) -> str:
    """Give a sentence that names the known word nearest to a mistyped one; empty if none is near."""
    found = process.extractOne(name, list(known), scorer=fuzz.ratio, score_cutoff=60)
    return f"Did you mean {found[0]}?" if found else ""
