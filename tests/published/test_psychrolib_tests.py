"""[psychrolib-tests]: values its authors computed in a spreadsheet, at 95461 Pa (500 m)."""

import pytest

from hoodwright.air import (
    density,
    humidity_ratio_from_vapour_pressure,
    humidity_ratio_from_wet_bulb,
    specific_volume,
)

ZERO = 273.15
PRESSURE = 95461  # Pa
EXACT = 1e-9  # relative: same relations, same inputs, printed to 15 digits

# The spreadsheet takes the saturation pressure from the table, we from the formula: 300 ppm apart at most.
# The wet bulb multiplies this by the saturated over the found humidity ratio: 1.11 / (1 - 0.033) and 2.2.
# check rows: air.w.twb
WET_BULB = [(30, 25, 0.0192281274241096, 1.15), (-1, -5, 0.00120399819933844, 2.2)]
SATURATION = 300e-6


@pytest.mark.read
def test_humidity_ratio_from_vapour_pressure():
    found = humidity_ratio_from_vapour_pressure(3169.7, PRESSURE)
    assert found == pytest.approx(0.0213603998047487, rel=EXACT)


@pytest.mark.read
@pytest.mark.parametrize("celsius, wet_bulb, printed, gain", WET_BULB)
def test_humidity_ratio_from_wet_bulb(celsius, wet_bulb, printed, gain):
    found = humidity_ratio_from_wet_bulb(celsius + ZERO, wet_bulb + ZERO, PRESSURE)
    assert found == pytest.approx(printed, rel=gain * SATURATION)


@pytest.mark.read
def test_volume_of_moist_air():  # air.v.moist30
    assert specific_volume(30 + ZERO, PRESSURE, 0.02) == pytest.approx(0.940855374352943, rel=EXACT)


@pytest.mark.read
def test_density_of_moist_air():  # air.rho.moist30
    assert density(30 + ZERO, PRESSURE, 0.02) == pytest.approx(1.08411986348219, rel=EXACT)


def test_tolerance_sees_the_wrong_phase_on_the_wet_bulb():
    dry, wet, printed, gain = -1, -5, 0.00120399819933844, 2.2
    saturated = humidity_ratio_from_vapour_pressure(401.74, PRESSURE)
    over_water = ((2501 - 2.326 * wet) * saturated - 1.006 * (dry - wet)) / (2501 + 1.86 * dry - 4.186 * wet)
    assert abs(over_water / printed - 1) > gain * SATURATION


def test_density_tolerance_sees_the_water_left_out():
    assert abs(1 / 0.940855374352943 / 1.08411986348219 - 1) > EXACT
