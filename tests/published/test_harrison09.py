"""[harrison09], mass flow of plumes that spill from an opening: what a hood above must take.

Harrison, University of Canterbury, as published by NIST (firemodels/exp at 39d8b735). Ethanol fire in a box of
1.0 x 1.0 x 0.5 m, opening 0.5 m high, air of 20 degC. Balcony runs rise free on both sides, adhered runs cling to the
wall above the opening. Columns: run, width of the opening [m], nominal heat [kW], height above the edge [m], mass flow
[kg/s]. Runs 5 to 8, 11 to 13, 15, 17, 18 and 20: width and heat by the pattern of the series.
"""

import statistics

import pytest

from hoodwright.hoods import spill_edge_flow, spill_plume_flow

OPENING = 0.5  # m high
TOL = 0.10  # of the measured flow: one standard deviation, as NIST states it

EDGE = [
    ("SE4", 0.6, 5, 0.061),
    ("SE8", 0.2, 10, 0.054),
    ("SE9", 0.2, 15, 0.057),
    ("SE10", 1.0, 5, 0.077),
    ("SE11", 1.0, 10, 0.102),
    ("SE14", 0.6, 10, 0.069),
    ("SE15", 0.6, 15, 0.081),
    ("SE19", 1.0, 5, 0.071),
    ("SE20", 1.0, 10, 0.096),
    ("SE21", 1.0, 15, 0.108),
]
BALCONY = [
    ("SE4-p3", 0.6, 5, 0.3, 0.130),
    ("SE4-p5", 0.6, 5, 0.5, 0.176),
    ("SE4-p7", 0.6, 5, 0.73, 0.230),
    ("SE4-p9", 0.6, 5, 0.95, 0.279),
    ("SE5-p3", 0.6, 10, 0.3, 0.169),
    ("SE5-p5", 0.6, 10, 0.5, 0.231),
    ("SE5-p7", 0.6, 10, 0.73, 0.300),
    ("SE6-p3", 0.6, 15, 0.3, 0.199),
    ("SE6-p5", 0.6, 15, 0.5, 0.267),
    ("SE6-p7", 0.6, 15, 0.73, 0.345),
    ("SE6-p9", 0.6, 15, 0.95, 0.429),
    ("SE7-p3", 0.2, 5, 0.3, 0.077),
    ("SE7-p5", 0.2, 5, 0.5, 0.106),
    ("SE7-p7", 0.2, 5, 0.73, 0.145),
    ("SE8-p5", 0.2, 10, 0.5, 0.152),
    ("SE8-p9", 0.2, 10, 0.95, 0.270),
    ("SE9-p3", 0.2, 15, 0.3, 0.121),
    ("SE9-p5", 0.2, 15, 0.5, 0.166),
    ("SE9-p7", 0.2, 15, 0.73, 0.225),
    ("SE9-p9", 0.2, 15, 0.95, 0.288),
    ("SE10-p5", 1.0, 5, 0.5, 0.227),
    ("SE10-p7", 1.0, 5, 0.73, 0.288),
    ("SE11-p3", 1.0, 10, 0.3, 0.223),
    ("SE11-p7", 1.0, 10, 0.73, 0.381),
    ("SE12-p3", 1.0, 15, 0.3, 0.254),
    ("SE12-p5", 1.0, 15, 0.5, 0.342),
    ("SE12-p7", 1.0, 15, 0.73, 0.434),
]
ADHERED = [
    ("SE13-p5", 0.6, 5, 0.5, 0.118),
    ("SE13-p7", 0.6, 5, 0.73, 0.147),
    ("SE14-p3", 0.6, 10, 0.3, 0.128),
    ("SE14-p5", 0.6, 10, 0.5, 0.168),
    ("SE14-p7", 0.6, 10, 0.73, 0.217),
    ("SE14-p9", 0.6, 10, 0.95, 0.269),
    ("SE15-p5", 0.6, 15, 0.5, 0.196),
    ("SE15-p7", 0.6, 15, 0.73, 0.251),
    ("SE15-p9", 0.6, 15, 0.95, 0.327),
    ("SE16-p5", 0.2, 5, 0.5, 0.089),
    ("SE16-p7", 0.2, 5, 0.73, 0.127),
    ("SE17-p5", 0.2, 10, 0.5, 0.126),
    ("SE17-p9", 0.2, 10, 0.95, 0.248),
    ("SE18-p3", 0.2, 15, 0.3, 0.100),
    ("SE18-p7", 0.2, 15, 0.73, 0.213),
    ("SE18-p9", 0.2, 15, 0.95, 0.289),
    ("SE19-p5", 1.0, 5, 0.5, 0.181),
    ("SE19-p9", 1.0, 5, 0.95, 0.256),
    ("SE20-p3", 1.0, 10, 0.3, 0.179),
    ("SE20-p5", 1.0, 10, 0.5, 0.232),
    ("SE20-p7", 1.0, 10, 0.73, 0.288),
    ("SE20-p9", 1.0, 10, 0.95, 0.335),
    ("SE21-p7", 1.0, 15, 0.73, 0.323),
    ("SE21-p9", 1.0, 15, 0.95, 0.375),
]
EDGE_MISSED = {
    "SE4": "measured 11 % more",
    "SE8": "an opening taller than wide: measured 63 % more",
    "SE9": "an opening taller than wide: measured 50 % more",
}
BALCONY_MISSED = {
    "SE4-p9": "measured 12 % less",
    "SE8-p5": "measured 13 % more",
    "SE9-p3": "measured 20 % more",
    "SE10-p7": "measured 12 % less",
}
# Equation over measurement: mean and standard deviation, found once and stated.
FREE, CLINGING = (1.007, 0.073), (1.335, 0.197)
TOL_STATED = 0.001


def edge(width, kilowatts):
    return spill_edge_flow(1000 * kilowatts, width, OPENING)


def told(width, kilowatts, height):
    return spill_plume_flow(1000 * kilowatts, width, height, edge(width, kilowatts))


def runs(rows, missed):
    for name, *values in rows:
        marks = [pytest.mark.xfail(strict=True, reason=missed[name])] if name in missed else []
        yield pytest.param(*values, id=name, marks=[pytest.mark.read, *marks])


@pytest.mark.parametrize("width, kilowatts, measured", list(runs(EDGE, EDGE_MISSED)))
def test_flow_at_the_edge(width, kilowatts, measured):
    assert edge(width, kilowatts) == pytest.approx(measured, rel=TOL)


@pytest.mark.parametrize("width, kilowatts, height, measured", list(runs(BALCONY, BALCONY_MISSED)))
def test_free_plume(width, kilowatts, height, measured):
    assert told(width, kilowatts, height) == pytest.approx(measured, rel=TOL)


@pytest.mark.read
@pytest.mark.parametrize("width, kilowatts, height, measured", [pytest.param(*r[1:], id=r[0]) for r in ADHERED])
def test_a_plume_that_clings_to_a_wall_carries_no_more_than_a_free_one(width, kilowatts, height, measured):
    assert measured < told(width, kilowatts, height) < 1.75 * measured


@pytest.mark.derived
@pytest.mark.parametrize("rows, stated", [(BALCONY, FREE), (ADHERED, CLINGING)], ids=["free", "clinging"])
def test_bias_and_scatter(rows, stated):
    ratios = [told(width, kilowatts, height) / measured for _, width, kilowatts, height, measured in rows]
    assert statistics.mean(ratios) == pytest.approx(stated[0], rel=0, abs=TOL_STATED)
    assert statistics.stdev(ratios) == pytest.approx(stated[1], rel=0, abs=TOL_STATED)


def test_tolerance_sees_a_plume_without_ends():
    """Without the factor for air from the ends, most of the free rows are missed."""
    bare = [told(w, q, z) / (1 + 0.26 * z / w) ** (2 / 3) / m for _, w, q, z, m in BALCONY]
    assert sum(abs(ratio - 1) > TOL for ratio in bare) > len(bare) / 2
