"""Random shops to size: hoods whose ducts join two at a time (or three) on the way to one fan."""

import numpy as np

from hoodwright.ducts import standard_diameters
from hoodwright.ducts.sizing import Prices, SizedDuct, SizingRules

SERIES = np.concatenate([standard_diameters(), [1.4, 1.6, 1.8, 2.0, 2.24, 2.5]])  # m; wider than the source lists
PRICES = Prices(
    per_metre=lambda diameter: 20 + 150 * diameter,
    per_piece=lambda diameter: 10 + 80 * diameter,
    damper=150.0,
    per_watt=0.25 * 2000 * 8 / 1000 / 0.6,  # 0.25 per kWh, 2,000 h a year, 8 years, 0.6 of fan and motor
    behind=1000.0,
    change=40.0,
)
RULES = SizingRules(density=1.2, viscosity=1.82e-5)


def shop(hoods, seed, *, slowest=10.0, fastest=22.0, least=0.1, most=0.8, meet=2, filters=0.0):
    """Ducts of a random shop, downstream; `meet` join at a place, `filters` is the share of hoods with one."""
    rng = np.random.default_rng(seed)
    ducts, open_ends = [], []
    for number in range(hoods):
        flow = float(rng.uniform(least, most))
        filtered = ((float(rng.uniform(50, 200)), flow, 1.0),) if rng.random() < filters else ()
        ducts.append(
            SizedDuct(
                f"h{number}",
                (),
                float(rng.uniform(2, 8)),
                float(0.24 * rng.integers(0, 4)),
                slowest,
                fastest,
                flow,
                hood=float(rng.choice([0.25, 0.49, 0.93])),
                entry=0.18,
                angle=0.52,
                pieces=2,
                fixed=filtered,
            )
        )
        open_ends.append(number)
    while len(open_ends) > 1:
        width = min(meet, len(open_ends))
        first = int(rng.integers(0, len(open_ends) - width + 1))
        before = tuple(open_ends[first : first + width])
        ducts.append(
            SizedDuct(
                f"m{len(ducts)}", before, float(rng.uniform(1, 10)), float(0.24 * rng.integers(0, 2)), slowest, fastest
            )
        )
        open_ends[first : first + width] = [len(ducts) - 1]
    return ducts
