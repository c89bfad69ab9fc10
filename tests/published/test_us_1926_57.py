"""[us-1926-57], paragraph (d): when exhaust keeps running."""

import pytest

from hoodwright.tables import load_table


@pytest.mark.read
def test_exhaust_runs_on_while_anyone_is_there_and_after_the_work():  # hc.after
    text = load_table("guide_statements").row("key", "care.run-on")["text"]
    assert "while anyone is in the zone" in text and "for a time after the work" in text
