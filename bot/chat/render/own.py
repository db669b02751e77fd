"""How we speak of a tutor's own items and lessons."""

from __future__ import annotations

from bot.chat.render.registry import button, cut, renders, say
from bot.chat.render.tutoring import fitted, in_rows
from bot.chat.rendered import Button, Document, Drawing, Rendered
from bot.chat.words import Text, Words, bold, join, plain
from bot.messages import (
    ExportedPhotos,
    FaultRow,
    FileComes,
    HandoverAsked,
    HandoverTold,
    OwnFaults,
    OwnListed,
    OwnShown,
)

PHOTOS = "photo-archive"
"""What isn't drawn but packed: photos beside the database."""


@renders(OwnListed)
def own_listed(words: Words, m: OwnListed) -> Rendered:
    """All pieces, a button for each."""
    if not m.rows:
        return say(words("own-none"), words("own-how"))
    lines = []
    for row in m.rows:
        line = bold(f"{row.own}") + " " + plain(row.title).marked("italic") + " · " + words(f"own-{row.what}")
        if row.versions > 1:
            line = line + " · " + words("own-version-of", v=row.version, count=row.versions)
        lines.append(line)
    buttons = [Button(cut(f"{row.own} {row.title}", 24), f"t-run:own {row.own}") for row in m.rows[-24:]]
    return say(words("own-head"), fitted(words, lines), words("own-how"), buttons=in_rows(buttons, 2))


@renders(OwnShown)
def own_shown(words: Words, m: OwnShown) -> Rendered:
    """One piece with its text, its versions and whom to give it to."""
    head = bold(f"{m.own}") + " " + plain(m.title).marked("italic")
    text = plain(m.text + ("…" if m.more else "")).marked("code" if m.what == "item" else "pre")
    versions = [
        words("own-version-row", v=n, day=words.date(day), now=n == m.version) for n, day in m.versions
    ]
    give = [
        button(words, "button-own-give", f"t-run:give #{student} {m.own}", name=cut(name, 20))
        for student, name in m.students
    ]
    back = [
        button(words, "button-own-back", f"t-run:own {m.own} v{n}", v=n)
        for n, _ in m.versions
        if n != m.version
    ]
    away = [button(words, "button-own-away", f"t-run:own {m.own} away")]
    rows = [*in_rows(give, 2), *in_rows(back, 4), away]
    return say(head, text, join(versions, "\n") if len(versions) > 1 else Text(), buttons=rows)


@renders(OwnFaults)
def own_faults(words: Words, m: OwnFaults) -> Rendered:
    """What to mend, line by line."""
    head = words("own-faults-head", title=m.title) if m.title else words("own-faults-head-typed")
    lines = [_fault(words, row) for row in m.rows]
    more = words("day-more", count=m.more) if m.more else Text()
    return say(head, fitted(words, lines), more, words("own-faults-end"))


def _fault(words: Words, row: FaultRow) -> Text:
    said = " ".join(part for part in (row.what, row.fix) if part)
    line = words("own-fault-line", n=row.line) + " " + said if row.line else plain(said)
    return line + "\n" + plain(row.shown).marked("code") if row.shown else line


@renders(FileComes)
def file_comes(words: Words, m: FileComes) -> Rendered:
    """The file is being read."""
    return say(words("file-comes-full" if m.full else "file-comes", name=m.name))


@renders(ExportedPhotos)
def exported_photos(words: Words, m: ExportedPhotos) -> Rendered:
    """A file of photos."""
    text = words("exported-photos", household=m.household, count=len(m.photos), part=m.part, parts=m.parts)
    return say(text, documents=(Document(m.filename, Drawing(PHOTOS, m.photos)),))


@renders(HandoverAsked)
def handover_asked(words: Words, m: HandoverAsked) -> Rendered:
    """Whether a household is taken over."""
    row = [
        button(words, "button-take-over", f"t-take:{m.offer}"),
        button(words, "button-not-now", f"t-not-now:{m.offer}"),
    ]
    students = words.list(list(m.students))
    return say(words("handover-asked", household=m.household, names=students, tutor=m.tutor), buttons=[row])


@renders(HandoverTold)
def handover_told(words: Words, m: HandoverTold) -> Rendered:
    """What became of it."""
    return say(words(f"handover-{m.why}", household=m.household, tutor=m.tutor))
