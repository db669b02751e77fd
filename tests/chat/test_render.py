"""Every message can be said, within the service's limits, in every language, and keeps the rules of wording."""

from __future__ import annotations

import re

import pytest
from fluent.syntax import FluentParser, ast
from support.reading import passed

from bot.chat.render import RENDERERS, render
from bot.chat.rendered import Drawing, faults, units
from bot.chat.samples import SAMPLES
from bot.chat.words import HERE, Text, bold, from_content, languages, words_for
from bot.messages import ALL, ItemShown, NotYet, decode, encode
from bot.pictures import recipes
from bot.vocabulary import ChatId, ItemId, Part


def test_every_message_is_rendered_and_has_a_sample() -> None:
    assert set(RENDERERS) == set(ALL.values())
    assert {type(message) for message in SAMPLES} == set(ALL.values())


@pytest.mark.parametrize("language", languages())
def test_every_sample_stays_within_the_limits(language: str) -> None:
    found = {type(m).__name__: faults(render(m, language)) for m in SAMPLES}

    assert {name: fault for name, fault in found.items() if fault} == {}


def test_every_picture_and_paper_of_a_sample_can_be_made() -> None:
    one_of_each: dict[tuple[str, str], Drawing] = {}
    for message in SAMPLES:
        said = render(message, "en")
        for file in (*said.pictures, *said.documents):
            if isinstance(file.content, Drawing):
                one_of_each.setdefault((type(message).__name__, file.content.recipe), file.content)
    one_of_each.pop(
        ("ExportedPhotos", "photo-archive")
    )  # no recipe: the photos are fetched from their folder

    made = {name: recipes.make(each.recipe, each.data) for name, each in one_of_each.items()}

    assert made and all(each.startswith((b"%PDF", b"\x89PNG")) for each in made.values())


def test_every_sample_survives_the_outbox() -> None:
    assert [decode(type(m).__name__, encode(m)) for m in SAMPLES] == list(SAMPLES)


def keys_of(language: str) -> list[str]:
    parser = FluentParser()
    found = []
    for file in sorted((HERE / language).glob("*.ftl")):
        resource = parser.parse(file.read_text(encoding="utf-8"))
        assert not [entry for entry in resource.body if isinstance(entry, ast.Junk)], file
        found += [entry.id.name for entry in resource.body if isinstance(entry, ast.Message)]
    return found


@pytest.mark.parametrize("language", languages())
def test_catalogues_hold_the_same_keys_each_once(language: str) -> None:
    keys = keys_of(language)

    assert len(keys) == len(set(keys)), sorted(key for key in keys if keys.count(key) > 1)
    assert set(keys) == set(keys_of("en"))


NEVER = re.compile(
    r"\b(wrong answer|incorrect|oops|careful|careless|easy|almost|failed?|passed|mastery|streak|points?|level|badge|"
    r"remember|just do|you forgot|stupid|lazy|grade \d)\b",
    re.IGNORECASE,
)


def test_no_message_to_a_student_uses_a_word_that_hurts() -> None:
    for message in SAMPLES:
        text = render(message, "en").text
        assert not NEVER.search(text), (type(message).__name__, NEVER.search(text), text)


def test_word_after_a_wrong_answer_is_short_and_asks_one_thing() -> None:
    for message in SAMPLES:
        if isinstance(message, NotYet):
            text = render(message, "en").text
            assert len(text.split()) <= 25, text
            assert text.count("?") <= 1, text


HOSTILE = "<b>x</b> *y* **z** `w` {$name} { -brand } [a](http://example.org) _u_"


def test_nothing_typed_becomes_a_mark_or_a_hole() -> None:
    said = render(passed("Work out `3 + 4`.", HOSTILE), "en")

    assert HOSTILE in said.text
    at = units(said.text[: said.text.index(HOSTILE)])
    marks = [e for e in said.entities if e.offset < at + units(HOSTILE) and e.offset + e.length > at]
    assert [(e.kind, e.offset, e.length) for e in marks] == [("italic", at, units(HOSTILE))]


def test_offsets_count_utf_16_units() -> None:
    text = Text((("", "🐝🐝 ", ""),)) + bold("bees") + "!"

    assert [(e.kind, e.offset, e.length) for e in text.entities()] == [("bold", 5, 4)]


def test_maths_in_a_lesson_is_shown_as_it_stands() -> None:
    assert from_content("Work out `3/4 ÷ 2/5`, **please**.").words() == "Work out 3/4 ÷ 2/5, please."


def test_a_language_without_a_catalogue_reads_english() -> None:
    assert words_for("xx")("not-yet").words() == words_for("en")("not-yet").words()
    assert words_for("../en")("not-yet").words() == words_for("en")("not-yet").words()


def test_long_lists_of_choices_stay_buttons_of_their_item() -> None:
    shown = ItemShown(
        to=ChatId(1),
        item=ItemId(12),
        part=Part.REVIEW,
        place=1,
        out_of=8,
        ask="Which?",
        form="choice",
        choices=("a long choice with many words", "short", "`2/3`"),
    )

    rows = render(shown, "en").buttons[:3]

    assert [button.data for row in rows for button in row] == ["choose:12:0", "choose:12:1", "choose:12:2"]
    assert [button.label for row in rows for button in row][2] == "2/3"
