"""[mccaffrey79], velocity on the axis of the plume above a 0.30 m square gas burner, NBSIR 79-1910, figure 1.

Plotted points as digitised by NIST (public validation data, McCaffrey plume); the region above the flames only,
z / Q^0.4 > 0.2. Columns: point, heat [kW], z / Q^0.4 [m/kW^0.4], V / Q^0.2 [m/s/kW^0.2]. The accuracy of the probe is
not stated, so no tolerance follows from it: the spread is stated instead. Height is from the burner.
"""

import statistics

import pytest

from hoodwright.hoods import buoyancy_flux, heskestad_1984_axis_velocity, rouse_1952_axis_velocity

AIR, DENSITY = 293.15, 1.2
RADIANT = {57.5: 0.27, 44.9: 0.27, 21.7: 0.21, 14.4: 0.17}  # share of the heat, by the same repository

ROWS = [
    ("v55.14", 57.5, 0.216, 1.81),
    ("v55.15", 57.5, 0.245, 1.661),
    ("v44.22", 44.9, 0.208, 1.922),
    ("v44.23", 44.9, 0.231, 1.817),
    ("v44.24", 44.9, 0.238, 1.828),
    ("v22.29", 21.7, 0.21, 1.85),
    ("v22.30", 21.7, 0.231, 1.74),
    ("v22.32", 21.7, 0.274, 1.638),
    ("v22.33", 21.7, 0.287, 1.711),
    ("v22.34", 21.7, 0.298, 1.661),
    ("v22.35", 21.7, 0.32, 1.618),
    ("v22.36", 21.7, 0.338, 1.662),
    ("v22.37", 21.7, 0.362, 1.594),
    ("v22.38", 21.7, 0.376, 1.589),
    ("v22.56", 21.7, 0.211, 1.769),
    ("v22.57", 21.7, 0.216, 1.862),
    ("v14.20", 14.4, 0.26, 1.735),
    ("v14.21", 14.4, 0.253, 1.774),
    ("v14.22", 14.4, 0.244, 1.779),
    ("v14.23", 14.4, 0.277, 1.75),
    ("v14.24", 14.4, 0.283, 1.658),
    ("v14.26", 14.4, 0.312, 1.635),
    ("v14.28", 14.4, 0.371, 1.529),
    ("v14.29", 14.4, 0.385, 1.534),
    ("v14.32", 14.4, 0.411, 1.429),
    ("v14.33", 14.4, 0.425, 1.414),
    ("v14.34", 14.4, 0.483, 1.439),
    ("v14.36", 14.4, 0.507, 1.374),
    ("v14.37", 14.4, 0.52, 1.346),
    ("v14.38", 14.4, 0.536, 1.353),
]
# What the equations give over what was measured: mean and standard deviation, found once and stated.
HESKESTAD = (0.865, 0.027)
ROUSE = (1.196, 0.037)
TOL_MEAN, TOL_SPREAD = 0.001, 0.001  # they are stated to the last digit
FITTED, TOL_FIT = 1.12, 0.10  # line through the points, as NIST prints it; all points lie within 10 %


def told(equation, kilowatts, scaled):
    buoyancy = buoyancy_flux(1000 * kilowatts * (1 - RADIANT[kilowatts]), AIR, DENSITY)
    return equation(buoyancy, scaled * kilowatts**0.4) / kilowatts**0.2


@pytest.mark.read
@pytest.mark.parametrize("kilowatts, scaled, measured", [pytest.param(*row[1:], id=row[0]) for row in ROWS])
def test_measured_velocity_lies_between_the_two_equations(kilowatts, scaled, measured):
    """Heskestad's equation is low in every row, that of Rouse, Yih and Humphreys high."""
    low, high = (told(law, kilowatts, scaled) for law in (heskestad_1984_axis_velocity, rouse_1952_axis_velocity))
    assert low < measured < high


@pytest.mark.derived
@pytest.mark.parametrize(
    "equation, stated", [(heskestad_1984_axis_velocity, HESKESTAD), (rouse_1952_axis_velocity, ROUSE)]
)
def test_bias_and_scatter(equation, stated):
    ratios = [told(equation, kilowatts, scaled) / measured for _, kilowatts, scaled, measured in ROWS]
    assert statistics.mean(ratios) == pytest.approx(stated[0], rel=0, abs=TOL_MEAN)
    assert statistics.stdev(ratios) == pytest.approx(stated[1], rel=0, abs=TOL_SPREAD)


@pytest.mark.derived
def test_height_enters_to_the_power_of_minus_one_third():
    """The line fitted to the points, 1.12 (z / Q^0.4)^(-1/3), holds for all of them."""
    assert all(FITTED * scaled ** (-1 / 3) == pytest.approx(v, rel=TOL_FIT) for _, _, scaled, v in ROWS)


def test_tolerances_see_another_exponent():
    middle = 0.3
    wrong = [FITTED * middle ** (-1 / 3) * (scaled / middle) ** (-1.0) / v for _, _, scaled, v in ROWS]
    assert max(wrong) / min(wrong) > (1 + TOL_FIT) / (1 - TOL_FIT)
