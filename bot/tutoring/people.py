"""Households and their people: made by the tutor, who hands on a link for each."""

from __future__ import annotations

from functools import lru_cache
from zoneinfo import available_timezones

from rapidfuzz import fuzz, process

from bot.messages import Line, Message, PeopleShown, PersonRow, PhoneMoved, Preview
from bot.planner.calendar import CalendarError, SchoolCalendar, check
from bot.records import invites, outbox, people
from bot.records.people import Household, Member
from bot.school.asking import Asked
from bot.school.changes import Did, Scene, Stale, Step, household_step, propose, store
from bot.school.names import take_household, take_person
from bot.school.when import fold
from bot.vocabulary import HouseholdId, PersonId, Role

LONGEST_NAME = 40
_ME = {"me", "myself", "yo"}
_OWN = {"own", "propio"}
_SHARED = {"shared", "compartido"}


def show(asked: Asked) -> list[Message]:
    """The households with their people, hours, and who has a phone linked."""
    if not asked.households:
        raise asked.wrong("why-no-households")
    rows = []
    for home in asked.households:
        members = people.members_of(asked.s, home.id)
        parent_linked = any(each.linked for each in members if each.role is Role.PARENT)
        shown = tuple(PersonRow(each.name, each.role.value, _phone(each, parent_linked)) for each in members)
        rows.append((home.name, home.zone, home.digest_at, home.consented, shown))
    return [PeopleShown(to=asked.person.chat, households=tuple(rows))]


def _phone(member: Member, parent_linked: bool) -> str:
    if member.linked:
        return "own"
    return "shared" if member.role is Role.STUDENT and parent_linked else "none"


@lru_cache
def _zones() -> dict[str, str]:
    return {fold(zone): zone for zone in available_timezones() if "/" in zone or zone == "UTC"}


def find_zone(text: str) -> tuple[str | None, list[str]]:
    """A time zone by its name or its city; else those that look like it."""
    zones = _zones()
    words = fold(text.strip()).replace(" ", "_")
    if words in zones:
        return zones[words], []
    cities = [zone for key, zone in zones.items() if key.rpartition("/")[2] == words]
    if len(cities) == 1:
        return cities[0], []
    near = process.extract(words, list(zones), scorer=fuzz.WRatio, score_cutoff=75, limit=4)
    return None, cities[:4] or [zones[key] for key, _, _ in near]


def household(asked: Asked) -> list[Message]:
    """A new household: its name, and where its clocks are; else they are as in the last one made."""
    name, _, last = asked.text.strip().rpartition(" ")
    zone, near = find_zone(last) if name else (None, [])
    if zone is None and (not name or "/" not in last):
        name = asked.text.strip()
    if not name or name.startswith("#"):
        raise asked.wrong("why-household-name")
    if len(name) > LONGEST_NAME:
        raise asked.wrong("why-name-too-long", most=LONGEST_NAME)
    if zone is None and "/" in last and last != name:
        raise asked.choose(
            Line("ask-which-zone", {"zone": last}), [(each, f"{name} {each}") for each in near]
        )
    if any(fold(home.name) == fold(name) for home in asked.households):
        raise asked.wrong("why-household-exists", name=name)
    if zone is None:
        newest = max(asked.households, key=lambda home: home.id, default=None)
        if newest is None:
            raise asked.wrong("why-zone-missing")
        zone = newest.zone
    step: Step = {"op": "new-household", "name": name, "zone": zone}
    line = Line("line-household", {"name": name, "zone": zone})
    return propose(asked, "household", [line], steps=[step], notes=[Line("note-household")])


def _make_household(scene: Scene, step: Step) -> Did:
    made = people.add_household(scene.s, str(step["name"]), scene.person.id, str(step["zone"]), scene.at)
    return Did({**step, "household": made})


def _unmake_household(scene: Scene, step: Step) -> list[Message] | None:
    return [] if people.remove_household(scene.s, HouseholdId(int(str(step["household"])))) else None


def parent(asked: Asked) -> list[Message]:
    """A parent of a household; "me" makes the tutor one."""
    home, name = take_household(asked)
    if fold(name.strip()) in _ME:
        step: Step = {"op": "member", "household": home.id, "role": "parent", "person": asked.person.id}
        return propose(asked, "parent", [Line("line-parent-me", {"household": home.name})], steps=[step])
    name = _fresh_name(asked, home, name)
    step = {"op": "member", "household": home.id, "role": "parent", "name": name, "link": True}
    return propose(
        asked,
        "parent",
        [Line("line-parent", {"name": name, "household": home.name})],
        steps=[step],
        notes=[Line("note-link-comes")],
    )


def _fresh_name(asked: Asked, home: Household, name: str) -> str:
    name = " ".join(name.split())
    if not name or not name[0].isalpha():
        raise asked.wrong("why-person-name", household=home.name)
    if len(name) > LONGEST_NAME:
        raise asked.wrong("why-name-too-long", most=LONGEST_NAME)
    if people.same_name(asked.s, home.id, name):
        raise asked.wrong("why-same-name", name=name, household=home.name)
    return name


def student(asked: Asked) -> list[Message]:
    """A student of a household: on a parent's phone, or with an own chat; the tutor chooses, no age is kept.

    "#7" gives a student who is known a second home.
    """
    home, rest = take_household(asked)
    if rest.startswith("#"):
        return _second_home(asked, home, rest)
    name, _, last = rest.strip().rpartition(" ")
    own: bool | None = None
    if fold(last) in _OWN | _SHARED and name:
        own = fold(last) in _OWN
    else:
        name = rest
    name = _fresh_name(asked, home, name)
    base: Step = {"op": "member", "household": home.id, "role": "student", "name": name}
    shared_line = Line("line-student-shared", {"name": name, "household": home.name})
    own_line = Line("line-student-own", {"name": name, "household": home.name})
    caution = Line("note-own-phone")
    if own is True:
        return propose(asked, "student", [own_line], steps=[{**base, "link": True}], notes=[caution])
    shared = propose(asked, "student", [shared_line], steps=[base], notes=[caution])
    if own is False:
        return shared
    other = store(asked, "student", [own_line], steps=[{**base, "link": True}])
    return [
        Preview(
            to=each.to,
            change=each.change,
            lines=(Line("line-student", {"name": name, "household": home.name}),),
            notes=each.notes,
            side=each.side,
            ways=(("", "button-parents-phone"), (str(other), "button-own-phone")),
        )
        for each in shared
        if isinstance(each, Preview)
    ]


def _second_home(asked: Asked, home: Household, rest: str) -> list[Message]:
    known = next((each for each in asked.students if f"#{each.id}" == rest.strip()), None)
    if known is None:
        raise asked.wrong("why-person-name", household=home.name)
    if people.same_name(asked.s, home.id, known.name):
        raise asked.wrong("why-same-name", name=known.name, household=home.name)
    step: Step = {"op": "member", "household": home.id, "role": "student", "person": known.id}
    line = Line("line-second-home", {"name": known.name, "household": home.name})
    return propose(asked, "student", [line], steps=[step])


def _add_member(scene: Scene, step: Step) -> Did:
    home = HouseholdId(int(str(step["household"])))
    role = Role(str(step["role"]))
    if "person" in step:
        person = PersonId(int(str(step["person"])))
        if (home, role) in people.memberships_of(scene.s, person):
            raise Stale
        people.add_member(scene.s, person, home, role, scene.at)
        return Did({**step, "made": False})
    name = str(step["name"])
    if people.same_name(scene.s, home, name):
        raise Stale
    person = people.add_person(scene.s, name, scene.at, scene.person.language)
    people.add_member(scene.s, person, home, role, scene.at)
    link = _link(scene, person) if step.get("link") else ""
    return Did({**step, "person": person, "made": True}, link=link, name=name)


def _link(scene: Scene, person: PersonId) -> str:
    token = invites.make_invite(scene.s, person, scene.person.id, scene.at)
    return f"https://t.me/{scene.school.bot_name}?start={token}"


def _remove_member(scene: Scene, step: Step) -> list[Message] | None:
    """Take a role away again; the person's link ends. Somebody who has linked a phone is unlinked first."""
    person = PersonId(int(str(step["person"])))
    if step.get("made") and people.reach(scene.s, person) is not None:
        return None
    if step.get("made"):
        invites.revoke(scene.s, person, scene.at)
    people.remove_member(scene.s, person, HouseholdId(int(str(step["household"]))), Role(str(step["role"])))
    return []


def invite(asked: Asked) -> list[Message]:
    """A new link for somebody, for a first or another phone; an older link ends."""
    somebody, rest = take_person(asked)
    if rest:
        raise asked.wrong("why-only-a-name")
    step: Step = {"op": "invite", "household": somebody.household.id, "person": somebody.person}
    key = "line-invite-again" if somebody.linked else "line-invite"
    notes = [Line("note-own-phone")] if somebody.role is Role.STUDENT else []
    line = Line(key, {"name": somebody.name, "household": somebody.household.name})
    return propose(asked, "invite", [line], steps=[step], notes=notes)


def _invite(scene: Scene, step: Step) -> Did:
    person = PersonId(int(str(step["person"])))
    return Did(step, link=_link(scene, person), name=people.person_name(scene.s, person))


def _uninvite(scene: Scene, step: Step) -> list[Message] | None:
    invites.revoke(scene.s, PersonId(int(str(step["person"]))), scene.at)
    return []


def unlink(asked: Asked) -> list[Message]:
    """Let somebody's phone go: nothing more is sent there, and nothing is taken from there."""
    somebody, rest = take_person(asked)
    if rest:
        raise asked.wrong("why-only-a-name")
    if not somebody.linked:
        raise asked.wrong("why-not-linked", name=somebody.name)
    step: Step = {"op": "unlink", "household": somebody.household.id, "person": somebody.person}
    line = Line("line-unlink", {"name": somebody.name, "household": somebody.household.name})
    return propose(asked, "unlink", [line], steps=[step], notes=[Line("note-unlink")], final=True)


def _unlink(scene: Scene, step: Step) -> Did:
    person = PersonId(int(str(step["person"])))
    phone = people.reach(scene.s, person)
    if phone is None or person == scene.person.id:
        raise Stale
    outbox.withdraw(scene.s, phone.chat)
    people.unlink(scene.s, person)
    return Did(step, [PhoneMoved(to=phone.chat, name=phone.name, why="unlinked")])


def _stays_unlinked(scene: Scene, step: Step) -> list[Message] | None:
    return None


def zone(asked: Asked) -> list[Message]:
    """Where a household's clocks are."""
    home, rest = take_household(asked)
    found, near = find_zone(rest)
    if found is None:
        if not rest or not near:
            raise asked.wrong("why-zone", zone=rest[:40])
        raise asked.choose(
            Line("ask-which-zone", {"zone": rest[:40]}), [(each, f"{home.name} {each}") for each in near]
        )
    line = Line("line-zone", {"household": home.name, "zone": found, "before": home.zone})
    return propose(asked, "zone", [line], steps=[household_step(home.id, zone=found)])


def country(asked: Asked) -> list[Message]:
    """Whose public holidays a household keeps; "none": none."""
    home, rest = take_household(asked)
    code = rest.strip().upper()
    if fold(rest.strip()) in ("none", "ninguno", "no"):
        line = Line("line-country-none", {"household": home.name})
        return propose(asked, "country", [line], steps=[household_step(home.id, country="")])
    if not (2 <= len(code) <= 3 and code.isalpha()):
        raise asked.wrong("why-country", country=rest[:40])
    try:
        check(SchoolCalendar(country=code))
    except CalendarError:
        raise asked.wrong("why-country", country=code) from None
    line = Line("line-country", {"household": home.name, "country": code})
    return propose(asked, "country", [line], steps=[household_step(home.id, country=code)])


EFFECTS = {
    "new-household": (_make_household, _unmake_household),
    "member": (_add_member, _remove_member),
    "invite": (_invite, _uninvite),
    "unlink": (_unlink, _stays_unlinked),
}
"""The effects of changes to households and people."""
