"""Rules for what stands around the numbers: cards, sentences, hints, skills and their order, shares within a lesson."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bot.course.chain import example_faults
from bot.course.faults import Fault, nearest
from bot.course.item import plain_text
from bot.course.lesson import HandsOn, Lesson, Template
from bot.course.standards import standards
from bot.course.year import Course
from bot.vocabulary import SkillId

CARD_WORDS = (60, 120)
CAPTION = 1024
"""UTF-16 units of a caption under a picture, which is where a card stands; its title takes some of them."""
SENTENCE_WORDS = 25
TEMPLATES = (4, 6)
MISSTEPS = (2, 4)
IN_WORDS = 15

# Words that shame, rush or point at the child; `wording` says why.
UNKIND = re.compile(
    r"\b(wrong|incorrect|oops|careful|carefully|almost|easy|easily|simply|obviously|just|remember|forgot|forget|"
    r"mistake|you should|you must)\b",
    re.IGNORECASE,
)
NOT_OURS = re.compile(
    r"\b(reckon\w*|foretell\w*|dear(?:er|est)?|landmarks?|he|she|his|hers?|him)\b", re.IGNORECASE
)


def lesson_faults(course: Course, holder: Lesson | HandsOn) -> Iterator[Fault]:
    """Everything about a lesson that can be said without drawing."""
    if isinstance(holder, HandsOn):
        yield from _hands_on(holder)
        return
    yield from _missteps(holder)
    for template in holder.templates:
        yield from _template(course, holder, template)
    if holder.unit == 0:
        return
    yield from _cards(holder)
    yield from _shares(course, holder)
    for code in holder.standards:
        if code not in standards():
            near = nearest(code, standards()) or "They look like 6.NS.B.4."
            yield Fault("standard", holder.file, 1, f"No standard has the code '{code}'.", near)


def skill_faults(course: Course, holder: Lesson | HandsOn) -> Iterator[Fault]:
    """What a lesson needs and its templates use has to be taught by then."""
    known = _known_by(course, holder)
    names = sorted({*known, *course.planned, *(s for one in course.lessons for s in one.skills)})
    wanted: list[tuple[SkillId, int, str]] = []
    if isinstance(holder, Lesson):
        wanted += [(skill, 2, "needs") for skill in holder.needs]
    wanted += [(skill, t.line, f"template {t.name}") for t in holder.templates for skill in t.skills]
    own = set(holder.skills)
    for skill, line, where in wanted:
        if skill not in known | own:
            later = skill in names
            yield Fault(
                "skill-not-taught",
                holder.file,
                line,
                f"This uses the skill '{skill}', but "
                + ("it is taught only later." if later else "no earlier lesson teaches it."),
                ""
                if later
                else f"{nearest(skill, names)} `evensum check-content --skills` lists them all.".strip(),
                where,
                skill,
            )
        elif skill in own and where == "needs":
            yield Fault(
                "needs-itself",
                holder.file,
                line,
                f"The lesson needs '{skill}', which it teaches itself.",
                "",
                where,
            )
    for template in holder.templates:
        if isinstance(holder, Lesson) and holder.skills and not own & set(template.skills):
            yield Fault(
                "not-own-skill",
                holder.file,
                template.line,
                "This template practises none of the lesson's own skills.",
                f"The lesson's own: {', '.join(holder.skills)}.",
                f"template {template.name}",
            )


def _known_by(course: Course, holder: Lesson | HandsOn) -> set[SkillId]:
    """Skills taught before this lesson, in lessons written or only placed."""
    order = {lesson: n for n, lesson in enumerate(one for unit in course.units for one in unit.lessons)}
    here = order.get(holder.after, 0) + 1 if isinstance(holder, HandsOn) else order.get(holder.id, len(order))
    known = {skill for lesson in course.before for skill in lesson.skills}
    if isinstance(holder, Lesson) and holder.unit == 0:
        return known
    known |= {skill for lesson in course.lessons if order[lesson.id] < here for skill in lesson.skills}
    return known | {skill for skill, lesson in course.planned.items() if order.get(lesson, 10**6) < here}


def _missteps(lesson: Lesson) -> Iterator[Fault]:
    used = {name for template in lesson.templates for name in template.recipe.missteps}
    for note in lesson.missteps:
        where = f"misstep {note.name}"
        said = plain_text(note.say)
        if re.search(r"\d", said):
            yield Fault(
                "misstep-number",
                lesson.file,
                note.line,
                "A misstep's sentence holds none of the numbers.",
                "Speak of the step in general.",
                where,
                note.say,
            )
        if said.count("?") != 1:
            yield Fault(
                "misstep-question",
                lesson.file,
                note.line,
                "A misstep's sentence asks one question.",
                "Ask about the step, with one question mark.",
                where,
                note.say,
            )
        if len(said.split()) > SENTENCE_WORDS:
            yield Fault(
                "misstep-long",
                lesson.file,
                note.line,
                f"This sentence has {len(said.split())} words; {SENTENCE_WORDS} is the most.",
                "",
                where,
                note.say,
            )
        if note.name not in used:
            yield Fault(
                "misstep-unused",
                lesson.file,
                note.line,
                f"No template of this lesson uses {note.name}.",
                "Use it, or move its sentence to a lesson that does.",
                where,
            )
        yield from kind_words(lesson.file, note.line, where, said)


def kind_words(file: str, line: int, where: str, text: str) -> Iterator[Fault]:
    """Words that shame, rush or point at a child, and words that aren't ours."""
    for pattern, kind, why in (
        (UNKIND, "unkind-word", "it speaks of the child or rushes"),
        (NOT_OURS, "not-our-word", "write without it"),
    ):
        found = pattern.search(text)
        if found:
            yield Fault(
                kind,
                file,
                line,
                f"Not the word '{found[0]}' here: {why}.",
                "The writer's handbook has samples.",
                where,
                text,
                found[0],
            )


def _template(course: Course, lesson: Lesson, template: Template) -> Iterator[Fault]:
    where, file = f"template {template.name}", lesson.file
    for n, hint in enumerate(template.hints, 1):
        yield from kind_words(file, hint.line, f"{where}, hint {n}", plain_text(hint.text))
    yield from kind_words(file, template.line, f"{where}, question", plain_text(template.ask.text))
    if not template.steps:
        yield Fault(
            "no-steps",
            file,
            template.line,
            "This template has no worked solution.",
            "Write numbered lines; the last is `answer`.",
            where,
        )
    opens, places = template.opens_after, {each for unit in course.units for each in unit.lessons}
    if opens is not None and (lesson not in course.warm_ups or opens not in places):
        yield Fault(
            "opens-after",
            file,
            template.line,
            f"This template can't open after '{opens}'.",
            nearest(opens, places)
            or "Only warm-ups have `opens-after`, and it names a lesson of course.yaml.",
            where,
        )
    # The strategy is the hint of a mental-math string.
    if len(template.hints) != 2 and not (lesson in course.warm_ups and lesson.id == "mental-math"):
        yield Fault(
            "hints",
            file,
            template.line,
            f"This template has {len(template.hints)} hints; two are wanted.",
            "**Hint 1.** points the way, **Hint 2.** starts the work.",
            where,
        )
    wrong = len(template.recipe.missteps)
    least = 1 if template.by_button else MISSTEPS[0]
    if lesson.unit and not least <= wrong <= MISSTEPS[1]:
        yield Fault(
            "missteps",
            file,
            template.line,
            f"This template has {wrong} missteps; two to four are wanted.",
            "What do students do here instead?",
            where,
        )
    for step in template.steps:
        if len(plain_text(step[1].text).split()) > SENTENCE_WORDS:
            yield Fault(
                "step-long",
                file,
                step[1].line,
                f"This line has more than {SENTENCE_WORDS} words.",
                "Make two of it.",
                where,
            )


def _cards(lesson: Lesson) -> Iterator[Fault]:
    if len(lesson.cards) != lesson.sittings or len(lesson.examples) != lesson.sittings:
        yield Fault(
            "cards",
            lesson.file,
            1,
            f"The lesson has {lesson.sittings} sitting(s), {len(lesson.cards)} card(s) "
            f"and {len(lesson.examples)} worked example(s).",
            "One of each for each day.",
        )
    for card in lesson.cards:
        said = plain_text(card.text)
        words = len(re.findall(r"[A-Za-z'’-]{1,}", said))
        if not CARD_WORDS[0] <= words <= CARD_WORDS[1]:
            yield Fault(
                "card-length",
                lesson.file,
                card.line,
                f"This card has {words} words.",
                f"{CARD_WORDS[0]} to {CARD_WORDS[1]} are wanted.",
                "card",
            )
        if len(f"{lesson.title}\n\n{said}".encode("utf-16-le")) // 2 > CAPTION:
            yield Fault(
                "card-too-long",
                lesson.file,
                card.line,
                "This card doesn't fit under a picture.",
                f"Title and card have {CAPTION} characters at most.",
                "card",
            )
        yield from kind_words(lesson.file, card.line, "card", said)
    for example in lesson.examples:
        for broken in example_faults(example.steps):
            yield Fault(
                broken.kind,
                lesson.file,
                example.line,
                f"{broken.what}.",
                broken.fix,
                "worked example",
                broken.shown,
            )
        if len(example.steps) < 2:
            yield Fault(
                "example-steps",
                lesson.file,
                example.line,
                "A worked example has at least two steps.",
                "",
                "worked example",
            )


def _shares(course: Course, lesson: Lesson) -> Iterator[Fault]:
    count = len(lesson.templates)
    if count < TEMPLATES[0]:
        yield Fault(
            "few-templates",
            lesson.file,
            1,
            f"The lesson has {count} templates; at least {TEMPLATES[0]} are wanted.",
            "",
        )
    buttons = sum(template.by_button for template in lesson.templates)
    if count and not 1 / 6 <= buttons / count <= 1 / 2:
        yield Fault(
            "buttons",
            lesson.file,
            1,
            f"{buttons} of {count} templates are answered by buttons.",
            "About a third is wanted.",
        )
    if not any(_in_words(template) for template in lesson.templates):
        yield Fault(
            "no-words",
            lesson.file,
            1,
            "No template of this lesson is a problem in words.",
            "At least one tells a small story.",
        )
    own = set(lesson.skills)
    if not any(set(template.skills) - own for template in lesson.templates):
        yield Fault(
            "nothing-mixed-in",
            lesson.file,
            1,
            "No template mixes in an earlier skill.",
            "Name it: `skills: own-skill, earlier-skill`.",
        )


def _in_words(template: Template) -> bool:
    words = re.sub(r"`[^`]*`", "", template.ask.text).split()
    return len(words) >= IN_WORDS


def _hands_on(task: HandsOn) -> Iterator[Fault]:
    if not 3 <= len(task.templates) <= 6:
        yield Fault(
            "answers-to-send",
            task.file,
            1,
            f"{len(task.templates)} answers to send; three to six are wanted.",
            "",
        )
    if not task.checklist:
        yield Fault(
            "no-checklist", task.file, 1, "The checklist is empty.", "Write lines that begin with - ."
        )
    risky = re.search(
        r"scissors|knife|oven|stove|hot|ladder|chair|string|water", " ".join((*task.materials, task.idea))
    )
    if risky and not task.safety:
        yield Fault(
            "no-safety",
            task.file,
            1,
            f"The task uses '{risky[0]}' and has no line on safety.",
            "Add `safety:` to the front matter.",
        )
