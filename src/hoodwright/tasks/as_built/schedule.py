"""The duct schedule: what to make and to hang, duct by duct, with sheet and weight, and the sums by size."""

import math
from collections import defaultdict
from dataclasses import dataclass, field

from hoodwright import __version__
from hoodwright.ducts import sheet_density, sheet_thickness, sheet_weight
from hoodwright.errors import RangeError
from hoodwright.tasks.materials import around, fitting_words
from hoodwright.workplace.model import Duct, Fitting, Workplace

NOTES = (
    "Lengths are those of straight duct, as the file gives them.",
    "Sheet and weight count straight ducts and elbows along their centre line; branch entries, cones, dampers, seams, "
    "flanges, stiffeners and hangers are left out: makers add about a fifth (common practice).",
    "Sheet thickness by size is common practice for light and medium dust; a specification, abrasive dust or high "
    "suction asks for more: the maker decides.",
)
NO_SHEET = "no sheet metal: weight from the maker"
TOO_WIDE = "wider than the usual table of sheets: thickness from the maker"


@dataclass(frozen=True)
class ScheduleRow:
    """One duct. `sides` are the diameter, or width and height [m]; thickness and weight are None where not known."""

    name: str
    start: str
    to: str
    shape: str  # round, rectangular, oval
    sides: tuple[float, ...]
    material: str
    length: float  # m
    fittings: tuple[str, ...]
    thickness: float | None  # m
    sheet: float | None  # m2, elbows counted in
    weight: float | None  # kg
    note: str = ""

    @property
    def size(self) -> str:
        """In millimetres, as it is ordered."""
        return " x ".join(f"{1000 * side:.4g}" for side in self.sides)


@dataclass
class ScheduleSum:
    """Everything of one shape, size and material."""

    shape: str
    size: str
    material: str
    ducts: int = 0
    length: float = 0.0
    sheet: float = 0.0
    weight: float = 0.0
    fittings: dict[str, int] = field(default_factory=dict)


@dataclass(frozen=True)
class DuctSchedule:
    """All ducts, sums by size, and what the numbers count. `weighed` are the ducts whose weight is known."""

    workplace: str
    version: str
    rows: tuple[ScheduleRow, ...]
    sums: tuple[ScheduleSum, ...]
    length: float
    sheet: float
    weight: float
    weighed: int
    notes: tuple[str, ...] = NOTES
    source: str = "common-practice"


def schedule_of(workplace: Workplace) -> DuctSchedule:
    """The duct schedule of a workplace."""
    rows = tuple(_row(duct) for duct in workplace.ducts)
    return DuctSchedule(
        workplace=workplace.name,
        version=__version__,
        rows=rows,
        sums=_sums(rows),
        length=sum(row.length for row in rows),
        sheet=sum(row.sheet or 0.0 for row in rows),
        weight=sum(row.weight or 0.0 for row in rows),
        weighed=sum(row.weight is not None for row in rows),
    )


def _row(duct: Duct) -> ScheduleRow:
    density = sheet_density(duct.material)
    thickness, note = _thickness(duct) if density else (None, NO_SHEET)
    area = around(duct) * (duct.length + sum(_elbow_length(duct, fitting) for fitting in duct.fittings))
    weight = float(sheet_weight(area, thickness, density)) if density and thickness else None
    return ScheduleRow(
        name=duct.name,
        start=duct.start,
        to=duct.to,
        shape="round" if duct.is_round else "oval" if duct.oval is not None else "rectangular",
        sides=duct.sides[:1] if duct.is_round else duct.sides,
        material=duct.material,
        length=duct.length,
        fittings=tuple(_fittings(duct)),
        thickness=thickness,
        sheet=area if density else None,
        weight=weight,
        note=note,
    )


def _thickness(duct: Duct) -> tuple[float | None, str]:
    try:
        return float(sheet_thickness(max(duct.sides))), ""
    except RangeError:
        return None, TOO_WIDE


def _elbow_length(duct: Duct, fitting: Fitting) -> float:
    """Along the centre line of an elbow."""
    if fitting.elbow is None:
        return 0.0
    width = duct.sides[0]
    if fitting.mitred:
        return width * math.tan(min(fitting.elbow, math.pi / 2) / 2)
    return fitting.radius * width * fitting.elbow


def _fittings(duct: Duct):
    """What is made or bought besides straight duct, in words; a loss without a kind by its name."""
    for fitting in duct.fittings:
        yield fitting_words(fitting) if fitting.loss is None else fitting.name or "fitting of known loss"
    if duct.joins_at is not None:
        yield f"branch entry {math.degrees(duct.joins_at):.4g} deg"
    if duct.taper is not None:
        yield f"cone {math.degrees(duct.taper):.4g} deg"


def _sums(rows: tuple[ScheduleRow, ...]) -> tuple[ScheduleSum, ...]:
    found: dict[tuple, ScheduleSum] = {}
    counted: dict[tuple, dict[str, int]] = defaultdict(lambda: defaultdict(int))
    for row in sorted(rows, key=lambda row: (row.shape, row.sides, row.material)):
        key = (row.shape, row.sides, row.material)
        one = found.setdefault(key, ScheduleSum(row.shape, row.size, row.material))
        one.ducts += 1
        one.length += row.length
        one.sheet += row.sheet or 0.0
        one.weight += row.weight or 0.0
        for words in row.fittings:
            counted[key][words] += 1
    for key, one in found.items():
        one.fittings = dict(sorted(counted[key].items()))
    return tuple(found.values())


def schedule_as_json(schedule: DuctSchedule) -> dict:
    """The schedule as dictionaries and lists, ready for `json.dumps`; SI, every key ends in its unit."""
    return {
        "ducts": [
            {
                "name": row.name,
                "from": row.start,
                "to": row.to,
                "shape": row.shape,
                "sides_m": list(row.sides),
                "material": row.material,
                "length_m": row.length,
                "fittings": list(row.fittings),
                "thickness_m": row.thickness,
                "sheet_m2": row.sheet,
                "weight_kg": row.weight,
                "note": row.note,
            }
            for row in schedule.rows
        ],
        "length_m": schedule.length,
        "sheet_m2": schedule.sheet,
        "weight_kg": schedule.weight,
        "ducts_weighed": schedule.weighed,
        "notes": list(schedule.notes),
        "source": schedule.source,
    }
