"""A commented file to begin a lesson with: a small lesson that passes as it stands, to be written over."""

from __future__ import annotations

from bot.course.year import Course
from bot.vocabulary import LessonId


def starting_file(course: Course, lesson: str) -> str:
    """The text of a new lesson's file; its skills are those that the course has planned for it."""
    skills: list[str] = [skill for skill, place in course.planned.items() if place == LessonId(lesson)] or [
        lesson
    ]
    title = lesson.replace("-", " ").capitalize()
    return _FILE.replace("TITLE", title).replace("SKILLS", ", ".join(skills)).replace("SKILL", skills[0])


_FILE = """\
---
title: TITLE
objective: One sentence that can be checked, such as Add two fractions with equal bottoms.
skills: SKILLS
standards: 6.NS.B.4
needs: add-subtract-whole
minutes: 10
---

# Card

The idea in 60 to 120 words, in short sentences that a twelve-year-old reads alone. Say why it works, not only how.
What is calculated stands between two marks: `3 + 4 = 7`. A new term stands between two pairs of stars once,
in the lesson it belongs to, and has its meaning in the glossary.

Write over this text. It is long enough to pass, so that the rest of the file can be checked from the start.
What a student does with pencil and paper belongs here, in the order in which it is done.
A picture comes last, as a block that begins with figure and its kind; the handbook lists all kinds.

# Worked example

One problem with fixed numbers. Work out `12 + 30`.

1. `12 + 30` Each line follows from the one above. The working comes first, then the reason.
2. `42` The last line is the answer.

# Missteps

- first-number-dropped: Which numbers does the question name, and which of them did you use?
- took-instead-of-adding: Do the two come together, or is one taken from the other?

# Items

## two-numbers

```yaml
level: easy
draw:
  # What varies, a letter a line: a range, 2..9 except 5, 0.5..9.5 step 0.5, a list 1/2, 2/3, or a formula.
  a: 12..60
  b: 12..60 except a
# A formula of the letters above, and how the answer has to look.
answer: a + b
form: whole
missteps:
  first-number-dropped: b
  took-instead-of-adding: abs(a - b)
```

Work out `a + b`.

**Hint 1.** The first hint points the way, without a number of the answer.

**Hint 2.** The second starts the work: begin with the tens.

1. `a + b` Begin with the question.
2. `answer` The word answer stands for the item's own answer.
"""
