"""What `hoodwright capture` prints: sentences first, then a table, then where to look next."""

import sys
from pathlib import Path

from hoodwright.console import console, say
from hoodwright.jobs import Job, Report
from hoodwright.tasks.capture import BANNER, CaptureReport, capture_of
from hoodwright.units import show
from hoodwright.workplace import Workplace


def computed(workplace: Workplace, source, hood, distances, *, today: bool) -> CaptureReport:
    """Run the job with a progress line on a terminal; Ctrl-C stops it."""

    def work(progress):
        return capture_of(workplace, source, hood, distances, today=today, progress=progress)

    job = Job(work, listener=_line if sys.stderr.isatty() else None).start()
    try:
        while True:
            try:
                return job.result(0.2)
            except TimeoutError:
                if job.done:
                    raise
    except KeyboardInterrupt:
        print("stopped; nothing more was written", file=sys.stderr)
        sys.exit(130)
    finally:
        job.cancel()
        if sys.stderr.isatty():
            print("\r\x1b[K", end="", file=sys.stderr, flush=True)


def _line(now: Report) -> None:
    print(f"\r\x1b[K{100 * now.fraction:3.0f} %  {now.doing}", end="", file=sys.stderr, flush=True)


def print_capture(report: CaptureReport, file: Path) -> None:
    """Print the answer; numbers never without their interval and the banner."""
    out, system = console(), report.system
    for answer in report.answers:
        say(out, answer.sentence)
        for opening in answer.openings:
            speed = show(opening.velocity, "velocity", system)
            say(out, f"Inward through the {opening.name}: {speed}.", "    ", "  - ")
        if not answer.moved:
            say(out, f"By the handbook: {answer.handbook}.", "    ", "  - ")
        for words in (answer.differs, "the stream brings more air than the hoods take" * answer.plume_limited):
            if words:
                say(out, f"{words[0].upper()}{words[1:]}.", "    ", "  - ")
    told = report.answers[0].definition
    out.print()
    say(
        out,
        f"Computed air, {BANNER}. Lost: farther than {show(told.escape_radius, 'length', system)} from the hood, or "
        f"still in the air after {told.time_limit:g} s. {told.realisations} times {told.particles} particles. The "
        "interval covers draught, flow, place, release, grid and sampling.",
    )
    say(out, f"Raw numbers: hoodwright capture {file} --json. The handbook: hoodwright assess {file}")
