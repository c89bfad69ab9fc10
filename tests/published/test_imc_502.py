"""[imc-502], sections 502.7.3.3.1 and 502.7.3.3.2, read from an online copy."""

import pytest

from hoodwright.hoods import enclosure_flow, face_velocity_range
from hoodwright.tasks.cautions import BY_HAZARD

FPM, FOOT2 = 0.00508, 0.09290304
# check rows: spray.v
ROWS = [("spray booth", 100, 0.51), ("spray room", 100, 0.51), ("spray booth electrostatic", 50, 0.25)]
TOL_FPM = 0.5  # half the last printed digit
TOL_SI = 0.005  # m/s: half the last printed digit


@pytest.mark.read
@pytest.mark.parametrize("form, printed, _", ROWS)
def test_least_velocity_into_the_openings(form, printed, _):
    assert face_velocity_range(form)[0] / FPM == pytest.approx(printed, rel=0, abs=TOL_FPM)


@pytest.mark.read
@pytest.mark.parametrize("form, _, printed", ROWS)
def test_the_same_in_metres_a_second(form, _, printed):
    assert face_velocity_range(form)[0] == pytest.approx(printed, rel=0, abs=TOL_SI)


def test_tolerances_tell_the_rows_apart():
    assert 2 * TOL_FPM < 100 - 50 and 2 * TOL_SI < 0.51 - 0.25


def test_a_booth_of_ten_square_feet_takes_a_thousand_cfm():
    flow = enclosure_flow(10 * FOOT2, face_velocity_range("spray booth")[0])
    assert flow / (0.3048**3 / 60) == pytest.approx(1000, rel=1e-12)


@pytest.mark.read
def test_share_of_the_lower_limit_of_flammability():  # hc.lfl
    text, source = BY_HAZARD["flammable"]
    assert "below 25 %" in text and source.startswith("imc-502")
