"""[uk-asbestos-13]: extraction at asbestos work, six months; from memory, only the heading was seen."""

import pytest

from hoodwright.tasks.guide import intervals


@pytest.mark.memory
def test_extraction_of_asbestos_is_examined_every_six_months():
    assert [(one.jurisdiction, one.months) for one in intervals("asbestos")] == [("UK", 6)]
