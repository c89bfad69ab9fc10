"""[us-1910-1025]: ventilation of lead work is measured every three months; from memory."""

import pytest

from hoodwright.tasks.guide import intervals


@pytest.mark.memory
def test_ventilation_of_lead_work_is_measured_quarterly():
    assert [one.months for one in intervals("lead") if one.jurisdiction == "US"] == [3]
