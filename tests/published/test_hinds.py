"""[hinds], from memory: stopping distance by Stokes' drag."""

import pytest

from hoodwright.particles import relaxation_time, stokes_stopping_distance


@pytest.mark.memory
def test_stopping_distance_of_100_microns_by_stokes():  # pa.stop
    found = stokes_stopping_distance(10.0, relaxation_time(100e-6, 1000.0, 1.81e-5))
    assert found == pytest.approx(0.3069, rel=0, abs=0.00005)
