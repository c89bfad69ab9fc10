import fluids
import numpy as np
import pytest

from hoodwright.ducts import (
    equivalent_diameter_at_equal_flow,
    fanning_from_darcy,
    friction,
    friction_factor,
    haaland_1983,
    hydraulic_diameter,
    pressure_loss,
    reynolds_number,
    roughness,
    swamee_jain_1976,
    wright_1945,
)
from hoodwright.errors import InputError, NoSolution, RangeError


def test_laminar_factor_is_64_over_reynolds():
    assert friction_factor(1000.0, 0.01) == 0.064


@pytest.mark.parametrize("relative_roughness", [0.0, 1e-6, 1e-4, 1e-3, 1e-2, 0.05, 0.1])
@pytest.mark.parametrize("reynolds", [4000.0, 1e4, 1e5, 1e6, 1e8])
def test_colebrook_agrees_with_fluids(reynolds, relative_roughness):
    expected = fluids.Colebrook(reynolds, relative_roughness)
    assert friction_factor(reynolds, relative_roughness) == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize("relative_roughness", [0.0, 1e-4, 0.05])
@pytest.mark.parametrize("reynolds", [5e3, 1e5, 1e8])
def test_explicit_forms_agree_with_fluids(reynolds, relative_roughness):
    haaland = fluids.friction.Haaland(reynolds, relative_roughness)
    swamee = fluids.friction.Swamee_Jain_1976(reynolds, relative_roughness)
    assert haaland_1983(reynolds, relative_roughness) == pytest.approx(haaland, rel=1e-9)
    # fluids writes 6.97^0.9 = 5.73997 for the published 5.74
    assert swamee_jain_1976(reynolds, relative_roughness) == pytest.approx(swamee, rel=2e-6)


def test_bridge_from_laminar_to_turbulent_stays_between_both_laws():
    reynolds = np.linspace(2001, 3999, 50)
    f = friction_factor(reynolds, 1e-3)
    assert np.all(f > 64 / reynolds)
    assert np.all(f < friction_factor(4000.0, 1e-3) * 1.005)


def test_factor_of_zero_reynolds_number_is_refused():
    with pytest.raises(RangeError, match=r"^Reynolds number 0 is not above 0; give its true size$"):
        friction_factor([1e5, 0.0], 1e-3)


def test_absolute_roughness_in_place_of_relative_is_refused():
    text = r"^relative roughness 0.15 is above 0.1, the limit of this formula; give the height of the roughness"
    with pytest.raises(RangeError, match=text):
        friction_factor(1e5, 0.15)


@pytest.mark.parametrize("bad", [np.nan, np.inf])
def test_reynolds_that_is_not_a_number_is_refused(bad):
    with pytest.raises(RangeError, match=rf"^Reynolds number {bad} is not a finite number; give a number$"):
        friction_factor(bad, 1e-3)


def test_iteration_that_does_not_settle_says_how_far_it_came(monkeypatch):
    monkeypatch.setattr(friction, "MAX_STEPS", 1)
    text = (
        r"^friction factor did not settle: residual \d\S* after 1 steps, Reynolds number 100000 to 100000, "
        r"relative roughness 0.001 to 0.001; check both$"
    )
    with pytest.raises(NoSolution, match=text):
        friction_factor(1e5, 1e-3)


def test_explicit_forms_refuse_what_lies_outside_their_range():
    with pytest.raises(
        RangeError,
        match=r"^Reynolds number 3000 is below 4000, the limit of this formula; use friction_factor there$",
    ):
        haaland_1983(3000.0, 1e-3)
    with pytest.raises(RangeError, match=r"^Reynolds number 4500 is below 5000, the limit of this formula"):
        swamee_jain_1976(4500.0, 1e-3)
    with pytest.raises(RangeError, match=r"^relative roughness 0.06 is above 0.05, the limit"):
        haaland_1983(1e5, 0.06)


def test_still_air_has_reynolds_number_and_loss_of_zero():
    assert reynolds_number(0.0, 0.2, 1.2, 1.8e-5) == 0.0
    assert pressure_loss(0.02, 10.0, 0.2, 0.0) == 0.0


def test_negative_inputs_are_refused_by_name():
    with pytest.raises(RangeError, match=r"^velocity -2 m/s is below 0 m/s; give it as a positive size$"):
        reynolds_number(-2.0, 0.2, 1.2, 1.8e-5)
    with pytest.raises(RangeError, match=r"^diameter 0 m is not above 0 m; give its true size$"):
        pressure_loss(0.02, 10.0, 0.0, 60.0)
    with pytest.raises(RangeError, match=r"^diameter -0.1 m is not above 0 m"):
        wright_1945(20.0, -0.1)
    with pytest.raises(RangeError, match=r"^height 0 m is not above 0 m"):
        hydraulic_diameter(0.2, 0.0)
    with pytest.raises(RangeError, match=r"^width -1 m is not above 0 m"):
        equivalent_diameter_at_equal_flow(-1.0, 0.2)
    with pytest.raises(RangeError, match=r"^friction factor -0.02 is below 0"):
        fanning_from_darcy(-0.02)


def test_roughness_of_a_range_is_its_rougher_end():
    assert roughness("flexible") == pytest.approx(3.0e-3)
    assert roughness("galvanised") == pytest.approx(0.15e-3)
    assert roughness("stainless") == roughness("black iron") == pytest.approx(0.0457e-3)


def test_unknown_material_is_answered_with_the_known_ones():
    text = (
        "^material 'tin' is not in table duct_roughness; it has: galvanised, medium smooth, black iron, stainless, "
        "PVC, flexible$"
    )
    with pytest.raises(InputError, match=text):
        roughness("tin")
