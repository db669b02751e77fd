"""Forms answered with a word or a letter: choice, yes-no, words."""

from __future__ import annotations

import re
from functools import cache, lru_cache

from bot.answers.around import newest, small
from bot.answers.finding import Finding
from bot.answers.key import Key
from bot.answers.tables import table
from bot.maths import Unreadable, normal
from bot.maths.patterns import regex
from bot.vocabulary import Verdict

_WORD = regex(r"[a-z]+")
MOST_WORDS = 40
"""Words of one reply that are looked at: bounds the search for spelling slips."""

# Choice ------------------------------------------------------------------------------------------------

_DRESS = frozenset(
    (
        "the", "answer", "is", "its", "it", "option", "opcion", "choice", "letter", "letra", "la", "el", "one", "i",
        "think", "pick", "picked", "choose", "chose", "say", "said", "would", "es", "respuesta", "ans",
        "number", "my",
        "guess", "maybe", "probably", "definitely", "go", "with", "for", "creo", "que", "got", "so", "and", "then",
        "be", "must", "should", "correct", "right", "final", "put", "id", "im", "going", "ok", "okay",
        "please", "inciso",
        "would", "have", "to", "was", "that", "thats", "because", "um", "idk", "like", "def", "yo", "elijo",
        "answers",
    )
)  # fmt: skip
_LETTERED = regex(r"^\W*(?:option |choice |answer |letter )?\(?([a-j])\s*[).:\-]")
_NOT = frozenset(("not", "no", "isnt", "except"))
_IS_IT = regex(r"\bisnt it\b")


def grade_choice(text: str, key: Key) -> Finding:
    """A letter in any dress, or one of the listed wordings. Raises Unreadable."""
    # A button may hold maths, |−3| or 2 × 3, so it is read as a reply is: signs written in one way.
    listed = [key.answer] if key.answer in key.choices else key.answer.split("|")
    wordings = [_as_read(one) for one in listed]
    letter = next((one for one in wordings if len(one) == 1 and one.isalpha()), None)
    choices = [_as_read(one) for one in key.choices]
    if text.strip() in choices:
        return _is(text.strip() in wordings)
    if any(c.isdigit() for c in text) and (picked := _spaced_otherwise(text, choices)) is not None:
        return _is(picked in wordings)
    if letter is None and key.answer in key.choices and len(key.choices) <= 10:
        letter = "abcdefghij"[key.choices.index(key.answer)]
        lettered = True
    else:
        lettered = letter is not None
    text = newest(_IS_IT.sub("", text))
    for found, sign in (("<", "less"), (">", "greater"), ("=", "equal")):
        if text.strip() == found and (sign in wordings or sign in choices):
            return _is(sign in wordings)
    if any(len(one) > 1 for one in wordings):
        finding = _wording(text, key, wordings, choices)
        if finding is not None:
            return finding
    if not lettered or letter is None:
        raise Unreadable("no-choice")
    return _letter(text, letter)


def _as_read(wording: str) -> str:
    return small(normal(wording)).strip()


_GAPS = regex(r"(?<!\d)\s+|\s+(?!\d)|(?<=\d),(?=\d{3}(?!\d))")


def _spaced_otherwise(text: str, choices: list[str]) -> str | None:
    """The one choice that differs from what was typed by spaces and thousands commas only: 9-4 for 9 − 4."""
    typed = _GAPS.sub("", text)
    found = [one for one in choices if _GAPS.sub("", one) == typed]
    return found[0] if len(found) == 1 else None


def _is(right: bool) -> Finding:
    return Finding(Verdict.RIGHT if right else Verdict.WRONG)


def _letter(text: str, letter: str) -> Finding:
    if (found := _LETTERED.match(text)) and not re.search(r"\b[a-j]\b", text[found.end() :]):
        return _is(found.group(1) == letter)
    words = _WORD.findall(text)
    if len(words) > MOST_WORDS or re.search(r"[|*^$/{}=<>]", text):
        raise Unreadable("no-choice")
    letters = [word for word in words if len(word) == 1 and word in "abcdefghj"]
    others = [word for word in words if len(word) > 1 and word not in _DRESS]
    if "a" in letters and (len(letters) > 1 or others) and not re.match(r"\W*a(?: is\b|\W*$)", text):
        rest = [one for one in letters if one != "a"]
        article = re.search(r"\ba (?!or\b|and\b|o\b)[a-z]{2,}", text) is not None
        if article and rest:
            letters = rest
        elif article:
            letters = []
    if len(set(letters)) != 1:
        raise Unreadable("several-answers" if letters else "no-choice")
    if any(word in _NOT for word in others):
        if letters[0] == letter:
            return _is(False)
        raise Unreadable("no-choice")
    return _is(letters[0] == letter)


def _wording(text: str, key: Key, wordings: list[str], choices: list[str]) -> Finding | None:
    mine = [one for one in wordings if len(one) > 1]
    text = text.strip(" .,!?;:\"'()")
    others = tuple(one for one in choices if one not in wordings)
    if text in mine:
        return _is(True)
    if text in others:
        return _is(False)
    if len(text) < 2 or not _WORD.search(text):
        return None
    try:
        return grade_words(text, Key("|".join(mine), "words", choices=others))
    except Unreadable as trouble:
        if trouble.kind == "several-answers":
            raise
        return None


# Yes or no ---------------------------------------------------------------------------------------------

_YES = frozenset(
    (
        "yes", "y", "yep", "yeah", "yea", "ya", "yah", "yup", "yess", "yesss", "yas", "yeas", "yse", "eys",
        "ys", "ye", "yees",
        "true", "t", "tru", "si", "sii", "sip", "claro", "verdadero", "cierto", "v", "correct", "correcto", "right",
        "sure", "absolutely", "definitely", "certainly", "indeed", "affirmative", "always",
        "obvio", "👍",
        "✅", "✓", "✔", "yeh", "ofc", "yus", "yuh", "yessir", "uhhuh", "verdad", "totally",
    )
)  # fmt: skip
_NO_WORDS = frozenset(
    (
        "no", "n", "nope", "nop", "nah", "na", "noo", "nooo", "on", "nel", "false", "f", "fals", "falso", "incorrect",
        "incorrecto", "wrong", "never", "not", "nunca", "👎", "❌", "✗", "✘", "negative", "noup", "naw", "nay",
    )
)  # fmt: skip
_TOKENS = regex(r"[a-z]+|\d+|[👍👎✅❌✓✔✗✘]")
_SAYS_NO = regex(
    r"\b(?:is not|isnt|are not|arent|does not|doesnt|do not|dont|can not|cannot|cant|wont|wasnt|didnt|"
    r"was not|will not"
    r"|not really|of course not|no way|no es|no son|no lo es|para nada)\b"
)
_SAYS_YES = regex(
    r"\b(?:it is|they are|it does|it can|they do|it was|it will|of course|por supuesto|lo es|i do|we can|"
    r"it has)\b"
)
_UNSURE = regex(
    r"\b(?:not sure|unsure|maybe|perhaps|depends|sometimes|no estoy segur[oa]|quizas?|tal vez|a veces)\b"
)
_FILLERS = frozenset(
    ("i", "think", "so", "the", "answer", "is", "it", "its", "creo", "que", "um", "well", "would", "say")
)


def grade_yes_no(text: str, key: Key) -> Finding:
    """Yes, no, and the many ways to say so; reasons are not graded. Raises Unreadable."""
    expected = key.answer.split("|")[0].strip().lower() in _YES
    if _TURNED_TO_NO.search(text):
        return _is(not expected)
    if _SO_IT_SEEMS.match(text):
        return _is(expected)
    said = _said(newest(text, no=False))
    return _is(said == expected)


_SO_IT_SEEMS = regex(r"^\W*(?:well,? |um,? )?(?:i (?:think|guess|believe|suppose) so|creo que si)\W*$")
_TURNED_TO_NO = regex(r"^(?:yes|y|yep|yeah|ya|si|true)\b.*\b(?:wait|actually|i mean|espera|digo),? no\W*$")
_EITHER = regex(r"\b(?:yes|y|true|si) ?(?:or|/|o|and|y|&) ?(?:no|n|false)\b")
_STRESSING = frozenset(
    (
        "right",
        "sure",
        "definitely",
        "absolutely",
        "certainly",
        "totally",
        "always",
        "indeed",
        "claro",
        "obvio",
    )
)
_LONE_YES = frozenset(("yes", "yep", "yeah", "yea", "yup", "si", "👍"))
_LONE_NO = frozenset(("no", "nope", "nah", "n", "false", "👎"))


def _decides(token: str, meant: list[str]) -> bool | None:
    """Whether a token says yes (True) or no (False); `on` for no only where it stands alone."""
    if token in _YES:
        return True
    if token in _NO_WORDS and (token != "on" or len(meant) == 1):
        return False
    return None


def _said(text: str) -> bool:
    text = re.sub(r"([a-z])\1{2,}", r"\1", text)
    unsure = bool(_UNSURE.search(text))
    text = _UNSURE.sub(" ", text)
    tokens = _TOKENS.findall(text)[:MOST_WORDS]
    if re.search(r"\bi dont think\b|\bno creo\b|\bdoubt\b", text):
        return False
    meant = [token for token in tokens if token not in _FILLERS]
    if not meant:
        if _SAYS_YES.search(text):
            return True
        raise Unreadable("no-yes-or-no")
    decisive = [token for token in meant[:5] if _decides(token, meant) is not None]
    if decisive:
        if _EITHER.search(text):
            raise Unreadable("several-answers")
        first, second = decisive[0], decisive[1] if len(decisive) > 1 else ""
        if first in _STRESSING and second:
            first, second = second, ""
        decided = first in _YES
        beside = meant.index(first) + 1 < len(meant) and meant[meant.index(first) + 1] == second
        if beside and second in (_LONE_NO if decided else _LONE_YES):
            raise Unreadable("several-answers")
        return decided
    if unsure and len(meant) > 3:
        raise Unreadable("no-yes-or-no")
    if _SAYS_NO.search(text):
        return False
    if _SAYS_YES.search(text):
        return " not " not in text
    found = {token in _YES for token in meant if token in _YES or token in _NO_WORDS}
    if len(found) == 1 and len(meant) < 8:
        return found.pop()
    raise Unreadable("several-answers" if found else "no-yes-or-no")


# Words -------------------------------------------------------------------------------------------------

_NOUNS = frozenset(
    (
        "triangle", "angle", "angles", "triangles", "line", "lines", "number", "numbers", "property", "polygon",
        "quadrilateral", "term", "point", "function", "event", "events", "percent", "relationship", "value", "set",
        "shape", "pair", "graph", "notation", "law", "decimal", "fraction", "equation", "expression", "variable",
        "side", "sides", "slope", "correlation", "association", "transformation", "axis", "triangulo", "angulo",
        "numero", "propiedad", "data", "solid", "figure", "sample", "population", "theorem", "and", "line",
        "probability", "of",
    )
)  # fmt: skip
_SMALL_WORDS = frozenset(
    ("the", "a", "an", "it", "is", "its", "el", "la", "un", "una", "es", "of", "i", "to")
)
_NOT_FIRST = regex(
    r"^(?:its |it is )?(?:not|isnt|no es|no) (?:an? |the |un |una )?[a-z]+ ?(?:,|;|\bbut\b|\bsino\b|(?= its ))"
    r" ?(?:its |it is |es )?(?=[a-z])(?!not\b|no\b)"
)
_SIGN_WORDS = {"<": "less", ">": "greater", "=": "equal"}


@cache
def _terms() -> dict[str, str]:
    """Every wording of a maths term, to the term it stands for."""
    rows = table("terms")
    found = {}
    for term, wordings in rows.items():
        for wording in (term, *wordings):
            found[wording] = term
    return found


@lru_cache(maxsize=1024)
def _wanted(answer: str) -> tuple[frozenset[str], frozenset[str]]:
    """The wordings that are right, and the terms they stand for."""
    terms = _terms()
    wordings = set()
    stands_for = set()
    for one in answer.lower().split("|"):
        one = " ".join(word for word in _WORD.findall(one) if word not in ("the", "a", "an"))
        wordings.add(one)
        if one in terms:
            stands_for.add(terms[one])
    same = {
        wording
        for wording, term in terms.items()
        if (term in stands_for and wording == term) or term in wordings
    }
    return frozenset(wordings | same), frozenset(stands_for)


def grade_words(text: str, key: Key) -> Finding:
    """One word or a short phrase, spelling slips forgiven. Raises Unreadable."""
    text = newest(text).strip()
    right, terms = _wanted(key.answer)
    before, denied, _ = text.partition(" not ")
    if denied and any(word in _terms() for word in _WORD.findall(before)[:MOST_WORDS]):
        text = before  # acute, not obtuse
    elif (found := _NOT_FIRST.match(text)) is not None and _WORD.findall(text[found.end() :]):
        text = text[found.end() :]  # not acute, obtuse
    if text in _SIGN_WORDS and (_SIGN_WORDS[text] in right or right & {"less", "greater", "equal"}):
        return _is(_SIGN_WORDS[text] in right)
    words = _WORD.findall(text)[:MOST_WORDS]
    if not words:
        if any(c.isdigit() for c in text):
            return _is(False)
        raise Unreadable("no-word")
    others = _other_terms(words, right, terms, key)
    hit = _mentions(words, right)
    if hit:
        if any(word in _NOT for word in words) and not any(
            word in _NOT for one in right for word in one.split()
        ):
            return _is(False)
        if others - _NOUNS or (others and " or " in f" {text} "):
            raise Unreadable("several-answers")
        return _is(True)
    if others:
        return _close_or_wrong(words, right, others)
    slipped = _slips(words, right)
    if slipped == "right":
        return _is(True)
    if slipped == "other":
        return _is(False)
    if any(c.isdigit() for c in text) and all(word in _SMALL_WORDS or len(word) < 2 for word in words):
        return _is(False)
    raise Unreadable("nearly-a-word" if slipped == "near" else "no-word")


def _close_or_wrong(words: list[str], right: frozenset[str], others: set[str]) -> Finding:
    """Another term stands there; a slipped spelling of the expected word beside it makes two answers."""
    rest = [word for word in words if word not in _terms() and word not in _SMALL_WORDS]
    if others <= _NOUNS and rest and _slips(rest, right) == "right":
        return _is(True)
    if rest and _slips(rest, right) == "right":
        raise Unreadable("several-answers")
    if others <= _NOUNS and sum(len(word) > 2 for word in rest) > 1:
        raise Unreadable("no-word")  # all sides are the same
    return _is(False)


def _mentions(words: list[str], right: frozenset[str]) -> bool:
    text = f" {' '.join(words)} "
    return any(f" {one} " in text or f" {one}s " in text for one in right)


def _other_terms(words: list[str], right: frozenset[str], terms: frozenset[str], key: Key) -> set[str]:
    known = _terms()
    own_words = {word for one in right for word in one.split()}
    found = set()
    for size in (1, 2, 3):
        for i in range(len(words) - size + 1):
            phrase = " ".join(words[i : i + size])
            term = known.get(phrase) or known.get(phrase.removesuffix("s"))
            if term and phrase not in own_words and phrase not in right and term not in terms:
                if (
                    phrase.removesuffix("s") in right
                    or term in ("no", "yes")
                    or phrase in ("mas", "menos", "more", "media")
                ) and phrase not in ("more", "media"):
                    continue
                found.add(phrase if phrase in _NOUNS else term)
    for choice in key.choices:
        if f" {choice.lower()} " in f" {' '.join(words)} ":
            found.add(choice.lower())
    return found


def _allowed(length: int) -> int:
    return 0 if length <= 4 else 1 if length <= 7 else 2


def _slips(words: list[str], right: frozenset[str]) -> str:
    """ "right" for a spelling slip of an expected wording, "other" of another term, "near" if close to it."""
    from rapidfuzz.distance import OSA

    best, near = "", False
    for one in right:
        size = len(one.split())
        for i in range(len(words) - size + 1):
            said = " ".join(words[i : i + size])
            if abs(len(said) - len(one)) > 2 or len(said) < 3:
                continue
            distance = OSA.distance(said, one, score_cutoff=3)
            if distance > 2:
                continue
            if distance <= _allowed(len(one)) and not _another_as_close(said, distance, right):
                return "right"
            near = near or len(one) > 3
    for word in words:
        if len(word) > 4 and word not in _SMALL_WORDS:
            for term in _terms():
                if abs(len(term) - len(word)) <= 2 and term not in right and term not in _NOUNS:
                    allowed = _allowed(len(term))
                    if allowed and OSA.distance(word, term, score_cutoff=allowed) <= allowed:
                        best = "other"
                        break
    return best if best and not near else "near" if near else ""


def _another_as_close(said: str, distance: int, right: frozenset[str]) -> bool:
    from rapidfuzz.distance import OSA

    return any(
        abs(len(term) - len(said)) <= distance
        and term not in right
        and OSA.distance(said, term, score_cutoff=distance) <= distance
        for term in _terms()
        if _terms()[term] not in right
    )
