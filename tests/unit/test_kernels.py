"""Kernels: compiled late, kept between runs, and never taken stale from the cache."""

import os
import subprocess
import sys
import time
from pathlib import Path

import numba
import pytest

from hoodwright.errors import HoodwrightError
from hoodwright.jobs import Progress
from hoodwright.kernels import cache, kernel, lazy, warm

CALLEE = """
from hoodwright.kernels import kernel

@kernel("float64(float64)")
def scaled(x):
    return {factor} * x
"""

CALLER = """
from callee import scaled
from hoodwright.kernels import kernel, warm

@kernel("float64(float64[:])")
def total(values):
    result = 0.0
    for value in values:
        result += scaled(value)
    return result

if __name__ == "__main__":
    import numpy as np
    times = {each.name.split(".")[-1]: each.from_cache for each in warm()}
    print(total(np.array([1.0, 2.0])), times["total"], times["scaled"])
"""


@pytest.fixture
def folder(tmp_path):
    """Two modules of kernels, and a cache of their own."""
    (tmp_path / "caller.py").write_text(CALLER)
    write_callee(tmp_path, factor=2.0)
    return tmp_path


def write_callee(folder, factor):
    (folder / "callee.py").write_text(CALLEE.format(factor=factor))


def environment(folder):
    return os.environ | {"NUMBA_CACHE_DIR": str(folder / "kept"), "PYTHONDONTWRITEBYTECODE": "1"}


def run(folder):
    command = [sys.executable, "caller.py"]
    return subprocess.check_output(command, cwd=folder, env=environment(folder), text=True).split()


@pytest.fixture
def own_cache(monkeypatch, tmp_path):
    """The cache root found anew, and in a folder of the test."""
    monkeypatch.setenv("NUMBA_CACHE_DIR", str(tmp_path / "kept"))
    cache.cache_root.cache_clear()
    yield tmp_path / "kept"
    cache.cache_root.cache_clear()


def test_import_does_not_load_numba():
    code = "import sys, hoodwright.kernels; print('numba' in sys.modules)"
    assert subprocess.check_output([sys.executable, "-c", code], text=True).strip() == "False"


def test_kernels_come_from_the_cache_and_an_edited_callee_is_noticed(folder):
    assert run(folder) == ["6.0", "False", "False"]
    assert run(folder) == ["6.0", "True", "True"]
    write_callee(folder, factor=3.0)
    assert run(folder) == ["9.0", "False", "False"]


def test_two_processes_compile_once(folder):
    start = dict(cwd=folder, env=environment(folder), text=True, stdout=subprocess.PIPE)
    both = [subprocess.Popen([sys.executable, "caller.py"], **start) for _ in range(2)]
    answers = sorted(process.communicate(timeout=120)[0].split() for process in both)
    assert [answer[0] for answer in answers] == ["6.0", "6.0"]
    assert sorted(answer[1] for answer in answers) == ["False", "True"]


def test_kernel_compiles_when_first_called_and_warm_tells_the_time(own_cache, monkeypatch):
    monkeypatch.setattr(lazy, "_registered", {})

    @kernel("float64(float64, float64)", fastmath=True)
    def hypotenuse(a, b):
        """Length of the long side."""
        return (a * a + b * b) ** 0.5

    assert hypotenuse.__doc__ == "Length of the long side."
    progress = Progress()
    began = time.perf_counter()
    (warmed,) = warm(progress)
    assert warmed.name.endswith("hypotenuse")
    assert 0 < warmed.seconds <= time.perf_counter() - began
    assert progress.now.fraction == 1.0
    assert hypotenuse(3.0, 4.0) == pytest.approx(5.0)
    assert list(own_cache.rglob("*.nbi"))


def test_kernel_without_a_file_works_uncached(own_cache, monkeypatch):
    monkeypatch.setattr(lazy, "_registered", {})
    typed = {}
    exec("def twice(x):\n    return 2 * x", typed)
    assert kernel("int64(int64)")(typed["twice"])(21) == 42
    assert not list(own_cache.rglob("*.nbi"))


def test_arguments_of_another_type_are_refused(own_cache, monkeypatch):
    monkeypatch.setattr(lazy, "_registered", {})
    with pytest.raises(TypeError, match="No matching definition"):
        kernel("float64(float64[:])")(first)("words")


def first(values):
    return values[0]


def test_missing_numba_says_how_to_install_it(own_cache, monkeypatch):
    monkeypatch.setattr(lazy, "_registered", {})
    monkeypatch.setitem(sys.modules, "numba", None)
    with pytest.raises(HoodwrightError) as error:
        kernel("float64(float64[:])")(first)([1.0])
    assert str(error.value) == ("kernels need numba, which is not installed; run: pip install numba")


def test_cache_root_is_the_users(monkeypatch, tmp_path):
    monkeypatch.delenv("NUMBA_CACHE_DIR", raising=False)
    monkeypatch.setattr(cache, "user_cache_path", lambda name: tmp_path / name)
    assert cache.cache_root.__wrapped__() == tmp_path / "hoodwright" / "kernels"


@pytest.mark.parametrize("unusable", ["no/home/known", "/proc/hoodwright"])
def test_cache_root_falls_back_to_a_temporary_folder(monkeypatch, unusable):
    monkeypatch.delenv("NUMBA_CACHE_DIR", raising=False)
    monkeypatch.setattr(cache, "user_cache_path", lambda name: Path(unusable))
    root = cache.cache_root.__wrapped__()
    assert root.name.startswith("hoodwright-kernels-")
    assert root.is_dir()
    assert not Path("no").exists()


def test_cache_folder_depends_on_the_files_beside_the_source(own_cache, tmp_path):
    source = tmp_path / "solve.py"
    source.write_text("one")
    before = cache.cache_folder(source)
    assert cache.cache_folder(source) == before
    (tmp_path / "constants.py").write_text("two")
    assert cache.cache_folder(source) != before
    assert before.parent == own_cache


def test_cache_folder_depends_on_versions(own_cache, monkeypatch, tmp_path):
    before = cache.cache_folder(tmp_path / "solve.py")
    monkeypatch.setattr(cache, "version", lambda package: "99")
    assert cache.cache_folder(tmp_path / "solve.py") != before


def references_counted(**options) -> int:
    """How often a function that is handed a tuple of arrays, as our kernels are, calls the counter of references."""

    def total(pair):
        return pair[0][0] + pair[1][0]

    compiled = numba.njit(["float64(Tuple((float64[::1], float64[::1])))"], **options)(total)
    (code,) = compiled.inspect_llvm().values()
    return code.count("NRT_incref") + code.count("NRT_decref")


def test_a_private_switch_of_numba_still_spares_the_counting_of_references():
    """`_nrt=False` took half of the time off a velocity at a point; numba has no public switch for it.

    If numba drops the option, this says so first (KeyError: unrecognized option). Then remove it from FAST in
    kernels/moving.py and kernels/velocity.py, from `_on_face` there and from kernels/chance.py: all answers stay the
    same, at about half the speed. If the last line fails, numba counts no more by itself: remove it too.
    """
    assert references_counted(_nrt=False) == 0
    assert references_counted() > 0
