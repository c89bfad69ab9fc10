import math

import numpy as np
import pytest

from hoodwright.ducts import (
    standard_diameters,
    student_manual_transport_velocity,
    transport_velocity_range,
)
from hoodwright.errors import InputError

KINDS = ["vapour", "fume", "fine dust", "dry dust", "workshop dust", "heavy dust", "moist dust"]


def test_heavier_material_asks_for_more_velocity():
    lowest = [transport_velocity_range(kind)[0] for kind in KINDS]
    assert lowest == sorted(lowest)


def test_range_without_an_upper_end_is_infinite():
    assert transport_velocity_range("moist dust") == (pytest.approx(22.86), math.inf)


def test_unknown_kind_is_answered_with_the_known_ones():
    with pytest.raises(InputError, match=r"^kind 'mud' is not in table transport_velocity; it has: vapour, fume"):
        transport_velocity_range("mud")
    with pytest.raises(InputError, match=r"^kind 'mud' is not in table transport_velocity_student; it has: vap"):
        student_manual_transport_velocity("mud")


def test_full_series_holds_the_preferred_one_in_rising_order():
    full, preferred = standard_diameters(), standard_diameters(preferred_only=True)
    assert np.all(np.diff(full) > 0)
    assert set(preferred) < set(full)


def test_one_step_of_the_preferred_series_changes_the_area_by_56_to_64_percent():
    preferred = standard_diameters(preferred_only=True)
    steps = (preferred[1:] / preferred[:-1]) ** 2 - 1
    assert steps.min() > 0.56 and steps.max() < 0.64
