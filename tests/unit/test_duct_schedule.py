"""The duct schedule: sheet and weight by hand, and what a spreadsheet and a machine read of it."""

import csv
import io
import json
import math
from pathlib import Path

import numpy as np
import openpyxl
import pytest

from hoodwright.ducts import sheet_density, sheet_thickness, sheet_weight
from hoodwright.errors import RangeError
from hoodwright.reports.duct_schedule import schedule_csv, schedule_xlsx
from hoodwright.tasks.as_built.schedule import NO_SHEET, TOO_WIDE, schedule_as_json, schedule_of
from hoodwright.workplace import parse_workplace

ODD = "=HYPERLINK(1)"
DUCTS = """
ducts:
  - {name: "=HYPERLINK(1)", from: bench nozzle, to: J1, round: 200 mm, length: 4 m,
     fittings: [{elbow: 90 deg, radius: 1.5}, {loss: 0.3, name: silencer}]}
  - {name: hose, from: table hood, to: J1, round: 100 mm, length: 2 m, material: flexible, joins_at: 30 deg}
  - {name: flat, from: J1, to: roof fan, rectangle: [400 mm, 300 mm], length: 5 m,
     fittings: [{elbow: 90 deg, mitred: true}]}
  - {name: stack, from: roof fan, to: outside, round: 1.6 m, length: 3 m}

fans:
  - {name: roof fan}
"""


@pytest.fixture(scope="module")
def schedule():
    shop = (Path(__file__).parents[1] / "two-hoods.yaml").read_text(encoding="utf-8")
    return schedule_of(parse_workplace(shop.split("\nducts:")[0] + DUCTS))


def row(schedule, name):
    return next(row for row in schedule.rows if row.name == name)


def test_sheet_of_a_round_duct_and_its_elbow(schedule):
    # 4 m of 200 mm, and a quarter circle of radius 300 mm: pi 0.2 (4 + pi/2 0.3); 0.8 mm steel weighs 6.28 kg/m2
    found = row(schedule, ODD)
    sheet = math.pi * 0.2 * (4 + math.pi / 2 * 0.3)
    assert found.sheet == pytest.approx(sheet)
    assert found.thickness == pytest.approx(0.8e-3)
    assert found.weight == pytest.approx(6.28 * sheet)


def test_fittings_in_words(schedule):
    assert row(schedule, ODD).fittings == ("elbow 90 deg, smooth, radius 1.5", "silencer")
    assert row(schedule, "hose").fittings == ("branch entry 30 deg",)


def test_sheet_of_a_rectangular_duct_with_a_mitred_elbow(schedule):
    # 1.4 m round; a mitred right angle is as long on its centre line as it is wide
    found = row(schedule, "flat")
    assert found.sheet == pytest.approx(1.4 * (5 + 0.4))
    assert (found.size, found.shape) == ("400 x 300", "rectangular")
    assert found.weight == pytest.approx(1.4 * 5.4 * 1.0e-3 * 7850)


def test_what_is_no_sheet_has_no_weight(schedule):
    hose = row(schedule, "hose")
    assert (hose.sheet, hose.thickness, hose.weight, hose.note) == (None, None, None, NO_SHEET)


def test_what_is_wider_than_the_table_has_no_weight(schedule):
    stack = row(schedule, "stack")
    assert stack.sheet == pytest.approx(math.pi * 1.6 * 3)
    assert (stack.thickness, stack.weight, stack.note) == (None, None, TOO_WIDE)


def test_sums(schedule):
    assert schedule.length == pytest.approx(14.0)
    assert schedule.weighed == 2
    assert schedule.weight == pytest.approx(row(schedule, ODD).weight + row(schedule, "flat").weight)
    assert sum(one.length for one in schedule.sums) == pytest.approx(schedule.length)
    assert sum(one.ducts for one in schedule.sums) == 4
    assert sum(one.weight for one in schedule.sums) == pytest.approx(schedule.weight)


class TestWorkbook:
    """What openpyxl reads of it."""

    @pytest.fixture
    def book(self, schedule):
        return openpyxl.load_workbook(io.BytesIO(schedule_xlsx(schedule)))

    def test_sheets(self, book):
        assert book.sheetnames == ["Ducts", "By size", "Notes"]

    def test_text_that_begins_like_a_formula_is_text(self, book):
        cell = book["Ducts"]["A2"]
        assert (cell.value, cell.data_type) == (ODD, "s")

    def test_numbers_are_numbers(self, book, schedule):
        cells = {cell.value: cell.column for cell in book["Ducts"][1]}
        flat = next(line for line in book["Ducts"].iter_rows() if line[0].value == "flat")
        assert flat[cells["Length (m)"] - 1].value == 5
        assert flat[cells["Sheet thickness (mm)"] - 1].value == pytest.approx(1.0)
        assert flat[cells["Weight (kg)"] - 1].value == pytest.approx(row(schedule, "flat").weight)

    def test_what_is_not_known_is_empty(self, book):
        hose = next(line for line in book["Ducts"].iter_rows(values_only=True) if line[0] == "hose")
        assert hose[8:11] == (None, None, None)

    def test_totals_stand_under_the_ducts(self, book, schedule):
        last = list(book["Ducts"].iter_rows(values_only=True))[-1]
        assert last[0] == "Total"
        assert last[6] == pytest.approx(schedule.length)
        assert last[10] == pytest.approx(schedule.weight)

    def test_notes_say_what_is_common_practice(self, book):
        words = " ".join(line[0] for line in book["Notes"].iter_rows(values_only=True))
        assert "common practice" in words
        assert "The weight is that of 2 of 4 ducts." in words

    def test_the_same_schedule_gives_the_same_bytes(self, schedule):
        assert schedule_xlsx(schedule) == schedule_xlsx(schedule)


def test_csv_in_si(schedule):
    lines = list(csv.DictReader(io.StringIO(schedule_csv(schedule))))
    assert [line["name"] for line in lines] == [f"'{ODD}", "hose", "flat", "stack"]
    assert (lines[2]["width_m"], lines[2]["height_m"], lines[2]["length_m"]) == ("0.4", "0.3", "5")
    assert lines[1]["weight_kg"] == ""


def test_json_in_si(schedule):
    told = json.loads(json.dumps(schedule_as_json(schedule)))
    assert told["ducts"][2]["sides_m"] == [0.4, 0.3]
    assert told["weight_kg"] == pytest.approx(schedule.weight)
    assert told["source"] == "common-practice"


class TestSheet:
    """Thickness and weight of sheet."""

    def test_each_row_holds_up_to_its_size(self):
        assert sheet_thickness([0.1, 0.2, 0.201, 0.45, 1.5]) == pytest.approx([0.8e-3, 0.8e-3, 1e-3, 1e-3, 2e-3])
        assert sheet_thickness(0.3) == pytest.approx(1e-3)
        assert sheet_thickness(np.array([])).shape == (0,)

    def test_wider_than_the_table(self):
        words = r"size of a duct 1600 mm is above 1500 mm, the last row of .*; ask the maker"
        with pytest.raises(RangeError, match=words):
            sheet_thickness(1.6)

    def test_a_square_metre_of_a_millimetre_of_steel(self):
        assert sheet_weight(1.0, 1e-3) == pytest.approx(7.85)
        assert sheet_weight([1.0, 2.0], 1e-3, 7900.0) == pytest.approx([7.9, 15.8])
        assert sheet_weight(np.array([]), 1e-3).shape == (0,)

    def test_no_negative_area(self):
        with pytest.raises(RangeError, match="area -1 m2"):
            sheet_weight(-1.0, 1e-3)

    def test_hoses_have_no_sheet(self):
        assert sheet_density("flexible") is None
        assert sheet_density("stainless") == 7900.0
