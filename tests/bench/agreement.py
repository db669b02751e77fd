"""How often the checker agrees: with our own rows, with published textbook answers, with an open generator.

    .venv/bin/python tests/bench/agreement.py [--quick]

Prints one table a source and ends with exit code 1 if a figure is missed.
"""

from __future__ import annotations

import argparse
import collections
import json
import lzma
import re
import sys
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any

from bot.answers import Key, judge, look_over
from bot.answers.batch import key_from
from bot.maths.read import the_machine
from bot.vocabulary import Verdict

TESTS = Path(__file__).parent.parent
VERDICTS = [
    verdict.value
    for verdict in (
        Verdict.RIGHT,
        Verdict.FORM,
        Verdict.UNIT,
        Verdict.WRONG,
        Verdict.UNREADABLE,
        Verdict.HELP,
    )
]
missed: list[str] = []


def rows(path: Path) -> Iterator[dict[str, Any]]:
    opener = lzma.open if path.suffix == ".xz" else open
    with opener(path, "rt", encoding="utf-8") as lines:
        for line in lines:
            yield json.loads(line)


def figure(
    name: str, value: float, at_least: float | None = None, at_most: float | None = None, of: str = ""
) -> None:
    ok = (at_least is None or value >= at_least) and (at_most is None or value <= at_most)
    bound = f"at least {at_least:.2%}" if at_least is not None else f"at most {at_most:.2%}"
    print(f"  {'ok  ' if ok else 'MISS'} {name}: {value:.2%} ({bound}{of})")
    if not ok:
        missed.append(name)


def table(pairs: Iterable[tuple[str, str]]) -> None:
    """Due verdict down, given verdict across."""
    counts = collections.Counter(pairs)
    print("  due \\ given " + "".join(f"{given:>11}" for given in VERDICTS))
    for due in VERDICTS:
        if any(counts[due, given] for given in VERDICTS):
            print(f"  {due:<12}" + "".join(f"{counts[due, given] or '·':>11}" for given in VERDICTS))


def typed_rows(path: Path, show: bool = True) -> None:
    pairs, hostile_bad, count = [], 0, 0
    for row in rows(path):
        verdict = judge(row["typed"], key_from({**row, "given": row.get("given")})).verdict.value
        count += 1
        if row.get("hostile"):
            hostile_bad += verdict not in row["verdict"].split("|")
            continue
        pairs.append((row["verdict"], verdict))
        if show and verdict != row["verdict"]:
            print(
                f"    {row['id']}: {row['typed']!r} for {row['expected']} is {row['verdict']}, given {verdict}"
            )
    print(f"\nTyped answers, {path.name}: {count} rows")
    table(pairs)
    wrong = [given for due, given in pairs if due == "wrong"]
    right = [given for due, given in pairs if due == "right"]
    graded = [given for due, given in pairs if due not in ("unreadable", "help")]
    figure("verdicts that agree", sum(due == given for due, given in pairs) / len(pairs), at_least=0.99)
    figure("wrong called right", wrong.count("right") / len(wrong), at_most=0.0)
    figure("right called wrong", right.count("wrong") / len(right), at_most=0.0)
    figure(
        "gradable called unreadable or help",
        sum(g in ("unreadable", "help") for g in graded) / len(graded),
        at_most=0.01,
    )
    figure("hostile rows judged otherwise", hostile_bad / max(count - len(pairs), 1), at_most=0.0)


def own_rows() -> None:
    pairs = []
    for path in sorted((TESTS / "answers" / "rows").glob("*.tsv")):
        for line in path.read_text(encoding="utf-8").splitlines():
            if not line.startswith("#") and line.strip():
                typed, expected, form, unit, verdict, _ = line.split("\t")
                key = Key(expected, form, unit or None)
                pairs.append((verdict, judge(typed.replace("\\n", "\n"), key).verdict.value))
    print(f"\nOwn rows, one or more for every clause: {len(pairs)} rows")
    table(pairs)
    figure("verdicts that agree", sum(due == given for due, given in pairs) / len(pairs), at_least=0.99)


def textbook() -> None:
    count = good = 0
    for row in rows(TESTS / "outside" / "answers_textbook.jsonl"):
        key = Key(row["answer"], row["form"], row["unit"])
        unit = f" {row['unit']}" if row["unit"] and row["form"].startswith("quantity") else ""
        for typed in textbook_variants(row["answer"], unit):
            count += 1
            verdict = judge(typed, key).verdict
            good += verdict is Verdict.RIGHT
            if verdict is not Verdict.RIGHT:
                print(f"    {row['id']}: {typed!r} for {row['answer']} ({row['form']}) is {verdict.value}")
    print(f"\nTextbook answers (Prealgebra 2e, Elementary Algebra 2e, OpenStax): {count} typed")
    figure("read and graded right", good / count, at_least=0.995)


def textbook_variants(answer: str, unit: str) -> list[str]:
    """As published, with words around, and with the signs that a phone makes of it."""
    phone = answer.replace("-", "−").replace("*", "×")
    phone = re.sub(
        r"\^(\d+)", lambda m: m.group(1).translate(str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")), phone
    )
    return [answer + unit, f"the answer is {answer}{unit}", f"  {phone}{unit}. "]


def chains() -> None:
    count = good = accused = whole = named = due_named = 0
    for row in rows(TESTS / "answers" / "data" / "working_chains.jsonl"):
        looked = look_over(row["lines"], row["given"])
        count += 1
        good += looked.first_wrong == row["first_bad"]
        if row["first_bad"] is None:
            whole += 1
            accused += looked.first_wrong is not None
        elif row["misstep"]:
            due_named += 1
            named += looked.misstep == row["misstep"]
        if looked.first_wrong != row["first_bad"]:
            print(
                f"    {row['id']}: {row['given']} {row['lines']}: due {row['first_bad']}, given {looked.first_wrong}"
            )
    print(f"\nWorking lines: {count} chains, {whole} of them right throughout")
    figure("first bad line right", good / count, at_least=0.95)
    figure("right chains accused", accused / whole, at_most=0.0)
    figure("misstep named as labelled", named / due_named, at_least=0.9)


def missteps() -> None:
    path = TESTS / "answers" / "labelled_missteps.tsv"
    given = right = count = 0
    for line in path.read_text(encoding="utf-8").splitlines():
        if line.startswith("#"):
            continue
        expected, form, unit, typed, name = line.split("\t")
        count += 1
        said = judge(typed, Key(expected, form, unit or None)).misstep
        given += said is not None
        right += said == name
    wrong = [
        r
        for r in rows(TESTS / "answers" / "data" / "typed_answers.jsonl")
        if r["verdict"] == "wrong" and not r.get("hostile")
    ]
    named = sum(judge(r["typed"], key_from(r)).misstep is not None for r in wrong)
    print(f"\nMissteps: {named} of {len(wrong)} wrong answers get a name ({named / len(wrong):.0%})")
    figure(f"names right, of {given} given on {count} rows labelled by hand", right / given, at_least=0.9)


# The open generator ----------------------------------------------------------------------------------------

_RAISED = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")


def generator_variants(answer: str, form: str) -> list[str]:
    """Three ways in which a student may type a generated answer."""
    signs = answer.replace("-", "−").replace("*", "·")
    powers = re.sub(r"\*\*(\d+)", lambda m: m.group(1).translate(_RAISED), answer).replace("*", "")
    if form == "yes-no":
        return {"True": ["yes", "True", "yes it is"], "False": ["no", "False", "no it isn't"]}[answer]
    if form == "choice":
        return [answer, f"({answer.upper()})", f"option {answer}"]
    if form == "time":
        return [
            answer,
            answer.lower().replace(" ", ""),
            f"at {answer.lower().replace('am', 'a.m.').replace('pm', 'p.m.')}",
        ]
    if form == "list":
        return [answer, answer.replace(",", ""), answer.replace("-", "−").replace(", ", "; ")]
    if form == "solutions-set":
        return [
            answer,
            " or ".join(f"x = {one}" for one in answer.split(", ")),
            ", ".join(reversed(answer.split(", "))),
        ]
    if form in ("expression", "expression-any", "factored"):
        return [answer.replace("**", "^"), f"the answer is {powers}", signs.replace("··", "^")]
    if form == "number" and "sqrt" in answer:
        return [answer, answer.replace("*", "").replace("sqrt", "√"), f"i got {answer}"]
    if form == "equation-solution":
        return [answer, f"x = {signs}", f"x={answer}."]
    return [f"the answer is {answer}", signs, f"{answer} !"]


def planted(answer: str, form: str) -> str | None:
    """The answer with a change that makes it wrong."""
    if form == "yes-no":
        return "no" if answer == "True" else "yes"
    if form == "choice":
        return "c" if answer != "c" else "d"
    if form == "time":
        return answer.replace("AM", "pm") if "AM" in answer else answer.replace("PM", "am")
    if form == "list":
        parts = answer.split(", ")
        if len(parts) < 2 or parts[0] == parts[-1]:
            return f"{answer}, 1"
        return ", ".join([*parts[1:], parts[0]])
    if form == "solutions-set":
        return f"{answer}, 977"
    if form in ("expression", "expression-any", "factored"):
        return f"{answer.replace('**', '^')} + 1"
    found = re.search(r"\d", answer)
    if found is None:
        return None
    digit = str((int(found.group()) + 1) % 10)
    changed = answer[: found.start()] + digit + answer[found.end() :]
    return changed if re.sub(r"^-?0+(?=\d)", "", changed) != answer else None


def generator(quick: bool) -> None:
    path = TESTS / "outside" / "answers_pairs.jsonl.xz"
    pairs = typed = good = changed = fooled = 0
    for n, row in enumerate(rows(path)):
        if quick and n % 20:
            continue
        answer, form = row["answer"], row["form"]
        key = Key(answer.replace("**", "^"), form)
        pairs += 1
        for one in generator_variants(answer, form):
            typed += 1
            verdict = judge(one, key).verdict
            good += verdict is Verdict.RIGHT
            if verdict is not Verdict.RIGHT and typed - good < 40:
                print(f"    {row['module']}: {one!r} for {answer} ({form}) is {verdict.value}")
        wrong = planted(answer, form)
        if wrong is not None:
            changed += 1
            verdict = judge(wrong, key).verdict
            fooled += verdict is Verdict.RIGHT
            if verdict is Verdict.RIGHT:
                print(f"    {row['module']}: planted {wrong!r} for {answer} ({form}) is right")
    print(
        f"\nOpen generator (mathematics_dataset): {pairs} pairs, {typed} typed, {changed} with a planted change"
    )
    figure("its answers right", good / typed, at_least=0.999)
    figure("planted changes called right", fooled / max(changed, 1), at_most=0.0)


def main() -> int:
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--quick", action="store_true", help="every twentieth pair of the generator only")
    quick = options.parse_args().quick
    the_machine()
    typed_rows(TESTS / "answers" / "data" / "typed_answers.jsonl")
    own_rows()
    textbook()
    chains()
    missteps()
    generator(quick)
    print("\nAll figures are met." if not missed else f"\nMissed: {', '.join(missed)}")
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
