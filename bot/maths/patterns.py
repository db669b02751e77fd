"""Patterns that are compiled at their first use.

There are more than two hundred, most replies meet a few of them, and compiling all took two fifths of the
time to import the checker.
"""

from __future__ import annotations

import re
from typing import Any, cast


class Later:
    """Stands for a compiled pattern. After its first use its methods are the compiled pattern's own."""

    def __init__(self, text: str, flags: int) -> None:
        self.text = text
        self.flags = flags

    def __getattr__(self, name: str) -> Any:
        compiled = re.compile(self.text, self.flags)
        for method in ("search", "match", "fullmatch", "sub", "subn", "split", "findall", "finditer"):
            setattr(self, method, getattr(compiled, method))
        return getattr(compiled, name)


def regex(text: str, flags: int = 0) -> re.Pattern[str]:
    """A pattern for `search`, `match`, `sub` and the like, compiled when it is first asked for."""
    return cast("re.Pattern[str]", Later(text, flags))
