"""An airflow indicator for each hood: where to tap, what it reads, and when it must warn."""

from dataclasses import dataclass

from hoodwright.hoods import tap_distance_range
from hoodwright.tasks.as_built.states import CleanerWindow, cleaner_window
from hoodwright.tasks.design import air_of
from hoodwright.tasks.hood_entry import entry_loss
from hoodwright.tasks.run import suction_of
from hoodwright.tasks.sections import carried, first_section
from hoodwright.units import show
from hoodwright.workplace.model import Duct, Hood, Workplace


@dataclass(frozen=True)
class Indicator:
    """Hood suction at a tap in the hood's duct [Pa, positive].

    `tap` is its distance from the hood [m]. `clean` and `dirty` are the readings as built with clean and dirty
    filters; between them it stays quiet (`dead_band` is their difference). It warns below `set_point`, the reading at
    the flow intended. A filter in the hood itself makes the reading useless: then `set_point` is None.
    """

    hood: str
    duct: str
    tap: float
    fits: bool
    set_point: float | None
    clean: float
    dirty: float
    words: str

    @property
    def dead_band(self) -> float:
        """Between clean and dirty [Pa]."""
        return abs(self.clean - self.dirty)


def indicator(
    workplace: Workplace, window: CleanerWindow | None = None, *, system: str | None = None
) -> tuple[Indicator, ...]:
    """For each hood the place of the tap, the set-point and the dead band between clean and dirty filters."""
    window = window or cleaner_window(workplace, system=system)
    units = system or workplace.units
    ducts = {duct.name: duct for duct in workplace.ducts}
    hoods = {hood.name: hood for hood in workplace.hoods}
    return tuple(_indicator(hoods[one.name], ducts[one.duct], workplace, window, units) for one in window.clean.hoods)


def _indicator(hood: Hood, duct: Duct, workplace: Workplace, window: CleanerWindow, units: str) -> Indicator:
    kind = "tapered" if entry_loss(hood, duct, workplace).tapered else "flat"
    near, far = (float(x) for x in tap_distance_range(kind, min(duct.sides)))
    place = min((near + far) / 2, max(duct.length, near))
    clean, dirty = (answer.hood(hood.name) for answer in (window.clean, window.dirty))
    readings = [one.suction + _friction(hood, duct, workplace, max(one.flow, 0.0)) * place for one in (clean, dirty)]
    set_point = None
    if hood.filter is None:
        suction, _ = suction_of(hood, workplace, clean.intended, air_of(workplace.air))
        set_point = float(suction or 0.0) + _friction(hood, duct, workplace, clean.intended) * place
    fits = duct.length >= near
    words = _words(duct, place, fits, set_point, readings, units)
    return Indicator(hood.name, duct.name, place, fits, set_point, readings[0], readings[1], words)


def _friction(hood: Hood, duct: Duct, workplace: Workplace, flow: float) -> float:
    """Pressure that a metre of the duct takes at a flow."""
    if flow <= 0:
        return 0.0
    section = first_section(duct, flow, carried(workplace, hood), air_of(workplace.air))
    return float(section.friction_factor / section.diameter * section.p_velocity)


def _words(duct: Duct, place: float, fits: bool, set_point: float | None, readings: list[float], units: str) -> str:
    tap, clean, dirty = show(place, "length", units), *(show(p, "pressure", units) for p in readings)
    text = f"tap {duct.name} {tap} behind the hood, with no elbow or damper between"
    text += "" if fits else f"; the duct is shorter than that ({show(duct.length, 'length', units)}): mind the reading"
    if set_point is None:
        return f"{text}. Its own filter lies before the tap: suction rises as the flow falls; read a velocity instead"
    text += f". It reads {clean} with clean filters"
    text += f", {dirty} with dirty ones" if abs(readings[0] - readings[1]) > 1e-3 else ""
    text += f"; below {show(set_point, 'pressure', units)} the hood gets less than intended"
    if readings[0] < set_point:
        return f"{text}, which it does even with clean filters: mend that first"
    if readings[1] < set_point:
        return f"{text}: it warns before the filters are as dirty as the file says"
    return text
