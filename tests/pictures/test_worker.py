"""The process that makes pictures: on demand, ending by itself, and it may be killed."""

from __future__ import annotations

import asyncio
import os
import signal
import subprocess
import sys
import threading
import time

import psutil
import pytest

from bot.pictures import CannotMake, Pictures, worker

BAR = {"figure": "bar", "length": "3", "pieces": "1/2"}
GRID = {"figure": "hundred-grid", "shaded": "37"}


@pytest.fixture
def pictures(tmp_path):
    made = Pictures(tmp_path / "pictures")
    yield made
    made.close()


def running(pictures):
    return pictures._process is not None and pictures._process.poll() is None


def test_no_process_runs_before_something_is_asked_for(pictures):
    assert not running(pictures)
    assert pictures.make_now("figure", BAR)[:4] == b"\x89PNG"
    assert running(pictures)


async def test_several_tasks_may_ask_at_once(pictures):
    figures = [{**GRID, "shaded": str(n)} for n in range(6)]
    made = await asyncio.gather(*(pictures.make("figure", figure) for figure in figures))

    assert len(set(made)) == 6
    assert list(made) == [pictures.make_now("figure", figure) for figure in figures]


def test_who_asks_loads_nothing_heavy():
    heavy = ["typst", "PIL", "bot.course", "bot.maths", "sympy"]
    code = f"import sys, bot.pictures; print([m for m in {heavy} if m in sys.modules])"
    seen = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)

    assert seen.stdout.strip() == "[]"


def test_a_killed_process_costs_nobody_a_picture(pictures):
    first = pictures.make_now("week", {"monday": "2026-09-14", "signs": "d....ff"})
    os.kill(pictures._process.pid, signal.SIGKILL)

    assert pictures.make_now("week", {"monday": "2026-09-14", "signs": "d....ff"}) == first


def test_a_process_killed_over_a_job_is_replaced(pictures):
    pictures.make_now("figure", BAR)
    os.kill(
        pictures._process.pid, signal.SIGSTOP
    )  # so that the job is certainly under way when the kill comes
    doomed = pictures._process.pid
    threading.Timer(0.2, os.kill, (doomed, signal.SIGKILL)).start()

    assert pictures.make_now("figure", GRID)[:4] == b"\x89PNG"
    assert pictures._process.pid != doomed


def test_a_process_that_hangs_is_given_up(pictures, monkeypatch):
    pictures.make_now("figure", BAR)
    os.kill(pictures._process.pid, signal.SIGSTOP)
    monkeypatch.setattr(worker, "PATIENCE", 0.3)

    with pytest.raises(CannotMake, match="too long"):
        pictures.make_now("figure", GRID)
    monkeypatch.undo()
    assert pictures.make_now("figure", GRID)[:4] == b"\x89PNG"


def test_an_idle_process_ends_by_itself(tmp_path):
    pictures = Pictures(None, idle=0.2)
    pictures.make_now("figure", BAR)
    process = psutil.Process(pictures._process.pid)

    pictures._process.wait(10)
    assert not process.is_running() or process.status() == psutil.STATUS_ZOMBIE
    assert pictures.make_now("figure", BAR)[:4] == b"\x89PNG"
    pictures.close()


def test_it_makes_way_for_a_fresh_one_after_many_jobs(tmp_path, monkeypatch):
    lines = ["import sys", "from bot.pictures import worker", "worker.MOST_JOBS = 2"]
    lines += ["worker.serve(sys.stdin.buffer, sys.stdout.buffer, 5)"]
    real = subprocess.Popen
    monkeypatch.setattr(
        worker.subprocess, "Popen", lambda argv, **pipes: real([argv[0], "-c", "\n".join(lines)], **pipes)
    )
    pictures = Pictures(None)
    seen = set()
    for n in range(5):
        pictures.make_now("figure", {**GRID, "shaded": str(n)})
        seen.add(pictures._process.pid)
    pictures.close()

    assert len(seen) == 3


@pytest.mark.parametrize(
    ("recipe", "data", "says"),
    [
        ("figure", {"figure": "hundred-grid", "shaded": "400"}, "0 to 300"),
        ("figure", {}, "There is no figure called ''"),
        ("no-such-paper", {}, "There is no recipe"),
        ("week", {"signs": "d"}, "monday"),
        ("worksheet", {"title": 3}, "title"),
    ],
)
def test_what_cannot_be_made_says_why_and_harms_no_later_job(pictures, recipe, data, says):
    with pytest.raises(CannotMake, match=says):
        pictures.make_now(recipe, data)
    assert pictures.make_now("figure", BAR)[:4] == b"\x89PNG"


def test_a_picture_of_the_course_is_made_once(pictures, tmp_path):
    made = pictures.make_now("figure", BAR)
    pictures.close()

    assert pictures.make_now("figure", dict(reversed(BAR.items()))) == made
    assert not running(pictures)
    assert len(list((tmp_path / "pictures").iterdir())) == 1


def test_nothing_about_a_student_is_kept(pictures, tmp_path):
    pictures.make_now("week", {"monday": "2026-09-14", "signs": "d....ff", "name": "Wren"})
    pictures.make_now("letter", {"title": "Wren's week", "paragraphs": ["5 of 6"]})

    assert not (tmp_path / "pictures").exists()


def test_kept_pictures_stay_within_their_room(tmp_path):
    folder = tmp_path / "kept"
    folder.mkdir()
    for n in range(10):
        (folder / f"{n}").write_bytes(b"x" * 1000)
        os.utime(folder / f"{n}", (n, n))
    (folder / ".half-1").write_bytes(b"x")
    os.utime(folder / ".half-1", (1, 1))

    worker._make_room(folder, 4000)

    assert sorted(file.name for file in folder.iterdir()) == ["6", "7", "8", "9"]


def test_a_folder_that_cannot_be_written_costs_only_time(tmp_path):
    blocked = tmp_path / "file"
    blocked.write_text("not a folder")
    pictures = Pictures(blocked / "pictures")

    assert pictures.make_now("figure", BAR)[:4] == b"\x89PNG"
    pictures.close()


def test_the_process_ends_with_whoever_asked():
    code = (
        "from bot.pictures import Pictures; p = Pictures(None); "
        "p.make_now('figure', {'figure': 'bar', 'length': '3', 'pieces': '1'}); print(p._process.pid, flush=True); "
        "import os; os._exit(1)"
    )
    seen = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True)
    worker_process = int(seen.stdout)

    deadline = time.monotonic() + 10
    while psutil.pid_exists(worker_process) and time.monotonic() < deadline:
        if psutil.Process(worker_process).status() == psutil.STATUS_ZOMBIE:
            break
        time.sleep(0.05)
    assert (
        not psutil.pid_exists(worker_process)
        or psutil.Process(worker_process).status() == psutil.STATUS_ZOMBIE
    )
