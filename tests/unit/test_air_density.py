import numpy as np
import psychrolib
import pytest

from hoodwright.air import density, specific_volume
from hoodwright.errors import RangeError

ONE_ATMOSPHERE = 101325.0


@pytest.mark.parametrize("function", [density, specific_volume])
def test_scalar_array_and_empty_array(function):
    scalar = function(293.15, ONE_ATMOSPHERE, 0.01)
    assert isinstance(scalar, float)
    for shape in ((3,), (2, 1), (0,)):
        found = function(np.full(shape, 293.15), ONE_ATMOSPHERE, 0.01)
        assert found.shape == shape
        assert np.all(found == scalar)


def test_temperature_and_humidity_broadcast():
    assert density(np.array([[280.0], [300.0]]), ONE_ATMOSPHERE, np.array([0.0, 0.01, 0.02])).shape == (2, 3)


@pytest.mark.parametrize("celsius, ratio", [(-20, 0.0005), (20, 0.0), (30, 0.02), (90, 0.5)])
def test_beside_psychrolib(celsius, ratio):
    psychrolib.SetUnitSystem(psychrolib.SI)
    expected = psychrolib.GetMoistAirDensity(celsius, ratio, 95000.0)
    assert density(celsius + 273.15, 95000.0, ratio) == pytest.approx(expected, rel=1e-6)


def test_saturated_air_at_60_degrees_is_lighter_than_dry_air():
    moist, dry = density(333.15, ONE_ATMOSPHERE, 0.1534), density(333.15, ONE_ATMOSPHERE)
    assert (moist, dry) == (pytest.approx(0.98, abs=0.005), pytest.approx(1.06, abs=0.005))


@pytest.mark.parametrize(
    "arguments, text",
    [
        (
            (21.0, ONE_ATMOSPHERE),
            "temperature 21 K is below 150 K, the limit for air as an ideal gas; give kelvin",
        ),
        ((2500.0, ONE_ATMOSPHERE), "temperature 2500 K is above 2000 K"),
        (
            (293.15, 101.3),
            r"absolute pressure 101\.3 Pa is below 10000 Pa, .*; give absolute pascals, not gauge",
        ),
        ((293.15, 2e6), r"absolute pressure 2e\+06 Pa is above 1e\+06 Pa"),
        (
            (293.15, ONE_ATMOSPHERE, -0.01),
            r"humidity ratio -0\.01 kg/kg is below 0 kg/kg; give kg of water per kg",
        ),
    ],
)
def test_what_is_refused_and_in_which_words(arguments, text):
    with pytest.raises(RangeError, match=text):
        density(*arguments)
