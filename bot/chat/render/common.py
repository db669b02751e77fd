"""How we say what anybody may hear."""

from __future__ import annotations

from bot.chat.render.registry import renders, say
from bot.chat.render.tutoring import offered
from bot.chat.rendered import Rendered
from bot.chat.words import Words, join, plain
from bot.messages import Help, LeaveGroup, NoSuchCommand, NotForYou, NotLinked, Trouble

EXAMPLES = "3/4,  2 1/2,  -7,  x = 4,  4.50"


@renders(NotLinked)
def not_linked(words: Words, m: NotLinked) -> Rendered:
    """One polite line."""
    return say(words("not-linked"))


@renders(LeaveGroup)
def leave_group(words: Words, m: LeaveGroup) -> Rendered:
    """One line, then out."""
    return say(words("leave-group"), leave=True)


@renders(NotForYou)
def not_for_you(words: Words, m: NotForYou) -> Rendered:
    """A button or command that isn't for who is speaking."""
    return say(words(f"not-for-you-{m.why}"))


@renders(NoSuchCommand)
def no_such_command(words: Words, m: NoSuchCommand) -> Rendered:
    """A command that isn't there."""
    if not m.near:
        return say(words("no-such-command"))
    near = words.list([f"/{name}" for name in m.near])
    return say(words("no-such-command-near", near=near))


@renders(Trouble)
def trouble(words: Words, m: Trouble) -> Rendered:
    """Our fault, said first and as ours."""
    return say(words("trouble"))


@renders(Help)
def help_(words: Words, m: Help) -> Rendered:
    """What one can do here."""
    lines = []
    if m.role == "student":
        lines = [plain(f"/{name}  {what}") for name, what in offered(words, ["student"])]
    return say(words(f"help-{m.role}", examples=EXAMPLES), join(lines, "\n"))
