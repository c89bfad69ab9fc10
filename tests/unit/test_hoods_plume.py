import numpy as np
import pytest

from hoodwright.errors import RangeError
from hoodwright.hoods import (
    boiling_tank_flow,
    buoyancy_flux,
    climbing_stream_area,
    draught_offset,
    heskestad_1984_axis_excess,
    heskestad_1984_axis_velocity,
    hot_body_constant,
    hot_body_flow,
    room_line_plume_flow,
    room_plume_flow,
    rouse_1952_axis_excess,
    rouse_1952_axis_velocity,
    rouse_1952_plume_flow,
    spill_edge_flow,
    spill_plume_flow,
    top_hat_constant,
    top_hat_plume_flow,
    top_hat_plume_radius,
    virtual_origin_depth,
)

FUNCTIONS = [
    lambda x: buoyancy_flux(x, 293.15, 1.2),
    top_hat_constant,
    lambda x: top_hat_plume_flow(0.01, x, 0.1),
    lambda x: top_hat_plume_radius(x, 0.1),
    lambda x: rouse_1952_plume_flow(0.01, x),
    lambda x: rouse_1952_axis_velocity(0.01, x),
    lambda x: rouse_1952_axis_excess(0.01, x, 293.15),
    lambda x: heskestad_1984_axis_velocity(0.01, x),
    lambda x: heskestad_1984_axis_excess(0.01, x, 293.15),
    lambda x: room_plume_flow(500.0, x),
    lambda x: room_line_plume_flow(500.0, 2.0, x),
    lambda x: virtual_origin_depth(x)[1],
    lambda x: hot_body_constant(1e5 * x),
    lambda x: hot_body_flow(500.0, x, 0.2),
    lambda x: climbing_stream_area(0.5, x),
    lambda x: boiling_tank_flow(0.002, x, 0.5),
    lambda x: draught_offset(0.1, x, 0.5),
    lambda x: spill_edge_flow(5000.0, x, 0.5),
    lambda x: spill_plume_flow(5000.0, 0.5, x, 0.05),
]


@pytest.mark.parametrize("function", FUNCTIONS)
def test_scalar_array_and_empty_array(function):
    assert np.ndim(function(1.5)) == 0
    assert function(np.array([1.0, 1.5, 2.0]))[1] == pytest.approx(function(1.5))
    assert function(np.array([])).shape == (0,)


def test_a_plume_of_500_watts_one_metre_up():
    assert room_plume_flow(500.0, 1.0) == pytest.approx(0.03969, abs=5e-6)


def test_a_plume_begins_between_1_7_and_2_1_diameters_below_its_face():
    assert virtual_origin_depth(0.5) == pytest.approx((0.85, 1.05))


def test_a_spill_plume_begins_with_the_flow_at_the_edge():
    assert spill_plume_flow(5000.0, 0.6, 0.0, 0.061) == pytest.approx(0.061)


def test_a_stream_that_climbs_a_wall_widens_by_five_degrees():
    assert climbing_stream_area(1.0, 1.0) == pytest.approx(0.08749, abs=5e-6)


@pytest.mark.parametrize(
    "call, text",
    [
        (lambda: buoyancy_flux(0.0, 293.15, 1.2), "convective heat 0 W is not above 0 W"),
        (lambda: buoyancy_flux(500.0, 20.0, 1.2), "air temperature 20 K is below 150 K"),
        (lambda: buoyancy_flux(500.0, 293.15, 0.0), "density 0 kg/m3 is not above"),
        (lambda: top_hat_constant(0.0), "entrainment 0 is not above 0"),
        (lambda: top_hat_plume_flow(0.0, 1.0, 0.1), "buoyancy 0 m4/s3 is not above"),
        (lambda: top_hat_plume_radius(-1.0, 0.1), "height -1 m is below 0 m"),
        (lambda: rouse_1952_plume_flow(0.01, -1.0), "height -1 m is below 0 m"),
        (lambda: rouse_1952_axis_velocity(0.01, 0.0), "height 0 m is not above 0 m"),
        (lambda: rouse_1952_axis_excess(0.01, 0.0, 293.15), "height 0 m is not above 0 m"),
        (lambda: heskestad_1984_axis_velocity(-0.01, 1.0), "buoyancy -0.01 m4/s3 is not above"),
        (lambda: heskestad_1984_axis_excess(0.01, 1.0, 20.0), "air temperature 20 K is below 150 K"),
        (lambda: room_plume_flow(-5.0, 1.0), "convective heat -5 W is not above 0 W"),
        (lambda: room_line_plume_flow(500.0, 0.0, 1.0), "length 0 m is not above 0 m"),
        (lambda: virtual_origin_depth(0.0), "diameter 0 m is not above 0 m"),
        (lambda: hot_body_constant(101.325), "absolute pressure 101.325 Pa is below 10000 Pa"),
        (lambda: hot_body_flow(500.0, 0.0, 0.2), "height of the body 0 m is not above 0 m"),
        (lambda: climbing_stream_area(1.0, 1.0, 5.0), "angle of the stream 5 rad is above 0.5 rad.*give radians"),
        (lambda: boiling_tank_flow(0.0, 1.0, 0.5), "steam 0 kg/s is not above 0 kg/s"),
        (lambda: draught_offset(0.1, 1.0, 0.0), "velocity of the plume 0 m/s is not above 0 m/s"),
        (lambda: spill_edge_flow(5000.0, 0.5, 0.0), "height of the opening 0 m is not above 0 m"),
        (lambda: spill_plume_flow(5000.0, 0.5, 1.0, -0.1), "flow at the edge -0.1 kg/s is below 0 kg/s"),
    ],
)
def test_outside_the_range_is_refused_in_words(call, text):
    with pytest.raises(RangeError, match=text):
        call()
