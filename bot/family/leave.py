"""A family takes its records along, and has everything erased, with a week to change its mind."""

from __future__ import annotations

import io
import zipfile
from datetime import date, datetime, timedelta

import msgspec
from sqlalchemy.orm import Session

from bot.family import consent
from bot.messages import EraseKept, Exported, ExportedPhotos, Line, Message
from bot.records import invites, leaving, people, wishes
from bot.records.people import Household
from bot.records.wishes import Wish
from bot.school.asking import Asked
from bot.school.changes import Did, Scene, Step, propose
from bot.school.names import take_household
from bot.school.spreadsheet import csv_text
from bot.school.wishes import WishKind
from bot.vocabulary import HouseholdId

GRACE = timedelta(days=7)
"""Time to change one's mind (common practice, no source)."""
PHOTOS_A_PART = 20
"""Photos in one file; the service takes files of up to 50 MB."""
SCHEMA = 1
"""Version of the export's layout."""
ABOUT = """\
Everything that Evensum keeps of this household.

rows.json    all rows by table, times in UTC (ISO 8601); "schema" is the version of this layout
days.csv     one line a school day
answers.csv  one line an answer, exactly as typed, with how it was graded last
CSV after RFC 4180: commas, double quotes, CR LF, UTF-8. A cell that a spreadsheet might take for a formula
begins with an apostrophe.
schema.json  the layout of rows.json, as a JSON Schema (draft 2020-12)
Photos come in files of their own, named by date and child; rows.json lists them under "file".
"""


def export(asked: Asked) -> list[Message]:
    """Everything that is kept of a household, as one file in the chat."""
    home, rest = take_household(asked)
    if rest:
        raise asked.wrong("why-only-a-name")
    rows = leaving.everything_of(asked.s, home.id)
    day = asked.at.date().isoformat()
    said: list[Message] = [
        Exported(
            to=asked.person.chat,
            household=home.name,
            filename=f"evensum-{day}.zip",
            content=archive(rows),
            photos=len(rows["file"]),
        )
    ]
    names = {each["id"]: str(each["name"]) for each in rows["person"]}
    photos = [
        (str(each["path"]), f"{each['date']} {names.get(each['student_id'], '')} {each['id']}")
        for each in rows["file"]
        if each["path"]
    ]
    parts = [photos[n : n + PHOTOS_A_PART] for n in range(0, len(photos), PHOTOS_A_PART)]
    return said + [
        ExportedPhotos(
            to=asked.person.chat,
            household=home.name,
            filename=f"evensum-{day}-photos-{n}.zip",
            photos=tuple(part),
            part=n,
            parts=len(parts),
        )
        for n, part in enumerate(parts, start=1)
    ]


def archive(rows: dict[str, list[dict[str, object]]]) -> bytes:
    """Pack rows as a zip of JSON and CSV."""
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as into:
        into.writestr("about.txt", ABOUT)
        into.writestr("schema.json", msgspec.json.format(msgspec.json.encode(leaving.schema(SCHEMA))))
        into.writestr("rows.json", msgspec.json.format(msgspec.json.encode({"schema": SCHEMA, "rows": rows})))
        into.writestr("days.csv", csv_text(_days(rows)))
        into.writestr("answers.csv", csv_text(_answers(rows)))
    return packed.getvalue()


def _days(rows: dict[str, list[dict[str, object]]]) -> list[list[object]]:
    names = {each["id"]: each["name"] for each in rows["person"]}
    head: list[object] = ["student", "date", "kind", "lesson", "stage", "minutes"]
    return [head] + [
        [
            names.get(day["student_id"], ""),
            day["date"],
            day["kind"],
            day["lesson"] or "",
            day["stage"],
            round(int(str(day["seconds"])) / 60),
        ]
        for day in rows["school_day"]
    ]


def _answers(rows: dict[str, list[dict[str, object]]]) -> list[list[object]]:
    names = {each["id"]: each["name"] for each in rows["person"]}
    dates = {each["id"]: each["date"] for each in rows["school_day"]}
    items = {each["id"]: each for each in rows["item"]}
    graded = {each["attempt_id"]: each for each in rows["grading"]}  # in order: the newest stays
    head: list[object] = ["student", "date", "lesson", "question", "typed", "verdict", "at"]
    lines = [head]
    for attempt in rows["attempt"]:
        item = items[attempt["item_id"]]
        drawn = msgspec.json.decode(str(item["data"]))
        lines.append(
            [
                names.get(item["student_id"], ""),
                dates.get(item["day_id"], ""),
                item["lesson"],
                drawn["ask"].replace("`", ""),
                attempt["typed"],
                graded[attempt["id"]]["verdict"] if attempt["id"] in graded else "",
                attempt["at"],
            ]
        )
    return lines


def erase(asked: Asked) -> list[Message]:
    """Everything stops now, and in a week everything of the household is gone."""
    home, rest = take_household(asked)
    if rest:
        raise asked.wrong("why-only-a-name")
    if _asked_for(asked.s, home) is not None:
        raise asked.wrong("why-erase-asked")
    on = asked.at.date() + GRACE
    step: Step = {"op": "stop", "household": home.id}
    return propose(
        asked,
        "erase",
        [Line("line-erase", {"household": home.name, "date_on": on.isoformat()})],
        wished=[Wish(WishKind.ERASE, {}, on, None, household=home.id)],
        steps=[step],
        notes=[Line("note-erase")],
    )


def _asked_for(s: Session, home: Household) -> Wish | None:
    far = date.max
    found = wishes.wishes_for(s, 0, home.id, 0, date.min, far)  # type: ignore[arg-type]
    return next((each for each in found if each.kind == WishKind.ERASE), None)


def keep(asked: Asked) -> list[Message]:
    """Nothing is erased after all; the days begin again only once a parent agrees anew."""
    home, rest = take_household(asked)
    if rest:
        raise asked.wrong("why-only-a-name")
    wish = _asked_for(asked.s, home)
    if wish is None:
        raise asked.wrong("why-nothing-to-keep")
    wishes.end_wish(asked.s, wish.id, wish.starts - GRACE - timedelta(days=1))
    return [EraseKept(to=asked.person.chat)]


def _stop(scene: Scene, step: Step) -> Did:
    home = people.household(scene.s, HouseholdId(int(str(step["household"]))))
    said = consent.stop(scene.s, home, scene.person, scene.at, what="erase") if home.consented else []
    return Did({**step, "stopped": home.consented}, said)


def _go_on(scene: Scene, step: Step) -> list[Message] | None:
    """Taking it back is agreeing again, in the same breath."""
    home = people.household(scene.s, HouseholdId(int(str(step["household"]))))
    if step.get("stopped") and not home.consented:
        invites.set_consent(scene.s, home.id, scene.person.id, consent.VERSION, scene.at, given=True)
    return []


STOP = (_stop, _go_on)
"""The effect of asking for everything to be erased."""


def due(s: Session, now: datetime) -> list[HouseholdId]:
    """Households whose week is over."""
    return wishes.households_wishing(s, WishKind.ERASE, now.date())


def erase_now(s: Session, home: HouseholdId) -> list[str]:
    """Remove a household for good; return the paths of photos that are to be deleted as well."""
    return leaving.erase(s, home)
