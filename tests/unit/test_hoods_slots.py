"""Slots, hoods at rest on surfaces, round nozzles, and sinks in a draught: numbers worked on paper, and refusals."""

import math

import numpy as np
import pytest

from hoodwright.errors import RangeError
from hoodwright.hoods import (
    dallavalle_plain,
    flanged_catch_radius,
    flanged_reach_in_draught,
    free_reach_in_draught,
    garrison_1983_flanged,
    garrison_1983_plain,
    line_sink_aside,
    line_sink_flanged,
    line_sink_free,
    line_sink_over_surface,
    resting_flanged,
    resting_plain,
    resting_slot_flanged,
    resting_slot_plain,
    silverman_flanged,
    silverman_plain,
    slot_reach,
)

TWO = [silverman_plain, silverman_flanged, line_sink_free, line_sink_flanged, resting_slot_plain, resting_slot_flanged]


@pytest.mark.parametrize("law", TWO)
def test_scalar_array_and_empty(law):
    assert np.shape(law(0.1, 1.0)) == ()
    assert law(np.array([0.1, 0.2]), 1.0).shape == (2,)
    assert law(np.array([]), 1.0).shape == (0,)


@pytest.mark.parametrize(
    "found, on_paper",
    [
        (silverman_plain(0.2, 1.0), 1 / 0.74),
        (silverman_flanged(0.2, 1.0), 1 / 0.52),
        (resting_slot_plain(0.2, 1.0), 1 / 0.37),
        (resting_slot_flanged(0.2, 1.0), 1 / 0.26),
        (line_sink_free(0.3, 0.8), 1 / (4 * math.pi * 0.3 * 0.5)),
        (line_sink_flanged(0.3, 0.8), 1 / (2 * math.pi * 0.3 * 0.5)),
        (line_sink_aside(0.3, 0.0, 0.8), 1 / (4 * math.pi * 0.3 * 0.5)),
        (line_sink_aside(0.3, 0.4, 0.8), 0.8 / math.sqrt(0.09 + 0.64) / (4 * math.pi * 0.3 * 0.8)),
        (line_sink_over_surface(0.1, 0.1, 0.5), 1 / (2 * math.pi * 0.5 * 0.1)),
        (resting_plain(0.1, 0.02, 1), 1 / (5 * 0.01 + 0.02)),
        (resting_plain(0.1, 0.02, 2), 1 / (2.5 * 0.01 + 0.02)),
        (resting_flanged(0.1, 0.02, 1), 1 / (0.75 * (5 * 0.01 + 0.02))),
        (slot_reach(1.2), 0.6),
        (flanged_reach_in_draught(0.1, 0.2), math.sqrt(0.5 / math.pi)),
        (free_reach_in_draught(0.1, 0.2), math.sqrt(0.25 / math.pi)),
        (flanged_catch_radius(0.1, 0.2), math.sqrt(1 / math.pi)),
        (garrison_1983_plain(0.0, 0.2), 1.1 / (math.pi * 0.01)),
        (garrison_1983_flanged(0.2, 0.2), 0.10 / (math.pi * 0.01)),
    ],
)
def test_numbers_worked_on_paper(found, on_paper):
    assert found == pytest.approx(on_paper, rel=1e-12)


def test_a_resting_hood_is_half_of_one_twice_as_large():
    """Two times the flow through two times the area, in open space."""
    assert resting_plain(0.1, 0.02, 1) == pytest.approx(2 * dallavalle_plain(0.1, 0.04), rel=1e-12)


@pytest.mark.parametrize(
    "call, words",
    [
        (lambda: silverman_plain(0.7, 1.0), r"^distance 0\.7 m is above 0\.5 m, half the slot's length; use line_sink"),
        (lambda: silverman_flanged(0.0, 1.0), r"^distance 0.* above 0"),
        (lambda: line_sink_free(0.1, -1.0), r"^length -1"),
        (lambda: resting_plain(0.1, 0.02, 3), r"^surfaces 3 is above 2; a hood rests on one"),
        (lambda: resting_plain(1.0, 0.02, 1), r"^distance 1 m is above .*the limit of \[dallavalle"),
        (lambda: garrison_1983_plain(0.4, 0.2), r"^distance 2 .*is above 1\.5 diameters, the limit of \[garrison83"),
        (lambda: flanged_reach_in_draught(0.1, 0.0), r"^draught 0"),
        (lambda: line_sink_over_surface(0.1, 0.0, 1.0), r"^height 0"),
    ],
)
def test_outside_the_range_is_refused(call, words):
    with pytest.raises(RangeError, match=words):
        call()
