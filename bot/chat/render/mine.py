"""How we say a student's own small view, and the map as a picture."""

from __future__ import annotations

from bot.chat.render.evening import SIGNS, week_said
from bot.chat.render.paper_shapes import chart_words
from bot.chat.render.registry import button, renders, say
from bot.chat.rendered import Drawing, Picture, Rendered
from bot.chat.words import Words, join
from bot.messages import MapPicture, MyBest, MyView, MyWeek


@renders(MyView)
def my_view(words: Words, m: MyView) -> Rendered:
    """The week in signs, and three buttons."""
    signs = " ".join(SIGNS[sign] for sign in m.week if SIGNS.get(sign))
    lines = [words("mine-head", name=m.name)]
    if signs:
        lines.append(words("digest-week", week=signs))
    if m.lessons:
        lines.append(words("mine-lessons", titles=words.list(list(m.lessons))))
    rows = [[button(words, f"button-mine-{what}", f"mine:{what}") for what in ("week", "best", "map")]]
    return say(join(lines, "\n"), buttons=rows)


@renders(MyWeek)
def my_week(words: Words, m: MyWeek) -> Rendered:
    """The own week as a picture."""
    return week_said(words, m)


@renders(MyBest)
def my_best(words: Words, m: MyBest) -> Rendered:
    """The own best."""
    lines = []
    if m.facts:
        lines.append(words("mine-facts", right=m.facts[0], out_of=m.facts[1]))
    if m.per_minute is not None:
        lines.append(words("mine-rate", rate=f"{m.per_minute:g}"))
    if m.day:
        day, first, out_of = m.day
        lines.append(words("mine-day", day=words.date(day), first=first, out_of=out_of))
    if m.turned:
        lines.append(words("mine-turned", titles=words.list(list(m.turned))))
    if not lines:
        return say(words("mine-nothing"))
    return say(words("mine-best", name=m.name), join(lines, "\n"))


@renders(MapPicture)
def map_picture(words: Words, m: MapPicture) -> Rendered:
    """How the lessons stand, unit by unit."""
    own = "mine-" if m.own else ""
    names = chart_words(words)
    names |= {state: words.label(f"{own}chart-{key}") for state, key in STATES.items()}
    alt = "\n".join(
        words.label(
            f"{own}map-unit",
            unit=unit.title,
            steady=unit.states.count("steady"),
            shaky=unit.states.count("shaky"),
            rest=unit.states.count("not met"),
        )
        for unit in m.units
    )
    data = {"units": [[unit.title, list(unit.states)] for unit in m.units], "name": m.name, "words": names}
    return say(
        words(f"{own}map-title", name=m.name),
        words(f"{own}map-guess"),
        pictures=(Picture(Drawing("skill-map", data), alt),),
    )


STATES = {"steady": "steady", "shaky": "shaky", "not met": "not-met"}
