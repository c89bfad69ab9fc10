"""[en1506], nominal diameters, read from an online copy of a duct quality manual."""

import numpy as np
import pytest

from hoodwright.ducts import standard_diameters

# check rows: duct.en1506
PREFERRED_MM = [63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250]
ADDITIONAL_MM = [150, 300, 355, 450, 560, 710, 900, 1120]
TOL = 0.5  # mm: half the last printed digit


@pytest.mark.read
def test_preferred_diameters():
    found = 1000 * standard_diameters(preferred_only=True)
    np.testing.assert_allclose(found, PREFERRED_MM, rtol=0, atol=TOL)


@pytest.mark.read
def test_all_diameters():
    found = 1000 * standard_diameters()
    np.testing.assert_allclose(found, sorted(PREFERRED_MM + ADDITIONAL_MM), rtol=0, atol=TOL)


def test_tolerance_tells_sizes_apart():
    assert min(np.diff(sorted(PREFERRED_MM + ADDITIONAL_MM))) > 10 * TOL
