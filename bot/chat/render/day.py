"""How we say what a student hears in the course of a school day."""

from __future__ import annotations

from bot.chat.render.registry import button, figure_picture, renders, say
from bot.chat.render.shapes import ID_START, answer_rows, choice_rows, lead_text, lesson_button, steps_text
from bot.chat.render.tutoring import offered
from bot.chat.rendered import CAPTION, Button, Rendered, units
from bot.chat.words import Text, Words, bold, from_content, join, link, plain
from bot.messages import (
    BreakTaken,
    CardShown,
    Copied,
    CopyAgain,
    CopyTen,
    DayDone,
    DayReady,
    ExtraDone,
    FactsDone,
    FactsSheet,
    FactsUnclear,
    FinishFirst,
    GivenBack,
    HandsOnShown,
    ItemShown,
    NothingNow,
    NothingToPractise,
    PhoneForStudent,
    Reminder,
    SetDone,
    SmallDay,
    Speaking,
    WhoReads,
    WhoSpeaks,
    WorkedShown,
)
from bot.vocabulary import Part


@renders(DayReady)
def day_ready(words: Words, m: DayReady) -> Rendered:
    """The morning push."""
    if m.day_kind == "lesson":
        what = (
            words("day-ready-lesson-part", lesson=m.lesson, sitting=m.sitting, sittings=m.sittings)
            if m.sittings > 1
            else words("day-ready-lesson", lesson=m.lesson)
        )
    elif m.strand:
        what = words("day-ready-strand", strand=m.strand, n=m.strand_n, out_of=m.strands)
    else:
        what = words(f"day-ready-{m.day_kind}")
    lines = [words("day-ready-hello", name=m.name) + "\n" + what]
    if m.review or m.day_kind in ("lesson", "test-open"):
        lines.append(words("day-ready-size", review=m.review, minutes=max(5, round(m.minutes / 5) * 5)))
    if m.late:
        lines.append(words("day-ready-late"))
    if m.unfinished:
        lines.append(words("day-ready-unfinished", count=m.unfinished))
    if m.small_offered:
        lines.append(words("day-ready-small-offer"))
    rows = [[button(words, "button-start", f"start:{m.day}")]]
    if m.day_kind in ("test", "second-look"):
        rows = [[button(words, "button-open-test", f"open-test:{m.day}")]]
    elif m.day_kind not in ("small", "test-open", "placement"):
        rows[0].append(button(words, "button-small-day", f"small:{m.day}"))
    if m.unfinished:
        rows.append([button(words, "button-finish-last", f"finish:{m.day}")])
    return say(*lines, buttons=rows)


@renders(PhoneForStudent)
def phone_for_student(words: Words, m: PhoneForStudent) -> Rendered:
    """Hand over the phone."""
    return say(
        words("phone-for-student", name=m.name),
        buttons=[[button(words, "button-speaking", f"speak:{m.student}", name=m.name)]],
    )


@renders(WhoReads)
def who_reads(words: Words, m: WhoReads) -> Rendered:
    """What this is, and who reads what."""
    parents = words.list(list(m.parents)) if m.parents else words("who-reads-no-parents")
    commands = offered(words, ["student"]) if m.own else None
    return say(words("who-reads", name=m.name, tutor=m.tutor, parents=parents), commands=commands)


@renders(FactsSheet)
def facts_sheet(words: Words, m: FactsSheet) -> Rendered:
    """Twelve facts, four rows of three, numbered."""
    cells = [f"{n}) {fact}" for n, fact in enumerate(m.facts, start=1)]
    lines = [words("facts-sheet", count=len(m.facts))]
    if m.first:
        lines.append(words("facts-first"))
    if m.timed:
        lines.append(words("facts-timed"))
    return say(
        lead_text(words, m.lead),
        join(lines, " "),
        plain("\n".join(cells)).marked("pre"),
        buttons=[[button(words, "button-leave", f"leave-facts:{m.sheet}")]],
    )


@renders(FactsUnclear)
def facts_unclear(words: Words, m: FactsUnclear) -> Rendered:
    """The count doesn't fit."""
    if not m.got:
        return say(words("facts-unclear-none", wanted=m.wanted))
    return say(words("facts-unclear", got=m.got, wanted=m.wanted))


@renders(FactsDone)
def facts_done(words: Words, m: FactsDone) -> Rendered:
    """How the sheet went; the misses with their answers."""
    if m.right == m.out_of:
        lines = [words("facts-done-all", out_of=m.out_of)]
    else:
        # A fact never breaks over two lines.
        missed = ",  ".join(f"{fact} = {key}".replace(" ", "\u00a0") for fact, key in m.missed)
        lines = [
            words("facts-done", right=m.right, out_of=m.out_of),
            words("facts-missed", facts=bold(missed)),
        ]
    if m.per_minute is not None:
        pace = words("facts-pace", rate=m.per_minute)
        lines.append(pace + " " + words("facts-usual", usual=m.usual) if m.usual else pace)
    return say(join(lines, "\n"))


@renders(CopyTen)
def copy_ten(words: Words, m: CopyTen) -> Rendered:
    """Ten numbers to copy."""
    return say(words("copy-ten"), plain("  ".join(m.numbers)).marked("code"))


@renders(CopyAgain)
def copy_again(words: Words, m: CopyAgain) -> Rendered:
    """Not the ten numbers."""
    return say(words("copy-again"))


@renders(Copied)
def copied(words: Words, m: Copied) -> Rendered:
    """Typing time is known."""
    return say(words("copied"))


@renders(CardShown)
def card_shown(words: Words, m: CardShown) -> Rendered:
    """The card: its picture first, the card as the caption, if the two fit."""
    title = bold(m.title)
    if m.sittings > 1:
        title = title + "  " + words("card-part", sitting=m.sitting, sittings=m.sittings)
    video = link(words.label("card-video"), m.video) if m.video else Text()
    buttons = []
    if m.item:
        buttons.append([button(words, "button-back-to-item", f"again:{m.item}")])
    if m.figure and m.alt:
        buttons.append([button(words, "button-in-words", f"card-words:{m.lesson[:ID_START]}:{m.sitting}")])
    text = join([lead_text(words, m.lead), title, from_content(m.text), video])
    if units(text.words()) > CAPTION and m.lead:
        text = join([title, from_content(m.text), video])
    return say(text, buttons=buttons, pictures=figure_picture(m.figure, m.alt))


@renders(WorkedShown)
def worked_shown(words: Words, m: WorkedShown) -> Rendered:
    """The worked example, then the way on."""
    buttons = [[button(words, "button-go", f"go:{m.day}")]] if m.day else []
    if m.day and m.may_pass:
        buttons.append([button(words, "button-known", f"known:{m.day}")])
    if m.figure and m.alt and m.day:
        buttons.append([button(words, "button-in-words", f"worked-words:{m.day}")])
    return say(
        words("worked-title"),
        from_content(m.ask),
        steps_text(m.steps),
        buttons=buttons,
        pictures=figure_picture(m.figure, m.alt),
    )


@renders(ItemShown)
def item_shown(words: Words, m: ItemShown) -> Rendered:
    """One question, opened by a word on the one before."""
    head = words(f"part-{m.part}", place=m.place, out_of=m.out_of)
    if m.source:
        head = head + " · " + words("from-lesson", lesson=m.source)
    if m.calculator:
        head = head + " · " + words("calculator")
    before = [lead_text(words, m.lead)]
    if m.comeback:
        before.append(words("comeback"))
    elif m.again:
        before.append(words("asked-again"))
    ask = from_content(m.ask)
    steps = steps_text(m.steps)
    walk = words("walk-together") if m.walked and not m.steps else Text()
    rows = choice_rows(m.item, m.choices)
    if m.part is Part.TEST:
        rows += test_rows(words, m)
    elif m.part is Part.PLACEMENT:
        rows += placement_rows(words, m)
    else:
        rows += answer_rows(
            words,
            m.item,
            part=m.part,
            has_picture=bool(m.figure),
            steps=m.more_steps and m.part is Part.GUIDED,
        )
    if m.source and m.lesson and m.part is Part.REVIEW:
        rows.append([lesson_button(words, m.lesson, m.source, m.item)])
    return say(
        join(before, " "), head, ask, steps, walk, buttons=rows, pictures=figure_picture(m.figure, m.alt)
    )


def test_rows(words: Words, m: ItemShown) -> list[list[Button]]:
    """Under a test's question: on, back, hand in; no hints."""
    row = []
    if m.place > 1:
        row.append(button(words, "button-test-back", f"test-back:{m.item}"))
    if m.place < m.out_of:
        row.append(button(words, "button-test-next", f"test-next:{m.item}"))
    rows = [row]
    if m.figure:
        rows.append([button(words, "button-in-words", f"words:{m.item}")])
    return rows


def placement_rows(words: Words, m: ItemShown) -> list[list[Button]]:
    """Under a question of the look at where to start: not met yet, how to type, enough for today."""
    rows = [[button(words, "button-not-met", f"place-skip:{m.item}")]]
    second = [] if m.choices else [button(words, "button-how-to-type", f"type:{m.item}")]
    if m.figure:
        second.append(button(words, "button-in-words", f"words:{m.item}"))
    return [*rows, second, [button(words, "button-enough", f"place-stop:{m.item}")]]


@renders(SetDone)
def set_done(words: Words, m: SetDone) -> Rendered:
    """A breath after each set of four."""
    key = "set-done-half" if m.may_stop else "set-done"
    row = [button(words, "button-go-on", f"go:{m.day}")]
    if m.may_stop:
        row.append(button(words, "button-enough", f"enough:{m.day}"))
    second = [button(words, "button-paper", f"paper:{m.day}")]
    return say(lead_text(words, m.lead), words(key, done=m.done, out_of=m.out_of), buttons=[row, second])


@renders(DayDone)
def day_done(words: Words, m: DayDone) -> Rendered:
    """How the day went, and what stands open."""
    counts = {"first": m.first_try, "later": m.later_try, "out_of": m.out_of}
    if m.task_done:
        lines = [words("day-done-task", title=m.task_done)]
    elif m.enough:
        lines = [words("day-done-enough", **counts)]
    elif not m.out_of:
        lines = [words("day-done-none")]
    elif m.later_try:
        lines = [words("day-done-more", **counts)]
    else:
        lines = [words("day-done-all", **counts)]
    if m.comes_back and not m.task_done:
        lines.append(words("day-done-comes-back", count=m.comes_back))
    if m.still_open:
        lines.append(words("day-done-still-open", count=m.still_open))
    if m.puzzle_open:
        lines.append(words("day-done-puzzle"))
    lines.append(words("day-done-thanks"))
    rows = [[button(words, "button-take-up", f"finish:{m.day}")]] if m.still_open else []
    if m.hands_on:
        lines.append(words("day-done-hands-on", title=m.hands_on))
        rows.append([button(words, "button-hands-on", f"hands-on:{m.day}")])
    if m.second:
        which = "catch-up" if m.catch_up else "second"
        lines.append(words(f"day-done-{which}", title=m.second))
        rows.append([button(words, f"button-{which}", f"second:{m.day}")])
    if m.more:
        rows.append([button(words, "button-more", f"more:{m.day}")])
    return say(lead_text(words, m.lead), join(lines, "\n"), buttons=rows)


@renders(ExtraDone)
def extra_done(words: Words, m: ExtraDone) -> Rendered:
    """The practice that was asked for is done."""
    return say(
        lead_text(words, m.lead),
        words("extra-done", right=m.right, out_of=m.out_of),
        buttons=[[button(words, "button-more", f"more:{m.day}")]],
    )


@renders(NothingToPractise)
def nothing_to_practise(words: Words, m: NothingToPractise) -> Rendered:
    """No lesson of that name was met yet."""
    if not m.titles:
        return say(words("nothing-to-practise"))
    return say(words("nothing-to-practise-near", titles=words.list(list(m.titles))))


@renders(HandsOnShown)
def hands_on_shown(words: Words, m: HandsOnShown) -> Rendered:
    """What to do, with what, a checklist; a line of safety first where there is one."""
    safety = words("hands-on-safety", safety=from_content(m.safety)) if m.safety else Text()
    needs = words("hands-on-needs", things=", ".join(m.materials)) if m.materials else Text()
    checklist = join([plain("☐ ") + from_content(line) for line in m.checklist], "\n")
    return say(
        bold(m.title),
        safety,
        needs,
        from_content(m.idea),
        checklist,
        buttons=[[button(words, "button-answers", f"answers:{m.day}", count=m.answers)]],
    )


@renders(NothingNow)
def nothing_now(words: Words, m: NothingNow) -> Rendered:
    """Nothing to do just now, and why."""
    if m.why == "day-off" and m.at:
        return say(words("nothing-day-off-next", day=words.date(m.at)))
    rows = [[button(words, "button-start", f"start:{m.day}")]] if m.why == "not-started" and m.day else []
    return say(words(f"nothing-{m.why}"), buttons=rows)


@renders(SmallDay)
def small_day(words: Words, m: SmallDay) -> Rendered:
    """The day is small now."""
    if m.already:
        return say(words("small-day-already"))
    return say(
        words("small-day", count=m.review), buttons=[[button(words, "button-start", f"start:{m.day}")]]
    )


@renders(BreakTaken)
def break_taken(words: Words, m: BreakTaken) -> Rendered:
    """A break, and the ways on."""
    back = f"again:{m.item}" if m.item is not None else f"start:{m.day}"
    label = "button-back-to-item" if m.item is not None else "button-go-on"
    rows = [[button(words, label, back)]]
    if m.enough:
        rows.append([button(words, "button-enough", f"enough:{m.day}")])
    elif m.small:
        rows.append([button(words, "button-small-day", f"small:{m.day}")])
    return say(words("break-taken"), buttons=rows)


@renders(Reminder)
def reminder(words: Words, m: Reminder) -> Rendered:
    """One line, an hour before the digest."""
    minutes = max(5, round(m.minutes / 5) * 5)
    row = [
        button(words, "button-start", f"start:{m.day}"),
        button(words, "button-small-day", f"small:{m.day}"),
    ]
    return say(words("reminder", name=m.name, minutes=minutes), buttons=[row])


@renders(FinishFirst)
def finish_first(words: Words, m: FinishFirst) -> Rendered:
    """The last day can still be finished."""
    row = [
        button(words, "button-finish", f"finish:{m.day}"),
        button(words, "button-start-today", "today:"),
    ]
    return say(words("finish-first", count=m.left), buttons=[row])


@renders(WhoSpeaks)
def who_speaks(words: Words, m: WhoSpeaks) -> Rendered:
    """A button for each child who shares the phone."""
    rows = [[Button(name, f"speak:{student}")] for student, name in m.students]
    if m.why == "words":
        rows.append([button(words, "button-nobody", "speak:0")])
    return say(words("who-speaks-words" if m.why == "words" else "who-speaks"), buttons=rows)


@renders(Speaking)
def speaking(words: Words, m: Speaking) -> Rendered:
    """The phone is the student's."""
    return say(
        words("speaking", name=m.name),
        buttons=[[button(words, "button-back", "back:")]],
        delete=m.away,
        commands=offered(words, ["student"], shared=True),
    )


@renders(GivenBack)
def given_back(words: Words, m: GivenBack) -> Rendered:
    """The phone is the grown-up's."""
    key = "given-back-by-itself" if m.by_itself else "given-back"
    return say(words(key, name=m.name), commands=offered(words, m.roles))
