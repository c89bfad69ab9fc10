"""Sizes of a whole tree of ducts: by hand, and those of least cost that balance themselves."""

from hoodwright.ducts.sizing.built import Checked, Slow, built_system, checked, usual_curve
from hoodwright.ducts.sizing.hand import hand_sizes
from hoodwright.ducts.sizing.holding import sizes_that_hold
from hoodwright.ducts.sizing.least_cost import least_cost_sizes
from hoodwright.ducts.sizing.parts import DuctAir, Prices, Size, Sized, SizedDuct, SizingRules

__all__ = [
    "Checked",
    "DuctAir",
    "Prices",
    "Size",
    "Sized",
    "SizedDuct",
    "SizingRules",
    "Slow",
    "built_system",
    "checked",
    "hand_sizes",
    "least_cost_sizes",
    "sizes_that_hold",
    "usual_curve",
]
