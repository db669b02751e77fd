"""A student's own small view: only ever against oneself, and no grown-up's command."""

from __future__ import annotations

from support.group import Group, Somebody, only
from support.steering import words_of

from bot import demo
from bot.chat.render import render
from bot.messages import MapPicture, MapShown, MyBest, MyView, MyWeek, NoSuchCommand
from bot.pictures.charts import SkillMap, Week
from bot.pictures.recipes import make
from bot.vocabulary import Part


def test_my_week_counts_what_was_done(group: Group, wren: Somebody) -> None:
    group.at(9)
    wren.gets_to_review()
    for _ in range(2):
        group.later(20)
        wren.answers(next(each for each in wren.items(Part.REVIEW) if each.state == "shown"))
        wren.presses("on")
    view = only(MyView, wren.types("/mine"))
    assert view.week[0] == "p" and view.lessons == (wren.items(Part.GUIDED)[0].item.lesson_title,)
    week = only(MyWeek, wren.presses("mine", "week"))
    assert [day[:2] for day in week.days] == [("2026-09-14", 2)]
    best = only(MyBest, wren.presses("mine", "best"))
    assert best.day is not None and best.day[:2] == ("2026-09-14", 2)
    assert best.per_minute is None  # timing is off, so no rate is spoken of


def test_nobody_else_is_named_or_counted(group: Group, wren: Somebody) -> None:
    group.at(9)
    sol = group.who(demo.SOL)
    sol.gets_to_review()
    group.later(20)
    sol.answers(next(each for each in sol.items(Part.REVIEW) if each.state == "shown"))
    assert only(MyBest, wren.presses("mine", "best")) == MyBest(to=wren.chat, name="Wren")
    for what in ("week", "best", "map"):
        said = wren.presses("mine", what)
        assert "Sol" not in words_of(said) and words_of(said, "es")


def test_my_map_has_a_mark_for_each_written_lesson_and_can_be_drawn(group: Group, wren: Somebody) -> None:
    shown = only(MapPicture, wren.presses("mine", "map"))
    assert sum(len(unit.states) for unit in shown.units) == len(group.school.course.lessons)
    for message, kind in ((shown, SkillMap), (only(MyWeek, wren.presses("mine", "week")), Week)):
        picture = render(message, "es").pictures[0]
        assert picture.alt and kind
        assert make(picture.content.recipe, picture.content.data)[:4] == b"\x89PNG"  # type: ignore[union-attr]


def test_a_child_on_a_shared_phone_has_it_too_and_a_grown_up_has_not(group: Group, wren: Somebody) -> None:
    only(NoSuchCommand, group.who(demo.TOVE).types("/mine"))
    only(NoSuchCommand, group.who(demo.INES).types("/mine"))
    assert wren.presses("mine", "nonsense")


def test_the_tutors_map_is_a_picture_as_well(group: Group, wren: Somebody) -> None:
    ines = group.who(demo.INES)
    text = only(MapShown, ines.types("/map wren"))
    verb, _, ref = render(text, "en").buttons[0][0].data.partition(":")
    shown = only(MapPicture, ines.presses(verb, ref))
    assert not shown.own
    states = [state for unit in shown.units for state in unit.states]
    assert states.count("steady") == sum(len(unit[1]) for unit in text.units)
    assert states.count("not met") == sum(len(unit[3]) for unit in text.units)
