"""[gun-extraction18]: capture velocity before an on-torch hood, measured at three distances with 34.06 scfm.

The abstract gives no size of the opening. Far from any opening the velocity falls as the square of the distance; the
three printed values fall far more slowly. They are kept as what on-torch extraction was found to do, not as a law.
"""

import pytest

from hoodwright.hoods import form_flow_range

CFM, FPM = 0.3048**3 / 60, 0.00508
FLOW_TOL = 0.005  # cfm: half the last digit

# ids cap.gun.v2, cap.gun.v4, cap.gun.v6; cap.gun.eff is 77.73 % at 2 cm
VELOCITY = [(0.02, 140), (0.04, 100), (0.06, 60)]
SPHERE = "published values do not follow any law of a point: they fall with the distance, not with its square"


@pytest.mark.read
def test_flow_of_the_torch_is_that_of_the_test():
    low, _ = form_flow_range("on-torch", 1e-3, 0.05)
    assert low / CFM == pytest.approx(34.06, rel=0, abs=FLOW_TOL)


@pytest.mark.read
@pytest.mark.xfail(reason=SPHERE, strict=True)
@pytest.mark.parametrize("distance, fpm", VELOCITY[1:])
def test_velocity_falls_as_the_square_of_the_distance(distance, fpm):
    assert 140 * (0.02 / distance) ** 2 == pytest.approx(fpm, rel=0, abs=5)
