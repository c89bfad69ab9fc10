"""Units: what may be typed, what is shown, and what an error says."""

import subprocess
import sys

import pytest

from hoodwright.errors import UnitError
from hoodwright.units import (
    KINDS,
    SYSTEMS,
    StandardFlow,
    parse,
    parse_standard_flow,
    show,
    show_number,
    to_unit,
    understood,
    unit_label,
    write,
)

# Exact by definition: inch 25.4 mm, foot 0.3048 m, pound 0.45359237 kg; pi to 16 digits.
TYPED = [
    ("length", 0.1, "100 mm | 100mm | 10 cm | 0.1 m | 1e-4 km | .1 m | +0.1 metre | 100 MM"),
    ("length", 0.1016, "4 in | 4\" | 4 inch | 4 in. | 4″ | 4''"),
    ("length", 1.2192, "4 ft | 4' | 4′ | 4 feet | 48 in"),
    ("area", 0.09290304, "1 ft2 | 1 ft² | 1 sq ft | 1 square foot | 1 sq. ft | 1 ft ft"),
    (
        "flow",
        320 / 3600,
        "320 m3/h | 320 m³/h | 320 m^3/h | 320 m**3/h | 320 m3 h-1 | 320 cubic metres per hour",
    ),
    ("flow", 0.005, "5 L/s | 5 l/s | 5 litres/s | 5 litres per second | 300 lpm | 0.005 m3/s"),
    ("flow", 500 * 0.3048**3 / 60, "500 cfm | 500 CFM | 500 acfm | 500 ft3/min | 500 cubic feet per minute"),
    ("velocity", 0.508, "0.508 m/s | 0.508 m·s⁻¹ | 100 fpm | 100 ft/min | 100 FPM | 100 feet per minute"),
    ("pressure", -312.0, "-312 Pa | −312 Pa | -0.312 kPa | -3.12 hPa | -3.12 mbar | -312 pa"),
    ("pressure", 9.80665, "1 mm wg | 1 mm H2O | 1 mmH2O | 1 mm H₂O | 1 mm w.g. | 0.1 cm wg"),
    ("pressure", 98000.0, "0.98 bar | 98 kPa | 980 mbar"),
    ("temperature", 293.15, "20 degC | 20 °C | 20°C | 20 C | 20 deg C | 20 ℃ | 293.15 K"),
    ("temperature", 293.15, "68 degF | 68 °F | 68°F | 68 F | 68 deg F | 68 ℉"),
    ("temperature difference", 5.0, "5 K | 5 degC | 9 degF | 5 °C"),
    ("angle", 0.5235987755982988, "30 deg | 30° | 30 ° | 30 degrees | 0.5235987755982988 rad"),
    ("density", 1.2, "1.2 kg/m3 | 1.2 kg/m³ | 1.2 kg m-3 | 1.2 g/L | 1200 g/m3"),
    ("density", 0.45359237 / 0.3048**3, "1 lb/ft3 | 1 lb/cu ft | 1 lbs/ft³"),
    ("mass rate", 2.5e-8, "1.5 mg/min | 0.025 mg/s | 0.09 g/h | 1500 µg/min | 0.025e-6 Kg/s"),
    ("power", 745.6998715822702, "1 hp | 0.7456998715822702 kW | 745.6998715822702 W"),
    ("share", 0.45, "45 % | 45% | 0.45"),
    ("time", 28800.0, "8 h | 8 hr | 480 min | 28800 s | 8 hours"),
    ("concentration", 1e-7, "0.1 mg/m3 | 0.1 mg/m³ | 100 ug/m3 | 100 μg/m3"),
    ("speed of rotation", 2900 / 60, "2900 rpm | 2900 1/min | 2900 /min"),
    ("number", 2.0, "2 | 2.0 | 2e0"),
]


@pytest.mark.parametrize(
    ("text", "kind", "value"),
    [(text, kind, value) for kind, value, texts in TYPED for text in texts.split(" | ")],
)
def test_typed(text, kind, value):
    assert parse(text, kind) == pytest.approx(value, rel=1e-12)


@pytest.mark.parametrize(
    "unit",
    ["in wg", "in w.g.", "in. w.g.", "inwg", "in H2O", "inH2O", '"wg', '" w.g.', "in wc", "inch of water"],
)
def test_inch_of_water(unit):
    assert parse(f"1 {unit}", "pressure") == pytest.approx(249.089, abs=0.0005)


def test_standard_flow_is_kept_at_its_own_reference():
    assert parse_standard_flow("3600 Nm3/h") == StandardFlow(1.0, 273.15, 101325.0)
    assert parse_standard_flow("3600 Sm³/h") == StandardFlow(pytest.approx(1.0), 288.15, 101325.0)
    us = parse_standard_flow("1000 scfm")
    assert us.flow == pytest.approx(1000 * 0.3048**3 / 60)
    assert us.temperature == pytest.approx(294.26, abs=0.005)


def test_standard_flows_compare_as_amounts_of_air():
    normal = parse("288.15 Nm3/h", "standard flow")
    assert parse("303.9740 Sm3/h", "standard flow") == pytest.approx(normal, rel=1e-6)  # 288.15**2 / 273.15


LENGTH = "write for example 250 mm or 10 in"
FLOW = "a flow is needed, for example 300 m3/h or 180 cfm"
STANDARD = (
    "a flow at actual conditions is needed: convert it to the temperature and pressure of the air there "
    "and write for example 300 m3/h or 180 cfm"
)
REFUSED = [
    ("flow", "3 m", f"3 m is a length; {FLOW}"),
    ("flow", "3 mg/m3", f"3 mg/m3 is a concentration; {FLOW}"),
    ("flow", "300", "300 has no unit; write for example 300 m3/h"),
    ("flow", 300, "300 has no unit; write for example 300 m3/h"),
    ("flow", "500 cfmm", "500 cfmm: unit cfmm is not known; did you mean cfm?"),
    ("flow", "300 Nm3/h", f"300 Nm3/h is a standard flow, counted at 0 degC and 101325 Pa; {STANDARD}"),
    ("flow", "300 Sm3/h", f"300 Sm3/h is a standard flow, counted at 15 degC and 101325 Pa; {STANDARD}"),
    (
        "flow",
        "9 scfm",
        f"9 scfm is a standard flow, counted at 70 degF (21.1 degC) and 101325 Pa; {STANDARD}",
    ),
    (
        "flow",
        "300 std m3/h",
        "300 std m3/h: unit std m3/h is not known; its reference conditions are not told; "
        "write Nm3/h (0 degC), Sm3/h (15 degC) or scfm (70 degF)",
    ),
    (
        "standard flow",
        "3 L/s",
        "3 L/s is a flow; a standard flow is needed, for example 300 Nm3/h or 180 scfm",
    ),
    ("velocity", "0,5 m/s", "0,5 m/s has a decimal comma; write 0.5 m/s"),
    ("flow", "1,200 m3/h", "1,200 m3/h has a comma; write 1200 m3/h if it parts thousands, or 1.200 m3/h"),
    ("flow", "1 200 m3/h", "1 200 m3/h has thousands apart; write 1200 m3/h"),
    ("flow", "1\u202f200 m3/h", "1 200 m3/h has thousands apart; write 1200 m3/h"),
    ("flow", "1'200 m3/h", "1'200 m3/h has thousands apart; write 1200 m3/h"),
    ("flow", "1.200,5 m3/h", "1.200,5 m3/h has thousands apart; write 1200.5 m3/h"),
    ("flow", "1,234,567.5 m3/h", "1,234,567.5 m3/h has thousands apart; write 1234567.5 m3/h"),
    ("length", "", f"nothing is written here; {LENGTH}"),
    ("length", " \t\n ", f"nothing is written here; {LENGTH}"),
    ("length", "nan m", f"nan m does not start with a number; {LENGTH}"),
    ("length", "inf m", f"inf m does not start with a number; {LENGTH}"),
    ("length", float("nan"), f"nan does not start with a number; {LENGTH}"),
    ("length", "٣ m", f"٣ m does not start with a number; {LENGTH}"),
    ("length", "\ud800 m", f"? m does not start with a number; {LENGTH}"),
    ("length", "1e999 m", "1e999 m is beyond any number that can be used; check its exponent"),
    ("length", "1e-999 m", "1e-999 m is beyond any number that can be used; check its exponent"),
    ("length", "1" * 10_000, f"the text is 10000 characters long; {LENGTH}"),
    ("length", 10**400, f"the number is beyond any that can be used; {LENGTH}"),
    ("length", None, "a text is needed, for example 250 mm or 10 in; got NoneType"),
    ("length", True, "a text is needed, for example 250 mm or 10 in; got bool"),
    ("length", "5 furlongs", f"5 furlongs: unit furlongs is not known; {LENGTH}"),
    ("length", "3 m/", f"3 m/: unit m/ is not known; {LENGTH}"),
    ("length", "3 m4", "3 m4 is no quantity used here; a length is needed, for example 250 mm or 10 in"),
    ("pressure", "1 mpa", "1 mpa: unit mpa is not known; did you mean MPa or mPa?"),
    (
        "concentration",
        "5 ppm",
        "5 ppm: unit ppm is not known; it depends on the molar mass of the substance; write mg/m3",
    ),
    (
        "temperature",
        "-300 degC",
        "-300 degC is below absolute zero (-273.15 degC); check the sign and the unit",
    ),
    (
        "temperature",
        "3 K/m",
        "3 K/m is no quantity used here; a temperature is needed, for example 20 degC or 68 degF",
    ),
    ("angle", "5 mm", "5 mm is a length; an angle is needed, for example 30 deg"),
    ("share", "45", "45 has no unit and is above 1; write 45 % or a fraction such as 0.45"),
    ("number", "45 %", "45 % is a share; a number is needed, for example 2"),
]


@pytest.mark.parametrize(("kind", "text", "message"), REFUSED)
def test_refused(kind, text, message):
    with pytest.raises(UnitError) as error:
        parse(text, kind)
    assert str(error.value) == message


def test_many_powers_do_not_overflow():
    with pytest.raises(UnitError, match="is not known"):
        parse("1 " + "*".join(["km4"] * 24), "length")


@pytest.mark.parametrize(
    ("value", "kind", "si", "us"),
    [
        (320 / 3600, "flow", "320 m³/h", "188 cfm"),
        (0.5, "velocity", "0.5 m/s", "98.4 fpm"),
        (-312.0, "pressure", "-312 Pa", "-1.25 in wg"),
        (101325.0, "pressure", "101 kPa", "407 in wg"),
        (294.15, "temperature", "21 °C", "69.8 °F"),
        (273.15, "temperature", "0 °C", "32 °F"),
        (5.0, "temperature difference", "5 K", "9 °F"),
        (0.1, "length", "100 mm", "3.94 in"),
        (1.999, "length", "2000 mm", "78.7 in"),
        (2.0, "length", "2 m", "6.56 ft"),
        (-3.0, "length", "-3 m", "-9.84 ft"),
        (0.45, "share", "45 %", "45 %"),
        (0.5235987755982988, "angle", "30 °", "30 °"),
        (2.5e-8, "mass rate", "1.5 mg/min", "1.5 mg/min"),
        (1100.0, "power", "1.1 kW", "1.48 hp"),
        (900.0, "time", "15 min", "15 min"),
        (28800.0, "time", "8 h", "8 h"),
        (1.2, "density", "1.2 kg/m³", "0.0749 lb/ft³"),
        (2900 / 60, "speed of rotation", "2900 rpm", "2900 rpm"),
        (-0.0, "pressure", "0 Pa", "0 in wg"),
        (2.0, "number", "2", "2"),
        (1e30, "flow", "3.6e33 m³/h", "2.12e33 cfm"),
        (0.13142658602420978, "standard flow", "473 Nm³/h", "300 scfm"),
    ],
)
def test_shown(value, kind, si, us):
    assert show(value, kind, "SI").replace("\u2009", " ") == si
    assert show(value, kind, "US").replace("\u2009", " ") == us


def test_shown_with_thin_space_and_chosen_digits():
    assert show(0.123456, "length", "SI", digits=5) == "123.46\u2009mm"


def test_columns_keep_one_unit():
    assert show_number(3.0, "length", "SI") == "3000"
    assert show_number(0.1, "length", "SI") == "100"
    assert unit_label("length", "SI") == "mm"
    assert [unit_label("flow", system) for system in SYSTEMS] == ["m³/h", "cfm"]
    assert [unit_label("temperature", system) for system in SYSTEMS] == ["°C", "°F"]


@pytest.mark.parametrize("value", [float("nan"), float("inf")])
@pytest.mark.parametrize("writer", [show, write])
def test_no_number_is_not_shown(writer, value):
    with pytest.raises(UnitError, match=f"^flow {value} is not a number that can be shown$"):
        writer(value, "flow", "SI")


@pytest.mark.parametrize(
    ("value", "kind", "unit", "text"),
    [
        (320 / 3600, "flow", "SI", "320 m3/h"),
        (parse("500 cfm", "flow"), "flow", "US", "500 cfm"),
        (parse("500 cfm", "flow"), "flow", "L/s", "235.9737216 L/s"),
        (parse("0.1 mg/m3", "concentration"), "concentration", "SI", "0.1 mg/m3"),
        (parse("1 in wg", "pressure"), "pressure", "US", "1 in wg"),
        (293.15, "temperature", "SI", "20 degC"),
        (273.15, "temperature", "SI", "0 degC"),
        (0.0, "temperature", "SI", "-273.15 degC"),
        (0.45, "share", "SI", "45 %"),
        (1.234567, "length", "SI", "1234.567 mm"),
        (9.0, "length", "SI", "9 m"),
        (2.0, "number", "SI", "2"),
    ],
)
def test_written_in_few_digits(value, kind, unit, text):
    assert write(value, kind, unit) == text


def test_to_unit():
    assert to_unit(0.1, "length", '"') == pytest.approx(100 / 25.4)
    assert to_unit(293.15, "temperature", "degF") == pytest.approx(68)
    assert to_unit(5.0, "temperature difference", "degF") == pytest.approx(9)


@pytest.mark.parametrize(
    ("unit", "message"),
    [
        ("cfm", "cfm is not a unit of length; use for example mm"),
        ("mmm", "unit mmm is not known; did you mean mm?"),
    ],
)
def test_to_unit_refused(unit, message):
    with pytest.raises(UnitError) as error:
        to_unit(1.0, "length", unit)
    assert str(error.value) == message


def test_understood_in_both_systems():
    assert understood("320 m3/h", "flow", "SI") == "320\u2009m³/h = 188\u2009cfm"
    assert understood("188 cfm", "flow", "US") == "188\u2009cfm = 319\u2009m³/h"
    assert understood("0.45", "share", "SI") == "45\u2009%"


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_reads_its_own_example_and_units(kind):
    for example in KINDS[kind].example.split(" or "):
        parse(example, kind)
    for system in SYSTEMS:
        parse(f"0.5 {KINDS[kind].show[system]}", kind)


def test_import_does_not_load_pint():
    code = "import sys, hoodwright.units; print('pint' in sys.modules)"
    assert subprocess.check_output([sys.executable, "-c", code], text=True).strip() == "False"


def test_the_suggested_unit_is_of_the_kind_that_is_needed():
    with pytest.raises(UnitError, match=r"^320 cmf: unit cmf is not known; did you mean cfm\?$"):
        parse("320 cmf", "flow")
