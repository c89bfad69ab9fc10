"""What the report says of each hood, as plain data with all words already written."""

from hoodwright.reports.close_up import close_up_svg
from hoodwright.reports.flow_figure import flow_svg
from hoodwright.reports.pretty import pretty
from hoodwright.reports.words import Citations, share, verdict, with_uncertainty
from hoodwright.results import Caution, Hint, Quantity
from hoodwright.tasks.assessment import HoodAnswer, LawNeed, Line, SourceNeed
from hoodwright.tasks.picture import Picture
from hoodwright.units import show

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
        "flow_figure": flow_svg(hood, system),
        "flows": _flows(hood, system),
        "needs": [_need(need, system, cited) for need in hood.needs],
        "suction": show(hood.suction, "pressure", system) if hood.suction is not None else None,
        "suction_line": line_content(hood.suction_line, cited) if hood.suction_line else None,
        "hints": [_hint(hint, system) for hint in hood.hints],
        "cautions": caution_content(cautions, cited),
    }


def line_content(line: Line, cited: Citations) -> dict:
    """A recompute line with its citation."""
    return {"formula": pretty(line.formula), "filled": pretty(line.filled), "cites": cited.cite(line.source)}


def caution_content(cautions: list[Caution], cited: Citations) -> list[dict]:
    """Cautions with their citations."""
    return [{"about": c.about, "text": c.text.rstrip("."), "cites": cited.cite(c.source)} for c in cautions]


def _flows(hood: HoodAnswer, system: str) -> list[dict]:
    need = hood.worst
    required = show(need.flow, "flow", system)
    how = f"{_count(len(need.laws))} for the {need.source}"
    if not need.in_range:
        required, how = f"at least {required}", f"certain limit for the {need.source}: {need.bound.why}"
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


def _need(need: SourceNeed, system: str, cited: Citations) -> dict:
    return {
        "source": need.source,
        "facts": _facts(need, system),
        "basis": need.basis,
        "basis_cites": cited.cite(need.basis_source),
        "laws": [_law(law, law.flow == need.flow, system, cited) for law in need.laws],
        "spread": _spread(need),
        "bound": None if need.in_range else _bound(need, system, cited),
    }


def _facts(need: SourceNeed, system: str) -> list[list[str]]:
    facts = [
        ["distance", show(need.distance, "length", system)],
        ["off the hood's axis", show(need.off_axis, "angle", system, 2)],
        ["capture velocity asked", show(need.capture_velocity, "velocity", system)],
    ]
    if need.velocity is not None:
        facts.append(["velocity there at the design flow", show(need.velocity, "velocity", system)])
    at_most = getattr(need, "velocity_at_most", None)
    if at_most is not None:
        facts.append(["velocity there at the design flow", f"at most {show(at_most, 'velocity', system)}"])
    return facts


def _law(law: LawNeed, rules: bool, system: str, cited: Citations) -> dict:
    flow = show(law.flow, "flow", system)
    reach = f"Holds {law.reach}." if law.reach and not law.reach.startswith("exact") else law.reach.capitalize()
    return {"equation": law.equation, "flow": flow, "rules": rules, "reach": reach, **line_content(law.line, cited)}


def _spread(need: SourceNeed) -> str:
    if len(need.laws) < 2:
        return "One equation holds here, so there is no spread to show." if need.laws else ""
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
    power = with_uncertainty(hint.fan_power, system) if hint.fan_power else None
    return {
        "change": hint.change,
        "text": hint.text.rstrip("."),
        "flow": with_uncertainty(hint.flow, system),
        "power": power,
    }
