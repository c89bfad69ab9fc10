"""The smoke itself as soft spots and fine lines, the lines of the mean air, and where smoke counts as lost."""

import math

import numpy as np

from hoodwright.reports.camera import dot
from hoodwright.reports.smoke_view import SmokeView
from hoodwright.reports.svg import AIR, QUIET, Point, circle, polygon, polyline, tag
from hoodwright.tasks.air.smoke_still import CAUGHT, SmokeStill

RINGS = ((20.0, 0.022), (14.0, 0.03), (9.0, 0.04), (5.0, 0.055), (2.4, 0.07))  # width and strength of one soft puff
SHEETS = 12  # only separate sheets grow darker where they lie over one another
SCATTER = 2.6  # picture units: small eddies that no particle shows
EVERY = 5  # so many tracks, one is drawn as a fine line
DARK, LIGHT, PLAIN = "#141C22", "#93A3AE", "#54636E"


def escape(still: SmokeStill, seen: SmokeView) -> list[str]:
    """Beyond these circles a particle counts as lost; one circle where only one hood draws."""
    radius = still.plan.escape_radius * seen.scale
    return [circle(seen.at(c), radius, fill="none", stroke=QUIET, stroke_width=0.9, stroke_dasharray="2 5")
            for c in still.centres]  # fmt: skip


def mean_air(still: SmokeStill, seen: SmokeView) -> list[str]:
    """Lines of the mean air, of the row that this view shows best, each with an arrowhead."""
    row = max(still.air, key=lambda way: math.hypot(dot(way, seen.right), dot(way, seen.up)), default=None)
    drawn = []
    for places in still.air[row] if row is not None else ():
        points = seen.many(places).round(1).tolist()
        drawn.append(polyline(points, AIR, 0.8, stroke_opacity=0.6))
        heads = [n for n in range(1, len(points)) if seen.holds(points[n], 12)]
        if heads:
            n = heads[len(heads) // 3]
            drawn.append(_head(points[n - 1], points[n]))
    return drawn


def _head(start: Point, end: Point) -> str:
    far = math.dist(start, end)
    if far < 1e-6:
        return ""
    x, y = (end[0] - start[0]) / far, (end[1] - start[1]) / far
    sides = [(end[0] - 6 * x + k * 2.6 * -y, end[1] - 6 * y + k * 2.6 * x) for k in (-1, 1)]
    return polygon([end, *sides], fill=AIR)


def escape_seen(still: SmokeStill, seen: SmokeView) -> bool:
    """Whether any part of those circles lies in the picture."""
    radius = still.plan.escape_radius * seen.scale
    turns = [(math.cos(math.pi * k / 36), math.sin(math.pi * k / 36)) for k in range(72)]
    middles = [seen.at(centre) for centre in still.centres]
    return any(seen.holds((x + radius * a, y + radius * b)) for x, y in middles for a, b in turns)


def smoke(still: SmokeStill, seen: SmokeView) -> list[str]:
    """All smoke; in one shade where caught and lost may not be told apart."""
    if not still.told:
        return _shade(list(still.tracks), list(still.puffs), PLAIN, seen)
    drawn = []
    for caught, colour in ((False, LIGHT), (True, DARK)):
        mine = [n for n, end in enumerate(still.ends) if (end == CAUGHT) is caught]
        drawn += _shade([still.tracks[n] for n in mine], [still.puffs[n] for n in mine], colour, seen)
    return drawn


def _shade(tracks: list[np.ndarray], puffs: list[np.ndarray], colour: str, seen: SmokeView) -> list[str]:
    """Smoke of one shade: puffs of four widths on separate sheets, and fine lines along the tracks."""
    places = seen.many(np.concatenate(puffs)) if puffs else np.zeros((0, 2))
    places = places + SCATTER * np.random.default_rng(0).standard_normal(places.shape)
    drawn = []
    for n in range(SHEETS):
        spots = _spots(places[n::SHEETS], seen)
        for width, strength in RINGS if spots else ():
            style: dict = {
                "stroke": colour,
                "stroke_width": width,
                "stroke_opacity": strength,
                "stroke_linecap": "round",
            }
            drawn.append(tag("path", d=spots, fill="none", **style))
    lines = [polyline(seen.many(track).round(1).tolist(), colour, 0.7, stroke_opacity=0.3) for track in tracks[::EVERY]]
    return drawn + lines


def _spots(places: np.ndarray, seen: SmokeView) -> str:
    """A path of dots, as short as can be."""
    within = np.all((places > -10) & (places < np.array(seen.size) + 10), axis=1)
    return "".join(f"M{x} {y}h0" for x, y in places[within].round().astype(int).tolist())
