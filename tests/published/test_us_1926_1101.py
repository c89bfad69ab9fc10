"""[us-1926-1101]: enclosures for asbestos work, as a state restates the rule."""

import re

import pytest

from hoodwright.tables import load_table
from hoodwright.units import parse


def statement() -> str:
    return load_table("guide_statements").row("key", "hood.asbestos")["text"]


@pytest.mark.read
def test_air_changes_and_suction_of_the_enclosure():  # ro.asb.us: 4 an hour, -0.02 in wg
    assert "at least four air changes an hour" in statement()
    assert "0.02 in wg" in statement()


@pytest.mark.memory
def test_that_suction_in_pascals():  # hc.wel
    pascals = float(re.search(r"\((\d+) Pa\)", statement()).group(1))
    assert parse("0.02 in wg", "pressure") == pytest.approx(4.98, rel=0, abs=0.005)
    assert pascals == pytest.approx(4.98, rel=0, abs=0.5)
