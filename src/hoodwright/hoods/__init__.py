"""Hoods by published design equations: air speed before an opening, capture, entry loss. SI throughout."""

from hoodwright.hoods.capturing import RELEASES, capture_velocity, capture_velocity_range, required_flow
from hoodwright.hoods.centreline import (
    DALLAVALLE_SMALLEST_SIDE_RATIO,
    FLETCHER_1977_LARGEST_ASPECT,
    dallavalle_flanged,
    dallavalle_plain,
    dallavalle_reach,
    equal_area_diameter,
    far_field_least_flow,
    far_field_most_flow,
    flanged_disc_aperture,
    flanged_disc_uniform,
    flanged_rectangle,
    fletcher_1977_plain,
    fletcher_1977_reach,
    full_flange_width,
)
from hoodwright.hoods.entry import (
    entry_coefficient,
    entry_loss_coefficient,
    flow_from_suction,
    hood_suction,
)

__all__ = [
    "DALLAVALLE_SMALLEST_SIDE_RATIO",
    "FLETCHER_1977_LARGEST_ASPECT",
    "RELEASES",
    "capture_velocity",
    "capture_velocity_range",
    "dallavalle_flanged",
    "dallavalle_plain",
    "dallavalle_reach",
    "entry_coefficient",
    "entry_loss_coefficient",
    "equal_area_diameter",
    "far_field_least_flow",
    "far_field_most_flow",
    "flanged_disc_aperture",
    "flanged_disc_uniform",
    "flanged_rectangle",
    "fletcher_1977_plain",
    "fletcher_1977_reach",
    "flow_from_suction",
    "full_flange_width",
    "hood_suction",
    "required_flow",
]
