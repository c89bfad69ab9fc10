"""The duct schedule as a table for machines (CSV, SI) and as a workbook for people (XLSX, millimetres)."""

import csv
import io
from collections.abc import Callable, Iterable
from datetime import datetime
from typing import Any

from hoodwright.tasks.as_built.schedule import DuctSchedule, ScheduleRow, ScheduleSum

CSV_HEADINGS = (
    *("name", "from", "to", "shape", "width_m", "height_m", "material", "length_m", "fittings"),
    *("thickness_m", "sheet_m2", "weight_kg", "note"),
)
FIXED = datetime(2026, 1, 1)  # the same schedule gives the same bytes
MM = 1000.0
FORMULA_STARTS = ("=", "+", "-", "@")

Cell = str | float | int | None
DUCTS: tuple[tuple[str, int, Callable[[ScheduleRow], Cell]], ...] = (
    ("Duct", 14, lambda row: row.name),
    ("From", 18, lambda row: row.start),
    ("To", 18, lambda row: row.to),
    ("Shape", 12, lambda row: row.shape),
    ("Size (mm)", 12, lambda row: row.size),
    ("Material", 14, lambda row: row.material),
    ("Length (m)", 11, lambda row: row.length),
    ("Fittings", 44, lambda row: "; ".join(row.fittings)),
    ("Sheet thickness (mm)", 12, lambda row: None if row.thickness is None else MM * row.thickness),
    ("Sheet (m²)", 11, lambda row: row.sheet),
    ("Weight (kg)", 11, lambda row: row.weight),
    ("Note", 40, lambda row: row.note),
)
SUMS: tuple[tuple[str, int, Callable[[ScheduleSum], Cell]], ...] = (
    ("Shape", 12, lambda one: one.shape),
    ("Size (mm)", 12, lambda one: one.size),
    ("Material", 14, lambda one: one.material),
    ("Ducts", 8, lambda one: one.ducts),
    ("Length (m)", 11, lambda one: one.length),
    ("Sheet (m²)", 11, lambda one: one.sheet),
    ("Weight (kg)", 11, lambda one: one.weight),
    ("Fittings", 60, lambda one: "; ".join(f"{count} x {words}" for words, count in one.fittings.items())),
)


def schedule_csv(schedule: DuctSchedule) -> str:
    """One row per duct, SI. A text that a spreadsheet would take for a formula gets an apostrophe before it."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(CSV_HEADINGS)
    for row in schedule.rows:
        width, height = (*row.sides, row.sides[0])[:2]
        cells: list[Cell] = [row.name, row.start, row.to, row.shape, width, height, row.material, row.length]
        cells += ["; ".join(row.fittings), row.thickness, row.sheet, row.weight, row.note]
        writer.writerow([_plain(cell) for cell in cells])
    return out.getvalue()


def _plain(cell: Cell) -> str:
    if cell is None:
        return ""
    if isinstance(cell, str):
        return f"'{cell}" if cell.startswith(FORMULA_STARTS) else cell
    return f"{cell:.6g}"


def schedule_xlsx(schedule: DuctSchedule) -> bytes:
    """A workbook: every duct, the sums by size, and what the numbers count."""
    import xlsxwriter

    out = io.BytesIO()
    options = {"in_memory": True, "strings_to_formulas": False, "strings_to_urls": False, "strings_to_numbers": False}
    with xlsxwriter.Workbook(out, options) as book:
        book.set_properties({"title": f"Duct schedule, {schedule.workplace}", "created": FIXED})
        style = _Styles(book)
        _table(book.add_worksheet("Ducts"), DUCTS, schedule.rows, style, _totals(schedule, 6, 9, 10))
        _table(book.add_worksheet("By size"), SUMS, schedule.sums, style, _totals(schedule, 4, 5, 6))
        notes = book.add_worksheet("Notes")
        notes.set_column(0, 0, 120)
        head = f"Duct schedule of {schedule.workplace}, hoodwright {schedule.version}"
        weighed = f"The weight is that of {schedule.weighed} of {len(schedule.rows)} ducts."
        for line, text in enumerate((head, *schedule.notes, weighed)):
            notes.write_string(line, 0, text, style.wrapped)
    return out.getvalue()


class _Styles:
    """How cells look."""

    def __init__(self, book: Any):
        self.head = book.add_format({"bold": True, "text_wrap": True, "bottom": 1, "valign": "top"})
        self.number = book.add_format({"num_format": "0.00", "valign": "top"})
        self.whole = book.add_format({"num_format": "0", "valign": "top"})
        self.wrapped = book.add_format({"text_wrap": True, "valign": "top"})
        self.total = book.add_format({"bold": True, "num_format": "0.00", "top": 1})


def _totals(schedule: DuctSchedule, length: int, sheet: int, weight: int) -> dict[int, float]:
    return {length: schedule.length, sheet: schedule.sheet, weight: schedule.weight}


def _table(sheet: Any, columns: Iterable, rows: Iterable, style: _Styles, totals: dict[int, float]) -> None:
    """Headings, one line per row, and the totals under them; headings stay in sight and on every printed page."""
    last = 0
    for x, (heading, width, value) in enumerate(columns):
        sheet.set_column(x, x, width)
        sheet.write_string(0, x, heading, style.head)
        for y, row in enumerate(rows, start=1):
            _write(sheet, y, x, value(row), style)
            last = y
    sheet.write_string(last + 1, 0, "Total", style.total)
    for x, total in totals.items():
        sheet.write_number(last + 1, x, total, style.total)
    sheet.freeze_panes(1, 1)
    sheet.repeat_rows(0)
    sheet.set_landscape()
    sheet.fit_to_pages(1, 0)


def _write(sheet: Any, y: int, x: int, cell: Cell, style: _Styles) -> None:
    """A text is always written as text, whatever it begins with."""
    if isinstance(cell, str):
        sheet.write_string(y, x, cell, style.wrapped)
    elif isinstance(cell, int):
        sheet.write_number(y, x, cell, style.whole)
    elif cell is not None:
        sheet.write_number(y, x, cell, style.number)
