"""What must hold for any shop as built: mass, energy over a junction, and what a damper does to its own branch."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from built_shop import TWO_DUCTS, two_hoods
from hoodwright.tasks.as_built.network import as_built

DAMPED = TWO_DUCTS.replace("B, from: hood 2, to: J,", "B, from: hood 2, to: J, joins_at: 30 deg,")
WORKPLACE = two_hoods(DAMPED)
loss = st.floats(0.0, 200.0)


def built(a: float, b: float, law: str = "momentum"):
    return as_built(WORKPLACE, dampers={"A": a, "B": b}, law=law, points=False)


@settings(max_examples=40, deadline=None)
@given(a=loss, b=loss, more=st.floats(0.1, 100.0), law=st.sampled_from(["momentum", "tabulated"]))
def test_closing_a_damper_never_raises_its_own_flow(a, b, more, law):
    before, after = built(a, b, law), built(a, b + more, law)
    assert after.hood("hood 2").flow <= before.hood("hood 2").flow * (1 + 1e-9)
    assert after.hood("hood 1").flow >= before.hood("hood 1").flow * (1 - 1e-9)


@settings(max_examples=40, deadline=None)
@given(a=loss, b=loss)
def test_mass_stays_and_energy_falls_over_a_junction(a, b):
    found = built(a, b)
    (junction,) = found.junctions
    assert junction.imbalance == pytest.approx(0.0, abs=1e-9)
    arrives = sum(side.flow * side.total_pressure for side in junction.sides)
    main = found.duct("main")
    assert main.flow * main.total_pressure_start <= arrives + 1e-6


@settings(max_examples=30, deadline=None)
@given(load=st.floats(0.5, 1.5))
def test_a_faster_fan_moves_more(load):
    slow, fast = (as_built(WORKPLACE, speeds={"fan": load * more}, points=False) for more in (1.0, 1.1))
    # every loss goes with the square of the flow, so flow goes with the speed
    assert fast.hood("hood 1").flow == pytest.approx(1.1 * slow.hood("hood 1").flow, rel=1e-3)
