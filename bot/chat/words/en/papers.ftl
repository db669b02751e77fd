# The week's letter
week-head = **{ $name }**, the week of { $monday }: { $planned ->
    [one] its one school day was opened
   *[other] { $opened } of { $planned } school days
  }.
week-head-none = **{ $name }**, the week of { $monday }: no school day was opened. Nothing piles up.
week-counted = { $done } of { $out_of } review items done, { $first } of them at first go.
week-time = Time at work: { $time }.
week-time-paper = { $days ->
    [one] One day was on paper, so nobody took the time.
   *[other] { $days } days were on paper, so nobody took the time.
  }
week-time-besides = { $days ->
    [one] One day was on paper and isn’t in that.
   *[other] { $days } days were on paper and aren’t in that.
  }
week-learned = New: { $titles }.
week-steady = Looks steady: { $titles }.
week-shaky = Looks shaky, so it comes back: { $titles }.
week-test = **{ $title }**: { $right } of { $out_of }. { $missed ->
    [0] { $out_of } items are a small look.
    [one] The one to look at again is in the letter. { $out_of } items are a small look.
   *[other] The { $missed } to look at again are in the letter. { $out_of } items are a small look.
  }
week-next = Next week: { $what }.
week-next-review = Next week: review.
week-next-none = Next week: no school day.
week-line = { $name }’s week in one message, for the grown-ups:
button-letter-pdf = The letter to print
paper-time = { $hours ->
    [0] { $minutes } min
   *[other] { $hours } h { $minutes } min
  }
paper-few = { $title } ({ $answers ->
    [0] no answer yet
    [one] one answer so far
   *[other] { $answers } answers so far
  })
paper-more = { $count } more
letter-here = **{ $name }**: the letter for { $first } to { $last }.
letter-file = letter
letter-title = { $name }’s week in maths
letter-under = { $first } to { $last } · tutor: { $tutor }
letter-new = New
letter-time = Time
letter-finish = The year
letter-standing = What was asked this week, and how it stands
letter-unsure = *Steady* means: going by the answers so far, it would go right today about four times in five, or more often. *Shaky* means less sure than that. Both are a guess from a few answers, not a measurement, and they change from week to week. Where only few answers stand behind it, ask again before you believe it.
letter-lesson = Lesson
letter-stands = Looks
letter-answers = Resting on
letter-answers-few = { $answers ->
    [0] no answer yet
    [one] one answer only
   *[other] { $answers } answers only
  }
letter-answers-many = { $answers } answers
letter-test = { $title }, { $day }: { $right } of { $out_of }
letter-test-note = To look at again. { $out_of } items are a small look: one more or less says little.
letter-test-all = Nothing to look at again. { $out_of } items are a small look.
letter-question = Question
letter-wrote = Wrote
letter-answer = Answer
letter-blank = (left empty)
letter-plan = Next week, as it looks today
letter-plan-note = It follows what happens until then; only the first day is a promise.
letter-closing = A count of right answers is a look at a week, not at a child. If something here doesn’t sound like yours, tell the tutor; you see more than a chat does.
letter-footer = { $name } · weekly letter
command-letter = A week in one message, with a letter to print. With a date: the week that it lies in.
why-date-ahead = { $date_day } is still to come.
chart-first = first go
chart-later = later try
chart-unsolved = still open
chart-rest = not reached
chart-lessons = lessons
chart-done = done
chart-planned = planned
chart-finish = probable finish
chart-steady = steady
chart-shaky = shaky
chart-not-met = not met
chart-day-done = done
chart-partly = partly done
chart-test = test
chart-not-opened = not opened
chart-off = day off
chart-to-come = to come

# Sheets, keys, pages
sheet-title = Review for { $day }
sheet-under = { $name } · { $items ->
    [one] one item
   *[other] { $items } items
  }
sheet-intro = In any order. Write your working; the number in front is the one to send with an answer, as in **3) 1/2**.
sheet-source = from *{ $lesson }*
sheet-calculator = a calculator is fine here
sheet-key = answers and steps
sheet-footer = { $name } · { $day }
sheet-file = sheet
sheet-key-file = key
sheet-here = **{ $name }**: the review for { $day } to print, { $items ->
    [one] one item
   *[other] { $items } items
  }.
sheet-fixed = These items now stand fast for that day, so that paper and chat go together.
sheet-how = Answers can be sent in the chat in any order, several in one message: *3) 1/2  4) -7*. A photo of the page is kept for the tutor; I can’t read pictures.
key-here = **{ $name }**: answers and steps for { $day }. Not for { $name }’s eyes before it is done.
button-key = Answers and steps
pages-none = { $name } sent no photo on { $day }.
pages-here = { $name }, { $day }: { $count ->
    [one] one photo
   *[other] { $count } photos
  } of the work.
pages-said = With them: “{ $words }”
pages-alt = A photo of { $name }’s page, { $day }. I can’t read pictures.
command-sheet = The review of a day to print (A4 or *letter*, *big* type if you like).
command-key = Answers and steps for a sheet.
command-pages = Photos of pages that were sent.
line-printed = { $name }: the sheet for { $date_day } stands fast.
wish-printed = a sheet was printed for this day, and its review stands fast
holds-printed = a printed sheet, { $key_days }
why-no-sheet = { $name } has no review on { $date_day }.
why-no-sheet-then = There is no sheet for { $name } on { $date_day }. Sheets are made for today and the next two weeks.
button-print = To print

# Records
span = { $first } to { $last }
span-day = { $first }
records-head = **{ $name }**, { $span }
records-days = { $opened ->
    [one] One school day
   *[other] { $opened } school days
  }, time at work { $time }.
records-paper = { $days ->
    [one] One of the days was on paper, so nobody took its time.
   *[other] { $days } of the days were on paper, so nobody took their time.
  }
records-lessons = { $count ->
    [one] One lesson met.
   *[other] { $count } lessons met.
  }
records-tests = { $count ->
    [one] One test.
   *[other] { $count } tests.
  }
records-hands-on = { $count ->
    [one] One hands-on lesson.
   *[other] { $count } hands-on lessons.
  }
records-standards = Standards that these lessons meet: { $count }.
records-samples = Photos of work: { $count }.
samples-here = **{ $name }**, { $span }: { $count ->
    [one] one photo of work.
   *[other] { $count } photos of work.
  }
samples-none = **{ $name }** sent no photo of work: { $span }.
button-more-photos = The next days ({ $left } more)
records-law = What a family has to keep, and for how long, differs from place to place. Please look up the rules of yours; this is only what was written down here.
records-csv = **{ $name }**, { $span }: files for a spreadsheet. *columns.txt* says what each column holds.
button-record-pdf = For the drawer (PDF)
button-record-csv = For a spreadsheet
button-record-photos = Photos of work
button-record-handover = For the next tutor or school
record-here = **{ $name }**: the record of { $span }.
record-file = record
record-title = Mathematics
record-under = { $span } · { $name } · household { $household } · tutor: { $tutor }
record-footer = { $name } · mathematics · { $span }
handover-here = **{ $name }**: for the next tutor or school, { $span }. No mark is worked out; there is a line on which a parent may write one.
handover-file = year
handover-title = A year of mathematics
handover-course = **The course.** { $course }, a one-year course at home with a tutor, for ages of about 11 to 14.
handover-way = **How it was taught.** On a usual day: number facts or mental arithmetic, a short lesson with a worked example, four guided items, and a mixed review of earlier lessons that come back at growing distances. Each answer was checked at once, and a worked solution followed what stayed unsolved. A test stands about twice in each unit, without a clock.
handover-units = **Units of the course:** { $units }.
record-days = School days
record-time = Time
record-time-paper = { $days ->
    [one] one day on paper isn’t in that
   *[other] { $days } days on paper aren’t in that
  }
record-lessons = Lessons
record-tests = Tests
record-hands-on = Hands-on lessons
record-standards = Standards met by these lessons
record-samples = Photos of work
record-day = Day
record-what = Lesson, or kind of day
record-minutes = Minutes
record-solved = Solved
record-on-paper = on paper
record-kind-lesson = lesson begun
record-kind-light = review, light day
record-kind-review-only = review
record-kind-small = small day
record-kind-gentle = review after days away
record-kind-test = test
record-kind-off-season = ten minutes of the off-season
record-kind-missed = –
record-kind-placement = a look at where to start
record-caption = What was written with it
record-samples-below = Some of them stand below, small.
record-samples-note = The photos themselves are in the chat, and in the files that */export* speaks of. A photo may show more than the work: please look before you pass it on.
record-test = Test
record-right = Right
record-tests-note = Right answers of those asked. No mark is worked out, and twenty items are a small look.
record-task = Task
record-first-met = First met
record-lesson = Lesson
record-unit = Unit
record-code = Code
record-gist = What it asks, in short
record-met-by = Met by
record-standards-note = Codes of the Common Core State Standards for Mathematics (2010); the words are ours. A lesson that meets a standard was met; that doesn’t say how firmly it stands.
record-hours = Days and hours
record-month = Month
record-firm = What stands firm, in lessons
record-firm-note = *Steady*, *shaky* and *not met* are what the answers up to the day of this paper make likely. It is a guess from a limited number of answers, not a measurement, and it fades with time: please ask before you build on it.
record-blank-mark = Mark, if a parent wishes to write one (none is worked out here):
record-blank-by = Signed:
record-blank-date = Date:
command-records = What was done in some days, for the drawer, a spreadsheet, or the next tutor or school.
why-record-range = Please give a stretch of days that has begun, three years at most.

# A student's own view
mine-head = **{ $name }**, this is yours. It only ever looks at you.
mine-lessons = Met this week: { $titles }.
button-mine-week = My week
button-mine-best = My best
button-mine-map = My map
mine-best = **{ $name }**, your own best so far:
mine-facts = Number facts: { $right } of { $out_of } right on one sheet.
mine-rate = Number facts: { $rate } right a minute.
mine-day = Review: { $first } of { $out_of } at first go, on { $day }.
mine-turned = It didn’t go at first, and now it does: { $titles }.
mine-nothing = There’s nothing to look back at yet. It fills up by itself.
mine-map-title = **{ $name }**, your map: a mark for each lesson.
mine-map-guess = Full: you have it. Half: it comes back until you have it. Empty: still to come. It’s a guess from your answers, and it moves.
mine-map-unit = { $unit }: { $steady } sit, { $shaky } come back, { $rest } still to come.
mine-chart-steady = sits
mine-chart-shaky = comes back
mine-chart-not-met = still to come
map-title = **{ $name }**: a mark for each lesson, unit by unit.
map-guess = A guess from the answers so far, as of today; it fades and moves.
map-unit = { $unit }: { $steady } steady, { $shaky } shaky, { $rest } not met.
button-map-picture = As a picture
command-mine = your own week, your own best, your own map

# Marks of a page, and who enters them
marks-head = **{ $name }**, { $day }: { $right } of { $out_of } right.
marks-entered = Entered. **{ $name }**, { $day }: { $right } of { $out_of } right.
marks-missed = { $n }) not right
marks-missed-written = { $n }) not right: { $written }
marks-in-chat = Answered in the chat, so the page changes nothing there: { $numbers }
marks-waiting = Not marked yet: { $numbers }
marks-again = What is written there? A button each; if it was left empty, there is nothing to do. A mistyped number? Send the line again.
marks-none-missed = A mistyped number? Send the line again.
button-written = { $n }) what’s there?
ask-written = What did { $name } write at { $n }? Please type it as it stands.
button-left-empty = Left empty
command-marks = Marks of a page: the numbers that aren’t right, or *none*. Without numbers: how it stands.
command-grader = Somebody who marks pages for your household, a grandparent say. They see sheets, keys and marks, nothing else. *off* at the end lets them go.
why-marks = Please give the numbers that aren’t right, or *none*; with a day in front if it isn’t the newest page.
why-many-pages = { $most } pages in one message, please.
why-no-page = { $name } has no page of { $date_day } to mark.
why-no-miss = Item { $n } of { $name } isn’t marked as a miss.
why-not-printed = There is no sheet for { $name } on { $date_day } yet.
line-grader = **{ $name }** may mark pages for { $household }: sheets, keys and marks, nothing else. I make a link.
line-grader-again = A link for another phone of { $name }, who marks pages for { $household }.
line-grader-off = { $name } marks no more pages for { $household }; the phone is let go.
note-grader = Whoever has the link sees your children’s first names and their pages’ marks. Tell your children; they may know who looks at their work.
invite-grader = This link is for **{ $name }**, who marks pages for the household { $household }, from { $by }. Is that you?
welcome-grader = Welcome, **{ $name }**. You mark pages for { $students }. */key* gives answers and steps. Then send a page in one line, only what isn’t right: *mon 3 7*, or *mon none*. With several children, the name in front.
role-grader = marks pages
help-grader = A page in one line, only the numbers that aren’t right: *mon 3 7*, or *mon none*; with several children the name in front. */key* gives answers and steps, */sheet* the page, */marks* how it stands.
grader-told = { $name }, a parent of yours has asked { $grader } to look through your paper pages. { $grader } sees the sheets and which items are right, nothing else.

# Adjustments for one student
adjust-head = Adjusted for **{ $name }**:
adjust-head-none = Nothing is adjusted for **{ $name }**.
adjust-time = More time: the day holds less, so that it fits with half as much time again; number facts are never timed.
adjust-big = Big type on sheets and keys.
adjust-fewer = Fewer items: six in the review (or two thirds of the number that the tutor set), three fifths of a test.
adjust-dictated = Answers may be said aloud and a grown-up types or writes them; number facts are never timed.
adjust-calculator = A calculator is fine for all items; number facts stay without.
adjust-untimed = Number facts aren’t timed.
adjust-timed = Number facts are timed.
adjust-note = Only parents and the tutor see this. It isn’t advice: what a child needs, people who know the child and are trained for it can say.
button-adjust-time = More time
button-adjust-time-off = No more time
button-adjust-big = Big type
button-adjust-big-off = Usual type
button-adjust-fewer = Fewer items
button-adjust-fewer-off = Usual number
button-adjust-dictated = Said aloud
button-adjust-dictated-off = Typed as usual
button-adjust-calculator = Calculator
button-adjust-calculator-off = No calculator
line-adjust-time = { $name }: more time. From the next day on the day holds less, and number facts are never timed.
line-adjust-time-off = { $name }: no more time than usual.
line-adjust-big = { $name }: big type on sheets.
line-adjust-big-off = { $name }: usual type on sheets.
line-adjust-fewer = { $name }: fewer items in review and tests, from the next day on.
line-adjust-fewer-off = { $name }: the usual number of items again.
line-adjust-dictated = { $name }: answers may be said aloud, and a grown-up types or writes them.
line-adjust-dictated-off = { $name }: answers are typed as usual.
line-adjust-calculator = { $name }: a calculator is fine for all items, from the next day on.
line-adjust-calculator-off = { $name }: a calculator only where the lesson has it.
line-adjust-untimed = Number facts of { $name } are not timed.
line-adjust-untimed-off = Number facts of { $name } are timed from the next sheet on.
command-adjust = What is adjusted for one student: *time*, *big*, *fewer*, *dictated*, *calculator*, *untimed*; with *off* it ends.
why-adjust = One of *time*, *big*, *fewer*, *dictated*, *calculator*, *untimed*, please; with *off* behind it to end it.
sheet-intro-dictated = In any order. Answers may be said aloud, and a grown-up writes them down; the number in front is the one to send with an answer, as in **3) 1/2**.
holds-adjust = an adjustment (*/adjust* shows it), { $key_days }

# Pages that wait
waiting-head = Pages on paper that wait:
waiting-page = **{ $name }**, { $day }: { $what }
waiting-items = { $count ->
    [one] one item to mark
   *[other] { $count } items to mark
  }
waiting-photos = { $count ->
    [one] one photo
   *[other] { $count } photos
  }
waiting-more = And { $count } more.
waiting-how = Marking a page is one line: the name, the day, the numbers that aren’t right, or *none*.
waiting-none = No page waits to be marked.
button-waiting-marks = Mark: { $name }, { $day }
button-waiting-photos = Photos: { $name }, { $day }
button-pages-waiting = Pages that wait ({ $count })
