"""What stands in the live air, as plain records: openings that take smoke, plates that it meets, solid blocks."""

from typing import Any

import numpy as np

from hoodwright.flow import Block, Mouth, Plate, jet_laws
from hoodwright.flow.trace import JET_TIME, JET_UNREST
from hoodwright.tasks.air.live_scene import LiveScene

SWAY_TIME = 8.0  # s: how slowly the draught of the picture swings; the share counts every draught alike

__all__ = ["JET_TIME", "JET_UNREST", "SWAY_TIME", "blocks_of", "mouths_of", "plates_of", "start_of"]


def mouths_of(scene: LiveScene) -> list[dict[str, Any]]:
    """The openings of the hoods in the box."""
    return [_mouth(mouth) for mouth in scene.near]


def plates_of(scene: LiveScene) -> list[dict[str, Any]]:
    """Every thin plate nearby with the openings in it; a flange belongs to its mouth."""
    return [_plate(plate) for plate in scene.plates()]


def blocks_of(scene: LiveScene) -> list[dict[str, Any]]:
    """People and other solid boxes nearby."""
    return [_block(block) for block in scene.blocks()]


def start_of(scene: LiveScene) -> dict[str, Any] | None:
    """How the stream begins and what it obeys, so that the page can follow it anew as the draught swings."""
    jet = scene.release.jet
    return None if jet is None else {"row": jet.row.tolist(), "laws": jet_laws().tolist()}


def _mouth(mouth: Mouth) -> dict[str, Any]:
    frame = mouth.frame
    return {
        "name": mouth.name,
        "centre": frame.centre.tolist(),
        "facing": frame.normal.tolist(),
        "first": frame.along.tolist(),
        "second": frame.across.tolist(),
        "sides": list(frame.sides),
        "shape": mouth.shape,
        "flange": mouth.flange,
    }


def _plate(plate: Plate) -> dict[str, Any]:
    holes = []
    for hole in plate.holes:
        frame = plate.hole_frame(hole)
        place = {"centre": frame.centre.tolist(), "first": frame.along.tolist(), "second": frame.across.tolist()}
        holes.append({**place, "sides": list(frame.sides), "shape": frame.shape})
    corner, first, second = plate.spans.tolist()
    return {"name": plate.name, "corner": corner, "first": first, "second": second, "holes": holes}


def _block(block: Block) -> dict[str, Any]:
    c, s = np.cos(block.turn), np.sin(block.turn)
    axes = [[c, s, 0.0], [-s, c, 0.0], [0.0, 0.0, 1.0]]
    half = [size / 2 for size in block.size]
    return {"name": block.name, "centre": list(block.centre), "axes": axes, "half": half}
