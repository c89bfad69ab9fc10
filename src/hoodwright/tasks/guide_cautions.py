"""What the process guide adds to an answer, for the sources of a workplace that name their process: words, refusals."""

from collections.abc import Iterator

from hoodwright.results import Caution
from hoodwright.tasks.guide import Statement, entry
from hoodwright.workplace.model import CapturingHood, Hood, ReceivingHood, Source, Workplace

PRACTICE = "common-practice"
ON_TOOL = "on-tool"  # how the forms of hoods begin that ride on the tool and hold what it throws


def guide_cautions(workplace: Workplace) -> Iterator[Caution]:
    """Refusals and cautions of each process, and how often its extraction is examined; once for each process."""
    told: set[str] = set()
    for source in workplace.sources:
        if source.process is None:
            continue
        yield from _unnamed(source, workplace)
        if source.process in told:
            continue
        told.add(source.process)
        found = entry(source.process)
        for one in (*found.refusals, *found.cautions):
            if _concerns(one, source, workplace):
                yield Caution(source.name, one.said, one.citation)
        for interval in found.intervals:
            yield Caution(source.name, f"{interval.text}; {interval.condition}", interval.citation)


def guide_refusal(hood: Hood, source: Source, workplace: Workplace) -> str | None:
    """Why the guide refuses a hood for the process of a source, whatever hazards the file names; None where not."""
    if source.process is None:
        return None
    keys = {one.key for one in entry(source.process).refusals}
    if isinstance(hood, ReceivingHood) and hood.is_canopy and any("canopy" in key for key in keys):
        return (
            f"the guide wants no canopy for '{source.process}': whoever leans in stands in its stream; enclose it, or "
            "draw it off at the work"
        )
    if "refuse.capture-thrown" in keys and _lets_fly_past(hood):
        return f"the guide counts '{source.process}' as thrown: receive its stream or enclose it"
    return unreviewed(source, workplace)


def unreviewed(source: Source, workplace: Workplace) -> str | None:
    """Why nothing is sized for a process whose dust the guide counts as explosible; None where a review is named."""
    keys = {one.key for one in entry(source.process).refusals} if source.process else set()
    if "refuse.review" in keys and workplace.contaminant(source.contaminant).reviewed_by is None:
        return f"the guide counts the dust of '{source.process}' as explosible, and no review is named ('reviewed_by')"
    return None


def _lets_fly_past(hood: Hood) -> bool:
    """Whether it does not stand in the way of what is flung out."""
    if isinstance(hood, CapturingHood):
        return not (hood.form or "").startswith(ON_TOOL)
    return isinstance(hood, ReceivingHood) and hood.is_canopy


def _unnamed(source: Source, workplace: Workplace) -> Iterator[Caution]:
    """Hazards that the guide knows of a process and the file does not name, so that the answer may ask too little."""
    named = workplace.contaminant(source.contaminant).hazards
    lacking = [hazard for hazard in entry(source.process or "").hazards if hazard not in named]
    if lacking:
        text = (
            f"for its process the guide names {' and '.join(lacking)}, the file does not: name what holds as a hazard "
            f"of the {source.contaminant}; without it the answer may ask too little"
        )
        yield Caution(source.name, text, PRACTICE)


def _concerns(one: Statement, source: Source, workplace: Workplace) -> bool:
    """Whether it applies to the hoods that serve the source: a word on canopies only where one hangs."""
    hoods = [hood for hood in workplace.hoods if source.name in hood.serves]
    if "canopy" in one.key:
        return any(isinstance(hood, ReceivingHood) and hood.is_canopy for hood in hoods)
    if one.key == "refuse.capture-thrown":
        return any(isinstance(hood, CapturingHood) for hood in hoods)
    if one.key == "refuse.review":
        return workplace.contaminant(source.contaminant).reviewed_by is None
    return True
