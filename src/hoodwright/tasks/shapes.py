"""Sizes of openings and ducts, and comparisons that forgive rounding."""

import math

from hoodwright.ducts import hydraulic_diameter, oval_area, oval_hydraulic_diameter
from hoodwright.hoods.centreline import full_flange_width
from hoodwright.ranges import SLACK
from hoodwright.workplace.model import CapturingHood, Duct, Shaped


def area_of(section: Shaped) -> float:
    """Area of an opening, or of a duct's cross-section."""
    width, height = section.sides
    if isinstance(section, Duct) and section.oval is not None:
        return float(oval_area(width, height))
    return math.pi / 4 * width**2 if section.is_round else width * height


def hydraulic_diameter_of(duct: Duct) -> float:
    """Diameter that friction and Reynolds number go by."""
    if duct.oval is not None:
        return float(oval_hydraulic_diameter(*duct.sides))
    return duct.sides[0] if duct.is_round else float(hydraulic_diameter(*duct.sides))


def within(x: float, reach: float) -> bool:
    """Whether x is not beyond reach; the difference of two typed coordinates carries rounding."""
    return bool(x <= reach * (1 + SLACK))


def half_size(section: Shaped) -> float:
    """From the centre of an opening to its farthest point."""
    return section.sides[0] / 2 if section.is_round else math.hypot(*section.sides) / 2


def has_full_flange(hood: CapturingHood) -> bool:
    """Whether the flange is as wide as the flanged equations suppose."""
    return bool(hood.flange >= full_flange_width(area_of(hood.opening)) * (1 - 1e-9))
