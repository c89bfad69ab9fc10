"""Canopies: hoods above their work that look down."""

from hoodwright.tasks.receiving.canopy.cautions import cautions
from hoodwright.tasks.receiving.canopy.hints import hints
from hoodwright.tasks.receiving.canopy.need import need_of
from hoodwright.tasks.receiving.canopy.refuse import disturbance, refusal

__all__ = ["cautions", "disturbance", "hints", "need_of", "refusal"]
