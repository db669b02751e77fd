# The week's letter
week-head = **{ $name }**, the week of { $monday }: { $opened } of { $planned ->
    [one] one school day
   *[other] { $planned } school days
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
