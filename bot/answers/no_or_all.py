"""Words that say that an equation has no solution, or that every number is one."""

from __future__ import annotations

import re
from functools import lru_cache

from bot.answers.spoken import HAS_WORDS
from bot.maths.patterns import regex

_NONE = regex(
    r"\bno (?:\w+ )?(?:solutions?|solucion|soluciones|answers?|numbers?|values?)\b|^none$|\bnone (?:work|"
    r"of them|exist)|"
    r"\bnone\b|∅|^\{ ?\}$|\bempty set\b|\bimpossible\b|\bnot possible\b|\bnever (?:true|works?|equal)|"
    r"\b(?:0|zero|cero) solu|"
    r"\bno (?:hay|tiene|existe)\b|\bsin solu|\bninguna?\b|\bningun\b|\bnothing\b|\bcant be (?:solved|done)|"
    r"^nada$|\bnull set\b|\b(?:isnt|arent|is not|are not) (?:one|any|a)\b|"
    r"\bdoes(?:nt| not) (?:exist|have (?:a|any) (?:solution|answer)|work)|\bcannot be solved|\bunsolvable\b|"
    r"\bimposible\b|"
    r"\bconjunto vacio\b|^dne$|^no$|\bno work"
)
_ALL = regex(
    r"\ball (?:the )?(?:real )?(?:numbers?|reals?|values?|solutions?|of them|x)\b|\ball real\b|^all$|"
    r"\bevery(?: real)? (?:number|value)|"
    r"\bany (?:real )?(?:number|value|x)|\banything\b|\beverything\b|\binfinit|∞|\balways true|\bidentity\b|"
    r"\bidentidad\b|"
    r"\btodos?\b|\btodas?\b|\bcualquiera?\b|\bsiempre\b|\bevery solution|^ℝ$|\bany solution|\bunlimited\b|"
    r"\bnever ?ending|"
    r"\btrue for (?:all|every)|\ba lot of solutions|\binfinate|\binfinet"
)
_COUNTED = regex(r"\b(?:one|1|two|2|three|3|una?|dos) (?:solutions?|answers?|solucion|soluciones)\b")

_NO_WHAT = regex(r"\bno (s[a-z]{5,10})\b")


def special(text: str) -> str | None:
    """ "none" or "all" where the words say so."""
    if not HAS_WORDS.search(text) and "∅" not in text and "∞" not in text and text not in ("{}", "{ }", "ℝ"):
        return None
    if _COUNTED.search(text) and not re.search(r"\bno\b|\bnot\b", text):
        return "counted"
    if _ALL.search(text) and not re.search(r"\bnot all\b|\bno solu", text):
        return "all"
    if _NONE.search(text):
        return "none"
    if (found := _NO_WHAT.search(text)) is not None and _is_solution(found.group(1)):
        return "none"
    return None


@lru_cache(maxsize=256)
def _is_solution(word: str) -> bool:
    """Whether a word is *solution* with a slip or two: `soultion`, `solutoin`."""
    from rapidfuzz.distance import OSA

    return any(OSA.distance(word, one, score_cutoff=2) <= 2 for one in ("solution", "solutions", "solucion"))
