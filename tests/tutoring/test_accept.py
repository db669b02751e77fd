from __future__ import annotations

from support.group import Group, Somebody, only
from support.steering import does, stored, undoes, words_of

from bot.messages import (
    Accepted,
    Changed,
    Choose,
    Digest,
    DoubtShown,
    NeedsShown,
    NoDoubts,
    Passed,
    Preview,
    RecordShown,
    WrongCommand,
)
from bot.records import attempts, memories
from bot.records.base import transaction
from bot.records.days import Sent
from bot.vocabulary import Outcome, Part, Verdict


def first(wren: Somebody) -> Sent:
    return wren.items(Part.REVIEW)[0]


def gradings(group: Group, item: Sent) -> list[tuple[str, str]]:
    with transaction(group.engine) as s:
        return [(each.verdict.value, each.by) for each in attempts.attempts_of(s, item.id)]


def test_an_accepted_answer_counts_and_the_student_is_told(
    worked: Somebody, ines: Somebody, group: Group
) -> None:
    assert first(worked).outcome is Outcome.UNSOLVED
    said = does(ines, "/accept wren 1")
    told = only(Accepted, said)
    assert told.to == worked.chat and told.tutor == "Ines"
    assert first(worked).outcome in (Outcome.FIRST_TRY, Outcome.LATER_TRY)
    assert Verdict.RIGHT.value in {verdict for verdict, _ in gradings(group, first(worked))}


def test_earlier_gradings_stay_when_an_answer_is_accepted(
    worked: Somebody, ines: Somebody, group: Group
) -> None:
    before = stored(group.engine)["grading"]
    does(ines, "/accept wren 1")
    after = stored(group.engine)["grading"]
    assert after[: len(before)] == before
    assert len(after) == len(before) + 1


def test_taking_an_acceptance_back_adds_a_grading_and_counts_as_before(
    worked: Somebody, ines: Somebody, group: Group
) -> None:
    stood = first(worked)
    verdicts = [verdict for verdict, _ in gradings(group, stood)]
    done = does(ines, "/accept wren 1")
    undoes(ines, done)
    assert first(worked) == stood
    assert [verdict for verdict, _ in gradings(group, stood)] == verdicts


def test_the_fresh_item_of_an_accepted_one_is_not_asked(worked: Somebody, ines: Somebody) -> None:
    fresh = [sent for sent in worked.items(Part.REVIEW) if sent.comeback_of == first(worked).id]
    assert fresh
    done = does(ines, "/accept wren 1")
    assert not [sent for sent in worked.items(Part.REVIEW) if sent.comeback_of]
    undoes(ines, done)
    assert [sent.id for sent in worked.items(Part.REVIEW) if sent.comeback_of] == [sent.id for sent in fresh]


def test_an_answer_accepted_after_the_digest_changes_what_is_believed(
    worked: Somebody, ines: Somebody, group: Group
) -> None:
    group.at(19)
    group.tick()
    student = worked.id
    with transaction(group.engine) as s:
        before = memories.memories(s, student)
    group.at(20)
    done = does(ines, "/accept wren 1")
    with transaction(group.engine) as s:
        after = memories.memories(s, student)
    skill = first(worked).item.skills[0]
    assert after[skill].stability > before[skill].stability
    undoes(ines, done)
    with transaction(group.engine) as s:
        assert memories.memories(s, student) == before


def test_the_digest_mentions_what_was_accepted(
    worked: Somebody, ines: Somebody, tove: Somebody, group: Group
) -> None:
    does(ines, "/accept wren 1")
    digest = only(Digest, tove.types("/digest wren"))
    assert digest.accepted == (first(worked).item.lesson_title,)


def test_the_button_under_a_passed_item_leads_to_the_preview(
    worked: Somebody, ines: Somebody, group: Group
) -> None:
    third = worked.items(Part.REVIEW)[2]
    with transaction(group.engine) as s:
        attempt = attempts.attempts_of(s, third.id)[0].id
    shown = only(Preview, ines.presses("t-accept", attempt))
    assert "item 3" in words_of([shown])


def test_an_answer_that_counts_can_be_taken_out(worked: Somebody, ines: Somebody) -> None:
    second = worked.items(Part.REVIEW)[1]
    assert second.outcome is Outcome.FIRST_TRY
    done = does(ines, "/reject wren 2")
    assert worked.item(second.id).outcome is Outcome.UNSOLVED
    undoes(ines, done)
    assert worked.item(second.id) == second


def test_of_several_answers_one_is_chosen(worked: Somebody, ines: Somebody, group: Group) -> None:
    current = next(sent for sent in worked.items(Part.REVIEW) if sent.state == "shown")
    worked.types("99999991")
    asked = only(Choose, ines.types(f"/accept wren {current.place}"))
    assert len(asked.options) == 2
    only(Preview, ines.presses("t-pick", f"{asked.ref}.1"))


def test_a_form_may_count_from_now_on(worked: Somebody, ines: Somebody, group: Group) -> None:
    """What isn't readable today may be read from now on, for everybody whose tutor says so."""
    current = next(sent for sent in worked.items(Part.REVIEW) if sent.state == "shown")
    worked.types("about a loaf & a bit ~~")
    with transaction(group.engine) as s:
        unread = attempts.attempts_of(s, current.id)[-1]
    assert unread.verdict is Verdict.UNREADABLE
    shown = only(Preview, ines.presses("t-accept", unread.id))
    ((always, key),) = shown.ways
    assert key == "button-from-now-on"
    only(Changed, ines.presses("t-do", always))
    assert worked.item(current.id).outcome in (Outcome.FIRST_TRY, Outcome.LATER_TRY)
    with transaction(group.engine) as s:
        assert attempts.attempts_of(s, current.id)[-1].by != attempts.CHECKER


def test_an_answer_may_be_turned_down_from_now_on_at_its_kind_of_item_only(
    worked: Somebody, ines: Somebody, group: Group
) -> None:
    current = next(sent for sent in worked.items(Part.REVIEW) if sent.state == "shown")
    while current.item.choices:
        worked.answers(current)
        worked.presses("on")
        current = next(sent for sent in worked.items(Part.REVIEW) if sent.state == "shown")
    key = current.item.key
    typed = f"{key.answer} {key.unit}" if key.unit else f"= {key.answer}"
    worked.types(typed)
    with transaction(group.engine) as s:
        counted = attempts.attempts_of(s, current.id)[-1]
    assert counted.verdict is Verdict.RIGHT
    shown = only(Preview, ines.types(f"/reject wren {current.place}"))
    assert words_of([shown]) and words_of([shown], "es")
    ((always, label),) = shown.ways
    assert label == "button-not-from-now-on"
    done = ines.presses("t-do", always)
    assert worked.item(current.id).outcome is not Outcome.FIRST_TRY
    assert "doesn’t count" in words_of(ines.types("/holds wren"))
    worked.presses("again", current.id)
    worked.types(typed)
    assert worked.item(current.id).outcome is not Outcome.LATER_TRY
    undoes(ines, done)
    assert worked.item(current.id).outcome in (Outcome.FIRST_TRY, Outcome.LATER_TRY)
    assert "doesn’t count" not in words_of(ines.types("/holds wren"))


def test_an_excused_item_does_not_count(worked: Somebody, ines: Somebody, tove: Somebody) -> None:
    done = does(ines, "/excuse wren 1")
    assert first(worked).outcome is Outcome.EXCUSED
    assert only(Digest, tove.types("/digest wren")).excused == 1
    undoes(ines, done)
    assert first(worked).outcome is Outcome.UNSOLVED


def test_somebody_elses_attempt_is_no_answer_of_theirs(worked: Somebody, ines: Somebody) -> None:
    refused = only(WrongCommand, ines.presses("t-accept", 424242))
    assert refused.why.key == "why-no-such-answer"


def test_an_item_passed_to_the_tutor_waits_among_the_doubts_until_it_was_seen(
    worked: Somebody, ines: Somebody
) -> None:
    shown = only(DoubtShown, ines.types("/doubts"))
    assert shown.row.kind == "asked" and "Wren" in shown.row.student
    assert only(NeedsShown, ines.types("/needs")).doubts == 1
    only(NoDoubts, ines.presses("t-run", f"doubts seen {shown.row.ref}"))
    assert only(NeedsShown, ines.types("/needs")).doubts == 0


def test_the_record_of_an_item_holds_all_that_was_typed(worked: Somebody, ines: Somebody) -> None:
    record = only(RecordShown, ines.types("/item wren 1"))
    assert [row[1] for row in record.attempts] == ["123454321"] * 3
    assert record.answer == first(worked).item.key.answer
    words_of([record])


def test_a_student_who_asks_twice_is_passed_on_once(worked: Somebody) -> None:
    third = worked.items(Part.REVIEW)[2]
    assert not [each for each in worked.presses("ask", third.id) if isinstance(each, Passed)]
