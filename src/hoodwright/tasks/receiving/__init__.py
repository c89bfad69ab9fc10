"""Hoods that stand where a process sends its stream: canopies, wheel hoods, hoods that take thrown particles."""

from collections.abc import Iterator
from dataclasses import replace
from importlib import import_module
from typing import Any, cast

from hoodwright.results import Caution, Hint
from hoodwright.tasks.assessment import HoodAnswer, SourceNeed
from hoodwright.tasks.hood_types import HoodType
from hoodwright.workplace.model import ReceivingHood, Source, Workplace

__all__ = ["cautions", "disturbance", "head", "hints", "need_of", "refusal"]


def need_of(
    hood: ReceivingHood, source: Source, workplace: Workplace, design_flow: float | None, system: str
) -> SourceNeed:
    """What a source asks of the hood."""
    return _of(hood, source).need_of(hood, source, workplace, design_flow, system)


def head(hood: ReceivingHood, need: SourceNeed, system: str) -> str:
    """The sentence up to its verb: 'The canopy, 600 mm above the crucible,'."""
    return f"The {hood.name}, {need.place} the {need.source},"


def refusal(hood: ReceivingHood, source: Source, workplace: Workplace) -> str | None:
    """Why no flow of this hood can be called enough for the source; None where one can."""
    return _of(hood, source).refusal(hood, source, workplace)


def disturbance(need: SourceNeed, hood: ReceivingHood, workplace: Workplace, system: str) -> str | None:
    """What takes away the air that the equations suppose; None where nothing does."""
    return _of(hood, workplace.source(need.source)).disturbance(need, hood, workplace, system)


def hints(case: Any) -> tuple[Hint, ...]:
    """What would help most, for the source that asks most."""
    return _of(case.hood, case.workplace.source(case.worst.source)).hints(case)


def cautions(hood: ReceivingHood, answer: HoodAnswer, workplace: Workplace, system: str) -> Iterator[Caution]:
    """Warnings that belong to the hood; each kind of stream warns of its own sources."""
    kinds: dict[str, list[SourceNeed]] = {}
    for need in answer.needs:
        kinds.setdefault(_kind(hood, workplace.source(need.source)), []).append(need)
    for kind, needs in kinds.items():
        yield from _package(kind).cautions(hood, replace(answer, needs=tuple(needs)), workplace, system)


def _kind(hood: ReceivingHood, source: Source) -> str:
    if source.wheel is not None:
        return "wheels"
    return "canopy" if hood.is_canopy else "thrown"


def _of(hood: ReceivingHood, source: Source) -> HoodType:
    return _package(_kind(hood, source))


def _package(kind: str) -> HoodType:
    """Loaded here, since hints ask for needs in turn."""
    return cast(HoodType, import_module(f"hoodwright.tasks.receiving.{kind}"))
