"""Compiling ahead: behind the page it holds nothing up, and `hoodwright warm` tells where the code is kept."""

import re
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest
from typer.testing import CliRunner

from hoodwright.cli import app
from hoodwright.errors import Cancelled, HoodwrightError
from hoodwright.jobs import Job, Progress
from hoodwright.kernels import Warmed, cache, kernel, lazy
from hoodwright.tasks import warm_up
from hoodwright.tasks.warm_up import ASLEEP, PACKAGES, PREPARING, Ready

ROOT = Path(warm_up.__file__).parents[2]

BEHIND = """
import time
from hoodwright.jobs import Job
from hoodwright.tasks import warm_up

began = time.perf_counter()
warm_up.start()
warm_up.start()
first, took = warm_up.state(), time.perf_counter() - began
Job(warm_up.wait).start().result(120)
last = warm_up.state()
from hoodwright.kernels.chance import mixed
loaded = mixed._compiled is not None
print(took < 0.1, first.ready, first.fraction, last.ready, last.fraction, last.words, loaded, sep="|")
"""


@pytest.fixture
def fresh(monkeypatch):
    """As before anything was started."""
    monkeypatch.setattr(warm_up, "_now", Ready(True, ASLEEP, 1.0))
    monkeypatch.setattr(warm_up, "_done", threading.Event())
    return monkeypatch


def settle():
    for thread in threading.enumerate():
        if thread.name == "hoodwright warm-up":
            thread.join(20)


def test_every_kernel_of_the_house_is_compiled_ahead():
    """A kernel in another package would compile only when a visitor first asks for it."""
    with_kernels = [file for file in ROOT.rglob("*.py") if re.search(r"^@kernel\(", file.read_text(), re.MULTILINE)]
    assert len(with_kernels) >= 6
    for file in with_kernels:
        name = ".".join(file.relative_to(ROOT).with_suffix("").parts)
        assert name.startswith(PACKAGES), f"{name}: add its package to PACKAGES"


def test_behind_the_page_it_starts_at_once_and_ends_with_loaded_kernels():
    told = subprocess.check_output([sys.executable, "-c", BEHIND], text=True).strip().split("|")
    assert told == ["True", "False", "0.0", "True", "1.0", "the computed air is ready", "True"]


def test_before_it_starts_nobody_needs_to_wait(fresh):
    assert warm_up.state() == Ready(True, ASLEEP, 1.0)
    warm_up.wait(Progress())


def test_a_job_that_waits_tells_what_is_done_and_can_be_cancelled(fresh):
    fresh.setattr(warm_up, "_now", Ready(False, PREPARING, 0.3))
    job = Job(warm_up.wait).start()
    time.sleep(0.05)
    assert job.progress.now.doing == PREPARING and not job.done
    job.cancel()
    with pytest.raises(Cancelled):
        job.result(5)


def test_a_failure_is_told_and_holds_nothing_up(fresh):
    def fails(progress=None):
        raise HoodwrightError("kernels need numba, which is not installed; run: pip install numba")

    fresh.setattr(warm_up, "_in_a_process_of_its_own", lambda: True)
    fresh.setattr(warm_up, "compile_all", fails)
    warm_up.start()
    settle()
    assert warm_up.state().ready
    assert warm_up.state().words == (
        "the computed air was not compiled ahead: kernels need numba, which is not installed; run: pip install numba"
    )


def test_a_stopped_process_holds_nothing_up(fresh):
    fresh.setattr(warm_up, "_in_a_process_of_its_own", lambda: False)
    warm_up.start()
    settle()
    assert warm_up.state() == Ready(True, ASLEEP, 1.0)


def test_a_kernel_called_meanwhile_waits_without_holding_up_other_threads(monkeypatch, tmp_path):
    """Another process compiles; here one thread wants a kernel, and another, as the page's, goes on."""
    monkeypatch.setenv("NUMBA_CACHE_DIR", str(tmp_path))
    monkeypatch.setattr(lazy, "_registered", {})
    cache.cache_root.cache_clear()
    hold = (
        "import sys; from hoodwright.kernels.cache import one_process_at_a_time as alone\n"
        "with alone(): print('held', flush=True); sys.stdin.read()"
    )
    command = [sys.executable, "-c", hold]
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True) as other:
        assert other.stdout.readline() == "held\n"

        @kernel("float64(float64)")
        def doubled(x):
            return 2 * x

        job = Job(lambda progress: doubled(2.0)).start()
        gaps, last = [], time.perf_counter()
        while len(gaps) < 40:
            time.sleep(0.01)
            gaps.append(time.perf_counter() - last)
            last = time.perf_counter()
        assert not job.done
        assert max(gaps) < 0.5  # s; a thread that is held up waits until the other process ends
        other.stdin.close()
        assert job.result(60) == 4.0
    cache.cache_root.cache_clear()


def test_the_command_tells_how_long_and_where(monkeypatch):
    warmed = [Warmed("one", 0.1, True), Warmed("two", 3.0, False)]
    monkeypatch.setattr("hoodwright.console_warm.compile_all", lambda progress: warmed)
    said = CliRunner().invoke(app, ["warm"]).stdout.replace("\n", " ")
    assert re.search(r"ready after \d+\.\d s: 1 of its 2 parts compiled now\.", said)
    assert "it may be deleted at any time" in said


def test_without_a_folder_the_command_says_so(monkeypatch):
    monkeypatch.setattr(warm_up, "is_kept", lambda: False)
    assert "it compiles at each start. Name one with NUMBA_CACHE_DIR." in warm_up.kept_in()
