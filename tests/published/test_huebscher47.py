"""[huebscher47], measured friction of galvanised sheet ducts, as published in an open repository.

R. G. Huebscher, Friction equivalents for round, square and rectangular ducts, Heating, Piping and Air
Conditioning 19(12), pp. 127-135; table in atrettel/sheardata at a6e99e8e, data under CC-BY-4.0.
Columns: run, hydraulic diameter [in], density [lb/ft3], mean velocity [fpm], Reynolds number,
measured loss [in wg per ft].
"""

import numpy as np
import pytest

from hoodwright.ducts import friction_factor, pressure_loss

INCH, FOOT, FPM, POUND_PER_FT3, INCH_WATER = 0.0254, 0.3048, 0.00508, 16.018463, 249.089

# One roughness for the 23 round and square runs together, found once: least squares of the relative
# error over 0 to 0.15 mm in steps of 0.0001 mm is smallest at its lower end. These ducts were smooth.
ROUGHNESS = 0.0
GALVANISED = 0.15e-3
TOL = 0.04  # of the measured loss: flow stated to 2 %, and loss goes as its square

ROUND = [
    ("round 2", 8.02, 0.0694, 9310, 5.89e5, 0.10110),
    ("round 3", 8.02, 0.0697, 7380, 4.69e5, 0.06530),
    ("round 9", 8.02, 0.0712, 749, 4.87e4, 0.00103),
    ("round 10", 8.02, 0.0720, 1310, 8.64e4, 0.00276),
]
SQUARE = [
    ("square 2", 7.88, 0.0715, 7670, 4.91e5, 0.07040),
    ("square 3", 7.88, 0.0720, 6530, 4.21e5, 0.05260),
    ("square 4", 7.88, 0.0717, 5420, 3.48e5, 0.03720),
    ("square 6", 7.88, 0.0718, 4060, 2.61e5, 0.02170),
    ("square 7", 7.88, 0.0708, 4540, 2.88e5, 0.02680),
    ("square 8", 7.88, 0.0714, 3470, 2.22e5, 0.01660),
    ("square 9", 7.88, 0.0706, 2370, 1.49e5, 0.00819),
    ("square 10", 7.88, 0.0708, 1790, 1.13e5, 0.00479),
    ("square 11", 7.88, 0.0698, 2260, 1.40e5, 0.00735),
    ("square 13", 7.88, 0.0710, 1320, 8.39e4, 0.00290),
    ("square 14", 7.88, 0.0692, 6720, 4.15e5, 0.05260),
    ("square 16", 7.88, 0.0692, 6270, 3.85e5, 0.04630),
    ("square 18", 7.88, 0.0694, 4300, 2.65e5, 0.02310),
    ("square 19", 7.88, 0.0697, 3090, 1.91e5, 0.01280),
    ("square 20", 7.88, 0.0694, 8540, 5.31e5, 0.08390),
    ("square 21", 7.88, 0.0694, 8350, 5.15e5, 0.08070),
    ("square 22", 7.88, 0.0696, 7670, 4.73e5, 0.06890),
    ("square 23", 7.88, 0.0696, 7720, 4.77e5, 0.07030),
    ("square 25", 7.88, 0.0701, 5870, 3.65e5, 0.04170),
]
FLAT = [  # 8 to 1
    ("rectangular 3", 7.87, 0.0693, 4070, 2.50e5, 0.022800),
    ("rectangular 5", 8.02, 0.0706, 1950, 1.25e5, 0.006020),
    ("rectangular 7", 7.94, 0.0698, 2200, 1.38e5, 0.007400),
    ("rectangular 8", 7.99, 0.0705, 1670, 1.06e5, 0.004580),
    ("rectangular 14", 8.03, 0.0688, 300, 1.86e4, 0.000222),
    ("rectangular 16", 7.97, 0.0704, 602, 3.83e4, 0.000739),
    ("rectangular 17", 8.00, 0.0706, 448, 2.87e4, 0.000429),
    ("rectangular 18", 8.03, 0.0708, 318, 2.05e4, 0.000238),
    ("rectangular 19", 8.03, 0.0710, 723, 4.67e4, 0.001050),
    ("rectangular 20", 7.98, 0.0707, 1230, 7.89e4, 0.002690),
    ("rectangular 22", 7.93, 0.0715, 2140, 1.38e5, 0.007390),
    ("rectangular 23", 8.00, 0.0722, 1646, 1.08e5, 0.004710),
    ("rectangular 24", 7.83, 0.0698, 7950, 4.91e5, 0.078500),
    ("rectangular 25", 7.95, 0.0695, 5330, 3.33e5, 0.037200),
]
MISSED = {
    "round 2": "measured 5.9 % above a smooth duct, at the highest velocity",
    "square 10": "measured 4.8 % below a smooth duct; the runs beside it are within 3 %",
}
FLAT_WITHIN = {"rectangular 7", "rectangular 17"}
FLAT_REASON = "at 8 to 1 the hydraulic diameter gives up to 9 % too little loss"


def predicted(diameter, density, velocity, reynolds, roughness=ROUGHNESS):
    d, rho, v = diameter * INCH, density * POUND_PER_FT3, velocity * FPM
    f = friction_factor(reynolds, roughness / d)
    return pressure_loss(f, FOOT, d, rho * v**2 / 2) / INCH_WATER


def runs(rows, missed):
    for name, *values in rows:
        marks = [pytest.mark.xfail(strict=True, reason=missed[name])] if name in missed else []
        yield pytest.param(*values, id=name, marks=[pytest.mark.read, *marks])


FLAT_MISSED = {name: FLAT_REASON for name, *_ in FLAT if name not in FLAT_WITHIN}


@pytest.mark.parametrize("diameter, density, velocity, reynolds, loss", list(runs(ROUND + SQUARE, MISSED)))
def test_loss_of_round_and_square_ducts(diameter, density, velocity, reynolds, loss):
    assert predicted(diameter, density, velocity, reynolds) == pytest.approx(loss, rel=TOL)


@pytest.mark.parametrize("diameter, density, velocity, reynolds, loss", list(runs(FLAT, FLAT_MISSED)))
def test_loss_of_flat_ducts(diameter, density, velocity, reynolds, loss):
    assert predicted(diameter, density, velocity, reynolds) == pytest.approx(loss, rel=TOL)


def test_tolerance_tells_a_galvanised_roughness_apart():
    for _, *values, loss in ROUND + SQUARE:
        assert predicted(*values, roughness=GALVANISED) > (1 + 2 * TOL) * loss


def test_flat_ducts_lose_more_than_their_hydraulic_diameter_says():
    shares = [loss / predicted(*values) for _, *values, loss in FLAT]
    assert min(shares) > 1.02 and max(shares) < 1.10


def test_one_roughness_fits_the_round_and_square_runs_best():
    tried = np.arange(0.0, 0.15e-3, 0.1e-6)
    errors = [predicted(*values, roughness=tried) / loss - 1 for _, *values, loss in ROUND + SQUARE]
    assert tried[np.argmin(np.sum(np.square(errors), axis=0))] == ROUGHNESS
