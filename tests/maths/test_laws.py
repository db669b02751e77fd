"""Laws that hold for all numbers, expressions and texts."""

from __future__ import annotations

from contextlib import suppress
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from bot.maths import Undefined, normal, number, plain, read, value
from bot.maths.algebra import equivalent
from bot.maths.exact import normal_form
from bot.maths.tree import Add, Divide, Group, Letter, Multiply, Negative, Number, Power, Subtract, Tree

numbers = st.fractions(min_value=-1000, max_value=1000, max_denominator=60)
leaves = st.one_of(
    st.integers(0, 20).map(lambda n: Number(Fraction(n))),
    st.sampled_from("xy").map(Letter),
    st.integers(0, 999).map(lambda n: Number(Fraction(n, 100), 2)),
)


def grown(below: st.SearchStrategy[Tree]) -> st.SearchStrategy[Tree]:
    return st.one_of(
        st.builds(Add, below, below.map(Group)),
        st.builds(Subtract, below, below.map(Group)),
        st.builds(lambda one, other: Multiply(Group(one), Group(other)), below, below),
        st.builds(lambda one, n: Divide(Group(one), Number(Fraction(n))), below, st.integers(1, 9)),
        st.builds(lambda one: Negative(Group(one)), below),
        st.builds(lambda one, n: Power(Group(one), Number(Fraction(n))), below, st.integers(0, 3)),
    )


expressions = st.recursive(leaves, grown, max_leaves=6)


@given(numbers, st.booleans())
def test_a_number_written_and_read_back_is_itself(amount: Fraction, decimal: bool) -> None:
    assert value(read(plain(number(amount, decimal)))) == amount


@given(
    st.sampled_from(("mixed", "decimal", "percent", "value")), numbers.filter(lambda n: n.denominator < 30)
)
def test_a_number_shown_in_another_way_keeps_its_value(word: str, amount: Fraction) -> None:
    tree = read(f"{word}({amount.numerator}/{amount.denominator})")

    assert value(read(plain(tree))) == amount


@given(expressions)
def test_an_expression_written_and_read_back_is_equivalent(tree: Tree) -> None:
    assert equivalent(tree, read(plain(tree)))


@given(expressions)
def test_equivalence_is_reflexive(tree: Tree) -> None:
    assert equivalent(tree, tree)


@given(expressions, expressions)
def test_equivalence_is_symmetric(one: Tree, other: Tree) -> None:
    assert equivalent(one, other) == equivalent(other, one)


@given(expressions, numbers, numbers)
def test_equivalence_is_transitive(tree: Tree, more: Fraction, times: Fraction) -> None:
    same = Subtract(Add(tree, Group(number(more))), Group(number(more)))
    also = same if not times else Divide(Multiply(Group(same), Group(number(times))), Group(number(times)))

    assert equivalent(tree, same)
    assert equivalent(same, also)
    assert equivalent(tree, also)


@given(expressions, st.fractions(-9, 9, max_denominator=7), st.fractions(-9, 9, max_denominator=7))
def test_a_normal_form_has_the_value_of_its_expression(tree: Tree, x: Fraction, y: Fraction) -> None:
    form = normal_form(tree)
    letters = {"x": x, "y": y}
    try:
        expected = value(tree, letters)
        total = sum((c * _power(term, letters) for term, c in form.top.items()), Fraction(0))
    except (Undefined, ZeroDivisionError):
        return
    assert total == expected


def _power(term: tuple[tuple[str, int | Fraction], ...], letters: dict[str, Fraction]) -> Fraction:
    product = Fraction(1)
    for letter, n in term:
        product *= letters[letter] ** int(n)
    return product


@given(expressions, st.fractions(-9, 9, max_denominator=7), st.integers(-9, 9))
def test_a_value_is_a_fraction_even_where_all_that_makes_it_is_whole(tree: Tree, x: Fraction, y: int) -> None:
    with suppress(Undefined):
        assert type(value(tree, {"x": x, "y": Fraction(y)})) is Fraction


@given(st.text("0123456789xyab+-−–×·÷/√π≤≥≠°=()., ", max_size=40))
def test_signs_of_lessons_are_normal_the_short_way_as_the_long_way(text: str) -> None:
    zero_width_space = "\u200b"  # is dropped, but nothing that lessons write holds one

    assert normal(text) == normal(text + zero_width_space)


@settings(max_examples=500)
@given(st.text(max_size=60))
def test_normalising_twice_is_normalising_once(text: str) -> None:
    assert normal(normal(text)) == normal(text)
