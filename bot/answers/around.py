"""What stands around an answer is taken away: greetings, hedges, reasons, earlier tries, equals signs.

The rules are R2 to R4 of the decisions in the README beside this file.
"""

from __future__ import annotations

import re

from bot.maths.patterns import regex

TICKS = regex(r"[👍👎✅❌✓✔✗✘]")
"""Around a number they cheer; to a question they may be the answer."""
WORD = regex(r"[a-z]{2}")
DIGIT = regex(r"\d")

_ACCENTS = str.maketrans("áàâäãéèêëíìîïóòôöõúùûüñç", "aaaaaeeeeiiiiooooouuuunc")
_APOSTROPHE = regex(r"(?<=[a-z])'(?=[a-z])")
_SPACES = regex(r" {2,}")
_REASON = regex(
    r"\b(?:because|becuase|becouse|becaus|becuz|bcuz|bcause|bcs|bc|cuz|coz|since|porque|por que|ya que|"
    r"check(?:ed|ing)?\b(?! )|check:? (?=[-\d(])|"
    r"puesto que|dado que)\b.*"
    r"|(?:,|\b(?:but|and|so)\b)? ?(?<=[ ,])\bi (?!(?:got|get|think|thought|guess|mean|meant|say|said|have|found|put|"
    r"dont|do not|cant|give|hate|believe|hope|know)\b)[a-z]{3,}\b[^\d=<>]{0,200}$"
    r"|(?<![ ,.;])[ ,.;]{1,9}(?:but |pero )?(?:im |i am )?"
    r"(?:not (?:so |very |really |too |totally |100% )?sure|no estoy (?:muy |tan )?segur[oa])\b[^\d=<>]{0,200}$",
    re.DOTALL,
)
_AGAIN = regex(
    r"[ ,.;:!]*\b(?:no,? (?:wait|sorry|espera)|wait,? no|oh wait|oh no|i mean|i meant|actually|oops|ups|"
    r"whoops|sorry|"
    r"my bad|scratch that|correction|change that to|changed my mind|espera|perdon|digo|quiero decir|"
    r"quise decir|"
    r"mejor dicho|wait)\b(?:[ ,;:!]|\.(?![\d(]))*"
)
_NO = regex(
    r"[ ,.;:!]+(?:no|nope)\b(?![ ,.;:!]*(?:more|less|great|few|big|small|sol|wait|rem|res|left|answ|real|num|"
    r"val|hay|"
    r"tiene|men|may|mas|es may|es men|puede|debe|exis|equal))(?:[ ,;:!]|\.(?![\d(]))*"
)
_NOT = regex(r"^(.*\d\S{0,20})[ ,]+(?:not|and not|isnt) \S*\d.*$")
_NOT_BUT = regex(r"^(?:its )?not -?[\d./]+(?:,| but) (?:its )?(?=[-\d])")
_SO = regex(
    r"[ ,.;:]*(?:\b(?:so|therefore|thus|hence|entonces|por lo tanto|asi que|luego)\b|∴|→|⇒|[-=]+>+)"
    r"(?:[ ,;:]|\.(?![\d(]))*"
)
_OR_SO = regex(
    r"[ ,]+or (?:so|something)\b|[ ,.!]+(?:its |it was |that was |this is |thats )?"
    r"(?:so|too|very|really|super) (?:easy|ez|hard|simple|boring|fun|confusing)\b"
)
_OR = regex(
    r" *(?:\bor maybe\b|\bor even\b|\bor else\b|\bor\b|\bo tal vez\b|\bo quizas?\b|\?+(?= ?[^ ?]))[ ,]*"
)
_O = regex(r"(?<=[\d%)]) o (?=[-+$(]?\d)")
_HELP = regex(
    r"\b(?:idk|i dk|dunno|i (?:dont|do not|donot|dnt) (?:really |even )?(?:know|kno|no|get|understand|"
    r"remember|have)|"
    r"dont (?:know|kno|get|understand)|no idea|no clue|havent (?:a|any) (?:idea|clue)|"
    r"help|helpme|hint|clue|im (?:so )?(?:stuck|confused|lost)|so confused|i am (?:stuck|confused|lost)|"
    r"i give up|give up|i hate (?:this|math|maths|it)|"
    r"skip|pass|show me|tell me|explain|what does (?:it|this|that) mean|what do (?:i|you|we)|how do (?:i|"
    r"you|u|we)|"
    r"how does|how to|what is this|whats this|what is that|can you|can i|cant do|i cant|i can not|too hard|"
    r"no (?:lo )?se|nose|no (?:lo )?entiendo|no comprendo|no (?:me )?acuerdo|ayuda|ayudame|pista|ni idea|"
    r"que (?:significa|es esto|hago|quiere decir)|como (?:se hace|lo hago|hago)|me rindo|saltar|paso|"
    r"estoy perdid[oa])\b"
)
_WHOLE_HELP = frozenset(
    ("?", "??", "???", "????", "what", "what?", "huh", "huh?", "how", "how?", "wut", "stuck", "confused", "next",
     "hard", "its hard", "que", "que?", "como", "como?", "no puedo", "dont know", "not a clue", "ayuda", "sos", "lost")
)  # fmt: skip
_LEAD = regex(
    r"(?:(?:the |my |our |la |el |mi )?(?:final |correct |right |new )?"
    r"(?:answer|anwser|awnser|asnwer|ans|answers|solution|solutions|result|respuesta|respuestas|solucion|"
    r"resultado|equation|"
    r"expression|ecuacion|expresion|inequality|desigualdad|value|valor|word|palabra|option|opcion|letter|"
    r"letra|choice|"
    r"coordinates|coordenadas|ratio|razon|rule|function|formula|factors|total|it|that|this|time(?= ?[:=]))"
    r"(?: should be| would be| will be| must be| could be| might be| comes out to| came out to|"
    r" turns out to be| is| was| are"
    r"| equals| es| son| seria|s)?(?: ?[:=] ?| |$)(?:to be )?"
    r"|(?:its|it is|it was|thats|that is|theyre|they are|there are|there is|i think|i thought|i believe|"
    r"i guess|i say|"
    r"i said|id say|i got|i get|i found|i have|i did|i put|i chose|i pick|i picked|i choose|we got|got|"
    r"ive got|it be|(?:u|you|we) (?:get|would get|have)|i would say|"
    r"creo que|creo q|pienso que|me da|me dio|me sale|me salio|obtuve|tengo|yo creo que|sera|seria|es|son|is|maybe|"
    r"perhaps|"
    r"probably|prob|possibly|definitely|obviously|um|uh|umm|uhh|hmm|hm|ok|okay|oh|well|then|and|hi|hello|"
    r"hey|please|pls|"
    r"about|around|approximately|aproximadamente|approx|aprox|roughly|nearly|almost|casi|mas o menos|quizas|"
    r"tal vez|"
    r"equals|equal to|be|to be|like|just|solve|simplify|simplified|now|question|number \d+ is|sure|easy|a(?= ?:))"
    r"(?: ?[:,] ?| +|$)|[≈~] ?)+"
)  # fmt: skip
_TAIL = regex(
    r"(?:[ ,.;:!?]+(?:i think|i believe|i guess|i hope|maybe|probably|right|correct|ok|okay|is that right|"
    r"is it right|"
    r"am i right|please|pls|lol|haha|hehe|thx|thanks|thank you|gracias|creo|verdad|final answer|is my answer|"
    r"is the answer|es la respuesta|i know|for sure|obviously|duh|yay|done|bro|sir|miss|teacher|\(i think\)|"
    r"idk|"
    r"no|or something|or so))+[ ,.;:!?]*$"
)  # fmt: skip


_PLACES = regex(r"\.\d+$")
_POINT_FIRST = regex(r"\.[\d(]")
_REPEATS = regex(r"\.\d+ ?\.\.+$")
_DOTS_FIRST = regex(r" ?\.\.+")
_SMILEY = regex(r"(?:^| )(?:[:;]['-]?[()dpo]+|xd+|<3|\^\^|:v)$")


def small(text: str) -> str:
    """Small letters without accents, apostrophes inside words dropped."""
    text = text.lower()
    if not text.isascii():
        text = text.translate(_ACCENTS)
        if "̇" in text:
            text = text.replace("̇", "")
    if "'" in text:
        text = _APOSTROPHE.sub("", text)
    return text


def trimmed(text: str) -> str:
    """Without quotation marks around and punctuation behind; dots that repeat a decimal stay."""
    if text[:1].isdigit() and text[-1:].isdigit():
        return text
    text = _SMILEY.sub("", text.strip(" \n`_"))
    if text[:1] == "=" and len(text) > 1:
        text = text.lstrip("= ") or text
    if text[:1] in "\"'" and text[:1] == text[-1:]:
        text = text[1:-1].strip(" \n")
    text = text.lstrip("\"'")
    if text[-1:] in "\"'" and not text[-2:-1].isdigit():
        text = text.rstrip("\"'")
    if text[:1] == "*" == text[-1:] and len(text) > 2:
        text = text.strip("*")
    end = text.rstrip(" \n.!?;`")
    if end != text:
        tail = text[len(end) :]
        dots = tail.strip(" ")[:3]
        if dots.startswith("..") and _PLACES.search(end):
            return end + (dots if dots == "..." else "..")
        text = end.rstrip(" ,") if ".." in tail else end
    return text.lstrip(" ") if _POINT_FIRST.match(text) else text.lstrip(" .!?;")


def asks_for_help(text: str) -> bool:
    """Whether these words ask for help; an answer that stands beside them is graded instead."""
    if text in _WHOLE_HELP or (text and not text.strip("? ")):
        return True
    return not DIGIT.search(text) and bool(WORD.search(text)) and bool(_HELP.search(text))


def without_help(text: str) -> str:
    """`idk maybe 7` without its first words."""
    if not WORD.search(text) or not _HELP.search(text):
        return text
    return _HELP.sub(" ", text).strip(" ,;:!?")


def without_reason(text: str) -> str:
    """What stands before *because* or *since*, `i did it in my head` or *not sure*, where something does."""
    found = _REASON.search(text)
    return _cut(text, found.start()) if found and found.start() > 0 else text


def _cut(text: str, end: int) -> str:
    """The text up to there without its last punctuation, but with dots that repeat a decimal."""
    rest = text[:end].rstrip(" ,;:(")
    return rest if _REPEATS.search(rest) else rest.rstrip(" .,;:(")


def without_lead(text: str) -> str:
    """`the answer is`, `i got`, `it's` and hedges dropped from the front, `i think` from the back."""
    if WORD.search(text) or text[:1] in "≈~":
        found = _LEAD.match(text)
        if found and found.end() < len(text):
            text = text[found.end() :]
        found = _TAIL.search(text)
        if found and found.start() > 0:
            dots = _DOTS_FIRST.match(text, found.start())
            text = _cut(text, dots.end() if dots else found.start())
    return text.strip()


def newest(text: str, no: bool = True) -> str:
    """The last of several answers: after *no*, *wait*, *i mean*, *so*, an arrow."""
    if WORD.search(text):
        text = _OR_SO.sub("", text)
        parts = [part for part in _AGAIN.split(text) if part and part.strip(" ,.;:!?")]
        text = parts[-1] if parts else text
        if (found := _NOT.match(text)) is not None:
            text = found.group(1)
        text = _NOT_BUT.sub("", text)
        if no:
            parts = [part for part in _NO.split(text) if part.strip(" ,.;:!?")]
            text = parts[-1] if parts else text
        parts = [part for part in _SO.split(text) if part.strip(" ,.;:!?")]
        text = parts[-1] if parts else text
    elif ">" in text or "→" in text or "⇒" in text or "∴" in text:
        parts = [part for part in _SO.split(text) if part.strip()]
        text = parts[-1] if parts else text
    return text.strip()


def alternatives(text: str) -> list[str]:
    """Answers between which `or` or a question mark stands."""
    if "or" in text or "?" in text or " o " in text:
        text = _O.sub(" or ", text)
        return [part.strip() for part in _OR.split(text)]
    return [text]


def last_line(text: str) -> str:
    """The last line that holds anything to grade."""
    if "\n" not in text:
        return text
    lines = [line for line in text.split("\n") if line.strip()]
    for line in reversed(lines):
        if DIGIT.search(line):
            return line
    return lines[-1] if lines else ""


def sides(text: str) -> list[str]:
    """What stands between equals signs; an empty first side (`= 7`) is dropped."""
    if "=" not in text:
        return [text]
    parts = [part.strip() for part in text.split("=")]
    while parts and not parts[0]:
        parts.pop(0)
    return parts
