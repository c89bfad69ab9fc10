"""One source and one flow, three places for the hood: beside it, above it, around it. Each is a workplace of its own.

Only what matters near the source is kept: room, draught, benches. What is left out, people first, is said.
"""

import math
from dataclasses import dataclass
from itertools import product
from typing import Any

from hoodwright.errors import InputError
from hoodwright.tasks.arrangements.ducts import ducts_for, free_name
from hoodwright.tasks.arrangements.places import (
    CLEARANCES,
    Box,
    Work,
    above,
    around,
    benches_of,
    beside,
    check_distance,
    fits,
    ground_of,
    holds,
    present_distance,
    ways_of,
    work_of,
)
from hoodwright.tasks.arrangements.words import (
    above_words,
    around_words,
    beside_words,
    handbook_words,
    left_out_words,
)
from hoodwright.tasks.assess import assess, design_flow
from hoodwright.tasks.hood_shapes import Xyz
from hoodwright.units import write
from hoodwright.workplace import parse_workplace
from hoodwright.workplace.model import CapturingHood, EnclosingHood, Hood, Opening, Source, Surface, Workplace
from hoodwright.workplace.write import as_data, text_of

TITLES = {"beside": "Beside it", "above": "Above it", "enclosed": "Around it"}
KEYS = tuple(TITLES)
NOZZLE_SPEED = 5.0  # m/s into a nozzle that stands in for a hood of another kind
SIZE_STEP, SMALLEST = 0.01, 0.05  # m
FORM = "cabinet"
LONGEST_NAME = 40


@dataclass(frozen=True)
class Arrangement:
    """One of the three: the workplace, also as the text of a file, and what it does in words."""

    key: str  # beside | above | enclosed
    title: str
    words: str  # what it does
    handbook: str  # what its air velocity is by the handbook
    workplace: Workplace
    text: str
    hood: str
    source: str
    flow: float  # m3/s
    distance: float | None  # m from the edge of the work; None for a box
    inward: float | None  # m/s through the openings of a box; None for the others


@dataclass(frozen=True)
class _Plan:
    """What the three share."""

    workplace: Workplace
    hood: Hood
    source: Source
    flow: float
    distance: float
    work: Work
    way: Xyz  # from the source to where a hood beside it stands
    clearance: float  # m from the work to the walls of a box
    system: str

    @property
    def benches(self) -> tuple[Surface, ...]:
        """Level surfaces that stay."""
        return benches_of(self.workplace, self.work)

    @property
    def box(self) -> Box:
        """A box round the work, with its back where a hood beside it would stand."""
        return around(self.work, self.way, ground_of(self.benches, self.work.middle), self.clearance)


def arrangements_of(
    workplace: Workplace, hood: str, source: str, distance: float | None = None, system: str | None = None
) -> tuple[Arrangement, ...]:
    """Beside, above and enclosed, with the flow of `hood`; `distance` [m] by default as it stands in the file."""
    plan = _plan(workplace, hood, source, distance, system or workplace.units)
    return _beside(plan), _above(plan), _enclosed(plan)


def arrangement(workplace: Workplace, hood: str, source: str, key: str, distance: float | None = None) -> Arrangement:
    """One of the three."""
    if key not in KEYS:
        raise InputError(f"no arrangement is named {key!r}; there is: {', '.join(KEYS)}")
    make = {"beside": _beside, "above": _above, "enclosed": _enclosed}[key]
    return make(_plan(workplace, hood, source, distance, workplace.units))


def check_places(workplace: Workplace, hood: str, source: str, distance: float) -> None:
    """InputError where no three can be made at this distance [m]; says why, and what to do."""
    _plan(workplace, hood, source, distance, workplace.units)


def distance_in_file(workplace: Workplace, hood: str, source: str) -> float:
    """How far from the work the hood stands now [m]; the usual distance where it does not capture."""
    return present_distance(_named(workplace.hoods, hood, "hood"), _named(workplace.sources, source, "source"))


def left_out(workplace: Workplace, hood: str, source: str) -> str:
    """What of the file is not in the three, in one sentence; empty where nothing is."""
    work = work_of(_named(workplace.sources, source, "source"))
    kept = {hood, source, *(bench.name for bench in benches_of(workplace, work))}
    return left_out_words(workplace, kept)


def _plan(workplace: Workplace, hood: str, source: str, distance: float | None, system: str) -> _Plan:
    """What the three share; the first way from the source in which the room has space for all of them."""
    found, given = _named(workplace.hoods, hood, "hood"), _named(workplace.sources, source, "source")
    far = present_distance(found, given) if distance is None else check_distance(distance)
    work, flow = work_of(given), design_flow(found, workplace)
    if not work.top + far < workplace.room.size[2]:
        raise InputError(f"{far:g} m above the {source} is above the room's ceiling; choose a smaller distance")
    for clearance, way in product(CLEARANCES, ways_of(found, given, workplace)):
        plan = _Plan(workplace, found, given, flow, far, work, way, clearance, system)
        if fits(way, _place_beside(plan), _nozzle(plan), plan.box, workplace.room.size):
            return plan
    raise InputError(f"there is no space round the {source} for a hood {far:g} m away; choose a smaller distance")


def _named(parts, name: str, what: str) -> Any:
    found = next((part for part in parts if part.name == name), None)
    if found is None:
        raise InputError(f"no {what} is named {name!r}; there is: {', '.join(p.name for p in parts) or 'none'}")
    return found


def _beside(plan: _Plan) -> Arrangement:
    facing = (-plan.way[0], -plan.way[1], 0.0)
    level = isinstance(plan.hood, CapturingHood) and abs(plan.hood.facing[2]) < 1e-6
    along = plan.hood.along if level and plan.hood.along is not None else _across(plan)
    return _made(plan, "beside", _capturing(plan, _place_beside(plan), facing, along), beside_words(plan))


def _above(plan: _Plan) -> Arrangement:
    hood = _capturing(plan, above(plan.work, plan.distance), (0.0, 0.0, -1.0), _across(plan))
    return _made(plan, "above", hood, above_words(plan))


def _enclosed(plan: _Plan) -> Arrangement:
    """The enclosure of the file where the source stands in one, else a box round it."""
    if isinstance(plan.hood, EnclosingHood) and holds(plan.hood, plan.source):
        hood = as_data(plan.hood)
        gone = ("commissioned", "today", "filter", "entry")
        hood = {key: value for key, value in hood.items() if key not in gone} | {"serves": [plan.source.name]}
        return _made(plan, "enclosed", hood, around_words(plan, plan.hood.opening.sides, plan.hood.box, own=True))
    box = plan.box
    hood = {
        "type": "enclosing",
        "form": FORM,
        "serves": [plan.source.name],
        "opening": {"rectangle": _lengths(box.opening)},
        "inside": _lengths(box.inside),
        "sill": "0 mm",
        "at": _lengths(box.at),
        "facing": [-plan.way[0], -plan.way[1], 0.0],
    }
    return _made(plan, "enclosed", hood, around_words(plan, box.opening, box.inside, own=False))


def _capturing(plan: _Plan, at: Xyz, facing: Xyz, along: Xyz) -> dict[str, Any]:
    opening = _nozzle(plan)
    hood: dict[str, Any] = {"type": "capturing", "serves": [plan.source.name], "opening": as_data(opening)}
    if isinstance(plan.hood, CapturingHood):
        hood |= {"flange": _length(plan.hood.flange)} if plan.hood.flange else {}
        hood |= {"bell_mouth": True} if plan.hood.bell_mouth else {}
    hood |= {"at": _lengths(at), "facing": list(facing)}
    return hood if opening.is_round else hood | {"along": list(along)}


def _nozzle(plan: _Plan) -> Opening:
    """The opening of a capturing hood; for another hood a round one that the flow enters at a usual speed."""
    if isinstance(plan.hood, CapturingHood):
        return plan.hood.opening
    wide = math.sqrt(4 * plan.flow / (math.pi * NOZZLE_SPEED))
    return Opening(round=_length(max(SMALLEST, round(wide / SIZE_STEP) * SIZE_STEP)))  # type: ignore[arg-type]


def _place_beside(plan: _Plan) -> Xyz:
    at = beside(plan.work, plan.way, plan.distance, 0.0, 0.0)
    ground = ground_of(plan.benches, at)
    return beside(plan.work, plan.way, plan.distance, _nozzle(plan).sides[1] / 2, ground)


def _across(plan: _Plan) -> Xyz:
    return -plan.way[1], plan.way[0], 0.0


def _made(plan: _Plan, key: str, hood: dict[str, Any], words: str) -> Arrangement:
    """One arrangement; its workplace is read as any file is read."""
    taken = {
        plan.source.contaminant,
        plan.source.name,
        *(bench.name for bench in plan.benches),
    }
    taken |= {opening.name for opening in plan.workplace.room.openings}
    name = free_name("box" if key == "enclosed" else f"hood {key}", taken)
    text = text_of(_data(plan, key, {**hood, "name": name}, taken | {name}))
    made = parse_workplace(text, file=key)
    answer = assess(made, plan.system).hoods[0]
    return Arrangement(
        key=key,
        title=TITLES[key],
        words=words,
        handbook=handbook_words(answer, plan.system),
        workplace=made,
        text=text,
        hood=name,
        source=plan.source.name,
        flow=plan.flow,
        distance=None if key == "enclosed" else plan.distance,
        inward=answer.openings[0].velocity if answer.openings else None,
    )


def _data(plan: _Plan, key: str, hood: dict[str, Any], taken: set[str]) -> dict[str, Any]:
    """The keys of a workplace file with this hood alone."""
    told = plan.workplace
    return {
        "hoodwright": told.hoodwright,
        "name": f"{told.name[:LONGEST_NAME].strip()}, {key}",
        "about": f"The {plan.source.name} of {told.name} with one hood, {key}, to compare three places.",
        "units": plan.system,
        "air": as_data(told.air),
        **{part: as_data(getattr(told, part)) for part in ("room", "uncertainty") if part in told.model_fields_set},
        "contaminants": [as_data(told.contaminant(plan.source.contaminant))],
        "surfaces": [as_data(bench) for bench in plan.benches],
        "sources": [as_data(plan.source)],
        "hoods": [{**hood, "intended_flow": write(plan.flow, "flow", "SI")}],
        **ducts_for(plan.hood, plan.workplace, plan.flow, hood["name"], taken),
    }


def _length(value: float) -> str:
    return write(value, "length", "SI")


def _lengths(values: tuple[float, ...]) -> list[str]:
    return [_length(value) for value in values]
