"""Work a lesson's items by hand without seeing the answers, then have them marked.

    python tests/browser/work_by_hand.py ask FOLDER LESSON [--items 10] [--seed 500]
    python tests/browser/work_by_hand.py mark FOLDER LESSON

`ask` writes LESSON.md (the items as a student gets them, pictures beside it as PNG) and LESSON.answers with a line
for each item, to be filled in as a student would type or with the words of a button. `mark` has the checker judge
what was filled in, and shows key, hints and worked solution of every item to be read against one's own work.
LESSON may be a hands-on lesson or a file of warm-ups as well.
"""

from __future__ import annotations

import argparse
from pathlib import Path

from bot.answers import judge
from bot.course.draw import draw
from bot.course.item import Item, plain_text
from bot.course.showing import item_as_text
from bot.course.usable import usable_course
from bot.pictures import Pictures
from bot.vocabulary import Verdict


def drawn_items(lesson: str, count: int, seed: int) -> list[Item]:
    """Items of every template in turn, each with numbers of its own."""
    course, _ = usable_course(Path("content"))
    holder = next(each for each in course.holders if each.id == lesson)
    templates = holder.templates
    return [draw(course, templates[n % len(templates)].id, seed + n) for n in range(count)]


def ask(folder: Path, lesson: str, count: int, seed: int) -> None:
    """Write the items and an empty list of answers."""
    lines, pictures = [f"# {lesson}", ""], Pictures()
    for n, item in enumerate(drawn_items(lesson, count, seed), start=1):
        lines += [f"## {n}", plain_text(item.ask)]
        if item.figure:
            picture = folder / f"{lesson}-{n}.png"
            picture.write_bytes(pictures.make_now("figure", item.figure))
            lines.append(f"(picture: {picture})")
        if item.choices:
            lines.append("Buttons: " + " | ".join(plain_text(each) for each in item.choices))
        lines.append("")
    pictures.close()
    (folder / f"{lesson}.md").write_text("\n".join(lines), encoding="utf-8")
    blank = "".join(f"{n}: \n" for n in range(1, count + 1))
    (folder / f"{lesson}.answers").write_text(f"seed: {seed}\n{blank}", encoding="utf-8")
    print(folder / f"{lesson}.md")


def mark(folder: Path, lesson: str) -> None:
    """Judge what was filled in, and show what belongs to each item."""
    filled = (folder / f"{lesson}.answers").read_text(encoding="utf-8").splitlines()
    first, *rows = [line.partition(":")[2].strip() for line in filled if line.strip()]
    for n, (item, typed) in enumerate(
        zip(drawn_items(lesson, len(rows), int(first)), rows, strict=True), start=1
    ):
        verdict = judge(typed, item.key).verdict
        print(f"{n}. {'  ' if verdict is Verdict.RIGHT else '!!'} typed {typed!r}: {verdict}")
        print(item_as_text(item))


if __name__ == "__main__":
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("act", choices=("ask", "mark"))
    parser.add_argument("folder", type=Path)
    parser.add_argument("lesson")
    parser.add_argument("--items", type=int, default=10)
    parser.add_argument("--seed", type=int, default=500)
    given = parser.parse_args()
    given.folder.mkdir(parents=True, exist_ok=True)
    if given.act == "ask":
        ask(given.folder, given.lesson, given.items, given.seed)
    else:
        mark(given.folder, given.lesson)
