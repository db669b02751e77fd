"""Words for numbers and signs, in English and Spanish, written as numbers and signs."""

from __future__ import annotations

from functools import cache, lru_cache

from bot.answers.tables import table
from bot.maths.patterns import regex

_TOKEN = regex(r"( ?)([a-z]+|\d*\.\d*\(\d+\)|\d*\.?\d+|[^ ])")
HAS_WORDS = regex(r"[a-z]{2}")
_AND = frozenset(("and", "&", "y", "con", "n"))
_PLACES = frozenset(("hundreds", "thousands", "millions"))  # alone they name a place, not a number
_SOUNDS_LIKE = {"too": "two", "to": "two", "for": "four", "fore": "four", "ate": "eight", "won": "one"}
"""Behind a tens word and a hyphen: `seventy-too`."""
_BEFORE_PART = frozenset(("a", "an", "one", "un", "una"))


@cache
def _tables() -> tuple[dict[str, int], dict[str, int], dict[str, int], dict[str, int], dict[str, int]]:
    rows = _file()
    return rows["numbers"], rows["tens"], rows["hundreds"], rows["scales"], rows["parts"]  # type: ignore[return-value]


@cache
def _file() -> dict[str, dict[str, object]]:
    return table("spoken")


@cache
def _phrases(with_orders: bool) -> dict[str, list[tuple[tuple[str, ...], str]]]:
    """Phrases by their first word, the longest first."""
    found: dict[str, dict[tuple[str, ...], str]] = {}
    for name in ("signs", "orders") if with_orders else ("signs",):
        for phrase, sign in _file()[name].items():
            words = tuple(phrase.split())
            found.setdefault(words[0], {})[words] = str(sign)
    return {first: sorted(some.items(), key=lambda p: -len(p[0])) for first, some in found.items()}


@cache
def number_words() -> frozenset[str]:
    """Every word that can begin a number."""
    numbers, tens, hundreds, scales, parts = _tables()
    return frozenset((*numbers, *tens, *hundreds, *scales, *parts))


def size_of_part(word: str) -> int | None:
    """How many such parts make a whole: 1000 for `thousandths`; None for a word that is no part."""
    return _tables()[4].get(word)


@cache
def sign_words() -> frozenset[str]:
    """Every word of a phrase that stands for a sign."""
    return frozenset(w for name in ("signs", "orders") for phrase in _file()[name] for w in phrase.split())


@cache
def _long_words() -> frozenset[str]:
    return frozenset(word for word in (*number_words(), *sign_words()) if len(word) > 5)


@lru_cache(maxsize=1024)
def _unslipped(word: str) -> str:
    """A word for a number or sign with one letter wrong: `thosand`, `negitive`. Any other word as it is."""
    from rapidfuzz.distance import OSA

    if word in _long_words():
        return word
    near = [one for one in _long_words() if OSA.distance(word, one, score_cutoff=1) == 1]
    meant = {_file()["signs"].get(one, one) for one in near}  # percent and persent are one
    return near[0] if len(meant) == 1 else word


@lru_cache(maxsize=256)
def _parted(word: str) -> list[str]:
    """The words of a number written as one: `seventytwo`, `treintaydos`."""
    numbers, tens, _, _, _ = _tables()
    for ten in tens:
        unit = word.removeprefix(ten)
        unit = unit[1:] if ten.endswith("a") and unit[:1] == "y" else unit
        if unit != word and 0 < numbers.get(unit, 0) < 10:
            return [ten, unit]
    return []


@lru_cache(maxsize=256)
def _part_meant(word: str) -> str | None:
    """The word for a part that has one letter wrong: `fiths`, `forths`, `twelths`."""
    from rapidfuzz.distance import OSA

    near = [one for one in _tables()[4] if len(one) > 4 and OSA.distance(word, one, score_cutoff=1) == 1]
    return near[0] if len(near) == 1 else None


def spoken(text: str, *, orders: bool = False) -> str:
    """The text with words for numbers and signs replaced; other words stay.

    `orders` also reads words like *at least*. The text is normal and in small letters.
    """
    if not HAS_WORDS.search(text):
        return text
    return _Speech(text, orders).written()


class _Speech:
    """One pass over the words of a text."""

    def __init__(self, text: str, orders: bool) -> None:
        self.spaces: list[str] = []
        self.words: list[str] = []
        for space, word in _TOKEN.findall(text):
            self.spaces.append(space)
            plain = len(word) < 6 or not word.isalpha()
            for n, piece in enumerate([word] if plain else _parted(word) or [_unslipped(word)]):
                self.spaces += [" "] * bool(n)
                self.words.append(piece)
        self.orders = orders
        self.numbers, self.tens, self.hundreds, self.scales, self.parts = _tables()
        for i in range(1, len(self.words) - 1):
            if self.words[i] == "-" and self.words[i - 1] in self.tens and not self.spaces[i + 1]:
                self.words[i + 1] = _SOUNDS_LIKE.get(self.words[i + 1], self.words[i + 1])

    def word(self, i: int) -> str:
        return self.words[i] if i < len(self.words) else ""

    def written(self) -> str:
        out: list[str] = []
        phrases = _phrases(self.orders)
        i = 0
        while i < len(self.words):
            word = self.words[i]
            space = self.spaces[i]
            found = self.power(i) or self.sign(i, phrases) or self.number(i)
            if found is None:
                out.append(space + word)
                i += 1
                continue
            text, i = found
            out.append((" " if space else "") + text)
        return "".join(out).strip()

    # Signs -----------------------------------------------------------------------------------------

    def sign(self, i: int, phrases: dict[str, list[tuple[tuple[str, ...], str]]]) -> tuple[str, int] | None:
        for words, sign in phrases.get(self.words[i], ()):
            if tuple(self.words[i : i + len(words)]) == words:
                if (
                    sign == "*"
                    and i
                    and self.words[i - 1].isalpha()
                    and len(self.words[i - 1]) > 1
                    and self.words[i - 1] not in number_words()
                    and words == ("por",)
                ):
                    return None  # kilometros por hora
                if words[0] == "time" and not self._operand(i + 1):
                    return None
                if words == ("entre",) and not (
                    i and (self.words[i - 1][-1:].isdigit() or (len(self.words[i - 1]) == 1 and i == 1))
                ):
                    return None
                return sign, i + len(words)
        return None

    def _operand(self, i: int) -> bool:
        word = self.word(i)
        return (
            word[:1].isdigit() or word in self.numbers or word == "(" or (len(word) == 1 and word.isalpha())
        )

    def power(self, i: int) -> tuple[str, int] | None:
        """`to the 5th`, `to the seventh power`, `a la quinta`."""
        if (self.words[i] == "to" and self.word(i + 1) == "the") or (
            self.words[i] == "a" and self.word(i + 1) == "la"
        ):
            j = i + 2
        else:
            return None
        sign = ""
        if self.word(j) in ("-", "negative", "minus", "menos"):
            sign, j = "-", j + 1
        word = self.word(j)
        if word in self.parts:
            exponent, j = str(self.parts[word]), j + 1
        elif word == "second":
            exponent, j = "2", j + 1
        elif word.isdigit():
            exponent, j = word, j + 1
            if self.word(j) in ("st", "nd", "rd", "th"):
                j += 1
        elif word in self.numbers:
            exponent, j = str(self.numbers[word]), j + 1
        elif word.isalpha() and (len(word) == 1 or word[1:] == "th"):
            exponent, j = word[0], j + 1
        else:
            return None
        if self.word(j) in ("power", "potencia"):
            j += 1
        return f"^{sign}{exponent}", j

    # Numbers -----------------------------------------------------------------------------------------

    def number(self, i: int) -> tuple[str, int] | None:
        """A number in words, or digits with words about them: `320 thousand`, `2 and a half`."""
        word = self.words[i]
        if word in ("point", "punto", "decimal"):
            places, j = self.places(i + 1)
            return (f"0.{places}", j) if places else None
        if word in ("a", "an"):
            if self.word(i + 1) in self.parts and self.word(i + 1) not in ("media", "cuarto"):
                return f"1/{self.parts[self.word(i + 1)]}", i + 2
            if self.word(i + 1) in self.scales or self.word(i + 1) in ("dozen", "half", "couple"):
                found = self.cardinal(i + 1)
                return found and (found[0], found[1])
            return None
        if word in ("half", "quarter", "medio", "media", "mitad", "tercio", "cuarto"):
            return f"1/{self.parts[word]}", i + (2 if self.word(i + 1) in ("a", "an") else 1)
        if self.word(i + 1) == "oh" and 0 < self.numbers.get(word, 0) < 10:
            last = self.numbers.get(self.word(i + 2), 0)
            return (f"{self.numbers[word]}0{last}", i + 3) if 0 < last < 10 else None
        digits = word[0].isdigit() or word[0] == "."
        if not digits and word not in number_words():
            return None
        found = self.cardinal(i)
        if found is None:
            return None
        value, j = found
        if self.word(j) in ("point", "punto", "coma"):
            places, k = self.places(j + 1)
            if places:
                return self.scaled(f"{value}.{places}", k)
        part = self.part(j) if not (digits and self.word(j - 1) == "/") else None
        if part is not None:
            return f"{value}/{part[0]}", part[1]
        if self.word(j) in _AND:
            fraction = self.fraction(j + 1)
            if fraction is not None:
                return f"{value} {fraction[0]}", fraction[1]
        if digits and j == i + 1:
            return None  # plain digits: nothing to write anew
        return value, j

    def part(self, i: int) -> tuple[int, int] | None:
        """What stands under the bar: `fourths`, `twenty fifths`."""
        word = self.word(i)
        if word == "-" and not self.spaces[i]:
            i, word = i + 1, self.word(i + 1)
        if word in self.parts:
            return self.parts[word], i + (2 if self.word(i + 1) in ("parte", "partes") else 1)
        if word.endswith(("th", "ths")) and (meant := _part_meant(word)):
            return self.parts[meant], i + 1
        return None

    def fraction(self, i: int) -> tuple[str, int] | None:
        """The fraction of a mixed number: `a half`, `three quarters`, `1/2`, `half`, `cuarto`."""
        word = self.word(i)
        if word in self.parts:
            return f"1/{self.parts[word]}", i + 1
        if word in _BEFORE_PART and self.word(i + 1) in self.parts:
            return f"1/{self.parts[self.word(i + 1)]}", i + 2
        if word.isdigit() and self.word(i + 1) == "/" and self.word(i + 2).isdigit():
            return f"{word}/{self.word(i + 2)}", i + 3
        if not word or (word not in self.numbers and not word.isdigit()):
            return None
        found = self.cardinal(i)
        if found and (part := self.part(found[1])) is not None:
            return f"{found[0]}/{part[0]}", part[1]
        if found and self.word(found[1]) in ("over", "sobre"):
            below = self.cardinal(found[1] + 1)
            if below:
                return f"{found[0]}/{below[0]}", below[1]
        return None

    def places(self, i: int) -> tuple[str, int]:
        """Digits after the point: `seven five`, `75`, `seventy five`, `zero five`."""
        digits = ""
        while True:
            word = self.word(i)
            if word.isdigit():
                digits, i = digits + word, i + 1
            elif word in self.numbers and self.numbers[word] < 100:
                digits, i = digits + str(self.numbers[word]), i + 1
            elif word == "oh" or word == "o":
                digits, i = digits + "0", i + 1
            elif word in self.tens:
                value = self.tens[word]
                unit = self.numbers.get(self.word(i + 1), 0)
                if 0 < unit < 10:
                    value, i = value + unit, i + 1
                digits, i = digits + str(value), i + 1
            else:
                return digits, i

    def scaled(self, digits: str, i: int) -> tuple[str, int]:
        scale = self.scales.get(self.word(i))
        if scale is None:
            return digits, i
        whole, _, places = digits.partition(".")
        zeros = len(str(scale)) - 1
        if len(places) <= zeros:
            return str(int(whole + places.ljust(zeros, "0"))), i + 1
        return f"{int(whole + places[:zeros])}.{places[zeros:]}", i + 1

    def cardinal(self, i: int) -> tuple[str, int] | None:
        """A whole number, and where it ends: `three hundred and five`, `treinta y seis`, `2 million`."""
        word = self.word(i)
        if word[:1].isdigit() or word[:1] == ".":
            if self.word(i + 1) not in self.scales or "(" in word:
                return word, i + 1
            amount, after = self.scaled(word, i + 1)
            scale = self.scales[self.word(i + 1)]
            if self.scales.get(self.word(after + 1), scale) < scale and self.word(after).isdigit():
                rest = self.cardinal(after)  # 3 thousand 5 hundred
                if rest is not None and amount.isdigit() and rest[0].isdigit():
                    return str(int(amount) + int(rest[0])), rest[1]
            return amount, after
        total = 0
        group: int | None = None
        start = i
        while True:
            word = self.word(i)
            value = self.numbers.get(word)
            if value is not None and self._fits(group, value):
                group = (group or 0) + value
            elif word in self.tens and (group is None or (group >= 100 and group % 100 == 0)):
                group = (group or 0) + self.tens[word]
            elif word in self.hundreds and group is None:
                group = self.hundreds[word]
            elif word in self.scales and not (i == start and word in _PLACES):
                scale = self.scales[word]
                if scale == 100:
                    if group is not None and (group == 0 or group >= 100):
                        break
                    group = (1 if group is None else group) * 100
                elif total and total % (scale * 1000):
                    break
                else:
                    total += (1 if group is None else group) * scale
                    group = None
                    if not self._goes_on(i + 1):
                        i += 1
                        break
            elif word in ("and", "y", "-") and i > start and self._joins(i, group):
                pass
            else:
                break
            i += 1
        if i == start:
            return None
        return str(total + (group or 0)), i

    def _fits(self, group: int | None, value: int) -> bool:
        if group is None:
            return True
        if value == 0:
            return False
        return (group % 100 == 0 and group > 0) or (value < 10 and group % 10 == 0 and group % 100 >= 20)

    def _goes_on(self, i: int) -> bool:
        word = self.word(i)
        if word == "and":
            word = self.word(i + 1)
        return word in self.numbers or word in self.tens or word in self.hundreds

    def _joins(self, i: int, group: int | None) -> bool:
        """Whether `and`, `y` or a hyphen goes on with the same number: `hundred and five`, `treinta y seis`."""
        word, after = self.words[i], self.word(i + 1)
        value = self.numbers.get(after, self.tens.get(after))
        if word == "-" and after in self.scales:
            return not self.spaces[i] and group is not None
        if word == "-" and value is not None and value < 10 and self.word(i + 2) in self.parts:
            return not self.spaces[i] and group is not None and group % 10 == 0 and group % 100 >= 20
        if value is None or self.word(i + 2) in self.parts:
            return False
        if word == "and":
            return group is None or (group >= 100 and group % 100 == 0)
        if word == "y":
            return group is not None and group % 10 == 0 and group % 100 >= 30 and value < 10
        return (
            not self.spaces[i] and group is not None and group % 10 == 0 and group % 100 >= 20 and value < 10
        )
