"""[patty63]: chapter on ventilation, figure 19."""

import pytest

from hoodwright.air import velocity_pressure
from hoodwright.hoods import entry_loss_coefficient, hood_suction

TOL = 0.05  # velocity pressures: half the last printed digit
SHARP_ENTRANCE = 0.9


@pytest.mark.read
def test_hood_suction_behind_a_sharp_entrance():  # hl.patty.sharp
    assert entry_loss_coefficient("sharp edge by older text") == SHARP_ENTRANCE
    suction = hood_suction(0.5, 0.05, SHARP_ENTRANCE, 1.2)
    assert suction / velocity_pressure(0.5 / 0.05, 1.2) == pytest.approx(1.9, rel=0, abs=TOL)


def test_tolerance_sees_the_acceleration_left_out():
    assert abs(SHARP_ENTRANCE - 1.9) > TOL
