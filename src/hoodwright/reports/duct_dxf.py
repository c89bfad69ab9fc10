"""The layout of the ducts as a DXF drawing: in the room's own coordinates, in metres, one layer for each kind of part.

The file of a workplace gives no routes: they are drawn in a plain way, and the drawing says so.
"""

import io
import math
from collections.abc import Iterator
from contextlib import contextmanager
from itertools import pairwise
from typing import Any

from hoodwright.tasks.picture import BoxShape, DuctShape, HoodShape, Picture, picture
from hoodwright.tasks.routes import places_of_nodes
from hoodwright.workplace.model import Duct, Workplace

Xyz = tuple[float, float, float]
METRES = 6  # $INSUNITS
LETTERS, ASIDE = 0.08, 0.04  # m: height of letters, and how far from what they name
CIRCLE = 24  # sides of a round opening
LAYERS = {  # name and colour number
    "ROOM": 8,
    "SURFACES": 9,
    "HOODS": 5,
    "DUCTS": 7,
    "DUCT-WIDTH": 253,
    "JUNCTIONS": 7,
    "CLEANERS": 3,
    "FANS": 1,
    "TEXT": 7,
}
SAYS = "Routes are not in the workplace file: these are plain ones, to be checked on site."


def layout_dxf(workplace: Workplace) -> bytes:
    """A drawing of room, hoods, ducts, cleaners and fans. The same workplace gives the same bytes."""
    import ezdxf

    with _fixed_dates():
        drawing = ezdxf.new("R2010", setup=False)
        drawing.header["$INSUNITS"] = METRES
        drawing.header["$MEASUREMENT"] = 1
        for name, colour in LAYERS.items():
            drawing.layers.add(name, color=colour)
        _draw(drawing.modelspace(), workplace, picture(workplace))
        out = io.StringIO()
        drawing.write(out)
    return out.getvalue().encode(drawing.output_encoding)


@contextmanager
def _fixed_dates() -> Iterator[None]:
    """No clock and no random names in the file."""
    import ezdxf

    before = ezdxf.options.write_fixed_meta_data_for_testing
    ezdxf.options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        ezdxf.options.write_fixed_meta_data_for_testing = before


def _draw(space: Any, workplace: Workplace, shapes: Picture) -> None:
    _room(space, shapes.room.size)
    for plate in shapes.plates:
        _lines(space, plate.corners, "SURFACES", close=True)
    for hood in shapes.hoods:
        _hood(space, hood)
    ducts = {duct.name: duct for duct in workplace.ducts}
    for shape in shapes.ducts:
        _duct(space, shape, ducts[shape.name])
    for box in shapes.boxes:
        _box(space, box)
    named = {box.name for box in shapes.boxes}
    for name, place in places_of_nodes(workplace).items():
        if name not in named:
            space.add_point(place, dxfattribs={"layer": "JUNCTIONS"})
            _text(space, name, (place[0] + ASIDE, place[1] + ASIDE, place[2]))
    _text(space, f"{workplace.name}. {SAYS}", (0.0, -3 * LETTERS, 0.0))


def _room(space: Any, size: Xyz) -> None:
    x, y, z = size
    floor = ((0.0, 0.0), (x, 0.0), (x, y), (0.0, y))
    for height in (0.0, z):
        _lines(space, [(*corner, height) for corner in floor], "ROOM", close=True)
    for corner in floor:
        space.add_line((*corner, 0.0), (*corner, z), dxfattribs={"layer": "ROOM"})


def _hood(space: Any, hood: HoodShape) -> None:
    for panel in hood.panels:
        _lines(space, panel, "HOODS", close=True)
    for line in hood.lines:
        _lines(space, line, "HOODS")
    _lines(space, _rim(hood), "HOODS", close=True)
    low = min(y for _, y, _ in (*_rim(hood), *(p for panel in hood.panels for p in panel)))
    _text(space, hood.name, (hood.at[0], low - ASIDE - LETTERS, hood.at[2]))


def _rim(hood: HoodShape) -> list[Xyz]:
    """The edge of the opening."""
    if hood.is_round:
        turns = [2 * math.pi * i / CIRCLE for i in range(CIRCLE)]
        shares = [(math.cos(turn), math.sin(turn)) for turn in turns]
    else:
        shares = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)]
    return [_along(hood, a * hood.half_width, b * hood.half_height) for a, b in shares]


def _along(hood: HoodShape, across: float, up: float) -> Xyz:
    x, y, z = (c + across * a + up * u for c, a, u in zip(hood.at, hood.across, hood.up, strict=True))
    return x, y, z


def _duct(space: Any, shape: DuctShape, duct: Duct) -> None:
    """Centre line in space, true width in plan where it lies level, and what it is, along its longest level piece."""
    _lines(space, shape.points, "DUCTS")
    pieces = [piece for piece in pairwise(shape.points) if _level(piece) > 0]
    for a, b in pieces:
        attributes = {"layer": "DUCT-WIDTH", "elevation": (a[2] + b[2]) / 2}
        space.add_lwpolyline(_sides(a, b, duct.sides[0] / 2), close=True, dxfattribs=attributes)
    words = f"{duct.name}: {_size(duct)}, {duct.length:.4g} m"
    if not pieces:
        x, y, z = shape.points[0]
        _text(space, words, (x + ASIDE, y + duct.sides[0] / 2 + ASIDE, z))
        return
    longest = max(pieces, key=_level)
    a, b = min(longest), max(longest)
    first, second, *_ = _sides(a, b, -duct.sides[0] / 2 - ASIDE)
    x, y = ((p + q) / 2 for p, q in zip(first, second, strict=True))
    turn = math.degrees(math.atan2(b[1] - a[1], b[0] - a[0]))
    _text(space, words, (x, y, a[2]), turn=turn, middle=True)


def _level(piece: tuple[Xyz, Xyz]) -> float:
    """Length in plan."""
    return math.dist(piece[0][:2], piece[1][:2])


def _sides(a: Xyz, b: Xyz, half: float) -> list[tuple[float, float]]:
    """Corners of a level piece in plan: along its right side and back along its left."""
    long = math.dist(a[:2], b[:2])
    x, y = half * (b[1] - a[1]) / long, -half * (b[0] - a[0]) / long
    return [(a[0] + x, a[1] + y), (b[0] + x, b[1] + y), (b[0] - x, b[1] - y), (a[0] - x, a[1] - y)]


def _size(duct: Duct) -> str:
    sides = [f"{1000 * side:.4g}" for side in duct.sides]
    return f"round {sides[0]}" if duct.is_round else f"{'oval ' if duct.oval else ''}{sides[0]} x {sides[1]}"


def _box(space: Any, box: BoxShape) -> None:
    layer, half = "FANS" if box.kind == "fan" else "CLEANERS", box.size / 2
    corners = [(-half, -half), (half, -half), (half, half), (-half, half)]
    x, y, z = box.centre
    for height in (z - half, z + half):
        _lines(space, [(x + a, y + b, height) for a, b in corners], layer, close=True)
    for a, b in corners:
        space.add_line((x + a, y + b, z - half), (x + a, y + b, z + half), dxfattribs={"layer": layer})
    _text(space, box.name, (x - half, y - half - ASIDE - LETTERS, z))


def _lines(space: Any, points: Any, layer: str, *, close: bool = False) -> None:
    space.add_polyline3d(list(points), close=close, dxfattribs={"layer": layer})


def _text(space: Any, words: str, at: Any, *, turn: float = 0.0, middle: bool = False) -> None:
    from ezdxf.enums import TextEntityAlignment

    align = TextEntityAlignment.BOTTOM_CENTER if middle else TextEntityAlignment.LEFT
    attributes = {"layer": "TEXT", "rotation": turn}
    space.add_text(_safe(words), height=LETTERS, dxfattribs=attributes).set_placement(tuple(at), align=align)


def _safe(words: str) -> str:
    """One line, without the signs that a drawing program would take for a code of its own."""
    return " ".join(words.replace("%%", "% %").replace("\\", "/").replace("^", " ").split())
