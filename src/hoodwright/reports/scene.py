"""The scene as an SVG that stands alone: the room from the front left, floor grid and people for size."""

import math

from hoodwright.reports.camera import Camera, along, camera_for, depth, duct_depth, rim
from hoodwright.reports.labels import Labels
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
    circle,
    dimension,
    drawing,
    halo,
    line,
    polygon,
    polyline,
)
from hoodwright.reports.words import shortened
from hoodwright.tasks.picture import BoxShape, DuctShape, HoodShape, PersonShape, Picture, PlateShape, SourceShape, Xyz
from hoodwright.units import show

GRID = {"SI": (1.0, "1 m"), "US": (3 * 0.3048, "3 ft")}
MOST_GRID_LINES = 60
OUTLINE = 1.2  # picture units around a duct

Item = tuple[float, str]


def scene_svg(picture: Picture, system: str, paper: str = PAPER) -> str:
    """The whole workplace, seen from the front left without perspective.

    `system` is "SI" or "US"; `paper` is the background, "none" for a transparent one.
    """
    camera = camera_for(picture)
    body = [_room(picture, camera, system)]
    body += [svg for _, svg in sorted(_items(picture, camera), key=lambda item: -item[0])]
    body += _distances(picture, camera)
    body += _labels(picture, camera, system, WHITE if paper == "none" else paper)
    return drawing((camera.width, camera.height), "The scene", scene_words(picture, system), body, paper)


def scene_words(picture: Picture, system: str) -> str:
    """The scene in words, for screen readers."""
    room = " by ".join(show(side, "length", system) for side in picture.room.size)
    parts = [f"A room of {room}, seen from the front left."]
    for hood in picture.hoods:
        for source in (s for s in picture.sources if s.name in hood.serves):
            far = show(math.dist(hood.at, source.at), "length", system)
            parts.append(f"Hood {hood.name} has its opening {far} from {source.name}.")
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
    return depth(source.at), polyline(wave, QUIET, 1.2) + circle((x, y), 3.4, fill=INK, stroke=WHITE, stroke_width=1)


def _hood(hood: HoodShape, camera: Camera) -> Item:
    behind = max(0.04, 0.8 * min(hood.half_width, hood.half_height))
    back = [camera.at(p) for p in rim(hood, behind=behind)]
    opening = [camera.at(p) for p in rim(hood)]
    parts = [polygon(back, fill=COPPER_LIGHT, stroke=COPPER, stroke_width=1)]
    if hood.flange:
        flange = [camera.at(p) for p in rim(hood, hood.flange)]
        parts.append(polygon(flange, fill=COPPER_LIGHT, fill_opacity=0.8, stroke=COPPER, stroke_width=1.4))
    parts.append(polygon(opening, fill="#8A98A0", stroke=COPPER, stroke_width=1.6))
    return depth(hood.at) - 1e-3, "".join(parts)


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
    """A dimension line from each hood's opening to each source it serves."""
    sources = {source.name: source for source in picture.sources}
    return [
        dimension(camera.at(hood.at), camera.at(sources[name].at))
        for hood in picture.hoods
        for name in hood.serves
        if name in sources
    ]


def _labels(picture: Picture, camera: Camera, system: str, paper: str) -> list[str]:
    labels = Labels((camera.width, camera.height), paper)
    for spot in [source.at for source in picture.sources] + [hood.at for hood in picture.hoods]:
        labels.keep_clear(camera.at(spot), 9)
    for box in picture.boxes:
        labels.keep_clear(camera.at(box.centre), 0.6 * box.size * camera.scale)
    sources = {source.name: source for source in picture.sources}
    for hood in picture.hoods:
        lines = [shortened(hood.name)]
        for name in hood.serves[:3]:
            if name in sources:
                far = show(math.dist(hood.at, sources[name].at), "length", system)
                lines.append(f"{far} to {shortened(name, 24)}")
        labels.add(camera.at(hood.at), lines, 13.5, COPPER, bold=True)
    for source in picture.sources:
        labels.add(camera.at(source.at), [shortened(source.name)])
    for box in picture.boxes:
        labels.add(camera.at(box.centre), [shortened(box.name)], 12.5, AIR)
    for duct in picture.ducts:
        labels.add(camera.at(_middle(duct)), [shortened(duct.name, 16)], 11.5, AIR)
    for person in picture.people:
        labels.add(
            camera.at(along(person.at, ((0.0, 0.0, 1.0), person.breathing_height))), [shortened(person.name)], 12, QUIET
        )
    for plate in picture.plates:
        labels.add(camera.at(plate.corners[0]), [shortened(plate.name)], 12, QUIET, below=True)
    return labels.drawn


def _middle(duct: DuctShape) -> Xyz:
    """The middle of the longest straight piece of a duct."""
    pieces = list(zip(duct.points, duct.points[1:], strict=False))
    start, end = max(pieces, key=lambda piece: math.dist(*piece), default=(duct.points[0], duct.points[0]))
    x, y, z = ((a + b) / 2 for a, b in zip(start, end, strict=True))
    return x, y, z
