"""What must hold for junctions, changes of size and fittings of any duct."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoodwright import ducts

flow = st.floats(0.01, 5.0)
diameter = st.floats(0.05, 1.5)
loss = st.floats(0.0, 5.0)
length = st.floats(0.0, 50.0)


def side(q, run, k):
    return ducts.Side(q, run, 1.0 + k, 0.15e-3, 1.2, 1.81e-5)


@given(q=flow, run=length, k=loss, d=diameter, wider=st.floats(1.01, 3.0))
def test_a_wider_duct_arrives_with_less_suction(q, run, k, d, wider):
    branch = side(q, run, k)
    assert ducts.suction_at_diameter(branch, d * wider) < ducts.suction_at_diameter(branch, d)


@given(q=flow, run=length, k=loss, d=diameter)
def test_balancing_diameter_undoes_suction_at_diameter(q, run, k, d):
    branch = side(q, run, k)
    found = ducts.balancing_diameter(branch, float(ducts.suction_at_diameter(branch, d)))
    assert found == pytest.approx(d, rel=1e-6)


@given(low=st.floats(-2000.0, -10.0), more=st.floats(1.0, 5.0))
def test_a_damper_makes_both_sides_equal(low, more):
    governing = more * low
    assert low - ducts.damper_loss(governing, low) == pytest.approx(governing)


@given(angle=st.floats(5.0, 40.0), before=st.floats(1.0, 500.0), share=st.floats(0.0, 1.0))
def test_no_cone_wins_back_more_than_the_air_gives_up(angle, before, share):
    behind = share * before
    regain = ducts.static_regain(angle, before, behind)
    assert 0 <= regain <= before - behind


@given(q=st.lists(flow, min_size=2, max_size=4), data=st.data())
def test_resultant_by_area_is_never_more_than_by_flow(q, data):
    v = np.array(data.draw(st.lists(st.floats(5.0, 30.0), min_size=len(q), max_size=len(q))))
    by_flow = ducts.resultant_velocity_pressure(q, 0.6 * v**2)
    by_area = ducts.resultant_velocity_pressure_by_area(q, np.array(q) / v, 1.2)
    assert by_area <= by_flow * (1 + 1e-12)
    same = ducts.resultant_velocity_pressure_by_area(q, np.array(q) / v[0], 1.2)
    assert same == pytest.approx(0.6 * v[0] ** 2)


@given(m=st.lists(flow, min_size=1, max_size=4), data=st.data())
def test_mixing_keeps_the_heat(m, data):
    t = data.draw(st.lists(st.floats(250.0, 600.0), min_size=len(m), max_size=len(m)))
    mixed = ducts.mixed_temperature(m, t)
    assert mixed * sum(m) == pytest.approx(np.dot(m, t))
    assert min(t) - 1e-9 <= mixed <= max(t) + 1e-9


@given(ratio=st.floats(0.75, 2.0))
def test_more_pieces_lose_less_and_a_smooth_elbow_least(ratio):
    by_pieces = [ducts.gored_elbow_loss(pieces, ratio) for pieces in (3, 4, 5)]
    assert by_pieces == sorted(by_pieces, reverse=True)
    assert ducts.smooth_elbow_loss(ratio) < by_pieces[-1]


@given(aspect=st.floats(0.5, 3.0), radius=st.floats(0.5, 1.4), wider=st.floats(0.01, 0.1))
def test_a_wider_turn_of_a_rectangular_duct_loses_less(aspect, radius, wider):
    assert ducts.rectangular_elbow_loss(aspect, radius + wider) < ducts.rectangular_elbow_loss(aspect, radius)


@given(low=st.floats(20.0, 89.0), more=st.floats(0.1, 1.0), height=st.floats(0.25, 8.0))
def test_a_sharper_mitre_loses_more(low, more, height):
    first, second = (ducts.rectangular_mitred_elbow_loss(angle, height) for angle in (low, low + more))
    assert first < second


@given(power=st.floats(0.0, 1e5), lost=st.floats(0.0, 0.5))
def test_the_motor_gives_what_the_fan_and_the_belt_take(power, lost):
    motor = ducts.motor_power(power, lost)
    assert motor * (1 - lost) == pytest.approx(power)
