"""Draws question and answer pairs from an open generator, once; the drawn file is committed.

Source: the PyPI package mathematics_dataset 1.0.1 (Apache License 2.0), published with Saxton, Grefenstette, Hill and
Kohli, "Analysing Mathematical Reasoning Abilities of Neural Models" (ICLR 2019). It needs an environment of its own,
outside this project:

    python3.11 -m venv env
    env/bin/pip install sympy==1.5.1 numpy==1.23.5 six absl-py
    env/bin/pip install --no-deps mathematics_dataset==1.0.1
    env/bin/python tests/outside/answers_draw_pairs.py tests/outside/answers_pairs.jsonl.xz

Seed 20260914 for both random generators, the easiest third of each module, 1,000 pairs a module (fewer where a
module repeats itself or its answers are no school form).
"""

import json
import lzma
import random
import re
import sys

import numpy
from mathematics_dataset import generate
from mathematics_dataset.modules import modules

SEED = 20260914
EACH = 1000
FORMS = {
    "arithmetic__add_or_sub": "number",
    "arithmetic__add_sub_multiple": "integer",
    "arithmetic__mul": "number",
    "arithmetic__div": "fraction-simplest",
    "arithmetic__mul_div_multiple": "fraction-simplest",
    "arithmetic__mixed": "number",
    "arithmetic__simplify_surd": "number",
    "algebra__linear_1d": "equation-solution",
    "algebra__linear_2d": "equation-solution",
    "algebra__polynomial_roots": "",
    "algebra__sequence_next_term": "integer",
    "algebra__sequence_nth_term": "expression-any",
    "comparison__sort": "list",
    "comparison__kth_biggest": "",
    "comparison__pair": "",
    "measurement__conversion": "number",
    "measurement__time": "",
    "numbers__gcd": "whole",
    "numbers__lcm": "whole",
    "numbers__div_remainder": "whole",
    "numbers__is_prime": "yes-no",
    "numbers__is_factor": "yes-no",
    "numbers__round_number": "number",
    "numbers__place_value": "whole",
    "numbers__list_prime_factors": "list",
    "polynomials__coefficient_named": "integer",
    "polynomials__evaluate": "integer",
    "polynomials__expand": "expression",
    "polynomials__collect": "expression",
    "probability__swr_p_level_set": "fraction-simplest",
    "probability__swr_p_sequence": "fraction-simplest",
}


def form_of(module, question, answer):
    if FORMS[module]:
        return FORMS[module]
    if re.fullmatch(r"\d+:\d\d [AP]M", answer):
        return "time"
    if answer in ("True", "False"):
        return "yes-no"
    if re.fullmatch(r"[a-f]", answer):
        return "choice"
    if module == "algebra__polynomial_roots":
        if question.startswith("Factor"):
            return None if "/" in answer else "factored"
        return "solutions-set"
    if re.fullmatch(r"-?\d+(\.\d+)?(/\d+)?", answer):
        return "number"
    return None


def flat(tree, prefix=""):
    for name, what in tree.items():
        if isinstance(what, dict):
            yield from flat(what, prefix + name + "__")
        else:
            yield prefix + name, what


def main(path):
    random.seed(SEED)
    numpy.random.seed(SEED)
    found = []
    for module, draw in flat(modules.train(generate._make_entropy_fn(0, 3))):
        if module not in FORMS:
            continue
        seen, tries = set(), 0
        while len(seen) < EACH and tries < EACH * 6:
            tries += 1
            try:
                problem = draw()
            except Exception:  # the generator fails now and then on newer Pythons
                continue
            question, answer = str(problem.question), str(problem.answer)
            form = form_of(module, question, answer)
            if form is None or question in seen or len(question) > 240:
                continue
            seen.add(question)
            found.append({"module": module, "question": question, "answer": answer, "form": form})
        print(module, len(seen), file=sys.stderr)
    with lzma.open(path, "wt", encoding="utf-8") as out:
        for row in found:
            out.write(json.dumps(row, ensure_ascii=False) + "\n")
    print(len(found), file=sys.stderr)


if __name__ == "__main__":
    main(sys.argv[1])
