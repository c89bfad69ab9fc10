"""[ufc-ventilation], section 6-3.2, page read online."""

import pytest

from hoodwright.hoods import face_velocity_range

FPM = 0.00508


@pytest.mark.read
@pytest.mark.parametrize("printed, unit, tol", [(500, FPM, 0.5), (2.54, 1.0, 0.005)])  # half the last printed digit
def test_inward_velocity_at_the_openings_of_a_blasting_cabinet(printed, unit, tol):
    assert face_velocity_range("blast cabinet")[0] / unit == pytest.approx(printed, rel=0, abs=tol)


def test_tolerance_tells_a_foot_of_30_cm():
    assert abs(500 * 0.30 / 60 - 2.54) > 0.005
