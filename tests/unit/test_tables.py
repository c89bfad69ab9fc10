"""Tables: what the loader refuses, how it interpolates, and that each shipped table names a source."""

import numpy as np
import pytest

from hoodwright.errors import InputError, RangeError
from hoodwright.sources import all_sources
from hoodwright.tables import NOTES, interpolate, load_table, parse_table, table_names

TOP = """\
# source: ashrae-f17
# table: ch. 1, table 1
# read_by: a test
# date: 2026-01-01
# form: printed
# licence: facts only
"""
BODY = "altitude_m,pressure_pa\n0,101325\n500,95461\n1000,89875\n"
GOOD = TOP + "# axis: altitude_m\n" + BODY


def refusal(text):
    with pytest.raises(InputError) as error:
        parse_table("air", text)
    return str(error.value)


def test_good_table():
    table = parse_table("air", GOOD)
    assert table.columns == {"altitude_m": (0, 500, 1000), "pressure_pa": (101325, 95461, 89875)}
    assert table.citation == "ashrae-f17, ch. 1, table 1"


def test_words_stay_words():
    table = parse_table("kinds", TOP + "kind, loss\nplain, 0.93\nflanged, 0.49\n")
    assert table.columns == {"kind": ("plain", "flanged"), "loss": (0.93, 0.49)}
    assert table.row("kind", "flanged") == {"kind": "flanged", "loss": 0.49}


def test_row_that_is_not_there():
    with pytest.raises(InputError) as error:
        parse_table("air", GOOD).row("altitude_m", 7.0)
    assert str(error.value) == "altitude_m 7.0 is not in table air; it has: 0.0, 500.0, 1000.0"


@pytest.mark.parametrize("note", NOTES)
def test_missing_note(note):
    text = "\n".join(line for line in GOOD.splitlines() if not line.startswith(f"# {note}:"))
    assert refusal(text) == f"table air: notes missing on top: {note}"


def test_empty_note():
    assert refusal(GOOD.replace("facts only", "")) == "table air: notes missing on top: licence"


def test_comment_that_is_no_note():
    assert refusal("# just words\n" + GOOD) == ("table air: comment '# just words' is not of the form '# note: text'")


def test_unknown_source():
    message = refusal(GOOD.replace("ashrae-f17", "nobody-99"))
    assert message == "citation 'nobody-99': no source 'nobody-99' in sources.toml; add it there"


@pytest.mark.parametrize("row", ["500,", "500", "500,95461,1", ",95461"])
def test_gap(row):
    message = refusal(GOOD.replace("500,95461", row))
    assert message == "table air, row 2: a gap; every row needs 2 values"


@pytest.mark.parametrize("altitude", ["0", "-1", "1000"])
def test_axis_that_does_not_rise(altitude):
    message = refusal(GOOD.replace("500,95461", f"{altitude},95461"))
    assert message == "table air: axis 'altitude_m' does not rise from row to row"


def test_axis_that_is_no_column_of_numbers():
    assert "is not a column of numbers" in refusal(GOOD.replace("axis: altitude_m", "axis: height"))


@pytest.mark.parametrize("cell", ["half", "nan"])
def test_numbers_and_words_mixed(cell):
    told = refusal(GOOD.replace("500,95461", f"{cell},95461"))
    assert told.endswith("column altitude_m: numbers and words mixed; mend the cell")


def test_notes_without_rows():
    notes = "\n".join(line for line in GOOD.splitlines() if line.startswith("#"))
    assert refusal(notes).endswith("no rows; a heading and at least one row are needed")
    assert refusal(f"{notes}\naltitude_m,pressure_pa").endswith("at least one row are needed")


def test_heading_given_twice():
    told = refusal(GOOD.replace("altitude_m,pressure_pa", "altitude_m,altitude_m"))
    assert told.endswith("a heading stands twice; give each column its own")


def test_unknown_table_lists_the_known_ones():
    with pytest.raises(InputError, match="no table is named 'elbows'; there is: branch_entry, "):
        load_table("elbows")


def test_interpolation_between_rows_and_at_both_ends():
    table = parse_table("air", GOOD)
    assert interpolate(table, "altitude_m", "pressure_pa", 0) == 101325
    assert interpolate(table, "altitude_m", "pressure_pa", 1000) == 89875
    assert interpolate(table, "altitude_m", "pressure_pa", 250) == (101325 + 95461) / 2


def test_interpolation_of_arrays():
    table = parse_table("air", GOOD)
    found = interpolate(table, "altitude_m", "pressure_pa", np.array([[0.0], [500.0]]))
    assert found.shape == (2, 1)
    assert interpolate(table, "altitude_m", "pressure_pa", np.array([])).size == 0


@pytest.mark.parametrize("altitude", [-0.001, 1000.001, float("nan")])
def test_no_interpolation_beyond_the_ends(altitude):
    with pytest.raises(RangeError) as error:
        interpolate(parse_table("air", GOOD), "altitude_m", "pressure_pa", altitude)
    assert str(error.value) == (
        f"altitude_m {altitude} is outside 0 to 1000, the rows of [ashrae-f17, ch. 1, table 1]; choose a value inside"
    )


def test_one_outside_value_refuses_the_array():
    with pytest.raises(RangeError):
        interpolate(parse_table("air", GOOD), "altitude_m", "pressure_pa", [10.0, 2000.0])


@pytest.mark.parametrize("name", table_names())
def test_every_shipped_table_loads_and_names_a_source(name):
    table = load_table(name)
    assert table.notes["source"].split(",")[0] in all_sources()
    assert all(len(column) > 0 for column in table.columns.values())
