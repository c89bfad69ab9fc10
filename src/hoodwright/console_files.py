"""Files that a command may write: a name that cannot be written is told before anything is computed."""

from pathlib import Path

from hoodwright.errors import InputError


def check_output(option: str, file: Path | None, endings: tuple[str, ...], example: str) -> None:
    """Refuse a wrong ending, and a folder that is not there."""
    if file is None:
        return
    if file.suffix.lower() not in endings:
        raise InputError(
            f"{option}: got {str(file)!r}; a name that ends in {' or '.join(endings)} is needed, for example {example}"
        )
    if not file.parent.is_dir():
        raise InputError(f"{option}: there is no folder {str(file.parent)!r}; make it, or choose another place")
