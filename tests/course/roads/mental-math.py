"""Mental-math strings, worked out by Python as printed."""

from __future__ import annotations

from fractions import Fraction


def _worked(maths):
    """The first piece of maths of the question, worked out as Python reads it."""
    return eval(maths[0], {"F": Fraction})


def make_the_next_ten(maths):
    return _worked(maths)


def make_the_next_hundred(maths):
    return _worked(maths)


def shift_between_the_two(maths):
    return _worked(maths)


def tens_and_ones_apart(maths):
    return _worked(maths)


def add_too_much_and_step_back(maths):
    return _worked(maths)


def take_too_much_and_step_back(maths):
    return _worked(maths)


def count_up_to_find_a_difference(maths):
    return _worked(maths)


def the_same_change_to_both(maths):
    return _worked(maths)


def near_doubles(maths):
    return _worked(maths)


def pairs_that_make_round_numbers(maths):
    return _worked(maths)


def double_one_halve_the_other(maths):
    return _worked(maths)


def double_twice_for_times_four(maths):
    return _worked(maths)


def double_three_times_for_times_eight(maths):
    return _worked(maths)


def times_five_as_half_of_times_ten(maths):
    return _worked(maths)


def times_twenty_five_as_a_quarter_of_times_a_hundred(maths):
    return _worked(maths)


def times_nine_as_times_ten_less_one(maths):
    return _worked(maths)


def times_eleven_as_times_ten_and_one_more(maths):
    return _worked(maths)


def times_ninety_nine_as_times_a_hundred_less_one(maths):
    return _worked(maths)


def break_one_factor(maths):
    return _worked(maths)


def regroup_the_factors(maths):
    return _worked(maths)


def divide_by_five_double_then_a_tenth(maths):
    return _worked(maths)


def divide_in_two_steps(maths):
    return _worked(maths)


def split_a_division(maths):
    return _worked(maths)


def divide_by_twenty_five_times_four_then_a_hundredth(maths):
    return _worked(maths)
