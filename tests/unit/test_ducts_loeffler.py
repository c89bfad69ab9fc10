import numpy as np
import pytest

from hoodwright.ducts import friction_factor, loeffler_1980, reynolds_number
from hoodwright.errors import InputError, RangeError


def test_fit_is_near_colebrook_at_the_usual_sizes():
    """Standard air, galvanised duct of 0.15 mm, 100 to 500 mm at 15 to 25 m/s: within 8 %, as seen here."""
    d, v = np.meshgrid([0.1, 0.2, 0.3, 0.5], [15.0, 20.0, 25.0])
    colebrook = friction_factor(reynolds_number(v, d, 1.2, 1.81e-5), 0.15e-3 / d) / d
    fit = loeffler_1980(v, v * np.pi * d**2 / 4, "galvanised")
    np.testing.assert_allclose(fit, colebrook, rtol=0.08)


def test_black_iron_loses_less_than_galvanised():
    assert loeffler_1980(20.0, 0.7, "black iron") < loeffler_1980(20.0, 0.7, "galvanised")


def test_bad_input_is_refused():
    with pytest.raises(RangeError, match=r"^velocity 0 m/s is not above 0 m/s"):
        loeffler_1980(0.0, 0.7, "galvanised")
    with pytest.raises(RangeError, match=r"^flow -1 m3/s is not above 0 m3/s"):
        loeffler_1980(20.0, -1.0, "galvanised")
    with pytest.raises(InputError, match=r"^material 'tin' is not in table friction_fit_loeffler; it has: galvanised"):
        loeffler_1980(20.0, 0.7, "tin")
