"""Run with `python -m benchmarks.captured_fraction`: how far the captured fraction and its intervals can be trusted.

Slow (about ten minutes on two cores); the tests run reduced forms of the same. Writes captured_fraction.md beside it.
"""

import sys
import time
from dataclasses import replace
from pathlib import Path

import numpy as np

from benchmarks.__main__ import machine
from hoodwright.flow import (
    Draught,
    Extent,
    Mouth,
    Plan,
    Release,
    Resolution,
    Scene,
    Spreads,
    capture,
    drawn_inputs,
    full_interval,
    moved_to,
    nozzle_jet,
    solve,
)

ROOT = Path(__file__).parents[1]
PAGE = Path(__file__).with_name("captured_fraction.md")
BORE, FLOW, ROOM = 0.051, {"pipe": 0.026}, 293.15
UNREST = Draught((0.0, 0.0, 0.0), wander=0.10, rising=1.0, turbulence=0.10, eddy=0.15)
PLAN = Plan(0.45, 15.0, 200, 4)
SEEDS = 200


def main() -> None:
    """Every case in turn, then the page."""
    lines = ["# Captured fraction: what was counted", "", machine(), ""]
    for case in (sampling, inputs, grid, tilt, drag, demonstration):
        began = time.perf_counter()
        lines += [f"## {case.__doc__.strip()}", "", *case(), "", f"{time.perf_counter() - began:.0f} s.", ""]
        print("\n".join(lines[-14:]), flush=True)
    PAGE.write_text("\n".join(lines), encoding="utf-8")


def beside(distance: float, cells: int = 8, turn: float = 0.0):
    """A pipe end, a stream that passes beside it, and the air around; `turn` tilts all of it against the grid."""
    axis = np.array([np.cos(turn), 0.0, np.sin(turn)])
    mouth = Mouth("pipe", (0.0, 0.0, 0.0), tuple(axis), (BORE, BORE))
    place = tuple(float(c) for c in distance * axis)
    jet = nozzle_jet(place, (-axis[2], 0.0, axis[0]), np.pi * 0.009**2 / 4, 5.6, ROOM, ROOM)
    air = solve(Scene((mouth,), watch=(place,)), Resolution(cells_across=cells))
    return air, (mouth,), Release(Extent("point", (place,)), jet)


def caught(parts, plan: Plan = PLAN, seed: int = 1, draught: Draught = UNREST, flows=None):
    """The captured fraction of one arrangement."""
    air, mouths, release = parts
    return capture(air, mouths, flows or FLOW, release, draught, plan, seed)


def sampling() -> list[str]:
    """How often the sampling interval holds the long-run value (wanted: 90 to 98 % of 200 seeds)"""
    rows = ["| distance mm | long run | realisations x particles | held | mean width |", "|---|---|---|---|---|"]
    for distance in (0.152, 0.085, 0.065):
        parts = beside(distance)
        truth = caught(parts, replace(PLAN, realisations=8000, particles=1), 9999).fraction
        for count, particles in ((64, 4), (128, 2)):
            found = [caught(parts, replace(PLAN, realisations=count, particles=particles), s) for s in range(SEEDS)]
            held = np.mean([c.low <= truth <= c.high for c in found])
            width = np.mean([c.high - c.low for c in found])
            rows.append(f"| {1000 * distance:.0f} | {truth:.3f} | {count} x {particles} | {held:.1%} | {width:.3f} |")
    return rows


def inputs() -> list[str]:
    """How often the full interval holds the truth of drawn inputs (wanted: 90 % or more)"""
    rows = ["| distance mm | held | of | mean width |", "|---|---|---|---|"]
    spreads, plan, rng = Spreads(), replace(PLAN, realisations=312, particles=2), np.random.default_rng(1)
    for distance in (0.152, 0.085, 0.065):
        air, mouths, release = beside(distance)
        held, width, draws = 0, 0.0, 60
        for seed in range(draws):
            true = drawn_inputs(air, release.extent.centre, spreads, 1, 1, rng)
            source = moved_to(release, np.add(release.extent.centre, true.offset[0]))
            factor = float(true.strength[0])
            jet = replace(source.jet, flow=source.jet.flow * factor, speed=source.jet.speed * factor)
            wind = replace(UNREST, mean=tuple(float(c) for c in true.draught[0]))
            flows = {"pipe": FLOW["pipe"] * float(true.flow[0])}
            long = replace(plan, realisations=800)
            truth = caught((air, mouths, replace(source, jet=jet)), long, 10_000 + seed, wind, flows).fraction
            found = full_interval(air, mouths, FLOW, release, UNREST, plan, seed, spreads)
            held += found.low <= truth <= found.high
            width += (found.high - found.low) / draws
        rows.append(f"| {1000 * distance:.0f} | {held / draws:.0%} | {draws} | {width:.3f} |")
    return rows


def grid() -> list[str]:
    """Captured fraction against the grid, D/5 to D/10 (wanted: within 0.03)"""
    rows = ["| distance mm | D/5 | D/8 | D/10 | widest |", "|---|---|---|---|---|"]
    plan = replace(PLAN, realisations=2000)
    for distance in (0.152, 0.076, 0.06):
        found = [caught(beside(distance, cells), plan).fraction for cells in (5, 8, 10)]
        rows.append(f"| {1000 * distance:.0f} | " + " | ".join(f"{f:.3f}" for f in (*found, np.ptp(found))) + " |")
    return rows


def tilt() -> list[str]:
    """Captured fraction with everything tilted against the grid (wanted: within 0.06)"""
    rows = ["| distance mm | 0 | 15 | 30 | 45 degrees | widest |", "|---|---|---|---|---|---|"]
    plan = replace(PLAN, realisations=2000)
    for distance in (0.152, 0.076, 0.06):
        found = [caught(beside(distance, turn=np.radians(a)), plan).fraction for a in (0, 15, 30, 45)]
        rows.append(f"| {1000 * distance:.0f} | " + " | ".join(f"{f:.3f}" for f in (*found, np.ptp(found))) + " |")
    return rows


def drag() -> list[str]:
    """Time of an answer after a drag, 1,024 particles (wanted: 0.15 s)"""
    parts, seconds = beside(0.152), []
    for seed in range(8):
        began = time.perf_counter()
        caught(parts, replace(PLAN, realisations=256, particles=4), seed)
        seconds.append(time.perf_counter() - began)
    return [f"Median {np.median(seconds[1:]):.3f} s, fastest {min(seconds):.3f} s: 256 realisations of 4 particles."]


def demonstration() -> list[str]:
    """The teaching demonstration: a calibration of four numbers on eye estimates, not a validation"""
    sys.path.insert(0, str(ROOT / "tests" / "observed"))
    import test_flow_jet_demonstration as observed

    observed.REALISATIONS = 2400
    rows = ["| opening | distance mm | least | computed | most |", "|---|---|---|---|---|"]
    for arrangement, distance, least, most in observed.ROWS:
        found = observed.at_distance(arrangement, distance).fraction
        rows.append(f"| {arrangement} | {1000 * distance:.0f} | {least:.2f} | {found:.3f} | {most:.2f} |")
    return rows


if __name__ == "__main__":
    main()
