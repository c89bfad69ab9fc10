"""What each fan must do: pressures, power, and the same at the density that catalogues rate."""

from hoodwright import ducts as d
from hoodwright.tasks.assessment import FanAnswer, Line
from hoodwright.tasks.lines import digits
from hoodwright.tasks.walk import Walk
from hoodwright.workplace.model import Fan

NEAR = 0.005  # share by which a density may differ from the standard without a line of its own


def fan_answer(fan: Fan, loaded: Walk, clean: Walk) -> FanAnswer:
    """The fan at the design flow, with loaded cleaners; its total pressure with clean ones too."""
    total_in, static_out, total_out, flow = fan_sides(fan, loaded)
    total, static = float(d.fan_total_pressure(total_out, total_in)), float(d.fan_static_pressure(static_out, total_in))
    clean_in, _, clean_out, _ = fan_sides(fan, clean)
    air, power, efficiency = float(d.air_power(flow, total)), power_of(fan, flow, total), fan.efficiency_at(flow)
    motor = None if power is None or fan.drive_loss is None else float(d.motor_power(power, fan.drive_loss))
    density = loaded.arriving(fan.name)[0].air.density
    ratio = d.STANDARD_DENSITY / density
    lines = _lines(fan, (total_in, static_out, total_out), flow, total, static, power, motor)
    return FanAnswer(
        name=fan.name,
        flow=flow,
        static_pressure=static,
        total_pressure=total,
        total_pressure_clean=float(d.fan_total_pressure(clean_out, clean_in)),
        air_power=air,
        efficiency=efficiency,
        power=power,
        lines=(*lines, *_catalogue(static, power, density)),
        density=density,
        static_pressure_standard=static * ratio,
        total_pressure_standard=total * ratio,
        power_standard=None if power is None else power * ratio,
        motor_power=motor,
    )


def power_of(fan: Fan, flow: float, total: float) -> float | None:
    """Shaft power; None where the file gives no efficiency."""
    efficiency = fan.efficiency_at(flow)
    return float(d.shaft_power(flow, total, efficiency)) if efficiency else None


def fan_sides(fan: Fan, walk: Walk) -> tuple[float, float, float, float]:
    """Total pressure at the inlet, static and total at the outlet, and the flow at the inlet."""
    inflow, onward = walk.arriving(fan.name), walk.leaving(fan.name)
    worst = min(inflow, key=lambda section: walk.end[section.duct.name])
    total_in = walk.end[worst.duct.name] + worst.p_velocity
    static_out = walk.start[onward.duct.name]
    return total_in, static_out, static_out + onward.p_velocity, sum(section.flow for section in inflow)


def _lines(fan: Fan, sides, flow: float, total: float, static: float, power: float | None, motor: float | None):
    total_in, static_out, total_out = (digits(p) for p in sides)
    air = digits(flow * total)
    yield Line("FTP = TP out - TP in", f"{total_out} - ({total_in}) = {digits(total)} Pa", "definition")
    yield Line("FSP = SP out - TP in", f"{static_out} - ({total_in}) = {digits(static)} Pa", "definition")
    yield Line("air power = Q x FTP", f"{digits(flow)} x {digits(total)} = {air} W", "fan-sheet, air power")
    if power is not None:
        filled = f"{air} / {fan.efficiency_at(flow):.4g} = {digits(power)} W"
        yield Line("shaft power = air power / efficiency", filled, "fan-sheet, brake power")
    if motor is not None and power is not None:
        filled = f"{digits(power)} / (1 - {fan.drive_loss:g}) = {digits(motor)} W"
        yield Line("motor power = shaft power / (1 - drive loss)", filled, "common-practice")


def _catalogue(static: float, power: float | None, density: float):
    """The lines that bring pressure and power to standard density, where that differs."""
    if abs(density / d.STANDARD_DENSITY - 1) < NEAR:
        return
    ratio = d.STANDARD_DENSITY / density
    source = "abulencia, ch. 17, fan laws"
    standard, here = f"{d.STANDARD_DENSITY:g}", digits(density)
    filled = f"{digits(static)} x {standard} / {here} = {digits(static * ratio)} Pa"
    yield Line("FSP to look for in a catalogue at standard density = FSP x rho standard / rho", filled, source)
    if power is not None:
        filled = f"{digits(power)} x {standard} / {here} = {digits(power * ratio)} W"
        yield Line("shaft power in that catalogue = shaft power x rho standard / rho", filled, source)
