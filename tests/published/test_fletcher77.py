"""[fletcher77]: formula from memory, only the abstract was read. These checks prove typing, not truth."""

import pytest

from hoodwright.hoods import fletcher_1977_plain

TOL = 0.00005  # half the last digit

# check rows: flet.0.1.0.2x0.2, flet.0.2.0.2x0.2, flet.0.2.0.05x0.8
SHARES = [(0.1, 0.2, 0.2, 0.3252), (0.2, 0.2, 0.2, 0.1052), (0.2, 0.8, 0.05, 0.0371)]


@pytest.mark.memory
@pytest.mark.parametrize("distance, long_side, short_side, share", SHARES)
def test_share_of_the_face_velocity(distance, long_side, short_side, share):
    found = fletcher_1977_plain(distance, long_side, short_side) * long_side * short_side
    assert found == pytest.approx(share, rel=0, abs=TOL)


def test_tolerance_sees_the_sides_swapped_in_the_exponent():
    z = 0.2 / (0.8 * 0.05) ** 0.5
    swapped = z * (0.05 / 0.8) ** (0.2 * z ** (-1 / 3))
    assert abs(1 / (0.93 + 8.58 * swapped**2) - 0.0371) > TOL
