"""What the report says of each hood, as plain data with all words already written."""

import re

from hoodwright.reports.close_up import close_up_caption, close_up_svg
from hoodwright.reports.flow_figure import flow_caption, flow_svg
from hoodwright.reports.pretty import pretty
from hoodwright.reports.words import Citations, in_system, share, verdict, with_uncertainty
from hoodwright.results import Caution, Hint, Quantity
from hoodwright.tasks.assessment import HoodAnswer, LawNeed, Line, OpeningAnswer, SourceNeed
from hoodwright.tasks.caution_groups import grouped
from hoodwright.tasks.picture import Picture
from hoodwright.tasks.recompute import recompute
from hoodwright.units import show

ROUNDING = 1e-5  # rad: less is noise of typed coordinates
POWER_WORDS = re.compile(r"; through the same ducts the fan then takes [\d.]+\u2009?[A-Za-z]+")
ENOUGH, MET = "Is what was intended enough?", "Is it met today?"


def outcomes(hood: HoodAnswer) -> list[dict]:
    """Both questions with their outcomes."""
    return [{"question": ENOUGH, **verdict(hood.enough)}, {"question": MET, **verdict(hood.met)}]


def hood_content(hood: HoodAnswer, picture: Picture, cautions: list[Caution], system: str, cited: Citations) -> dict:
    """One hood: flows, figures, equations, hints and cautions."""
    return {
        "name": hood.name,
        "type": hood.type,
        "sentence": hood.sentence,
        "outcomes": outcomes(hood),
        "close_up": close_up_svg(picture, hood.name, system),
        "close_up_caption": close_up_caption(picture, hood.name),
        "flow_figure": flow_svg(hood, system),
        "flow_caption": flow_caption(hood),
        "flows": _flows(hood, system),
        "needs": [_need(need, hood, system, cited) for need in hood.needs],
        "openings": [_opening(opening, system) for opening in hood.openings],
        "has_today": hood.today is not None,
        "suction": show(hood.suction, "pressure", system) if hood.suction is not None else None,
        "suction_lines": [line_content(line, cited) for line in (*hood.entry_lines, hood.suction_line) if line],
        "hints": [_hint(hint, system) for hint in hood.hints],
        "cautions": caution_content(cautions, cited),
    }


def line_content(line: Line, cited: Citations) -> dict:
    """A line with its numbers, what to type to recompute it, what comes out, and its citation."""
    typed = recompute(line.filled)
    return {
        "formula": pretty(line.formula),
        "filled": pretty(line.filled),
        "typed": typed,
        "result": pretty(line.filled.rpartition(" = ")[2]) if typed else "",
        "cites": cited.cite(line.source),
    }


def caution_content(cautions: list[Caution], cited: Citations) -> list[dict]:
    """Cautions with their citations, those about one thing together."""
    return [
        {"about": about, "items": [{"text": _sentence(c.text), "cites": cited.cite(c.source)} for c in group]}
        for about, group in grouped(cautions).items()
    ]


def _sentence(text: str) -> str:
    text = text.rstrip(".")
    return text[:1].upper() + text[1:]


def _opening(opening: OpeningAnswer, system: str) -> dict:
    today = opening.velocity_today
    return {
        "name": opening.name if opening.count == 1 else f"{opening.count} × {opening.name}",
        "size": opening.size,
        "area": show(opening.area * opening.count, "area", system),
        "velocity": show(opening.velocity, "velocity", system),
        "today": "" if today is None else show(today, "velocity", system),
    }


def _flows(hood: HoodAnswer, system: str) -> list[dict]:
    need = hood.worst
    required = show(need.flow, "flow", system)
    how = f"{_count(len(need.laws))} for the {need.source}"
    if not need.in_range and need.bound.least > 0:
        required, how = f"at least {required}", f"certain limit for the {need.source}: {need.bound.why}"
    elif not need.in_range:
        required, how = "cannot be told", need.untold or need.bound.why
    intended = show(hood.intended, "flow", system) if hood.intended is not None else "not given"
    return [
        {"name": "required", "value": required, "how": how},
        {"name": "intended", "value": intended, "how": "the workplace file" if hood.intended is not None else ""},
        _reading("commissioned", hood.commissioned, system),
        _reading("today", hood.today, system),
    ]


def _count(laws: int) -> str:
    return "the one equation that holds" if laws == 1 else f"the most demanding of {laws} equations"


def _reading(name: str, reading: Quantity | None, system: str) -> dict:
    if reading is None:
        return {"name": name, "value": "not given", "how": ""}
    unsaid = "" if reading.uncertainty is not None else "; no uncertainty was given"
    return {
        "name": name,
        "value": with_uncertainty(reading, system),
        "how": (reading.source or "the workplace file") + unsaid,
    }


def _need(need: SourceNeed, hood: HoodAnswer, system: str, cited: Citations) -> dict:
    return {
        "source": need.source,
        "facts": _facts(need, hood, system),
        "velocity_kind": need.velocity_kind,
        "basis": need.basis,
        "basis_cites": cited.cite(need.basis_source),
        "laws": [_law(law, law.flow == need.flow and len(need.laws) > 1, system, cited) for law in need.laws],
        "spread": _spread(need),
        "untold": need.untold,
        "bound": None if need.in_range or not need.bound.source else _bound(need, system, cited),
    }


def _facts(need: SourceNeed, hood: HoodAnswer, system: str) -> list[list[str]]:
    facts = [["the hood is", f"{need.place} it"]] if need.place else []
    if hood.type == "capturing":
        aside = 0.0 if need.off_axis < ROUNDING else need.off_axis
        facts.append(["off the hood's axis", show(aside, "angle", system, 2)])
    facts.append([f"{need.velocity_kind} asked", show(need.capture_velocity, "velocity", system)])
    there = f"at the design flow of {show(hood.design_flow, 'flow', system)} it reaches"
    if need.velocity is not None:
        facts.append([there, show(need.velocity, "velocity", system)])
    if need.velocity_at_most is not None:
        facts.append([there, f"at most {show(need.velocity_at_most, 'velocity', system)}"])
    return facts


def _law(law: LawNeed, rules: bool, system: str, cited: Citations) -> dict:
    flow = show(law.flow, "flow", system)
    reach = f"Holds {law.reach}." if law.reach and not law.reach.startswith("exact") else law.reach.capitalize()
    reach = in_system(reach, system)
    name = law.equation.replace(" x ", " × ")
    return {
        "equation": name[:1].upper() + name[1:],
        "flow": flow,
        "rules": rules,
        "reach": reach,
        **line_content(law.line, cited),
    }


def _spread(need: SourceNeed) -> str:
    if len(need.laws) < 2:
        return ""
    return (
        f"Spread of the {len(need.laws)} equations: the least demanding asks {share(need.spread)} less than the "
        "most demanding, which rules."
    )


def _bound(need: SourceNeed, system: str, cited: Citations) -> dict:
    bound = need.bound
    most = "unknown" if bound.most is None else show(bound.most, "flow", system)
    return {
        "least": show(bound.least, "flow", system),
        "most": most,
        "why": bound.why,
        "lines": [line_content(line, cited) for line in bound.lines],
        "cites": cited.cite(bound.source),
    }


def _hint(hint: Hint, system: str) -> dict:
    power = with_uncertainty(hint.fan_power, system) if hint.fan_power else "no fan in the file"
    return {
        "change": hint.change[:1].upper() + hint.change[1:],
        "text": _without_power(hint.text.rstrip(".")),
        "flow": with_uncertainty(hint.flow, system),
        "power": power,
        "make_up": with_uncertainty(hint.make_up_air, system) if hint.make_up_air else "",
    }


def _without_power(text: str) -> str:
    """The words of a hint without the fan power, which has its own column."""
    text = POWER_WORDS.sub("", text)
    return text[:1].upper() + text[1:]
