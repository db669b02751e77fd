"""What people hear on joining, agreeing and leaving, and what a parent hears on a command."""

from __future__ import annotations

from bot.messages.base import Message
from bot.vocabulary import HouseholdId, PersonId, StudentId


class InviteShown(Message, frozen=True, kw_only=True):
    """A link was opened: for whom it is. Nothing is linked before *Yes*. `role`: tutor, parent, student."""

    token: str
    name: str
    role: str
    household: str = ""
    by: str = ""


class LinkUsed(Message, frozen=True, kw_only=True):
    """A link that can't be used: it is over, was used, or is for somebody else. `why`: over, other, same."""

    why: str = "over"
    name: str = ""


class LinkLeft(Message, frozen=True, kw_only=True):
    """*No*: nothing was linked; the link still works."""


class Welcome(Message, frozen=True, kw_only=True):
    """The chat is linked. The roles say which commands it is offered."""

    name: str
    roles: tuple[str, ...]
    tutor: str = ""
    students: tuple[str, ...] = ()
    agreed: bool = False
    """A parent of the household agreed before."""


class StudentWaits(Message, frozen=True, kw_only=True):
    """A student's chat is linked, but no parent agreed yet."""

    name: str


class PhoneMoved(Message, frozen=True, kw_only=True):
    """To a chat that was let go. `why`: moved (a new phone was linked), unlinked (by the tutor)."""

    name: str
    why: str = "moved"


class ConsentAsked(Message, frozen=True, kw_only=True):
    """What is kept and why, who reads what, and how to end it; with *I agree* and *Not now*."""

    household: HouseholdId
    students: tuple[str, ...]
    tutor: str
    version: int


class ConsentGiven(Message, frozen=True, kw_only=True):
    """To the parent: thanks, and what happens next.

    Firsts are (student, date, minutes after midnight, where): where is own, shared (the parent's phone), or
    link (a link of the student's own waits to be opened; till then the day comes on the parent's phone).
    """

    firsts: tuple[tuple[str, str, int, str], ...]
    already: bool = False


class ConsentLater(Message, frozen=True, kw_only=True):
    """*Not now*: nothing is sent; the question can be had again."""


class AskWithdraw(Message, frozen=True, kw_only=True):
    """What withdrawing does, with *Stop everything* and *Leave it*."""

    household: HouseholdId
    students: tuple[str, ...]


class Withdrawn(Message, frozen=True, kw_only=True):
    """Consent was taken back; everything stopped."""

    students: tuple[str, ...]


class TutorTold(Message, frozen=True, kw_only=True):
    """To the tutor. `what`: linked, agreed, withdrawn, not-now, blocked. `person` can be unlinked again."""

    what: str
    name: str
    household: str = ""
    role: str = ""
    person: PersonId = PersonId(0)


class Privacy(Message, frozen=True, kw_only=True):
    """What is kept and why, and who reads what, on one screen."""

    students: tuple[str, ...]
    tutor: str
    agreed: tuple[str, str] | None = None
    """(Parent, ISO date) of the consent in force."""
    keep_months: int = 0
    """Months after which photos and answers are removed; 0: only when erased."""


class LanguageChosen(Message, frozen=True, kw_only=True):
    """Language was chosen, or is to be: buttons for each."""

    language: str = ""
    choices: tuple[str, ...] = ()
    side: str = "f"


class DigestChoice(Message, frozen=True, kw_only=True):
    """Which day's message? Buttons for the last days of a student."""

    student: StudentId
    name: str
    days: tuple[tuple[str, str], ...]


class NoDay(Message, frozen=True, kw_only=True):
    """There is no school day of that date."""

    name: str
    date: str


class Exported(Message, frozen=True, kw_only=True):
    """Everything that is kept of a household, as a file."""

    household: str
    filename: str
    content: bytes
    photos: int = 0


class EraseKept(Message, frozen=True, kw_only=True):
    """Nothing is erased after all."""
