"""A number with its unit as typed, rewritten so that a scan finds it: words, marks and signs plainly."""

from __future__ import annotations

from fractions import Fraction

from bot.answers.expected import Expected
from bot.answers.marks import digits_for_letters, plain_marks
from bot.answers.spoken import HAS_WORDS, number_words, spoken
from bot.answers.units import Unit, Wanted, is_unit
from bot.maths import Unreadable
from bot.maths.patterns import regex
from bot.maths.read import LONGEST

_SPACED_BAR = regex(r" ?/ ?")
_CALCULATOR = regex(r"(?<![a-z\d.])(\d+(?:\.\d+)?|\.\d+) ?e ?([-+]?) ?(\d+)(?![\d.])")
_TIMES_X = regex(r"(?<=[\d)π]) ?x ?(?=[-√π(]?[\d.(√π])")
_CURRENCY_FIRST = regex(
    r"(us\$|usd|[$€£¥]) ?(-?) ?((?:\d[\d.,]*(?: \d{3})*(?: ?/ ?\d+)?|\.\d+)(?: \d+/\d+)?)"
)
_PERCENT_FIRST = regex(r"^%(?:age)?[ :]*(-?[\d.]+(?: ?/ ?\d+)?(?: \d+/\d+)?)$")
_JOINED = regex(r"(?<=\d) ?(?:_|&|and|y) ?(?=\d+ ?/ ?\d)")
_HYPHENED = regex(r"(?<![\d/.])(\d+)( ?)-( ?)(\d+)/(\d+)(?![\d/.])")
_BELOW = regex(
    r"\b(?:below|under|beneath|bajo|por debajo de|debajo de)(?: the)? (?:zero|0|sea|ground|freezing|cero|"
    r"el nivel del mar|nivel del mar)"
    r"(?: level)?\b|"
    r"\b(?:below|under|beneath) the [a-z]+\b|"
    r"(?<=\d) below$|(?<=°) below$|(?<=degrees) below$|(?<=meters) below$|(?<=feet) below$|"
    r"(?<=ft) below$|(?<=m) below$"
)
_HYPHEN_UNIT = regex(r"(?<=\d)-(?=[a-z]{2})")
_PER_NUMBER = regex(r"(?<=\d) per (?=\d)")
_POWER_BEFORE_UNIT = regex(r"(?<=\d) (squared|cubed)(?= [a-z]{2})")
_ONE_AND_A_HALF = regex(r"(?:^|\b(?:an?|one|1|una?) )([a-z]+) (?:and a half|y medi[ao])$")
_OF_A = regex(r"(?<=\d) (?:of|de) (?:an? |una? )?(?=[a-z]{2})")
_K = regex(r"(?<=\d)k(?![a-z])")
_SENTENCE = regex(r"[a-z] [a-z\d$]|\d [a-z]{2,} [a-z]")
_AS_A = regex(
    r"\b(?:as|in|como|en) (?:an? |un |una )?(?:decimal|fraction|percent|percentage|mixed number|whole number|"
    r"number|fraccion|porcentaje|numero mixto)\b(?! of)"
)
_EACH_ONE = regex(r"\b(each|every|cada) (?:one|una?o?)\b(?! (?:third|half|fourth|fifth))")
_FOR_EACH = regex(
    r" (?:for|in) (?:each|every|one|1|an?) (?=hour|minute|second|day|week|pound|lb|kilo|litre|liter|hora|libra)"
)
_WHOLES = regex(r"(?<=\d) wholes?(?= )|(?<!\ba )\b(?:un|una|el|la) (?=\d)")
_LAST_IS = regex(
    r"^.*\b(?:is|are|was|were|equals|es|son|mide|measures|gets|costs|cuesta|recibe|quedan?) "
    r"((?:about |only |just |now )?[-+$]?\d[^=]*)$"
)
_LEFT_OVER = regex(r"(?<=\d) (?:left over|times)$")
_ONE_THING = regex(r"\bone ([a-z]{3,})\b")
_PER_HOUR = regex(r"(?<![a-z])(k?m)(?:p/h|/ph)\b")
_UPPER_COMMA = regex(r"(?<=\d)'(?=\d)")
_ENDING = regex(r"(?<![\d/])(\d+) (\d+)(?:ths?|rds?|nds?)\b")
_PIE = regex(r"(?<![a-z])pie(?![a-z])")
_DEGREE_O = regex(r"(?<![\d.,])(\d+)o$")
_BARS = regex(r"\|([^|]*)\|")
_DANGLING = regex(r"\b(?:and|or|plus|minus|times|over|point|y|mas|menos|negative|remainder) *$")


def rewritten(text: str, want: Expected | None, form: str, asked: Wanted | None) -> tuple[str, bool]:
    """The text written plainly, and whether *below zero* stood there. Raises Unreadable."""
    number = want.number if want else None
    if "k" in text and (asked is None or asked.unit.kinds == (("money", 1),)):
        text = _K.sub(" thousand", text)
    if "pie" in text and want is not None and want.has_pi:
        text = _PIE.sub("π", text)
    if "p" in text and asked is not None:
        text = _PER_HOUR.sub(lambda m: "mph" if m[1] == "m" else "km/h", text)
    if _SENTENCE.search(text):
        text = _from_sentence(text)
    if "'" in text and asked is None:
        text = _UPPER_COMMA.sub(".", text)
    text, negative = _prepared(text, number, asked)
    return _mixed_or_minus(text, want, form), negative


def _prepared(text: str, number: Fraction | None, asked: Wanted | None) -> tuple[str, bool]:
    """Words, marks and signs written plainly; whether *below zero* stood there."""
    volume = asked is not None and any(kind == "length" and n == 3 for kind, n in asked.unit.kinds)
    negative = False
    if any(c in text for c in "oli"):
        if (found := _DEGREE_O.search(text)) and asked is not None and number is not None:
            _zero_or_degrees(found.group(1), number, asked.unit)
        text = digits_for_letters(text, keep_l=volume)
    if "e" in text and (found := _CALCULATOR.search(text)):
        text = _CALCULATOR.sub(lambda m: f"{m[1]}*10^{m[2].strip('+')}{m[3]}", text)
        if len(found.group(3)) > 3:
            raise Unreadable("too-long")
    text = plain_marks(text, wants=abs(number) if number is not None else None)
    if "|" in text:
        text = _BARS.sub(r"abs(\1)", text)
    if HAS_WORDS.search(text):
        text = _ENDING.sub(r"\1/\2", text)
        text = _LEFT_OVER.sub("", text)
        if _DANGLING.search(text):
            raise Unreadable("unfinished")
        if _BELOW.search(text):
            text, negative = _BELOW.sub(" ", text), True
        if asked is not None:
            text = _POWER_BEFORE_UNIT.sub(lambda m: " square" if m[1] == "squared" else " cubic", text)
        if asked is not None and (found := _ONE_AND_A_HALF.search(text)) and is_unit(found.group(1)):
            text = f"{text[: found.start()]}1 1/2 {found.group(1)}"
        text = spoken(text)
        if asked is not None:
            text = _OF_A.sub(" ", text)
    if "x" in text:
        text = _TIMES_X.sub(" * ", text)
    if " per " in text:
        text = _PER_NUMBER.sub("/", text)
    if "-" in text:
        text = _HYPHEN_UNIT.sub(" ", text)
    if "/" in text:
        text = _SPACED_BAR.sub("/", text)
        text = _JOINED.sub(" ", text)
    if "$" in text or "€" in text or "£" in text or "¥" in text or "usd" in text:
        text = _CURRENCY_FIRST.sub(r"\2\3 \1", text)
    if text[:1] == "%":
        text = _PERCENT_FIRST.sub(r"\1%", text)
    if len(text) > LONGEST:
        raise Unreadable("too-long")
    return text, negative


def _from_sentence(text: str) -> str:
    """Without the words of a sentence that hold a number and mean none: `each one gets`, `as a decimal`."""
    text = _AS_A.sub(" ", text)
    text = _EACH_ONE.sub(r"\1", text)
    text = _FOR_EACH.sub(" per ", text)
    text = _WHOLES.sub(" ", text)
    if any(c.isdigit() for c in text):
        text = _ONE_THING.sub(lambda m: m[0] if is_unit(m[1]) or m[1] in number_words() else m[1], text)
    if (found := _LAST_IS.match(text)) is not None:
        text = found.group(1)
    return text.strip(" ,")


def _zero_or_degrees(digits: str, number: Fraction, unit: Unit) -> None:
    """`45o` where 45 degrees are expected: a nought, or the sign for degrees?"""
    if unit.kinds[0][0].startswith(("angle", "temperature")) and Fraction(digits[:99]) == abs(number):
        raise Unreadable("zero-or-degrees")


def _mixed_or_minus(text: str, want: Expected | None, form: str) -> str:
    """`2-1/2` is a mixed number where that is expected or asked for; `2 - 1/2` is asked about."""
    if "-" not in text or "/" not in text:
        return text
    found = _HYPHENED.search(text)
    if found is None or (want is not None and want.letters):
        return text
    whole, before, after, top, bottom = found.groups()
    if int(top) >= int(bottom) or len(bottom) > 6 or len(whole) > 9:
        return text
    mixed = int(whole) + Fraction(int(top), int(bottom))
    is_expected = want is not None and want.number is not None and abs(want.number) == mixed
    if before or after:
        if is_expected and text.lstrip("- (").startswith(found.group()):
            raise Unreadable("mixed-or-minus")
        return text
    if is_expected or form == "mixed":
        return f"{text[: found.start()]}{whole} {top}/{bottom}{text[found.end() :]}"
    return text
