"""[uk-lead-1998]: lead regulations of Northern Ireland, regulation 8, read as made."""

import pytest

from hoodwright.tables import load_table
from hoodwright.tasks.guide import intervals


@pytest.mark.read
def test_extraction_of_lead_is_examined_every_fourteen_months():
    assert [one.months for one in intervals("lead") if one.jurisdiction == "UK"] == [14]


@pytest.mark.read
def test_its_record_is_kept_five_years():
    assert load_table("examination_record").row("rules", "lead")["years"] == 5
