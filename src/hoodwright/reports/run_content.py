"""What the report says of ducts, junctions and fans, as plain data with all words already written."""

from hoodwright.reports.hood_content import caution_content, line_content
from hoodwright.reports.pressure_figure import pressure_svg, runs
from hoodwright.reports.words import Citations, share, verdict
from hoodwright.results import Caution
from hoodwright.tasks.assessment import Assessment, DuctAnswer, FanAnswer, JunctionAnswer
from hoodwright.units import show, show_number, unit_label

HEADINGS = (
    ("flow", "flow"),
    ("velocity", "velocity"),
    ("velocity pressure", "pressure"),
    ("static, start", "pressure"),
    ("static, end", "pressure"),
    ("least velocity", "velocity"),
)


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
        "ducts": [_duct(duct, cautions.get(duct.name, []), system, cited) for duct in assessment.ducts],
        "transport_cites": cited.cite("transport-table, annex 5"),
        "junctions": [_junction(j, cautions.get(j.name, []), system, cited) for j in assessment.junctions],
        "fans": [_fan(fan, cautions.get(fan.name, []), system, cited) for fan in assessment.fans],
    }


def _duct(duct: DuctAnswer, cautions: list[Caution], system: str, cited: Citations) -> dict:
    values = (
        duct.flow,
        duct.velocity,
        duct.velocity_pressure,
        duct.static_pressure_start,
        duct.static_pressure,
        duct.transport_velocity,
    )
    numbers = [show_number(v, kind, system).replace("-", "−") for v, (_, kind) in zip(values, HEADINGS, strict=True)]
    return {
        "name": duct.name,
        "from": duct.start_from,
        "to": duct.to,
        "size": duct.size,
        "numbers": numbers,
        "transport": verdict(duct.transport),
        "lines": [line_content(line, cited) for line in duct.lines],
        "cautions": caution_content(cautions, cited),
    }


def _junction(junction: JunctionAnswer, cautions: list[Caution], system: str, cited: Citations) -> dict:
    return {
        "name": junction.name,
        "governing": junction.governing,
        "pressures": [[name, show(p, "pressure", system).replace("-", "−")] for name, p in junction.pressures],
        "ratio": f"{junction.ratio:.2f}",
        "advice": junction.advice,
        "corrected": [[name, show(flow, "flow", system)] for name, flow in junction.corrected],
        "cites": cited.cite(junction.source),
        "cautions": caution_content(cautions, cited),
    }


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
    facts.append(
        [
            "shaft power",
            show(fan.power, "power", system) if fan.power is not None else "not computed: no efficiency given",
        ]
    )
    return {
        "name": fan.name,
        "facts": facts,
        "lines": [line_content(line, cited) for line in fan.lines],
        "cautions": caution_content(cautions, cited),
    }
