"""Rules acted out by counting on, functions by collecting the outputs of each input."""

from __future__ import annotations

import re
from collections import defaultdict
from itertools import count


def _run(times, more, start):
    """Counts on by the input, then by the number that is added."""
    total = 0
    for _ in range(int(times)):
        total += start
    return total + more


def _is_function(pairs):
    found = defaultdict(set)
    for one, other in pairs:
        found[one].add(other)
    return all(len(outputs) == 1 for outputs in found.values())


def follow_the_rule(m, b, x):
    return _run(m, b, x)


def function_or_not(a, b, c, n, p, q, r, e):
    return _is_function(zip([a, b, c, n], [p, q, r, e], strict=True))


def which_input_was_it(m, b, y):
    return next(x for x in count() if _run(m, b, x) == y)


def which_pairs_are_no_function(choices):
    return [one for one in choices if not _is_function(re.findall(r"\((\d+), (\d+)\)", one))]


def two_machines(m, b, n, c, x):
    return _run(n, -c, _run(m, b, x))
