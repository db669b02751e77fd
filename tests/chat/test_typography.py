"""Short formulas stay on one line of a phone, quotes are those of print, and a copied message can be read again."""

from __future__ import annotations

import pytest
from support.reading import as_typed, passed

from bot.answers import judge
from bot.answers.key import Key
from bot.chat.render import RENDERERS, render
from bot.chat.rendered import units
from bot.chat.samples import SAMPLES
from bot.chat.typography import HYPHEN, SPACE, held_together, typographic
from bot.chat.words import languages, words_for
from bot.maths.normal import LONGEST, normal
from bot.messages import CopyTen, FactsSheet, HandsOnShown, ItemShown
from bot.vocabulary import ChatId, DayId, ItemId, Part, Verdict


def seen(text: str) -> str:
    """A held text with ~ for the spaces and ¬ for the hyphens that no line ends at."""
    return held_together(text).replace(SPACE, "~").replace(HYPHEN, "¬")


@pytest.mark.parametrize(
    ("text", "held"),
    [
        ("Work out 2 × 5 now.", "Work out 2~×~5 now."),
        ("A side is 3 cm long.", "A side is 3~cm long."),
        ("It took 2 1/2 h, or 2 ½ h.", "It took 2~1/2~h, or 2~½~h."),
        ("So the whole thing, = 12.", "So the whole thing, =~12."),
        ("Look at the x-axis, (y-axis).", "Look at the x¬axis, (y¬axis)."),
        ("A 3-by-5 card.", "A 3¬by¬5 card."),
        ("The point (−2, 5).", "The point (−2,~5)."),
        ("20 - 5 + 3.", "20~-~5~+~3."),
        ("? + 3 = 12", "?~+~3~=~12"),
        ("3 : 4 = 6 : 8", "3~:~4~=~6~:~8"),
        ("It is 7 R 2.", "It is 7~R~2."),
        ("At 3 p.m. we go.", "At 3~p.m. we go."),
    ],
)
def test_what_belongs_together_stays_on_one_line(text: str, held: str) -> None:
    assert seen(text) == held


@pytest.mark.parametrize(
    ("text", "held"),
    [
        ("3 cm × 4 cm = 12 cm²", "3~cm~×~4~cm =~12~cm²"),
        ("3/4 + 2/4 + 1/4 = 6/4", "3/4 +~2/4 +~1/4 =~6/4"),
        ("2 × 3 × 5 × 7 × 11", "2 ×~3 ×~5 ×~7 ×~11"),
        ("distance = rate × time", "distance =~rate~×~time"),
    ],
)
def test_a_long_formula_breaks_before_a_sign_and_never_after_it(text: str, held: str) -> None:
    assert seen(text) == held


@pytest.mark.parametrize(
    "text",
    [
        "3 of 8 · from Order of operations · Calculator allowed",
        "A two-step equation, well-known since 2026-09-14.",
        "Think - then write – and count: two ways.",
        "☐ Zero is in the middle.",
        "2, 4, 6 and 8",
        "See https://example.org/x-axis and /so-on.",
        "3  cm",  # two spaces part columns
        "=\n12",
        "",
    ],
)
def test_what_is_no_formula_breaks_as_it_likes(text: str) -> None:
    assert held_together(text) == text


@pytest.mark.parametrize("language", languages())
def test_holding_together_changes_no_letter_and_no_length(language: str) -> None:
    for message in SAMPLES:
        before, after = RENDERERS[type(message)](words_for(language), message), render(message, language)
        assert as_typed(after.text) == as_typed(before.text)
        assert units(after.text) == units(before.text)
        assert (after.entities, after.buttons) == (before.entities, before.buttons)


def test_what_is_to_be_copied_or_stands_in_columns_stays_as_it_is() -> None:
    assert HYPHEN not in render(CopyTen(to=ChatId(1), day=DayId(1), numbers=("x-1", "2 × 5")), "en").text
    assert "1) 7 × 8" in render(FactsSheet(to=ChatId(1), sheet=1, facts=("7 × 8", "9 × 6")), "en").text


def test_the_longest_message_is_held_in_no_time_whatever_it_holds() -> None:
    """Backtracking over these would take minutes; the suite's limit for one test ends that."""
    for piece in ("1", "1 ", "a-", "))", "= ", "3 cm ", "1/", "(1, "):
        text = piece * (LONGEST // len(piece))
        assert len(held_together(text + "abc!")) == len(text) + 4


@pytest.mark.parametrize("sign", [SPACE, "\u202f"])
@pytest.mark.parametrize(
    ("copied", "answer", "form"),
    [
        ("2 1/2", "2 1/2", "mixed"),
        ("x = 4", "x = 4", "equation-solution"),
        ("2x + 5", "2x+5", "expression"),
        ("(−2, 5)", "(-2, 5)", "point"),
    ],
)
def test_what_is_copied_from_a_message_is_read_by_the_checker(
    sign: str, copied: str, answer: str, form: str
) -> None:
    typed = held_together(copied).replace(SPACE, sign)

    assert sign in typed
    assert judge(typed, Key(answer, form)).verdict is Verdict.RIGHT


def test_a_hyphen_that_no_line_ends_at_is_read_as_a_hyphen_and_as_a_minus() -> None:
    assert (
        judge("y\u2011axis", Key("y-axis", "choice", choices=("x-axis", "y-axis"))).verdict is Verdict.RIGHT
    )
    assert judge("\u20117", Key("-7", "number")).verdict is Verdict.RIGHT
    assert normal("3\u00a0\u202f5\u20112") == "3 5-2"


@pytest.mark.parametrize(
    ("straight", "print_"),
    [
        ("it's 5 o'clock", "it’s 5 o’clock"),
        ('is it "3 to 1"?', "is it “3 to 1”?"),
        ('**"all"** (\'one\') and "`x + 1`"', "**“all”** (‘one’) and “`x + 1`”"),
        ("the dogs' 3 bowls", "the dogs’ 3 bowls"),
        ("6' 2\" tall", "6′ 2″ tall"),
        ("`f'(x)`", "`f'(x)`"),
    ],
)
def test_straight_quotes_become_those_of_print_but_in_maths(straight: str, print_: str) -> None:
    assert typographic(straight) == print_


def test_what_was_typed_keeps_its_quotes_and_a_lesson_does_not() -> None:
    said = render(passed("What's `3 + 4`?", "it's 7"), "en")
    shown = render(
        ItemShown(
            to=ChatId(1),
            item=ItemId(12),
            part=Part.REVIEW,
            place=1,
            out_of=8,
            ask="Isn't it?",
            form="choice",
            choices=("it isn't", "it is"),
        ),
        "en",
    )

    assert "it's 7" in said.text and "What’s" in said.text
    assert "Isn’t it?" in shown.text and shown.buttons[0][0].label == "it isn’t"


def test_the_line_of_safety_has_the_quotes_of_the_task_below_it() -> None:
    shown = render(
        HandsOnShown(
            to=ChatId(1),
            day=DayId(3),
            title="A long string",
            idea="Don't pull.",
            materials=("string",),
            checklist=("It hangs.",),
            safety="Don't run with it.",
            answers=1,
        ),
        "en",
    )

    assert "Don’t run with it." in shown.text and "Don’t pull." in shown.text


def test_the_next_line_never_begins_with_the_space_behind_a_bar() -> None:
    """Unicode line breaking (UAX 14, class BA): a line may end behind `|` even where a kept space follows."""
    assert seen("So |−9| = 9.") == "So |−9| =~9."


def test_a_division_behind_a_bracket_is_no_command() -> None:
    """The service links `/` and letters or digits wherever no letter, digit or slash stands before it."""
    shown = held_together("Solve (x + 5)/2 = 7, or 3/4.")
    assert ")/2" not in shown and "3/4" in shown
    assert normal(shown) == normal("Solve (x + 5)/2 = 7, or 3/4.")
