from __future__ import annotations

import pytest
from support.group import Group, only
from support.steering import does, stored, words_of

from bot import demo
from bot.messages import Choose, CommandShown, NoSuchCommand, NotForYou, WrongCommand
from bot.school.commands import SPECS, Who

PARENTS = [spec for spec in SPECS if Who.PARENT in spec.who]


@pytest.mark.parametrize("phone", [demo.TOVE, demo.ANSELM], ids=["two children", "one child"])
def test_examples_of_help_work_as_they_stand(group: Group, phone: demo.Phone) -> None:
    """Tove's children have chats of their own; Anselm's phone goes round."""
    group.tick()
    group.at(19)
    group.tick()
    group.at(9, day=1)
    group.tick()
    parent = group.who(phone)
    for spec in PARENTS:
        if spec.name == "hand" and phone is demo.TOVE:
            continue  # nobody shares Tove's phone
        if spec.name == "second":
            continue  # it needs a test that was handed in: see tests/tutoring/test_set_tests.py
        if spec.name == "keep":
            does(parent, "/erase")
        shown = only(CommandShown, parent.types(f"/help {spec.name}"))
        assert shown.examples or spec.name == "small", spec.name
        for example in shown.examples:
            said = parent.types(example)
            refused = [
                each for each in said if isinstance(each, WrongCommand | Choose | NotForYou | NoSuchCommand)
            ]
            assert said and not refused, (example, words_of(refused))
            assert words_of(said) and words_of(said, "es")


@pytest.mark.parametrize(
    "rest", ["zzqqxx", "wren zzqqxx 99", "@999999", "#999999 1", "ñ" * 4000, "juniper 30"]
)
def test_a_command_typed_wrongly_changes_nothing(group: Group, rest: str) -> None:
    group.tick()
    tove = group.who(demo.TOVE)
    before = stored(group.engine)
    for spec in PARENTS:
        said = tove.types(f"/{spec.name} {rest}")
        assert said, spec.name
        assert words_of(said) and words_of(said, "es")
        assert "Juniper" not in words_of(said)
    assert stored(group.engine) == before
