"""Cautions of the trade that apply to this workplace, each at the place it concerns."""

import math

from hoodwright.hoods import capture_velocity_range
from hoodwright.results import Caution
from hoodwright.tasks.assessment import HoodAnswer
from hoodwright.tasks.duct_cautions import duct_cautions
from hoodwright.tasks.laws import area_of, has_full_flange
from hoodwright.tasks.need import looks_away, needs_of
from hoodwright.tasks.people import in_the_draught, person_between
from hoodwright.tasks.run import Run
from hoodwright.tasks.streams import Clash, clashes
from hoodwright.units import show
from hoodwright.workplace.model import Draught, Hood, Source, Workplace

PRACTICE = "common-practice"
WIDE_SPREAD = 0.25

BY_HAZARD = {
    "asthmagen": (
        "an asthmagen: no level is known to be harmless to someone sensitised; enclose where possible, and show by "
        "air sampling what is breathed",
        PRACTICE,
    ),
    "carcinogen": (
        "a carcinogen: enclose first; a ventilation test does not show what is breathed, so sample the air",
        PRACTICE,
    ),
    "isocyanate": (
        "isocyanates: breathing protection stays on until a measured clearance time has gone by; the asthma is "
        "permanent",
        "hse-isocyanate, clearance time",
    ),
    "asbestos": ("asbestos: licensed work only, under its own regulations and enclosures", PRACTICE),
    "lead": (
        "lead: a ventilation test does not show compliance; sample air and blood as your regulations ask",
        PRACTICE,
    ),
    "silica": ("silica dust: a ventilation test does not show compliance; sample the air", PRACTICE),
    "flammable": (
        "flammable: keep the exhaust below 25 % of the lower limit of flammability at its temperature; the flow shown "
        "here is for capture only",
        "imc-502, 502.7.3",
    ),
    "explosible dust": (
        "explosible dust: a named person must review the whole system first (venting, isolation, bonding, no "
        "recirculation, duct velocity held): NFPA 660, or DSEAR in the UK",
        "nfpa660, replaces 652, 654, 484 and 664",
    ),
    "sparks": ("sparks: keep them out of ducts and filters; trap or detect them before the filter", PRACTICE),
    "aluminium or magnesium": (
        "aluminium or magnesium: keep its system apart, dry and free of steel sparks",
        PRACTICE,
    ),
    "perchloric": ("perchloric acid: a wash-down system of its own", PRACTICE),
    "acid": ("acid: ducts that withstand it, kept apart from cyanide and hypochlorite", PRACTICE),
    "cyanide": ("cyanide: acutely toxic, never near acid; enclose, and have an alarm and a plan for failure", PRACTICE),
    "hypochlorite": ("hypochlorite: never near acid, which sets chlorine free", PRACTICE),
    "oxidiser": ("oxidiser: keep its ducts clean and apart from organic matter", PRACTICE),
}


def cautions_for(workplace: Workplace, hoods: tuple[HoodAnswer, ...], run: Run, system: str) -> tuple[Caution, ...]:
    """Every caution, each once, in the order of the file."""
    draught = workplace.room.draught
    found = [
        *_hazards(workplace),
        *_mixed_streams(workplace),
        *(caution for hood in workplace.hoods for caution in _hood(hood, workplace, system)),
        *(caution for answer in hoods if draught for caution in _draughts(answer, draught, system)),
        *(caution for answer in hoods for caution in _answer(answer, system)),
        *_people(workplace),
        *duct_cautions(workplace, hoods, run, system),
        Caution(
            workplace.name,
            "these answers hold for still, open air before the hood: draughts, bodies and benches are not in the "
            "equations. Local codes and licensed practice come first",
            PRACTICE,
        ),
    ]
    return tuple(dict.fromkeys(found))


def _hazards(workplace: Workplace):
    for contaminant in workplace.contaminants:
        for hazard in contaminant.hazards:
            if hazard in BY_HAZARD:
                text, source = BY_HAZARD[hazard]
                yield Caution(contaminant.name, text, source)


def _mixed_streams(workplace: Workplace):
    told: list[Clash] = []
    for clash in clashes(workplace):
        if any(one.words == clash.words and len(one.hoods) > 1 and one.hoods <= clash.hoods for one in told):
            continue
        told.append(clash)
        yield Caution(clash.place, f"{clash.words} must not share a duct: give each a system of its own", PRACTICE)


def _hood(hood: Hood, workplace: Workplace, system: str):
    if hood.flange > 0 and not has_full_flange(hood):
        width = show(math.sqrt(area_of(hood.opening)), "length", system)
        text = f"its flange is narrower than {width}, so it is counted as plain; a table top is not a flange"
        yield Caution(hood.name, text, "common-practice, flange width, from memory")
    duct = next((duct for duct in workplace.ducts if duct.start == hood.name), None)
    ratio = area_of(duct) / area_of(hood.opening) if duct else 1.0
    if ratio < 0.9:
        text = "its duct is narrower than its opening; the entry loss is that of a straight entry, not of a taper"
        yield Caution(hood.name, text, "exam-equations, hood-loss figure")
    if ratio > 1.1:
        text = "its duct is wider than its opening: the air speeds up there first, so its suction is higher than shown"
        yield Caution(hood.name, text, PRACTICE)
    for name in hood.serves:
        yield from _lower_end(hood, workplace.source(name), workplace, system)


def _lower_end(hood: Hood, source: Source, workplace: Workplace, system: str):
    """What the upper end of the class would ask, where the lower end was taken."""
    need = next(need for need in needs_of(hood, workplace) if need.source == source.name)
    low, high = capture_velocity_range(source.dispersion)
    if source.capture_velocity is not None or need.capture_velocity > low or looks_away(need.off_axis):
        return
    least = "" if need.in_range else "at least "
    upper, flow = show(high, "velocity", system), show(need.flow * high / low, "flow", system)
    text = (
        f"for the {source.name} the lower end of its class was taken; draughts, a small hood or more output ask for "
        f"its upper end, {upper}, which takes {least}{flow}"
    )
    if source.dispersion == "still":
        text += "; later editions are said to begin the class at 0.38 m/s (75 fpm), from memory"
    yield Caution(hood.name, text, "capture-table, table 2.3")


def _draughts(answer: HoodAnswer, draught: Draught, system: str):
    gust = draught.speed + draught.wander
    for need in answer.needs:
        if gust > need.capture_velocity / 2:
            than = "half " if gust < need.capture_velocity else ""
            air, velocity = show(gust, "velocity", system), show(need.capture_velocity, "velocity", system)
            text = f"draughts reach {air}, more than {than}the capture velocity of {velocity}"
            yield Caution(answer.name, f"{text}: shield the {need.source} or enclose it", PRACTICE)


def _answer(answer: HoodAnswer, system: str):
    for need in answer.needs:
        if need.spread > WIDE_SPREAD:
            text = (
                f"the equations differ by {100 * need.spread:.0f} % for the {need.source}; the most demanding one rules"
            )
            yield Caution(answer.name, text, PRACTICE)
        if not need.in_range and not looks_away(need.off_axis):
            distance = show(need.distance, "length", system)
            text = f"{distance} to the {need.source} is outside the equations' range; only certain bounds are given"
            yield Caution(answer.name, text, "potential-flow, far-field bound")
        if need.laws and need.off_axis > math.radians(10):
            angle = f"{math.degrees(need.off_axis):.0f} degrees"
            text = f"the {need.source} lies {angle} off its axis; the straight distance is used"
            yield Caution(answer.name, text, PRACTICE)


def _people(workplace: Workplace):
    for person in workplace.people:
        for source in workplace.sources:
            if in_the_draught(person, source, workplace):
                text = (
                    f"stands between the draught and the {source.name}: air flows back towards a person with a draught "
                    "from behind, which no equation here covers"
                )
                yield Caution(person.name, text, "person-wake, reverse flow")
    for hood in workplace.hoods:
        for name in hood.serves:
            between = person_between(hood, workplace.source(name), workplace)
            if between:
                text = f"stands between the {name} and the {hood.name}: what is drawn to the hood passes their face"
                yield Caution(between, text, PRACTICE)
