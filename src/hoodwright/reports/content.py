"""The report as plain data: results and facts of the document in, words and figures out. No layout here."""

from dataclasses import dataclass

from hoodwright.reports.hood_content import caution_content, hood_content, outcomes
from hoodwright.reports.run_content import materials_content, run_content
from hoodwright.reports.scene import scene_svg, scene_words
from hoodwright.reports.scene_names import MOST_NAMED
from hoodwright.reports.svg import height_over_width
from hoodwright.reports.words import Citations, cleaned, required_words, summary
from hoodwright.results import Caution
from hoodwright.tasks.assessment import Assessment, HoodAnswer
from hoodwright.tasks.picture import Picture
from hoodwright.units import show, to_unit

QUESTION = "Will these hoods catch what the sources give off?"
NOT_COVERED = (
    "Draughts, moving people and opening doors: the equations suppose still air. A draught that the file states is "
    "told where it matters; others are not known.",
    "Obstacles: bodies and machines between source and hood. A bench or wall counts only where a hood rests on it.",
    "Bursts: charging, pouring, a torch held askew, warm air under the roof. The equations know steady work.",
    "The share of the contaminant that is caught, and what anyone breathes: neither is computed at this depth.",
    "Whether an enclosure holds what is in it: face velocity is no proof, a containment test is.",
    "The real routes of the ductwork, its supports, access doors and noise; where make-up air comes in; the fan's own "
    "curve and what a poor inlet takes from it.",
    "Local codes and licensed professional practice: they come first wherever they differ from this report.",
)
GRAINS, PA_S_PER_LB_FT_H = 7000, 4.133789e-4  # grains in a pound; 1 lb/(ft h) in Pa s
MOST_TOLD_IN_FULL = 6  # more hoods than this stand in a table on the first page


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
    seen = {(hood.name, need.source): need.place for hood in assessment.hoods for need in hood.needs}
    scene = scene_svg(picture, system, "none", seen, with_key=False)  # the answers have the numbers
    content = {
        "question": QUESTION,
        "workplace": assessment.workplace,
        "about": assessment.about,
        "invented": "invent" in assessment.about.casefold(),
        "summary": summary(assessment.hoods),
        "in_full": len(assessment.hoods) <= MOST_TOLD_IN_FULL,
        "answers": [_answer(i, h, system) for i, h in enumerate(assessment.hoods, 1)],
        "scene": scene,
        "scene_height": height_over_width(scene),
        "scene_words": scene_words(picture, system, seen),
        "scene_caption": _scene_caption(picture, system),
        "air": _air(assessment),
        "air_cites": cited.cite("ashrae-f17, ch. 1"),
        "hoods": [hood_content(h, picture, places.get(h.name, []), system, cited) for h in assessment.hoods],
        "run": run_content(assessment, facts.lengths, places, cited),
        "materials": materials_content(assessment),
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


def _answer(number: int, hood: HoodAnswer, system: str) -> dict:
    known = (
        required_words(hood.worst, system),
        "" if hood.intended is None else show(hood.intended, "flow", system),
        "" if hood.today is None else show(hood.today.value, "flow", system),
    )
    return {
        "number": number,
        "name": hood.name,
        "sentence": hood.sentence,
        "outcomes": outcomes(hood),
        "flows": list(known),
    }


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
    if len(picture.hoods) > MOST_NAMED:
        words += " The numbers are those of the answers."
    if picture.ducts:
        words += " The file gives no duct routes: they are drawn plainly, away from the hood and along the back wall."
    return words


def _air(assessment: Assessment) -> list[list[str]]:
    air, system = assessment.air, assessment.system
    pressure, viscosity = f"{air.p_abs / 1000:.4g}\u2009kPa", f"{1e6 * air.viscosity:.4g}\u2009µPa\u2009s"
    moisture = f"{1000 * air.humidity_ratio:.3g}\u2009g/kg"
    if system == "US":
        pressure = f"{to_unit(air.p_abs, 'pressure', 'psi'):.4g}\u2009psi"
        viscosity = f"{air.viscosity / PA_S_PER_LB_FT_H:.4g}\u2009lb/(ft\u2009h)"
        moisture = f"{GRAINS * air.humidity_ratio:.3g}\u2009gr/lb"
    return [
        ["temperature", show(air.temperature, "temperature", system)],
        ["absolute pressure", pressure],
        ["humidity ratio", moisture],
        ["density", show(air.density, "density", system, 4)],
        ["viscosity", viscosity],
    ]
