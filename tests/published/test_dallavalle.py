"""[dallavalle]: shares of the face velocity before a plain round opening, from memory of the formula."""

import math

import pytest

from hoodwright.hoods import dallavalle_plain

DIAMETER = 0.3
AREA = math.pi / 4 * DIAMETER**2
TOL = 0.00005  # half the last digit

# check rows: dv.plain.0.25, dv.plain.0.5, dv.plain.1.0
SHARES = [(0.25, 0.5569), (0.5, 0.2391), (1.0, 0.0728)]


@pytest.mark.memory
@pytest.mark.parametrize("diameters, share", SHARES)
def test_share_of_the_face_velocity(diameters, share):
    found = dallavalle_plain(diameters * DIAMETER, AREA) * AREA
    assert found == pytest.approx(share, rel=0, abs=TOL)


def test_tolerance_sees_the_sphere_in_place_of_ten():
    assert all(abs(AREA / (4 * math.pi * (d * DIAMETER) ** 2 + AREA) - v) > TOL for d, v in SHARES)
