"""Read a workplace file: text to model, with every fault of the file reported together."""

from pathlib import Path as FilePath

from pydantic import ValidationError

from hoodwright.errors import Fault, WorkplaceError
from hoodwright.workplace.check import check_air, check_geometry, check_references
from hoodwright.workplace.check_room import check_openings
from hoodwright.workplace.check_states import check_scenarios
from hoodwright.workplace.migrate import migrate
from hoodwright.workplace.model import Workplace
from hoodwright.workplace.say import say_fault
from hoodwright.workplace.tree import Tree, read_tree


def read_workplace(path: str | FilePath) -> Workplace:
    """Read and check a workplace file; WorkplaceError carries all faults."""
    return parse_workplace(read_text(path), file=str(path))


def read_text(path: str | FilePath) -> str:
    """Text of a file as it stands, line ends kept."""
    try:
        raw = FilePath(path).read_bytes()
    except OSError as error:
        reason = (error.strerror or "cannot be opened").lower()
        raise WorkplaceError(
            [Fault(0, 0, "file", f"{reason}; check the path and your rights to it", str(path))]
        ) from None
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw[: error.start].count(b"\n") + 1
        column = error.start - raw.rfind(b"\n", 0, error.start)
        message = f"byte {raw[error.start]:#04x} is not UTF-8 text; save the file as UTF-8"
        raise WorkplaceError([Fault(line, column, "file", message, str(path))]) from None


def parse_workplace(text: str, file: str = "workplace") -> Workplace:
    """Read and check the text of a workplace file; WorkplaceError carries all faults."""
    tree = read_tree(text)
    workplace, faults = _check(tree)
    if faults or workplace is None:
        raise WorkplaceError([Fault(f.line, f.column, f.field, f.message, file) for f in faults])
    return workplace


def _check(tree: Tree) -> tuple[Workplace | None, list[Fault]]:
    faults = list(tree.faults)
    if tree.data is None and faults:
        return None, faults
    if not isinstance(tree.data, dict):
        got = "an empty file" if tree.data is None else "no keys on the first level"
        faults.append(Fault(1, 1, "file", f"{got}; begin with 'hoodwright: 1', or run 'hoodwright new' for a starter"))
        return None, faults
    data, version_fault = migrate(tree.data)
    if version_fault:
        return None, [*faults, tree.fault(("hoodwright",), version_fault)]
    workplace, field_faults = _validate(data, tree)
    faults += field_faults
    faults += check_references(data, tree) + check_scenarios(data, tree)
    whole = workplace or _sound_rest(data)
    if whole is not None:
        faults += check_geometry(whole, data, tree) + check_air(whole.air, tree) + check_openings(whole, data, tree)
    return workplace, faults


def _validate(data: dict, tree: Tree) -> tuple[Workplace | None, list[Fault]]:
    try:
        return Workplace.model_validate(data), []
    except ValidationError as error:
        return None, [say_fault(detail, data, tree) for detail in error.errors(include_url=False)]


def _sound_rest(data: dict) -> Workplace | None:
    """The workplace without its faulty parts, so that the rest can still be checked; None if too little is left."""
    for _ in range(3):
        try:
            return Workplace.model_validate(data)
        except ValidationError as error:
            data = _without(data, {tuple(detail["loc"][:2]) for detail in error.errors(include_url=False)})
    return None


def _without(data: dict, bad: set[tuple]) -> dict:
    kept = {}
    for key, value in data.items():
        if isinstance(value, list):
            kept[key] = [item for i, item in enumerate(value) if (key, i) not in bad]
        elif not any(loc and loc[0] == key for loc in bad):
            kept[key] = value
    return kept
