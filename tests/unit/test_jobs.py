"""Long jobs: progress, cancelling, and the latest request winning."""

import threading

import pytest

from hoodwright.errors import Cancelled
from hoodwright.jobs import Job, Latest, Progress, Report

SOON = 10.0  # s, far more than any of these jobs takes


class Gate:
    """Work that waits inside until it is let through, so that a test decides the order."""

    def __init__(self):
        self.entered, self.open = threading.Event(), threading.Event()
        self.runs = []

    def __call__(self, progress, name):
        self.runs.append(name)
        self.entered.set()
        assert self.open.wait(SOON)
        progress.report(1.0)
        return name


def test_progress_tells_its_listener_and_never_goes_back():
    heard = []
    progress = Progress(heard.append)
    progress.report(0.5, "meshing")
    progress.report(0.25)
    progress.report(7.0, "solving")
    assert heard == [Report(0.5, "meshing"), Report(0.5, "meshing"), Report(1.0, "solving")]
    assert progress.now == heard[-1]


def test_progress_raises_once_cancelled():
    progress = Progress()
    progress.report(0.1)
    progress.cancel()
    with pytest.raises(Cancelled, match="the job was cancelled before it had an answer"):
        progress.report(0.2)
    assert progress.now.fraction == 0.1


def test_a_part_fills_its_share_of_the_whole():
    progress = Progress()
    part = progress.part(0.2, 0.6)
    part.report(0.5, "tracing")
    assert progress.now == Report(pytest.approx(0.4), "tracing")
    progress.cancel()
    with pytest.raises(Cancelled):
        part.report(0.6)


def test_job_gives_the_answer_of_its_work():
    job = Job(lambda progress, a, b: a + b, 2, 3).start()
    assert job.result(SOON) == 5
    assert job.done


def test_job_raises_what_its_work_raised():
    job = Job(lambda progress: 1 / 0)
    job.run()
    with pytest.raises(ZeroDivisionError):
        job.result(SOON)


def test_job_runs_once():
    runs = []
    job = Job(lambda progress: runs.append(1))
    job.run()
    job.run()
    assert runs == [1]


def test_job_reports_to_its_listener():
    heard = []
    Job(lambda progress: progress.report(0.5, "halfway"), listener=heard.append).run()
    assert heard == [Report(0.5, "halfway")]


def test_cancelled_job_stops_at_its_next_report():
    gate = Gate()
    job = Job(gate, "a").start()
    assert gate.entered.wait(SOON)
    job.cancel()
    gate.open.set()
    with pytest.raises(Cancelled):
        job.result(SOON)


def test_cancelled_job_has_no_answer_even_when_its_work_never_reports():
    inside, go_on = threading.Event(), threading.Event()
    job = Job(lambda progress: (inside.set(), go_on.wait(SOON))).start()
    assert inside.wait(SOON)
    job.cancel()
    go_on.set()
    with pytest.raises(Cancelled):
        job.result(SOON)


def test_job_cancelled_before_it_began_never_runs():
    gate = Gate()
    job = Job(gate, "a")
    job.cancel()
    job.run()
    with pytest.raises(Cancelled, match="the job was cancelled before it began"):
        job.result(SOON)
    assert gate.runs == []


def test_latest_request_wins():
    gate = Gate()
    latest = Latest(gate)
    first = latest.ask("first")
    assert gate.entered.wait(SOON)
    second, third = latest.ask("second"), latest.ask("third")
    gate.open.set()
    assert third.result(SOON) == "third"
    for dropped in (first, second):
        with pytest.raises(Cancelled):
            dropped.result(SOON)
    assert gate.runs == ["first", "third"]


def test_running_request_may_finish():
    gate = Gate()
    latest = Latest(gate, finish_running=True)
    first = latest.ask("first")
    assert gate.entered.wait(SOON)
    second, third = latest.ask("second"), latest.ask("third")
    gate.open.set()
    assert (first.result(SOON), third.result(SOON)) == ("first", "third")
    with pytest.raises(Cancelled):
        second.result(SOON)


def test_latest_goes_on_after_an_error():
    latest = Latest(lambda progress, x: 1 / x)
    with pytest.raises(ZeroDivisionError):
        latest.ask(0).result(SOON)
    assert latest.ask(2).result(SOON) == 0.5


def test_latest_cancel_stops_everything():
    gate = Gate()
    latest = Latest(gate)
    jobs = [latest.ask("first")]
    assert gate.entered.wait(SOON)
    jobs.append(latest.ask("second"))
    latest.cancel()
    gate.open.set()
    for job in jobs:
        with pytest.raises(Cancelled):
            job.result(SOON)


def test_many_threads_asking_end_with_the_last_answer():
    running, most = [], []

    def work(progress, number):
        running.append(number)
        most.append(len(running))
        progress.report(0.5)
        running.remove(number)
        return number

    latest = Latest(work)
    threads = [
        threading.Thread(target=lambda start=start: [latest.ask(start + i) for i in range(200)])
        for start in range(0, 800, 200)
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(SOON)
    assert latest.ask(-1).result(SOON) == -1
    assert max(most) == 1
