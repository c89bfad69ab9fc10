"""Kinds of quantities: the SI unit of each, the units it is shown in, and its suffix in JSON."""

from dataclasses import dataclass
from typing import Any

SYSTEMS = ("SI", "US")


@dataclass(frozen=True)
class Kind:
    """A kind of quantity: its SI unit, the units it is shown in, and its suffix in JSON.

    `larger` lists units for large values, each with the SI value from which it is shown.
    """

    name: str
    si_unit: str
    show: dict[str, str]
    suffix: str
    example: str
    larger: tuple[tuple[float, dict[str, str]], ...] = ()
    bare: bool = False  # a number without a unit is understood


def _kind(
    name: str,
    si_unit: str,
    si: str,
    us: str,
    suffix: str,
    example: str,
    larger: tuple[Any, ...] = (),
    *,
    bare: bool = False,
) -> Kind:
    steps = tuple((start, dict(zip(SYSTEMS, units, strict=True))) for start, units in larger)
    return Kind(name, si_unit, {"SI": si, "US": us}, suffix, example, steps, bare)


_TIMES = ((120, ("min", "min")), (7200, ("h", "h")), (172800, ("d", "d")))
_RATES = ((3e-5, ("g/min", "g/min")), (3e-2, ("kg/h", "lb/h")))

KINDS: dict[str, Kind] = {
    kind.name: kind
    for kind in (
        _kind("length", "m", "mm", "in", "m", "250 mm or 10 in", ((2, ("m", "ft")),)),
        _kind("area", "m2", "m2", "ft2", "m2", "0.5 m2 or 5 ft2"),
        _kind("flow", "m3/s", "m3/h", "cfm", "m3_s", "300 m3/h or 180 cfm"),
        _kind("standard flow", "Nm3/s", "Nm3/h", "scfm", "normal_m3_s", "300 Nm3/h or 180 scfm"),
        _kind("velocity", "m/s", "m/s", "fpm", "m_s", "0.5 m/s or 100 fpm"),
        _kind("pressure", "Pa", "Pa", "in wg", "pa", "250 Pa or 1 in wg", ((20000, ("kPa", "in wg")),)),
        _kind("temperature", "K", "degC", "degF", "k", "20 degC or 68 degF"),
        _kind("temperature difference", "K", "K", "degF", "k", "5 K or 9 degF"),
        _kind("angle", "rad", "deg", "deg", "rad", "30 deg"),
        _kind("density", "kg/m3", "kg/m3", "lb/ft3", "kg_m3", "1.2 kg/m3 or 0.075 lb/ft3"),
        _kind("mass rate", "kg/s", "mg/min", "mg/min", "kg_s", "1.5 mg/min", _RATES),
        _kind("power", "W", "W", "hp", "w", "750 W or 1 hp", ((1000, ("kW", "hp")),)),
        _kind("share", "fraction", "%", "%", "", "45 % or 0.45", bare=True),
        _kind("time", "s", "s", "s", "s", "8 h or 15 min", _TIMES),
        _kind("concentration", "kg/m3", "mg/m3", "mg/m3", "kg_m3", "0.1 mg/m3"),
        _kind("speed of rotation", "1/s", "rpm", "rpm", "per_s", "1450 rpm"),
        _kind("number", "", "", "", "", "2", bare=True),
    )
}
