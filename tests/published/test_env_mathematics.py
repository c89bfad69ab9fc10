"""[env-mathematics]: two examples on hoods."""

import pytest

from hoodwright.air import velocity_from_pressure
from hoodwright.hoods import hood_suction

IN_WG, STANDARD_DENSITY = 249.089, 1.2
TOL_IN_WG = 0.005  # half the last printed digit


@pytest.mark.read
def test_entry_loss_of_a_laboratory_cupboard():
    p_velocity = 0.30 * IN_WG
    velocity = velocity_from_pressure(p_velocity, STANDARD_DENSITY)
    loss = hood_suction(velocity, 1.0, 2.0, STANDARD_DENSITY) - p_velocity
    assert loss / IN_WG == pytest.approx(0.60, rel=0, abs=TOL_IN_WG)


def test_tolerance_sees_the_acceleration_counted_as_a_loss():
    assert abs(0.30 * 3 - 0.60) > TOL_IN_WG
