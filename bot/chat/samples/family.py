"""Samples of joining, agreeing and leaving."""

from __future__ import annotations

from bot.chat.samples.day import TO, WREN
from bot.messages import (
    AskWithdraw,
    ConsentAsked,
    ConsentGiven,
    ConsentLater,
    DigestChoice,
    EraseKept,
    Exported,
    InviteShown,
    LanguageChosen,
    LinkLeft,
    LinkUsed,
    Message,
    NoDay,
    PhoneMoved,
    Privacy,
    StudentWaits,
    TutorTold,
    Welcome,
    Withdrawn,
)
from bot.vocabulary import HouseholdId, PersonId

HOME = HouseholdId(1)
BOTH = ("Sol", "Wren")
TOKEN = "aB3-dE5_gH7iJ9kL1mN3pQ"

FIRSTS = (
    ("Sol", "2026-09-14", 480, "own"),
    ("Wren", "2026-09-14", 510, "shared"),
    ("Linnet", "2026-09-14", 510, "link"),
)

SAMPLES: tuple[Message, ...] = (
    InviteShown(to=TO, token=TOKEN, name="Ines", role="tutor"),
    InviteShown(to=TO, token=TOKEN, name="Tove", role="parent", household="Bramble", by="Ines"),
    InviteShown(to=TO, token=TOKEN, name="Opa", role="grader", household="Bramble", by="Tove"),
    InviteShown(to=TO, token=TOKEN, name="Wren", role="student", household="Bramble", by="Ines"),
    LinkUsed(to=TO),
    LinkUsed(to=TO, why="other", name="Tove"),
    LinkUsed(to=TO, why="same", name="Tove"),
    LinkLeft(to=TO),
    Welcome(to=TO, name="Ines", roles=("tutor",)),
    Welcome(to=TO, name="Tove", roles=("parent",), tutor="Ines", students=BOTH),
    Welcome(to=TO, name="Opa", roles=("grader",), students=BOTH),
    Welcome(to=TO, name="Alder", roles=("parent",), tutor="Ines", students=BOTH, agreed=True),
    Welcome(to=TO, name="Wren", roles=("student",)),
    StudentWaits(to=TO, name="Wren"),
    PhoneMoved(to=TO, name="Tove"),
    PhoneMoved(to=TO, name="Tove", why="unlinked"),
    ConsentAsked(to=TO, household=HOME, students=BOTH, tutor="Ines", version=1),
    ConsentGiven(to=TO, firsts=FIRSTS),
    ConsentGiven(to=TO, firsts=(), already=True),
    ConsentLater(to=TO),
    AskWithdraw(to=TO, household=HOME, students=BOTH),
    Withdrawn(to=TO, students=BOTH),
    TutorTold(to=TO, what="linked", name="Tove", household="Bramble", role="parent", person=PersonId(4)),
    TutorTold(to=TO, what="agreed", name="Tove", household="Bramble"),
    TutorTold(to=TO, what="not-now", name="Tove", household="Bramble"),
    TutorTold(to=TO, what="withdrawn", name="Tove", household="Bramble"),
    Privacy(to=TO, students=BOTH, tutor="Ines", agreed=("Tove", "2026-09-10")),
    Privacy(to=TO, students=("Juniper",), tutor="Ines"),
    LanguageChosen(to=TO, choices=("en", "es")),
    LanguageChosen(to=TO, language="en"),
    DigestChoice(to=TO, student=WREN, name="Wren", days=(("7", "2026-09-14"), ("9", "2026-09-15"))),
    TutorTold(to=TO, what="erase", name="Tove", household="Bramble"),
    Exported(to=TO, household="Bramble", filename="evensum-2026-09-14.zip", content=b"PK", photos=2),
    EraseKept(to=TO),
    NoDay(to=TO, name="Wren", date="2026-09-13"),
)
