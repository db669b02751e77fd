digest-worked = **{ $name }** did { $done } of { $out_of }; { $first } at first go.
digest-all-right = **{ $name }** did all { $out_of }, every one at first go.
digest-enough = **{ $name }** did { $done } of { $out_of } and then had enough, which is fine; { $first } at first go.
digest-only-begun = **{ $name }** began today and didn’t get to the review.
digest-nothing-started = **{ $name }**: today wasn’t opened. Nothing piles up: the same lesson waits for next time. If that is a bad day as well, *Small day* takes ten minutes.
digest-day-off = **{ $name }** had the day off. Nothing was missed.
digest-only-paper = **{ $name }** worked on paper: { $done } of { $out_of } done, { $first } at first go. Nobody took the time.
digest-paper-waiting = **{ $name }** has the sheet on paper. No answer came yet: { $name } can send them with their numbers, or you enter the page in one line with */marks*.
digest-test-begun = **{ $name }** began the test and hasn’t handed it in. Nothing is lost, and there is no clock.
digest-our-fault = Today couldn’t be sent to **{ $name }**. That was our fault; nothing was missed, and the same day waits for next time.
digest-test = **{ $name }** handed in a test: { $first } of { $out_of }. { $out_of } items are a small look.
digest-day-of = ({ $day })
digest-new = New today: *{ $lesson }*.
digest-well = *{ $well }* went well all through.
digest-counts = At first go { $first }, on a later try { $later }{ $unsolved ->
    [0] {""}
   *[other] , still open { $unsolved }
  }{ $untouched ->
    [0] {""}
   *[other] , not reached { $untouched }
  }{ $excused ->
    [0] {""}
   *[other] , excused { $excused }
  }.
digest-tries = { $later ->
    [one] The later one took { $tries } tries.
   *[other] The { $later } later ones took { $tries } tries in all.
  }
digest-open = Still open, from *{ $title }*: { $ask }
digest-put-right = One from *{ $title }* got away, and a fresh one like it went right: { $ask }
digest-answered = { $name } wrote { $answered }.
digest-may = Looks like this may be behind it: { $say }
digest-more-open = { $count ->
    [one] One more is on the button.
   *[other] { $count } more are on the button.
  }
digest-talk = **For ten minutes:** { $title }.
digest-talk-two = **For ten minutes:** { $title }, and then { $other }.
digest-talk-ask-above = Do the one above together. Ask: { $say }
digest-talk-ask-plain-above = Do the one above together. Ask: How would you start, and why?
digest-talk-ask = Do this one together: { $ask } Ask: { $say }
digest-talk-ask-plain = Do this one together: { $ask } Ask: How would you start, and why?
digest-talk-tears = If it ends in tears, stop; it keeps.
digest-nothing-to-talk = Nothing needs sitting down over tonight.
digest-facts = { $rate ->
    [none] Number facts: { $right } of { $out_of }.
   *[other] { $best ->
        [none] Number facts: { $right } of { $out_of }, { $rate } a minute.
       *[other] Number facts: { $right } of { $out_of }, { $rate } a minute (own best before: { $best }).
      }
  }
digest-late = { $count ->
    [one] Yesterday’s digest was out when one more answer came; { $right ->
        [0] not right yet
       *[other] right
      }.
   *[other] { $count } answers came after the last digest, { $right } of them right.
  }
digest-week = This week: { $week }
digest-tomorrow = Next, on { $day }: *{ $lesson }*.
digest-tomorrow-review = Next, on { $day }: review, no new lesson.
digest-note = From the tutor: { $note }
digest-accepted = The tutor counted an answer in *{ $lessons }*; the numbers above have it.
digest-minutes = About { $minutes } minutes at work.
draw-bar = Have { $name } draw it as a bar, cut into equal pieces.
draw-number-line = Have { $name } draw a number line and walk along it.
draw-rectangle = Have { $name } draw the rectangle and write a length on each side.
draw-grid = Have { $name } draw the two axes and put the points in.
draw-table = Have { $name } draw the table and say what happens from one column to the next.
draw-balance = Have { $name } draw both sides as a balance.
draw-picture = Have { $name } draw the picture and say what each number is.
draw-fraction = Have { $name } draw each fraction as a bar of the same length.
draw-story = Have { $name } tell it as a story before working it.
button-did-it = We did it
button-still-hard = Still hard
button-not-tonight = Not tonight
button-in-full = All open ones
button-solution = Worked solution
button-week-picture = Week as a picture
button-open-digest = Open
button-close-digest = Put it away
digest-line = { $name }’s day in one message, for the grown-ups:
open-in-full = **{ $name }**: still open
open-in-full-none = Nothing is open any more.
open-item = *{ $title }*: { $ask }
open-item-answered = Wrote { $answered }. The answer is { $answer }.
open-item-blank = The answer is { $answer }.
talk-did-it = Good. That helps more than anything I can do.
talk-still-hard = Thanks for saying so. It comes back in another way.
talk-still-hard-tutor = Thanks for saying so. { $tutor } knows now and takes it up.
talk-not-tonight = Fine. It keeps.
still-hard = **{ $student }** ({ $household }): the family sat down over *{ $title }* twice, and it is still hard.
week-title = **{ $name }**, week of { $monday }
week-day = { $day }: { $what }.
week-day-first = { $count } at first go
week-day-later = { $count } on a later try
week-day-open = { $count } still open
week-day-rest = { $count } not reached
week-day-nothing = nothing asked
week-empty = Nothing yet this week.
written-ends = { $lessons ->
    [0] **{ $student }** ({ $household }) has met the last lesson that is written. From now on there are review days.
    [one] **{ $student }** ({ $household }) has one lesson left of those that are written. After it there are review days.
   *[other] **{ $student }** ({ $household }) has { $lessons } lessons left of those that are written. After them there are review days.
  }
unreachable = **{ $name }** ({ $household }) has blocked this chat, so nothing reaches { $name } for now. It goes on as soon as { $name } writes here again.
