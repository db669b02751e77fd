"""How we say what a word means."""

from __future__ import annotations

from bot.chat.render.registry import cut, renders, say
from bot.chat.render.shapes import lesson_button
from bot.chat.rendered import Button, Rendered
from bot.chat.words import Text, Words, bold, from_content, join, plain
from bot.messages import WordMeant, WordsShown


@renders(WordsShown)
def words_shown(words: Words, m: WordsShown) -> Rendered:
    """The word with its meaning and an example; or which words are near."""
    if not m.asked:
        return say(words("define-what"))
    if m.words:
        lessons = {one.lesson: one.title for one in m.words if one.title} if m.side == "s" else {}
        rows = [[lesson_button(words, lesson, title)] for lesson, title in lessons.items()]
        return say(*(_meant(words, one, titled=m.side != "s") for one in m.words), buttons=rows)
    near = dict(m.near).get(words.language) or dict(m.near).get("en", ())
    verb = "define:" if m.side == "s" else f"{m.side}-run:define "
    rows = [[Button(cut(name), f"{verb}{name}")] for name in near]
    return say(words("define-near" if near else "define-unknown", word=plain(m.asked)), buttons=rows)


def _meant(words: Words, one: WordMeant, titled: bool) -> Text:
    by_language = {language: (term, meaning, example) for language, term, meaning, example in one.said}
    term, meaning, example = by_language.get(words.language) or by_language["en"]
    english = by_language["en"][0]
    head = bold(term)
    if term.casefold() != english.casefold():
        head = words("define-in-lessons", term=bold(term), english=plain(english).marked("italic"))
    lines = [head, from_content(meaning), words("define-example", example=from_content(example))]
    if titled and one.title:
        lines.append(words("define-lesson", title=one.title))
    return join(lines, "\n")
