"""The report as plain data: results and facts of the document in, words and figures out. No layout here."""

from dataclasses import dataclass

from hoodwright.reports.hood_content import caution_content, hood_content, outcomes
from hoodwright.reports.run_content import run_content
from hoodwright.reports.scene import scene_svg, scene_words
from hoodwright.reports.words import Citations, cleaned
from hoodwright.results import Caution
from hoodwright.tasks.assessment import Assessment
from hoodwright.tasks.picture import Picture
from hoodwright.units import show

QUESTION = "Will these hoods catch what the sources give off?"
NOT_COVERED = (
    "Draughts, moving people and opening doors: the equations suppose still air before the hood.",
    "Obstacles: benches, bodies and machines between source and hood, and what they do to the air.",
    "The share of the contaminant that is caught, and what anyone breathes: neither is computed at this depth.",
    "Heat and momentum of the source: rising plumes and thrown particles need a receiving or an enclosing hood.",
    "The real routes, supports, access doors, noise and make-up air of the ductwork.",
    "Local codes and licensed professional practice: they come first wherever they differ from this report.",
)


@dataclass(frozen=True)
class Facts:
    """What the report needs to know of the document and the workplace besides the answer.

    `lengths` are duct lengths by name [m]; `contaminants` gives the contaminant of each source by its name.
    """

    file_name: str
    checksum: str
    lengths: dict[str, float]
    contaminants: dict[str, str]


def report_content(assessment: Assessment, picture: Picture, facts: Facts) -> dict:
    """Everything the template prints, in the order of the page."""
    cited = Citations()
    places = _placed(assessment, facts)
    system = assessment.system
    content = {
        "question": QUESTION,
        "workplace": assessment.workplace,
        "about": assessment.about,
        "invented": "invent" in assessment.about.casefold(),
        "answers": [{"name": h.name, "sentence": h.sentence, "outcomes": outcomes(h)} for h in assessment.hoods],
        "scene": scene_svg(picture, system, paper="none"),
        "scene_words": scene_words(picture, system),
        "scene_caption": _scene_caption(picture, system),
        "air": _air(assessment),
        "air_cites": cited.cite("ashrae-f17, ch. 1"),
        "hoods": [hood_content(h, picture, places.get(h.name, []), system, cited) for h in assessment.hoods],
        "run": run_content(assessment, facts.lengths, places, cited),
        "cautions": caution_content(places.get("", []), cited),
        "not_covered": list(NOT_COVERED),
        "system": system,
        "version": assessment.version,
        "file_name": facts.file_name,
        "checksum": facts.checksum,
    }
    for key in assessment.sources:
        cited.cite(key)
    return cleaned(content | {"sources": cited.entries()})


def _placed(assessment: Assessment, facts: Facts) -> dict[str, list[Caution]]:
    """Cautions by the hood, duct, junction or fan they stand beside; "" for the whole workplace."""
    beside: dict[str, list[str]] = {}
    for hood in assessment.hoods:
        for need in hood.needs:
            for name in (need.source, facts.contaminants.get(need.source, "")):
                beside.setdefault(name, []).append(hood.name)
    names = [hood.name for hood in assessment.hoods] + [duct.name for duct in assessment.ducts]
    names += [junction.name for junction in assessment.junctions] + [fan.name for fan in assessment.fans]
    beside |= {name: [name] for name in names}
    placed: dict[str, list[Caution]] = {}
    for caution in assessment.cautions:
        for place in dict.fromkeys(beside.get(caution.about, [""])):
            placed.setdefault(place, []).append(caution)
    return placed


def _scene_caption(picture: Picture, system: str) -> str:
    grid = "1 m" if system == "SI" else "3 ft"
    words = f"The scene from the front left, to scale, without perspective; floor grid {grid}."
    if picture.ducts:
        words += " The file gives no duct routes: they are drawn plainly, back from the hood, up and along to the fan."
    return words


def _air(assessment: Assessment) -> list[list[str]]:
    air, system = assessment.air, assessment.system
    return [
        ["temperature", show(air.temperature, "temperature", system)],
        ["absolute pressure", f"{air.p_abs / 1000:.4g}\u2009kPa"],
        ["humidity ratio", f"{1000 * air.humidity_ratio:.3g}\u2009g/kg"],
        ["density", show(air.density, "density", system, 4)],
        ["viscosity", f"{1e6 * air.viscosity:.4g}\u2009µPa\u2009s"],
    ]
