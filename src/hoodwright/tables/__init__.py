"""Published tables, one CSV each, read and checked on loading.

Comment lines on top (`# name: text`) must name source, table, read_by, date, form and licence.
Column headings end in their printed unit; values stay as printed and are converted by the caller.
"""

import csv
import math
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from itertools import pairwise

import numpy as np

from hoodwright.errors import InputError, RangeError
from hoodwright.sources import find_source

__all__ = ["NOTES", "Table", "interpolate", "load_table", "table_names"]

NOTES = ("source", "table", "read_by", "date", "form", "licence")


@dataclass(frozen=True)
class Table:
    """One published table: its notes, and its columns as tuples of floats or words."""

    name: str
    notes: dict[str, str]
    columns: dict[str, tuple]

    @property
    def citation(self) -> str:
        """Source key and table, as docstrings and results quote them."""
        return f"{self.notes['source']}, {self.notes['table']}"

    def row(self, column: str, value) -> dict:
        """The one row whose `column` holds `value`."""
        try:
            index = self.columns[column].index(value)
        except ValueError:
            allowed = ", ".join(str(v) for v in self.columns[column])
            raise InputError(f"{column} {value!r} is not in table {self.name}; it has: {allowed}") from None
        return {heading: values[index] for heading, values in self.columns.items()}


def table_names() -> list[str]:
    """Names of all tables that come with hoodwright."""
    folder = files("hoodwright.tables")
    return sorted(entry.name[:-4] for entry in folder.iterdir() if entry.name.endswith(".csv"))


@cache
def load_table(name: str) -> Table:
    """Read one table and check its notes, headings, gaps and axis."""
    if name not in table_names():
        raise InputError(f"no table is named {name!r}; there is: {', '.join(table_names())}")
    return parse_table(name, files("hoodwright.tables").joinpath(f"{name}.csv").read_text(encoding="utf-8"))


def parse_table(name: str, text: str) -> Table:
    """The checks of `load_table`, on text."""
    lines = text.splitlines()
    notes = dict(_note(name, line) for line in lines if line.startswith("#"))
    missing = [note for note in NOTES if not notes.get(note)]
    if missing:
        raise InputError(f"table {name}: notes missing on top: {', '.join(missing)}")
    find_source(notes["source"])
    rows = [[cell.strip() for cell in row] for row in csv.reader(_rows(lines))]
    if len(rows) < 2:
        raise InputError(f"table {name}: no rows; a heading and at least one row are needed")
    headings, body = rows[0], rows[1:]
    if len(set(headings)) < len(headings):
        raise InputError(f"table {name}: a heading stands twice; give each column its own")
    for number, row in enumerate(body, start=1):
        if len(row) != len(headings) or not all(row):
            raise InputError(f"table {name}, row {number}: a gap; every row needs {len(headings)} values")
    columns = {heading: _column(name, heading, [row[i] for row in body]) for i, heading in enumerate(headings)}
    if notes.get("axis"):
        _check_axis(name, notes["axis"], columns)
    return Table(name, notes, columns)


def _note(name: str, line: str) -> tuple[str, str]:
    key, colon, value = line.lstrip("# ").partition(":")
    if not colon:
        raise InputError(f"table {name}: comment {line!r} is not of the form '# note: text'")
    return key.strip(), value.strip()


def _rows(lines: list[str]) -> list[str]:
    return [line for line in lines if line.strip() and not line.startswith("#")]


def _column(name: str, heading: str, cells: list[str]) -> tuple:
    """Numbers where all cells are numbers, words where none is; a mixture is a slip of the pen."""
    numbers = [number for number in map(_number, cells) if number is not None]
    if len(numbers) == len(cells):
        return tuple(numbers)
    if numbers:
        raise InputError(f"table {name}, column {heading}: numbers and words mixed; mend the cell")
    return tuple(cells)


def _number(cell: str) -> float | None:
    try:
        number = float(cell)
    except ValueError:
        return None
    return None if math.isnan(number) else number


def _check_axis(name: str, axis: str, columns: dict[str, tuple]) -> None:
    values = columns.get(axis)
    if values is None or not all(isinstance(v, float) for v in values):
        raise InputError(f"table {name}: axis {axis!r} is not a column of numbers")
    if any(b <= a for a, b in pairwise(values)):
        raise InputError(f"table {name}: axis {axis!r} does not rise from row to row")


def interpolate(table: Table, x_column: str, y_column: str, x):
    """Value between the rows by straight lines; never beyond the ends (RangeError)."""
    axis, values = table.columns[x_column], table.columns[y_column]
    x = np.asarray(x, dtype=float)
    if np.any((x < axis[0]) | (x > axis[-1]) | np.isnan(x)):
        raise RangeError(
            f"{x_column} {x} is outside {axis[0]:g} to {axis[-1]:g}, the rows of [{table.citation}]; "
            "choose a value inside"
        )
    found = np.interp(x, axis, values)
    return float(found) if found.ndim == 0 else found
