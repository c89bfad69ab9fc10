"""Pressure rise of fans by flow: a smooth cubic through the tabulated points."""

from dataclasses import dataclass

import numpy as np
from scipy.interpolate import CubicSpline

from hoodwright.errors import InputError
from hoodwright.ranges import numbers, positive


@dataclass(frozen=True, eq=False)
class Curve:
    """One curve: rows of start (m3/s) and four coefficients of a cubic (Pa), and where the last one ends."""

    cubics: np.ndarray  # (pieces, 5)
    end: float  # m3/s

    def rise(self, flow):
        """Pressure rise [Pa] at flows [m3/s] of any shape; straight on beyond both ends."""
        flow = np.asarray(numbers("flow", flow))
        row = np.clip(np.searchsorted(self.cubics[:, 0], flow, side="right") - 1, 0, len(self.cubics) - 1)
        start, a, b, c, d = np.moveaxis(self.cubics[row], -1, 0)
        t = np.clip(flow, start, self.end) - start
        slope = b + t * (2 * c + t * 3 * d)
        return (a + t * (b + t * (c + t * d)) + slope * (flow - start - t))[()]

    def scaled(self, flow: float = 1.0, pressure: float = 1.0) -> "Curve":
        """The curve with all flows and all pressures multiplied: another speed, another density."""
        powers = np.array([flow, pressure, pressure / flow, pressure / flow**2, pressure / flow**3])
        return Curve(self.cubics * powers, self.end * flow)


@dataclass(frozen=True, eq=False)
class Curves:
    """All curves of a network on end, as the kernels take them."""

    first: np.ndarray  # (curves + 1,)
    cubics: np.ndarray  # (pieces, 5)
    ends: np.ndarray  # (curves,)

    @classmethod
    def of(cls, curves) -> "Curves":
        """Join single curves."""
        pieces = [curve.cubics for curve in curves]
        first = np.concatenate([[0], np.cumsum([len(piece) for piece in pieces])]).astype(np.int64)
        cubics = np.ascontiguousarray(np.concatenate([np.zeros((0, 5)), *pieces]))
        return cls(first, cubics, np.array([curve.end for curve in curves], dtype=float))


def fan_curve(flows, pressures):
    """A smooth curve through the tabulated points of a fan.

    A cubic whose third derivative is continuous at the points next to the ends keeps the peak, which a monotone one
    flattens.

    Parameters
    ----------
    flows : array (n,) [m3/s]
    pressures : array (n,) [Pa]

    Returns
    -------
    curve : Curve

    Valid: two points or more, flows from 0 up, each above the one before; else InputError or RangeError is raised.
    Source: [common-practice, a smooth curve through the points of a catalogue]
    """
    q, p = np.atleast_1d(numbers("flow", flows)), np.atleast_1d(numbers("pressure", pressures))
    if q.shape != p.shape or q.ndim != 1 or len(q) < 2:
        raise InputError(f"a fan curve needs two points or more, got {q.size} flows and {p.size} pressures")
    positive("step of flow between two points of a fan curve", np.diff(q), "m3/s")
    spline = CubicSpline(q, p)
    return Curve(np.ascontiguousarray(np.column_stack([q[:-1], *spline.c[::-1]])), float(q[-1]))
