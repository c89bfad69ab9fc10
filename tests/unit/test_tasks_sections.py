"""Fittings, cones, dampers, caps and hot air in one run, worked out on paper beside test_tasks_run.

Velocity pressures there: A 120.499 Pa (100 mm), B 73.5466 Pa (80 mm), main, link and stack 111.052 Pa (125 mm).
"""

import pytest
from test_tasks_run import TWO_BRANCHES, answer_of, ducts_of, paper

from hoodwright.results import Verdict
from hoodwright.tasks.assess import assess
from hoodwright.workplace import parse_workplace

B_ELBOW, A_ELBOW = "fittings: [{elbow: 90 deg}]", "fittings: [{elbow: 90 deg, pieces: 5}]"
B_END = -261.148


def end_of_b(fitting: str) -> float:
    return ducts_of((B_ELBOW, f"fittings: [{fitting}]"))["B"].static_pressure


@pytest.mark.parametrize(
    "fitting, loss_vp",
    [
        ("{elbow: 90 deg, pieces: 3}", 0.34),
        ("{elbow: 60 deg, pieces: 4, radius: 2}", 0.24 * 2 / 3),
        ("{elbow: 45 deg, radius: 1}", 0.22 * 0.60),
        ("{elbow: 60 deg, mitred: true}", 0.55 * (1.09 + (1.14 - 1.09) * (6 - 5.8712) / 2)),  # Re 58712
        ("{loss: 0.7, name: spark trap}", 0.7),
    ],
)
def test_a_fitting_in_place_of_the_smooth_elbow(fitting, loss_vp):
    """B ends at -261.148 Pa with the smooth elbow of 0.15 VP."""
    assert end_of_b(fitting) == pytest.approx(B_END + (0.15 - loss_vp) * 73.5466, rel=1e-4)


def test_a_damper_takes_its_pascals():
    assert end_of_b("{elbow: 90 deg}, {damper: 30 Pa}") == pytest.approx(B_END - 30, rel=1e-4)
    lines = ducts_of((B_ELBOW, "fittings: [{damper: 30 Pa, name: gate}]"))["B"].lines
    assert ("gate, as set at this flow", "30 Pa") in [(line.formula, line.filled) for line in lines]


def test_a_wide_bend_counts_its_own_friction():
    """R/D 4, 90 deg, f 0.0258157: f pi/2 4 = 0.162205; (0.1 + 2.4 f) sin 45 = 0.114522;
    6.6 f (sqrt(sin 45) + sin 45) / 4^2 = 0.0164849: 0.293212 VP."""
    assert end_of_b("{elbow: 90 deg, radius: 4}") == pytest.approx(B_END + (0.15 - 0.293212) * 73.5466, rel=1e-4)


def test_rectangular_elbows():
    """125 x 100 mm stack: VP 107.035 Pa, 3 m lose 67.397 Pa. Short over long side 0.8: R/side 1.0 between 0.28 and
    0.20, 0.232 VP; mitred at 0.8 between 1.2 and 1.2, Re 98375: 1.2 x 1.0416 = 1.24996 VP."""
    flat = "to: outside, rectangle: [125 mm, 100 mm]"
    for fitting, loss_vp in (
        ("{elbow: 90 deg, radius: 1.0}", 0.232),
        ("{elbow: 90 deg, mitred: true}", 1.2 * 1.041625),
    ):
        duct = ducts_of(("to: outside, round: 125 mm", f"{flat}, fittings: [{fitting}]"))["stack"]
        assert duct.static_pressure_start == pytest.approx(67.397 + loss_vp * 107.035, rel=1e-4)


def test_a_weather_cap_and_a_cone_on_the_stack():
    """Gap 0.75: 0.18 VP = 19.989 Pa more than 60.2446 Pa."""
    cap = (
        "to: outside, round: 125 mm, length: 3 m",
        "to: outside, round: 125 mm, length: 3 m, fittings: [{weather_cap: 0.75}]",
    )
    assert ducts_of(cap)["stack"].static_pressure_start == paper(60.2446 + 0.18 * 111.052)


def test_a_cone_that_narrows_into_the_main():
    """45 deg: 0.04 x 111.052 = 4.442 Pa on top of the acceleration of 6.2038 Pa."""
    main = ducts_of(
        ("to: filter, round: 125 mm, length: 5 m", "to: filter, round: 125 mm, length: 5 m, taper: 45 deg")
    )["main"]
    assert main.static_pressure_start == paper(-300.877 - 4.442)


def test_a_cone_that_widens_wins_back_pressure():
    """Main of 160 mm: VP 111.052 (125 / 160)^4 = 41.3698 Pa, the streams bring 104.848 Pa, 10 deg loses 0.28:
    regain 0.72 x (104.848 - 41.3698) = 45.704 Pa. Without the cone nothing is won back."""
    wide = "to: filter, round: 160 mm, length: 5 m"
    cone = ducts_of(("to: filter, round: 125 mm, length: 5 m", f"{wide}, taper: 10 deg"))["main"]
    assert cone.static_pressure_start == paper(-294.673 + 45.704)
    plain = ducts_of(("to: filter, round: 125 mm, length: 5 m", wide))["main"]
    assert plain.static_pressure_start == paper(-294.673)
    steep = ducts_of(("to: filter, round: 125 mm, length: 5 m", f"{wide}, taper: 60 deg"))["main"]
    assert steep.static_pressure_start == paper(-294.673)


def test_nothing_is_won_back_behind_a_filter():
    wide = ("from: filter, to: fan, round: 125 mm", "from: filter, to: fan, round: 160 mm, taper: 10 deg")
    assert ducts_of(wide)["link"].static_pressure_start == paper(-901.285)


def test_hot_air_weighs_less_and_mixes_by_mass():
    """A at 90 degC: 1.20415 x 293.15 / 363.15 = 0.97204 kg/m3; VP 14.1471^2 / 2 x 0.97204 = 97.2729 Pa.
    Masses 0.111111 x 0.97204 = 0.108005 and 0.0555556 x 1.20415 = 0.0668972 kg/s: T = (0.108005 x 363.15
    + 0.0668972 x 293.15) / 0.174902 = 336.376 K, rho = 1.04942, Q = 0.166666 m3/s."""
    answer = answer_of(("to: J, round: 100 mm", "to: J, temperature: 90 degC, round: 100 mm"))
    a, b, main, *_ = answer.ducts
    assert (a.density, a.velocity_pressure, a.temperature) == (paper(0.97204), paper(97.2729), paper(363.15))
    assert b.velocity_pressure == paper(73.5466)
    assert (main.temperature, main.density, main.flow) == (paper(336.376), paper(1.04942), paper(0.166666))
    assert answer.hoods[0].suction == paper(1.49 * 97.2729)
    (fan,) = answer.fans
    assert fan.static_pressure_standard == pytest.approx(fan.static_pressure * 1.2 / 1.04942, rel=1e-4)
    assert fan.power_standard == pytest.approx(fan.power * 1.2 / 1.04942, rel=1e-4)
    formulas = [line.formula for line in main.lines]
    assert formulas[:3] == ["T = mean of what arrives, by mass", "rho = rho room x T room / T, at one pressure", "Q = mass that arrives / rho"]  # fmt: skip  # noqa: E501


def test_air_that_cools_on_its_way_shrinks():
    """The same main, stated to have cooled to 20 degC: 0.174902 / 1.20415 = 0.145250 m3/s."""
    cooled = answer_of(
        ("to: J, round: 100 mm", "to: J, temperature: 90 degC, round: 100 mm"),
        ("from: J, to: filter, round", "from: J, to: filter, temperature: 20 degC, round"),
    )
    assert cooled.ducts[2].flow == paper(0.145250)
    assert cooled.fans[0].flow == paper(0.145250)


def test_belts_and_standard_density():
    """327.204 W / 0.95 = 344.425 W; air of 1.20415 kg/m3 is within half a per cent of standard, so no line is added."""
    (fan,) = answer_of(("efficiency: 50 %", "efficiency: 50 %, drive_loss: 5 %")).fans
    assert fan.motor_power == paper(344.425)
    assert not any("catalogue" in line.formula for line in fan.lines)


def test_materials():
    answer = answer_of((B_ELBOW, "fittings: [{elbow: 90 deg}, {damper: 30 Pa}]"), ("to: outside, round: 125 mm", "to: outside, rectangle: [125 mm, 100 mm]"))  # fmt: skip  # noqa: E501
    found = {(m.item, m.size, m.make): (m.count, m.length, m.sheet) for m in answer.materials}
    assert found["duct, round", 0.125, "galvanised"] == (2, 6.0, pytest.approx(6 * 3.14159 * 0.125, rel=1e-5))
    assert found["duct, 125 x 100 mm", None, "galvanised"] == (1, 3.0, pytest.approx(3 * 0.45))
    assert found["elbow 90 deg, 5 pieces, radius 1.5", 0.1, "galvanised"] == (1, None, None)
    assert found["damper with lock", 0.08, "galvanised"][0] == 1
    assert found["branch entry 30 deg", 0.08, "galvanised"][0] == 1
    assert ("fan", None, "fan") in found and ("air cleaner", None, "filter") in found


def cautions_of(about: str, *changes) -> list[str]:
    return [c.text.replace("\u2009", " ") for c in answer_of(*changes).cautions if c.about == about]


def test_a_damper_is_warned_of_with_the_velocity_left_when_it_shuts():
    """The main keeps 400 of its 600 m3/h: 13.5812 x 2 / 3 = 9.05 m/s, and fume needs 10.16 m/s."""
    found = cautions_of("B", (B_ELBOW, "fittings: [{damper: 30 Pa}]"))
    assert found[0] == (
        "its damper: lock it, mark its position and write it down; it wears and gets moved. With it shut, all else as "
        "intended, main runs at 9.05 m/s: too slow for the 10.2 m/s it needs"
    )


def test_a_damper_where_explosible_dust_passes():
    text = TWO_BRANCHES.replace("{name: fume, kind: fume}", "{name: fume, kind: dust, hazards: [explosible dust]}")
    text = text.replace(B_ELBOW, "fittings: [{damper: 30 Pa}]")
    found = [c.text for c in assess(parse_workplace(text)).cautions if c.about == "B"]
    assert any(words.startswith("a damper where explosible dust passes") for words in found)


def test_hot_air_and_flat_elbows_are_warned_of():
    hot = cautions_of("A", ("to: J, round: 100 mm", "to: J, temperature: 90 degC, round: 100 mm"))
    assert hot[0].startswith("air of 90 °C weighs 0.972 kg/m³; flows here are those of that air")
    flat = ("to: outside, round: 125 mm", "to: outside, rectangle: [300 mm, 50 mm], fittings: [{elbow: 90 deg}]")
    assert any(words.startswith("flatter than 2 to 1") for words in cautions_of("stack", flat))


def test_only_smooth_elbows_are_told_to_be_counted_as_smooth():
    told = "an elbow without 'pieces' is counted as smooth"
    assert any(words.startswith(told) for words in cautions_of("B"))
    for fitting in ("{elbow: 90 deg, mitred: true}", "{elbow: 90 deg, radius: 4}", "{elbow: 90 deg, pieces: 3}"):
        assert not any(words.startswith(told) for words in cautions_of("B", (B_ELBOW, f"fittings: [{fitting}]")))


def test_fan_of_belts_is_not_told_that_belts_are_missing():
    (plain, *_), (belted, *_) = cautions_of("fan"), cautions_of("fan", ("efficiency: 50 %", "efficiency: 50 %, drive_loss: 5 %"))  # fmt: skip  # noqa: E501
    assert "belt and motor losses are not in its power" in plain
    assert "losses of the motor are not in its power" in belted


def test_behind_a_filter_nothing_settles():
    """Workshop dust asks for 17.78 m/s; link and stack run at 13.58 m/s, behind the filter."""
    ducts = ducts_of(("kind: fume", "kind: dust"))
    assert [ducts[name].carries for name in ("main", "link", "stack")] == [
        "workshop dust",
        "cleaned air",
        "cleaned air",
    ]
    assert [ducts[name].transport.verdict for name in ("main", "link")] == [Verdict.SHORT, Verdict.MEETS]
    assert ducts["stack"].transport.because.endswith("what an air cleaner leaves settles at no speed, while it works")
