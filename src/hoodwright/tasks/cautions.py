"""Cautions of the trade that apply to this workplace, each at the place it concerns."""

import math

from hoodwright.results import Caution
from hoodwright.tasks.assessment import HoodAnswer
from hoodwright.tasks.laws import area_of, has_full_flange
from hoodwright.tasks.need import looks_away
from hoodwright.tasks.run import Run
from hoodwright.tasks.streams import clashes
from hoodwright.units import show
from hoodwright.workplace.model import Draught, Hood, Workplace

PRACTICE = "common-practice, practitioner's review"
WIDE_SPREAD = 0.25
PERSON_REACH = 1.0
FASTEST_USUAL = 30.0  # m/s

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
        *_ductwork(workplace, run, system),
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
    for place, pairs in clashes(workplace).items():
        for words in pairs:
            yield Caution(place, f"{words} must not share a duct: give each a system of its own", PRACTICE)


def _hood(hood: Hood, workplace: Workplace, system: str):
    if hood.flange > 0 and not has_full_flange(hood):
        width = show(math.sqrt(area_of(hood.opening)), "length", system)
        text = f"its flange is narrower than {width}, so it is counted as plain; a table top is not a flange"
        yield Caution(hood.name, text, "common-practice, flange width, from memory")
    duct = next((duct for duct in workplace.ducts if duct.start == hood.name), None)
    if duct and not 0.9 < area_of(duct) / area_of(hood.opening) < 1.1:
        text = "its opening and its duct differ in size; the entry loss is that of a straight entry, not of a taper"
        yield Caution(hood.name, text, "exam-equations, hood-loss figure")


def _draughts(answer: HoodAnswer, draught: Draught, system: str):
    gust = draught.speed + draught.wander
    for need in answer.needs:
        if gust > need.capture_velocity / 2:
            air, velocity = show(gust, "velocity", system), show(need.capture_velocity, "velocity", system)
            text = f"draughts reach {air}, more than half the capture velocity of {velocity}"
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
    draught = workplace.room.draught
    for person in workplace.people:
        for source in workplace.sources:
            to_source = (source.at[0] - person.at[0], source.at[1] - person.at[1])
            near = math.hypot(*to_source)
            if not draught or draught.speed <= 0 or near > PERSON_REACH or near == 0:
                continue
            along = (to_source[0] * draught.towards[0] + to_source[1] * draught.towards[1]) / near
            if along > 0.7:
                text = (
                    f"stands between the draught and the {source.name}: air flows back towards a person with a draught "
                    "from behind, which no equation here covers"
                )
                yield Caution(person.name, text, "person-wake, reverse flow")


def _ductwork(workplace: Workplace, run: Run, system: str):
    for duct in workplace.ducts:
        if duct.material == "flexible":
            text = (
                "flexible hose: sag and bends make its loss two to three times that of the straight, stretched hose "
                "shown"
            )
            yield Caution(duct.name, text, PRACTICE)
        if any(fitting.elbow is not None and fitting.pieces is None for fitting in duct.fittings):
            text = (
                "an elbow without 'pieces' is counted as smooth; elbows made of four or five pieces, as most are here, "
                "lose about 0.25 velocity pressures instead of 0.15"
            )
            yield Caution(duct.name, text, "lev-elbows, elbow loss by number of pieces")
    for section in run.ducts:
        if section.velocity > FASTEST_USUAL:
            fast, usual = (show(v, "velocity", system) for v in (section.velocity, FASTEST_USUAL))
            text = f"{fast} is faster than the {usual} that ducts usually carry: check its flow and its size"
            yield Caution(section.name, text, PRACTICE)
    for junction in run.junctions:
        if junction.ratio < 0.95:
            others = ", ".join(f"{name} to {show(flow, 'flow', system)}" for name, flow in junction.corrected)
            text = f"static pressures differ (ratio {junction.ratio:.2f}): left alone, the flow shifts, {others}"
            yield Caution(junction.name, f"{text}. Editions of the rule differ", junction.source)
    joined = {duct.start for duct in workplace.ducts}
    for hood in workplace.hoods:
        if workplace.ducts and hood.name not in joined:
            yield Caution(
                hood.name,
                "no duct leads from it: its suction and its share of the fan are not computed",
                PRACTICE,
            )
    for fan in run.fans:
        text = "system effect, belt and motor losses are not in its power; read the fan's curve at the density shown"
        yield Caution(fan.name, text, PRACTICE)
    if workplace.ducts:
        text = (
            "static or hood suction taps: mind lagging, explosible or toxic deposits, height and rotating parts before "
            "anyone drills or opens a duct"
        )
        yield Caution(workplace.name, text, PRACTICE)
