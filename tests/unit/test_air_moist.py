"""Water in air. PsychroLib, by other hands, is the second witness."""

import numpy as np
import psychrolib
import pytest

from hoodwright.air import (
    humidity_ratio_from_dew_point,
    humidity_ratio_from_relative_humidity,
    humidity_ratio_from_vapour_pressure,
    humidity_ratio_from_wet_bulb,
    relative_humidity_from_humidity_ratio,
    saturation_pressure,
    vapour_pressure_from_humidity_ratio,
)
from hoodwright.errors import RangeError

ZERO, ONE_ATMOSPHERE = 273.15, 101325.0
CALLS = [
    (saturation_pressure, (293.15,)),
    (humidity_ratio_from_vapour_pressure, (1200.0, ONE_ATMOSPHERE)),
    (vapour_pressure_from_humidity_ratio, (0.008, ONE_ATMOSPHERE)),
    (humidity_ratio_from_relative_humidity, (293.15, 0.5, ONE_ATMOSPHERE)),
    (humidity_ratio_from_dew_point, (283.15, ONE_ATMOSPHERE)),
    (humidity_ratio_from_wet_bulb, (293.15, 287.15, ONE_ATMOSPHERE)),
    (relative_humidity_from_humidity_ratio, (293.15, 0.008, ONE_ATMOSPHERE)),
]


@pytest.fixture(autouse=True)
def psychrolib_in_si():
    psychrolib.SetUnitSystem(psychrolib.SI)


@pytest.mark.parametrize("function, arguments", CALLS)
def test_scalar_array_and_empty_array(function, arguments):
    scalar = function(*arguments)
    assert isinstance(scalar, float)
    for shape in ((3,), (2, 1), (0,)):
        found = function(np.full(shape, arguments[0]), *arguments[1:])
        assert found.shape == shape
        assert np.all(found == scalar)


@pytest.mark.parametrize("celsius", [-100, -40, -5, 0, 5, 25, 60, 120, 200])
def test_saturation_pressure_beside_psychrolib(celsius):
    assert saturation_pressure(celsius + ZERO) == pytest.approx(psychrolib.GetSatVapPres(celsius), rel=1e-12)


@pytest.mark.parametrize("celsius, wet_bulb", [(30, 25), (40, 15), (5, 0.5), (-1, -5), (5, -1)])
def test_wet_bulb_beside_psychrolib(celsius, wet_bulb):
    found = humidity_ratio_from_wet_bulb(celsius + ZERO, wet_bulb + ZERO, 95000.0)
    assert found == pytest.approx(psychrolib.GetHumRatioFromTWetBulb(celsius, wet_bulb, 95000.0), rel=1e-9)


def test_relative_humidity_and_dew_point_beside_psychrolib():
    ratio = humidity_ratio_from_relative_humidity(25 + ZERO, 0.6, 90000.0)
    assert ratio == pytest.approx(psychrolib.GetHumRatioFromRelHum(25, 0.6, 90000.0), rel=1e-12)
    dew_point = psychrolib.GetTDewPointFromHumRatio(25, ratio, 90000.0)
    assert humidity_ratio_from_dew_point(dew_point + ZERO, 90000.0) == pytest.approx(ratio, rel=1e-5)


def test_ice_and_water_meet_at_the_triple_point():
    below, above = saturation_pressure(np.array([273.16, 273.16 + 1e-9]))
    assert above == pytest.approx(below, rel=1e-7)


def test_air_at_its_wet_bulb_is_saturated():
    ratio = humidity_ratio_from_wet_bulb(298.15, 298.15, ONE_ATMOSPHERE)
    assert relative_humidity_from_humidity_ratio(298.15, ratio, ONE_ATMOSPHERE) == pytest.approx(1)


REFUSED = [
    (
        saturation_pressure,
        (21.0,),
        r"temperature 21 K is below 173\.15 K, the limit of \[ashrae-f17, .*; give kelvin",
    ),
    (saturation_pressure, (500.0,), r"temperature 500 K is above 473\.15 K, the limit of \[ashrae-f17"),
    (saturation_pressure, (float("nan"),), "temperature nan is not a finite number; give a number"),
    (
        humidity_ratio_from_relative_humidity,
        (293.15, 45, ONE_ATMOSPHERE),
        "relative humidity 45 is above 1; give a fraction from 0 to 1, not per cent",
    ),
    (
        humidity_ratio_from_dew_point,
        (383.15, ONE_ATMOSPHERE),
        "vapour pressure .* Pa is not below 101325 Pa, the pressure of the air: water would boil; check temp",
    ),
    (humidity_ratio_from_vapour_pressure, (-5, ONE_ATMOSPHERE), "vapour pressure -5 Pa is below 0 Pa; check"),
    (
        humidity_ratio_from_vapour_pressure,
        (1200, -500),
        "absolute pressure -500 Pa is below 10000 Pa, .*; give absolute pascals, not gauge",
    ),
    (
        humidity_ratio_from_wet_bulb,
        (293.15, 295.15, ONE_ATMOSPHERE),
        r"wet bulb 295\.15 K is above 293\.15 K, the dry bulb; check the two readings",
    ),
    (
        humidity_ratio_from_wet_bulb,
        (313.15, 283.15, ONE_ATMOSPHERE),
        "humidity ratio -0.00.* is below 0: no air is this dry; check the wet-bulb reading",
    ),
    (
        vapour_pressure_from_humidity_ratio,
        (-0.1, ONE_ATMOSPHERE),
        r"humidity ratio -0\.1 kg/kg is below 0 kg/kg; give",
    ),
    (
        relative_humidity_from_humidity_ratio,
        (283.15, 0.02, ONE_ATMOSPHERE),
        "relative humidity 2.5.* is above 1: water would condense; check temperature and humidity ratio",
    ),
]


@pytest.mark.parametrize("function, arguments, text", REFUSED)
def test_what_is_refused_and_in_which_words(function, arguments, text):
    with pytest.raises(RangeError, match=text):
        function(*arguments)


def test_the_first_value_outside_is_named():
    with pytest.raises(RangeError, match="temperature 600 K is above"):
        saturation_pressure([300.0, 600.0, 700.0])
