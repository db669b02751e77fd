"""Points by walking step by step, and mirrors by measuring: the image is as far away as the point, straight across."""

from __future__ import annotations

import re

FIELD = range(-40, 41)
STEP = {"right": (1, 0), "left": (-1, 0), "up": (0, 1), "down": (0, -1)}
STEP |= {
    "east": (1, 0),
    "west": (-1, 0),
    "north": (0, 1),
    "south": (0, -1),
    "above": (0, 1),
    "below": (0, -1),
}


def _walk(start, *legs):
    x, y = start
    for steps, way in legs:
        for _ in range(int(steps)):
            x, y = x + STEP[way][0], y + STEP[way][1]
    return int(x), int(y)


def _written(point):
    return f"({point[0]}, {point[1]})".replace("-", "−")


def _image(point, axis):
    """The other point at the same distance from the axis on the same straight way across it."""
    x, y = point
    if axis == "x-axis":
        return next((x, other) for other in FIELD if abs(other) == abs(y) and other != y)
    return next((other, y) for other in FIELD if abs(other) == abs(x) and other != x)


def read_the_point(a, b):
    legs = [(abs(a), "right" if a > 0 else "left"), (abs(b), "up" if b > 0 else "down")]
    return _written(_walk((0, 0), *legs))


def which_quadrant_signs(a, b, words):
    return _written(_walk((0, 0), (a, words["across"]), (b, words["upward"])))


def mirror_in_an_axis(a, b, words):
    return _written(_image((a, b), words["axis"]))


def which_axis_was_it(a, b, p, q):
    return next(f"the {axis}" for axis in ("x-axis", "y-axis") if _image((a, b), axis) == (p, q))


def walk_on_the_map(ask):
    x, y = (int(part.replace("−", "-")) for part in re.search(r"\((\S+), (\S+)\)", ask).groups())
    legs = [(int(n), way) for n, way in re.findall(r"(\d+) blocks (\w+)", ask)]
    return _written(_walk((x, y), *legs))


def mirrored_and_how_far(a, b, words):
    other = _image((a, b), words["axis"])
    return len(range(int(min(a, other[0])), int(max(a, other[0])))) + len(
        range(int(min(b, other[1])), int(max(b, other[1])))
    )
