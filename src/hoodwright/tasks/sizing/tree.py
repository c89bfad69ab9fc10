"""From a workplace to the ducts that are to be sized: one tree of them before every fan."""

from collections.abc import Iterator
from dataclasses import dataclass

from hoodwright import ducts as d
from hoodwright import hoods
from hoodwright.ducts.sizing import DuctAir, SizedDuct
from hoodwright.errors import InputError
from hoodwright.tasks.as_built.runs import LEAST_EXPONENT, entry_of
from hoodwright.tasks.fan_answers import fan_sides
from hoodwright.tasks.sections import NEVER_SETTLES, Section, least_velocity
from hoodwright.tasks.shapes import area_of
from hoodwright.tasks.walk import Walk
from hoodwright.units import show
from hoodwright.workplace.model import Fan, Resistance


@dataclass(frozen=True)
class DuctTree:
    """The ducts before a fan, and what is behind it [Pa of total pressure at its outlet]."""

    fan: Fan
    sections: tuple[Section, ...]
    ducts: tuple[SizedDuct, ...]
    behind: float
    power: float  # W of air power by the hand method, with the sizes in the file


def trees_of(walk: Walk, fastest: float, pinned: frozenset[str]) -> list[DuctTree]:
    """One tree for every fan; ducts behind fans stay as they are. `pinned` ducts keep their size."""
    if not walk.fans:
        raise InputError(
            "the file has no fan, so there is nothing to size for; add a fan and the duct that leads to it"
        )
    return [_tree(fan, walk, fastest, pinned) for fan in walk.fans.values()]


def _tree(fan: Fan, walk: Walk, fastest: float, pinned: frozenset[str]) -> DuctTree:
    last = walk.arriving(fan.name)
    if len(last) != 1:
        raise InputError(
            f"{len(last)} ducts lead to the {fan.name}, and sizes are chosen for ducts that join before it; add the "
            "junction and the duct behind it"
        )
    sections = list(_before(last[0], walk))
    number = {section.duct.name: n for n, section in enumerate(sections)}
    ducts = tuple(_sized(section, walk, number, fastest, pinned) for section in sections)
    total_in, _, total_out, flow = fan_sides(fan, walk)
    return DuctTree(fan, tuple(sections), ducts, total_out, flow * (total_out - total_in))


def _before(section: Section, walk: Walk) -> Iterator[Section]:
    """All that leads to the end of a duct, each after those that lead to it."""
    found, waiting = [], [section]
    while waiting:
        here = waiting.pop()
        found.append(here)
        waiting += walk.arriving(here.duct.start)
    yield from reversed(found)


def _air_in(section: Section, walk: Walk) -> DuctAir | None:
    """The air of a duct, where it is not the room's."""
    air = section.air
    return None if air == walk.air else DuctAir(air.density, air.viscosity, air.temperature)


def _sized(section: Section, walk: Walk, number, fastest: float, pinned: frozenset[str]) -> SizedDuct:
    duct, arriving = section.duct, walk.arriving(section.duct.start)
    least = least_velocity(section.carries)
    if fastest <= least:
        raise InputError(
            f"{duct.name} carries {section.carries}, which asks for {show(least, 'velocity', 'SI')}, and at most "
            f"{show(fastest, 'velocity', 'SI')} is allowed; allow more"
        )
    behind_hood = _behind_hood(section, walk) if duct.start in walk.hoods else _behind_node(section, walk)
    alone = len(walk.arriving(duct.to)) == 1
    return SizedDuct(
        name=duct.name,
        before=tuple(number[s.duct.name] for s in arriving),
        length=duct.length,
        loss=_fittings(section) + (entry_of(duct) if alone else 0.0),
        least=least,
        greatest=fastest,
        entry=0.0 if alone else entry_of(duct),
        angle=duct.joins_at or 0.0,
        roughness=float(d.roughness(duct.material)),
        pieces=sum(fitting.elbow is not None for fitting in duct.fittings),
        kept=None if duct.is_round and duct.name not in pinned else (section.diameter, area_of(duct)),
        settles=section.carries not in NEVER_SETTLES,
        air=_air_in(section, walk),
        **behind_hood,
    )


def _fittings(section: Section) -> float:
    """Without dampers, which are set anew, and without the entry into the next duct."""
    dampers = sum(fitting.damper_loss or 0.0 for fitting in section.duct.fittings)
    return section.coefficients - dampers - entry_of(section.duct)


def _behind_hood(section: Section, walk: Walk) -> dict:
    hood, entry, flow = walk.hoods[section.duct.start], walk.entry(section), section.flow
    fixed = [] if hood.filter is None else [_loaded(hood.filter)]
    if entry.slot_area is None:
        return {"flow": flow, "hood": entry.coefficient, "fixed": tuple(fixed)}
    slot = section.air.density * (flow / entry.slot_area) ** 2 / 2
    fixed.append((hoods.SLOT_LOSS * slot, flow, 2.0))
    return {"flow": flow, "hood": entry.behind, "slots": entry.slot_area, "fixed": tuple(fixed)}


def _behind_node(section: Section, walk: Walk) -> dict:
    cleaner = walk.cleaners.get(section.duct.start)
    return {} if cleaner is None else {"fixed": (_loaded(cleaner.resistance),)}


def _loaded(resistance: Resistance) -> tuple[float, float, float]:
    return resistance.dirty, resistance.at, max(resistance.exponent, LEAST_EXPONENT)
