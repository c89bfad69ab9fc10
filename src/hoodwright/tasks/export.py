"""An assessment as plain data for machines: SI only, every key ends in its unit."""

from hoodwright.results import Hint, Outcome, Quantity
from hoodwright.tasks.assessment import (
    Assessment,
    DuctAnswer,
    FanAnswer,
    HoodAnswer,
    JunctionAnswer,
    Line,
    Material,
    OpeningAnswer,
    SideAdvice,
    SourceNeed,
)
from hoodwright.tasks.today import is_computed


def as_json(answer: Assessment) -> dict:
    """The whole answer as dictionaries and lists, ready for `json.dumps`."""
    return {
        "workplace": answer.workplace,
        "version": answer.version,
        "air": {
            "temperature_k": answer.air.temperature,
            "absolute_pressure_pa": answer.air.p_abs,
            "humidity_ratio": answer.air.humidity_ratio,
            "density_kg_m3": answer.air.density,
            "viscosity_pa_s": answer.air.viscosity,
        },
        "hoods": [_hood(hood) for hood in answer.hoods],
        "ducts": [_duct(duct) for duct in answer.ducts],
        "junctions": [_junction(junction) for junction in answer.junctions],
        "fans": [_fan(fan) for fan in answer.fans],
        "materials": [_material(line) for line in answer.materials],
        "cautions": [{"about": c.about, "text": c.text, "source": c.source} for c in answer.cautions],
        "sources": list(answer.sources),
    }


def _hood(hood: HoodAnswer) -> dict:
    return {
        "name": hood.name,
        "type": hood.type,
        "flow_m3_s": hood.design_flow,
        "intended_flow_m3_s": hood.intended,
        "commissioned": _reading(hood.commissioned),
        "today": _reading(hood.today),
        "required": [
            {
                "source_of_contaminant": need.source,
                "equation": law.equation,
                "flow_m3_s": law.flow,
                "range": law.reach,
                "source": law.source,
            }
            for need in hood.needs
            for law in need.laws
        ],
        "needs": [_need(need) for need in hood.needs],
        "velocity_at_source_m_s": hood.worst.velocity,
        "velocity_at_source_at_most_m_s": hood.worst.velocity_at_most,
        "hood_suction_pa": hood.suction,
        "openings": [_opening(opening) for opening in hood.openings],
        "entry_lines": [_line(line) for line in hood.entry_lines],
        "outcome": {"enough": _outcome(hood.enough), "met": _outcome(hood.met)},
        "sentence": hood.sentence,
        "hints": [_hint(hint) for hint in hood.hints],
    }


def _opening(opening: OpeningAnswer) -> dict:
    return {
        "name": opening.name,
        "size": opening.size,
        "count": opening.count,
        "area_m2": opening.area,
        "inward_velocity_m_s": opening.velocity,
        "inward_velocity_today_m_s": opening.velocity_today,
    }


def _need(need: SourceNeed) -> dict:
    return {
        "source_of_contaminant": need.source,
        "distance_m": need.distance,
        "off_axis_rad": need.off_axis,
        "place": need.place,
        "velocity_kind": need.velocity_kind,
        "capture_velocity_m_s": need.capture_velocity,
        "basis": need.basis,
        "in_range": need.in_range,
        "required_flow_m3_s": need.flow if need.in_range else None,
        "spread": need.spread,
        "least_flow_m3_s": need.bound.least,
        "most_flow_m3_s": need.bound.most,
    }


def _outcome(outcome: Outcome) -> dict:
    short = outcome.shortfall.value if outcome.shortfall else None
    return {"verdict": outcome.verdict.value, "because": outcome.because, "shortfall_m3_s": short}


def _reading(read: Quantity | None) -> dict | None:
    if read is None:
        return None
    how = {"how": read.source} if is_computed(read) else {}
    return {"flow_m3_s": read.value, "uncertainty_m3_s": read.uncertainty} | how


def _hint(hint: Hint) -> dict:
    power = hint.fan_power.value if hint.fan_power else None
    make_up = hint.make_up_air.value if hint.make_up_air else None
    return {
        "change": hint.change,
        "text": hint.text,
        "flow_m3_s": hint.flow.value,
        "fan_power_w": power,
        "make_up_air_m3_s": make_up,
    }


def _duct(duct: DuctAnswer) -> dict:
    return {
        "name": duct.name,
        "from": duct.start_from,
        "to": duct.to,
        "flow_m3_s": duct.flow,
        "velocity_m_s": duct.velocity,
        "velocity_pressure_pa": duct.velocity_pressure,
        "static_pressure_start_pa": duct.static_pressure_start,
        "static_pressure_pa": duct.static_pressure,
        "total_pressure_pa": duct.total_pressure,
        "transport_velocity_m_s": duct.transport_velocity,
        "carries": duct.carries,
        "temperature_k": duct.temperature,
        "density_kg_m3": duct.density,
        "transport": _transport(duct.transport),
        "lines": [_line(line) for line in duct.lines],
    }


def _transport(outcome: Outcome) -> dict:
    return {"verdict": outcome.verdict.value, "because": outcome.because}


def _junction(junction: JunctionAnswer) -> dict:
    return {
        "name": junction.name,
        "governing": junction.governing,
        "static_pressures_pa": dict(junction.pressures),
        "ratio": junction.ratio,
        "advice": junction.advice,
        "corrected_flows_m3_s": dict(junction.corrected),
        "source": junction.source,
        "sides": [_side(side) for side in junction.sides],
        "editions_differ": junction.editions_differ,
    }


def _side(side: SideAdvice) -> dict:
    return {
        "name": side.name,
        "ratio": side.ratio,
        "advice": side.advice,
        "agreeing_diameter_m": side.diameter,
        "nearest_made_diameter_m": side.size,
        "nearest_made_velocity_m_s": side.size_velocity,
        "nearest_made_keeps_moving": side.size_holds,
        "corrected_flow_m3_s": side.flow,
        "main_flow_m3_s": side.main_flow,
        "fan_flow_m3_s": side.fan_flow,
        "damper_pa": side.damper,
        "words": list(side.words),
        "lines": [_line(line) for line in side.lines],
    }


def _material(line: Material) -> dict:
    return {
        "item": line.item,
        "diameter_m": line.size,
        "make": line.make,
        "count": line.count,
        "length_m": line.length,
        "sheet_m2": line.sheet,
    }


def _fan(fan: FanAnswer) -> dict:
    return {
        "name": fan.name,
        "flow_m3_s": fan.flow,
        "static_pressure_pa": fan.static_pressure,
        "total_pressure_pa": fan.total_pressure,
        "total_pressure_clean_pa": fan.total_pressure_clean,
        "air_power_w": fan.air_power,
        "power_w": fan.power,
        "density_kg_m3": fan.density,
        "static_pressure_at_standard_density_pa": fan.static_pressure_standard,
        "total_pressure_at_standard_density_pa": fan.total_pressure_standard,
        "power_at_standard_density_w": fan.power_standard,
        "motor_power_w": fan.motor_power,
        "lines": [_line(line) for line in fan.lines],
    }


def _line(line: Line) -> dict:
    return {"formula": line.formula, "filled": line.filled, "source": line.source}
