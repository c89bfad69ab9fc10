"""Speeds on a hood's axis by the computed air, beside the most demanding equation of the handbook that holds there."""

from hoodwright.tasks.air.layers import AxisSpeed, centreline_of
from hoodwright.tasks.air.planes import opening_frame
from hoodwright.tasks.air.solved import SolvedAir
from hoodwright.tasks.capture.handbook import handbook_at
from hoodwright.workplace.model import CapturingHood, EnclosingHood, Hood, Source, Workplace


def centreline_before(
    hood: Hood, source: Source, workplace: Workplace, air: SolvedAir, flow: float
) -> tuple[AxisSpeed, ...]:
    """Speeds on the axis without any draught; an enclosure has none, for its openings say more."""
    if isinstance(hood, EnclosingHood):
        return ()

    def by_hand(distance: float) -> float | None:
        if not isinstance(hood, CapturingHood):
            return None
        need = handbook_at(hood, on_axis(source, hood, distance), workplace, flow).need
        return need.velocity if need is not None and need.laws else None

    return centreline_of(air.bases, air.flows, opening_frame(hood), by_hand)


def on_axis(source: Source, hood: Hood, distance: float) -> Source:
    """The source as a point on the axis of a hood."""
    place = tuple(a + distance * f for a, f in zip(hood.at, hood.facing, strict=True))
    return source.model_copy(update={"at": place} | dict.fromkeys(("line", "box", "path", "tank")))
