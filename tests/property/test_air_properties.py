"""What must hold for any air."""

import numpy as np
from hypothesis import assume, given
from hypothesis import strategies as st
from pytest import approx

from hoodwright.air import (
    actual_flow,
    density,
    humidity_ratio_from_dew_point,
    humidity_ratio_from_relative_humidity,
    humidity_ratio_from_vapour_pressure,
    humidity_ratio_from_wet_bulb,
    relative_humidity_from_humidity_ratio,
    saturation_pressure,
    specific_volume,
    standard_flow,
    standard_pressure,
    total_pressure,
    vapour_pressure_from_humidity_ratio,
    velocity_from_pressure,
    velocity_pressure,
    viscosity,
)

rooms = st.floats(240, 330)  # K
pressures = st.floats(60e3, 110e3)  # Pa
ratios = st.floats(0, 0.5)
fractions = st.floats(0, 1)
velocities = st.floats(0, 60)
densities = st.floats(0.3, 2)


@given(st.floats(174, 472), st.floats(0.01, 1))
def test_saturation_pressure_rises_with_temperature(temperature, step):
    assert saturation_pressure(temperature + step) > saturation_pressure(temperature)


@given(rooms, fractions, pressures)
def test_relative_humidity_comes_back(temperature, relative_humidity, p_abs):
    ratio = humidity_ratio_from_relative_humidity(temperature, relative_humidity, p_abs)
    found = relative_humidity_from_humidity_ratio(temperature, ratio, p_abs)
    assert found == approx(relative_humidity, rel=1e-9, abs=1e-12)


@given(ratios, pressures)
def test_vapour_pressure_comes_back(ratio, p_abs):
    p_vapour = vapour_pressure_from_humidity_ratio(ratio, p_abs)
    assert humidity_ratio_from_vapour_pressure(p_vapour, p_abs) == approx(ratio, rel=1e-9, abs=1e-12)


@given(rooms, st.floats(0, 3), pressures)
def test_wet_bulb_never_tells_more_water_than_the_same_dew_point(wet_bulb, depression, p_abs):
    assume(not 273 < wet_bulb < 273.3)
    saturated = humidity_ratio_from_dew_point(wet_bulb, p_abs)
    assume(saturated > 0.0025)
    dry_bulb = wet_bulb + depression
    assert humidity_ratio_from_wet_bulb(dry_bulb, wet_bulb, p_abs) <= saturated * (1 + 1e-9)


@given(rooms, pressures, ratios)
def test_density_doubles_with_pressure(temperature, p_abs, ratio):
    assert density(temperature, 2 * p_abs, ratio) == approx(2 * density(temperature, p_abs, ratio))


@given(rooms, pressures, ratios)
def test_density_halves_with_twice_the_temperature(temperature, p_abs, ratio):
    assert density(2 * temperature, p_abs, ratio) == approx(density(temperature, p_abs, ratio) / 2)


@given(rooms, pressures, st.floats(0.001, 0.5))
def test_moist_air_is_lighter_than_dry_air(temperature, p_abs, ratio):
    assert density(temperature, p_abs, ratio) < density(temperature, p_abs)


@given(rooms, pressures, ratios)
def test_the_parts_weigh_what_the_mixture_weighs(temperature, p_abs, ratio):
    mass = density(temperature, p_abs, ratio) * specific_volume(temperature, p_abs, ratio)
    assert mass == approx(1 + ratio)


@given(rooms, pressures, ratios)
def test_partial_pressures_give_the_same_density(temperature, p_abs, ratio):
    """Dry air and water vapour, each an ideal gas at its own pressure (molar masses 28.966 and 18.015268)."""
    p_vapour = vapour_pressure_from_humidity_ratio(ratio, p_abs)
    apart = ((p_abs - p_vapour) * 28.966e-3 + p_vapour * 18.015268e-3) / (8.314472 * temperature)
    assert density(temperature, p_abs, ratio) == approx(apart, rel=5e-5)


@given(st.floats(171, 1800), st.floats(1, 100))
def test_viscosity_rises_with_temperature_but_less_than_in_proportion(temperature, step):
    gain = viscosity(temperature + step) / viscosity(temperature)
    assert 1 < gain < 1 + 1.5 * step / temperature


@given(st.floats(-500, 10999), st.floats(0.1, 1))
def test_pressure_falls_with_altitude(altitude, step):
    assert standard_pressure(altitude + step) < standard_pressure(altitude)


@given(st.floats(0, 10), st.floats(250, 1200), pressures)
def test_mass_is_kept_between_standard_and_actual_flow(flow_std, temperature, p_abs):
    flow = actual_flow(flow_std, temperature, p_abs, 293.15, 101325)
    assert flow * density(temperature, p_abs) == approx(flow_std * density(293.15, 101325))
    assert standard_flow(flow, temperature, p_abs, 293.15, 101325) == approx(flow_std)


@given(velocities, densities)
def test_twice_the_velocity_makes_four_times_the_pressure(velocity, rho):
    assert velocity_pressure(2 * velocity, rho) == approx(4 * velocity_pressure(velocity, rho))


@given(velocities, densities)
def test_velocity_comes_back(velocity, rho):
    assert velocity_from_pressure(velocity_pressure(velocity, rho), rho) == approx(velocity, rel=1e-9, abs=1e-150)


@given(st.floats(-5000, 5000), st.lists(velocities, max_size=5))
def test_total_pressure_is_never_below_static_pressure(p_static, speeds):
    p_velocity = velocity_pressure(np.array(speeds), 1.2)
    assert np.all(total_pressure(p_static, p_velocity) >= p_static)
