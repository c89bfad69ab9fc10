"""Write what the docs repeat from the program: docs/sources.md, and the answer shown in the README.

A test fails when either is stale.
"""

import re
import subprocess
import sys
import tempfile
from pathlib import Path

from hoodwright.sources import DERIVED, MEMORY, READ, Source, all_sources

ROOT = Path(__file__).parents[1]
PAGE = ROOT / "docs" / "sources.md"
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


def demo_answer() -> str:
    """What the command line prints for the demo workplace."""
    with tempfile.TemporaryDirectory() as folder:
        words = [sys.executable, "-m", "hoodwright.cli", "demo", "--no-page", "--folder", "hoodwright-demo"]
        environment = {"PYTHONIOENCODING": "utf-8", "PYTHONUTF8": "1"}
        done = subprocess.run(words, cwd=folder, env=environment, capture_output=True, check=True)
    return done.stdout.decode("utf-8").replace("\r\n", "\n")


def readme() -> str:
    """The README with the answer as the program gives it now."""
    return ANSWER.sub(lambda _: demo_answer(), README.read_text(encoding="utf-8"))


if __name__ == "__main__":
    PAGE.write_text(sources_page(), encoding="utf-8")
    README.write_text(readme(), encoding="utf-8")
