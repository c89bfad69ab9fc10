"""Enclosing hoods: what each source inside asks, what disturbs it, and what would help. No per cent is ever shown."""

from hoodwright.tasks.enclosing.cautions import cautions
from hoodwright.tasks.enclosing.hints import hints
from hoodwright.tasks.enclosing.need import head, need_of
from hoodwright.tasks.enclosing.refuse import disturbance, refusal

__all__ = ["cautions", "disturbance", "head", "hints", "need_of", "refusal"]
