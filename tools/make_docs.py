"""Write what the docs repeat from the program: docs/sources.md, docs/guide.md, and the answer shown in the README.

A test fails when either is stale.
"""

import re
import subprocess
import sys
import tempfile
from pathlib import Path

from hoodwright.sources import DERIVED, MEMORY, READ, Source, all_sources
from hoodwright.tasks.guide import GuideEntry, guide_entries, in_a_sentence, sorted_entries, statement

ROOT = Path(__file__).parents[1]
PAGE = ROOT / "docs" / "sources.md"
GUIDE = ROOT / "docs" / "guide.md"
README = ROOT / "README.md"
ANSWER = re.compile(r"(?<=<!-- answer of the demo -->\n```\n).*?(?=```\n<!-- end -->)", re.DOTALL)
HEADINGS = {
    READ: "Read in public text",
    DERIVED: "Derived: exact, checked numerically",
    MEMORY: "From memory, to be confirmed",
}


def sources_page() -> str:
    """The page as text."""
    parts = ["# Sources\n\nGenerated from `sources.toml` by `make docs`. A key in square brackets points here.\n"]
    for trust, heading in HEADINGS.items():
        parts.append(f"\n## {heading}\n\n")
        parts += [_entry(source) for source in all_sources().values() if source.trust == trust]
    return "".join(parts)


def _entry(source: Source) -> str:
    return f"- **[{source.key}]** {source.title}; {source.edition}; {source.year}. Read: {source.how}.\n"


GUIDE_TOP = """# The process guide

Generated from the tables of the guide by `make docs`. {count} processes: what is given off, the hood to try first, what
to mind, what is refused, and how often the extraction is examined. Every statement is in our own words and ends in its
source; [common-practice] marks what the trade knows without one. Release classes and rows of transport velocity are our
reading.

- `hoodwright guide` searches and sorts it; `hoodwright guide "artificial nails"` shows one process.
- `hoodwright new my-table.yaml --process "artificial nails"` writes a workplace file to start from.
- A source may name its `process`: the answer then carries the guide's cautions.
- Of every process: {order}.
- Of every examination: {elsewhere}.
- {us}.
"""


def guide_page() -> str:
    """The process guide as text, by trade."""
    order, us, elsewhere = map(_said, ("always.order", "examination.us", "examination.elsewhere"))
    parts = [GUIDE_TOP.format(count=len(guide_entries()), order=order, us=us, elsewhere=elsewhere)]
    trade = ""
    for found in sorted_entries("trade"):
        if found.trade != trade:
            trade = found.trade
            parts.append(f"\n## {trade[0].upper()}{trade[1:]}\n")
        parts.append(_process(found))
    return "".join(parts)


def _process(found: GuideEntry) -> str:
    sentence = in_a_sentence(found).replace("\u2009", " ")
    lines = [f"\n**{sentence.replace(':', '**:', 1)}\n"]
    named = (("Why", (*found.why_hazards, *found.why_hoods)), ("Mind", found.cautions), ("Refused", found.refusals))
    for name, statements in named:
        lines += [f"- {name}: {_said(one.key)}." for one in statements]
    lines += [f"- {one.text}; {one.condition} [{one.citation}]." for one in found.intervals]
    return "\n".join(lines) + "\n"


def _said(key: str) -> str:
    one = statement(key)
    return f"{one.said} [{one.citation}]"


FIRST_TABLE = re.compile(r".*?^Hood .*?(?=^$)", re.DOTALL | re.MULTILINE)


def demo_answer() -> str:
    """What the command line prints for the demo workplace, up to the table of flows."""
    with tempfile.TemporaryDirectory() as folder:
        words = [sys.executable, "-m", "hoodwright.cli", "demo", "--no-page", "--folder", "hoodwright-demo"]
        environment = {"PYTHONIOENCODING": "utf-8", "PYTHONUTF8": "1"}
        done = subprocess.run(words, cwd=folder, env=environment, capture_output=True, check=True)
    told = done.stdout.decode("utf-8").replace("\r\n", "\n")
    top = FIRST_TABLE.match(told)
    assert top is not None, "the answer has no table of flows"
    return "\n".join(line.rstrip() for line in top.group().splitlines()) + "\n"


def readme() -> str:
    """The README with the answer as the program gives it now."""
    return ANSWER.sub(lambda _: demo_answer(), README.read_text(encoding="utf-8"))


if __name__ == "__main__":
    PAGE.write_text(sources_page(), encoding="utf-8")
    GUIDE.write_text(guide_page(), encoding="utf-8")
    README.write_text(readme(), encoding="utf-8")
