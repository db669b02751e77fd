# A tutor's own items and lessons
own-head = Your own:
own-none = Nothing of your own is kept yet.
own-how = An item is one line: */own*, a name, then *question // answer // form*. A lesson is a file: send it here with the names beside it. The number goes with */give*.
own-item = item
own-lesson = lesson
own-version-of = version { $v } of { $count }
own-version-row = Version { $v }, { $day }{ $now ->
    [yes] {" "}(stands now)
   *[no] {""}
  }
button-own-give = Give: { $name }
button-own-back = Version { $v } again
button-own-away = Put away
own-faults-head = *{ $title }* doesn’t hold yet. Nothing has changed. To mend:
own-faults-head-typed = That doesn’t hold yet. Nothing has changed. To mend:
own-faults-end = Mend it and send it again.
own-fault-line = Line { $n }:
file-comes = I’m reading *{ $name }* and trying its items out. That takes up to a minute.
file-comes-full = Several files of yours still wait to be read. Please send *{ $name }* again in a few minutes.

line-own-in = { $ask } → **{ $answer }**
line-own-choice = { $ask } Buttons: { $names } → **{ $answer }**
line-own-lesson = **{ $name }**, { $date_day }: your lesson *{ $title }*, its card and four items of it. The course’s own lesson waits that day.
line-own-kept = Your lesson *{ $title }* is kept. Nobody gets it yet.
line-own-card = The card begins: { $text }
line-own-draw = Such as: { $ask } → **{ $answer }**
line-own-version = A new version of { $n }, *{ $title }*. The versions before stay, and what was asked already stays as it was.
line-own-back = { $n }: version { $v }, *{ $title }*, stands again (so far version { $before }).
line-own-stays = What was given or asked already stays as it was.
line-own-away = { $n }, *{ $title }*, is put away. What was given stays.
note-own-like = An answer may look like { $examples }
note-own-instead = It takes the place of a review item. On a day without room for it, it waits, up to 30 days.
note-own-proved = { $count ->
    [one] One kind of item
   *[other] { $count } kinds of items
  }, { $draws } draws tried out: each answer is accepted, each step follows.
note-own-look = Worth a look, line { $line }: { $what }
note-own-give = */give*, a name and its number brings it to somebody. Or send the file again with the names beside it.
note-own-who = I can’t tell who “{ $words }” is, so nobody gets it yet. */give*, a name and its number does it.
why-own = Like this: a name, then *question // answer*, and *// form* if the form matters. One item a line.
why-own-again = Like this: its number, then *question // answer // form*. Or *v2* for its second version, or *away*.
why-own-file = A lesson changes when you send its file again, under the same name. *v2* puts its second version back.
why-own-lost = Lesson { $n } can’t be drawn with the course as it is now. Please send its file again.
why-own-made = { $name }’s day is made already. Your own comes on the next day; leave the date out.
why-no-such-own = You have nothing of your own with the number { $n }. */own* lists it all.
why-no-such-version = { $n } has versions 1 to { $last }.
why-that-version = That version stands now.
why-give = Who, and the number of what is yours: */own* lists it. A second number gives so many items of a lesson.
command-own = items and lessons of your own
command-give = give something of your own
holds-own-lesson = your lesson *{ $title }*, { $key_days }
wish-own-item = an item of your own: *{ $title }*
wish-own-lesson = your lesson *{ $title }*
why-own-number = Item { $n } is one of your own. */holds* ends it.

# Tests that are set, and a second look
line-test = **{ $name }**, { $date_day }: *{ $title }*, { $count } items, about { $minutes } minutes, on lessons met at least five school days before.
line-second = **{ $name }**, { $date_day }: a second look at *{ $title }*, { $count } items with new numbers on what was missed, about { $minutes } minutes.
line-reopen = **{ $name }**: today’s test is open again. All answers stay; nothing counts until it is handed in anew.
line-reopen-closed = **{ $name }**: the test of { $date_day } is open again. All answers stay. Until it is handed in anew, its count stands as the family read it: { $right } of { $count }.
note-reopen-closed = The new count then stands in the record, the letters and that day’s message, and the parents read it in one line. That evening’s message may have shown answers to what was missed; if so, a second look with new numbers tells more.
note-test-set = It takes the place of that day’s lesson and review. A parent or you open it that morning. There is no clock, and no hint.
why-test-how = A name, then the test’s number (1 to { $last }) and a day if you like; or *open*, or *reopen*, with its day if that is over.
why-no-such-test = There is no test { $n } yet; the last one that can be set is { $last }.
why-test-too-early = { $name } has met too little of what *{ $title }* asks, five school days ago or more.
why-test-set = A test is set for { $name } already. */holds* shows it.
why-no-test-today = { $name } has no test today.
why-handed-in = { $name } has handed today’s test in. *reopen* opens it once more.
why-not-reopened = { $name } has handed in no test in the last { $days } days, or not on that day. */test* sets one again with new numbers.
why-reopened-already = { $name }’s test of { $date_day } is open as it is; it waits to be handed in.
why-reopen-second = A second look at { $name }’s test of { $date_day } was had or is set, and it goes by the count that stands. If it only waits, */holds* ends it; then the test can be opened.
why-no-test-yet = { $name } has handed in no test in the last two months.
why-nothing-to-look-at = { $name } missed nothing in the last test.
why-second-had = { $name } had the one second look at that test. What is still shaky comes back as ordinary items.
why-second-not-offered = That test needs no second look. What was missed comes back as ordinary items; the tutor may set one all the same.
command-test = set a test, open it, open it again
command-second = one second look at the last test
holds-test = a test, *{ $title }*, { $key_days }
holds-second-look = a second look at *{ $title }*, { $key_days }
wish-test = a test was set
wish-second-look = a second look was set
button-second-look = A second look

# Doubts
doubt-working = I couldn’t judge **{ $student }**’s working on an item from *{ $title }* ({ $day }):
doubt-reported = **{ $student }** thinks that an item from *{ $title }* is wrong ({ $day }):
doubt-many-missed = Several of your students left the same kind of item from *{ $title }* unsolved lately. It may be the item:
report-noted = Thank you for saying so. { $tutor } looks at it. Go on with the next one, or try it once more.
report-again = { $tutor } has it already. Thank you.
button-report = I think this item is wrong
command-report = say that this item is wrong
passed-reported = **{ $student }** ({ $household }) thinks that this item of *{ $lesson }* is wrong.

# A household goes to another tutor
line-handover = **{ $household }** ({ $names }) is offered to another tutor: I make a link for you to pass on.
note-handover = Nothing changes until they press *Take over*; until then */undo* ends the link. Afterwards answers, records and plans go on with them, and you see nothing more of it. What you set for all your students stays with you. The parents are told.
handover-asked = **{ $tutor }** hands the household **{ $household }** ({ $names }) on to you. You would see their answers, plan their days and read their questions; { $tutor } no longer would. The parents are told.
handover-taken = **{ $household }** is with you from now on. */needs* shows who needs you, */people* who they are.
handover-given = **{ $tutor }** has taken **{ $household }** over. You see nothing more of it.
handover-parent = From now on **{ $tutor }** is the tutor of { $household }, and reads what the tutor before read. What is kept stays the same. */privacy* says what that is; */withdraw* stops everything.
handover-left = Left as it is. The link still works for a few days.
handover-own = **{ $household }** is with you already. The link is for the other tutor.
handover-gone = That link has ended. The tutor can make a new one.
button-take-over = Take over
command-handover = hand a household to another tutor

# An answer that doesn't count from now on
line-reject-always = From now on, “{ $typed }” doesn’t count at items of this kind from *{ $title }*, for all your students. */holds* ends that.
note-alike-counted = { $count ->
    [one] The same was typed and counted once more in the last 60 days; that stays as it is.
   *[other] The same was typed and counted { $count } more times in the last 60 days; those stay as they are.
  }
button-once-not = Not this once
button-not-from-now-on = Not from now on
holds-turned-down = “{ $typed }” doesn’t count at a kind of item from *{ $title }*, { $key_days }

exported-photos = { $count ->
    [one] One photo of { $household }
   *[other] { $count } photos of { $household }
  }, file { $part } of { $parts }.
privacy-months = **How long:** photos, and answers as typed, are removed after { $months } months. Days, minutes and results stay for your records until you have them erased.
privacy-no-limit = **How long:** until you have it erased.
