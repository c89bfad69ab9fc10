"""[exam-equations]: equation sheet of an examination, with its hood-type and hood-loss figures."""

import math
from itertools import pairwise

import pytest

from hoodwright.air import velocity_from_pressure
from hoodwright.hoods import (
    SLOT_LOSS,
    cold_canopy_flow,
    compound_hood_suction,
    dallavalle_flanged,
    dallavalle_plain,
    entry_coefficient,
    entry_loss_coefficient,
    required_flow,
    silverman_flanged,
    silverman_plain,
)

CFM, FPM, FOOT = 0.3048**3 / 60, 0.00508, 0.3048
HALF_DIGIT = 0.005
TOL_CFM = 0.01  # the formula is exact: only rounding of the unit factors

# check rows hl.Fh.plain, hl.Fh.flanged, hl.Fh.bellmouth, hl.Fh.grinding_straight, hl.Fh.grinding_tapered_acgih
LOSS = [
    ("plain", 0.93),
    ("flanged", 0.49),
    ("bell mouth", 0.04),
    ("grinding straight", 0.65),
    ("grinding tapered", 0.40),
]


@pytest.mark.read
@pytest.mark.parametrize("shape, printed", LOSS)
def test_entry_loss_of_the_figure(shape, printed):
    assert entry_loss_coefficient(shape) == printed


@pytest.mark.read
def test_loss_of_a_slot_in_its_own_velocity_pressures():  # hl.slot
    assert SLOT_LOSS == 1.78
    slot_alone = compound_hood_suction(0.1, 0.01, 1e9, 0.0, 1.2)  # 10 m/s in the slot, nothing in the duct
    assert slot_alone / 60 == pytest.approx(2.78, rel=0, abs=HALF_DIGIT)


@pytest.mark.read
def test_velocity_constant_in_si():  # air.vpconst.si
    assert velocity_from_pressure(1, 1.2) == pytest.approx(1.29, rel=0, abs=HALF_DIGIT)


@pytest.mark.read
def test_flanged_opening_takes_three_quarters_of_the_plain_one():  # hf.coef.flround
    ratio = dallavalle_plain(0.1, 0.02) / dallavalle_flanged(0.1, 0.02)
    assert ratio == pytest.approx(0.75, rel=0, abs=HALF_DIGIT)


@pytest.mark.read
def test_coefficient_of_a_canopy():  # hf.coef.canopy
    """Q = 1.4 P V D: a tank of 4 ft x 2 ft, canopy 3 ft above, 100 fpm."""
    flow = cold_canopy_flow(100 * FPM, 12 * FOOT, 3 * FOOT)
    assert flow / CFM == pytest.approx(1.4 * 12 * 100 * 3, rel=0, abs=TOL_CFM)


# The usual table of coefficients of entry; its values are from memory: hl.Ce.plain, hl.Ce.flanged, hl.Ce.bellmouth.
ENTRY = [("plain", 0.72), ("flanged", 0.82), ("bell mouth", 0.98)]


@pytest.mark.memory
@pytest.mark.parametrize("shape, remembered", ENTRY)
def test_coefficient_of_entry(shape, remembered):
    found = entry_coefficient(entry_loss_coefficient(shape))
    assert found == pytest.approx(remembered, rel=0, abs=HALF_DIGIT)


# Examples built on the formulas of the figure, hf.plain.ex and hf.fl.ex: 100 fpm at 1 ft, 0.5 ft2.
@pytest.mark.memory
@pytest.mark.parametrize("law, cfm", [(dallavalle_plain, 1050), (dallavalle_flanged, 787.5)])
def test_flow_for_100_fpm_at_one_foot(law, cfm):
    flow = required_flow(100 * FPM, law(FOOT, 0.5 * FOOT**2))
    assert flow / CFM == pytest.approx(cfm, rel=0, abs=TOL_CFM)


def test_tolerances_tell_the_losses_apart():
    losses = sorted(loss for _, loss in LOSS)
    assert min(b - a for a, b in pairwise(losses)) > HALF_DIGIT
    assert abs(velocity_from_pressure(1, 1.3) - 1.29) > HALF_DIGIT


def test_coefficient_of_entry_is_not_one_over_the_loss():
    assert all(abs(1 / entry_loss_coefficient(shape) - value) > HALF_DIGIT for shape, value in ENTRY)


def test_tolerance_sees_pi_in_place_of_ten():
    assert abs(100 * (4 * math.pi * 1 + 0.5) - 1050) > TOL_CFM


# hf.coef.slot and hf.coef.slotfl: Q = 3.7 L V X and 2.6 L V X; for 1 m, 1 m/s and 0.2 m the flow is a fifth of these.
@pytest.mark.read
@pytest.mark.parametrize("law, coefficient", [(silverman_plain, 3.7), (silverman_flanged, 2.6)])
def test_coefficient_of_a_slot(law, coefficient):
    assert required_flow(1.0, law(0.2, 1.0)) / 0.2 == pytest.approx(coefficient, rel=0, abs=0.05)


# hf.slot.ex, built on these formulas: 4 ft long, 100 fpm at 2 ft.
@pytest.mark.memory
@pytest.mark.parametrize("law, cfm", [(silverman_plain, 2960), (silverman_flanged, 2080)])
def test_flow_of_a_slot_for_100_fpm_at_two_feet(law, cfm):
    flow = required_flow(100 * FPM, law(2 * FOOT, 4 * FOOT)) / CFM
    assert flow == pytest.approx(cfm, rel=0, abs=TOL_CFM)
