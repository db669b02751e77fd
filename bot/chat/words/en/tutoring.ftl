# Changes: preview, done, undone
preview-head = This would change:
preview-not-yet = Nothing has happened yet.
changed-head = **Done.**
changed-already = That was done before.
changed-link = Here is the link for **{ $name }**. Please pass it on; it works once, for seven days:
left-as-is = Left as it was. Nothing changed.
taken-back-head = **Taken back:**
taken-back-kept = Not all of it could be taken back:
cannot-undo-none = There is nothing of the last 24 hours to take back.
cannot-undo-late = That was more than 24 hours ago, so it can’t be taken back any more. A new command changes it.
cannot-undo-gone = That was taken back before, or never done.
cannot-undo-final = A message that was sent, or a phone that was unlinked, can’t be taken back.
cannot-undo-old = That preview is more than a day old. Please ask once more, so that you see how things stand now.
cannot-undo-stale = Something happened in the meantime, so nothing was changed. Please ask once more, and you’ll see how things stand now.
changes-head = Changed in the last 24 hours, the newest first:
button-do = Do it
button-leave-it = Leave it
button-undo = Undo
button-undo-n = Undo { $n }
button-from-now-on = Count it from now on
button-once = Count it this once
button-own-phone = A chat of their own
button-parents-phone = On a parent’s phone
kept-day = The day of { $date_day } was made before; its items stay.
kept-step = What came of it since then stays.

line-off = { $names }: days off from { $date_from } to { $date_to } ({ $days ->
    [0] no school day falls into it
    [one] one school day
   *[other] { $days } school days
  }).
line-off-day = { $names }: a day off on { $date_day }.
line-sick = { $names }: sick from { $date_from } to { $date_to }.
line-sick-day = { $names }: sick on { $date_day }.
line-sick-back = Nothing piles up. After three school days away or more, the first day back is review only.
line-small = { $name }: small days from { $date_from } to { $date_to }. Six review items, no lesson.
line-small-day = { $name }: a small day on { $date_day }. Six review items, no lesson.
line-small-today = { $name }: today becomes a small day, six review items and no lesson. What is done stays done.
line-minutes = { $name }: { $minutes } minutes a day (so far { $before }).
line-morning = { $name }: the day comes at { $time_at } (so far { $time_before }).
line-evening = { $household }: the evening digest comes at { $time_at } (so far { $time_before }).
line-timing-on = Number facts of { $names } are timed from the next sheet on.
line-timing-off = Number facts of { $names } are not timed.
line-day-of = **{ $name }**, { $date_day }:
line-in = In: *{ $title }*. { $ask }
line-out = Out: *{ $title }*. { $ask }
line-more = … and { $count } more.
line-no-lesson = No lesson that day; *{ $title }* waits.
line-new-lesson = The lesson of that day is *{ $title }*.
line-pin = { $name }: one item from *{ $title }* each school day from { $date_from } to { $date_to }, such as: { $ask }
line-practice-more = { $names }: more of *{ $title }* in the review, until { $date_to }.
line-practice-less = { $names }: less of *{ $title }* in the review, until { $date_to }.
line-practice-none = { $names }: nothing from *{ $title }* in the review, until { $date_to }.
line-items = { $name }: { $count ->
    [one] one review item a day
   *[other] { $count } review items a day
  }, from the next day on.
line-items-auto = { $name }: the number of review items follows the student’s own times again.
line-review = { $name }: review only, no lesson, from { $date_from } to { $date_to }.
line-review-day = { $name }: review only, no lesson, on { $date_day }.
line-open = { $names }: school from { $date_from } to { $date_to }, holiday or not.
line-open-day = { $names }: school on { $date_day }, holiday or not.
line-week = { $name }: school on { $week }; so far on { $week_before }.
line-begin = { $names }: the first day is { $date_day }.
line-pause = { $names }: paused. No days and no digests until you resume.
line-resume = { $names }: days come again, from the next school day on.
line-lesson = { $name }: lesson { $n }, *{ $title }*, comes next, from its beginning.
line-lesson-on = { $name }: lesson { $n }, *{ $title }*, comes next. { $count ->
    [one] The lesson before it counts as met.
   *[other] The { $count } lessons before it count as met.
  }
line-lesson-back = { $name }: back to lesson { $n }, *{ $title }*. { $count ->
    [one] It is taught again.
   *[other] { $count } lessons are taught again.
  }
line-skip = { $names }: lesson { $n }, *{ $title }*, is left out.
line-link = { $names }: beside *{ $title }* stands your page { $url }
line-link-all = All your students: beside *{ $title }* stands your page { $url }
line-accept = { $name }, item { $n }: “{ $typed }” counts as right.
    The question: { $ask }
    The key says: { $answer }
line-accept-always = From now on, “{ $typed }” counts wherever the answer is { $answer }, for all your students.
line-reject = { $name }, item { $n }: “{ $typed }” does not count.
    The question: { $ask }
    The key says: { $answer }
line-counts-first-try = The item then counts as solved at first go.
line-counts-later-try = The item then counts as solved on a later try.
line-counts-unsolved = The item then still counts as unsolved.
line-digest-was-sent = That day’s digest is out already and stays as it was; */digest* shows it anew.
line-excuse = { $name }, item { $n } does not count: { $ask }
line-note = In { $name }’s digest of { $date_day }: “{ $text }”
line-tell = To { $name }: “{ $text }”
line-household = A new household, **{ $name }**, clocks as in { $zone }.
line-parent = **{ $name }** becomes a parent in { $household }, and I make a link for them.
line-parent-me = You become a parent in { $household } yourself.
line-student = **{ $name }** becomes a student in { $household }. Where does { $name } work?
line-student-shared = **{ $name }** becomes a student in { $household } and works on a parent’s phone.
line-student-own = **{ $name }** becomes a student in { $household } with a chat of their own, and I make a link for it.
line-second-home = **{ $name }** is at home in { $household } as well; the parents there read the digest too.
line-invite = A link for { $name } ({ $household }).
line-invite-again = A link for another phone of { $name } ({ $household }). The phone of now goes on until the new one is linked.
line-unlink = { $name } ({ $household }): the phone is let go.
line-zone = { $household }: clocks as in { $zone } (so far { $before }).
line-country = { $household }: the public holidays of { $country } are free.
line-country-none = { $household }: no public holidays are kept.

note-timing = Timing is optional. It helps some children and worries others; without it nothing is missed. There is never a running clock, and typing time is taken off.
note-minutes = { $name }’s day then takes about { $minutes } minutes (the family’s day is { $family }).
note-in-already = { $count ->
    [one] One of them stands in the plan already.
   *[other] { $count } of them stand in the plan already.
  }
note-not-taught = *{ $title }* was wished for, but it waits for a lesson that wasn’t met yet.
note-test = Test { $n } is due. A parent or you open it.
note-skip-needed = Later lessons build on it: { $names }.
note-alike = { $count ->
    [one] The same was typed and not counted once more in the last 60 days; that stays as it is.
   *[other] The same was typed and not counted { $count } more times in the last 60 days; those stay as they are.
  }
note-final = Once sent, it can’t be taken back.
note-household = Next: */parent* and */student* fill it. Nothing is sent to anybody before a parent agrees.
note-link-comes = You get the link to pass on. Nothing is sent to the children before a parent agrees.
note-own-phone = Chat services and many places have age rules, often 13 or more. For a younger child a parent’s phone is the way that is meant. No age is kept; please follow the rules where you live.
note-unlink = Nothing more goes there. This can’t be taken back, but */invite* makes a new link.

wish-pin = pinned: *{ $title }*
wish-drop = left out: an item from *{ $title }*
wish-more = more of *{ $title }*
wish-fewer = less of *{ $title }*
wish-drop-skill = nothing from *{ $title }*
wish-small-day = a small day
wish-no-lesson = no lesson

# Questions
ask-did-you-mean = I don’t know “{ $name }”. Did you mean one of these? Nothing has changed.
ask-several = “{ $name }” fits more than one. Which? Nothing has changed.
ask-which-student = Who is it for?
ask-which-household = Which household?
ask-which-person = Who?
ask-which-lesson = “{ $words }” fits more than one lesson. Which?
ask-which-answer = { $name } gave several answers to item { $n }. Which one?
ask-which-zone = Which time zone is “{ $zone }”?

# Why a command can’t be followed
wrong-examples = It is typed like this:
why-no-students = You have no students yet. A household comes first, then its people.
why-no-households = You have no household yet.
why-no-people = Nobody is in your households yet.
why-no-such-name = I don’t know “{ $name }”.
why-no-such-command = There is no command “{ $name }”.
why-only-a-name = That one takes a name and nothing more.
why-not-a-date = I read the name, but “{ $words }” is no date I know.
why-date-missing = On which day, or from when to when?
why-date-order = The last day stands before the first, or more than a year after it.
why-date-past = { $date_day } is over.
why-day-over = { $name }’s day of { $date_day } is over.
why-no-school = { $name } has no school on { $date_day }.
why-no-day-ahead = No school day is in sight for { $name }. See */week* and */off*.
why-no-day-yet = { $name } has had no day yet.
why-no-day-then = { $name } had no day on { $date_day }.
why-not-a-school-weekday = { $date_day } is no school day in { $name }’s week. */week* changes that.
why-test-day = { $date_day } is a test day for { $name }; it takes no other items.
why-lesson-missing = From which lesson? A word or two of its title will do.
why-no-such-lesson = No lesson has “{ $words }” in its title.
why-no-such-number = There is no lesson { $n }; the last one written is { $last }.
why-not-met = { $name } hasn’t met *{ $title }* yet, so it can’t be asked. */lesson* would move { $name } on.
why-count = One to { $most } items at a time.
why-numbers = Which items? The numbers stand in { $name }’s list: */plan* for the day to come, */today* for the day that runs.
why-one-number = Which item? One number from { $name }’s list, please.
why-no-number = { $name } has no item { $n } on { $date_day }.
why-number-moved = Item { $n } isn’t in { $name }’s plan for { $date_day } any more. Please look at the plan again.
why-item-done = { $name } has done item { $n } already. */excuse* takes it out of the count.
why-item-open = { $name } is at item { $n } just now. */excuse* takes it out of the count.
why-swap-for-what = In exchange for what? Please name a lesson.
why-nothing-missed = { $name } has nothing unsolved on the latest day.
why-repeat-today = Today’s day is made already; items come again from tomorrow on.
why-cannot-repeat = Warm-ups can’t be repeated, only lesson items.
why-items = A number from 0 to { $most }, or *auto*.
why-minutes = A number of minutes from { $least } to { $most }.
why-sick-days = One to 60 days.
why-small-already = { $name }’s day is a small one already.
why-morning = An hour between { $time_first } and { $time_last }; at night nothing is sent.
why-morning-after-digest = The digest comes at { $time_digest }; the day has to come before it.
why-evening = An hour between { $time_first } and { $time_last }.
why-evening-before-push = { $name }’s day comes at { $time_push }; the digest has to come after it.
why-timing = *on* or *off*?
why-language = I speak *en* (English) and *es* (Spanish).
why-week = Name the days, as in *mon-thu light fri*. At most one is light.
why-begun = { $name } began on { $date_day }.
why-paused-already = That is paused already.
why-not-paused = That isn’t paused.
why-url = The page’s whole address at the end, please, with http:// or https://.
why-no-such-answer = That answer isn’t one of your students’.
why-graded-so-already = That answer is graded so already.
why-nothing-to-accept = { $name } has no answer to item { $n } that didn’t count.
why-nothing-to-reject = { $name } has no answer to item { $n } that counted.
why-note-missing = What shall the note say?
why-words-missing = What shall I tell { $name }?
why-too-long = That is too long; { $most } letters at most, please.
why-no-chat = { $name } has no phone linked.
why-no-consent = No parent of { $name } has agreed yet, so nothing is sent there.
why-household-name = What is the household called?
why-household-exists = You have a household { $name } already.
why-name-too-long = A name of at most { $most } letters, please.
why-zone-missing = Where are its clocks? A city will do, as in *Europe/London*.
why-zone = I don’t know the time zone “{ $zone }”.
why-country = I don’t know the public holidays of “{ $country }”. Two letters, please, as in *GB*.
why-person-name = Who? A first name or nickname, please; nothing more is kept. The household is { $household }.
why-same-name = There is a { $name } in { $household } already. A nickname tells them apart.
why-not-linked = { $name } has no phone linked.
why-doubts = */doubts* takes nothing after it.

# Lists
needs-head = Who needs you:
needs-none = Nobody needs you just now.
needs-quiet = { $count ->
    [0] {""}
    [one] One other student is fine.
   *[other] The { $count } others are fine.
  }
needs-all-fine = { $count ->
    [one] Your student is fine.
   *[other] All { $count } are fine.
  }
button-doubts = Doubts ({ $count })
need-consent = no parent has agreed yet
need-phone = no phone is linked
need-blocked = { $name } has blocked the bot; nothing arrives
need-doubts = { $count ->
    [one] an answer waits for you
   *[other] { $count } answers wait for you
  }
need-paused = paused
need-not-opened = { $count } days in a row not opened
need-left = { $count } days in a row not finished
need-our-fault = the last day couldn’t be sent; that was our fault
need-misstep = { $count } times lately the same wrong turn in *{ $title }*: { $say }
need-hard = { $unsolved } of the last { $out_of } review items unsolved
need-no-lesson = at the end of what is written; review days only
need-still-hard = the family found it still hard, twice: { $names }

days-head = Today:
day-row-none = today hasn’t come yet
day-row-off = no school today
day-row-paused = paused
day-row-no-consent = no parent has agreed yet
day-row-no-chat = no phone is linked
day-row-not-begun = hasn’t begun yet
day-row-missed = couldn’t be sent; that was our fault
day-row-pushed = not opened yet
day-row-working = { $done } of { $out_of } review items done, { $first } at first go
day-row-done = done: { $first } of { $out_of } at first go
day-row-enough = had enough at { $done } of { $out_of }
day-open = { $open ->
    [one] , one unsolved
   *[other] , { $open } unsolved
  }
day-lesson = Lesson: *{ $lesson }*
day-minutes = About { $minutes } minutes at work so far.
day-legend = ● first go   ◐ later   ○ unsolved   – excused   · to come   ? asked you
day-more = … and { $count } more.
button-plan = The next day
button-map = Map
button-agenda = Agenda
button-digest-of = Digest: { $name }
plan-head = **{ $name }**, { $day }
plan-kind-lesson = Lesson: *{ $lesson }*
plan-kind-lesson-part = Lesson: *{ $lesson }*, day { $sitting }
plan-kind-light = The light day: review only.
plan-kind-review-only = Review only, no lesson.
plan-kind-small = A small day.
plan-kind-test = A test day.
plan-kind-gentle = Back after a long while: a gentle day.
plan-kind-off-season = A short day to keep things fresh.
plan-minutes = About { $minutes } minutes (the family’s day is { $family }).
plan-guided = **Guided practice**
plan-review = **Review**
plan-notes = For that day: { $wishes }
plan-how = The numbers go with */drop* and */swap*. The plan may still move with what is answered today.
button-make-small = Small day
button-no-lesson = No lesson
map-head = **{ $name }**: what stands how
map-next = Next lesson: *{ $lesson }*
map-steady = steady: { $titles }
map-shaky = shaky: { $titles }
map-none-met = { $count ->
    [one] one lesson, not met yet
   *[other] { $count } lessons, none met yet
  }
map-not-met = not met: { $titles }
map-note = Worked out from answers and the days since; a child may know more, or less.
record-head = **{ $name }**, { $day }, item { $n } from *{ $title }*
record-answer = Key: { $answer }
record-none = Nothing was typed.
record-hints = { $hints ->
    [one] after a hint
   *[other] after { $hints } hints
  }
record-by-tutor = graded by hand
record-may = perhaps: { $say }
record-read = read as { $read }
verdict-right = right
verdict-wrong = not right
verdict-form = right amount, other form
verdict-unit = unit missing
verdict-unreadable = not readable
verdict-help = asked for help
outcome-first-try = Solved at first go.
outcome-later-try = Solved on a later try.
outcome-unsolved = Unsolved.
outcome-untouched = Not reached.
outcome-excused = Excused.
button-accept-n = Accept “{ $typed }”
button-reject-n = Doesn’t count: “{ $typed }”
button-excuse = Excuse
pace-head = **{ $name }**
pace-lesson = At lesson { $n } of { $out_of }: *{ $lesson }*
pace-lesson-end = At the end of what is written ({ $written } lessons).
pace-written = Written so far: { $written } of { $out_of } lessons.
pace-week = School on { $week }.
pace-taken = Lesson days in the last weeks: { $taken } of { $planned } took place.
pace-left = Lesson days still to come in what is written: { $left }.
pace-finish = What is written may be done between { $early } and { $late }, if things go on like this. A forecast, not a promise.
people-household = **{ $name }** · { $zone } · digest at { $at } · { $agreed ->
    [yes] a parent has agreed
   *[no] no parent has agreed yet
  }
people-empty = nobody yet
role-parent = parent
role-student = student
role-tutor = tutor
phone-own = phone linked
phone-shared = on a parent’s phone
phone-none = not linked
doubt-asked = **{ $student }** asks about an item from *{ $title }* ({ $day }):
doubt-unreadable = I couldn’t read **{ $student }**’s answers to an item from *{ $title }* ({ $day }):
doubt-typed = Typed: { $typed }
doubt-key = Key: { $answer }
doubt-many = { $count } of your students missed this kind lately. It may be the item.
doubts-left = { $count ->
    [0] {""}
    [one] One more waits.
   *[other] { $count } more wait.
  }
doubts-none = No doubts wait.
button-seen = Seen
agenda-head = **{ $name }**: for the live lesson
agenda-well = Went well: { $titles }
agenda-none = Nothing was missed lately. A good time for something new.
agenda-point = { $n }. **{ $title }**
agenda-typed = { $ask } Typed: { $typed }
agenda-fresh = A fresh one to do together: { $ask } (answer: { $answer })
from-tutor = From { $tutor }: { $text }
from-tutor-for = From { $tutor }, for { $name }: { $text }

# Help
commands-head-t = What you can type. Each change is shown first, and can be taken back for 24 hours. Names may be shortened: *wr* for Wren, *all* for everybody.
commands-head-f = What you can type. Each change is shown first, and can be taken back for 24 hours.
commands-more = */help* and a command’s name shows more examples.
group-look = Look
group-next = The next day
group-when = Days and hours
group-course = The course
group-answers = Answers
group-words = Words
group-people = Households and people
group-day = The day
group-family = Your household
group-all = And
command-day = what is to be done today
command-paper = the whole sheet, to do on paper
command-small = a small day
command-enough = enough for today
command-hint = a hint for this item
command-tutor = ask the tutor about this item
command-back = give the phone back
command-needs = who needs me now
command-today = how today stands
command-plan = what the next day holds, with numbers
command-item = one item with all that was typed
command-map = what is steady, shaky, not met
command-pace = how far, and when the course may be done
command-agenda = three things for the live lesson
command-doubts = answers that wait for a word from you
command-digest = the digest of any day
command-add = more items of a lesson
command-drop = leave items out
command-swap = another item in place of one
command-repeat = today’s items again, with new numbers
command-pin = one item of a kind each day for a while
command-practice = more, less or none of a lesson in the review
command-items = how many review items a day
command-minutes = minutes a day
command-review = a day without a lesson
command-off = days off
command-sick = sick days
command-open = school in spite of a holiday
command-week = which weekdays are school days
command-morning = when the day comes
command-evening = when the digest comes
command-begin = the first day
command-pause = pause
command-resume = go on after a pause
command-lesson = which lesson comes next
command-skip = leave a lesson out
command-link = your own page beside a lesson
command-accept = count an answer
command-reject = don’t count an answer
command-excuse = an item that shall not count
command-note = a word in the evening digest
command-tell = a message to a student or parent
command-people = households, people and phones
command-household = a new household
command-parent = a parent joins
command-student = a student joins
command-invite = a link for somebody’s phone
command-unlink = let a phone go
command-zone = a household’s time zone
command-country = which public holidays are kept
command-timing = number facts timed or not
command-hand = hand the phone to a child
command-privacy = what is kept, and why
command-agree = read and give consent
command-withdraw = stop everything
command-undo = take the last change back
command-changes = what I changed lately
command-language = language
command-more = more practice, when the day is done
command-help = what I can type
week-light = { $day } (light)
line-erase = Everything stops for { $household } now. On { $date_on } all that is kept is erased for good: answers, photos, names.
note-erase = Until that day */keep* changes your mind. Backups that the tutor made before age out in their own time. */export* gives you everything to keep first.
why-erase-asked = That was asked for already. */keep* changes your mind.
why-nothing-to-keep = Nothing is going to be erased.
command-export = everything that is kept, as a file
command-erase = erase everything, in a week
command-keep = don’t erase after all

# What holds for a while
holds-head = For **{ $name }** this holds:
holds-none = Nothing holds for { $name } beyond the plan itself.
holds-days = from { $date_from } to { $date_to }
holds-days-one = { $date_from }
holds-days-open = since { $date_from }
holds-pin = pinned: *{ $title }*, { $key_days }
holds-drop = left out: an item from *{ $title }*, { $key_days }
holds-drop-skill = nothing from *{ $title }*, { $key_days }
holds-more = more of *{ $title }*, { $key_days }
holds-fewer = less of *{ $title }*, { $key_days }
holds-days-off = days off, { $key_days }
holds-sick = sick, { $key_days }
holds-school-on = school in spite of a holiday, { $key_days }
holds-small-day = small day, { $key_days }
holds-no-lesson = review only, { $key_days }
holds-leave-out = left out: the lesson *{ $title }*, { $key_days }
holds-link = your page beside *{ $title }*: { $url }, { $key_days }
holds-note = a note in the digest: “{ $text }”, { $key_days }
holds-own-item = an item of your own, *{ $title }*, { $key_days }
holds-read-as = “{ $typed }” counts, { $key_days }
button-end-n = End { $n }
line-end = This ends early; what it did so far stays:
why-no-such-wish = That doesn’t hold for any of your students. */holds* shows what does.
command-holds = what holds for a while
command-end = end one of those early
family-changed = { $name } ({ $household }) changed this:
family-took-back = { $name } ({ $household }) took this back:
