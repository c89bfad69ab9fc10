"""The whole answer: its air, its sources, its words, and its form for machines."""

import json
import math
import re

import pytest

from hoodwright import __version__
from hoodwright.sources import all_sources
from hoodwright.tasks.assess import assess
from hoodwright.tasks.export import as_json
from hoodwright.workplace import parse_workplace
from hoodwright.workplace.starters import starter_text
from two_hoods import TWO_HOODS

DEMO = TWO_HOODS
STARTERS = [TWO_HOODS, starter_text("demo"), starter_text("starter")]
NEVER_SAID = re.compile(r"\b(safe|safely|safety|pass|passes|passed|nan|inf)\b", re.IGNORECASE)
NO_PUBLICATION = {"continuity", "definition", "stated by the user"}


def answer_of(*changes: tuple[str, str], system: str | None = None):
    text = DEMO
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return assess(parse_workplace(text), system)


def air(text: str) -> tuple[str, str]:
    return "air: {temperature: 21 degC, relative_humidity: 45 %, altitude: 230 m}", f"air: {{{text}}}"


def test_the_air_of_the_demo():
    """p = 101325 x (1 - 2.25577e-5 x 230)^5.2559 = 98592 Pa. Steam table at 21 degC: 2488 Pa, 45 % of it 1120 Pa:
    W = 0.621945 x 1120 / 97472 = 0.007146; rho = (98592 - 0.378 x 1120) / (287.05 x 294.15) = 1.1626 kg/m3."""
    found = answer_of().air
    assert found.p_abs == pytest.approx(98592, abs=2)
    assert found.humidity_ratio == pytest.approx(0.007146, rel=2e-3)
    assert found.density == pytest.approx(1.1626, rel=2e-4)


def test_nothing_said_of_the_air_is_dry_air_of_20_degrees_at_sea_level():
    found = answer_of(("air: {temperature: 21 degC, relative_humidity: 45 %, altitude: 230 m}\n", "")).air
    assert (found.temperature, found.p_abs, found.humidity_ratio) == (293.15, 101325, 0)


@pytest.mark.parametrize("humidity", ["relative_humidity: 50 %", "dew_point: 13.86 degC", "wet_bulb: 17.88 degC"])
def test_humidity_in_three_ways_is_one_air(humidity):
    """A psychrometric chart at 25 degC and 50 %: 9.9 g/kg, dew point 13.9 degC, wet bulb 17.9 degC."""
    found = answer_of(air(f"temperature: 25 degC, {humidity}, pressure: 101325 Pa")).air
    assert found.humidity_ratio == pytest.approx(0.0099, abs=5e-5)
    assert found.density == pytest.approx(1.177, abs=5e-4)


def test_altitude_lowers_the_density_and_leaves_the_required_flow():
    low, high = answer_of(), answer_of(("altitude: 230 m", "altitude: 2000 m"))
    assert high.air.density < low.air.density
    assert high.hoods[0].needs == low.hoods[0].needs
    assert high.fans[0].power < low.fans[0].power


def test_the_design_flow_is_the_intended_one():
    assert answer_of().hoods[0].design_flow * 3600 == pytest.approx(320)


def test_without_intention_the_design_flow_is_what_is_needed():
    """1.0 m/s for an asthmagen: 0.75 x (10 x 0.1² + 0.00785398) = 0.0808905 m3/s, the most demanding of three."""
    hood = answer_of(("    intended_flow: 320 m3/h\n", "")).hoods[0]
    assert hood.design_flow == pytest.approx(0.0808905, rel=1e-5)
    assert hood.worst.velocity == pytest.approx(1.0)


def test_a_source_in_the_plane_of_the_opening_still_gets_a_flow_for_its_duct():
    """No equation holds there, and the certain least is 0: the face at the capture velocity stands in,
    0.25 m/s x 0.00785398 m2."""
    away = (
        ("at: [5.0 m, 2.10 m, 1.10 m]", "at: [5.0 m, 1.70 m, 1.12 m]"),
        ("    intended_flow: 250 m3/h\n", ""),
    )
    hood = answer_of(*away).hoods[1]
    assert hood.worst.bound.least == 0
    assert hood.design_flow == pytest.approx(0.25 * 0.00785398, rel=1e-5)


@pytest.mark.parametrize("text", STARTERS)
@pytest.mark.parametrize("system", ["SI", "US"])
def test_no_answer_says_safe_or_pass(text, system):
    answer = assess(parse_workplace(text), system)
    assert not NEVER_SAID.search(json.dumps(as_json(answer), ensure_ascii=False))


@pytest.mark.parametrize("text", STARTERS)
def test_every_citation_stands_in_the_list_of_sources(text):
    answer = assess(parse_workplace(text))
    lines = [law.line for hood in answer.hoods for need in hood.needs for law in need.laws]
    lines += [line for part in (*answer.ducts, *answer.fans) for line in part.lines]
    cited = [line.source for line in lines] + [caution.source for caution in answer.cautions]
    keys = {piece.split(",")[0].strip() for citation in cited for piece in citation.split(";")} - NO_PUBLICATION
    assert keys <= set(answer.sources)
    assert set(answer.sources) <= set(all_sources())


def recomputed(filled: str) -> tuple[float, float]:
    """Both sides of "0.5 x (10 x 0.1² + 0.0079) = 0.054 m3/s", the left one worked out."""
    left, right = filled.rsplit(" = ", 1)
    left = left.split(": ")[-1].replace("²", "**2").replace("^", "**").replace(" x ", " * ")
    left = re.sub(r"(\d) (pi|atan)", r"\1 * \2", left)
    words = {"pi": math.pi, "sqrt": math.sqrt, "atan": math.atan, "__builtins__": {}}
    return eval(left, words), float(right.split()[0])


OTHER_SHAPES = [
    (),
    (("opening: {round: 100 mm}", "opening: {rectangle: [200 mm, 120 mm]}"),),
    (("opening: {round: 100 mm}", "opening: {rectangle: [90 mm, 80 mm]}"), ("[5.0 m, 2.10 m", "[5.0 m, 1.78 m")),
]


@pytest.mark.parametrize("changes", OTHER_SHAPES)
def test_every_line_can_be_recomputed_on_a_calculator(changes):
    answer = answer_of(*changes)
    lines = [law.line for hood in answer.hoods for need in hood.needs for law in need.laws]
    lines += [line for part in (*answer.ducts, *answer.fans) for line in part.lines]
    lines += [hood.suction_line for hood in answer.hoods]
    for line in lines:
        left, right = recomputed(line.filled.replace(" Pa / ", " / "))
        assert left == pytest.approx(right, rel=5e-4, abs=0.02), line


# The keys that machines may count on.
PROMISED = {
    "hoods": {
        "name", "type", "flow_m3_s", "required", "velocity_at_source_m_s", "hood_suction_pa", "outcome", "hints",
    },
    "ducts": {"name", "velocity_m_s", "velocity_pressure_pa", "static_pressure_pa", "transport_velocity_m_s"},
    "fans": {"name", "flow_m3_s", "total_pressure_pa", "power_w"},
}  # fmt: skip
UNITS = re.compile(r".*_(m3_s|m2|m_s|pa|pa_s|w|m|rad|k|kg_m3)$")


def numbers_of(data, key=""):
    if isinstance(data, dict):
        for name, value in data.items():
            yield from numbers_of(value, name)
    elif isinstance(data, list):
        for value in data:
            yield from numbers_of(value, key)
    elif isinstance(data, float):
        yield key, data


def test_the_promised_keys_are_there():
    data = as_json(answer_of())
    assert {"hoods", "ducts", "fans", "cautions", "sources"} <= set(data)
    for section, keys in PROMISED.items():
        assert all(keys <= set(part) for part in data[section])
    for hood in data["hoods"]:
        assert set(hood["outcome"]) == {"enough", "met"}
        assert all({"equation", "flow_m3_s", "source"} <= set(law) for law in hood["required"])


def test_every_number_says_its_unit():
    data = as_json(answer_of())
    by_name = {name for junction in data["junctions"] for name in junction["static_pressures_pa"]}
    plain = {"humidity_ratio", "spread", "ratio"} | by_name
    assert {key for key, _ in numbers_of(data) if not UNITS.match(key)} <= plain


def test_machines_get_si_whatever_the_words_are_in():
    si, us = (list(numbers_of(as_json(answer_of(system=system)))) for system in ("SI", "US"))
    hints = {"flow_m3_s", "fan_power_w", "make_up_air_m3_s"}  # rounded to the digits of their own unit
    made = {"nearest_made_diameter_m", "nearest_made_velocity_m_s"}  # ducts come in other sizes
    told = [[pair for pair in pairs if pair[0] not in hints | made] for pairs in (si, us)]
    assert told[0] == told[1]


def test_machines_get_these_numbers():
    data = as_json(answer_of())
    nozzle, far = data["hoods"]
    assert nozzle["flow_m3_s"] == pytest.approx(320 / 3600)
    assert nozzle["today"] == {
        "flow_m3_s": pytest.approx(338 / 3600),
        "uncertainty_m3_s": pytest.approx(0.05 * 338 / 3600),
    }
    assert far["required"] == []
    assert far["velocity_at_source_m_s"] is None
    assert far["needs"][0]["required_flow_m3_s"] is None
    assert far["outcome"]["enough"]["verdict"] == "falls short"
    assert data["version"] == __version__


def test_the_file_chooses_the_units_of_the_words_and_the_caller_may_overrule():
    american = ("units: SI", "units: US")
    assert "cfm" in answer_of(american).hoods[0].sentence
    assert "m³/h" in answer_of(american, system="SI").hoods[0].sentence
