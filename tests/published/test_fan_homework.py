"""[fan-homework], six questions with answers, read from an online copy."""

import pytest

from hoodwright.ducts import scaled_flow, scaled_power, scaled_pressure

SLOWER, FASTER = 1500 / 2000, 1500 / 1300
# law, old value, speed ratio, printed answer, half its last printed digit
# check rows: fan.hw.q, fan.hw.p, fan.hw.h, fan.hw.q2, fan.hw.p2, fan.hw.h2
ROWS = [
    pytest.param(scaled_flow, 6000, SLOWER, 4500, 0.5, id="cfm, slower"),
    pytest.param(scaled_pressure, 4, SLOWER, 2.25, 0.005, id="in wg, slower"),
    pytest.param(scaled_power, 6, SLOWER, 2.53, 0.005, id="bhp, slower"),
    pytest.param(scaled_flow, 2000, FASTER, 2308, 0.5, id="cfm, faster"),
    pytest.param(scaled_pressure, 3.00, FASTER, 3.99, 0.005, id="in wg, faster"),
    pytest.param(scaled_power, 1.0, FASTER, 1.54, 0.005, id="kW, faster"),
]
EXPONENT = {scaled_flow: 1, scaled_pressure: 2, scaled_power: 3}


@pytest.mark.read
@pytest.mark.parametrize("law, old, speed_ratio, printed, tolerance", ROWS)
def test_fan_law(law, old, speed_ratio, printed, tolerance):
    assert law(old, speed_ratio) == pytest.approx(printed, rel=0, abs=tolerance)


@pytest.mark.parametrize("law, old, speed_ratio, printed, tolerance", ROWS)
def test_tolerance_tells_a_slightly_wrong_exponent_apart(law, old, speed_ratio, printed, tolerance):
    for wrong in (EXPONENT[law] - 0.06, EXPONENT[law] + 0.06):
        assert abs(old * speed_ratio**wrong - printed) > tolerance
