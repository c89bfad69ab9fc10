"""The network solvers against answers by hand, and what they say when they cannot."""

import numpy as np
import pytest

from hoodwright.ducts import friction_factor
from hoodwright.errors import InputError, NoSolution, RangeError
from hoodwright.network import (
    Branches,
    Graph,
    Junction,
    Network,
    fan_curve,
    momentum_loss,
    operating_points,
    solve_graph,
    tabulated_loss,
)

RHO, MU = 1.2, 1.8e-5
ROOM = np.nan


def branches(count, **given):
    """Branches of one square metre over a hundred, without losses but those given."""
    columns = {
        "density": RHO,
        "viscosity": MU,
        "area": 0.01,
        "diameter": 0.1,
        "length": 0.0,
        "roughness": 1e-4,
        "loss": 0.0,
        "coefficient": 0.0,
        "exponent": 1.0,
        "head": 0.0,
    }
    fan, curves = given.pop("fan", None), given.pop("curves", ())
    filled = {name: np.broadcast_to(given.get(name, value), count).astype(float) for name, value in columns.items()}
    return Branches([f"b{n}" for n in range(count)], **filled, fan=fan, curves=curves)


def line(count, pressure):
    return Graph(np.arange(count), np.arange(1, count + 1), np.array([0.0, *[ROOM] * (count - 1), pressure]))


def test_one_loss_between_two_pressures_by_hand():
    # 2 velocity pressures take 300 Pa: VP = 150 Pa, V = sqrt(2 x 150 / 1.2) = 15.811 m/s
    found = Network(line(1, -300.0)).solved(branches(1, loss=2.0))
    assert found.mass_flow[0] / RHO / 0.01 == pytest.approx(15.811388, rel=1e-6)


@pytest.mark.parametrize("speed", [0.05, 0.3, 0.5, 1.0, 15.0])  # laminar, between, turbulent
def test_friction_is_that_of_the_ducts(speed):
    reynolds = RHO * speed * 0.1 / MU
    wanted = float(friction_factor(reynolds, 1e-3)) * 20.0 / 0.1 * RHO * speed**2 / 2
    found = Network(line(1, -wanted)).solved(branches(1, length=20.0))
    assert found.mass_flow[0] / RHO / 0.01 == pytest.approx(speed, rel=1e-9)


def test_a_power_law_takes_what_it_says():
    found = Network(line(2, -500.0)).solved(branches(2, coefficient=[4000.0, 4000.0], exponent=1.0))
    assert found.mass_flow[0] / RHO == pytest.approx(0.0625, rel=1e-9)  # 2 x 4000 Q = 500
    assert found.start_pressure[1] == pytest.approx(-250.0, rel=1e-9)


def test_a_head_drives_the_flow():
    found = Network(line(1, 0.0)).solved(branches(1, loss=2.0, head=300.0))
    assert found.mass_flow[0] / RHO / 0.01 == pytest.approx(15.811388, rel=1e-6)


def test_a_fan_runs_where_the_curves_cross():
    # the fan falls straight from 600 Pa to 0 at 1 m3/s, the network takes 1200 Q: 600 (1 - Q) = 1200 Q, Q = 1/3
    one = branches(1, coefficient=1200.0, fan=[0], curves=(fan_curve([0.0, 1.0], [600.0, 0.0]),))
    assert Network(line(1, 0.0)).solved(one).mass_flow[0] / RHO == pytest.approx(1 / 3, rel=1e-9)


def test_two_parallel_fans_share_the_flow():
    curve = fan_curve([0.0, 0.5, 1.0], [800.0, 600.0, 0.0])
    graph = Graph(np.array([0, 1, 1, 2]), np.array([1, 2, 2, 3]), np.array([0.0, ROOM, ROOM, 0.0]))
    both = branches(4, loss=[3.0, 0.1, 0.1, 1.0], area=0.05, fan=[-1, 0, 1, -1], curves=(curve, curve))
    flow = Network(graph).solved(both).mass_flow
    assert flow[1] == pytest.approx(flow[2], rel=1e-9)
    assert flow[1] + flow[2] == pytest.approx(flow[0], rel=1e-12)


def test_a_shut_branch_carries_next_to_nothing():
    graph = Graph(np.array([0, 1, 2]), np.array([2, 2, 3]), np.array([0.0, 0.0, ROOM, -500.0]))
    flow = Network(graph).solved(branches(3, loss=[1.0, 1e9, 1.0])).mass_flow
    assert flow[1] / flow[0] < 1e-4


def test_parts_that_do_not_hang_together_are_solved_apart():
    graph = Graph(np.array([0, 2]), np.array([1, 3]), np.array([0.0, -300.0, 0.0, -1200.0]))
    network = Network(graph)
    flow = network.solved(branches(2, loss=2.0)).mass_flow
    assert len(network.parts) == 2
    assert flow[1] == pytest.approx(2 * flow[0], rel=1e-6)


def test_momentum_loss_of_a_sudden_widening_is_bordas():
    # one inlet straight ahead: loss = rho / 2 (V1 - V2)^2 = 0.6 x (20 - 10)^2 = 60 Pa
    assert momentum_loss([0.2], [0.01], [1.0], 0.02, RHO) == pytest.approx([60.0])


def test_momentum_loss_of_equal_streams_straight_on_is_nothing():
    assert momentum_loss([0.1, 0.1], [0.01, 0.01], [1.0, 1.0], 0.02, RHO) == pytest.approx([0.0, 0.0], abs=1e-12)


def test_tabulated_loss_counts_entry_and_acceleration():
    # both inlets at 10 m/s (60 Pa), the common duct at 15 m/s (135 Pa): the inlets lose 0.18 VP; the static pressure
    # falls by the 75 Pa of acceleration, which total pressure keeps
    lost = tabulated_loss([0.1, 0.05], [0.01, 0.005], [0.0, 0.18], 0.01, RHO)
    assert lost == pytest.approx([0.0, 0.18 * 60.0], abs=1e-9)


def test_tabulated_loss_regains_nothing():
    # inlets at 10 m/s (60 Pa), the common duct at 5 m/s (15 Pa): 45 Pa are lost
    assert tabulated_loss([0.1, 0.1], [0.01, 0.01], [0.0, 0.0], 0.04, RHO) == pytest.approx([45.0, 45.0])


@pytest.mark.parametrize(("law", "values"), [("momentum", (1.0, 0.8)), ("tabulated", (0.0, 0.2))])
def test_the_solver_uses_the_law_of_its_junction(law, values):
    graph = Graph(
        np.array([0, 1, 2]),
        np.array([2, 2, 3]),
        np.array([0.0, 0.0, ROOM, -800.0]),
        (Junction(law, (0, 1), 2, values),),
    )
    area = np.array([0.01, 0.005, 0.012])
    found = Network(graph).solved(branches(3, area=area, loss=[1.0, 1.2, 0.5]))
    flow = found.mass_flow / RHO
    told = momentum_loss if law == "momentum" else tabulated_loss
    wanted = told(flow[:2], area[:2], values, area[2], RHO)
    assert found.junction_loss[:2] == pytest.approx(wanted, rel=1e-5)  # squares are rounded off near rest


class TestFanCurves:
    """Curves and where they meet what is asked."""

    def test_a_curve_goes_through_its_points(self):
        curve = fan_curve([0.0, 0.1, 0.2, 0.3], [900.0, 1000.0, 800.0, 300.0])
        assert curve.rise([0.0, 0.1, 0.2, 0.3]) == pytest.approx([900.0, 1000.0, 800.0, 300.0])

    def test_beyond_its_ends_it_goes_straight_on(self):
        curve = fan_curve([0.0, 1.0], [600.0, 0.0])
        assert curve.rise([-0.5, 1.5]) == pytest.approx([900.0, -300.0])

    def test_speed_and_density_scale_it(self):
        curve = fan_curve([0.0, 0.1, 0.2], [900.0, 1000.0, 800.0]).scaled(flow=1.5, pressure=2.25)
        assert curve.rise(0.15) == pytest.approx(2250.0)

    def test_a_stable_and_an_unstable_point(self):
        # a hump: 500 at rest, 800 at 0.5, 0 at 1; asked 600 + 100 Q: crosses while rising, and again while falling
        curve = fan_curve([0.0, 0.25, 0.5, 0.75, 1.0], [500.0, 700.0, 800.0, 600.0, 0.0])
        first, second = operating_points(curve, lambda flow: 600 + 100 * flow)
        assert (first.stable, second.stable) == (False, True)
        assert first.flow < 0.25 < 0.5 < second.flow < 0.75
        assert second.pressure == pytest.approx(600 + 100 * second.flow, rel=1e-9)

    def test_no_point_where_the_fan_is_too_weak(self):
        assert operating_points(fan_curve([0.0, 1.0], [300.0, 0.0]), lambda flow: 500.0) == ()

    @pytest.mark.parametrize(
        ("flows", "pressures", "words"),
        [
            ([0.0], [1.0], "two points or more, got 1 flows"),
            ([0.0, 0.0], [1.0, 2.0], "step of flow between two points of a fan curve 0 m3/s"),
            ([0.0, 1.0], [1.0, np.nan], "not a finite number"),
        ],
    )
    def test_refuses(self, flows, pressures, words):
        with pytest.raises(InputError, match=words):
            fan_curve(flows, pressures)


class TestRefusals:
    """One clear error each."""

    def test_a_part_without_a_given_pressure(self):
        graph = Graph(np.array([0, 1, 2]), np.array([1, 0, 3]), np.array([ROOM, ROOM, 0.0, -100.0]))
        with pytest.raises(InputError, match="a part of the network is joined to no node of given pressure"):
            Network(graph).solved(branches(3, loss=1.0))

    def test_an_inlet_that_ends_elsewhere(self):
        with pytest.raises(InputError, match="junction before branch 1: an inlet ends at another node"):
            Graph(np.array([0, 1]), np.array([2, 2]), np.array([0.0, 0.0, -1.0]), [Junction("plain", (0,), 1, (0.0,))])

    def test_a_negative_length(self):
        with pytest.raises(RangeError, match="b1: length -2 is not 0 or more; give its true size"):
            branches(2, length=[1.0, -2.0])

    def test_an_area_of_nothing(self):
        with pytest.raises(RangeError, match="b0: area 0 is not above 0"):
            branches(1, area=0.0)

    def test_it_says_where_it_did_not_settle(self, monkeypatch):
        monkeypatch.setattr("hoodwright.network.graph.MOST_STEPS", 2)
        words = r"did not settle in 2 steps: at b0 the velocity still moves by .* m/s, and the pressures miss by .* Pa"
        with pytest.raises(NoSolution, match=words):
            solve_graph(line(2, -300.0), branches(2, loss=[100.0, 1.0], coefficient=300.0, exponent=3.0))

    def test_an_unknown_law(self):
        with pytest.raises(InputError, match="junction law 'other' is not known; there are plain, momentum, tabulated"):
            Junction("other", (0,), 1, (1.0,))
