"""Who may do what: every kind of person, every command and every button; refused means that nothing changed."""

from __future__ import annotations

import pytest
from sqlalchemy.engine import Engine
from support.group import Group, Somebody
from support.steering import stored, words_of

from bot import demo
from bot.messages import Changed, Help, NoSuchCommand, NotForYou, NotLinked, Preview, WrongCommand
from bot.records import attempts, people, wishes
from bot.records.base import transaction
from bot.school.commands import SPECS, Who
from bot.vocabulary import ChatId, Role

STRANGER = ChatId(7001)
OTHER_TUTOR = ChatId(7002)
OTHER_PARENT = ChatId(7003)
GRADER = ChatId(7004)
KINDS = {
    "tutor": (demo.INES.chat, Who.TUTOR),
    "parent": (demo.TOVE.chat, Who.PARENT),
    "student": (demo.WREN.chat, Who.STUDENT),
    "child on a parent's phone": (demo.ANSELM.chat, Who.SHARED),
    "tutor of another group": (OTHER_TUTOR, Who.TUTOR),
    "parent of another household": (OTHER_PARENT, Who.PARENT),
    "grader": (GRADER, Who.GRADER),
    "stranger": (STRANGER, None),
}
OURS = {"tutor", "parent", "grader"}
"""The grown-ups whose students Wren and Sol are."""
NAMING = {"household", "parent", "student", "grader"}
"""Commands that give somebody a name, which may be anything."""
GROWN_UP = [spec for spec in SPECS if spec.who & {Who.TUTOR, Who.PARENT}]
CHILDS = [spec for spec in SPECS if spec.who & {Who.STUDENT, Who.SHARED}]
PRESSES = [
    "t-do:{tutors}",
    "t-leave:{tutors}",
    "t-undo:{tutors}",
    "f-do:{tutors}",
    "f-do:{parents}",
    "f-undo:{parents}",
    "t-do:{parents}",
    "t-accept:{attempt}",
    "t-run:drop #{wren} 1",
    "t-run:plan #{wren}",
    "t-run:today #{wren}",
    "t-run:off #{wren} tomorrow",
    "t-run:unlink @{tove}",
    "t-run:doubts seen {item}",
    "f-run:digest #{wren}",
    "f-run:off #{wren} tomorrow",
    "f-agree:{bramble}",
    "f-not-now:{bramble}",
    "f-withdraw:{bramble}",
    "t-pick:1.0",
    "f-pick:1.0",
    "t-nonsense:1",
    "f-nonsense:1",
    "t-do:",
    "t-do:99999999999999999999",
    "t-accept:nobody",
    "g-run:marks #{wren} 1",
    "g-run:key #{wren}",
    "g-run:records #{wren}",
    "g-pick:1.0",
    "f-run:records #{wren} pdf",
    "f-run:grader Nan",
    "t-run:map #{wren} picture",
    "f-yes:nobody",
    "f-no:",
]
MAY = {
    "tutor": {"t-do", "t-leave", "t-accept", "t-run"},
    "grader": {"g-run"},
    "parent": {"f-do", "f-run", "f-agree", "f-not-now", "f-withdraw"},
}


@pytest.fixture
def peopled(worked: Somebody, group: Group) -> Group:
    """Beside the demo's people another tutor with a household, and Juniper speaking on Anselm's phone."""
    wren = worked.id
    with transaction(group.engine) as s:
        now = group.clock.now()
        bramble = people.student(s, wren).household
        tutor = people.add_person(s, "Rosalind", now, tutor=True)
        home = people.add_household(s, "Hazel", tutor, demo.ZONE, now)
        parent = people.add_person(s, "Corin", now)
        people.add_member(s, parent, home, Role.PARENT, now)
        for name in ("Linnet", "Reed"):
            people.add_member(s, people.add_person(s, name, now), home, Role.STUDENT, now)
        opa = people.add_person(s, "Opa", now)
        people.add_member(s, opa, bramble, Role.GRADER, now)
        people.link(s, GRADER, opa, now)
        people.link(s, OTHER_TUTOR, tutor, now)
        people.link(s, OTHER_PARENT, parent, now)
    anselm = group.who(demo.ANSELM)
    with transaction(group.engine) as s:
        juniper = people.shares_phone(s, demo.ANSELM.chat)[0]
    anselm.presses("speak", juniper.id)
    return group


def counted(engine: Engine) -> object:
    return {name: rows for name, rows in stored(engine).items() if name != "chat"}


@pytest.mark.sqlite_is_enough("every command runs on PostgreSQL in test_every_command")
@pytest.mark.parametrize("kind", KINDS)
def test_a_command_is_followed_only_by_whom_the_table_allows(peopled: Group, kind: str) -> None:
    chat, who = KINDS[kind]
    before = counted(peopled.engine)
    for spec in GROWN_UP:
        if who in (Who.STUDENT, Who.SHARED) and who in spec.who:
            continue  # a child's own command of that name, tried where the day is
        said = Somebody(peopled, chat).types(f"/{spec.name} wren")
        assert said, spec.name
        if who is None:
            assert [type(each) for each in said] == [NotLinked]
        elif who not in spec.who:
            assert all(isinstance(each, NotForYou | NoSuchCommand | Help) for each in said), (
                spec.name,
                words_of(said),
            )
        elif kind not in OURS and spec.name not in NAMING:
            assert "Wren" not in words_of(said), (spec.name, words_of(said))
            assert not any(isinstance(each, Preview) for each in said), spec.name
        assert counted(peopled.engine) == before, spec.name


@pytest.mark.sqlite_is_enough("every command runs on PostgreSQL in test_every_command")
@pytest.mark.parametrize("kind", KINDS)
def test_a_childs_command_does_nothing_for_whom_it_is_not(peopled: Group, kind: str) -> None:
    chat, who = KINDS[kind]
    before = counted(peopled.engine)
    for spec in CHILDS:
        if who is not None and who in spec.who:
            continue
        said = Somebody(peopled, chat).types(f"/{spec.name}")
        refusal = NotForYou | NoSuchCommand | NotLinked | Help | WrongCommand
        assert all(isinstance(each, refusal) for each in said), (spec.name, words_of(said))
        assert counted(peopled.engine) == before, spec.name


AS_ON_BOTH = pytest.mark.sqlite_is_enough("what they press is asked of PostgreSQL by those whose it is")


@pytest.mark.parametrize(
    "kind",
    [kind if kind in {*OURS, "student"} else pytest.param(kind, marks=AS_ON_BOTH) for kind in KINDS],
)
def test_a_button_works_only_for_whom_it_was_meant(peopled: Group, kind: str) -> None:
    """Ids of other people's things are sent as if by a client that was tampered with."""
    ines, tove, wren = peopled.who(demo.INES), peopled.who(demo.TOVE), peopled.who(demo.WREN)
    first, student = wren.items("review")[0], wren.id
    with transaction(peopled.engine) as s:
        attempt = attempts.attempts_of(s, first.id)[0].id
        bramble = people.student(s, student).household
        parent = people.who(s, demo.TOVE.chat)
        assert parent is not None
    for press in PRESSES:
        tutors = ines.types("/minutes wren 30")[0].change  # type: ignore[attr-defined]
        parents = tove.types("/minutes wren 60")[0].change  # type: ignore[attr-defined]
        data = press.format(
            tutors=tutors,
            parents=parents,
            wren=student,
            attempt=attempt,
            item=first.id,
            bramble=bramble,
            tove=parent.id,
        )
        verb, _, ref = data.partition(":")
        before = counted(peopled.engine)
        said = Somebody(peopled, KINDS[kind][0]).presses(verb, ref)
        assert said and words_of(said), press
        allowed = verb in MAY.get(kind, set())
        allowed = allowed and not ("{parents}" in press and kind == "tutor")
        allowed = allowed and not ("{tutors}" in press and kind == "parent")
        if not allowed:
            assert counted(peopled.engine) == before, press
            assert "Wren" not in words_of(said), (press, words_of(said))


def test_a_tutors_button_does_nothing_once_the_household_belongs_to_somebody_else(peopled: Group) -> None:
    ines = peopled.who(demo.INES)
    change = ines.types("/minutes wren 30")[0].change  # type: ignore[attr-defined]
    wren = peopled.who(demo.WREN).id
    with transaction(peopled.engine) as s:
        home = people.student(s, wren).household
        other = people.who(s, OTHER_TUTOR)
        assert other is not None
        people.change_household(s, home, tutor_id=other.id)
    before = counted(peopled.engine)
    assert ines.presses("t-do", change) == [NotForYou(to=demo.INES.chat, why="other")]
    assert counted(peopled.engine) == before


def test_a_grown_ups_button_does_nothing_while_a_child_holds_the_phone(peopled: Group) -> None:
    anselm = peopled.who(demo.ANSELM)
    anselm.presses("back")
    change = anselm.types("/minutes juniper 30")[0].change  # type: ignore[attr-defined]
    with transaction(peopled.engine) as s:
        juniper = people.shares_phone(s, demo.ANSELM.chat)[0]
    anselm.presses("speak", juniper.id)
    before = counted(peopled.engine)
    assert anselm.presses("f-do", change) == [NotForYou(to=demo.ANSELM.chat, why="grown-up")]
    assert counted(peopled.engine) == before
    with transaction(peopled.engine) as s:
        found = wishes.find_change(s, change)
    assert found is not None and found.confirmed_at is None


def test_a_button_pressed_twice_does_once(peopled: Group) -> None:
    ines = peopled.who(demo.INES)
    change = ines.types("/minutes wren 30")[0].change  # type: ignore[attr-defined]
    ines.presses("t-do", change)
    before = counted(peopled.engine)
    said = ines.presses("t-do", change)
    assert [type(each) for each in said] == [Changed] and said[0].already  # type: ignore[attr-defined]
    assert counted(peopled.engine) == before
