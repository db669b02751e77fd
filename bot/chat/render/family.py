"""How we say what people hear on joining, agreeing and leaving."""

from __future__ import annotations

from bot.chat.render.registry import button, renders, say
from bot.chat.render.tutoring import clock, offered
from bot.chat.rendered import Button, Document, Rendered
from bot.chat.words import Text, Words, join
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
    NoDay,
    PhoneMoved,
    Privacy,
    StudentWaits,
    TutorTold,
    Welcome,
    Withdrawn,
)


@renders(InviteShown)
def invite_shown(words: Words, m: InviteShown) -> Rendered:
    """For whom the link is."""
    text = words(f"invite-{m.role}", name=m.name, household=m.household, by=m.by)
    yes = button(words, "button-yes-me", f"f-yes:{m.token}")
    return say(text, buttons=[[yes, button(words, "button-no-me", "f-no:")]])


@renders(LinkUsed)
def link_used(words: Words, m: LinkUsed) -> Rendered:
    """The link can't be used."""
    return say(words(f"link-{m.why}", name=m.name))


@renders(LinkLeft)
def link_left(words: Words, m: LinkLeft) -> Rendered:
    """Nothing was linked."""
    return say(words("link-left"))


@renders(Welcome)
def welcome(words: Words, m: Welcome) -> Rendered:
    """The chat is linked; it is offered its commands."""
    texts: list[Text] = []
    if "tutor" in m.roles:
        texts += [words("welcome-tutor", name=m.name), words("welcome-tutor-how")]
    if "parent" in m.roles:
        students = words.list(list(m.students))
        texts.append(words("welcome-parent", name=m.name, tutor=m.tutor, students=students))
        if m.agreed:
            texts.append(words("welcome-parent-agreed"))
    if m.roles == ("grader",):
        texts.append(words("welcome-grader", name=m.name, students=words.list(list(m.students))))
    if m.roles == ("student",):
        texts.append(words("welcome-student", name=m.name))
    return say(*texts, commands=offered(words, m.roles))


@renders(StudentWaits)
def student_waits(words: Words, m: StudentWaits) -> Rendered:
    """A parent has to agree first."""
    return say(words("student-waits", name=m.name), commands=offered(words, ["student"]))


@renders(PhoneMoved)
def phone_moved(words: Words, m: PhoneMoved) -> Rendered:
    """Nothing more comes to this chat."""
    return say(words(f"phone-{m.why}", name=m.name), commands=())


def _what_is_kept(words: Words, tutor: str) -> list[Text]:
    keys = ("kept", "why", "who", "child", "score", "end", "law")
    return [words(f"consent-{key}", tutor=tutor) for key in keys]


@renders(ConsentAsked)
def consent_asked(words: Words, m: ConsentAsked) -> Rendered:
    """What is kept and why, who reads what, how to end it."""
    agree = button(words, "button-agree", f"f-agree:{m.household}")
    later = button(words, "button-not-now", f"f-not-now:{m.household}")
    head = words("consent-head", students=words.list(list(m.students)))
    return say(head, *_what_is_kept(words, m.tutor), buttons=[[agree, later]])


FIRST = {"own": "consent-first", "shared": "consent-first-shared", "link": "consent-first-link"}
"""Where a first day comes, and the words for it."""


@renders(ConsentGiven)
def consent_given(words: Words, m: ConsentGiven) -> Rendered:
    """Thanks, and what happens next."""
    if m.already:
        return say(words("consent-already"))
    lines = [
        words(
            FIRST[where],
            name=name,
            day=words.date(day),
            at=clock(at),
        )
        for name, day, at, where in m.firsts
        if day
    ]
    return say(words("consent-given"), join(lines, "\n"))


@renders(ConsentLater)
def consent_later(words: Words, m: ConsentLater) -> Rendered:
    """Nothing is sent."""
    return say(words("consent-later"))


@renders(AskWithdraw)
def ask_withdraw(words: Words, m: AskWithdraw) -> Rendered:
    """What withdrawing does."""
    stop = button(words, "button-stop", f"f-withdraw:{m.household}")
    stay = button(words, "button-stay", f"f-stay:{m.household}")
    return say(words("ask-withdraw", students=words.list(list(m.students))), buttons=[[stop], [stay]])


@renders(Withdrawn)
def withdrawn(words: Words, m: Withdrawn) -> Rendered:
    """Everything stopped."""
    return say(words("withdrawn", students=words.list(list(m.students))))


@renders(TutorTold)
def tutor_told(words: Words, m: TutorTold) -> Rendered:
    """To the tutor: somebody joined, agreed or left."""
    role = words.label(f"role-{m.role}") if m.role else ""
    rows: list[list[Button]] = []
    if m.what == "linked" and m.person:
        rows = [[button(words, "button-unlink", f"t-run:unlink @{m.person}")]]
    return say(words(f"tutor-told-{m.what}", name=m.name, household=m.household, role=role), buttons=rows)


@renders(Privacy)
def privacy(words: Words, m: Privacy) -> Rendered:
    """What is kept and why."""
    if m.agreed:
        agreed = words("privacy-agreed", parent=m.agreed[0], day=words.date(m.agreed[1], "d MMMM y"))
    else:
        agreed = words("privacy-not-agreed")
    head = words("privacy-head", students=words.list(list(m.students)))
    lasts = words("privacy-months", months=m.keep_months) if m.keep_months else words("privacy-no-limit")
    return say(head, *_what_is_kept(words, m.tutor), lasts, agreed)


def _choice(side: str, language: str) -> str:
    return f"language:{language}" if side == "s" else f"{side}-run:language {language}"


@renders(LanguageChosen)
def language_chosen(words: Words, m: LanguageChosen) -> Rendered:
    """Language was chosen, or is to be."""
    if m.language:
        roles = {"t": ("tutor",), "s": ("student",), "g": ("grader",)}.get(m.side, ("parent",))
        return say(words("language-chosen"), commands=offered(words, roles))
    buttons = [
        [button(words, f"language-name-{each}", f"{m.side}-run:language {each}") for each in m.choices]
    ]
    return say(words("language-choose"), buttons=buttons)


@renders(DigestChoice)
def digest_choice(words: Words, m: DigestChoice) -> Rendered:
    """Which day's message?"""
    rows = [[Button(words.date(day), f"digest:{ref}")] for ref, day in m.days]
    return say(words("digest-choice", name=m.name), buttons=rows)


@renders(NoDay)
def no_day(words: Words, m: NoDay) -> Rendered:
    """There is no school day of that date."""
    return say(words("no-day", name=m.name, day=words.date(m.date)))


@renders(Exported)
def exported(words: Words, m: Exported) -> Rendered:
    """Everything that is kept, as a file."""
    text = words("exported", household=m.household, photos=m.photos)
    return say(text, documents=(Document(m.filename, m.content),))


@renders(EraseKept)
def erase_kept(words: Words, m: EraseKept) -> Rendered:
    """Nothing is erased."""
    return say(words("erase-kept"))
