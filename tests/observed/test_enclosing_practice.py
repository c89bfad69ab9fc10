"""Common practice about enclosures, without a published source: kept apart from the published checks."""

import pytest

from hoodwright.tasks.capturing.push_pull import BESIDE
from hoodwright.tasks.enclosing.hints import DEEP_ENOUGH

INCH = 0.0254


def test_work_stays_six_inches_behind_the_opening():
    assert pytest.approx(6 * INCH, abs=0.5 * INCH) == DEEP_ENOUGH


def test_a_push_nozzle_carries_what_lies_a_hand_off_its_middle():
    assert pytest.approx(4 * INCH, abs=0.5 * INCH) == BESIDE
