"""Units: what holds for any value and any text."""

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoodwright.errors import UnitError
from hoodwright.units import KINDS, SYSTEMS, parse, show, to_unit, understood, write

kinds = st.sampled_from(sorted(KINDS))
systems = st.sampled_from(SYSTEMS)
everyday = st.floats(1e-9, 1e9) | st.floats(-1e9, -1e-9) | st.just(0.0)
any_number = st.floats(allow_nan=False, allow_infinity=False)
units = st.lists(
    st.sampled_from(["m", "3", "-2", "/", "*", " ", "^", "h", "Nm3", "in", "wg", '"', "°", "C", "km4", "."])
)
almost_quantities = st.builds(
    "{}{}".format, any_number | st.sampled_from(["1,5", "1 200", "-", ""]), units.map("".join)
)


def possible(value, kind):
    return abs(value) if kind == "temperature" else value


@given(any_number, kinds, systems)
def test_what_is_written_is_read_back(value, kind, system):
    value = possible(value, kind)
    text = write(value, kind, system)
    assert text.isascii()
    assert parse(text, kind) == pytest.approx(value, rel=1.001e-9, abs=0)


@given(everyday, kinds, systems, st.integers(1, 9))
def test_what_is_shown_is_read_back_to_its_digits(value, kind, system, digits):
    value = max(value, 200.0) if kind == "temperature" else value
    shown = show(value, kind, system, digits)
    unit = KINDS[kind].show[system]
    expected, got = to_unit(value, kind, unit), to_unit(parse(shown, kind), kind, unit)
    rounding = 0.5001 * 10.0 ** (1 - digits) * abs(expected)
    assert got == pytest.approx(expected, rel=1e-9, abs=rounding + 1e-6 * (kind == "temperature"))


@given(st.text() | almost_quantities, kinds, systems)
def test_any_text_is_a_number_or_a_unit_error(text, kind, system):
    try:
        value = parse(text, kind)
        understood(text, kind, system)
    except UnitError as error:
        assert 10 < len(str(error)) < 600
        assert str(error).isprintable()
    else:
        assert isinstance(value, float)


@given(st.none() | st.booleans() | st.integers() | st.floats() | st.binary() | st.lists(st.text()), kinds)
def test_anything_else_too(thing, kind):
    with suppress(UnitError):
        assert isinstance(parse(thing, kind), float)


@given(st.floats(1e-6, 1e6), kinds)
def test_the_other_system_tells_the_same(value, kind):
    texts = [write(value, kind, system) for system in SYSTEMS]
    assert parse(texts[0], kind) == pytest.approx(parse(texts[1], kind), rel=3e-9)


@given(st.floats(1e-6, 1e6), st.sampled_from([kind for kind in sorted(KINDS) if kind != "temperature"]), systems)
def test_twice_the_number_is_twice_the_value(number, kind, system):
    unit = KINDS[kind].show[system]
    assert parse(f"{2 * number!r} {unit}", kind) == pytest.approx(2 * parse(f"{number!r} {unit}", kind))
