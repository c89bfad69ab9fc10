"""What the report says of ducts, junctions and fans, as plain data with all words already written."""

import re

from hoodwright.reports.hood_content import caution_content, line_content
from hoodwright.reports.pressure_figure import pressure_svg, runs
from hoodwright.reports.words import Citations, share, verdict
from hoodwright.results import Caution
from hoodwright.tasks.assessment import Assessment, DuctAnswer, FanAnswer, JunctionAnswer
from hoodwright.units import parse, show, show_number, unit_label

RECTANGLE = re.compile(r"([\d.]+) x ([\d.]+) mm")
STANDARD_DENSITY = 1.2  # kg/m3
HEADINGS = (("flow", "flow"), ("velocity", "velocity"), ("least velocity", "velocity"))


def run_content(
    assessment: Assessment, lengths: dict[str, float], cautions: dict[str, list[Caution]], cited: Citations
) -> dict | None:
    """Ducts, junctions and fans; None where the file has no ducts."""
    if not assessment.ducts:
        return None
    system = assessment.system
    return {
        "figures": [pressure_svg(group, lengths, system) for group in runs(assessment.ducts)],
        "headings": [[words, unit_label(kind, system)] for words, kind in HEADINGS],
        "ducts": [_duct(duct, assessment, cautions.get(duct.name, []), cited) for duct in assessment.ducts],
        "transport_cites": cited.cite("transport-table, annex 5"),
        "junctions": [_junction(j, cautions.get(j.name, []), system, cited) for j in assessment.junctions],
        "fans": [_fan(fan, cautions.get(fan.name, []), system, cited) for fan in assessment.fans],
    }


def _duct(duct: DuctAnswer, assessment: Assessment, cautions: list[Caution], cited: Citations) -> dict:
    system = assessment.system
    values = (duct.flow, duct.velocity, duct.transport_velocity)
    of_hood = next((hood.entry_lines for hood in assessment.hoods if hood.name == duct.start_from), ())
    return {
        "name": duct.name,
        "from": duct.start_from,
        "to": duct.to,
        "size": duct.size,
        "numbers": [show_number(v, kind, system) for v, (_, kind) in zip(values, HEADINGS, strict=True)],
        "transport": verdict(duct.transport),
        "facts": _duct_facts(duct, assessment.air.temperature, system),
        "lines": _lines([line for line in duct.lines if line not in of_hood], cited),
        "in_hood": duct.start_from if of_hood else "",
        "cautions": caution_content(cautions, cited),
    }


def _duct_facts(duct: DuctAnswer, room: float, system: str) -> list[list[str]]:
    facts = [
        ["size", duct.size],
        ["flow", show(duct.flow, "flow", system)],
        ["velocity pressure", show(duct.velocity_pressure, "pressure", system)],
        ["static pressure at the start", _signed(duct.static_pressure_start, system)],
        ["static pressure at the end", _signed(duct.static_pressure, system)],
    ]
    if duct.friction_per_length:
        per, words = (1.0, "friction per m") if system == "SI" else (100 * 0.3048, "friction per 100 ft")
        facts.append([words, show(duct.friction_per_length * per, "pressure", system)])
    if duct.density:
        warm = "" if abs(duct.temperature - room) < 0.05 else f", {show(duct.temperature, 'temperature', system)}"
        facts.append(["density", f"{show(duct.density, 'density', system, 4)}{warm}"])
    return [*facts, ["carries", duct.carries]]


def _signed(pressure: float, system: str) -> str:
    return show(pressure, "pressure", system).replace("-", "−")


def _junction(junction: JunctionAnswer, cautions: list[Caution], system: str, cited: Citations) -> dict:
    return {
        "name": junction.name,
        "governing": junction.governing,
        "pressures": [[name, _signed(p, system)] for name, p in junction.pressures],
        "editions": junction.editions_differ,
        "ratio": f"{junction.ratio:.2f}",
        "advice": junction.advice,
        "corrected": [[name, show(flow, "flow", system)] for name, flow in junction.corrected],
        "sides": [
            {
                "name": side.name,
                "ratio": f"{side.ratio:.2f}",
                "words": list(side.words),
                "lines": _lines(side.lines, cited),
            }
            for side in junction.sides
        ],
        "cites": cited.cite(junction.source),
        "cautions": caution_content(cautions, cited),
    }


def _lines(lines, cited: Citations) -> list:
    return [line_content(line, cited) for line in lines]


def _total_pressures(fan: FanAnswer, system: str) -> list[list[str]]:
    total = show(fan.total_pressure, "pressure", system)
    if not fan.has_cleaners:
        return [["total pressure", total]]
    clean = show(fan.total_pressure_clean, "pressure", system)
    return [["total pressure, cleaners loaded", total], ["total pressure, cleaners clean", clean]]


def _fan(fan: FanAnswer, cautions: list[Caution], system: str, cited: Citations) -> dict:
    facts = [
        ["flow", show(fan.flow, "flow", system)],
        ["static pressure", show(fan.static_pressure, "pressure", system)],
        *_total_pressures(fan, system),
        ["power given to the air", show(fan.air_power, "power", system)],
    ]
    if fan.efficiency is not None:
        facts.append(["efficiency", share(fan.efficiency)])
    power = "not computed: no efficiency given" if fan.power is None else show(fan.power, "power", system)
    facts.append(["shaft power", power])
    if fan.motor_power is not None:
        facts.append(["motor power, with belt loss", show(fan.motor_power, "power", system)])
    return {
        "name": fan.name,
        "facts": facts,
        "catalogue": _catalogue(fan, system),
        "lines": _lines(fan.lines, cited),
        "cautions": caution_content(cautions, cited),
    }


def _catalogue(fan: FanAnswer, system: str) -> str:
    """What to look for in a catalogue, whose curves are at standard density."""
    if not fan.density or not fan.total_pressure_standard:
        return ""
    static, total = (show(p, "pressure", system) for p in (fan.static_pressure_standard, fan.total_pressure_standard))
    power = "" if fan.power_standard is None else f" and {show(fan.power_standard, 'power', system)} at the shaft"
    here, standard = show(fan.density, "density", system, 4), show(STANDARD_DENSITY, "density", system, 2)
    return (
        f"Its air has {here}. In a catalogue at {standard} look for {static} static or {total} total pressure at the "
        f"same flow{power}."
    )


def materials_content(assessment: Assessment) -> list[list[str]]:
    """The list of materials as rows: item, size, make, how many or how long, sheet."""
    system = assessment.system
    return [
        [
            _sides(line.item, system),
            "" if line.size is None else show(line.size, "length", system),
            _sides(line.make, system),
            f"{line.count}" if line.length is None else show(line.length, "length", system),
            "" if line.sheet is None else show(line.sheet, "area", system),
        ]
        for line in assessment.materials
    ]


def _sides(words: str, system: str) -> str:
    """Words with the sides of a rectangle, which the list has in millimetres, in the reader's units."""

    def shown(found: re.Match[str]) -> str:
        return " × ".join(show(parse(f"{side} mm", "length"), "length", system) for side in found.groups())

    return RECTANGLE.sub(shown, words)
