"""Rectangles of tiles, laid out by trying every number of rows."""

from __future__ import annotations


def _rows(tiles):
    return [rows for rows in range(1, tiles + 1) if tiles % rows == 0]


def _rectangles(tiles):
    return {frozenset((rows, tiles // rows)) for rows in _rows(tiles)}


def rectangles_of_24():
    return len(_rectangles(24))


def only_one_rectangle():
    return [tiles for tiles in (12, 13, 16, 24) if len(_rectangles(tiles)) == 1]


def a_square():
    return [tiles for tiles in (12, 13, 16, 24) if any(len(sides) == 1 for sides in _rectangles(tiles))]


def shared_side():
    return max(set(_rows(16)) & set(_rows(24)))
