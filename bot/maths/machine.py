"""Runs the tables that lark makes of the grammar.

Lark compiles `maths.lark`; its own loop then spends most of its time on line numbers and token objects,
which a line of a student's text has no use for. This loop is a page long and about five times as fast.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

Build = Callable[[list[Any]], Any]

MOST_TOKENS = 240
"""More than any answer or line of working needs; keeps trees shallow enough to walk by recursion."""


class Stopped(Exception):
    """The text can't be read on: where, and what stood there (`""` at the end of the text)."""

    def __init__(self, place: int, token: str) -> None:
        super().__init__(place, token)
        self.place = place
        self.token = token


if TYPE_CHECKING:
    from lark import Lark


class Machine:
    """A grammar with several doors, and how each rule builds its tree."""

    def __init__(self, grammar: Path, doors: list[str], build: Mapping[str, Build]) -> None:
        from lark import Lark  # a third of the time to import the checker, and only needed here

        made = Lark(grammar.read_text(encoding="utf-8"), parser="lalr", lexer="basic", start=doors)
        table = made.parser.parser._parse_table
        self._starts: dict[str, int] = table.start_states
        self._ends: dict[str, int] = table.end_states
        numbers = {id(rule): n for n, rule in enumerate(made.rules)}
        equal = {rule: n for n, rule in enumerate(made.rules)}
        self._actions: dict[int, dict[str, int]] = {}
        for state, actions in table.states.items():
            row = self._actions[state] = {}
            for name, (action, target) in actions.items():
                if action.name == "Shift":
                    row[str(name)] = target
                else:
                    row[str(name)] = -1 - numbers.get(id(target), equal[target])
        self._rules = [self._rule(rule, build) for rule in made.rules]
        self._scan, self._words = self._scanner(made)

    @staticmethod
    def _rule(rule: Any, build: Mapping[str, Build]) -> tuple[str, int, tuple[int, ...], Build | None, bool]:
        origin = str(rule.origin.name)
        keep = tuple(
            i for i, symbol in enumerate(rule.expansion) if not (symbol.is_term and symbol.filter_out)
        )
        name = rule.alias or origin
        inline = origin.startswith("_")
        passes = inline or (rule.alias is None and rule.options.expand1 and len(keep) == 1)
        return origin, len(rule.expansion), keep, None if passes else build[str(name)], inline

    @staticmethod
    def _scanner(made: Lark) -> tuple[re.Pattern[str], dict[str, str]]:
        from lark.lexer import PatternStr

        words, signs = {}, []
        for terminal in made.terminals:
            pattern = terminal.pattern
            if isinstance(pattern, PatternStr) and pattern.value.isalpha() and len(pattern.value) > 1:
                words[pattern.value] = terminal.name
            elif terminal.name not in made.ignore_tokens:
                signs.append(terminal)
        signs.sort(key=lambda t: (-t.priority, -t.pattern.max_width, -len(t.pattern.value), t.name))
        return re.compile(
            " *(?:" + "|".join(f"(?P<{t.name}>{t.pattern.to_regexp()})" for t in signs) + ")"
        ), words

    def run(self, text: str, door: str) -> Any:
        """Read the text by that door; raises Stopped."""
        tokens = self._tokens(text)
        actions, rules = self._actions, self._rules
        end = self._ends[door]
        states = [self._starts[door]]
        values: list[Any] = []
        for kind, what, place in tokens:
            while True:
                target = actions[states[-1]].get(kind)
                if target is None:
                    raise Stopped(place, what)
                if target >= 0:
                    break
                origin, length, keep, build, inline = rules[-1 - target]
                if build is None and length == 1 and not inline:  # passes its only part on
                    states[-1] = actions[states[-2]][origin]
                    if states[-1] == end and kind == "$END":
                        return values[-1]
                    continue
                below = values[-length:]
                del values[-length:], states[-length:]
                parts: list[Any] = []
                for i in keep:
                    part = below[i]
                    if type(part) is _Many:
                        parts.extend(part)
                    else:
                        parts.append(part)
                values.append(_Many(parts) if inline else parts[0] if build is None else build(parts))
                states.append(actions[states[-1]][origin])
                if kind == "$END" and states[-1] == end:
                    return values[-1]
            states.append(target)
            values.append(what)
        raise Stopped(len(text), "")  # not reached: the end mark is refused or accepted above

    def _tokens(self, text: str) -> list[tuple[str, str, int]]:
        scan, words = self._scan.match, self._words
        text = text.rstrip(" ")
        tokens, place, end = [], 0, len(text)
        while place < end:
            found = scan(text, place)
            if found is None:
                place += len(text[place:]) - len(text[place:].lstrip(" "))
                raise Stopped(place, text[place])
            kind = found.lastgroup or ""
            what = found.group(kind)
            start, place = found.span(kind)
            if kind == "WORD":
                kind = words.get(what, kind)
                if kind == "WORD" and text[place : place + 1] != "(":
                    raise Stopped(start, what)
            tokens.append((kind, what, start))
        if len(tokens) > MOST_TOKENS:
            raise Stopped(tokens[MOST_TOKENS][2], "…")
        tokens.append(("$END", "", end))
        return tokens


class _Many(list[Any]):
    """Parts that belong to the rule above."""


@cache
def machine(grammar: Path, doors: tuple[str, ...]) -> Machine:
    """The machine of a grammar file, made at first use."""
    from bot.maths.build import BUILD

    return Machine(grammar, list(doors), BUILD)
