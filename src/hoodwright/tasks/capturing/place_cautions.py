"""Cautions of what an answer leans on: surfaces that mirror the opening, one law alone, a table's form, a draught."""

from collections.abc import Iterator

from hoodwright import hoods
from hoodwright.results import Caution
from hoodwright.tasks.assessment import HoodAnswer, SourceNeed
from hoodwright.tasks.capturing.laws import laws_at
from hoodwright.tasks.capturing.need import farthest_place, slot_axis
from hoodwright.tasks.capturing.planes import rests_on
from hoodwright.tasks.capturing.push_pull import by_push
from hoodwright.tasks.capturing.table_laws import by_table
from hoodwright.tasks.capturing.tank_advice import tank_cautions
from hoodwright.tasks.shapes import area_of, has_full_flange
from hoodwright.units import show
from hoodwright.workplace.model import CapturingHood, Source, Workplace

PRACTICE = "common-practice"
SLOT_SPREAD = 2.8  # times the plain slot law, before slots 5 to 16 times as long as wide, up to half their length
FORMS = {
    "downdraught bench": (
        "the table's flow is for its open grille: work that covers it, or hot work that rises, takes it away",
        PRACTICE,
    ),
    "side-draught bench": (
        "the table's flow is for work on the bench itself, with its slots as long as the bench",
        "bench-practice, welding and soldering benches with slots; from memory",
    ),
    "stone tool hood": (
        "the table's flow is for a hood of 3 by 8 in with a flange of 3 in, moved along with the tool",
        "hygiene-table-1595, pneumatic hand tools",
    ),
    "on-torch": (
        "in one test the air speed at the arc fell from 140 fpm (0.71 m/s) at 20 mm from the nozzle to 60 fpm "
        "(0.30 m/s) at 60 mm, and 78 % was caught at 20 mm; too strong a draw takes the shielding gas",
        "gun-extraction18, abstract",
    ),
    "on-tool sander": (
        "it works only flat on the work; its narrow hose needs a vacuum of its own, up to 80 in of water (20 kPa)",
        "dust-tools, vacuum",
    ),
    "on-tool grinder": (
        "it works only with its shroud close to the work; its hose needs a vacuum of its own, not this fan alone",
        "us-1926-1153, table 1",
    ),
}


def place_cautions(hood: CapturingHood, answer: HoodAnswer, workplace: Workplace, system: str) -> Iterator[Caution]:
    """The cautions of one capturing hood that follow from where it stands and what is asked of it."""
    if hood.form in FORMS:
        yield Caution(hood.name, *FORMS[hood.form])
    for need in answer.needs:
        source = workplace.source(need.source)
        yield from _resting(hood, need, source, workplace, system)
        yield from _one_slot_law(hood, need)
        yield from _out_of_reach(hood, answer, need, workplace, system)
        yield from tank_cautions(hood, need, source, workplace, system)


def upper_end_of_form(hood: CapturingHood, source: Source, system: str) -> Iterator[Caution]:
    """What the upper end of a form's table asks, where it has a range."""
    assert hood.form is not None
    low, high = hoods.form_flow_range(hood.form, area_of(hood.opening), max(hood.opening.sides))
    if high > low:
        text = (
            f"for the {source.name} the lower end of its table was taken; the upper end is {show(high, 'flow', system)}"
        )
        yield Caution(hood.name, text, hoods.form_source(hood.form))


def _resting(
    hood: CapturingHood, need: SourceNeed, source: Source, workplace: Workplace, system: str
) -> Iterator[Caution]:
    """That the flow holds only while the hood stays where it rests."""
    if not any(("surface" in law.equation or "corner" in law.equation) for law in need.laws):
        return
    names = " and ".join(f"the {rest.name}" for rest in rests_on(hood, source.points, workplace))
    text = f"its rim rests on {names}, which mirrors it for the {source.name}"
    free = (
        [] if slot_axis(hood) else list(laws_at(hood, farthest_place(hood, source)[1].distance, need.capture_velocity))
    )
    if free:
        text += f"; lifted off, it would need {show(max(law.flow for law in free), 'flow', system)}"
    yield Caution(hood.name, text, "potential-flow, mirror images")


def _one_slot_law(hood: CapturingHood, need: SourceNeed) -> Iterator[Caution]:
    """That the law of plain slots promises more than measured laws do, where none of these holds."""
    if has_full_flange(hood) or len(need.laws) != 1 or not need.laws[0].equation.startswith("Silverman"):
        return
    text = (
        f"only the slot law holds for the {need.source}; before slots up to 16 times as long as wide, the measured law "
        f"[fletcher77] asks up to {SLOT_SPREAD:g} times as much: leave a margin, or watch smoke"
    )
    yield Caution(hood.name, text, "fletcher77, centreline formula")


def _out_of_reach(
    hood: CapturingHood, answer: HoodAnswer, need: SourceNeed, workplace: Workplace, system: str
) -> Iterator[Caution]:
    """That draughts carry off what lies farther ahead than the hood reaches against them."""
    draught = workplace.room.draught
    if draught is None or not need.laws or by_push(need) or all(by_table(law) for law in need.laws):
        return
    gust = draught.speed + draught.wander
    if gust <= 0:
        return
    reach_of = hoods.flanged_reach_in_draught if has_full_flange(hood) else hoods.free_reach_in_draught
    reach = float(reach_of(answer.design_flow, gust))
    if need.distance > reach:
        air, flow = show(gust, "velocity", system), show(answer.design_flow, "flow", system)
        text = (
            f"in draughts of {air} across it, {flow} draws in what lies up to {show(reach, 'length', system)} ahead; "
            f"the {need.source} is {show(need.distance, 'length', system)} away: shield it, or bring the hood closer"
        )
        yield Caution(hood.name, text, "potential-flow, sink in a stream")
