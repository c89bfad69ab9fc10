"""Sizes of a whole tree: by hand step by step, of least cost, and solved as built."""

import math
from dataclasses import replace

import numpy as np
import pytest

from hoodwright import ducts as d
from hoodwright.air import density, viscosity
from hoodwright.ducts.sizing import (
    DuctAir,
    Prices,
    SizedDuct,
    SizingRules,
    built_system,
    checked,
    hand_sizes,
    least_cost_sizes,
    sizes_that_hold,
    usual_curve,
)
from hoodwright.errors import Cancelled, InputError, NoSolution
from hoodwright.jobs import Progress
from sizing_shops import PRICES, RULES, SERIES, shop

SAME = 1e-9
DRAWN = 1e-6  # of a suction found another way
LAWS = ("tabulated", "momentum")
SMALL = np.array([0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5])


def hood(name, flow, length=5.0, **more):
    return SizedDuct(name, (), length, 0.0, 15.0, 30.0, flow, hood=0.5, entry=0.18, **more)


def main(before=(0, 1), length=5.0, **more):
    return SizedDuct("main", before, length, 0.0, 15.0, 30.0, **more)


def arrives(duct, flow, size):
    """Suction at the end of a hood's duct, by the function of the hand method."""
    side = d.Side(flow, duct.length, 1 + duct.hood + duct.loss + duct.entry, duct.roughness, 1.2, RULES.viscosity)
    return float(d.suction_at_diameter(side, size))


def test_by_hand_each_duct_is_the_widest_that_keeps_the_velocity():
    sized = hand_sizes([hood("A", 0.3), hood("B", 0.3), main()], SMALL, PRICES, RULES)
    # 0.3 m3/s in 0.125 m: 24.4 m/s, in 0.16 m: 14.9, which is below 15; 0.6 in 0.2 m: 19.1, in 0.25 m: 12.2
    assert sized.diameters == (0.125, 0.125, 0.2)
    assert sized.more_flow == () and not sized.dampers
    assert sized.suctions[0] == pytest.approx(arrives(hood("A", 0.3), 0.3, 0.125), rel=DRAWN)


def test_by_hand_the_suction_of_the_main():
    sized = hand_sizes([hood("A", 0.3), hood("B", 0.3), main()], SMALL, PRICES, RULES)
    before = arrives(hood("A", 0.3), 0.3, 0.125)
    brought = 1.2 * (0.3 / (math.pi / 4 * 0.125**2)) ** 2 / 2  # more than that of the main: nothing is regained
    side = d.Side(0.6, 5.0, 0.0, 1.5e-4, 1.2, RULES.viscosity, suction_before=before, p_velocity_before=brought)
    assert sized.suction == pytest.approx(float(d.suction_at_diameter(side, 0.2)), rel=DRAWN)
    faster = 1.2 * (0.6 / (math.pi / 4 * 0.2**2)) ** 2 / 2
    assert sized.power == pytest.approx(0.6 * (sized.suction - faster + PRICES.behind), rel=SAME)
    cost = 2 * PRICES.per_metre(0.125) * 5 + PRICES.per_metre(0.2) * 5
    assert sized.total == pytest.approx(cost + PRICES.per_watt * sized.power, rel=SAME)


def test_by_hand_the_flow_is_corrected_from_a_ratio_of_0_8():
    ducts = [hood("A", 0.3), hood("B", 0.3, length=3.0), main()]
    sized = hand_sizes(ducts, SMALL, PRICES, replace(RULES, most=1.2))
    most, least = arrives(ducts[0], 0.3, 0.125), arrives(ducts[1], 0.3, 0.125)
    assert 0.8 <= least / most < 0.95
    assert sized.more_flow == (1,)
    assert sized.flows[1] == pytest.approx(0.3 * math.sqrt(most / least), rel=DRAWN)
    assert sized.flow == pytest.approx(0.3 + sized.flows[1], rel=SAME)
    assert sized.suctions[1] == pytest.approx(sized.suctions[0], rel=DRAWN)


def test_by_hand_a_damper_where_the_hood_would_get_too_much():
    ducts = [hood("A", 0.3), hood("B", 0.3, length=3.0), main()]
    sized = hand_sizes(ducts, SMALL, PRICES, replace(RULES, most=1.02))
    assert sized.more_flow == ()
    assert sized.dampers == {1: pytest.approx(arrives(ducts[0], 0.3, 0.125) - arrives(ducts[1], 0.3, 0.125), rel=DRAWN)}


def test_by_hand_another_size_where_a_side_has_too_little():
    ducts = [hood("A", 0.3, length=10.0), hood("B", 0.2, length=1.0), main()]
    sized = hand_sizes(ducts, SMALL, PRICES, RULES)
    widest = max(s for s in SMALL if 0.2 / (math.pi / 4 * s**2) >= 15)
    assert arrives(ducts[1], 0.2, widest) < 0.8 * arrives(ducts[0], 0.3, 0.125)
    assert sized.diameters[1] == 0.1 < widest  # 25.5 m/s


def test_by_hand_without_dampers_it_says_which_side():
    ducts = [hood("A", 0.3, length=40.0), hood("B", 0.3, length=1.0), main()]
    with pytest.raises(NoSolution, match=r"^B: no size of the series makes it agree .* before main, by hand; allow"):
        hand_sizes(ducts, SMALL, replace(PRICES, damper=None), RULES)


@pytest.mark.parametrize("law", LAWS)
@pytest.mark.parametrize("block", range(5))
def test_never_worse_than_by_hand(block, law):
    """275 random shops, two or three ducts at a junction, some hoods with a filter."""
    for seed in range(block * 55 + (law == "momentum"), (block + 1) * 55, 2):
        ducts = shop(2 + seed % 11, seed, meet=2 + (seed % 5 == 0), filters=0.3)
        rules = replace(RULES, law=law, split=seed % 7 == 0)
        assert least_cost_sizes(ducts, SERIES, PRICES, rules, bucket=0.02, kept=3).total <= (
            hand_sizes(ducts, SERIES, PRICES, rules).total * (1 + SAME)
        ), seed


@pytest.mark.parametrize("seed", range(12))
def test_as_built_every_hood_gets_what_is_intended(seed):
    ducts = shop(2 + seed, seed, meet=2 + (seed % 4 == 0), filters=0.4)
    rules = replace(RULES, law=LAWS[seed % 2], split=seed % 3 == 0)
    sized, check = sizes_that_hold(ducts, SERIES, PRICES, rules)
    assert not check.outside
    assert min(check.shares.values()) == pytest.approx(1.0, abs=2e-4)
    assert max(check.shares.values()) <= 1.10
    curve = usual_curve(sized, 1.2)
    system = built_system(ducts, sized, PRICES, rules, d.at_speed(curve, 0.95 * check.speed))
    answer = d.solve_system(system)
    for i, share in check.shares.items():
        assert answer.flow[answer.at(ducts[i].name)] / ducts[i].flow == pytest.approx(share, rel=1e-6)


def test_with_a_gate_shut_it_says_which_main_is_too_slow():
    ducts = shop(4, 5)
    sized = least_cost_sizes(ducts, SERIES, PRICES, RULES)
    check = checked(ducts, sized, PRICES, RULES)
    system = built_system(ducts, sized, PRICES, RULES, d.at_speed(usual_curve(sized, 1.2), check.speed))
    told = {(slow.shut, slow.duct): slow.velocity for slow in check.too_slow}
    assert told
    for shut in range(4):
        runs = [replace(run, loss=1e6) if run.name == f"h{shut}" else run for run in system.runs]
        answer = d.solve_system(replace(system, runs=runs))
        for n, duct in enumerate(ducts):
            velocity = float(answer.velocity[answer.at(duct.name)])
            assert ((shut, n) in told) == (bool(duct.before) and velocity < duct.least - 1e-3)
            if (shut, n) in told:
                assert told[shut, n] == pytest.approx(velocity, rel=1e-3)
    assert not check.holds


def test_two_sizes_in_a_duct_save_dampers():
    ducts = shop(15, 3)
    plain, split = (least_cost_sizes(ducts, SERIES, PRICES, replace(RULES, split=s)) for s in (False, True))
    assert split.total < plain.total and len(split.dampers) < len(plain.dampers)
    both = [size for size in split.sizes if size.then is not None]
    assert both and all(size.then < size.diameter and 0 < size.share < 1 for size in both)


@pytest.mark.parametrize("law", LAWS)
def test_a_cleaner_and_another_size_on_the_way(law):
    ducts = [
        hood("A", 0.3),
        hood("B", 0.25),
        main(),
        SizedDuct("clean", (2,), 2.0, 0.0, 5.0, 30.0, fixed=((800.0, 0.55, 1.0),)),
    ]
    rules = replace(RULES, law=law)
    sized = least_cost_sizes(ducts, SMALL, PRICES, rules)
    assert sized.suction > sized.suctions[2] + 790 * sized.flow / 0.55
    check = checked(ducts, sized, PRICES, rules)
    assert not check.outside


@pytest.mark.parametrize("law", LAWS)
def test_hot_air_from_one_hood(law):
    """60 degC in one duct, mixed behind it: the flow swells, and the hoods still get theirs."""
    cold, hot = 293.15, 333.15
    mixed = (0.3 * cold / hot * hot + 0.3 * cold) / (0.3 * cold / hot + 0.3)

    def air(t):
        return DuctAir(float(density(t, 101325.0, 0.0)), float(viscosity(t)), t)

    rules = SizingRules(air(cold).density, air(cold).viscosity, law=law)
    ducts = [hood("A", 0.3, air=air(hot)), hood("B", 0.3), main(air=air(mixed))]
    sized = least_cost_sizes(ducts, SMALL, PRICES, rules)
    a, b = (
        flow * duct.air.density if duct.air else flow * rules.density
        for flow, duct in zip(sized.flows, ducts[:2], strict=False)
    )
    assert sized.flow == pytest.approx((a + b) / air(mixed).density, rel=1e-9)
    assert not checked(ducts, sized, PRICES, rules).outside


def test_a_kept_duct_stays_and_costs_nothing():
    kept = 0.01 * math.pi
    ducts = [hood("A", 0.3), replace(hood("B", 0.3), kept=(0.125, kept)), main()]
    sized = least_cost_sizes(ducts, SMALL, PRICES, RULES)
    assert sized.diameters[1] == 0.125
    cost = sum(PRICES.per_metre(sized.diameters[i]) * 5 for i in (0, 2)) + PRICES.damper * len(sized.dampers)
    assert sized.duct_cost == pytest.approx(cost, rel=SAME)


def test_twice_the_prices_cost_twice_as_much():
    """All prices twice as high change no size."""
    ducts = shop(6, 11)
    twice = Prices(
        lambda size: 2 * PRICES.per_metre(size),
        lambda size: 2 * PRICES.per_piece(size),
        300.0,
        2 * PRICES.per_watt,
        1000.0,
    )
    once, more = (least_cost_sizes(ducts, SERIES, prices, RULES) for prices in (PRICES, twice))
    assert more.sizes == once.sizes
    assert more.total == pytest.approx(2 * once.total, rel=SAME)


def test_dear_energy_makes_wider_ducts():
    ducts = shop(6, 11)
    cheap, dear = (least_cost_sizes(ducts, SERIES, replace(PRICES, per_watt=p), RULES) for p in (0.5, 50.0))
    assert dear.power < cheap.power and dear.duct_cost > cheap.duct_cost


def test_no_damper_where_none_is_allowed():
    ducts = [hood("A", 0.3), hood("B", 0.3, length=1.0), main()]
    assert list(hand_sizes(ducts, SMALL, PRICES, RULES).dampers) == [1]
    with pytest.raises(NoSolution, match=r"^B: no size"):
        hand_sizes([ducts[0], replace(ducts[1], damper=False), ducts[2]], SMALL, PRICES, RULES)


def test_one_duct_alone():
    sized = least_cost_sizes([hood("A", 0.3)], SMALL, PRICES, RULES)
    # 0.125 m is the only size of this series from 15 to 30 m/s
    assert sized.diameters == (0.125,) and sized.suction == pytest.approx(
        arrives(hood("A", 0.3), 0.3, 0.125), rel=DRAWN
    )


FAULTS = [
    ([], "there is no duct to size; give one or more"),
    ([hood("A", 0.0)], "A: got 0 m3/s behind its hood; give a flow above 0"),
    ([hood("A", 0.3, length=-1.0)], "A: got a length of -1 m; give 0 or more"),
    ([main(before=(1,)), hood("A", 0.3)], "main: it comes before a duct that leads to it; order them downstream"),
    ([hood("A", 0.3), hood("B", 0.3)], "A: it does not lead to the last duct, B; size each tree by itself"),
    (
        [hood("A", 0.3), main((0,)), main((0, 1))],
        "main: a duct that leads to it leads to another one too; ducts only join",
    ),
]


@pytest.mark.parametrize(("ducts", "words"), FAULTS)
@pytest.mark.parametrize("size", [hand_sizes, least_cost_sizes])
def test_bad_trees(size, ducts, words):
    with pytest.raises(InputError) as error:
        size(ducts, SMALL, PRICES, RULES)
    assert str(error.value) == words


@pytest.mark.parametrize("size", [hand_sizes, least_cost_sizes])
def test_a_series_with_a_gap(size):
    words = r"A: no size of the series gives 15 to 30 m/s at 0.3 m3/s; its sizes give 2.39 to 59.7 m/s. Use a finer"
    with pytest.raises(NoSolution, match=words):
        size([hood("A", 0.3)], [0.08, 0.4], PRICES, RULES)


def test_sides_that_cannot_agree():
    ducts = [hood("A", 0.3, length=40.0), hood("B", 0.3, length=1.0), main()]
    with pytest.raises(
        NoSolution, match=r"main: no sizes of the series make the sides before it agree at 15 to 30 m/s"
    ):
        least_cost_sizes(ducts, SMALL, replace(PRICES, damper=None), RULES)


def test_rules_that_are_none():
    with pytest.raises(InputError, match="the law of junctions 'plain' is not known; there are tabulated, momentum"):
        SizingRules(1.2, 1.8e-5, law="plain")
    with pytest.raises(InputError, match=r"got ratios 0.9 and 0.8 and at most 1.09 times the flow; the ratios rise"):
        SizingRules(1.2, 1.8e-5, leave_above=0.8, correct_from=0.9)


def test_progress_is_told_and_may_stop_it():
    told = []
    progress = Progress(told.append)
    least_cost_sizes(shop(4, 1), SERIES, PRICES, RULES, progress)
    assert told[0].doing == "sizing h0" and [r.fraction for r in told] == sorted(r.fraction for r in told)
    progress.cancel()
    with pytest.raises(Cancelled):
        least_cost_sizes(shop(4, 1), SERIES, PRICES, RULES, progress)


def test_series_of_workshops():
    fine = 1000 * d.fine_diameters()
    assert (fine[0], fine[-1]) == (pytest.approx(63.0), pytest.approx(1600.0))
    steps = (fine[1:] / fine[:-1]) ** 2
    assert steps.min() > 1.23 and steps.max() < 1.31
    whole, half = d.inch_diameters() / 0.0254, d.inch_diameters(halves=True) / 0.0254
    assert whole == pytest.approx(np.arange(3, 61)) and half == pytest.approx(np.arange(3, 60.5, 0.5))


def test_by_hand_a_duct_in_which_nothing_settles_keeps_the_size():
    link = SizedDuct("link", (2,), 2.0, 0.0, 5.0, 30.0)
    wide, same = (
        hand_sizes([hood("A", 0.3), hood("B", 0.3), main(), duct], SMALL, PRICES, RULES).diameters
        for duct in (link, replace(link, settles=False))
    )
    assert wide[2] == same[2] == same[3] == 0.2
    assert wide[3] == 0.315  # 0.6 m3/s: 7.7 m/s, and 4.8 in 0.4 m
