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
