"""[cal-5152], tables V-1 to V-5: what the federal tables say, and where they end."""

import pytest

from hoodwright.hoods import belt_flow, disc_flow, disc_outlets, wheel_flow
from hoodwright.tables import load_table

INCH, CFM = 0.0254, 0.3048**3 / 60
TOL = 1e-6  # cfm: a table is copied; only the rounding of unit factors
V1 = [(9, 1.5, 220), (16, 2, 390), (19, 3, 500), (24, 4, 610), (30, 5, 880), (36, 6, 1200)]
V2 = [(9, 2, 300), (16, 3, 500), (19, 4, 610), (24, 5, 740), (30, 6, 1040), (36, 6, 1200)]
V3 = [(12, 220, 610), (19, 390, 610), (25, 610, 880), (30, 610, 1200), (53, 880, 1770), (72, 880, 6280)]
V4 = [(20, 1, 500, 2, 780), (30, 2, 780, 2, 1480), (53, 2, 1770, 4, 3530), (72, 2, 3140, 5, 6010)]
V5 = [(3, 220), (5, 300), (7, 390), (9, 500)]


@pytest.mark.read
@pytest.mark.parametrize(("name", "rows"), [("wheel_grinding", V1), ("wheel_buffing", V2)])
def test_wheels_are_those_of_the_federal_table(name, rows):
    columns = load_table(name).columns
    assert list(zip(columns["diameter_to_in"], columns["width_in"], columns["flow_cfm"], strict=True)) == rows


@pytest.mark.read
def test_example_of_a_wider_wheel():
    assert wheel_flow("cutting off", 20 * INCH, 4.5 * INCH) / CFM == pytest.approx(686, rel=0, abs=0.5)


@pytest.mark.read
@pytest.mark.parametrize(("diameter", "single", "double"), V3)
def test_level_spindles(diameter, single, double):
    assert disc_flow("single-spindle disc", diameter * INCH) / CFM == pytest.approx(single, rel=0, abs=TOL)
    assert disc_flow("double-spindle disc", diameter * INCH) / CFM == pytest.approx(double, rel=0, abs=TOL)


@pytest.mark.read
@pytest.mark.parametrize(("diameter", "few", "covered", "many", "bare"), V4)
def test_upright_spindle(diameter, few, covered, many, bare):
    for kind, outlets, printed in (("covered", few, covered), ("open", many, bare)):
        name = f"{kind} vertical-spindle disc"
        assert disc_flow(name, diameter * INCH) / CFM == pytest.approx(printed, rel=0, abs=TOL)
        assert disc_outlets(name, diameter * INCH) == outlets


@pytest.mark.read
@pytest.mark.parametrize(("width", "printed"), V5)
def test_belts(width, printed):
    assert belt_flow(width * INCH) / CFM == pytest.approx(printed, rel=0, abs=TOL)
    assert belt_flow((width - 1.9) * INCH) / CFM == pytest.approx(printed, rel=0, abs=TOL)
