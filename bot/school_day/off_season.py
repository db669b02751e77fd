"""The off-season as a student wants it: ten minutes, three days a week, while there is no school."""

from __future__ import annotations

from sqlalchemy.orm import Session

from bot.messages import Message, OffSeason
from bot.records import people, wishes
from bot.records.wishes import Wish
from bot.school import dates
from bot.school.orders import NO, YES
from bot.school.when import fold
from bot.school.wishes import WishKind
from bot.school_day.asking import Here
from bot.vocabulary import PersonId


def asked_for(s: Session, here: Here, words: str) -> list[Message]:
    """`/offseason on`, `/offseason off`; without a word, how it stands."""
    student, today = here.student, dates.today(here.student, here.at)
    word = fold(words.strip())
    if word not in YES | NO:
        return [OffSeason(to=here.chat, on=dates.off_season_wanted(s, student, today))]
    wish = Wish(WishKind.OFF_SEASON, {"on": word in YES}, today, None, student=student.id)
    change = wishes.propose(s, PersonId(student.id), "offseason", [wish], here.at)
    wishes.confirm(s, change, here.at)
    people.change_student(s, student.id, next_look=people.EARLY)
    return [OffSeason(to=here.chat, on=word in YES)]
