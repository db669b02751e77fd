"""Units: how they are spelled, which are equal, and the text before, between and behind them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache, lru_cache

from bot.answers.tables import table
from bot.maths.patterns import regex

_TOKEN = regex(r"( ?)(us\$|°[cf](?![a-z])|[a-z_]+|\d*\.\d*\(\d+\)|\d*\.\d+|\d+|[^ ])")
_SQUARE = frozenset(("square", "sq", "sqr", "squared", "sqaure", "squar", "squre", "sqare"))
_CUBIC = frozenset(("cubic", "cu", "cube", "cub", "cubed", "cubick", "qubic", "cubbed"))
_BEHIND = {
    **dict.fromkeys(("squared", "square", "sq", "cuadrado", "cuadrados", "cuadrada", "cuadradas", "cuad"), 2),
    **dict.fromkeys(("sqared", "squred", "sqaured", "squard", "squered"), 2),
    **dict.fromkeys(("cubed", "cubic", "cubbed", "cubico", "cubicos", "cubica", "cubicas"), 3),
}
_GLUED = regex(r"^(sq|cu)([a-z]{1,4})$")
_PER = frozenset(("per", "a", "an", "each", "every", "por", "cada", "p", "al", "for"))
_IRREGULAR = {
    "people": "person",
    "children": "child",
    "men": "man",
    "women": "woman",
    "mice": "mouse",
    "geese": "goose",
    "teeth": "tooth",
    "feet": "foot",
    "oxen": "ox",
    "dice": "die",
    "pence": "penny",
}
_KIND_POWERS = {"area": ("length", 2), "volume": ("length", 3)}


@dataclass(frozen=True, slots=True)
class Unit:
    """What is measured (kinds and their powers) and the size in base units; equal units compare equal."""

    kinds: tuple[tuple[str, int], ...]
    size: Fraction

    def __mul__(self, other: Unit) -> Unit:
        powers = dict(self.kinds)
        for kind, n in other.kinds:
            powers[kind] = powers.get(kind, 0) + n
        return Unit(tuple(sorted((k, n) for k, n in powers.items() if n)), self.size * other.size)

    def __pow__(self, n: int) -> Unit:
        return Unit(tuple((k, p * n) for k, p in self.kinds), self.size**n)


PERCENT = Unit((("percent", 1),), Fraction(1))
"""A percent sign where a unit is asked: it counts as a wrong one."""


def is_unit(word: str) -> bool:
    """Whether a word is a spelling of a unit."""
    return word in _names()[0]


def counting(word: str) -> Unit:
    """The unit of a count: apples, rides, sacks."""
    return Unit(((singular(word), 1),), Fraction(1))


@dataclass(frozen=True, slots=True)
class Wanted:
    """The unit of an item, and the spellings that count because it is asked for."""

    unit: Unit
    own: frozenset[str]
    extra: dict[str, Unit]
    parts: frozenset[Unit] = frozenset()
    """The units it is made of, each in its first power: what a spelling slip may stand for."""

    def __hash__(self) -> int:
        return hash((self.unit, self.own))


@cache
def _names() -> tuple[dict[str, Unit], dict[str, dict[str, Unit]]]:
    """Spellings to units, and spellings that count only where a kind is asked for."""
    rows = table("units")
    names: dict[str, Unit] = {}
    asked: dict[str, dict[str, Unit]] = {}
    for row in rows.values():
        if "of" in row:
            above, _, below = row["of"].partition("/")
            unit = names[above] * names[below] ** -1
        else:
            kind, power = _KIND_POWERS.get(row["kind"], (row["kind"], 1))
            unit = Unit(((kind, power),), Fraction(row["size"]))
        for spelling in row["spelled"]:
            names[spelling] = unit
        for spelling in row.get("if_asked", ()):
            asked.setdefault(spelling, {})[unit.kinds[0][0] + str(unit.kinds[0][1])] = unit
    return names, asked


@lru_cache(maxsize=512)
def wanted(text: str) -> Wanted:
    """The unit that an item asks for, from the text of its key: `ft`, `cm^2`, `$/lb`, `flour sacks`."""
    tokens = tokens_of(text.lower().replace("²", "^2").replace("³", "^3"))
    names, asked = _names()
    found = unit_at(tokens, 0, None)
    if found is not None and found[1] == len(tokens):
        unit = found[0]
        kinds = {kind + str(n) for kind, n in unit.kinds}
        extra = {s: some[k] for s, some in asked.items() for k in some if k in kinds}
        if any(k.startswith("temperature") for k in kinds):
            extra |= {"f": names["°f"], "c": names["°c"]}
        parts = frozenset(names[word] for _, word in tokens if word in names)
        return Wanted(unit, frozenset(), extra, parts)
    words = [word for _, word in tokens if word.isalpha() and word not in ("of", "the", "de")]
    if found is not None and tokens[found[1]][1] in ("of", "de"):  # pounds of honey: the honey may be named
        return wanted(text.lower().replace(" de ", " of ").partition(" of ")[0])
    above, _, below = text.lower().partition("/")
    if below or " per " in text.lower():
        if not below:
            above, _, below = text.lower().partition(" per ")
        one, other = wanted(above.strip()), wanted(below.strip())
        return Wanted(
            one.unit * other.unit**-1, one.own | other.own, one.extra | other.extra, one.parts | other.parts
        )
    if not words:
        return Wanted(counting(text), frozenset(), {})
    unit = counting(words[-1])
    if words[-1] in _ON_A_GRID:
        unit = names["units"] ** _ON_A_GRID[words[-1]]
    return Wanted(unit, frozenset(singular(word) for word in words), {})


_ON_A_GRID = {"steps": 1, "squares": 2}
"""On a grid a step is a unit of length and a square one of area: `30 units`, `18 square units`."""


def singular(word: str) -> str:
    """A word without its plural ending: loaves, boxes, berries, rides."""
    if word in _IRREGULAR:
        return _IRREGULAR[word]
    if word.endswith("ves") and len(word) > 4:
        return word[:-3] + "f"
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if word.endswith(("xes", "ches", "shes", "sses", "oes")):
        return word[:-2]
    if word.endswith("s") and not word.endswith("ss") and len(word) > 3:
        return word[:-1]
    return word


def tokens_of(text: str) -> list[tuple[str, str]]:
    """The pieces of a text, each with the space before it (or none)."""
    return _TOKEN.findall(text)


def _name_at(tokens: list[tuple[str, str]], i: int, asked: Wanted | None) -> tuple[Unit, int] | None:
    """One unit's name, the longest spelling that fits."""
    if i >= len(tokens):
        return None
    names = _names()[0]
    word = tokens[i][1]
    for length in (2, 1):
        if i + length > len(tokens):
            continue
        spelled = " ".join(w for _, w in tokens[i : i + length]) if length > 1 else word
        if asked is not None and spelled in asked.extra:
            return asked.extra[spelled], i + length
        if spelled in names:
            return names[spelled], i + length
    if asked is not None and asked.own and singular(word) in asked.own:
        return asked.unit if len(asked.unit.kinds) == 1 else counting(word), _past_own(tokens, i, asked)
    if asked is not None and len(word) > 2 and word.isalpha():
        slipped = _slipped(word, asked)
        return None if slipped is None else (slipped, i + 1)
    return None


@lru_cache(maxsize=1024)
def _slipped(word: str, asked: Wanted) -> Unit | None:
    """The asked unit, or one it is made of, with a spelling slip: `fet`, `grms`, `metters`."""
    from rapidfuzz.distance import OSA

    for spelling, unit in _names()[0].items():
        if unit in asked.parts and len(spelling) > 3:
            allowed = 1 if len(spelling) < 8 else 2
            if OSA.distance(word, spelling, score_cutoff=allowed) <= allowed:
                return unit
    for noun in asked.own:
        if len(noun) > 4 and OSA.distance(singular(word), noun, score_cutoff=1) <= 1:
            return asked.unit if len(asked.unit.kinds) == 1 else counting(noun)
    return None


def _past_own(tokens: list[tuple[str, str]], i: int, asked: Wanted) -> int:
    while i < len(tokens) and (singular(tokens[i][1]) in asked.own or tokens[i][1] == "of"):
        i += 1
    return i


def _power_at(tokens: list[tuple[str, str]], i: int) -> tuple[int, int]:
    """A power behind a unit: ^2, 2 stuck to it, `squared`."""
    if i < len(tokens):
        word = tokens[i][1]
        if word == "^" and i + 1 < len(tokens):
            sign = 1
            if tokens[i + 1][1] == "(" and i + 3 < len(tokens) and tokens[i + 3][1] == ")":
                return (int(tokens[i + 2][1]), i + 4) if tokens[i + 2][1] in ("1", "2", "3") else (1, i)
            if tokens[i + 1][1] in ("1", "2", "3"):
                return sign * int(tokens[i + 1][1]), i + 2
        if word in ("2", "3") and not tokens[i][0]:
            stuck = i + 1 < len(tokens) and not tokens[i + 1][0] and tokens[i + 1][1][0].isalnum()
            if not stuck:
                return int(word), i + 1
        if word in _BEHIND:
            return _BEHIND[word], i + 1
    return 1, i


def _factor_at(tokens: list[tuple[str, str]], i: int, asked: Wanted | None) -> tuple[Unit, int] | None:
    power = 0
    if i < len(tokens) and (glued := _GLUED.match(tokens[i][1])) and glued.group(2) in _names()[0]:
        power = 2 if glued.group(1) == "sq" else 3
        return _names()[0][glued.group(2)] ** power, i + 1  # sqft
    if i < len(tokens) and tokens[i][1] in _SQUARE | _CUBIC:
        power = 2 if tokens[i][1] in _SQUARE else 3
        i += 1
        if i < len(tokens) and tokens[i][1] == ".":
            i += 1
    found = _name_at(tokens, i, asked)
    if found is None:
        return None
    unit, j = found
    if j < len(tokens) and tokens[j][1] == "." and not tokens[j][0] and (power or j + 1 < len(tokens)):
        j += 1  # sq. ft., ft. lb
    behind, j = _power_at(tokens, j)
    if power and behind > 1:
        behind = 1
    return unit ** (power or behind), j


def unit_at(tokens: list[tuple[str, str]], i: int, asked: Wanted | None) -> tuple[Unit, int] | None:
    """The unit that begins at a token, and where it ends: `square feet`, `mi/h`, `$ a pound`, `cm*cm`."""
    found = _factor_at(tokens, i, asked)
    if found is None:
        return None
    unit, j = found
    while j + 1 < len(tokens):
        word = tokens[j][1]
        if word == "/" or word in _PER:
            after = j + 1
            if tokens[after][1] == "1" and after + 1 < len(tokens):
                after += 1
            more = _factor_at(tokens, after, asked)
            if more is None and word in ("/", "per", "por", "each", "every", "cada"):
                more = _count_at(tokens, after)
            if more is None:
                break
            unit, j = unit * more[0] ** -1, more[1]
        elif word in ("*", "x"):
            more = _factor_at(tokens, j + 1, asked)
            if more is None:
                break
            unit, j = unit * more[0], more[1]
        else:
            break
    return unit, j


def _count_at(tokens: list[tuple[str, str]], i: int) -> tuple[Unit, int] | None:
    word = tokens[i][1]
    return (counting(word), i + 1) if word.isalpha() and len(word) > 1 else None


@cache
def _spelled() -> dict[Unit, str]:
    """The first spelling of each unit, for saying what was read."""
    rows = table("units")
    names = _names()[0]
    return {names[row["spelled"][0]]: row["spelled"][0] for row in reversed(list(rows.values()))}


@lru_cache(maxsize=256)
def name_of(unit: Unit) -> str:
    """A short name of a unit: `ft`, `cm²`, `mi/h`, `apple`."""
    if unit == PERCENT:
        return "%"
    names = _spelled()
    for power, sign in ((1, ""), (2, "²"), (3, "³")):
        for one, name in names.items():
            if len(one.kinds) == len(unit.kinds) and one**power == unit:
                return name + sign
    above = [part for part in unit.kinds if part[1] > 0]
    below = [(kind, -n) for kind, n in unit.kinds if n < 0]
    for one, name in names.items():
        if list(one.kinds) == above:
            for other, under in names.items():
                if list(other.kinds) == below and one.size == unit.size * other.size:
                    return f"{name}/{under}"
    return " per ".join(kind for kind, _ in (*above, *below))
