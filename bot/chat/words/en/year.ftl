part-placement = **Question { $place }**
day-ready-placement = Today isn’t a lesson. It’s a look at where to start: 12 to 20 questions, and you may stop halfway and go on next time. Some will be about things you haven’t met; then say so, that helps just as much. Nothing of this is a mark.
button-not-met = I haven’t met this
button-how-to-type = How do I type this?
lead-not-met = Good to know.
not-for-you-no-hints = There are no hints here: this only looks at what sits already. Leave it if it doesn’t, that’s fine.
placement-unread = I couldn’t read that, and it cost nothing. Type it again, or press the button.
placement-unread-examples = Like this: { $examples }
placement-paused = { $asked ->
    [one] One question done, the rest next time. Thank you.
   *[other] { $asked } questions done, the rest next time. Thank you.
  }
placement-done = That’s all, { $name }: { $asked } questions. Thank you. Now your tutor knows where to start with you.
placement-found = **{ $name }** ({ $household }) has done the look at where to start: { $asked } questions.
placement-found-start = It leads to lesson { $n }, { $lesson }.
placement-found-all = Nothing of the course seems new. Talk it over with the family before you decide anything.
placement-found-patch = Worth patching on the way: { $titles }. *Begin there* puts more of these into the review for three weeks.
placement-found-else = It is a small look, not a mark, and you know { $name } better. Another start: */lesson*.
placement-sure = By its own reckoning it is fairly sure, give or take five lessons.
placement-likely = It is likely, not sure, give or take five lessons.
placement-guess = It is little more than a guess.
button-begin-there = Begin there
digest-placing = { $questions ->
    [0] **{ $name }** has begun the look at where to start.
    [one] **{ $name }** began the look at where to start: one question so far, the rest next time. No marks.
   *[other] **{ $name }** began the look at where to start: { $questions } questions so far, the rest next time. No marks.
  }
digest-placed = **{ $name }** looked at where to start: { $questions } questions, no marks. It leads to *{ $lesson }*; the tutor decides.
digest-placed-all = **{ $name }** looked at where to start: { $questions } questions, no marks. Nothing of the course seemed new; the tutor will talk it over with you.
command-placement = A look at where to start: 12 to 20 questions instead of the next lesson. Not a mark.
line-placement = { $names }: on { $date_day } a look at where to start instead of a lesson, 12 to 20 questions, about half an hour, in one go or two. It is not a mark.
line-place = { $name } begins with lesson { $n }, *{ $title }*.
line-patch = For three weeks more of: { $titles }.
why-placement-already = For { $name } a look at where to start is planned already. */holds* shows it.
holds-placement = a look at where to start, { $key_days }
placement-found-safer = Much between lesson { $n }, { $lesson }, and there seems new, although the next lessons hardly need it. Who begins at { $n } misses nothing.
button-begin-at = Begin at lesson { $n }
finish-at = **{ $name }** is at lesson { $n } of { $out_of }: *{ $lesson }*.
finish-at-end = **{ $name }** has met every lesson of the course.
finish-taken = Lesson days in the last six weeks: { $taken } of { $planned } took place.
finish-range = If things go on like this, the course is done some time between { $early } and { $late }.
finish-wanted = A year from the first day would be { $day }. Another day to aim for: */finish* with a name and a date.
finish-wanted-own = You would like it to be done by { $day }.
finish-in-time = That fits, also with a slow week now and then.
finish-perhaps = That may fit. A week off here and there decides it, and later is fine too.
finish-later = It looks later than that. Nothing is lost: the tutor can leave out some of the extra lessons, or it simply takes longer.
line-finish = { $names }: you would like the course to be done by { $date_day }.
command-finish = When the course may be done, as a range; with a date, the day to aim for.
half-year = Half of a school year is behind **{ $name }** ({ $household }): ninety school days.
half-year-wanted = Wanted by: { $day }.
half-year-go-on = That fits. Go on as it is.
half-year-leave-out-extras = That is tight with everything, and fits without the extra lessons.
half-year-core = { $count ->
    [one] One lesson still to come is extra: { $titles }.
   *[other] { $count } lessons still to come are extra: { $titles }.
  }
half-year-core-range = Without: done between { $early } and { $late }.
half-year-slow-down = Even without the extra lessons it takes longer than that. Better slowly and firmly than in time: talk with the family about a later day (*/finish*) or another week (*/week*).
half-year-yours = You know { $name } better than a count of days. */map* shows what sits.
button-leave-out = Leave out the extra lessons
button-keep-extras = Keep them
line-leave-out-extras = { $name }: the extra lessons still to come are left out: { $titles }.
digest-half-year = Half of a school year is behind { $name }. If things go on like this, the course is done some time between { $early } and { $late }.
digest-long-break = No school for a while now. If you like, ten minutes on three days a week keep things alive: { $command }
days-unfinished = **{ $name }** ({ $household }) hasn’t finished the last { $days } school days. Nothing piles up. Perhaps ask how things are; a small day or review only is */small { $who }*, */review { $who }*.
button-look-today = Look at it
button-small-next = Small day next
ahead-head = The next school days of **{ $name }**, as they look today:
ahead-lesson = *{ $lesson }*.
ahead-lesson-part = *{ $lesson }*, day { $sitting } of { $sittings }.
ahead-test = **{ $title }**.
ahead-light = light day, no new lesson.
ahead-review-only = review only.
ahead-small = small day.
ahead-gentle = gentle way back, no new lesson.
ahead-off-season = ten minutes of the off-season.
ahead-placement = a look at where to start.
ahead-review = { $count ->
    [one] One review item: { $why }.
   *[other] { $count } review items: { $why }.
  }
ahead-why-today = { $count } of the lesson
ahead-why-yesterday = { $count } missed the day before
ahead-why-recent = { $count } from new lessons
ahead-why-due = { $count } not met for a while
ahead-why-fragile = { $count } often missed
ahead-why-prerequisite = { $count } that the next lessons need
ahead-why-coverage = { $count } away for longest
ahead-why-misstep = { $count } with a misstep that came twice
ahead-why-mixed-in = { $count } mixed in
ahead-why-sure = { $count } sure to go well
ahead-why-comeback = { $count } coming back
ahead-why-tutor-asked = { $count } that you asked for
ahead-why-test = { $count } of a test
ahead-why-extra = { $count } extra
ahead-note = Only the first day is a promise; the others follow what happens until then.
ahead-change = To change the first: */add { $who }*, */drop { $who }*, */pin { $who }*, */practice { $who }*, */items { $who }*, */review { $who }*.
offseason-on = All right: while there is no school, ten minutes on Mondays, Wednesdays and Fridays. No lessons, nothing is counted up. */offseason off* ends it.
offseason-off = There is no off-season practice: when there is no school, nothing comes. */offseason on* gives ten minutes on three days a week.
line-offseason-on = { $names }: while there is no school, ten minutes of review on Mondays, Wednesdays and Fridays.
line-offseason-off = { $names }: nothing comes while there is no school.
why-offseason = Say whether it is to be on or off.
command-offseason = Ten minutes on three days a week while there is no school, on or off.
day-done-catch-up = A lesson waited this week, and today has room. If you like: *{ $title }*.
button-catch-up = Take the lesson
holds-finish-by = a day to aim for, { $key_days }
holds-off-season = the off-season on or off, { $key_days }
study-head = **{ $test }** is on { $day }. There is no clock, and nothing to learn by heart.
study-new = Asked for the first time: { $titles }.
study-again = If you like, a look at these cards tonight does more than anything else:
study-nothing = Everything it may ask sits well at the moment. An early night is the best you can do.
digest-study = The next school day holds **{ $test }**; a grown-up opens it in the morning.
digest-study-again = Worth another look before that: { $titles }.
course-is-done = **{ $name }** ({ $household }) has done the whole course, the final as well. That is a year’s work.
course-done-next = No more days come by themselves. The page shows what algebra rests on, steady, shaky or not met; */records { $who }* has everything for the drawer or the next school.
button-standing = The page for the family
button-off-season = Ten minutes, three days a week
standing-here = What algebra rests on, for **{ $name }**. It is a small look at one year, no mark.
standing-file = foundations
command-standing = The page for the family: a dozen skills that algebra rests on, each steady, shaky or not met.
nothing-course-over = The course is done, all of it. If you want to keep it alive: */offseason on*.
day-ready-strand = The week of review, day { $n } of { $out_of }: *{ $strand }*. After that comes the final.
