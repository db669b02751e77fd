day-ready-hello = Good morning, **{ $name }**.
day-ready-lesson = Today’s new lesson: **{ $lesson }**.
day-ready-lesson-part = Today’s lesson: **{ $lesson }**, day { $sitting } of { $sittings }.
day-ready-light = No new lesson today. It’s the light day of the week.
day-ready-review-only = Good to have you back. No new lesson today, only things you’ve met before.
day-ready-gentle = Good to have you back. We start gently: a few things that you knew well, then stop.
day-ready-small = Today is a small day: no lesson, a few review items, and that’s it.
day-ready-test = Today there’s a test on earlier lessons. No clock, and it may be done in two goes. A grown-up opens it.
day-ready-second-look = Today there’s a second look at the last test, with new numbers. No clock. A grown-up opens it.
day-ready-off-season = A few things to keep them fresh. Ten minutes, no more.
day-ready-missed = Today couldn’t be sent in time. That was our fault.
day-ready-size = { $review ->
    [0] About { $minutes } minutes.
    [one] A warm-up and one review item. About { $minutes } minutes.
   *[other] A warm-up and { $review } review items. About { $minutes } minutes.
  }
day-ready-late = This came late, and that was our fault. Do what fits.
day-ready-unfinished = { $count ->
    [one] One item from last time is still open, if you’d like it.
   *[other] { $count } items from last time are still open, if you’d like them.
  }
day-ready-small-offer = The last two days stayed unfinished. If today looks long, make it a small one.
button-start = Start
button-small-day = Small day
button-finish-last = Finish last time’s first
button-speaking = { $name } is speaking
button-back = Give the phone back

phone-for-student = { $name }’s school day is ready. When { $name } has the phone, press the button.
who-reads = Hello, **{ $name }**. I bring you a bit of maths each school day and look at your answers at once.
    
    Who reads what: { $tutor }, your tutor, can see your answers and the photos you send. { $parents } gets a short message in the evening about how it went. Nobody else sees anything.
    
    You can’t break anything here. A miss is only a place to look again.
who-reads-no-parents = Your parents
facts-sheet = **Number facts.** Send all { $count } answers in one message, in this order. Write a dash for one you skip.
facts-first = Spaces or new lines between the answers are fine: *12 7 30 …*
facts-timed = Your pace is worked out afterwards. There’s no clock to watch.
facts-unclear = { $got ->
    [one] I found one answer, and the sheet has { $wanted }.
   *[other] I found { $got } answers, and the sheet has { $wanted }.
  } Please send them all once more; a dash stands for one you skip.
facts-unclear-none = The sheet waits for { $wanted } answers in one message; a dash stands for one you skip. *idk* leaves the sheet.
facts-done-all = All { $out_of } right.
facts-done = { $right } of { $out_of } right.
facts-missed = To look at once more: { $facts }
facts-pace = { $rate } right a minute.
facts-usual = Your usual is { $usual }.
copy-ten = Just once: copy these ten numbers and send them. Then I know how long typing takes you, and can leave that out. Take your own pace.
copy-again = Those weren’t quite the ten numbers. Please copy them once more.
copied = Thanks. Typing time is left out from now on.
button-leave = Leave this
card-part = Day { $sitting } of { $sittings }
card-looked-up = From the lesson **{ $title }**
card-video = Your tutor’s page for this
worked-title = **Worked example**
button-go = Let’s try some
button-back-to-item = Back to my question
button-card = Lesson: { $title }
part-warm-up = Warm-up
part-guided = **Try it { $place } of { $out_of }**
part-review = **{ $place } of { $out_of }**
part-test = **Test { $place } of { $out_of }**
part-hands-on = **{ $place } of { $out_of }**
from-lesson = from *{ $lesson }*
calculator = Calculator allowed
comeback = A fresh one of a kind that got away.
asked-again = Here it is again.
unit-wanted = Answer in { $unit }.
walk-together = Let’s walk this one. Press **Next step** whenever you like, or answer straight away.
button-next-step = Next step
button-hint = Hint
button-later = Later
button-about = About this one
button-in-words = Picture in words
button-try-again = Try again
button-ask-tutor = Ask my tutor
button-show = Show me
button-idk = I don’t know
button-go-on = Go on
button-enough = Enough for today
button-paper = On paper
set-done = { $done } of { $out_of } done.
set-done-half = { $done } of { $out_of } done. Go on, or call it a day?
day-done-all = All done for today: { $first } of { $out_of } at first go.
day-done-more = { $first } of { $out_of } at first go, { $later } on a later try.
day-done-none = All done for today.
day-done-enough = Enough for today, then. { $first } of { $out_of } at first go so far. What you didn’t reach is no miss.
day-done-comes-back = { $count ->
    [one] One comes back as a fresh item soon.
   *[other] { $count } come back as fresh items soon.
  }
day-done-still-open = { $count ->
    [one] One is still open, in case you feel like it.
   *[other] { $count } are still open, in case you feel like it.
  }
day-done-puzzle = What you left of the warm-up stays open till evening.
day-done-thanks = See you next time.
button-take-up = Go on after all
paper-sheet = **On paper.** Do them in any order. Then send your answers with their numbers, several in one message: *3) 1/2  4) -7*
paper-sheet-more = The rest of the sheet:
paper-choices = ({ $choices })
paper-graded = Here is how they look:
paper-right = { $n }) right
paper-form = { $n }) right amount, another form is wanted: { $how }
paper-unit = { $n }) the number is right; which unit?
paper-wrong = { $n }) not yet
paper-over = { $n }) let’s look at it together
paper-unreadable = { $n }) I couldn’t read this one
paper-help = { $n }) a hint is on its button
paper-already = Done before: { $numbers }
paper-unknown = Not on today’s sheet: { $numbers }
paper-left = Still to come: { $numbers }
paper-left-none = That was the last one.
paper-number-please = Which number is that for? Write it in front, as in *3) 1/2*. Still to come: { $numbers }
button-number = Number { $n }
nothing-done = Nothing is open just now. Today is done.
nothing-day-off = No school today.
nothing-day-off-next = No school today. The next school day is { $day }.
nothing-paused = School is paused just now. Your tutor starts it again.
nothing-no-consent = A parent has to agree first, by sending /agree (on a shared phone, /back comes before it). Then we start.
nothing-not-yet = Your first day isn’t here yet. It comes in the morning of the next school day.
nothing-not-started = Today waits for you. Press **Start** when you’re ready.
nothing-night = It’s night. The day opens in the morning.
small-day = { $count ->
    [one] A small day it is: no lesson, one review item.
   *[other] A small day it is: no lesson, { $count } review items.
  }
break-taken = Take your break. No clock runs, and I keep your place.
small-day-already = Today is small already, or done.
reminder = { $name }, today is still waiting, about { $minutes } minutes. A small day counts too.
finish-first = { $count ->
    [one] One item of last time is still open.
   *[other] { $count } items of last time are still open.
  }
button-finish = Finish those
button-start-today = Start today
who-speaks = Who is speaking?
who-speaks-words = That looks like an answer. Who is speaking?
button-nobody = It’s me, a grown-up
speaking = Hello, **{ $name }**. The phone is yours now.
given-back = The phone is back with { $name }.
given-back-by-itself = It has been quiet for a while, so the phone counts as back with { $name }.
lead-right = ✓ Right.
lead-right-2 = ✓ Yes.
lead-right-3 = ✓ That’s it.
lead-right-later = ✓ Yes, that’s it now.
lead-right-later-2 = ✓ Right. The change you made did it.
lead-put-off = Put off to the end.
lead-left = Left for now.
lead-noted = Noted.
read-as = I read { $read }.
button-open-test = A grown-up opens it
button-test-back = Back
button-test-next = Next
button-hand-in = Hand in
button-test-list = List of answers
test-intro = **{ $title }** for { $name } holds { $items } items on lessons met at least a week ago. There is no clock, and it may be done in two goes. No hints this time; an answer may be changed until you hand in. What doesn’t sit yet simply comes back as practice.
test-intro-second = **{ $title }**, a second look for { $name }: { $items } items with new numbers on what didn’t sit yet. There is no clock. No hints this time; an answer may be changed until you hand in.
test-reopened = Your test is open again, { $name }. All your answers are as they were; change what you like, then hand in.
test-reopened-closed = Your test of { $day } is open again, { $name }. All your answers are as they were; change what you like, then hand in. No hurry: until then it counts as it did.
test-again = { $name } has handed in the test of { $day } once more: { $right } of { $out_of } now; it was { $was } before.
test-again-shared = { $name } has handed in the test of { $day } once more. The new count, for the grown-ups:
test-late = { $name } has handed in the test of { $day } after that evening’s message: { $right } of { $out_of }.
test-late-shared = { $name } has handed in the test of { $day } after that evening’s message. The count, for the grown-ups:
test-opened = The test is open. When { $name } has the phone: **Start**.
test-noted = { $left ->
    [0] Noted. That was the last one.
    [one] Noted. One to go.
   *[other] Noted. { $left } to go.
  }
test-list = Your answers so far. Press one to change it, or hand in.
test-list-blank = { $blank ->
    [one] One has no answer yet.
   *[other] { $blank } have no answer yet.
  }
test-retype = Handed in. Before I count: { $count ->
    [one] one answer needs typing
   *[other] { $count } answers need typing
  } once more, because of its form, its unit, or because I couldn’t read it.
test-retype-row = { $n }) { $why }
test-retype-form = another form is wanted
test-retype-unit = the unit
test-retype-unreadable = I couldn’t read it
button-count-now = Count as it is
test-done = { $right } of { $out_of }, { $name }.
test-done-firm = Stands firm: { $titles }.
test-done-rework = To look at again: { $titles }. They come back as ordinary items.
test-done-small = { $out_of } items are a small look.
test-done-second = If you like, there is one second look with new numbers. A grown-up picks the day.
nothing-test-waits = Today is a test. Ask a grown-up to open it first.
day-ready-test-open = The test is open. No clock, no hints; you may change an answer until you hand in.
part-known = **{ $place } of { $out_of }**
part-extra = **Extra { $place } of { $out_of }**
lead-known = All five. Then that lesson is behind you; its items stay in the review.
lead-not-known = Good to know. Then we take the lesson together.
button-known = I know this already
button-more = Ten more, please
button-hands-on = Show me what to do
button-second = One more lesson
button-answers = { $count ->
    [one] Send the answer
   *[other] Send the answers
  }
day-done-task = All your answers for *{ $title }* are in.
day-done-hands-on = There is something to do with your hands, if you like: *{ $title }*
day-done-second = It went well and there is time left. If you like: *{ $title }*.
extra-done = { $right } of { $out_of } of those you asked for. It all helps, and none of it counts against you.
nothing-to-practise = There is nothing to practise yet. It comes with the first lessons.
nothing-to-practise-near = I don’t know that lesson yet. You have met, among others, { $titles }.
hands-on-safety = **First:** { $safety }
hands-on-needs = You need: { $things }.
