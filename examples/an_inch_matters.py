"""Why an inch matters: the flow a plain 4 in pipe end needs as it moves away from the source.

Q = V (10 X^2 + A)  [dallavalle], here for a capture velocity of 0.5 m/s.
"""

import math

from hoodwright.errors import RangeError
from hoodwright.hoods import dallavalle_plain, far_field_least_flow, required_flow
from hoodwright.units import parse, show

CAPTURE_VELOCITY = parse("0.5 m/s", "velocity")
AREA = math.pi / 4 * parse("4 in", "length") ** 2


def flow_needed(distance: float) -> tuple[float, str]:
    """Required flow and how it is known; outside the equation's range it is needed at least."""
    try:
        return float(required_flow(CAPTURE_VELOCITY, dallavalle_plain(distance, AREA))), "needs"
    except RangeError:
        return float(far_field_least_flow(distance)) * CAPTURE_VELOCITY, "needs at least"


def main() -> list[tuple[float, float]]:
    """Print the table, and return distance and flow."""
    rows = []
    for inches in (1, 2, 3, 4, 5, 6, 8, 12):
        distance = parse(f"{inches} in", "length")
        flow, words = flow_needed(distance)
        rows.append((distance, flow))
        print(f"{inches:3d} in: {words} {show(flow, 'flow', 'SI')} ({show(flow, 'flow', 'US')})")
    return rows


if __name__ == "__main__":
    main()
