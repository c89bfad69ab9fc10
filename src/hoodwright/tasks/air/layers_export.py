"""Layers of the air as plain data for the page: SI, null where there is no air."""

from collections.abc import Iterable

import numpy as np

from hoodwright.flow import Plane
from hoodwright.tasks.air.layers import AxisSpeed, Level, SpeedLayer, StreamLayer
from hoodwright.tasks.air.map_of_capture import MapLayer

PLACE, SPEED, SHARE = 4, 4, 3  # decimals: a tenth of a millimetre, a tenth of a mm/s, a thousandth


def streamlines_as_json(layer: StreamLayer) -> dict:
    """Lines and the speeds on them."""
    return {
        "lines": [_rounded(line.places, PLACE) for line in layer.lines],
        "speeds": [_rounded(line.speeds, SPEED) for line in layer.lines],
        "ends": [line.hood or line.end for line in layer.lines],
        "top": round(layer.top, SPEED),
        "words": layer.words,
    }


def speed_as_json(layer: SpeedLayer) -> dict:
    """Lines of equal speed, and how far each speed reaches on the axis."""
    return {
        "plane": plane_as_json(layer.plane),
        "levels": [{"velocity": one.pop("value"), **one} for one in levels_as_json(layer.levels)],
        "reaches": [{"velocity": v, "distance": round(x, PLACE)} for v, x in layer.reaches.items()],
        "words": layer.words,
    }


def map_as_json(layer: MapLayer) -> dict:
    """The captured share place by place, and its lines."""
    return {
        "plane": plane_as_json(layer.plane),
        "shape": list(layer.shape),
        "values": values_as_json(layer.values),
        "levels": [{"share": one.pop("value"), **one} for one in levels_as_json(layer.levels)],
        "escape": round(layer.escape_radius, PLACE),
        "limit": layer.time_limit,
        "words": layer.words,
    }


def centreline_as_json(speeds: Iterable[AxisSpeed]) -> list[dict]:
    """Speeds on the axis, computed and by the handbook."""
    return [{"distance_m": s.distance, "velocity_m_s": s.velocity, "handbook_m_s": s.handbook} for s in speeds]


def plane_as_json(plane: Plane) -> dict:
    """Corner and sides of a plane [m]."""
    return {"corner": list(plane.corner), "first": list(plane.first), "second": list(plane.second)}


def levels_as_json(levels: Iterable[Level]) -> list[dict]:
    """Each value with its words and its lines [m]."""
    return [
        {"value": one.value, "words": one.words, "lines": [_rounded(line, PLACE) for line in one.lines]}
        for one in levels
    ]


def values_as_json(values: np.ndarray) -> list[float | None]:
    """Shares in the order of the raster, the second side running fastest; null where there is none."""
    return [None if np.isnan(v) else round(float(v), SHARE) for v in values.ravel()]


def _rounded(values: np.ndarray, decimals: int) -> list:
    return np.round(np.asarray(values, float), decimals).tolist()
