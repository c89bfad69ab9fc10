"""How far from a hood of a tabulated form its work may lie. The tables do not say; these limits are ours."""

from hoodwright.tasks.hood_shapes import frame_of
from hoodwright.tasks.shapes import half_size, within
from hoodwright.units import show
from hoodwright.workplace.model import CapturingHood, Source

BENCHES = {"downdraught bench": 0.5, "side-draught bench": 0.75}  # m before the opening, and beside no edge of it
TOOLS = {"stone tool hood": 0.3, "on-torch": 0.06, "on-tool sander": 0.15, "on-tool grinder": 0.15}  # m from the rim


def out_of_form(hood: CapturingHood, source: Source, system: str) -> str | None:
    """Why a source lies outside what the table of the hood's form is for; None where it does not, or without form."""
    if hood.form is None:
        return None
    reach = (BENCHES | TOOLS).get(hood.form)
    if reach is None or all(_inside(hood, point, reach) for point in source.points):
        return None
    most = show(reach, "length", system)
    where = f"before its opening, up to {most} off" if hood.form in BENCHES else f"within {most} of its rim"
    return f"the table for '{hood.form}' is for work {where} (our limit), and the {source.name} lies outside that"


def _inside(hood: CapturingHood, point: tuple[float, float, float], reach: float) -> bool:
    line = [p - a for p, a in zip(point, hood.at, strict=True)]
    across, up = (abs(sum(p * w for p, w in zip(line, way, strict=True))) for way in frame_of(hood))
    ahead = sum(p * f for p, f in zip(line, hood.facing, strict=True))
    if hood.form in BENCHES:
        width, height = (side / 2 for side in hood.opening.sides)
        over = hood.form != "downdraught bench" or within(up, height)
        return ahead >= -1e-9 and within(ahead, reach) and within(across, width) and over
    return within(sum(p * p for p in line) ** 0.5, reach + half_size(hood.opening))
