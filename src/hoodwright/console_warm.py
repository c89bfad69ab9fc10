"""What `hoodwright warm` shows: a bar while it compiles, then how long that took and where the code is kept."""

import sys
import time

from rich.progress import BarColumn, TextColumn
from rich.progress import Progress as Bar

from hoodwright.console import console, say
from hoodwright.jobs import Progress
from hoodwright.tasks.warm_up import compile_all, kept_in


def warm_with_a_bar() -> None:
    """Compile the computed air, or see that it was compiled; the bar shows on a terminal only."""
    began = time.perf_counter()
    columns = TextColumn("{task.percentage:3.0f} %"), BarColumn(), TextColumn("{task.description}")
    with Bar(*columns, console=console(sys.stderr), transient=True) as bar:
        line = bar.add_task("compiling", total=1.0)
        warmed = compile_all(Progress(lambda now: bar.update(line, completed=now.fraction, description=now.doing)))
    new = sum(not each.from_cache for each in warmed)
    how = f"{new} of its {len(warmed)} parts compiled now" if new else f"all {len(warmed)} parts were compiled before"
    say(console(), f"The computed air is ready after {time.perf_counter() - began:.1f} s: {how}.")
    say(console(), kept_in())
