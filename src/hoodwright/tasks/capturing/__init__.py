"""Capturing hoods: what each source asks, what disturbs it, and what would help."""

from hoodwright.tasks.capturing.cautions import cautions
from hoodwright.tasks.capturing.head import head
from hoodwright.tasks.capturing.hints import hints
from hoodwright.tasks.capturing.need import need_of
from hoodwright.tasks.capturing.refuse import disturbance, refusal

__all__ = ["cautions", "disturbance", "head", "hints", "need_of", "refusal"]
