"""[question-bank]: worked answers on the ventilation equations of an examination. Numbers are those of its file.

Its questions on rooms have no function here yet. Openings asked about at 1.8 diameters, and slots at one length, lie
outside the range of the equations and are refused: see the tests called `..._beyond_its_range`.
"""

import math

import pytest

from hoodwright.air import total_pressure, velocity_from_pressure, velocity_pressure
from hoodwright.ducts import (
    corrected_flow,
    fan_static_pressure,
    fan_total_pressure,
    resultant_velocity_pressure,
    scaled_flow,
    scaled_power,
    scaled_pressure,
    static_pressure_behind_hood,
)
from hoodwright.errors import RangeError
from hoodwright.hoods import (
    cold_canopy_flow,
    dallavalle_flanged,
    dallavalle_plain,
    enclosure_flow,
    entry_coefficient,
    entry_loss_coefficient,
    flow_from_suction,
    silverman_flanged,
    silverman_plain,
)

FPM, FOOT, CFM = 0.00508, 0.3048, 0.3048**3 / 60
IN_WG_68_F = 248.6  # Pa, the inch of water that belongs to 4005
US_DENSITY, SI_DENSITY = 0.075 * 0.45359237 / FOOT**3, 1.2  # kg/m3
BELL = 1 / 0.98**2 - 1  # loss of the hood whose coefficient of entry is told


def half(digit):
    """Half the last printed digit."""
    return digit / 2 * (1 + 1e-9)


@pytest.mark.read
def test_loss_of_a_plain_hood_at_half_an_inch():  # question 4
    assert entry_loss_coefficient("plain") * 0.5 == pytest.approx(0.47, rel=0, abs=half(0.01))


@pytest.mark.read
def test_velocity_at_900_pascals():  # question 7
    assert velocity_from_pressure(900, SI_DENSITY) == pytest.approx(38.7, rel=0, abs=half(0.1))


@pytest.mark.read
def test_velocity_at_4_inches():  # question 8; 4005 is rounded to 1, and doubled here
    found = velocity_from_pressure(4 * IN_WG_68_F, US_DENSITY) / FPM
    assert found == pytest.approx(8010, rel=0, abs=2 * half(1))


@pytest.mark.read
def test_static_pressure_behind_a_hood():  # question 9
    found = static_pressure_behind_hood(0.6, 2 * IN_WG_68_F) / IN_WG_68_F
    assert found == pytest.approx(-3.2, rel=0, abs=half(0.1))


@pytest.mark.read
def test_total_pressure():  # question 12
    assert total_pressure(0.4 * IN_WG_68_F, 0.1 * IN_WG_68_F) / IN_WG_68_F == pytest.approx(0.5, rel=0, abs=half(0.1))


@pytest.mark.read
def test_velocity_pressure_at_4005_fpm():  # question 13
    found = velocity_pressure(4005 * FPM, US_DENSITY) / IN_WG_68_F
    assert found == pytest.approx(1, rel=0, abs=1 / 4005)  # twice the rounding of 4005


@pytest.mark.read
def test_velocity_pressure_at_12_9_metres_a_second():  # question 14
    assert velocity_pressure(12.9, SI_DENSITY) == pytest.approx(100, rel=0, abs=half(1))


@pytest.mark.read
def test_coefficient_of_entry():  # question 15
    assert entry_coefficient(0.8 / 0.4 - 1) == pytest.approx(0.7, rel=0, abs=half(0.1))


@pytest.mark.read
def test_resultant_velocity_pressure():  # question 16
    assert resultant_velocity_pressure([200, 300], [1.5, 2.0]) == pytest.approx(1.8, rel=0, abs=half(0.1))


@pytest.mark.read
def test_flow_from_hood_suction():  # question 17; 4005 is rounded to 1
    found = flow_from_suction(4 * IN_WG_68_F, 0.196 * FOOT**2, BELL, US_DENSITY) / CFM
    assert found == pytest.approx(1539, rel=0, abs=half(1) + 1539 * 0.5 / 4005)


@pytest.mark.read
@pytest.mark.xfail(reason="published slip: 0.196 ft2 is counted as 0.196 m2", strict=True)
def test_flow_from_hood_suction_in_si():  # question 18
    assert flow_from_suction(3600, 0.196 * FOOT**2, BELL, SI_DENSITY) == pytest.approx(14.9, rel=0, abs=half(0.1))


@pytest.mark.read
def test_corrected_flow_of_a_branch():  # question 19
    assert corrected_flow(1500, -4, -1) == pytest.approx(3000, rel=0, abs=half(1))


@pytest.mark.read
def test_flow_of_a_fan_at_three_times_its_speed():  # question 28
    assert scaled_flow(400, 3) == pytest.approx(1200, rel=0, abs=half(1))


@pytest.mark.read
def test_pressure_of_a_fan_at_three_times_its_speed():  # question 29
    assert scaled_pressure(5, 3) == pytest.approx(45, rel=0, abs=half(1))


@pytest.mark.read
def test_power_of_a_fan_twice_as_large():  # question 30
    assert scaled_power(20, 1, 2) == pytest.approx(640, rel=0, abs=half(1))


@pytest.mark.read
def test_fan_static_pressure():  # question 31; its worked line ends in 16, its key says 14
    assert fan_static_pressure(10, -5 + 1) == pytest.approx(14, rel=0, abs=half(1))


@pytest.mark.read
def test_fan_total_pressure():  # question 32
    assert fan_total_pressure(8, -5) == pytest.approx(13, rel=0, abs=half(1))


@pytest.mark.read
def test_flow_of_a_booth():  # question 37
    assert enclosure_flow((3 * FOOT) ** 2, 200 * FPM) / CFM == pytest.approx(1800, rel=0, abs=half(1))


@pytest.mark.read
def test_flow_of_a_canopy_one_foot_above_a_tank_of_five_by_three():  # question 38
    found = cold_canopy_flow(200 * FPM, 16 * FOOT, FOOT) / CFM
    assert found == pytest.approx(4480, rel=0, abs=half(1))


@pytest.mark.read
@pytest.mark.parametrize("law, printed", [(dallavalle_plain, 9.1), (dallavalle_flanged, 12.1)])
def test_velocity_two_feet_before_four_square_feet(law, printed):  # questions 39 and 40
    found = law(2 * FOOT, 4 * FOOT**2) * 400 * CFM / FPM
    assert found == pytest.approx(printed, rel=0, abs=half(0.1))


@pytest.mark.parametrize("law", [dallavalle_plain, dallavalle_flanged])
def test_plain_opening_is_asked_beyond_its_range(law):  # questions 35 and 36: 12 in before a 6 in square
    with pytest.raises(RangeError, match=r"distance 0\.3048 m is above"):
        law(FOOT, 0.25 * FOOT**2)


@pytest.mark.parametrize("law", [silverman_plain, silverman_flanged])
def test_slot_is_asked_beyond_its_range(law):  # questions 33 and 34: 12 in before a slot of 12 in
    with pytest.raises(RangeError, match=r"distance 0\.3048 m is above"):
        law(FOOT, FOOT)


def test_tolerances_can_fail():
    assert abs(entry_coefficient(0.8 / 0.4) - 0.7) > half(0.1)  # the acceleration counted twice
    assert abs(4 * 4005 - 8010) > half(1)  # a root left out
    assert abs(flow_from_suction(4 * 249.089, 0.196 * FOOT**2, BELL, 1.2) / CFM - 1539) > 0.7  # the other inch
    assert abs(math.sqrt(1.5 * 2.0) - 1.8) > half(0.1)  # a mean of another kind
