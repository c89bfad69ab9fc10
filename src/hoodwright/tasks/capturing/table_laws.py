"""Flows that published tables ask of a form of hood, or of a movable welding hood; no distance enters the first."""

from collections.abc import Iterator

from hoodwright.hoods import capturing
from hoodwright.tables import load_table
from hoodwright.tasks.assessment import LawNeed, Line
from hoodwright.tasks.lines import digits
from hoodwright.tasks.release import grave_hazard
from hoodwright.tasks.shapes import area_of, within
from hoodwright.workplace.model import CapturingHood, Source, Workplace

WELDING = ("weld", "brazing", "flame or plasma")
TABLE = "table, "


def form_law(hood: CapturingHood, source: Source, workplace: Workplace) -> LawNeed | None:
    """What the table asks of the hood's form: the lower end, or the upper one for a grave hazard; None without form."""
    if hood.form is None:
        return None
    row = load_table("hood_forms").row("form", hood.form)
    area, length = area_of(hood.opening), max(hood.opening.sides)
    end = 1 if grave_hazard(source, workplace) else 0
    flow = capturing.form_flow_range(hood.form, area, length)[end]
    size = {"area": area, "length": length, "diameter": length}.get(row["basis"])
    formula = {"area": "Q = q A", "length": "Q = q L", "diameter": "Q = q D, D of the wheel"}.get(row["basis"], "Q = q")
    factor = digits(capturing.PER_UNIT[row["unit"]])
    filled = (
        f"{(row['low'], row['high'])[end]:g} x {factor}{f' x {digits(size)}' if size else ''} = {digits(flow)} m3/s"
    )
    line = Line(f"{formula}, q as printed in SI", filled, capturing.form_source(hood.form))
    reach = f"{row['low']:g} to {row['high']:g} {PRINTED[row['unit']]} as printed"
    return LawNeed(f"{TABLE}{hood.form}", flow, line, reach)


PRINTED = {
    "cfm": "cfm",
    "cfm_ft": "cfm for each foot of length",
    "cfm_ft2": "cfm for each square foot of opening",
    "cfm_in": "cfm for each inch of diameter",
}


def by_table(law: LawNeed) -> bool:
    """Whether a flow is a table's, which knows no velocity at the source."""
    return law.equation.startswith(TABLE)


def welding_laws(hood: CapturingHood, source: Source, distance: float) -> Iterator[LawNeed]:
    """The regulation's table for a freely movable hood, where the source's process is a welding one."""
    reach = capturing.welding_hood_reach()
    if source.process is None or not any(word in source.process for word in WELDING) or not within(distance, reach):
        return
    flow = float(capturing.welding_hood_flow(min(distance, reach)))
    cfm = flow / capturing.CFM
    line = Line(
        "Q of the zone that holds X, for 100 fpm (0.508 m/s) at its far end, 1 cfm = 0.00047195 m3/s",
        f"{cfm:.0f} x {digits(capturing.CFM)} = {digits(flow)} m3/s",
        "us-1910-252, (c)(3)(i), table",
    )
    told = f"a 3-in flanged opening, 4 to 12 in from the arc, here up to {digits(reach, 3)} m"
    yield LawNeed(f"{TABLE}movable welding hood", flow, line, told)
