"""Run with `make bench`: times what a user waits for, names the machine, and writes benchmarks/last.md."""

import os
import platform
import signal
import socket
import statistics
import subprocess
import sys
import tempfile
import time
import urllib.request
from collections.abc import Callable
from pathlib import Path

from hoodwright import __version__
from hoodwright.workplace.starters import write_starter

RUNS = 7
LAST = Path(__file__).with_name("last.md")
PROGRAM = [sys.executable, "-m", "hoodwright.cli"]


def main() -> None:
    """Time every case in turn and write the table."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "bell-workshop.yaml"
        write_starter("demo", file)
        report = ["--report", str(Path(folder) / "answer.pdf")]
        cases = {
            "python that does nothing": lambda: command([sys.executable, "-c", "pass"]),
            "hoodwright --help": lambda: command([*PROGRAM, "--help"]),
            "hoodwright assess, demo": lambda: command([*PROGRAM, "assess", str(file)]),
            "hoodwright assess --report, demo": lambda: command([*PROGRAM, "assess", str(file), *report]),
            "page answers after start": lambda: page(folder),
        }
        seconds = measure(cases)
    text = table(seconds)
    LAST.write_text(text, encoding="utf-8")
    print(text)


def measure(cases: dict[str, Callable[[], float]]) -> dict[str, list[float]]:
    """Every case once for warmth, then in turn, so that a slow moment of the machine touches all alike."""
    for case in cases.values():
        case()
    found: dict[str, list[float]] = {name: [] for name in cases}
    for _ in range(RUNS):
        for name, case in cases.items():
            found[name].append(case())
    return found


def command(words: list[str]) -> float:
    """Wall time of one command."""
    start = time.perf_counter()
    subprocess.run(words, check=True, stdout=subprocess.DEVNULL)
    return time.perf_counter() - start


def page(folder: str) -> float:
    """Wall time from starting the program until the page has answered."""
    port = free_port()
    start = time.perf_counter()
    words = [*PROGRAM, "open", folder, "--port", str(port), "--no-browser"]
    server = subprocess.Popen(words, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    try:
        while time.perf_counter() - start < 60:
            try:
                urllib.request.urlopen(f"http://127.0.0.1:{port}/", timeout=5).read()
                return time.perf_counter() - start
            except OSError:
                time.sleep(0.02)
        raise TimeoutError("the page did not answer within 60 s")
    finally:
        server.send_signal(signal.SIGINT)
        server.wait(10)


def free_port() -> int:
    """A port that nothing listens on."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


def table(seconds: dict[str, list[float]]) -> str:
    """The figures as a page, with the machine they were taken on."""
    base = statistics.median(next(iter(seconds.values())))
    lines = [f"# Last timings, hoodwright {__version__}", "", machine(), ""]
    lines += ["| case | median s | fastest | slowest | ratio |", "|---|---|---|---|---|"]
    for name, runs in seconds.items():
        middle = statistics.median(runs)
        lines.append(f"| {name} | {middle:.2f} | {min(runs):.2f} | {max(runs):.2f} | {middle / base:.1f} |")
    lines += ["", f"{RUNS} runs each, in turn after one for warmth; ratio to a Python that does nothing, same run."]
    return "\n".join(lines) + "\n"


def machine() -> str:
    """The processor, its cores in use here, and the Python."""
    name = platform.processor() or platform.machine()
    try:
        info = Path("/proc/cpuinfo").read_text(encoding="utf-8")
        name = next(line.split(":", 1)[1].strip() for line in info.splitlines() if line.startswith("model name"))
    except (OSError, StopIteration):
        pass
    return f"{name}, {os.cpu_count()} cores, {platform.system()}, Python {platform.python_version()}"


if __name__ == "__main__":
    main()
