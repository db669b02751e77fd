from __future__ import annotations

from support.group import Group, Somebody, only
from support.steering import does, words_of

from bot import demo
from bot.messages import (
    AgendaShown,
    Changed,
    DayShown,
    DaysShown,
    Digest,
    FromTutor,
    MapShown,
    NeedsShown,
    PaceShown,
    PeopleShown,
    Preview,
    WrongCommand,
)
from bot.vocabulary import Part


def test_today_is_a_line_for_each_student(worked: Somebody, ines: Somebody) -> None:
    shown = only(DaysShown, ines.types("/today"))
    rows = {row.name: row for row in shown.rows}
    assert set(rows) == {"Wren", "Sol", "Juniper"}
    assert rows["Wren"].stage == "working" and rows["Wren"].done == 2 and rows["Wren"].first_try == 1
    assert rows["Sol"].stage == "pushed"


def test_one_students_day_lists_the_items_by_the_numbers_the_student_sees(
    worked: Somebody, ines: Somebody
) -> None:
    shown = only(DayShown, ines.types("/today wren"))
    review = [item for item in shown.items if item.part == Part.REVIEW]
    assert [item.n for item in review] == [str(sent.place) for sent in worked.items(Part.REVIEW)]
    assert [item.n for item in shown.items if item.part == Part.GUIDED] == ["g1", "g2", "g3", "g4"]
    assert review[0].stands == "unsolved" and review[0].typed == "123454321"
    assert review[2].with_tutor


def test_who_was_asked_for_help_comes_first_and_who_is_fine_is_only_counted(
    worked: Somebody, ines: Somebody
) -> None:
    shown = only(NeedsShown, ines.types("/needs"))
    assert [row.name for row in shown.rows] == ["Wren"]
    assert shown.quiet == 2
    assert shown.rows[0].reasons[0].key == "need-doubts"


def test_days_not_opened_in_a_row_are_named(ines: Somebody, group: Group) -> None:
    for day in range(3):
        group.at(8, day=day)
        group.tick()
        group.at(19, day=day)
        group.tick()
    group.at(20, day=2)
    rows = {row.name: row for row in only(NeedsShown, ines.types("/needs")).rows}
    assert rows["Sol"].reasons[0].key == "need-not-opened"
    assert rows["Sol"].reasons[0].holes == {"count": 3}


def test_one_bad_day_is_no_reason(ines: Somebody, group: Group) -> None:
    group.at(19)
    group.tick()
    assert only(NeedsShown, ines.types("/needs")).rows == ()


def test_the_map_holds_steady_shaky_and_not_met(worked: Somebody, ines: Somebody, group: Group) -> None:
    group.at(19)
    group.tick()
    shown = only(MapShown, ines.types("/map wren"))
    titles = [title for unit in shown.units for place in unit[1:] for title in place]
    assert len(titles) == len(set(titles))
    written = {lesson.title for lesson in (*group.school.course.before, *group.school.course.lessons)}
    assert set(titles) <= written
    assert "%" not in words_of([shown])


def test_the_pace_is_a_range_and_called_a_forecast(ines: Somebody) -> None:
    shown = only(PaceShown, ines.types("/pace wren"))
    assert shown.early <= shown.late
    assert "forecast" in words_of([shown])


def test_the_agenda_holds_one_wrong_answer_as_typed_and_a_fresh_item(
    worked: Somebody, ines: Somebody
) -> None:
    shown = only(AgendaShown, ines.types("/agenda wren"))
    assert 1 <= len(shown.points) <= 3
    point = shown.points[0]
    assert point.typed == "123454321" and point.fresh and point.fresh != point.ask


def test_a_note_stands_in_the_evenings_digest(
    worked: Somebody, ines: Somebody, tove: Somebody, group: Group
) -> None:
    does(ines, "/note wren Lovely **work** on paper { today }.")
    group.at(19)
    digests = [each for each in group.tick() if isinstance(each, Digest) and each.name == "Wren"]
    assert [each.note for each in digests] == ["Lovely **work** on paper { today }."]
    assert "Lovely **work** on paper { today }." in words_of(digests)


def test_a_message_goes_out_on_do_it_and_is_passed_on_as_typed(ines: Somebody, tove: Somebody) -> None:
    said = does(ines, "/tell tove See you *on* Thursday, { name }!")
    passed = only(FromTutor, said)
    assert passed.to == tove.chat and passed.text == "See you *on* Thursday, { name }!"
    assert passed.text in words_of([passed])
    assert not only(Changed, said).undo


def test_a_message_is_not_sent_to_a_phone_that_a_child_holds(
    ines: Somebody, anselm: Somebody, group: Group
) -> None:
    shown = only(Preview, ines.types("/tell anselm Please call me."))
    (student, _), *_ = anselm.types("/hand")[0].students  # type: ignore[attr-defined]
    anselm.presses("speak", student)
    said = ines.presses("t-do", shown.change)
    assert not [each for each in said if isinstance(each, FromTutor)]


def test_people_shows_who_has_a_phone(ines: Somebody) -> None:
    shown = only(PeopleShown, ines.types("/people"))
    by_name = {row.name: row.phone for _, _, _, _, rows in shown.households for row in rows}
    assert by_name == {"Tove": "own", "Wren": "own", "Sol": "own", "Anselm": "own", "Juniper": "shared"}


def test_a_move_to_a_lesson_says_what_counts_as_met(ines: Somebody, group: Group) -> None:
    third = group.school.course.lessons[2]
    shown = only(Preview, ines.types("/lesson wren 3"))
    assert third.title in words_of([shown])
    assert shown.lines[0].key == "line-lesson-on" and shown.lines[0].holes["count"] == 2
    ines.presses("t-do", shown.change)
    assert only(Preview, ines.types("/lesson wren 1")).lines[0].key == "line-lesson-back"


def test_a_link_needs_a_whole_address(ines: Somebody) -> None:
    assert only(WrongCommand, ines.types("/link wren order of operations example")).why.key == "why-url"


def test_a_tutors_page_stands_beside_the_lesson(ines: Somebody, group: Group) -> None:
    title = group.school.course.lessons[0].title.lower()
    does(ines, f"/link {title} https://example.org/place-value")
    wren = group.who(demo.WREN)
    wren.starts()
    said = []
    for _ in range(8):
        day = wren.day()
        if day.stage == "card":
            break
        shown = [each for each in wren.items(Part.WARM_UP) if each.state == "shown"]
        said = wren.presses("leave", shown[0].id) if shown else wren.presses("leave-facts", 0)
    assert "https://example.org/place-value" in str(said)
