"""How we say what a student hears on a reply."""

from __future__ import annotations

from bot.chat.render.registry import button, figure_picture, renders, say
from bot.chat.render.shapes import choice_rows, examples_text, lead_text, lesson_button, steps_text
from bot.chat.rendered import Button, Rendered
from bot.chat.typography import typographic
from bot.chat.words import Text, Words, bold, from_content, join, plain
from bot.messages import (
    AlreadyDone,
    AskedTutor,
    CannotRead,
    Counted,
    FirstCounts,
    HintShown,
    HowToType,
    InWords,
    NextStep,
    NotText,
    NotYet,
    PaperGraded,
    PaperSheet,
    Passed,
    PhotoKept,
    ReportNoted,
    SayForm,
    SayUnit,
    Solution,
    Together,
    WhichItem,
    WhyThis,
    WorkingSeen,
)
from bot.vocabulary import Verdict


def read_back(words: Words, read_as: str) -> Text:
    """What was read, where it was not plain."""
    return words("read-as", read=bold(read_as)) if read_as else Text()


@renders(NotYet)
def not_yet(words: Words, m: NotYet) -> Rendered:
    """What is true, one thing to look at, the buttons."""
    opening = words("not-yet" if m.go == 1 else "not-yet-2")
    look = _look(words, m)
    last = words("not-yet-last") if m.last_go and not look else Text()
    row = [button(words, "button-try-again", f"again:{m.item}")]
    if m.hints_left:
        row.append(button(words, "button-hint", f"hint:{m.item}"))
    if m.show:
        row.append(button(words, "button-show", f"show:{m.item}"))
    second = [
        button(words, "button-later", f"later:{m.item}"),
        button(words, "button-ask-tutor", f"ask:{m.item}"),
    ]
    rows = [*choice_rows(m.item, m.choices), row[1:] if m.choices else row, second]
    return say(join([opening, read_back(words, m.read_as), look, last], " "), buttons=rows)


def _look(words: Words, m: NotYet) -> Text:
    """The one thing to look at: the misstep as a question, the start of the work, or nothing at all."""
    key = f"misstep-{m.misstep_name}"
    sentence = from_content(m.misstep) if m.misstep else words(key) if words.has(key) else Text()
    if m.hint:
        return words("not-yet-start", hint=from_content(m.hint))
    if sentence and m.said:
        return words("not-yet-said", say=sentence)
    return sentence


@renders(WorkingSeen)
def working_seen(words: Words, m: WorkingSeen) -> Rendered:
    """Which line is the first that doesn't follow; the lines before it are fine."""
    if not m.line:
        lines = [words("working-unsure")]
    else:
        key = f"misstep-{m.misstep_name}"
        sentence = from_content(m.misstep) if m.misstep else words(key) if words.has(key) else Text()
        fine = words("working-fine", count=m.fine) if m.fine else Text()
        line = words("working-look", line=m.line, text=bold(m.text))
        lines = [fine, line, sentence]
        if m.misstep_name == "run-on-equals":
            lines.append(words("working-run-on"))
    row = [button(words, "button-hint", f"hint:{m.item}")] if m.hints_left else []
    if m.show:
        row.append(button(words, "button-show", f"show:{m.item}"))
    second = [
        button(words, "button-later", f"later:{m.item}"),
        button(words, "button-ask-tutor", f"ask:{m.item}"),
    ]
    return say(join(lines, " "), buttons=[row, second])


@renders(Together)
def together(words: Words, m: Together) -> Rendered:
    """The last try is gone."""
    rows = [
        [button(words, "button-show", f"show:{m.item}")],
        [button(words, "button-ask-tutor", f"ask:{m.item}"), button(words, "button-go-on", "on:")],
    ]
    return say(join([read_back(words, m.read_as), words("together")], " "), buttons=rows)


@renders(SayForm)
def say_form(words: Words, m: SayForm) -> Rendered:
    """The right amount, and the form that is asked for."""
    rows = choice_rows(m.item, m.choices)
    if m.counted:
        return say(words("say-form-counted"), buttons=rows)
    if m.reason == "not-started":
        return say(join([words("say-form-not-started"), words("say-form-free")], " "), buttons=rows)
    exact = f"form-reason-{m.reason}"
    how = words(exact) if words.has(exact) else words(f"form-{m.form}")
    lead = "say-form-nearly" if m.reason in ("exact", "exact-pi") else "say-form"
    return say(join([words(lead, how=how), words("say-form-free")], " "), buttons=rows)


@renders(SayUnit)
def say_unit(words: Words, m: SayUnit) -> Rendered:
    """The right number; the unit."""
    key = f"say-unit-{m.reason}"
    return say(join([words(key if words.has(key) else "say-unit-unit-wrong"), words("say-form-free")], " "))


@renders(CannotRead)
def cannot_read(words: Words, m: CannotRead) -> Rendered:
    """What was understood, and how to type it."""
    trouble = f"unreadable-{m.trouble}"
    lines = [words("cannot-read") if not words.has(trouble) else words(trouble)]
    if m.choices:
        lines.append(words("cannot-read-choose"))
    elif m.examples:
        lines.append(words("cannot-read-examples", examples=examples_text(m.examples)))
    rows = choice_rows(m.item, m.choices)
    if m.again:
        lines.append(words("cannot-read-again"))
        rows.append(
            [
                button(words, "button-pass-on", f"pass:{m.item}"),
                button(words, "button-try-again", f"again:{m.item}"),
            ]
        )
    lines.append(words("say-form-free"))
    return say(join(lines, " "), buttons=rows)


@renders(HintShown)
def hint_shown(words: Words, m: HintShown) -> Rendered:
    """A hint; after the last one, the worked solution."""
    hint = from_content(m.hint)
    if not m.out_of:
        text = words("hint-none-at-all")
    elif m.asked_in_words and m.n == 1:
        text = words("hint-asked", hint=hint)
    elif m.out_of > 1:
        text = words("hint-n", n=m.n, out_of=m.out_of, hint=hint)
    else:
        text = words("hint", hint=hint)
    row = []
    if m.n < m.out_of:
        row.append(button(words, "button-hint", f"hint:{m.item}"))
    if m.show:
        row.append(button(words, "button-show", f"show:{m.item}"))
    rows = [*choice_rows(m.item, m.choices), row]
    if m.lesson:
        rows.append([lesson_button(words, m.lesson, m.source, m.item)])
    return say(text, buttons=rows)


@renders(Solution)
def solution(words: Words, m: Solution) -> Rendered:
    """The worked solution."""
    unit = f" {m.unit}" if m.unit else ""
    comes = words("solution-comes-back") if m.comes_back else Text()
    return say(
        words("solution"),
        from_content(m.ask),
        steps_text(m.steps),
        words("solution-answer", answer=f"{m.answer}{unit}"),
        comes,
        buttons=_under_solution(words, m),
        pictures=figure_picture(m.figure, m.alt),
    )


def _under_solution(words: Words, m: Solution) -> list[list[Button]]:
    row = [] if m.to_grown_up else [button(words, "button-go-on", "on:")]
    if m.figure and m.alt:
        verb = "talk-words" if m.to_grown_up else "words"
        row.append(button(words, "button-in-words", f"{verb}:{m.item}"))
    if m.to_grown_up:
        return [row]
    return [row, [button(words, "button-report", f"report:{m.item}")]]


@renders(NextStep)
def next_step(words: Words, m: NextStep) -> Rendered:
    """One more step, in guided practice."""
    last = Text() if m.more else words("next-step-last")
    row = [button(words, "button-hint", f"hint:{m.item}")]
    if m.more:
        row.insert(0, button(words, "button-next-step", f"step:{m.item}"))
    return say(steps_text([m.step], m.n), last, buttons=[*choice_rows(m.item, m.choices), row])


@renders(HowToType)
def how_to_type(words: Words, m: HowToType) -> Rendered:
    """Three examples."""
    if m.choices:
        return say(words("how-to-type-choose"), buttons=choice_rows(m.item, m.choices))
    return say(words("how-to-type", examples=examples_text(m.examples)))


@renders(WhyThis)
def why_this(words: Words, m: WhyThis) -> Rendered:
    """Why the item is there, and how its answer is typed."""
    source = m.skill or m.source
    days = {"days": m.days_since} if m.days_since is not None else {"days": 0}
    lines = [words(f"why-{m.why}", source=source, **(days if m.why == "due" else {}))]
    if m.examples:
        lines.append(words("how-to-type", examples=examples_text(m.examples)))
    if m.alt:
        lines.append(words("why-picture", alt=m.alt))
    rows = [[lesson_button(words, m.lesson, m.source, m.item)]] if m.lesson else []
    rows.append([button(words, "button-report", f"report:{m.item}")])
    return say(*lines, buttons=rows)


@renders(ReportNoted)
def report_noted(words: Words, m: ReportNoted) -> Rendered:
    """The tutor looks at it."""
    return say(words("report-again" if m.again else "report-noted", tutor=m.tutor))


@renders(InWords)
def in_words(words: Words, m: InWords) -> Rendered:
    """A picture in words."""
    return say(words("in-words", alt=m.alt))


@renders(AlreadyDone)
def already_done(words: Words, m: AlreadyDone) -> Rendered:
    """The first answer counted."""
    if m.lead:
        return say(lead_text(words, m.lead))
    if not m.item:
        return say(words("already-quick"))
    return say(words("already-done-right" if m.right else "already-done"))


@renders(WhichItem)
def which_item(words: Words, m: WhichItem) -> Rendered:
    """Which one is that for?"""
    return say(
        words("which-item"), buttons=[[Button(typographic(ask), f"again:{item}")] for item, ask in m.items]
    )


@renders(Counted)
def counted(words: Words, m: Counted) -> Rendered:
    """It counts for its own day."""
    return say(words("counted-right", ask=typographic(m.ask)))


@renders(AskedTutor)
def asked_tutor(words: Words, m: AskedTutor) -> Rendered:
    """The tutor has it now."""
    rows = [
        [
            button(words, "button-try-again", f"again:{m.item}"),
            button(words, "button-later", f"later:{m.item}"),
        ]
    ]
    return say(words("asked-tutor", tutor=m.tutor), buttons=rows)


@renders(Passed)
def passed(words: Words, m: Passed) -> Rendered:
    """To the tutor: a student asks."""
    typed = join([plain(text).marked("italic") for text in m.typed], "  ·  ")
    rows = [[button(words, "button-accept", f"t-accept:{m.attempt}")]] if m.attempt else []
    return say(
        words(f"passed-{m.why}", student=m.student, household=m.household, lesson=m.lesson),
        from_content(m.ask),
        words("passed-typed", typed=typed) if typed else Text(),
        words("passed-answer", answer=m.answer),
        buttons=rows,
    )


@renders(FirstCounts)
def first_counts(words: Words, m: FirstCounts) -> Rendered:
    """An edited message."""
    return say(words("first-counts-open" if m.open else "first-counts"))


@renders(PhotoKept)
def photo_kept(words: Words, m: PhotoKept) -> Rendered:
    """A photo was kept, or not."""
    return say(words("photo-full" if m.full else "photo-kept" if m.first else "photo-kept-more"))


@renders(NotText)
def not_text(words: Words, m: NotText) -> Rendered:
    """Something that can't be graded."""
    key = f"not-text-{m.what}"
    return say(words(key if words.has(key) else "not-text-other"))


@renders(PaperSheet)
def paper_sheet(words: Words, m: PaperSheet) -> Rendered:
    """The review as one sheet."""
    lines = []
    for number, source, ask, _, choices in m.rows:
        line = bold(f"{number}) ") + plain(typographic(ask))
        if choices:
            line = line + " " + words("paper-choices", choices=typographic(" / ".join(choices)))
        if source:
            line = line + "  " + words("from-lesson", lesson=source)
        lines.append(line)
    buttons = [] if m.more else [[button(words, "button-print", f"print:{m.day}")]]
    return say(words("paper-sheet"), join(lines, "\n\n"), buttons=buttons)


@renders(PaperGraded)
def paper_graded(words: Words, m: PaperGraded) -> Rendered:
    """One line for each answer, a button for each that is still open."""
    lines = [_graded_line(words, row) for row in m.rows]
    head = words("paper-graded") if lines else Text()
    numbers = ", ".join(map(str, m.left))
    rest = []
    if m.already:
        rest.append(words("paper-already", numbers=", ".join(map(str, m.already))))
    if m.unknown:
        rest.append(words("paper-unknown", numbers=", ".join(map(str, m.unknown))))
    if m.left:
        rest.append(words("paper-left" if m.rows or m.already else "paper-number-please", numbers=numbers))
    elif m.rows:
        rest.append(words("paper-left-none"))
    open_rows = [
        Button(words.label("button-number", n=n), f"again:{item}")
        for n, verdict, item, _, word in m.rows
        if verdict is not Verdict.RIGHT and word != "over"
    ]
    shows = [
        Button(words.label("button-show") + f" {n}", f"show:{item}")
        for n, _, item, _, word in m.rows
        if word == "over"
    ]
    buttons = open_rows + shows
    rows = [buttons[n : n + 4] for n in range(0, len(buttons), 4)]
    return say(head, join(lines, "\n"), join(rest, "\n"), buttons=rows)


def _graded_line(words: Words, row: tuple[int, Verdict, int, str, str]) -> Text:
    n, verdict, _, _, word = row
    if word == "over":
        return words("paper-over", n=n)
    if verdict is Verdict.FORM:
        key = f"form-reason-{word}"
        return words("paper-form", n=n, how=words(key if words.has(key) else f"form-{word}"))
    text = words(f"paper-{verdict}", n=n)
    return text + ". " + from_content(word) if verdict is Verdict.WRONG and word else text
