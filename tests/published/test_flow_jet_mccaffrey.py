"""[mccaffrey79] against the plume of the computed air: speed on the axis above a 0.30 m square gas burner.

Rows as in test_mccaffrey79.py, where they are cited and counted. Convective heat only: heat less the radiant share.
Nothing is fitted: entrainment 0.085, heat 1.16 times as wide as speed, virtual origin 1.9 diameters below the face.
"""

import statistics

import numpy as np
import pytest

from analytic_air import still_air
from hoodwright.flow import follow, heat_plume
from published.test_mccaffrey79 import AIR, DENSITY, RADIANT, ROWS

TOL = 0.10  # told beforehand for this comparison; the accuracy of the probe is not stated
BURNER = 0.30**2
MISSED = {
    "v14.32": "computed 10.4 % fast: 1.2 m above the smallest fire",
    "v14.33": "computed 10.7 % fast: 1.2 m above the smallest fire",
    "v14.37": "computed 11.1 % fast: 1.5 m above the smallest fire",
}
BIAS, SCATTER = 1.027, 0.045  # computed over measured: mean and standard deviation, found once and stated
STILL = np.zeros(3)


def told(kilowatts, scaled):
    jet = heat_plume((0, 0, 0), BURNER, 1000 * kilowatts * (1 - RADIANT[kilowatts]), AIR, DENSITY)
    path = follow(still_air().arrays, STILL, jet)
    return np.interp(scaled * kilowatts**0.4, path.travelled, path.axis_speed) / kilowatts**0.2


def rows():
    for name, *values in ROWS:
        marks = [pytest.mark.xfail(strict=True, reason=MISSED[name])] if name in MISSED else []
        yield pytest.param(*values, id=name, marks=marks)


@pytest.mark.read
@pytest.mark.parametrize("kilowatts, scaled, measured", list(rows()))
def test_speed_on_the_axis(kilowatts, scaled, measured):
    assert told(kilowatts, scaled) == pytest.approx(measured, rel=TOL)


def test_bias_and_scatter():
    ratios = [told(kilowatts, scaled) / measured for _, kilowatts, scaled, measured in ROWS]
    assert statistics.mean(ratios) == pytest.approx(BIAS, abs=0.001)
    assert statistics.stdev(ratios) == pytest.approx(SCATTER, abs=0.001)


def test_tolerance_sees_the_heat_that_is_radiated():
    """Taking all the heat as convective makes the mean miss by more."""
    wrong = [told(q, z) / (1 - RADIANT[q]) ** (1 / 3) / v for _, q, z, v in ROWS]
    assert sum(abs(ratio - 1) > TOL for ratio in wrong) > len(wrong) / 2
