"""The way of the air from one hood to the open air, with the pressures along it, as built and as designed."""

from hoodwright.tasks.as_built.live import LiveDucts
from hoodwright.tasks.as_built.tree import Branching
from hoodwright.tasks.stretches import Stretch
from hoodwright.workplace.check import OUTSIDE
from hoodwright.workplace.model import Duct, Workplace


def hood_before(workplace: Workplace, part: str) -> str:
    """The hood whose way leads through a part: itself, or the one that is meant to draw most of what comes there."""
    tree = Branching(workplace)
    duct = next((duct for duct in workplace.ducts if duct.name == part or part == f"{duct.to} {duct.name}"), None)
    here = duct.start if duct else part
    while tree.arriving.get(here):
        here = max(tree.arriving[here], key=lambda one: tree.weight.get(one.start, 0.0)).start
    led = [hood.name for hood in workplace.hoods if hood.name in tree.leaving]
    return here if here in led else next(iter(led), "")


def path_of(workplace: Workplace, live: LiveDucts, hood: str) -> tuple[Stretch, ...]:
    """Every duct that the air of a hood goes through, in the order of the flow."""
    leaving = {duct.start: duct for duct in workplace.ducts}
    way: list[Duct] = []
    here = hood
    while here in leaving and here != OUTSIDE:
        way.append(leaving[here])
        here = leaving[here].to
    left, found = sum(duct.length for duct in way), []
    for duct in way:
        flow = live.ducts[duct.name]
        begins, left = left, left - duct.length
        found.append(
            Stretch(duct.name, duct.start, duct.to, begins, max(left, 0.0), flow.static, flow.total, duct.start == hood)
        )
    return tuple(found)
