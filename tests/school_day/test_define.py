"""A word is looked up by student, parent and tutor, in the language of whoever asks; not while a test is open."""

from __future__ import annotations

import pytest
from support.group import Somebody, only

from bot import demo
from bot.chat.render import render
from bot.messages import NotForYou, WordsShown
from bot.records import people
from bot.records.base import transaction


@pytest.mark.parametrize("typed", ["numerator", "Numerators", "the numerator?", "numerador"])
def test_student_looks_a_word_up(wren: Somebody, typed: str) -> None:
    said = only(WordsShown, wren.types(f"/define {typed}"))
    shown = render(said, "en")

    assert shown.text.startswith("numerator\nThe number above the bar of a fraction.")
    assert [button.data for row in shown.buttons for button in row] == [
        "lesson:fractions-on-a-line-and-as-division"
    ]
    assert render(said, "es").text.startswith("numerador (en las lecciones: numerator)\nEl número que")


def test_the_button_opens_the_lesson_that_owns_the_word(wren: Somebody) -> None:
    shown = render(only(WordsShown, wren.types("/define numerator")), "en")
    verb, _, ref = shown.buttons[0][0].data.partition(":")
    assert wren.presses(verb, ref)[0].title == "Fractions on a line and as division"


@pytest.mark.parametrize("who", [demo.TOVE, demo.INES])
def test_grown_ups_look_a_word_up_and_hear_its_lesson(wren: Somebody, who: demo.Phone) -> None:
    person = wren.group.who(who)
    shown = render(only(WordsShown, person.types("/define hypotenuse")), "en")
    assert shown.text.splitlines()[0] == "hypotenuse"
    assert shown.text.splitlines()[-1].startswith("From the lesson Pythagorean theorem")
    assert shown.buttons == ()


@pytest.mark.parametrize(("language", "name"), [("en", "numerator"), ("es", "numerador")])
def test_a_mistyped_word_offers_the_nearest_in_the_readers_language(
    wren: Somebody, language: str, name: str
) -> None:
    shown = render(only(WordsShown, wren.types("/define numerattor")), language)
    verb, _, ref = shown.buttons[0][0].data.partition(":")
    assert ref == name
    assert only(WordsShown, wren.presses(verb, ref)).words[0].said[0][1] == "numerator"


def test_grown_ups_button_goes_on_with_the_command(wren: Somebody) -> None:
    ines = wren.group.who(demo.INES)
    shown = render(only(WordsShown, ines.types("/define numrator")), "en")
    verb, _, ref = shown.buttons[0][0].data.partition(":")
    assert only(WordsShown, ines.presses(verb, ref)).words[0].said[0][1] == "numerator"


def test_without_a_word_it_is_said_how(wren: Somebody) -> None:
    assert "/define numerator" in render(only(WordsShown, wren.types("/define ")), "en").text
    unknown = render(only(WordsShown, wren.types("/define xylophone")), "en")
    assert "xylophone" in unknown.text and unknown.buttons == ()


def test_no_words_while_a_test_is_open(wren: Somebody) -> None:
    with transaction(wren.group.engine) as s:
        people.change_student(s, wren.id, lesson=12)
    wren.starts()
    wren.group.at(8, day=1)
    wren.group.tick()
    wren.group.who(demo.TOVE).presses("open-test", wren.day().id)
    wren.starts()
    assert only(NotForYou, wren.types("/define median")).why == "in-test"
