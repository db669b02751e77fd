"""The maths language that students type and lessons are written in: text, tree, exact value, text again."""

from bot.maths.normal import normal
from bot.maths.read import Unreadable, read
from bot.maths.show import plain, typst
from bot.maths.tree import Tree, letters_in, number, substitute
from bot.maths.value import Undefined, holds, value

__all__ = [
    "Tree",
    "Undefined",
    "Unreadable",
    "holds",
    "letters_in",
    "normal",
    "number",
    "plain",
    "read",
    "substitute",
    "typst",
    "value",
]
