"""[garrison83]: fits for round nozzles, from memory of their coefficients. These checks prove typing, not truth."""

import math

import pytest

from hoodwright.hoods import garrison_1983_flanged, garrison_1983_plain

DIAMETER = 0.3
AREA = math.pi / 4 * DIAMETER**2
TOL = 0.00005  # half the last digit

# ids of our list of check values: garr.plain.0.25, garr.plain.1.0, garr.fl.0.25, garr.fl.1.0
SHARES = [
    (garrison_1983_plain, 0.25, 0.5444),
    (garrison_1983_plain, 1.0, 0.08),
    (garrison_1983_flanged, 0.25, 0.5658),
    (garrison_1983_flanged, 1.0, 0.1),
]


@pytest.mark.memory
@pytest.mark.parametrize("law, diameters, share", SHARES)
def test_share_of_the_face_velocity(law, diameters, share):
    assert law(diameters * DIAMETER, DIAMETER) * AREA == pytest.approx(share, rel=0, abs=TOL)


def test_tolerance_tells_the_two_nozzles_apart():
    plain, flanged = (law(0.25 * DIAMETER, DIAMETER) * AREA for law in (garrison_1983_plain, garrison_1983_flanged))
    assert abs(plain - flanged) > 100 * TOL


@pytest.mark.parametrize("law, step", [(garrison_1983_plain, 0.04), (garrison_1983_flanged, 0.05)])
def test_the_two_pieces_do_not_quite_meet(law, step):
    """The step at half a diameter is the source's own; it stays visible."""
    near, far = (law(DIAMETER * z, DIAMETER) for z in (0.5, 0.5 + 1e-9))
    assert 0.005 < abs(far / near - 1) < step
