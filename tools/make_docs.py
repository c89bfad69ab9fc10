"""Write docs/sources.md from sources.toml; a test fails when it is stale."""

from pathlib import Path

from hoodwright.sources import DERIVED, MEMORY, READ, Source, all_sources

PAGE = Path(__file__).parents[1] / "docs" / "sources.md"
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


if __name__ == "__main__":
    PAGE.write_text(sources_page(), encoding="utf-8")
