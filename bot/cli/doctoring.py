"""What `evensum doctor` looks at, one finding each, and what to do about every fault."""

from __future__ import annotations

import asyncio
import shutil
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from enum import Enum
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

import aiohttp
from sqlalchemy.exc import SQLAlchemyError

from bot.app import line_of, open_database
from bot.chat.asking import Known, ask
from bot.course.faults import CourseErrors
from bot.course.usable import usable_course
from bot.records import inbox, migrating, outbox
from bot.records.base import transaction
from bot.records.migrating import Tables
from bot.records.outbox import State as Sending
from bot.settings import Settings
from bot.troubles import Trouble

WRONG_BY = 30
"""Seconds that this machine's clock may differ from the service's before days open at the wrong minute."""
LITTLE_ROOM = 500 * 2**20
_NAMED = "`evensum check-content` names every fault with its line."


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing that was looked at."""

    class State(Enum):
        """Good, a fault, or something to know."""

        GOOD = 1
        NOTE = 2
        FAULT = 3

    state: State
    what: str
    says: str
    fix: str = ""


def good(what: str, says: str) -> Finding:
    return Finding(Finding.State.GOOD, what, says)


def note(what: str, says: str, fix: str = "") -> Finding:
    return Finding(Finding.State.NOTE, what, says, fix)


def fault(what: str, says: str, fix: str) -> Finding:
    return Finding(Finding.State.FAULT, what, says, fix)


def examine(settings: Settings) -> Iterator[Finding]:
    """Look at everything in turn; a fault in one place hides none in another."""
    yield good("settings", f"read; the bot's token is {'set' if settings.token else 'not set'}")
    yield from _database(settings)
    yield from _folders(settings)
    yield _zones()
    yield _content(settings)
    if settings.token:
        yield from asyncio.run(_service(settings))
    else:
        yield fault("service", "there is no token", "Set EVENSUM_TOKEN; `evensum demo` needs none.")


def _database(settings: Settings) -> Iterator[Finding]:
    try:
        engine = open_database(settings.database)
        where = engine.url.render_as_string(hide_password=True)
        try:
            migrating.require_current(engine)
        except Trouble as trouble:
            yield fault("database", trouble.faults[0].what, trouble.faults[0].fix)
            if migrating.look(engine).tables is not Tables.CURRENT:
                return
        yield good("database", where)
        with transaction(engine) as s:
            counts, aside = outbox.count(s), inbox.aside(s)
            bots, waiting = inbox.bots(s), inbox.count_unfinished(s)
    except SQLAlchemyError as error:
        yield fault("database", f"can't be opened ({type(error).__name__})", "Check EVENSUM_DATABASE_URL.")
        return
    mine = int(settings.token.partition(":")[0]) if settings.token else None
    if mine is not None and bots and bots != {mine}:
        others = ", ".join(map(str, sorted(bots - {mine})))
        yield fault(
            "token",
            f"it belongs to bot {mine}, but this database was used with bot {others}",
            "People's chats are with that bot. Use its token, or another database.",
        )
    if aside:
        kinds = ", ".join(sorted({kind for _, kind in aside}))
        numbers = ", ".join(str(number) for number, _ in aside[:10])
        yield fault(
            "updates", f"{len(aside)} set aside after failing ({kinds}): {numbers}", "Please report this."
        )
    else:
        yield good("updates", f"{waiting} waiting, none set aside")
    unsure, given_up = counts.get(Sending.UNSURE, 0), counts.get(Sending.GIVEN_UP, 0)
    says = f"{counts.get(Sending.WAITING, 0)} waiting, {unsure} held, {given_up} given up"
    yield note("messages", says) if unsure or given_up else good("messages", says)


def _folders(settings: Settings) -> Iterator[Finding]:
    for name, folder in (("photos", settings.files), ("backups", settings.backups)):
        try:
            folder.mkdir(parents=True, exist_ok=True)
            probe = folder / ".probe"
            probe.touch()
            probe.unlink()
            free = shutil.disk_usage(folder).free
        except OSError as error:
            yield fault(name, f"{folder}: {error.strerror}", "Give this user leave to write there.")
            continue
        if free < LITTLE_ROOM:
            yield fault(name, f"{folder}: only {free // 2**20} MiB free", "Make room on that disk.")
        else:
            yield good(name, f"{folder}, {free // 2**30} GiB free")
    kept = sorted(settings.backups.glob("evensum-*.zip")) if settings.backups.is_dir() else []
    if not kept:
        yield note("backup", "there is none yet", "`evensum backup` makes one.")
    else:
        age = datetime.now(UTC) - datetime.fromtimestamp(kept[-1].stat().st_mtime, UTC)
        old = age > timedelta(days=7)
        says = f"the newest is {age.days} day(s) old"
        yield note("backup", says, "`evensum backup` makes one.") if old else good("backup", says)


def _zones() -> Finding:
    try:
        ZoneInfo("America/New_York")
    except ZoneInfoNotFoundError:
        return fault("time zones", "the list of time zones is missing", "Install the package tzdata.")
    return good("time zones", "known")


def _content(settings: Settings) -> Finding:
    try:
        course, faults = usable_course(settings.content)
    except CourseErrors as errors:
        return fault(
            "content", f"no lesson of {settings.content} can be taught: {errors.faults[0].what}", _NAMED
        )
    if faults:
        files = sorted({one.file.rpartition("/")[2] for one in faults})
        names = ", ".join(files[:5]) + (f" and {len(files) - 5} more" if len(files) > 5 else "")
        return fault(
            "content",
            f"{len(faults)} fault(s) in {settings.content}; lessons that have one are left out: {names}",
            _NAMED,
        )
    return good("content", f"{len(course.lessons)} lessons in {settings.content}")


async def _service(settings: Settings) -> list[Finding]:
    found = [await _clock(settings)]
    try:
        known = await ask(line_of(settings))
    except Trouble as trouble:
        found.append(fault("service", trouble.faults[0].what, trouble.faults[0].fix))
    else:
        found.append(good("service", f"@{known.name} at {settings.api}"))
        found.append(_delivery(settings, known))
    return found


def _delivery(settings: Settings, known: Known) -> Finding:
    waiting = f"{known.waiting} update(s) waiting at the service"
    if settings.webhook and known.hook and known.hook != settings.webhook:
        return fault(
            "updates' way", f"the service brings them to {known.hook}", "`evensum run` sets it anew."
        )
    if settings.webhook and known.last_error:
        fix = "The address must be reachable from outside, with a valid certificate."
        return fault("updates' way", f"the service says: {known.last_error}; {waiting}", fix)
    if not settings.webhook and known.hook:
        return note("updates' way", f"a webhook is set ({known.hook}); `evensum run` takes it away")
    return good("updates' way", f"{'webhook' if settings.webhook else 'polling'}; {waiting}")


async def _clock(settings: Settings) -> Finding:
    """Compare this machine's clock with the date in the service's answer."""
    try:
        async with (
            aiohttp.ClientSession(timeout=aiohttp.ClientTimeout(total=10)) as session,
            session.get(settings.api, allow_redirects=False) as answer,
        ):
            said = answer.headers.get("Date")
    except (aiohttp.ClientError, TimeoutError):
        said = None
    if said is None:
        return note("clock", f"{datetime.now(UTC):%H:%M:%S} UTC; the service couldn't be asked")
    theirs = datetime.strptime(said, "%a, %d %b %Y %H:%M:%S GMT").replace(tzinfo=UTC)
    off = abs((datetime.now(UTC) - theirs).total_seconds())
    if off > WRONG_BY:
        return fault(
            "clock", f"{off:.0f} s off the service's", "Let the machine set its clock by the net (NTP)."
        )
    return good("clock", f"{datetime.now(UTC):%H:%M:%S} UTC, as the service's")
