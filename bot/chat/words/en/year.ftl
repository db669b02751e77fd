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
