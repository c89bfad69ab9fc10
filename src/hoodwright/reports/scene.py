"""The scene as an SVG that stands alone: the room from the front left, floor grid and people for size."""

import math

from hoodwright.reports.camera import Camera, along, camera_for, depth, duct_depth, rim
from hoodwright.reports.scene_names import Key, Places, place_words, scene_names
from hoodwright.reports.svg import (
    AIR,
    AIR_LIGHT,
    COPPER,
    COPPER_LIGHT,
    INK,
    PAPER,
    QUIET,
    RULE,
    WHITE,
    arrow,
    circle,
    dimension,
    drawing,
    halo,
    line,
    polygon,
    polyline,
)
from hoodwright.tasks.picture import BoxShape, DuctShape, HoodShape, PersonShape, Picture, PlateShape, SourceShape
from hoodwright.units import show

GRID = {"SI": (1.0, "1 m"), "US": (3 * 0.3048, "3 ft")}
MOST_GRID_LINES = 60
OUTLINE = 1.2  # picture units around a duct

Item = tuple[float, str]


def scene_svg(
    picture: Picture, system: str, paper: str = PAPER, places: Places | None = None, *, with_key: bool = True
) -> str:
    """The whole workplace, seen from the front left without perspective.

    `system` is "SI" or "US"; `paper` is the background, "none" for a transparent one; `places` says in words where a
    hood is as seen from a source, by the two names. Many hoods have numbers; the key to them stands below, if wanted.
    """
    camera = camera_for(picture)
    body = [_room(picture, camera, system)]
    body += [svg for _, svg in sorted(_items(picture, camera), key=lambda item: -item[0])]
    body += _distances(picture, camera)
    names, key = scene_names(picture, camera, system, WHITE if paper == "none" else paper, places or {})
    key = key if with_key else Key()
    size = (camera.width, camera.height + key.height)
    words = scene_words(picture, system, places)
    return drawing(size, "The scene", words, [*body, *names, *key.drawn], paper)


def scene_words(picture: Picture, system: str, places: Places | None = None) -> str:
    """The scene in words, for screen readers."""
    room = " by ".join(show(side, "length", system) for side in picture.room.size)
    parts = [f"A room of {room}, seen from the front left."]
    for hood in picture.hoods:
        for source in (s for s in picture.sources if s.name in hood.serves):
            parts.append(f"Hood {hood.name} is {place_words(hood, source, system, places or {})} {source.name}.")
        if hood.also_open:
            parts.append(f"It is also open at: {', '.join(hood.also_open)}.")
    for word, shapes in (("Surfaces", picture.plates), ("People", picture.people), ("Ducts", picture.ducts)):
        if shapes:
            parts.append(f"{word}: {', '.join(shape.name for shape in shapes)}.")
    parts += [f"{box.kind.capitalize()}: {box.name}." for box in picture.boxes]
    return " ".join(parts)


def _items(picture: Picture, camera: Camera) -> list[Item]:
    items = [_plate(plate, camera) for plate in picture.plates]
    items += [_person(person, camera) for person in picture.people]
    items += [_source(source, camera) for source in picture.sources]
    items += [_hood(hood, camera) for hood in picture.hoods]
    items += [_duct(duct, camera) for duct in picture.ducts]
    return items + [_box(box, camera) for box in picture.boxes]


def _room(picture: Picture, camera: Camera, system: str) -> str:
    x, y, z = picture.room.size
    step, words = GRID[system]
    while max(x, y) / step > MOST_GRID_LINES:
        step, words = step * 10, show(step * 10, "length", system)
    at = camera.at
    floor = polygon([at(p) for p in ((0, 0, 0), (x, 0, 0), (x, y, 0), (0, y, 0))], fill="#F3F0E8", stroke=QUIET)
    grid = [line(at((i * step, 0, 0)), at((i * step, y, 0)), RULE, 0.8) for i in range(1, math.ceil(x / step))]
    grid += [line(at((0, i * step, 0)), at((x, i * step, 0)), RULE, 0.8) for i in range(1, math.ceil(y / step))]
    walls = [
        polyline([at(p) for p in ((0, y, 0), (0, y, z), (x, y, z), (x, y, 0))], QUIET, 0.8),
        polyline([at(p) for p in ((x, y, z), (x, 0, z), (x, 0, 0))], QUIET, 0.8),
    ]
    one = (at((0, 0, 0)), at((min(step, x), 0, 0)))
    if step > x:
        return floor + "".join(grid + walls)
    start, end = ((px - 3, py + 9) for px, py in one)
    scale = dimension(start, end, INK)
    middle = ((one[0][0] + one[1][0]) / 2 - 8, (one[0][1] + one[1][1]) / 2 + 24)
    return floor + "".join(grid + walls) + scale + halo(middle, words, 12, text_anchor="middle")


def _plate(plate: PlateShape, camera: Camera) -> Item:
    corners = [camera.at(c) for c in plate.corners]
    legs = [
        line(camera.at(c), camera.at((c[0], c[1], 0.0)), QUIET, 0.8, stroke_dasharray="3 3")
        for c in plate.corners
        if c[2] > 0
    ]
    top = polygon(corners, fill="#E7E1D3", stroke=QUIET, stroke_width=1, fill_opacity=0.9)
    return max(depth(c) for c in plate.corners), "".join(legs) + top


def _person(person: PersonShape, camera: Camera) -> Item:
    feet, size = camera.at(person.at), camera.scale
    head = camera.at(along(person.at, ((0.0, 0.0, 1.0), person.breathing_height + 0.05)))
    tall, w = feet[1] - head[1], 0.21 * size
    profile = ((0.5, 0.0), (0.62, 0.5), (0.7, 0.62), (1.0, 0.78), (0.85, 0.85), (0.35, 0.88))
    body = [(feet[0] + w * out, feet[1] - tall * up) for out, up in profile]
    body += [(feet[0] - w * out, feet[1] - tall * up) for out, up in reversed(profile)]
    style = {"fill": WHITE, "fill_opacity": 0.55, "stroke": QUIET, "stroke_width": 1.2, "stroke_linejoin": "round"}
    shape = polygon(body, **style) + circle(head, 0.11 * size, **style)
    ahead = camera.at(along(person.at, (person.facing, 0.45)))
    return depth(person.at), line(feet, ahead, QUIET, 1.2) + circle(ahead, 1.8, fill=QUIET) + shape


def _source(source: SourceShape, camera: Camera) -> Item:
    x, y = camera.at(source.at)
    wave = [(x + dx, y - 5 - 3.2 * i) for i, dx in enumerate((0.0, 2.2, 0.0, -2.2, 0.0))]
    extent = "".join(
        arrow(camera.at(drawn[0]), camera.at(drawn[-1]), INK, 1.0)
        if source.is_thrown(drawn)
        else polyline([camera.at(p) for p in drawn], INK, 1.0)
        for drawn in source.lines
    )
    dot = circle((x, y), 3.4, fill=INK, stroke=WHITE, stroke_width=1)
    return depth(source.at), extent + polyline(wave, QUIET, 1.2) + dot


def _hood(hood: HoodShape, camera: Camera) -> Item:
    opening = [camera.at(p) for p in rim(hood)]
    slot, jets = hood.lines[:1], hood.lines[1:]  # of a push nozzle
    parts = [polyline([camera.at(p) for p in drawn], COPPER, 2.2) for drawn in slot]
    parts += [arrow(camera.at(drawn[0]), camera.at(drawn[-1]), AIR, 1.2) for drawn in jets]
    if hood.panels:
        parts += _panels(hood, camera)
    else:
        behind = max(0.04, 0.8 * min(hood.half_width, hood.half_height))
        back = [camera.at(p) for p in rim(hood, behind=behind)]
        parts.append(polygon(back, fill=COPPER_LIGHT, stroke=COPPER, stroke_width=1))
    if hood.flange:
        flange = [camera.at(p) for p in rim(hood, hood.flange)]
        parts.append(polygon(flange, fill=COPPER_LIGHT, fill_opacity=0.8, stroke=COPPER, stroke_width=1.4))
    see_through = 0.25 if hood.panels else 1.0
    parts.append(polygon(opening, fill="#8A98A0", fill_opacity=see_through, stroke=COPPER, stroke_width=1.6))
    return depth(hood.at) - 1e-3, "".join(parts)


def _panels(hood: HoodShape, camera: Camera) -> list[str]:
    """The body's faces, the farthest first, so thin that a source inside is seen."""
    faces = sorted(hood.panels, key=lambda face: -sum(depth(p) for p in face) / len(face))
    style = {
        "fill": COPPER_LIGHT,
        "fill_opacity": 0.45,
        "stroke": COPPER,
        "stroke_width": 1,
        "stroke_linejoin": "round",
    }
    return [polygon([camera.at(p) for p in face], **style) for face in faces]


def _duct(duct: DuctShape, camera: Camera) -> Item:
    points = [camera.at(p) for p in duct.points]
    width = max(2.0, duct.diameter * camera.scale)
    return duct_depth(duct), polyline(points, AIR, width + OUTLINE) + polyline(points, AIR_LIGHT, width - OUTLINE)


def _box(box: BoxShape, camera: Camera) -> Item:
    h = box.size / 2
    x, y, z = box.centre
    faces = (
        [(x - h, y - h, z + h), (x + h, y - h, z + h), (x + h, y + h, z + h), (x - h, y + h, z + h)],
        [(x - h, y - h, z - h), (x + h, y - h, z - h), (x + h, y - h, z + h), (x - h, y - h, z + h)],
        [(x - h, y - h, z - h), (x - h, y + h, z - h), (x - h, y + h, z + h), (x - h, y - h, z + h)],
    )
    fills = (WHITE, AIR_LIGHT, "#B5D0D5")
    drawn = [polygon([camera.at(p) for p in f], fill=c, stroke=AIR) for f, c in zip(faces, fills, strict=True)]
    mark = circle(camera.at((x, y - h, z)), h * camera.scale * 0.5, fill="none", stroke=AIR, stroke_width=1.4)
    return depth((x - h, y - h, z)), "".join(drawn) + (mark if box.kind == "fan" else "")


def _distances(picture: Picture, camera: Camera) -> list[str]:
    """A dimension line from each hood to each source it serves, along the line that the answer judges by."""
    sources = {source.name: source for source in picture.sources}
    sights = [
        hood.sight_of(sources[name])
        for hood in picture.hoods
        if hood.type != "enclosing"
        for name in hood.serves
        if name in sources
    ]
    return [dimension(camera.at(sight.start), camera.at(sight.end)) for sight in sights]
