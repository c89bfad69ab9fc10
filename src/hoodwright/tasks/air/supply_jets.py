"""The jets of supply terminals, where a source stands: taken as a draught past the hood, as wide as its air.

A terminal is taken as a plain opening that blows straight into the room. What stands in the way is not seen, and a jet
along a ceiling reaches farther than this.
"""

from dataclasses import replace

import numpy as np

from hoodwright.flow import Draught, Jet, free_jet_at, supply_jet
from hoodwright.tasks.hood_shapes import Xyz
from hoodwright.units import show
from hoodwright.workplace.model import Workplace
from hoodwright.workplace.room import HIGH_WALLS, RoomOpening

UNFELT = 0.01  # m/s


def with_supply_jets(draught: Draught, workplace: Workplace, at: Xyz) -> Draught:
    """A draught with what the supply terminals of the room blow at a place; the same one where none is felt."""
    felt = _felt(workplace, at)
    if not felt:
        return draught
    x, y, z = (float(c) for c in np.asarray(draught.mean) + sum(velocity for _, velocity, _ in felt))
    unrest = float(np.linalg.norm([draught.turbulence, *(turbulence for *_, turbulence in felt)]))
    return replace(draught, mean=(x, y, z), turbulence=unrest)


def supply_notes(workplace: Workplace, at: Xyz, name: str) -> tuple[str, ...]:
    """What each jet that is felt at a place does there; `name` is that of the source."""
    notes = []
    for one, velocity, _ in _felt(workplace, at):
        speed = show(float(np.linalg.norm(velocity)), "velocity", workplace.units)
        notes.append(
            f"The {one.name} blows at the {name} with {speed}, as a straight jet: this is part of the draught."
        )
    return tuple(notes)


def _felt(workplace: Workplace, at: Xyz) -> list[tuple[RoomOpening, np.ndarray, float]]:
    """Terminals whose jet is felt at a place, with its velocity and turbulence there."""
    found = []
    for one in workplace.room.openings:
        if one.kind == "supply" and one.flow:
            velocity, turbulence = free_jet_at(_jet(one, workplace.room.size), at)
            if float(np.linalg.norm(velocity)) > UNFELT:
                found.append((one, velocity, float(turbulence)))
    return found


def _jet(one: RoomOpening, size: Xyz) -> Jet:
    inward = np.zeros(3)
    inward[one.axis] = -1.0 if one.wall in HIGH_WALLS else 1.0
    return supply_jet(one.centre(size), inward, one.sides[0] * one.sides[1], one.flow, 1.0)
