"""The claims of one template checked: draw it hundreds of times and look at every item."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field

from bot.answers.given import accepting
from bot.answers.judge import judge_by_reading
from bot.answers.key import Judgement, Key, Misstep
from bot.course import figures
from bot.course.chain import Problem, chain_faults
from bot.course.draw import ATTEMPTS, Before, try_once
from bot.course.faults import Fault
from bot.course.fill import mark_of
from bot.course.item import Item, RunKind, runs
from bot.course.lesson import HandsOn, Lesson, Template
from bot.course.make_item import Drawn
from bot.course.prepare import prepare
from bot.course.prepared import Prepared
from bot.course.year import Course
from bot.vocabulary import Verdict

WARM_UPS = ("mental-math", "puzzles")
FEWEST = 50
FEWEST_STRINGS = 5
"""Of a mental-math string or a puzzle: a strategy has several, and the family of all of them varies."""
"""Different items a template must be able to make; names and places are left out of the count."""
TYPED = 12
"""Characters at most that a student types for one answer."""
HINT_CLASHES = 0.3
"""Share of draws thrown away because a hint shows the answer, above which an author should look at the hint."""


@dataclass
class TemplateReport:
    """What the draws of one template showed."""

    template: Template
    draws: int = 0
    different: int = 0
    kept: float = 1.0
    """Share of draws that `where` let through."""
    clashed: float = 0.0
    """Of these, the share thrown away because answer, missteps or hints coincided or a bottom was 0."""
    by_wish: int = 0
    """Draws thrown away because `where` said so."""
    by_clash: int = 0
    """Draws thrown away because something coincided or had no value."""
    work: float = 0.0
    """How much work an item is: lines of its solution and operations in the first."""
    typed: int = 0
    """Missteps of typed answers that were judged."""
    named: int = 0
    """Of these, how often the checker gave the misstep the author's name; another explanation may be as likely."""
    unnamed: Counter[str] = field(default_factory=Counter)
    """`misstep taken for other` and how often."""
    faults: list[Fault] = field(default_factory=list)
    warnings: list[Fault] = field(default_factory=list)
    """Worth a look, but nothing false."""


def check_template(
    course: Course, holder: Lesson | HandsOn, template: Template, draws: int
) -> TemplateReport:
    """Draw a template many times and check each item."""
    report = TemplateReport(template)
    prepared, faults = prepare(template, holder.file, course.missteps)
    report.faults += faults
    if prepared is None or faults:
        return report
    course.ready[template.id] = prepared
    fixed = not prepared.order and not template.recipe.words
    _Drawing(course, holder, prepared, report).run(1 if fixed else draws)
    return report


class _Drawing:
    """The draws of one template: what was seen, and each kind of fault once, with the draw that showed it."""

    def __init__(
        self, course: Course, holder: Lesson | HandsOn, prepared: Prepared, report: TemplateReport
    ) -> None:
        self.course, self.holder, self.prepared, self.report = course, holder, prepared, report
        self.template = prepared.template
        self.why: Counter[str] = Counter()
        self.details: Counter[str] = Counter()
        self.said: set[str] = set()
        self.answers: Counter[str] = Counter()
        self.places: Counter[int] = Counter()
        self.missteps: Counter[str] = Counter()
        # Where chance mixes the buttons, the same numbers make another item.
        self.before = Before(None if self.template.recipe.form == "choice" else {})
        self.judged: dict[Key, tuple[list[Problem], list[tuple[Misstep, Judgement]]]] = {}

    def run(self, draws: int) -> None:
        seen: set[tuple[object, ...]] = set()
        items: list[Drawn] = []
        checked: set[int] = set()
        for seed in range(draws):
            drawn = self._draw(seed)
            if drawn is None:
                return
            items.append(drawn)
            seen.add(tuple(map(mark_of, drawn.draw.letters.values())))
            self._count(drawn.item)
            if id(drawn) not in checked:
                checked.add(id(drawn))
                self._check(drawn)
        report = self.report
        report.draws, report.different = draws, len(seen)
        report.by_wish = self.why["where"]
        report.by_clash = sum(self.why.values()) - report.by_wish
        tried = sum(self.why.values()) + draws
        passed = tried - self.why["where"]
        report.kept, report.clashed = passed / tried, 1 - draws / passed
        works = {id(drawn): _work(drawn.item) for drawn in items}  # many draws are the very same item
        report.work = sum(works[id(drawn)] for drawn in items) / draws
        if draws >= FEWEST:  # fewer say nothing of shares
            self._shares(draws)
            self._varied(items, draws)

    def fault(self, kind: str, what: str, fix: str = "", line: int = 0, shown: str = "") -> None:
        if kind not in self.said:
            self.said.add(kind)
            where = f"template {self.template.name}"
            self.report.faults.append(
                Fault(kind, self.holder.file, line or self.template.line, what, fix, where, shown)
            )

    def warning(self, kind: str, what: str, fix: str) -> None:
        where = f"template {self.template.name}"
        self.report.warnings.append(Fault(kind, self.holder.file, self.template.line, what, fix, where))

    def _draw(self, seed: int) -> Drawn | None:
        for attempt in range(ATTEMPTS):
            found = try_once(self.course, self.prepared, seed, attempt, self.before)
            if isinstance(found, Drawn):
                return found
            self.why[found.why] += 1
            self.details[f"{found.why}: {found.detail}"] += 1
        self.fault("no-draws", "No draw of this template fits.", self._most_often())
        return None

    def _most_often(self) -> str:
        reason, _count = self.details.most_common(1)[0]
        return {"where: ": "`where` keeps none: widen the ranges."}.get(
            reason, f"Most were thrown away by {reason}."
        )

    def _shares(self, draws: int) -> None:
        report = self.report
        if report.clashed > 0.5:
            self.fault(
                "clashes",
                f"{report.clashed:.0%} of the draws were thrown away.",
                self._most_often(),
            )
        shown = self.details["clash: a hint shows the answer"] / (
            sum(self.why.values()) + draws - self.why["where"]
        )
        if shown > HINT_CLASHES:
            self.warning(
                "hint-clashes",
                f"A hint would show the answer in {shown:.0%} of the draws, which are thrown away.",
                "Let the hint name another number, or `where` leave those draws out.",
            )
        if report.kept < 0.02:
            self.fault(
                "starved",
                f"`where` keeps only {report.kept:.1%} of the draws.",
                "Draw the numbers so that they fit by themselves, for instance c: a s + b.",
            )
        for name in self.template.recipe.missteps:
            if self.missteps[name] == 0:
                self.fault(
                    f"misstep-never {name}",
                    f"The misstep {name} comes up in none of {draws} draws.",
                    "It always gives what the answer or another misstep gives, or its case never holds.",
                )
        fewest = FEWEST_STRINGS if self.holder.id in WARM_UPS else FEWEST
        if report.different < min(fewest, draws // 2):
            self.fault(
                "too-few",
                f"Only {report.different} different items in {draws} draws.",
                f"Widen the ranges: {fewest} are wanted.",
            )

    def _varied(self, items: list[Drawn], draws: int) -> None:
        most = self.answers.most_common(1)[0][1] / draws
        words = all(not drawn.item.key.answer[:1].isdigit() for drawn in items)
        if self.template.by_button and words and most > 0.8 and self.template.recipe.form == "yes-no":
            self.fault("always-same", f"{most:.0%} of the answers are the same.", "Let both answers come up.")
        place, often = self.places.most_common(1)[0] if self.places else (0, 0)
        if often == draws and self.template.recipe.form == "choice" and draws >= FEWEST:
            self.warning(
                "same-button",
                f"The right button is always number {place + 1}.",
                "Write `shuffle: yes`, or let another choice be right as well.",
            )
        if not self.template.by_button and not isinstance(self.holder, HandsOn):
            ask_shows = sum(_shows(drawn.item.ask, drawn.item.key.answer) for drawn in items) / draws
            if ask_shows > 0.5:
                self.fault(
                    "answer-in-question", "The question shows its own answer.", "Leave the unknown a letter."
                )

    def _count(self, item: Item) -> None:
        self.answers[item.key.answer] += 1
        self.missteps.update(misstep.name for misstep in item.key.missteps)
        if item.key.answer in item.choices:
            self.places[item.choices.index(item.key.answer)] += 1

    def _check(self, drawn: Drawn) -> None:
        item = drawn.item
        problems = [
            *self._key_problems(item),
            *chain_faults(item, self.template),
            *figure_problems(item, self.template.recipe.figure_line),
        ]
        for problem in problems:
            line = problem.line or self.template.line
            self.fault(problem.kind, f"{problem.what}{with_numbers(drawn)}", problem.fix, line, problem.shown)
        if not isinstance(self.holder, HandsOn):
            self._sizes(drawn)

    def _key_problems(self, item: Item) -> Iterator[Problem]:
        """The checker has to take the answer, and may take no misstep; it is asked which one it says each is."""
        judged = self.judged.get(item.key)
        if judged is None:  # other numbers often make the same key
            missteps = [(misstep, _judged(misstep, item.key)) for misstep in item.key.missteps]
            judged = self.judged[item.key] = list(answer_problems(item)), missteps
        problems, missteps = judged
        yield from problems
        for misstep, wrong in missteps:
            if wrong.verdict is Verdict.RIGHT or wrong.verdict is Verdict.FORM:
                yield Problem(
                    f"misstep-accepted {misstep.name}",
                    f"The checker says {wrong.verdict} of the misstep {misstep.name}, `{misstep.answer}`",
                    "A misstep's answer has to be wrong.",
                )
            elif not item.choices:
                self.report.typed += 1
                if wrong.misstep == misstep.name:
                    self.report.named += 1
                else:
                    self.report.unnamed[f"{misstep.name} taken for {wrong.misstep or wrong.verdict}"] += 1

    def _sizes(self, drawn: Drawn) -> None:
        item = drawn.item
        # Missteps may be large, the student's own number isn't.
        if len(item.key.answer) > TYPED and not item.choices:
            self.fault(
                "long-answer",
                f"`{item.key.answer}` is {len(item.key.answer)} characters to type{with_numbers(drawn)}",
                f"At most {TYPED}, or offer choices.",
            )
        if item.key.form == "choice" and len(item.choices) > 5:
            self.fault(
                "many-choices",
                f"{len(item.choices)} buttons are too many{with_numbers(drawn)}",
                "At most five.",
            )
        if (
            item.choices
            and len({*item.choices} - {item.key.answer} - {m.answer for m in item.key.missteps}) > 1
        ):
            self.fault(
                "choice-without-misstep",
                f"More than one wrong button names no misstep{with_numbers(drawn)}",
                "Every wrong choice should be a misstep.",
            )


def _judged(misstep: Misstep, key: Key) -> Judgement:
    unit = f" {key.unit}" if key.form.startswith("quantity") else ""
    return judge_by_reading(misstep.answer + unit, key)


def answer_problems(item: Item) -> Iterator[Problem]:
    """The checker has to read the answer and accept it in its form, and an example of many answers too."""
    typed = item.key.answer
    if item.key.unit and item.key.form.startswith("quantity"):
        typed = f"{typed} {item.key.unit}"
    found = judge_by_reading(typed, item.key)
    if found.verdict is not Verdict.RIGHT:
        yield Problem(
            "answer-refused",
            f"The checker says {found.verdict} ({found.reason or found.trouble or '-'}) of "
            f"the answer `{typed}` in the form {item.key.form}",
            _MENDS.get(item.key.form, "Mend the answer or its form."),
        )
    if item.key.accept is not None and accepting(item.key.answer, item.key).accept is not None:
        yield Problem(
            "example-not-accepted",
            f"The example `{item.key.answer}` doesn't fulfil `{item.key.accept}`",
            "An example is one of the answers that count.",
        )
    if item.key.form in ("whole", "integer") and "/" in typed:
        yield Problem(
            "answer-not-whole", f"The answer `{typed}` isn't whole", "Draw so that it is, or change the form."
        )


_MENDS = {
    "time": "A length of time is written `2 h 15 min`, a time of day `3:40 pm`.",
    "remainder": "An answer with a remainder is written `7 R 2`.",
}


def figure_problems(item: Item, line: int) -> Iterator[Problem]:
    """The figure, which stands in that line, has to be drawable with these numbers."""
    if item.figure is not None:
        for what in figures.check(item.figure):
            yield Problem("figure", what.rstrip("."), line=line)


def with_numbers(drawn: Drawn) -> str:
    """`, with a = 3, b = 4.`: the draw that showed a fault."""
    letters = ", ".join(f"{name} = {_plain(worth)}" for name, worth in drawn.draw.letters.items())
    return f", with {letters}." if letters else "."


def _plain(worth: object) -> str:
    return "(" + ", ".join(str(one) for one in worth) + ")" if isinstance(worth, tuple) else str(worth)


def _shows(text: str, answer: str) -> bool:
    return answer in text.replace(",", "") and any(
        run.kind is RunKind.MATHS and run.text.replace(",", "") == answer for run in runs(text)
    )


def _work(item: Item) -> float:
    """A measure of difficulty: a line of the solution counts 1, an operation in it 1/2, fifteen words to read 1."""
    lines = sum(1 + sum(map(step.write.count, "+−×÷/")) / 2 for step in item.steps)
    return lines + len(item.ask.split()) / 15
