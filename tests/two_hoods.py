"""The workplace that many tests change a word of: two capturing hoods on one fan, one of them too far away."""

from pathlib import Path

TWO_HOODS = (Path(__file__).parent / "two-hoods.yaml").read_text(encoding="utf-8")


def write_two_hoods(file: Path) -> None:
    """Write it to a file."""
    file.write_text(TWO_HOODS, encoding="utf-8")
