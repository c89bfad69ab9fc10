"""[kitchen-capture]: measured share of a burner's plume that overhead hoods catch; abstract read."""

import pytest

from hoodwright.hoods import measured_capture

# Hood A and C are deep, hood B is flat; per cent as printed.
# check rows: cap.range.back.AC, cap.range.back.B, cap.range.front.AC, cap.range.front.B
# check rows cap.range.back.AC, cap.range.back.B, cap.range.front.AC, cap.range.front.B
PRINTED = [
    ("back, deep hood", 90, None),
    ("back, flat hood", 80, None),
    ("front, deep hood", 73, 78),
    ("front, flat hood", 46, 63),
]


@pytest.mark.read
@pytest.mark.parametrize("burner, lowest, highest", PRINTED)
def test_share_caught(burner, lowest, highest):
    low, high = measured_capture(burner)
    assert round(100 * low, 6) == lowest
    assert round(100 * high, 6) == (highest or 100)
