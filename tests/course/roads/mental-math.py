"""Mental-math strings, worked out by Python from the question as it is printed."""

from __future__ import annotations

import re
import statistics
from fractions import Fraction

RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹", "0123456789")


def _number(text):
    """A printed number: 1,089, 4.5, 3 1/4."""
    return sum((Fraction(part) for part in text.replace(",", "").split()), Fraction(0))


def _worked(ask):
    """The calculation in the question, read as Python reads it: signs, powers, mixed numbers."""
    shown = ask.removeprefix("Work out ").removeprefix("Write ").split(" in your head")[0]
    shown = re.split(r"\. Work out | as a | in your head|, in your", shown)[0].strip(" .,")
    text = re.sub(r"(?<=\d),(?=\d{3})", "", shown).replace("−", "-").replace("×", "*").replace("÷", "/")
    text = re.sub(r"(\d+) (\d+/\d+)", r"(\1 + \2)", text)
    text = re.sub(r"[⁰¹²³⁴⁵⁶⁷⁸⁹]+", lambda found: "**" + found[0].translate(RAISED), text)
    return eval(re.sub(r"\d+(\.\d+)?", lambda found: f"F('{found[0]}')", text), {"F": Fraction})


def _percent(ask):
    """The percent and the amount of the question."""
    percent, amount = re.search(r"([\d.]+)% of ([\d,]+)", ask).groups()
    return Fraction(percent) / 100, _number(amount)


def _of(ask):
    part, amount = _percent(ask)
    return part * amount


def _left(ask):
    part, amount = _percent(ask)
    return amount - part * amount


def _part_of(ask):
    part, amount = re.search(r"(\d+/\d+) of ([\d,]+)", ask).groups()
    return Fraction(part) * _number(amount)


def _mean(ask):
    listed = ask.removeprefix("Work out the mean of ").split(" in your head")[0]
    return statistics.mean(_number(one) for one in re.findall(r"[\d.]+", listed))


def which_lies_above_a_half(ask):
    one, other = (Fraction(each) for each in re.findall(r"\d+/\d+", ask))
    return max(one, other)


def which_lies_below_a_half(ask):
    one, other = (Fraction(each) for each in re.findall(r"\d+/\d+", ask))
    return min(one, other)


def above_or_below_a_half(ask):
    return Fraction(re.search(r"\d+/\d+", ask)[0]) > Fraction(1, 2)


def next_square_told(ask):
    return int(re.search(r"Work out (\d+)²", ask)[1]) ** 2


def about_a_product(ask):
    one, other = re.search(r"([\d.]+) × ([\d.]+)", ask).groups()
    return round(float(one), -1) * round(float(other))


def about_a_price(ask):
    count, price = re.search(r"(\d+) things cost \$([\d.]+)", ask).groups()
    return int(count) * round(float(price))


def about_a_sum(ask):
    one, other = re.search(r"([\d,]+) \+ ([\d,]+)", ask).groups()
    return sum(round(int(each.replace(",", "")), -2) for each in (one, other))


def about_a_quotient(ask):
    one, other = re.search(r"([\d,]+) ÷ (\d+)", ask).groups()
    return Fraction(round(int(one.replace(",", "")), -1), int(other))


def about_a_percent(ask):
    return Fraction(int(re.search(r"of ([\d,]+)\?", ask)[1].replace(",", "")), 10)


def _road(work):
    def road(ask):
        return work(ask)

    return road


_AS_PRINTED = [
    "make_the_next_ten",
    "next_ten_from_behind",
    "two_digits_over_the_next_ten",
    "three_numbers_by_tens",
    "a_decimal_to_the_next_one",
    "make_the_next_hundred",
    "next_hundred_small_part",
    "next_hundred_two_near",
    "next_thousand",
    "from_the_ten_to_the_hundred",
    "shift_between_the_two",
    "shift_to_a_ten",
    "shift_from_the_first",
    "shift_a_tenth",
    "shift_ten_over",
    "tens_and_ones_apart",
    "tens_and_ones_no_carry",
    "hundreds_tens_and_ones_apart",
    "take_tens_then_ones",
    "ones_and_tenths_apart",
    "add_too_much_and_step_back",
    "add_too_much_nineteen",
    "add_too_much_to_a_hundred",
    "add_too_much_twice",
    "add_too_much_a_price",
    "take_too_much_and_step_back",
    "take_too_much_nineteen",
    "take_too_much_near_a_hundred",
    "take_too_much_from_a_thousand",
    "take_too_much_a_tenth",
    "count_up_to_find_a_difference",
    "count_up_over_a_ten",
    "count_up_over_two_hundreds",
    "count_up_over_a_thousand",
    "count_up_the_change",
    "the_same_change_to_both",
    "same_change_to_a_ten",
    "same_change_down",
    "same_change_hundreds",
    "same_change_tenths",
    "near_doubles",
    "near_double_one_less",
    "near_double_two_apart",
    "near_double_of_tens",
    "near_double_tenths",
    "pairs_that_make_round_numbers",
    "pairs_that_make_tens",
    "pairs_in_four",
    "pairs_that_make_one",
    "pairs_of_quarters",
    "double_one_halve_the_other",
    "halve_the_even_one",
    "double_and_halve_twice",
    "double_the_half",
    "double_fifty",
    "double_twice_for_times_four",
    "four_times_behind",
    "four_times_three_digits",
    "four_times_tenths",
    "a_fourth_by_halves",
    "double_three_times_for_times_eight",
    "eight_times_behind",
    "eight_times_over_a_hundred",
    "eight_times_halves",
    "an_eighth_by_halves",
    "times_five_as_half_of_times_ten",
    "five_times_behind",
    "five_times_three_digits",
    "fifty_times",
    "five_times_tenths",
    "times_twenty_five_as_a_quarter_of_times_a_hundred",
    "twenty_five_times_behind",
    "twenty_five_times_odd_halves",
    "two_hundred_fifty_times",
    "a_quarter_as_a_decimal",
    "times_nine_as_times_ten_less_one",
    "nine_times_behind",
    "nine_times_three_digits",
    "nineteen_times",
    "nine_times_tenths",
    "times_eleven_as_times_ten_and_one_more",
    "eleven_times_behind",
    "eleven_times_three_digits",
    "twenty_one_times",
    "eleven_times_tenths",
    "times_ninety_nine_as_times_a_hundred_less_one",
    "ninety_nine_times_two_digits",
    "a_hundred_and_one_times",
    "ninety_eight_times",
    "a_price_of_ninety_nine",
    "break_one_factor",
    "break_into_tens_and_ones",
    "break_off_a_hundred",
    "break_a_twelve",
    "break_a_decimal",
    "regroup_the_factors",
    "two_and_five_make_ten",
    "fifty_and_two",
    "find_the_five",
    "a_quarter_and_a_four",
    "divide_by_five_double_then_a_tenth",
    "divide_by_five_three_digits",
    "divide_by_fifty",
    "divide_by_five_to_tenths",
    "divide_by_one_half_of_ten",
    "divide_in_two_steps",
    "divide_by_six_in_two_steps",
    "divide_by_eight_in_two_steps",
    "divide_by_fifteen_in_two_steps",
    "divide_by_twenty_in_two_steps",
    "split_a_division",
    "split_off_ten_times",
    "split_off_twenty_times",
    "split_from_above",
    "split_with_tens",
    "divide_by_twenty_five_times_four_then_a_hundredth",
    "divide_by_twenty_five_hundreds",
    "divide_by_two_hundred_fifty",
    "divide_by_twenty_five_to_hundredths",
    "divide_by_one_hundred_twenty_five",
    "square_ends_in_five",
    "ends_in_five_as_a_product",
    "square_of_a_half",
    "ones_that_make_ten",
    "hundreds_that_end_in_fifty",
    "square_one_above",
    "square_one_below",
    "square_two_above",
    "square_one_above_five",
    "neighbours_of_a_ten",
    "two_away_from_a_ten",
    "three_away_from_a_ten",
    "neighbours_of_a_known_square",
    "five_away_from_a_ten",
    "squares_of_neighbours",
    "squares_two_apart",
    "squares_with_a_round_sum",
    "squares_ten_apart",
    "squares_round_to_a_hundred",
    "cancel_a_number_with_a_fraction",
    "cancel_two_fractions",
    "cancel_in_a_division",
    "cancel_a_half",
    "cancel_hundredths",
    "twentieths_to_percent",
    "twenty_fifths_to_percent",
    "fiftieths_to_percent",
    "large_to_hundredths",
    "fifths_to_decimal",
    "how_far_above_a_half",
    "how_far_below_a_half",
    "opposites_at_the_ends",
    "opposites_with_a_negative_left",
    "opposites_in_four",
    "nearly_opposites",
    "nearly_opposites_below",
    "two_piles_of_two",
    "two_piles_below_zero",
    "two_piles_minus_first",
    "two_piles_with_tens",
    "two_piles_with_a_pair",
]
_PERCENTS_OF = [
    "thirty_percent_of_tens",
    "five_percent_as_half_of_ten",
    "fifteen_percent",
    "thirty_five_percent",
    "ninety_percent",
    "swap_to_a_half",
    "swap_to_a_quarter",
    "swap_to_a_fifth",
    "swap_to_a_tenth",
    "swap_to_three_quarters",
    "few_percent_of_hundreds",
    "teens_percent_of_hundreds",
    "few_percent_of_tens",
    "ninety_nine_percent",
    "a_hundred_and_some_percent",
]
_LEFT = [
    "quarter_off",
    "tenth_off",
    "fifth_off",
    "most_of_it_off",
    "a_few_percent_off",
]
_PARTS_OF = [
    "thirds_of_an_amount",
    "quarters_of_an_amount",
    "fifths_of_an_amount",
    "eighths_of_an_amount",
    "all_but_one_part",
]
_MEANS = [
    "mean_of_two",
    "mean_of_three",
    "mean_near_a_round_number",
    "mean_of_four",
    "mean_with_a_zero",
]

for _names, _work in (
    (_AS_PRINTED, _worked),
    (_PERCENTS_OF, _of),
    (_LEFT, _left),
    (_PARTS_OF, _part_of),
    (_MEANS, _mean),
):
    globals().update({_name: _road(_work) for _name in _names})
