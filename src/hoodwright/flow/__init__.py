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
from hoodwright.flow.jet import (
    Jet,
    JetPath,
    follow,
    free_jet_velocity,
    heat_plume,
    jet_laws,
    nozzle_jet,
    plume_constant,
    spill_sheet,
    supply_jet,
)
from hoodwright.flow.release import Extent, Grain, Release, drawn_jets, drawn_starts, grain_of
from hoodwright.flow.scene import Scene, Surroundings
from hoodwright.flow.solve import solve, solve_near
from hoodwright.flow.trace import Draught, Plan, Traced, Varied, trace

__all__ = [
    "Bases",
    "Block",
    "Captured",
    "Draught",
    "Extent",
    "Field",
    "FullInterval",
    "Grain",
    "Hole",
    "Jet",
    "JetPath",
    "Mouth",
    "Plan",
    "Plate",
    "Release",
    "Resolution",
    "Scene",
    "SolveReport",
    "Spreads",
    "Surroundings",
    "Traced",
    "Varied",
    "Vent",
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
    "free_jet_velocity",
    "full_interval",
    "grain_of",
    "heat_plume",
    "jet_laws",
    "moved_to",
    "nozzle_jet",
    "plume_constant",
    "shown_share",
    "solve",
    "solve_near",
    "spill_sheet",
    "spread_of",
    "supply_jet",
    "trace",
]
