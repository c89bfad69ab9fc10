"""What must hold for any duct, run and fan."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoodwright import ducts

turbulent = st.floats(4e3, 1e8)
any_reynolds = st.floats(1.0, 1e8)
rough = st.floats(0.0, 0.1)
side = st.floats(0.02, 3.0)
ratio = st.floats(0.3, 3.0)
suction = st.floats(-5000.0, -1.0)
velocity_pressure = st.floats(1.0, 1000.0)
loss = st.floats(0.0, 5.0)


@given(re=any_reynolds, e=rough, length=st.floats(0.1, 100.0), d=side, vp=velocity_pressure)
def test_twice_the_length_loses_twice_the_pressure(re, e, length, d, vp):
    f = ducts.friction_factor(re, e)
    assert ducts.pressure_loss(f, 2 * length, d, vp) == pytest.approx(2 * ducts.pressure_loss(f, length, d, vp))


@given(re=st.floats(2e3, 1e8), e=st.floats(0.0, 0.09), more=st.floats(1e-4, 0.01))
def test_a_rougher_duct_never_has_less_friction(re, e, more):
    assert ducts.friction_factor(re, e + more) >= ducts.friction_factor(re, e)


@given(re=turbulent, e=rough, faster=st.floats(1.01, 10.0))
def test_friction_factor_falls_and_loss_rises_with_velocity(re, e, faster):
    slow, fast = ducts.friction_factor(re, e), ducts.friction_factor(re * faster, e)
    assert fast <= slow
    assert fast * faster**2 > slow


@given(re=turbulent, e=rough)
def test_friction_factor_solves_colebrook(re, e):
    x = 1 / np.sqrt(ducts.friction_factor(re, e))
    assert x == pytest.approx(-2 * np.log10(e / 3.7 + 2.51 * x / re), rel=1e-9)


@given(re=st.floats(5e3, 1e8), e=st.floats(1e-6, 0.05))
def test_explicit_forms_stay_near_colebrook(re, e):
    f = ducts.friction_factor(re, e)
    assert ducts.haaland_1983(re, e) == pytest.approx(f, rel=0.025)
    assert ducts.swamee_jain_1976(re, e) == pytest.approx(f, rel=0.04)


@pytest.mark.parametrize("seam", [2000.0, 4000.0])
@given(e=rough)
def test_friction_factor_has_no_step_and_no_corner(seam, e):
    def f(re):
        return ducts.friction_factor(re, e)

    h = 0.01
    assert f(seam - h) == pytest.approx(f(seam + h), rel=2e-5)
    below, above = (f(seam - h) - f(seam - 2 * h)) / h, (f(seam + 2 * h) - f(seam + h)) / h
    assert below == pytest.approx(above, rel=2e-3, abs=1e-9)


@given(a=side)
def test_square_duct_has_its_side_as_hydraulic_diameter(a):
    assert ducts.hydraulic_diameter(a, a) == pytest.approx(a)
    assert 1.09 < ducts.equivalent_diameter_at_equal_flow(a, a) / a < 1.10


@given(a=side, b=side, scale=ratio)
def test_rectangle_may_be_turned_and_scaled(a, b, scale):
    for diameter in (ducts.hydraulic_diameter, ducts.equivalent_diameter_at_equal_flow):
        assert diameter(a, b) == pytest.approx(diameter(b, a))
        assert diameter(scale * a, scale * b) == pytest.approx(scale * diameter(a, b))


@given(a=side, b=side)
def test_hydraulic_diameter_lies_between_the_shorter_side_and_twice_it(a, b):
    assert min(a, b) * (1 - 1e-12) <= ducts.hydraulic_diameter(a, b) <= 2 * min(a, b)


@given(v=st.floats(5.0, 30.0), d=side)
def test_wright_keeps_his_two_exponents(v, d):
    assert ducts.wright_1945(2 * v, d) == pytest.approx(2**1.9 * ducts.wright_1945(v, d))
    assert ducts.wright_1945(v, 2 * d) == pytest.approx(2**-1.22 * ducts.wright_1945(v, d))


@given(entry=loss, vp=velocity_pressure, fittings=loss)
def test_total_pressure_falls_from_the_room_by_the_losses_alone(entry, vp, fittings):
    start = ducts.static_pressure_behind_hood(entry, vp)
    end = ducts.static_pressure_along_run(start, [ducts.duct_static_loss(vp, 0.02, 10.0, 0.2, fittings)])[-1]
    assert end + vp == pytest.approx(-(entry + 0.02 * 10.0 / 0.2 + fittings) * vp)


@given(a=suction, b=suction)
def test_balance_does_not_care_which_side_is_named_first(a, b):
    found = ducts.balance_ratio(a, b)
    assert found == ducts.balance_ratio(b, a)
    assert 0 < found <= 1
    assert ducts.balance_ratio(a, a) == 1


@given(flow=st.floats(0.01, 5.0), p=suction, more=st.floats(1.0, 4.0))
def test_corrected_flow_brings_a_square_law_branch_to_the_governing_suction(flow, p, more):
    corrected = ducts.corrected_flow(flow, more * p, p)
    assert p * (corrected / flow) ** 2 == pytest.approx(more * p)


@given(q=st.lists(st.floats(0.01, 5.0), min_size=1, max_size=4), data=st.data())
def test_resultant_keeps_the_kinetic_energy_flow_of_the_streams(q, data):
    vp = data.draw(st.lists(velocity_pressure, min_size=len(q), max_size=len(q)))
    resultant = ducts.resultant_velocity_pressure(q, vp)
    assert resultant * sum(q) == pytest.approx(np.dot(q, vp))
    assert min(vp) * (1 - 1e-12) <= resultant <= max(vp) * (1 + 1e-12)


@given(q=st.floats(0.1, 10.0), p=st.floats(100.0, 3000.0), eta=st.floats(0.3, 0.9), n=ratio, d=ratio, rho=ratio)
def test_fan_laws_keep_the_efficiency(q, p, eta, n, d, rho):
    power = ducts.shaft_power(q, p, eta)
    scaled = ducts.shaft_power(ducts.scaled_flow(q, n, d), ducts.scaled_pressure(p, n, d, rho), eta)
    assert ducts.scaled_power(power, n, d, rho) == pytest.approx(scaled)


@given(q=st.floats(0.1, 10.0), n=ratio, d=ratio)
def test_fan_laws_undo_themselves(q, n, d):
    assert ducts.scaled_flow(ducts.scaled_flow(q, n, d), 1 / n, 1 / d) == pytest.approx(q)


def test_twice_the_speed_gives_twice_the_flow_four_times_the_pressure_eight_times_the_power():
    found = ducts.scaled_flow(1.0, 2.0), ducts.scaled_pressure(1.0, 2.0), ducts.scaled_power(1.0, 2.0)
    assert found == (2.0, 4.0, 8.0)


def test_twice_the_size_gives_eight_times_the_flow_four_times_the_pressure_32_times_the_power():
    found = (
        ducts.scaled_flow(1.0, 1.0, 2.0),
        ducts.scaled_pressure(1.0, 1.0, 2.0),
        ducts.scaled_power(1.0, 1.0, 2.0),
    )
    assert found == (8.0, 4.0, 32.0)
