"""Names in the scene: beside what they name where hoods are few, else numbers and a key below the picture."""

import math
from dataclasses import dataclass

from hoodwright.reports.camera import Camera, along
from hoodwright.reports.labels import Labels
from hoodwright.reports.svg import AIR, COPPER, INK, QUIET, WHITE, Point, circle, line, spans, text, words_width
from hoodwright.reports.words import shortened
from hoodwright.tasks.picture import DuctShape, HoodShape, Picture, SourceShape, Xyz
from hoodwright.units import show

Places = dict[tuple[str, str], str]

MOST_NAMED, MOST_DUCTS_NAMED, MOST_SOURCES = 2, 5, 3
DISC, ROW, COLUMNS, KEY_SIZE = 8.5, 20.0, 2, 12.5
BESIDE = tuple(
    (round(far * math.cos(t), 2), round(far * math.sin(t), 2))
    for far in (0.0, 19.0, 28.0, 42.0)
    for t in (math.pi * k / 4 for k in (6, 5, 7, 4, 0, 3, 1, 2))
)


@dataclass(frozen=True)
class Key:
    """What stands below the picture, and how much room it takes."""

    drawn: tuple[str, ...] = ()
    height: float = 0.0


def place_words(hood: HoodShape, source: SourceShape, system: str, places: Places) -> str:
    """Where a hood is as seen from its source: "around", "100 mm from"."""
    told = places.get((hood.name, source.name))
    if told:
        return told
    if hood.type == "enclosing":
        return "around"
    sight = hood.sight_of(source)
    return f"{show(math.dist(sight.start, sight.end), 'length', system)} from"


def scene_names(picture: Picture, camera: Camera, system: str, paper: str, places: Places) -> tuple[list[str], Key]:
    """The names to draw over the scene, and the key below it."""
    labels = Labels((camera.width, camera.height), paper)
    _keep_clear(picture, camera, labels)
    named = len(picture.hoods) <= MOST_NAMED
    marks, key = ([], Key()) if named else _numbered(picture, camera, system, places, labels)
    if named:
        _hoods_and_sources(picture, camera, system, places, labels)
    for box in picture.boxes:
        labels.add(camera.at(box.centre), [shortened(box.name)], 12.5, AIR)
    for duct in picture.ducts if len(picture.ducts) <= MOST_DUCTS_NAMED else ():
        labels.add(camera.at(_middle(duct)), [shortened(duct.name, 16)], 11.5, AIR)
    for person in picture.people:
        head = along(person.at, ((0.0, 0.0, 1.0), person.breathing_height))
        labels.add(camera.at(head), [shortened(person.name)], 12, QUIET)
    for plate in picture.plates:
        labels.add(camera.at(plate.corners[0]), [shortened(plate.name)], 12, QUIET, below=True)
    return [*labels.drawn, *marks], key


def _keep_clear(picture: Picture, camera: Camera, labels: Labels) -> None:
    """Hoods, sources, boxes, heads and ducts must stay in sight."""
    for spot in [source.at for source in picture.sources] + [hood.at for hood in picture.hoods]:
        labels.keep_clear(camera.at(spot), 9)
    for hood in picture.hoods:
        corners = [camera.at(p) for panel in hood.panels for p in panel]
        if corners:
            xs, ys = zip(*corners, strict=True)
            labels.taken.append((min(xs), min(ys), max(xs), max(ys)))
    for box in picture.boxes:
        labels.keep_clear(camera.at(box.centre), 0.6 * box.size * camera.scale)
    for person in picture.people:
        for share in (0.2, 0.5, 0.8, 1.0):
            labels.keep_clear(camera.at(along(person.at, ((0.0, 0.0, 1.0), share * person.breathing_height))), 8)
    for duct in picture.ducts:
        half = max(3.0, duct.diameter * camera.scale / 2)
        for start, end in zip(duct.points, duct.points[1:], strict=False):
            labels.keep_line_clear(camera.at(start), camera.at(end), half)


def _hoods_and_sources(picture: Picture, camera: Camera, system: str, places: Places, labels: Labels) -> None:
    for hood in picture.hoods:
        served = [source for source in picture.sources if source.name in hood.serves]
        lines = [shortened(hood.name)]
        for source in served[:MOST_SOURCES]:
            lines.append(f"{place_words(hood, source, system, places)} {shortened(source.name, 24)}")
        labels.add(camera.at(hood.at), lines, 13.5, COPPER, bold=True)
    for source in picture.sources:
        labels.add(camera.at(source.at), [shortened(source.name)])


def _numbered(picture: Picture, camera: Camera, system: str, places: Places, labels: Labels) -> tuple[list[str], Key]:
    marks: list[str] = []
    taken: list[Point] = []
    for i, hood in enumerate(picture.hoods, 1):
        anchor = camera.at(hood.at)
        at = next(
            (p for p in _beside(anchor, camera, hood) if all(math.dist(p, q) > 2.2 * DISC for q in taken)), anchor
        )
        taken.append(at)
        labels.keep_clear(at, DISC + 2)
        leader = "" if at == anchor else line(anchor, at, COPPER, 0.9)
        marks.append(leader + numbered_disc(at, i))
    column = camera.width / COLUMNS
    rows = math.ceil(len(picture.hoods) / COLUMNS)
    drawn = []
    for i, hood in enumerate(picture.hoods):
        x, y = column * (i // rows) + DISC + 2, camera.height + 8 + ROW * (i % rows) + DISC
        drawn += [
            numbered_disc((x, y), i + 1),
            _key_line(hood, (x + DISC + 6, y + 4.2), column - 34, picture, system, places),
        ]
    return marks, Key(tuple(drawn), rows * ROW + 18)


def _beside(anchor: Point, camera: Camera, hood: HoodShape) -> list[Point]:
    """Places for a number: on the opening of a large hood, beside a small one."""
    shifts = BESIDE if hood.panels else tuple(shift for shift in BESIDE if any(shift))
    places = [(anchor[0] + dx, anchor[1] + dy) for dx, dy in shifts]
    return [p for p in places if DISC < p[0] < camera.width - DISC and DISC < p[1] < camera.height - DISC]


def numbered_disc(at: Point, number: int) -> str:
    """A small disc with a number."""
    return circle(at, DISC, fill=WHITE, stroke=COPPER, stroke_width=1.3) + text(
        (at[0], at[1] + 4), str(number), 11.5, fill=COPPER, text_anchor="middle", font_weight="bold"
    )


def _key_line(hood: HoodShape, at: Point, width: float, picture: Picture, system: str, places: Places) -> str:
    served = [source for source in picture.sources if source.name in hood.serves]
    name, rest = shortened(hood.name), ""
    if served:
        rest = f"{place_words(hood, served[0], system, places)} {shortened(served[0].name, 26)}"
        rest += f" and {len(served) - 1} more" if len(served) > 1 else ""
    room = width - 1.15 * words_width(name, KEY_SIZE) - 8
    rest = shortened(rest, max(8, int(room / words_width("n", KEY_SIZE))))
    return spans(at, [(name, {"fill": COPPER, "font_weight": "bold"}), (rest, {"fill": INK, "dx": 7})], KEY_SIZE)


def _middle(duct: DuctShape) -> Xyz:
    """The middle of the longest straight piece of a duct."""
    pieces = list(zip(duct.points, duct.points[1:], strict=False))
    start, end = max(pieces, key=lambda piece: math.dist(*piece), default=(duct.points[0], duct.points[0]))
    x, y, z = ((a + b) / 2 for a, b in zip(start, end, strict=True))
    return x, y, z
