"""Water that comes second by second into the cup."""

from __future__ import annotations

import re


def guess_for_later(ask):
    rate, start, seconds = (int(one) for one in re.findall(r"\d+", ask))
    level = start
    for _ in range(seconds):
        level += rate
    return level
