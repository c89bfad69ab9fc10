"""The capture map of a workplace file: one source, one hood, one plane. Not validated."""

from dataclasses import dataclass

from hoodwright.errors import InputError
from hoodwright.flow import Frame, Plan
from hoodwright.jobs import Progress
from hoodwright.tasks.air.layers_export import levels_as_json, plane_as_json, values_as_json
from hoodwright.tasks.air.map_of_capture import MapLayer, capture_map_of
from hoodwright.tasks.air.planes import LEVEL, PLANES, cut_of, opening_frame
from hoodwright.tasks.air.scene import draught_of, release_of
from hoodwright.tasks.air.solved import PLAN, flows_of, plan_for, solved_air
from hoodwright.tasks.assess import air_of
from hoodwright.tasks.capture.claims import claim_of
from hoodwright.tasks.capture.job import BANNER, pairs_of
from hoodwright.tasks.hood_shapes import Xyz
from hoodwright.tasks.today import with_today
from hoodwright.workplace.model import Workplace


@dataclass(frozen=True, eq=False)
class CaptureMap:
    """A capture map, and what stands in its picture."""

    source: str
    hood: str
    source_at: Xyz
    frame: Frame  # of the hood's opening
    flow: float  # m3/s
    plane: str  # level or upright
    system: str
    layer: MapLayer
    plates: tuple[tuple[Xyz, Xyz], ...] = ()  # lines in which benches and walls cut the plane


def pair_of(workplace: Workplace, source: str | None, hood: str | None) -> tuple[str, str]:
    """The one source and the one hood of a map."""
    pairs = {(given.name, one.name) for one, given in pairs_of(workplace, source, hood)}
    if len(pairs) != 1:
        told = "; ".join(f"{first} before {second}" for first, second in sorted(pairs))
        raise InputError(f"--map: one source before one hood is needed, got {told}; name --source and --hood")
    return pairs.pop()


def captured_map(
    workplace: Workplace,
    source: str,
    hood: str,
    plane: str = LEVEL,
    *,
    today: bool = False,
    plan: Plan = PLAN,
    seed: int = 1,
    progress: Progress | None = None,
) -> CaptureMap:
    """Where on a plane the hood would still catch what the source gives off; refused where no per cent may be claimed.

    `plane` is level (through the source) or upright (through hood and source).
    """
    if plane not in PLANES:
        raise InputError(f"--plane: got {plane!r}; there are {' and '.join(PLANES)}")
    progress, given = progress or Progress(), workplace.source(source)
    chosen = next(one for one in workplace.hoods if one.name == hood)
    workplace = with_today(workplace) if today else workplace
    flows = flows_of(workplace, today=today)
    untold = claim_of(chosen, given, workplace, flows[hood])
    if untold:
        raise InputError(f"there is no capture map: {untold}")
    if flows[hood] <= 0:
        raise InputError(f"{hood}: it draws no air, its flow is 0; give a flow above 0")
    air = solved_air(chosen, workplace, given.points, flows, progress.part(0.0, 0.4))
    air.bases.refuse_solid(source, given.points)
    release, frame = release_of(given, workplace, air_of(workplace.air).density), opening_frame(chosen)
    blown, own = draught_of(workplace, given.centre), plan_for(chosen, given, plan)
    args = (air.bases, air.scene.mouths, air.flows, release, blown, own, hood, frame, plane, workplace.units)
    layer = capture_map_of(*args, seed=seed, progress=progress.part(0.4, 1.0))
    plates = tuple(line for plate in air.scene.plates if (line := cut_of(plate, layer.plane)))
    return CaptureMap(source, hood, given.centre, frame, flows[hood], plane, workplace.units, layer, plates)


def capture_map_as_json(found: CaptureMap) -> dict:
    """Plain data for machines, in SI; null where the source cannot stand."""
    layer = found.layer
    return {
        "source": found.source,
        "hood": found.hood,
        "flow_m3_s": found.flow,
        "plane": found.plane,
        "banner": BANNER,
        **{f"{side}_m": value for side, value in plane_as_json(layer.plane).items()},
        "shape": list(layer.shape),
        "captured": values_as_json(layer.values),
        "levels": [{"share": one["value"], "lines_m": one["lines"]} for one in levels_as_json(layer.levels)],
        "definition": {
            "escape_radius_m": layer.escape_radius,
            "time_limit_s": layer.time_limit,
            "realisations": layer.realisations,
            "particles": layer.particles,
        },
        "sentence": layer.words,
    }
