"""One source before one hood as the live air needs it: solved air, flows, release, draught, and what stands around."""

from dataclasses import dataclass

import numpy as np

from hoodwright.flow import Bases, Block, Draught, Mouth, Plan, Plate, Release
from hoodwright.tasks.hood_shapes import Xyz
from hoodwright.workplace.model import Hood, Source, Workplace

MARGIN = 0.05  # m that the lattice reaches beyond the escape radius
REACH_STEP = 0.3  # m: the lattice grows in such steps, so that a small drag asks no new one
LEAST = 1e-9


@dataclass(frozen=True, eq=False)
class LiveScene:
    """The air of one moment of asking. `workplace`, `hood` and `source` stand as they were asked, perhaps moved."""

    workplace: Workplace
    hood: Hood
    source: Source
    bases: Bases
    flows: dict[str, float]  # m3/s, of every hood and opening of the room that the bases know
    release: Release
    draught: Draught
    plan: Plan

    @property
    def weights(self) -> tuple[float, ...]:
        """Weights of the lattice's bases: the hood's flow, the rest, three draughts."""
        return (self.flows[self.hood.name], 1.0, *self.draught.mean)

    @property
    def mouths(self) -> tuple[Mouth, ...]:
        """The openings of all hoods that the bases know, some perhaps outside their box."""
        return self.bases.scene.mouths

    @property
    def near(self) -> tuple[Mouth, ...]:
        """Those in the box."""
        return tuple(m for m, here in zip(self.mouths, self.bases.cut.here, strict=True) if here)

    @property
    def centres(self) -> tuple[Xyz, ...]:
        """Middles of the openings in the box that draw, from which the escape radius is measured."""
        return tuple(mouth.centre for mouth in self.near if self.flows.get(mouth.name, 0.0) > 0)

    @property
    def reach(self) -> float:
        """How far round them the lattice goes [m]."""
        return REACH_STEP * float(np.ceil((self.plan.escape_radius + MARGIN) / REACH_STEP - LEAST))

    @property
    def others(self) -> dict[str, float]:
        """Flows of all but the hood."""
        return {name: flow for name, flow in self.flows.items() if name != self.hood.name}

    @property
    def lattice_key(self) -> tuple:
        """Equal where the lattice is the same. The bases are kept in it, so that no others take their identity."""
        others = tuple(sorted(self.others.items()))
        return (self.bases, self.hood.name, others, self.draught.eddy, self.centres, self.reach)

    def plates(self) -> tuple[Plate, ...]:
        """Every thin plate nearby, flanges left out: those are part of a mouth."""
        return tuple(plate for plate in self.bases.scene.plates if self._meets(plate))

    @property
    def room(self) -> tuple[Xyz, Xyz]:
        """Low and high corner of the room [m]."""
        low, high = self.bases.scene.surroundings.bounds
        return _vector(low), _vector(high)

    def blocks(self) -> tuple[Block, ...]:
        """Every solid box nearby."""
        return tuple(block for block in self.bases.scene.blocks if self._meets(block))

    def _meets(self, part: Plate | Block) -> bool:
        """Whether a part reaches into the box of the lattice."""
        corners, centres = part.corners(), np.array(self.centres)
        low, high = centres.min(axis=0) - self.reach, centres.max(axis=0) + self.reach
        return bool(np.all(corners.min(axis=0) <= high) and np.all(corners.max(axis=0) >= low))


def _vector(values: np.ndarray) -> Xyz:
    x, y, z = (float(value) for value in values)
    return x, y, z
