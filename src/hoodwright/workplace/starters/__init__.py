"""Workplace files that come with hoodwright: the demonstration, and a commented start."""

from importlib.resources import files
from pathlib import Path

from hoodwright.errors import InputError


def starter_text(name: str) -> str:
    """Text of a starter: "demo" or "starter"."""
    return files(__name__).joinpath(f"{name}.yaml").read_text(encoding="utf-8")


def write_starter(name: str, file: Path) -> None:
    """Write a starter to a file that does not exist yet."""
    write_new(starter_text(name), file)


def write_new(text: str, file: Path) -> None:
    """Write a text to a file that does not exist yet."""
    if file.exists():
        raise InputError(f"{file} exists already; nothing was written: choose another name")
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, encoding="utf-8")
    except OSError as error:
        raise InputError(f"{file}: {(error.strerror or 'cannot be written').lower()}; choose another place") from None
