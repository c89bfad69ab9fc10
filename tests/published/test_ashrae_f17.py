"""[ashrae-f17]: printed values, quoted by the PsychroLib test suite; to be re-read from the page."""

import pytest

from hoodwright.air import (
    humidity_ratio_from_dew_point,
    humidity_ratio_from_wet_bulb,
    relative_humidity_from_humidity_ratio,
    saturation_pressure,
    specific_volume,
    standard_pressure,
)

ZERO = 273.15  # K at 0 degrees Celsius
ONE_ATMOSPHERE = 101325  # Pa

# Table 3, degrees Celsius and Pa, with half the last printed digit.
# check rows: air.pws.5, air.pws.25, air.pws.100
SATURATION = [
    (-60, 1.08, 0.005),
    (-20, 103.24, 0.005),
    (-5, 401.74, 0.005),
    (5, 872.6, 0.05),
    (25, 3169.7, 0.05),
    (50, 12351.3, 0.05),
    (100, 101418.0, 0.5),
    (150, 476101.4, 0.05),
]
STATED_SATURATION = 300e-6  # relative: the chapter's own statement on equations 5 and 6


@pytest.mark.read
@pytest.mark.parametrize("celsius, printed, half_digit", SATURATION)
def test_saturation_pressure_of_table_3(celsius, printed, half_digit):
    tolerance = STATED_SATURATION * printed + half_digit
    assert saturation_pressure(celsius + ZERO) == pytest.approx(printed, rel=0, abs=tolerance)


# Table 2, degrees Celsius and kg/kg at 101325 Pa. For the ideal gas the chapter states 0.7 %, from -50 to 50
# degrees (that statement from memory).
# check rows: air.ws.5, air.ws.25
HUMIDITY_RATIO = [
    (-50, 0.0000243, 5e-8),
    (-20, 0.0006373, 5e-8),
    (-5, 0.0024863, 5e-8),
    (5, 0.005425, 5e-7),
    (25, 0.020173, 5e-7),
    (50, 0.086863, 5e-7),
    pytest.param(
        *(85, 0.838105, 5e-7),
        marks=pytest.mark.xfail(reason="ideal gas: 1.2 % low at 85 degrees; the 0.7 % is stated up to 50"),
    ),
]
STATED_IDEAL_GAS = 0.007
TOL_VOLUME = 0.00005 + 0.0004 * 0.8443  # m3/kg: half digit, and compressibility 0.9996 of real air (from memory)


@pytest.mark.read
@pytest.mark.parametrize("celsius, printed, half_digit", HUMIDITY_RATIO)
def test_saturation_humidity_ratio_of_table_2(celsius, printed, half_digit):
    tolerance = STATED_IDEAL_GAS * printed + half_digit
    found = humidity_ratio_from_dew_point(celsius + ZERO, ONE_ATMOSPHERE)
    assert found == pytest.approx(printed, rel=0, abs=tolerance)


@pytest.mark.read
def test_volume_of_dry_air_of_table_2():  # air.v.dry25
    assert specific_volume(25 + ZERO, ONE_ATMOSPHERE) == pytest.approx(0.8443, rel=0, abs=TOL_VOLUME)


# Table 1, metres and Pa, printed to 1 Pa; the altitude is exact.
# check rows: air.patm.-500, air.patm.0, air.patm.500, air.patm.1000
PRESSURE = [(-500, 107478), (0, 101325), (500, 95461), (1000, 89875), (4000, 61640), (10000, 26436)]
HALF_PASCAL = 0.5


@pytest.mark.read
@pytest.mark.parametrize("altitude, printed", PRESSURE)
def test_standard_pressure_of_table_1(altitude, printed):
    assert standard_pressure(altitude) == pytest.approx(printed, rel=0, abs=HALF_PASCAL)


# Example 1: 40 degrees, wet bulb 20 degrees, 101325 Pa, read off the chart in the handbook.
def _example_1():
    return humidity_ratio_from_wet_bulb(40 + ZERO, 20 + ZERO, ONE_ATMOSPHERE)


@pytest.mark.read
@pytest.mark.xfail(reason="the chart reading is 0.0065, equation 33 gives 0.0064: 1.5 % apart")
def test_humidity_ratio_of_example_1():
    assert _example_1() == pytest.approx(0.0065, rel=0, abs=0.00005)


@pytest.mark.read
def test_relative_humidity_of_example_1():
    found = relative_humidity_from_humidity_ratio(40 + ZERO, _example_1(), ONE_ATMOSPHERE)
    assert found == pytest.approx(0.14, rel=0, abs=0.005)


@pytest.mark.read
def test_volume_of_example_1():
    found = specific_volume(40 + ZERO, ONE_ATMOSPHERE, _example_1())
    assert found == pytest.approx(0.896, rel=0, abs=0.0005)


def test_tolerance_sees_a_tenth_of_a_degree_in_saturation():
    assert abs(saturation_pressure(25.1 + ZERO) / 3169.7 - 1) > 10 * STATED_SATURATION


def test_tolerance_sees_a_quarter_of_a_degree_in_the_humidity_ratio():
    found = humidity_ratio_from_dew_point(25.25 + ZERO, ONE_ATMOSPHERE)
    assert abs(found / 0.020173 - 1) > STATED_IDEAL_GAS


def test_tolerance_sees_a_quarter_of_a_degree_in_the_volume():
    assert abs(specific_volume(25.25 + ZERO, ONE_ATMOSPHERE) - 0.8443) > TOL_VOLUME


def test_tolerance_sees_a_wrong_exponent_in_the_altitude_formula():
    wrong = [abs(101325 * (1 - 2.25577e-5 * z) ** 5.256 - p) for z, p in PRESSURE]
    assert sum(error > HALF_PASCAL for error in wrong) == 2
