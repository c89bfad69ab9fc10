"""Cautions of enclosing hoods: what face velocity does not show, who stands where, and what must be shut or locked."""

from collections.abc import Iterator

from hoodwright import hoods as h
from hoodwright.results import Caution
from hoodwright.tasks.assessment import HoodAnswer, SourceNeed
from hoodwright.tasks.enclosing.hints import DEEP_ENOUGH
from hoodwright.tasks.enclosing.need import falling_into, falls_air, is_coarse
from hoodwright.tasks.enclosing.openings import open_area, seen_from, share_open, stands_in
from hoodwright.tasks.enclosing.refuse import TOTAL_ENCLOSURE, leaning_in
from hoodwright.units import show
from hoodwright.workplace.model import EnclosingHood, Source, Workplace

PRACTICE = "common-practice"
AT_A_FACE = (
    "laboratory cupboard",
    "infection or isotope cupboard",
    "biological cabinet class I",
    "balance enclosure",
    "cabinet",
    "powder booth",
)
SPRAY = ("spray booth", "spray room", "metal spraying booth")
BLAST = ("blast cabinet", "blast room")
SLOWEST_TESTED = 0.30  # m/s
FASTEST_G10 = 250 * 0.00508  # m/s


def cautions(hood: EnclosingHood, answer: HoodAnswer, workplace: Workplace, system: str) -> Iterator[Caution]:
    """Every caution of one enclosing hood."""
    yield from _containment(hood)
    yield from _spraying(hood, workplace)
    yield from _people(hood, workplace)
    yield from _total(hood)
    for need in answer.needs:
        source = workplace.source(need.source)
        yield from _draught(hood, need, workplace, system)
        yield from _velocity(hood, need, source, workplace, system)
        yield from _source(hood, need, source, system)
    yield from _falls(hood, workplace)


def _containment(hood: EnclosingHood):
    if hood.form in AT_A_FACE:
        text = (
            "face velocity proves no containment: have a containment test with a person at the opening, and watch "
            "smoke; no per cent is given for an enclosure"
        )
        yield Caution(hood.name, text, "guffey-barnea, abstract; common-practice")
    if hood.form == "laboratory cupboard":
        text = (
            "a mean of 0.5 m/s (100 fpm), even within 15 %, is the usual rule; where nothing may escape, a guide "
            "asks 0.76 m/s (150 fpm) and would sooner have it enclosed"
        )
        yield Caution(hood.name, text, "bohs-cupboards, abstract; cal-5154-1, section (c)(1)")
    if hood.form == "glove box":
        text = (
            "keep it 75 to 125 Pa (0.3 to 0.5 in wg) below the room, 200 Pa (0.8 in wg) at most; the flow here is for "
            "one open glove port, so test its alarm with a glove taken off"
        )
        yield Caution(hood.name, text, "glove-box-article, operating pressure; cabinet-table, class III")
    if hood.opening.sides[1] > 0 and hood.box[2] < 0.5 * min(hood.opening.sides):
        text = "it is shallow for its opening: eddies can carry out what is given off near the front; make it deeper"
        yield Caution(hood.name, text, PRACTICE)


def _spraying(hood: EnclosingHood, workplace: Workplace):
    if hood.form in SPRAY and "isocyanate" in _hazards(hood, workplace):
        text = (
            "measure the clearance time with smoke, the booth empty and its filters due for change: booths take 1 to 5 "
            "minutes, spray rooms half an hour or more; breathing protection stays on until it has gone by"
        )
        yield Caution(hood.name, text, "hse-isocyanate, clearance time")
    if hood.form in SPRAY:
        text = "lock the spray gun's air to the fan, and show the air flow on a gauge that the sprayer sees"
        yield Caution(hood.name, text, "wa-spray, section 37003; common-practice")
    if hood.form in BLAST:
        yield Caution(
            hood.name,
            "lock the blasting tool to the fan, and let it run on before the door is opened",
            "ufc-ventilation, section 6-3.13; common-practice",
        )


def _people(hood: EnclosingHood, workplace: Workplace):
    leaning = leaning_in(hood, workplace)
    for person in workplace.people:
        if person.name != leaning and stands_in(hood, person):
            text = (
                f"works inside the {hood.name}: never stand between the work and the exhaust, and wear breathing "
                "protection; the air flow alone does not protect who is inside"
            )
            yield Caution(person.name, text, PRACTICE)


def _total(hood: EnclosingHood):
    if hood.form != TOTAL_ENCLOSURE:
        return
    text = (
        f"{100 * share_open(hood):.1f} % of its surface is open (5 % at most); every door that is not counted as an "
        "opening stays shut while it works; of every opening the sources keep four diameters away"
    )
    yield Caution(hood.name, text, "us-method-204, criteria")


def _draught(hood: EnclosingHood, need: SourceNeed, workplace: Workplace, system: str):
    draught = workplace.room.draught
    gust = draught.speed + draught.wander if draught else 0.0
    if gust > need.capture_velocity / 2:
        than = "half " if gust < need.capture_velocity else ""
        air, velocity = show(gust, "velocity", system), show(need.capture_velocity, "velocity", system)
        text = f"draughts reach {air}, more than {than}the face velocity of {velocity}: keep doors, supply air and "
        yield Caution(hood.name, f"{text}passers-by away from its openings", PRACTICE)
        if hood.form in SPRAY:
            fast = show(FASTEST_G10, "velocity", system)
            text = f"in draughts table G-10 goes up to {fast} into a booth (the United States)"
            yield Caution(hood.name, text, "osha-spray-letter, table G-10")


def _velocity(hood: EnclosingHood, need: SourceNeed, source: Source, workplace: Workplace, system: str):
    """The end of the range that was taken, and what the design flow gives."""
    low, high = h.face_velocity_range(hood.form)
    if source.capture_velocity is not None:
        text = f"the capture velocity of the {source.name} is not used: inside an enclosure the face velocity counts"
        yield Caution(hood.name, text, PRACTICE)
    if hood.face_velocity is not None and hood.face_velocity < low * (1 - 1e-9):
        stated, usual = show(hood.face_velocity, "velocity", system), show(low, "velocity", system)
        text = f"the stated face velocity of {stated} is below the {usual} that is usual for a {hood.form}"
        yield Caution(hood.name, text, _cited(need))
    if hood.face_velocity is None and need.in_range and need.capture_velocity < high * (1 - 1e-9):
        upper, flow = (
            show(high, "velocity", system),
            show(float(h.enclosure_flow(open_area(hood), high)) + falls_air(hood, workplace), "flow", system),
        )
        text = f"the lower end of its range was taken; draughts or more output ask for its upper end, {upper}: {flow}"
        yield Caution(hood.name, text, _cited(need))
    if hood.form in AT_A_FACE and need.velocity is not None and need.velocity <= SLOWEST_TESTED:
        text = (
            f"{show(need.velocity, 'velocity', system)} at the opening: of the speeds tested with a dummy at a "
            "bench-top enclosure, 0.30 to 0.86 m/s, the slowest gave the highest exposures"
        )
        yield Caution(hood.name, text, "guffey-barnea, abstract")


def _cited(need: SourceNeed) -> str:
    return PRACTICE if need.basis_source == "stated by the user" else need.basis_source


def _source(hood: EnclosingHood, need: SourceNeed, source: Source, system: str):
    if need.untold:
        yield Caution(hood.name, f"the {source.name}: {need.untold}", PRACTICE)
        return
    behind = min(seen_from(hood, point).behind for point in source.points)
    if behind < DEEP_ENOUGH * (1 - 1e-9):
        text = (
            f"the {source.name} is {show(max(behind, 0.0), 'length', system)} behind the opening; "
            f"{show(DEEP_ENOUGH, 'length', system)} or more is usual, since eddies reach that far in"
        )
        yield Caution(hood.name, text, PRACTICE)
    if source.heat is not None:
        text = (
            f"the {source.name} is hot: take the air off at the top, and let the flow exceed what rises; openings high "
            "up spill first"
        )
        yield Caution(hood.name, text, PRACTICE)
    if source.dispersion == "thrown" and source.throws is None:
        yield Caution(hood.name, f"the {source.name} throws its stream: point it away from every opening", PRACTICE)


def _falls(hood: EnclosingHood, workplace: Workplace):
    for falls in falling_into(hood, workplace):
        if not is_coarse(falls):
            text = (
                "no published equation tells what air so fine a material drags along; ten times its bulk volume is "
                "added, as for dumping. Keep the fall short, and watch the openings while it falls"
            )
            yield Caution(hood.name, text, "usbm-dust-handbook, chapter 5")
            return


def _hazards(hood: EnclosingHood, workplace: Workplace) -> set[str]:
    found = (workplace.contaminant(workplace.source(name).contaminant) for name in hood.serves)
    return {hazard for contaminant in found for hazard in contaminant.hazards}
