"""Every command of the table, for every kind of person: as help shows it, wrongly, twice, at once, at length.

And every button that any message of ours shows, pressed by those whom it is not for.
"""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor

import pytest
from support.group import Group, Somebody
from support.steering import stored, words_of

from bot import demo
from bot.chat.render import render
from bot.chat.samples import SAMPLES
from bot.messages import Changed, LanguageChosen, Message, Preview, Trouble
from bot.records import people
from bot.records.base import transaction
from bot.school.asking import Asked, examples_of
from bot.school.commands import SPECS, Who
from bot.vocabulary import ChatId, Role

STRANGER, OTHER_TUTOR, OTHER_PARENT = ChatId(7001), ChatId(7002), ChatId(7003)
ROLES = {
    Who.TUTOR: demo.INES.chat,
    Who.PARENT: demo.TOVE.chat,
    Who.STUDENT: demo.WREN.chat,
    Who.SHARED: demo.ANSELM.chat,
}
EVERYBODY = {
    **{str(who): chat for who, chat in ROLES.items()},
    "stranger": STRANGER,
    "other tutor": OTHER_TUTOR,
}
LONG = "wren " + "ñ" * 4096
WRONG = ("zzqqxx", "wren zzqqxx 99", "@999999", "#999999 1", "own 99 // // //", "🐝" * 30)


@pytest.fixture
def peopled(worked: Somebody, group: Group) -> Group:
    """The demo's people, Juniper speaking on Anselm's phone, and a tutor and a parent of elsewhere."""
    now = group.clock.now()
    with transaction(group.engine) as s:
        tutor = people.add_person(s, "Rosalind", now, tutor=True)
        home = people.add_household(s, "Hazel", tutor, demo.ZONE, now)
        parent = people.add_person(s, "Corin", now)
        people.add_member(s, parent, home, Role.PARENT, now)
        people.link(s, OTHER_TUTOR, tutor, now)
        people.link(s, OTHER_PARENT, parent, now)
        juniper = people.shares_phone(s, demo.ANSELM.chat)[0].id
    group.who(demo.ANSELM).presses("speak", juniper)
    return group


def kind(said: list[Message], what: str) -> None:
    """There is an answer, in both languages, within the limits, and none is our *Trouble*."""
    assert said, what
    assert not any(isinstance(each, Trouble) for each in said), what
    assert words_of(said).strip() and words_of(said, "es").strip(), what


def commands_of(group: Group, who: Who) -> list[str]:
    """All examples of the help, as they stand, for whoever may type them."""
    lines: list[str] = []
    with transaction(group.engine) as s:
        person = people.who(s, ROLES[who])
        assert person is not None
        side = "t" if who is Who.TUTOR else "f"
        for spec in SPECS:
            if who in spec.who and spec.name not in ("back", "hand"):
                asked = Asked(s, group.school, person, group.clock.now(), 0, side, spec.name, "")
                grown_up = who in (Who.TUTOR, Who.PARENT)
                lines += examples_of(asked, spec) if grown_up else [e for e in spec.examples if "{" not in e]
    return lines


@pytest.mark.parametrize("who", list(ROLES))
def test_each_as_it_stands_twice_and_changed_back(peopled: Group, who: Who) -> None:
    """The same line a second time does no more harm than the first; *Do it* pressed twice does it once."""
    somebody = Somebody(peopled, ROLES[who])
    lines = commands_of(peopled, who)
    assert len(lines) >= 8
    for line in lines:
        for _ in range(2):
            peopled.later(1)
            said = somebody.types(line)
            kind(said, line)
        shown = next((each for each in said if isinstance(each, Preview)), None)
        if shown is None:
            continue
        once = somebody.presses(f"{shown.side}-do", shown.change)
        kind(once, line)
        before = stored(peopled.engine)
        kind(somebody.presses(f"{shown.side}-do", shown.change), line)
        assert stored(peopled.engine) == before, line
        if any(isinstance(each, Changed) and each.undo for each in once):
            kind(somebody.presses(f"{shown.side}-undo", shown.change), line)


AS_ON_BOTH = pytest.mark.sqlite_is_enough(
    "whatever any of them asks of the database, the tutor or the parent asks too"
)


@pytest.mark.parametrize(
    "kind_of",
    [who if who in ("tutor", "parent") else pytest.param(who, marks=AS_ON_BOTH) for who in EVERYBODY],
)
def test_each_typed_wrongly_by_anybody_gets_kind_words_and_changes_nothing(
    peopled: Group, kind_of: str
) -> None:
    somebody = Somebody(peopled, EVERYBODY[kind_of])
    own = {"student", "shared"}
    for spec in SPECS:
        if kind_of in own and Who(kind_of) in spec.who:
            continue  # a child's command takes no words, so none of them is wrong
        before = stored(peopled.engine)
        for rest in (*WRONG, LONG[: 4096 - len(spec.name) - 2]):
            said = somebody.types(f"/{spec.name} {rest}")
            kind(said, spec.name)
            assert not any(isinstance(each, LanguageChosen) and each.language for each in said)
        assert stored(peopled.engine) == before, spec.name


@pytest.mark.parametrize("kind_of", ["student", "shared"])
def test_a_childs_command_with_any_words_behind_it_is_answered(peopled: Group, kind_of: str) -> None:
    somebody = Somebody(peopled, EVERYBODY[kind_of])
    for spec in SPECS:
        if Who(kind_of) in spec.who and spec.name != "back":
            for rest in (*WRONG, LONG[: 4096 - len(spec.name) - 2]):
                kind(somebody.types(f"/{spec.name} {rest}"), f"/{spec.name} {rest[:20]}")


def test_the_same_from_two_phones_at_once_does_it_once_each(peopled: Group) -> None:
    """Two grown-ups at the same moment: each is answered, and nobody's *Do it* is done twice."""
    ines, tove = peopled.who(demo.INES), peopled.who(demo.TOVE)
    lines = ["/minutes wren 30", "/off wren tomorrow", "/small sol", "/morning wren 9:00"]

    def does(job: tuple[Somebody, str]) -> list[Message]:
        somebody, line = job
        said = somebody.types(line)
        shown = next(
            (each for each in said if isinstance(each, Preview)), None
        )  # none: the other was quicker
        return said if shown is None else somebody.presses(f"{shown.side}-do", shown.change)

    with ThreadPoolExecutor(4) as pool:
        said = list(pool.map(does, [(who, line) for line in lines for who in (ines, tove)]))
    for each in said:
        kind(each, "at once")
        assert sum(isinstance(message, Changed) for message in each) <= 1


def test_no_button_of_any_message_works_for_somebody_of_elsewhere(peopled: Group) -> None:
    """Each button that we show anywhere, with its id as it would be here, pressed where it doesn't belong."""
    data = sorted(
        {
            one.data
            for message in SAMPLES
            for row in render(message, "en").buttons
            for one in row
            if one.data and one.data.partition(":")[0] not in OWN_BUSINESS
        }
    )
    assert len({each.partition(":")[0] for each in data}) >= 60
    before = stored(peopled.engine)
    for chat in (STRANGER, OTHER_TUTOR, OTHER_PARENT):
        for each in data:
            verb, _, ref = each.partition(":")
            said = Somebody(peopled, chat).presses(verb, ref)
            kind(said, each)
            assert "Wren" not in words_of(said) and "Bramble" not in words_of(said), each
            assert stored(peopled.engine) == before, (chat, each)


OWN_BUSINESS = {"t-run", "f-run", "f-yes", "f-no", "back", "speak", "language"}
"""Commands behind buttons are tried above; the others ask about the presser's own phone or language."""
