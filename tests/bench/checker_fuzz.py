"""Coverage-guided fuzzing of the checker: texts that lead somewhere new are kept and changed further.

    python tests/bench/checker_fuzz.py [--minutes 5] [--corpus FOLDER]

Needs `atheris` (PyPI), which is no dependency of the project: make an environment of its own with Python 3.11,
`pip install atheris lark rapidfuzz sympy`, and run this file with its Python from the top of the repository.
The first character of an input chooses the key, the rest is what was typed. An input that raises, or takes
more than 50 ms of CPU time, is printed and ends the run with an exit code that is not 0.
"""

from __future__ import annotations

import argparse
import sys
import tempfile
import time
from pathlib import Path

import atheris

sys.path[:0] = [str(Path(__file__).parents[2]), str(Path(__file__).parent)]

with atheris.instrument_imports(include=["bot.answers", "bot.maths"]):
    from checker_soak import TOKENS, keys, texts

    from bot.answers import Judgement, judge, look_over, split_numbered
    from bot.maths.read import the_machine
    from bot.vocabulary import Verdict

MOST_SECONDS = 0.05
KEYS = keys()


def one_input(data: bytes) -> None:
    """Judge one text; raise where a rule is broken."""
    text = data.decode("utf-8", "replace")
    if not text:
        return
    key, text = KEYS[ord(text[0]) % len(KEYS)], text[1:]
    start = time.process_time()
    judged = judge(text, key)
    took = time.process_time() - start
    assert isinstance(judged, Judgement)
    assert (judged.trouble is not None) == (judged.verdict is Verdict.UNREADABLE)
    if took > MOST_SECONDS and min(_again(text, key) for _ in range(3)) > MOST_SECONDS:
        raise AssertionError(f"{took * 1000:.0f} ms for {text!r}, {key.form} {key.answer}")
    if len(text) % 4 == 0:
        look_over(text.split("\n"), "2x + 3 = 11")
        split_numbered(text)


def _again(text: str, key: object) -> float:
    start = time.process_time()
    judge(text, key)  # type: ignore[arg-type]
    return time.process_time() - start


def main() -> None:
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--minutes", type=float, default=5)
    options.add_argument("--corpus", type=Path)
    chosen = options.parse_args()
    the_machine()
    with tempfile.TemporaryDirectory() as scratch:
        corpus = chosen.corpus or Path(scratch) / "corpus"
        corpus.mkdir(parents=True, exist_ok=True)
        for n, text in enumerate(texts()):
            (corpus / f"row-{n}").write_bytes((which_key(n) + text[:400]).encode("utf-8", "replace"))
        words = Path(scratch) / "words"
        words.write_text("".join(f'"{escaped(token)}"\n' for token in TOKENS if token), encoding="ascii")
        settings = [
            f"-max_total_time={round(chosen.minutes * 60)}",
            "-max_len=600",
            "-timeout=20",
            f"-dict={words}",
        ]
        atheris.Setup([sys.argv[0], str(corpus), *settings, "-print_final_stats=1"], one_input)
        atheris.Fuzz()


def which_key(n: int) -> str:
    """A character that chooses a key, spread over all of them."""
    return chr(0x100 + n % len(KEYS))


def escaped(token: str) -> str:
    """A token as the fuzzer's list of words wants it."""
    return "".join(f"\\x{byte:02x}" for byte in token.encode())


if __name__ == "__main__":
    main()
