"""Unlike fractions, by the fractions library, on the question as printed where it has its numbers there."""

from __future__ import annotations

from fractions import Fraction


def _worked(maths):
    """The first piece of maths of the question, worked out as Python reads it."""
    return eval(maths[0], {"F": Fraction})


def one_fits_the_other(maths):
    return _worked(maths)


def take_away(maths):
    return _worked(maths)


def common_pieces(b, d):
    return str(next(parts for parts in range(1, 1000) if parts % b == 0 and parts % d == 0))


def mixed_together(maths):
    one, other = (eval(piece, {"F": Fraction}) for piece in maths)
    return one + other


def more_than_one(maths):
    return sum(eval(piece, {"F": Fraction}) for piece in maths) > 1


def what_is_left(maths):
    left, *used = (eval(piece, {"F": Fraction}) for piece in maths)
    for piece in used:
        left -= piece
    return left
