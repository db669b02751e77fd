"""Every command there is, in one table: who may use it, and examples that work as they stand.

Help, the commands that a chat is offered, and the test of who may do what are made from this table. A child
on a grown-up's phone is SHARED, one with a chat of their own is STUDENT.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from bot.vocabulary import Role


class Who(StrEnum):
    """For whom a command is."""

    STUDENT = "student"
    SHARED = "shared"
    PARENT = "parent"
    TUTOR = "tutor"
    GRADER = "grader"


_T = frozenset({Who.TUTOR})
_P = frozenset({Who.PARENT})
_GROWN_UP = frozenset({Who.PARENT, Who.TUTOR})
_MARKS = frozenset({Who.PARENT, Who.TUTOR, Who.GRADER})
_CHILD = frozenset({Who.STUDENT, Who.SHARED})
_ALL = frozenset(Who) - {Who.GRADER}
_EVERYBODY = frozenset(Who)


@dataclass(frozen=True, slots=True)
class Spec:
    """One command. Examples have holes that are filled with people and lessons of whoever asks.

    `also` are other names that do the same, most of them Spanish. What a command does is worded under
    `command-<name>`. `offered`: stands in the chat's own list of commands.
    """

    name: str
    who: frozenset[Who]
    group: str
    examples: tuple[str, ...]
    also: tuple[str, ...] = ()
    offered: bool = True

    def allows(self, who: Iterable[Who]) -> bool:
        """Whether one of those may use it."""
        return bool(self.who & frozenset(who))


SPECS: tuple[Spec, ...] = (
    # A student's own
    Spec("day", _CHILD, "day", ("/day",), ("dia",)),
    Spec("paper", _CHILD, "day", ("/paper",), ("papel",)),
    Spec("small", _ALL, "day", ("/small", "/small {student}"), ("corto",)),
    Spec("enough", _CHILD, "day", ("/enough",), ("basta",)),
    Spec("hint", _CHILD, "day", ("/hint",), ("pista",)),
    Spec("tutor", _CHILD, "day", ("/tutor",)),
    Spec("report", _CHILD, "day", ("/report",), ("avisar",)),
    Spec("more", _CHILD, "day", ("/more", "/more weak"), ("extra",)),
    Spec("mine", _CHILD, "day", ("/mine",), ("mio",)),
    Spec("back", frozenset({Who.SHARED}), "day", ("/back",), ("devolver",)),
    # What grown-ups look at
    Spec("needs", _T, "look", ("/needs",), ("quien",)),
    Spec("today", _GROWN_UP, "look", ("/today", "/today {student}"), ("hoy",)),
    Spec(
        "plan",
        _T,
        "look",
        ("/plan {student}", "/plan {student} {weekday}", "/plan {student} week"),
        ("manana",),
    ),
    Spec("item", _T, "look", ("/item {student} {n}", "/item {student} g2"), ("ejercicio",)),
    Spec("map", _T, "look", ("/map {student}", "/map {student} picture"), ("mapa",)),
    Spec("pace", _T, "look", ("/pace {student}",), ("ritmo",)),
    Spec("agenda", _T, "look", ("/agenda {student}",)),
    Spec("doubts", _T, "look", ("/doubts",), ("dudas",)),
    Spec("digest", _GROWN_UP, "look", ("/digest {student}", "/digest {student} {past}"), ("resumen",)),
    Spec("letter", _GROWN_UP, "look", ("/letter {student}", "/letter {student} pdf {past}"), ("carta",)),
    Spec(
        "records",
        _GROWN_UP,
        "look",
        (
            "/records {student}",
            "/records {student} pdf",
            "/records {student} csv",
            "/records {student} handover",
        ),
        ("registro",),
    ),
    Spec("pages", _GROWN_UP, "look", ("/pages {student}", "/pages {student} {past}"), ("fotos",)),
    Spec("sheet", _MARKS, "look", ("/sheet {student}", "/sheet {student} big"), ("hoja",)),
    Spec("key", _MARKS, "look", ("/key {student}",), ("soluciones",)),
    Spec("drop", _T, "next", ("/drop {student} 2", "/drop {student} 2 g1"), ("quitar",)),
    Spec("swap", _T, "next", ("/swap {student} 2", "/swap {student} 2 {lesson}"), ("cambiar",)),
    Spec("repeat", _T, "next", ("/repeat {student} {n}", "/repeat {student} missed"), ("repetir",)),
    Spec("pin", _T, "next", ("/pin {student} {lesson}", "/pin {student} {lesson} {range}"), ("fijar",)),
    Spec("practice", _T, "next", ("/practice {student} {lesson}", "/practice {student} less {lesson}")),
    Spec("items", _T, "next", ("/items {student} 10", "/items {student} auto"), ("cuantos",)),
    Spec("minutes", _GROWN_UP, "next", ("/minutes {student} 30",), ("minutos",)),
    Spec("review", _T, "next", ("/review {student}", "/review {student} {weekday}"), ("repaso",)),
    Spec(
        "own",
        _T,
        "next",
        ("/own {student} 2 sacks hold 9 kg. How much is in one? // 4.5 // decimal", "/own"),
        ("propio",),
    ),
    Spec("give", _T, "next", ("/give {student} {own}",), ("regalar",)),
    Spec("holds", _T, "next", ("/holds {student}",), ("vigente",)),
    Spec("end", _T, "next", ("/end {wish}",), ("terminar",), offered=False),
    Spec("test", _T, "next", ("/test {student}", "/test {student} 1 {weekday}"), ("prueba",)),
    Spec("second", _GROWN_UP, "next", ("/second {student}",), ("segunda",)),
    # Days and hours
    Spec("off", _GROWN_UP, "when", ("/off {student} {weekday}", "/off all {range}"), ("libre",)),
    Spec("sick", _GROWN_UP, "when", ("/sick {student}", "/sick {student} 3"), ("enfermo",)),
    Spec("open", _T, "when", ("/open {student} {date}",), ("abrir",)),
    Spec("week", _T, "when", ("/week {student} mon-thu light fri",), ("semana",)),
    Spec("morning", _GROWN_UP, "when", ("/morning {student} 8:30",), ("temprano",)),
    Spec("evening", _GROWN_UP, "when", ("/evening {household} 19:30",), ("noche",)),
    Spec("begin", _T, "when", ("/begin {student} {date}",), ("empezar",)),
    Spec("pause", _T, "when", ("/pause {student}",), ("pausa",)),
    Spec("resume", _T, "when", ("/resume {student}",), ("seguir",)),
    # The course
    Spec("lesson", _T, "course", ("/lesson {student} {next}", "/lesson {student} 2"), ("leccion",)),
    Spec("finish", _GROWN_UP, "course", ("/finish {student}", "/finish {student} {date}"), ("meta",)),
    Spec("standing", _GROWN_UP, "course", ("/standing {student}",), ("base",)),
    Spec("offseason", _ALL, "when", ("/offseason {student} on", "/offseason {student} off"), ("verano",)),
    Spec("placement", _GROWN_UP, "course", ("/placement {student}",), ("nivel",)),
    Spec("skip", _T, "course", ("/skip {student} {next}",), ("saltar",)),
    Spec("link", _T, "course", ("/link {next} https://example.org/page",), ("enlace",)),
    # Answers
    Spec("accept", _T, "answers", ("/accept {student} {n}",), ("aceptar",)),
    Spec("reject", _T, "answers", ("/reject {student} {n}",), ("rechazar",)),
    Spec("excuse", _T, "answers", ("/excuse {student} {n}",), ("perdonar",)),
    Spec(
        "marks",
        _MARKS,
        "answers",
        ("/marks {student}", "/marks {student} 2 3", "/marks {student} none", "/marks waiting"),
        ("marcas",),
    ),
    # The next day
    Spec("add", _T, "next", ("/add {student} {lesson}", "/add {students} {lesson} 2"), ("mas",)),
    # Words
    Spec("note", _T, "words", ("/note {student} Lovely work on paper today.",), ("nota",)),
    Spec("tell", _T, "words", ("/tell {parent} See you on Thursday.",), ("decir",)),
    # People
    Spec("people", _T, "people", ("/people",), ("gente",)),
    Spec("household", _T, "people", ("/household Hazel Europe/London",), ("familia",)),
    Spec("parent", _T, "people", ("/parent {household} Robin",), ("padre",)),
    Spec("student", _T, "people", ("/student {household} Linnet",), ("alumno",)),
    Spec("handover", _T, "people", ("/handover {household}",), ("traspasar",)),
    Spec("invite", _T, "people", ("/invite {parent}",), ("invitar",)),
    Spec("unlink", _T, "people", ("/unlink {parent}",), ("desligar",)),
    Spec("zone", _T, "people", ("/zone {household} Europe/Madrid",), ("zona",)),
    Spec("country", _T, "people", ("/country {household} GB", "/country {household} none"), ("pais",)),
    Spec("adjust", _GROWN_UP, "people", ("/adjust {student}", "/adjust {student} big"), ("ajustar",)),
    Spec("timing", _GROWN_UP, "people", ("/timing {student} on", "/timing {student} off"), ("tiempo",)),
    # A parent's own
    Spec("hand", _P, "family", ("/hand",), ("dar",)),
    Spec("grader", _P, "family", ("/grader Opa", "/grader {household} Opa"), ("corrector",)),
    Spec("privacy", _P | _CHILD, "family", ("/privacy",), ("privacidad",)),
    Spec("agree", _P, "family", ("/agree",), ("acepto",)),
    Spec("withdraw", _P, "family", ("/withdraw",), ("retirar",)),
    Spec("export", _P, "family", ("/export",), ("llevar",)),
    Spec("erase", _P, "family", ("/erase",), ("borrar",)),
    Spec("keep", _P, "family", ("/keep",), ("conservar",), offered=False),
    # Everybody's
    Spec("define", _ALL, "all", ("/define numerator", "/define right angle"), ("palabra",)),
    Spec("undo", _GROWN_UP, "all", ("/undo",), ("deshacer",)),
    Spec("changes", _GROWN_UP, "all", ("/changes",), ("cambios",)),
    Spec("language", _EVERYBODY, "all", ("/language", "/language es"), ("idioma",)),
    Spec("help", _EVERYBODY, "all", ("/help", "/help off"), ("ayuda",)),
)

BY_NAME: dict[str, Spec] = {name: spec for spec in SPECS for name in (spec.name, *spec.also)}
"""Specs by every name they have."""

GROUPS = tuple(dict.fromkeys(spec.group for spec in SPECS))
"""Groups in the order of the table."""


def who_is(roles: Iterable[Role], *, speaking: bool, shared: bool) -> frozenset[Who]:
    """What somebody at a chat may be taken for.

    While a child speaks on a grown-up's phone, only the child is there.
    """
    if shared and speaking:
        return frozenset({Who.SHARED})
    return frozenset(Who(role.value) for role in roles)


def find(name: str) -> Spec | None:
    """A command by its name, or one of its other names."""
    return BY_NAME.get(name.lower())


def commands_for(roles: Iterable[Role], shared: bool = False) -> tuple[str, ...]:
    """Names of the commands that a chat is offered, in the order of the table.

    `shared`: a child is speaking there on a grown-up's phone.
    """
    who = who_is(roles, speaking=shared, shared=shared)
    return tuple(spec.name for spec in SPECS if spec.offered and spec.allows(who))
