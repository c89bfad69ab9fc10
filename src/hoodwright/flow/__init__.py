"""The computed air: the flow round real hoods, plates and people, and what it catches of a source. SI throughout."""

from hoodwright.flow.bases import Bases, Field, SolveReport
from hoodwright.flow.calm import calm_air
from hoodwright.flow.capture import (
    Captured,
    capped_shares,
    capture,
    capture_map,
    cluster_interval,
    escape_radius_for,
    moved_to,
    shown_share,
)
from hoodwright.flow.geometry import Block, Hole, Mouth, Plate, Vent
from hoodwright.flow.grids.choose import Resolution
from hoodwright.flow.interval import FullInterval, Spreads, capture_series, drawn_inputs, full_interval, spread_of
from hoodwright.flow.isolines import Plane, axis_speeds, isolines, reach_of, speeds_on
from hoodwright.flow.jet import (
    Jet,
    JetPath,
    follow,
    free_jet_at,
    free_jet_velocity,
    heat_plume,
    jet_laws,
    nozzle_jet,
    plume_constant,
    spill_sheet,
    supply_jet,
)
from hoodwright.flow.lattice import Lattice, lattice_of
from hoodwright.flow.release import Extent, Grain, Release, drawn_jets, drawn_starts, grain_of
from hoodwright.flow.scene import Scene, Surroundings
from hoodwright.flow.shapes import Frame
from hoodwright.flow.solve import solve, solve_near
from hoodwright.flow.streamlines import StreamLine, in_solid, opening_starts, streamlines
from hoodwright.flow.trace import Draught, Plan, Traced, Varied, trace

__all__ = [
    "Bases",
    "Block",
    "Captured",
    "Draught",
    "Extent",
    "Field",
    "Frame",
    "FullInterval",
    "Grain",
    "Hole",
    "Jet",
    "JetPath",
    "Lattice",
    "Mouth",
    "Plan",
    "Plane",
    "Plate",
    "Release",
    "Resolution",
    "Scene",
    "SolveReport",
    "Spreads",
    "StreamLine",
    "Surroundings",
    "Traced",
    "Varied",
    "Vent",
    "axis_speeds",
    "calm_air",
    "capped_shares",
    "capture",
    "capture_map",
    "capture_series",
    "cluster_interval",
    "drawn_inputs",
    "drawn_jets",
    "drawn_starts",
    "escape_radius_for",
    "follow",
    "free_jet_at",
    "free_jet_velocity",
    "full_interval",
    "grain_of",
    "heat_plume",
    "in_solid",
    "isolines",
    "jet_laws",
    "lattice_of",
    "moved_to",
    "nozzle_jet",
    "opening_starts",
    "plume_constant",
    "reach_of",
    "shown_share",
    "solve",
    "solve_near",
    "speeds_on",
    "spill_sheet",
    "spread_of",
    "streamlines",
    "supply_jet",
    "trace",
]
