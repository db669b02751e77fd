"""Stories told with a number for the letter."""

from __future__ import annotations


def more_or_less(b, words):
    return (lambda n: n + b) if words["say"] == "more than" else (lambda n: n - b)


def times_as_many(b, c):
    return lambda k: sum([k] * int(b)) + c


def what_it_means(words):
    return f"the price of all {words['many']}"


def which_expression(a, b, choices):
    y = 10
    thought_of = sum([y + b] * int(a))
    readings = {f"{a}y + {b}": a * y + b, f"{a}(y + {b})": a * (y + b), f"{a} + y + {b}": a + y + b}
    return [choice for choice in choices if readings[choice] == thought_of]


def length_left(a, b):
    def left(x):
        rope = a
        for _ in range(int(b)):
            rope -= x
        return rope

    return left


def coins_in_the_box(a, b, c):
    return lambda g: c + sum([g - b] * int(a))
