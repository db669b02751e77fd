"""Clock times, by the datetime library on the question as printed."""

from __future__ import annotations

import re
from datetime import datetime, timedelta


def _times(ask):
    return [
        datetime.strptime(f"{found} +0000", "%I:%M %p %z") for found in re.findall(r"\d+:\d\d [ap]m", ask)
    ]


def _clock(moment):
    return f"{moment.hour % 12 or 12}:{moment.minute:02} {'am' if moment.hour < 12 else 'pm'}"


def _length(minutes):
    return f"{minutes // 60} h {minutes % 60} min"


def _lasting(ask):
    hours, minutes = re.search(r"(\d+) hours? and (\d+) minutes", ask).groups()
    return timedelta(hours=int(hours), minutes=int(minutes))


def how_long(ask):
    start, end = _times(ask)
    return _length((end - start).seconds // 60)


def over_noon(ask):
    start, end = _times(ask)
    return _length((end - start).seconds // 60)


def when_it_ends(ask):
    return _clock(_times(ask)[0] + _lasting(ask))


def when_it_began(ask):
    return _clock(_times(ask)[0] - _lasting(ask))


def catch_the_tram(ask):
    leaves, tram = _times(ask)
    (minutes,) = re.findall(r"in (\d+) minutes", ask)
    return leaves + timedelta(minutes=int(minutes)) < tram


def dough_must_rest(ask):
    (minutes,) = re.findall(r"for (\d+) minutes", ask)
    return _clock(_times(ask)[0] - timedelta(minutes=int(minutes)))
