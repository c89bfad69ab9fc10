"""The ductwork as built as plain data for machines: SI only, every key ends in its unit."""

from hoodwright.tasks.as_built.answers import BuiltAnswer, BuiltDuct, BuiltFan, BuiltHood, BuiltJunction, FanPoint
from hoodwright.tasks.as_built.balancing import BalancingOrder
from hoodwright.tasks.as_built.indicator import Indicator
from hoodwright.tasks.as_built.report import DuctReport
from hoodwright.tasks.as_built.states import CleanerWindow, ScenarioAnswer


def report_as_json(report: DuctReport) -> dict:
    """The whole report as dictionaries and lists, ready for `json.dumps`."""
    return built_as_json(report.answer) | {
        "sentence": report.sentence,
        "filter_window": _window(report.window),
        "scenarios": [_scenario(one) for one in report.scenarios],
        "gates_shut": [_scenario(one) for one in report.gates],
        "balancing": None if report.balancing is None else _balancing(report.balancing),
        "indicators": [_indicator(one) for one in report.indicators],
    }


def built_as_json(answer: BuiltAnswer) -> dict:
    """One state of the ductwork as dictionaries and lists."""
    return {
        "workplace": answer.workplace,
        "version": answer.version,
        "filter_load_share": answer.load,
        "junction_law": answer.law,
        "hoods": [_hood(hood) for hood in answer.hoods],
        "branches": [_duct(duct) for duct in answer.ducts],
        "junctions": [_junction(junction) for junction in answer.junctions],
        "cleaners": [
            {"name": one.name, "flow_m3_s": one.flow, "pressure_loss_pa": one.pressure} for one in answer.cleaners
        ],
        "fans": [_fan(fan, answer.currency) for fan in answer.fans],
        "left_out": list(answer.left_out),
        "cautions": [{"about": c.about, "text": c.text, "source": c.source} for c in answer.cautions],
        "residual_pa": answer.residual,
        "steps": answer.steps,
    }


def _hood(hood: BuiltHood) -> dict:
    return {
        "name": hood.name,
        "branch": hood.duct,
        "flow_m3_s": hood.flow,
        "intended_flow_m3_s": hood.intended,
        "intended_is_stated": hood.stated,
        "share_of_intended": hood.share,
        "hood_suction_pa": hood.suction,
        "blows_out": hood.blows_out,
    }


def _duct(duct: BuiltDuct) -> dict:
    return {
        "name": duct.name,
        "from": duct.start,
        "to": duct.to,
        "flow_m3_s": duct.flow,
        "velocity_m_s": duct.velocity,
        "velocity_pressure_pa": duct.velocity_pressure,
        "static_pressure_start_pa": duct.static_pressure_start,
        "static_pressure_pa": duct.static_pressure,
        "total_pressure_start_pa": duct.total_pressure_start,
        "total_pressure_pa": duct.total_pressure,
        "loss_pa": duct.loss,
        "buoyancy_pa": duct.buoyancy,
        "damper_velocity_pressures": duct.damper,
        "leak_m3_s": duct.leak,
        "transport_velocity_m_s": duct.transport_velocity,
        "carries": duct.carries,
        "settles": duct.settles,
        "temperature_k": duct.temperature,
        "density_kg_m3": duct.density,
    }


def _junction(junction: BuiltJunction) -> dict:
    sides = [
        {
            "branch": side.duct,
            "flow_m3_s": side.flow,
            "static_pressure_pa": side.static_pressure,
            "total_pressure_pa": side.total_pressure,
            "junction_loss_pa": side.loss,
        }
        for side in junction.sides
    ]
    return {"name": junction.name, "to": junction.to, "imbalance_kg_s": junction.imbalance, "sides": sides}


def _fan(fan: BuiltFan, currency: str) -> dict:
    return {
        "name": fan.name,
        "flow_m3_s": fan.flow,
        "total_pressure_pa": fan.total_pressure,
        "static_pressure_pa": fan.static_pressure,
        "density_kg_m3": fan.density,
        "speed_ratio": fan.speed,
        "stable": fan.stable,
        "beyond_curve": fan.beyond_curve,
        "curve_swings": fan.swings,
        "operating_points": [_point(point) for point in fan.points],
        "air_power_w": fan.air_power,
        "efficiency": fan.efficiency,
        "power_w": fan.shaft_power,
        "motor_power_w": fan.motor_power,
        "motor_rating_w": fan.motor,
        "motor_margin": fan.margin,
        "energy_kwh_per_year": fan.energy,
        "cost_per_year": fan.cost,
        "currency": currency or None,
    }


def _point(point: FanPoint) -> dict:
    return {
        "flow_m3_s": point.flow,
        "total_pressure_pa": point.total_pressure,
        "stable": point.stable,
        "runs_here": point.runs,
    }


def _window(window: CleanerWindow) -> dict:
    return {
        "words": window.words,
        "clean": [_hood(hood) for hood in window.clean.hoods],
        "dirty": [_hood(hood) for hood in window.dirty.hoods],
        "falls_short": [
            {"hood": one.hood, "filter_load_share": one.load, "cleaner": one.cleaner, "pressure_loss_pa": one.pressure}
            for one in window.order
        ],
    }


def _scenario(one: ScenarioAnswer) -> dict:
    return {
        "name": one.name,
        "closed": list(one.closed),
        "dampers_velocity_pressures": dict(one.dampers),
        "hoods": [_hood(hood) for hood in one.answer.hoods],
        "mains": [
            {"name": duct.name, "flow_m3_s": duct.flow, "velocity_m_s": duct.velocity, "settles": duct.settles}
            for duct in one.mains
        ],
    }


def _balancing(order: BalancingOrder) -> dict:
    steps = [
        {
            "branch": step.duct,
            "hood": step.hood,
            "hood_suction_pa": step.suction,
            "flow_m3_s": step.flow,
            "final_flow_m3_s": step.final_flow,
            "damper_velocity_pressures": step.loss,
            "words": step.words,
        }
        for step in order.steps
    ]
    return {
        "words": order.words,
        "served_least": order.index,
        "share_of_intended": order.share,
        "speed_over_present": order.speed,
        "steps": steps,
    }


def _indicator(one: Indicator) -> dict:
    return {
        "hood": one.hood,
        "branch": one.duct,
        "tap_m": one.tap,
        "fits": one.fits,
        "set_point_pa": one.set_point,
        "clean_pa": one.clean,
        "dirty_pa": one.dirty,
        "dead_band_pa": one.dead_band,
        "words": one.words,
    }
