"""What must hold for any hood: suction and flow, compound hoods, taps, filters, tapers."""

from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from hoodwright.hoods import (
    compound_entry_loss,
    compound_hood_suction,
    entry_coefficient,
    flow_from_suction,
    flow_from_tap,
    flow_through_filter_from_suction,
    friction_to_tap,
    hood_filter_loss,
    hood_suction,
    suction_at_tap,
    taper_entry_loss,
)

flows = st.floats(1e-3, 10)
areas = st.floats(1e-3, 1)
losses = st.floats(0, 5)
densities = st.floats(0.5, 1.5)
angles = st.floats(15, 180)
factors = st.floats(0.005, 0.05)


@given(flows, areas, areas, losses, densities)
def test_compound_suction_grows_with_flow_squared(flow, slots, duct, loss, rho):
    one = compound_hood_suction(flow, slots, duct, loss, rho)
    assert compound_hood_suction(2 * flow, slots, duct, loss, rho) == approx(4 * one)


@given(flows, areas, areas, losses, densities)
def test_acceleration_is_counted_once(flow, slots, duct, loss, rho):
    found = compound_hood_suction(flow, slots, duct, loss, rho, slot_loss=1.78)
    p_slot, p_duct = (rho * (flow / area) ** 2 / 2 for area in (slots, duct))
    beyond_losses = found - 1.78 * p_slot - loss * p_duct
    assert beyond_losses == approx(max(p_slot, p_duct), rel=1e-6, abs=1e-6 * found)


@given(flows, areas, areas, losses, densities)
def test_one_coefficient_stands_for_slots_and_plenum(flow, slots, duct, loss, rho):
    one = hood_suction(flow, duct, compound_entry_loss(slots, duct, loss), rho)
    assert one == approx(compound_hood_suction(flow, slots, duct, loss, rho))


@given(areas, areas, losses)
def test_narrower_slots_cost_more(slots, duct, loss):
    assert compound_entry_loss(0.9 * slots, duct, loss) > compound_entry_loss(slots, duct, loss) >= loss


@given(losses)
def test_entry_coefficient_lies_between_0_and_1_and_falls_with_the_loss(loss):
    assert 0 < entry_coefficient(loss + 0.1) < entry_coefficient(loss) <= 1


@given(flows, areas, losses, densities, factors, st.floats(0.1, 10))
def test_a_tap_farther_on_reads_more(flow, area, loss, rho, factor, distance):
    near, far = (friction_to_tap(factor, d, 0.2) for d in (distance, distance + 0.1))
    at_near, at_far = (suction_at_tap(flow, area, loss, friction, rho) for friction in (near, far))
    assert at_far > at_near > hood_suction(flow, area, loss, rho)
    assert flow_from_tap(at_far, area, loss, far, rho) == approx(flow)
    assert flow_from_suction(at_far, area, loss, rho) > flow


@given(flows, areas, losses, densities, st.floats(0, 2000), flows, st.floats(0.1, 3))
def test_flow_through_a_filter_comes_back(flow, area, loss, rho, rated, rated_flow, exponent):
    suction = hood_suction(flow, area, loss, rho) + hood_filter_loss(flow, rated, rated_flow, exponent)
    found = flow_through_filter_from_suction(suction, area, loss, rho, rated, rated_flow, exponent)
    assert found == approx(flow, rel=1e-6)


@given(angles)
def test_a_rectangle_loses_at_least_as_much_as_a_cone(angle):
    assert taper_entry_loss(angle, rectangular=True) >= taper_entry_loss(angle)


@given(st.floats(60, 179))
def test_beyond_60_degrees_a_blunter_taper_loses_more(angle):
    assert taper_entry_loss(angle + 1) > taper_entry_loss(angle)
