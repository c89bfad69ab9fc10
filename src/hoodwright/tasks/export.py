"""An assessment as plain data for machines: SI only, every key ends in its unit."""

from hoodwright.results import Hint, Outcome, Quantity
from hoodwright.tasks.assessment import Assessment, DuctAnswer, FanAnswer, HoodAnswer, JunctionAnswer, Line, SourceNeed


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
        "outcome": {"enough": _outcome(hood.enough), "met": _outcome(hood.met)},
        "sentence": hood.sentence,
        "hints": [_hint(hint) for hint in hood.hints],
    }


def _need(need: SourceNeed) -> dict:
    return {
        "source_of_contaminant": need.source,
        "distance_m": need.distance,
        "off_axis_rad": need.off_axis,
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
    return None if read is None else {"flow_m3_s": read.value, "uncertainty_m3_s": read.uncertainty}


def _hint(hint: Hint) -> dict:
    power = hint.fan_power.value if hint.fan_power else None
    return {"change": hint.change, "text": hint.text, "flow_m3_s": hint.flow.value, "fan_power_w": power}


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
        "lines": [_line(line) for line in fan.lines],
    }


def _line(line: Line) -> dict:
    return {"formula": line.formula, "filled": line.filled, "source": line.source}
