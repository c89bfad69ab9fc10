"""[us-1910-94], paragraph (b)(3): least flows of grinding, buffing and disc hoods, and duct velocities."""

from itertools import pairwise

import pytest

from hoodwright.hoods import (
    WHEEL_BRANCH_VELOCITY,
    WHEEL_MAIN_VELOCITY,
    disc_flow,
    entry_loss_coefficient,
    wheel_branch_diameter,
    wheel_flow,
    wheel_table_width,
)
from hoodwright.tables import load_table

INCH, CFM, FPM = 0.0254, 0.3048**3 / 60, 0.00508
TOL = 1e-6  # cfm, in: a table is copied; only the rounding of unit factors
# diameter and width in inches, cfm; rows grind.g4.* and buff.g5.*
# check rows: grind.g4.9, grind.g4.16, grind.g4.19, grind.g4.30, grind.g4.36
G4 = [(9, 1.5, 220), (16, 2, 390), (19, 3, 500), (24, 4, 610), (30, 5, 880), (36, 6, 1200)]
# check rows: buff.g5.9, buff.g5.16, buff.g5.24, buff.g5.30, buff.g5.36
G5 = [(9, 2, 300), (16, 3, 500), (19, 4, 610), (24, 5, 740), (30, 6, 1040), (36, 6, 1200)]
G6 = [(12, 220), (19, 390), (30, 610), (36, 880)]
G7 = [(19, 610), (25, 880), (30, 1200)]


@pytest.mark.read
@pytest.mark.parametrize(("diameter", "width", "printed"), G4)
def test_grinding_wheel(diameter, width, printed):
    assert wheel_flow("grinding", diameter * INCH, width * INCH) / CFM == pytest.approx(printed, rel=0, abs=TOL)
    assert wheel_table_width("grinding", diameter * INCH) / INCH == pytest.approx(width, rel=0, abs=TOL)


@pytest.mark.read
@pytest.mark.parametrize(("diameter", "width", "printed"), G5)
def test_buffing_wheel(diameter, width, printed):
    assert wheel_flow("buffing", diameter * INCH, width * INCH) / CFM == pytest.approx(printed, rel=0, abs=TOL)
    assert wheel_table_width("buffing", diameter * INCH) / INCH == pytest.approx(width, rel=0, abs=TOL)


@pytest.mark.read
@pytest.mark.parametrize(("diameter", "printed"), G6)
def test_single_spindle_disc(diameter, printed):
    assert disc_flow("single-spindle disc", diameter * INCH) / CFM == pytest.approx(printed, rel=0, abs=TOL)


@pytest.mark.read
@pytest.mark.parametrize(("diameter", "printed"), G7)
def test_double_spindle_disc(diameter, printed):
    assert disc_flow("double-spindle disc", diameter * INCH) / CFM == pytest.approx(printed, rel=0, abs=TOL)


@pytest.mark.read
def test_example_of_a_wider_wheel():  # 4.5 in wide where the table has 4: "686"
    assert wheel_flow("grinding", 24 * INCH, 4.5 * INCH) / CFM == pytest.approx(686, rel=0, abs=0.5)


@pytest.mark.read
def test_duct_velocities():  # grind.vmin
    branch, main = WHEEL_BRANCH_VELOCITY / FPM, WHEEL_MAIN_VELOCITY / FPM
    assert (branch, main) == pytest.approx((4500, 3500), rel=0, abs=TOL)


@pytest.mark.read
@pytest.mark.parametrize(("take_off", "printed"), [("straight", 0.65), ("tapered", 0.45)])
def test_entry_loss(take_off, printed):  # hl.Fh.grinding_reg; the handbook's figure has 0.40 for tapered
    assert entry_loss_coefficient(f"grinding {take_off} by regulation") == printed


@pytest.mark.derived
def test_branch_of_the_smallest_wheel():  # 220 cfm at 4500 fpm is 7.04 in2
    assert wheel_branch_diameter(220 * CFM) / INCH == pytest.approx(2.994, rel=0, abs=0.0005)


@pytest.mark.parametrize(
    ("name", "kind"),
    [("wheel_disc_level_us", "single-spindle disc"), ("wheel_disc_double_us", "double-spindle disc")],
)
def test_both_authorities_agree_where_both_speak(name, kind):
    columns = load_table(name).columns
    ours = [disc_flow(kind, diameter * INCH) / CFM for diameter in columns["diameter_to_in"]]
    assert ours == pytest.approx(list(columns["flow_cfm"]))


def test_tolerance_tells_the_rows_apart():
    for rows in (G4, G5):
        assert min(b[-1] - a[-1] for a, b in pairwise(rows)) > 1000 * TOL
