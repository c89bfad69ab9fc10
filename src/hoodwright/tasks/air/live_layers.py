"""A layer over the picture of the live air, as plain data for the page."""

from hoodwright.errors import InputError
from hoodwright.jobs import Progress
from hoodwright.tasks.air.layers import speed_lines_of, streamlines_of
from hoodwright.tasks.air.layers_export import map_as_json, speed_as_json, streamlines_as_json
from hoodwright.tasks.air.live_scene import LiveScene
from hoodwright.tasks.air.map_of_capture import MapLayer, capture_map_of
from hoodwright.tasks.air.planes import LEVEL, opening_frame
from hoodwright.tasks.capture.claims import claim_of

STREAMLINES, SPEED, MAP = "streamlines", "speed", "map"
LAYERS = (STREAMLINES, SPEED, MAP)


def layer_of(scene: LiveScene, layer: str, plane: str = LEVEL, progress: Progress | None = None) -> dict:
    """One layer of an asked scene; a capture map is refused where no per cent may be claimed."""
    name, frame, system = scene.hood.name, opening_frame(scene.hood), scene.workplace.units
    if layer == STREAMLINES:
        air = (scene.bases, scene.mouths, scene.flows, scene.draught)
        return streamlines_as_json(streamlines_of(*air, name, frame, scene.source.name, scene.source.points, system))
    if layer == SPEED:
        place = scene.source.centre
        found = speed_lines_of(scene.bases, scene.flows, scene.draught, name, frame, place, plane, system)
        return speed_as_json(found)
    if layer == MAP:
        return map_as_json(map_of_scene(scene, plane, progress))
    raise InputError(f"layer: got {layer!r}; there are {', '.join(LAYERS)}")


def map_of_scene(scene: LiveScene, plane: str = LEVEL, progress: Progress | None = None) -> MapLayer:
    """The capture map of an asked scene."""
    return capture_map_of(
        scene.bases,
        scene.mouths,
        scene.flows,
        scene.release,
        scene.draught,
        scene.plan,
        scene.hood.name,
        opening_frame(scene.hood),
        plane,
        scene.workplace.units,
        untold=claim_of(scene.hood, scene.source, scene.workplace, scene.flows[scene.hood.name]),
        progress=progress,
    )
