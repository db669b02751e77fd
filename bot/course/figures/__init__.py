"""What each kind of figure needs, whether a figure is in order, and its picture in words.

KINDS["rectangle"]              what a recipe gives: fields, which must be there, what each holds
check_recipe(recipe)            what is wrong with a recipe, before any number is drawn
fill(kind, recipe, put)         the recipe with an item's numbers in; put is called for each piece of maths
check(figure)                   what is wrong with a figure whose numbers are in
alt(figure)                     the picture in plain words, enough to work the item without seeing it
"""

from __future__ import annotations

from bot.course.figures.all_kinds import KINDS
from bot.course.figures.checks import check, check_recipe
from bot.course.figures.kind import Field, Figure, Holds, Kind, Value
from bot.course.figures.reading import Drawn, Put, fill
from bot.course.figures.spoken import alt

__all__ = [
    "KINDS",
    "Drawn",
    "Field",
    "Figure",
    "Holds",
    "Kind",
    "Put",
    "Value",
    "alt",
    "check",
    "check_recipe",
    "fill",
]
