"""Cautions of the trade that apply to this workplace, each at the place it concerns."""

from hoodwright.hoods import capture_velocity_range
from hoodwright.results import Caution
from hoodwright.tasks.assessment import HoodAnswer
from hoodwright.tasks.duct_cautions import duct_cautions
from hoodwright.tasks.guide_cautions import guide_cautions
from hoodwright.tasks.hood_types import of
from hoodwright.tasks.people import in_the_draught, person_between
from hoodwright.tasks.run import Run
from hoodwright.tasks.streams import Clash, clashes
from hoodwright.units import show, show_number
from hoodwright.workplace.model import Workplace

PRACTICE = "common-practice"

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
    found = [
        *_hazards(workplace),
        *_mixed_streams(workplace),
        *guide_cautions(workplace),
        *(
            caution
            for hood, answer in zip(workplace.hoods, hoods, strict=True)
            for caution in of(hood).cautions(hood, answer, workplace, system)
        ),
        *_stated(workplace, system),
        *_hot_beside(workplace),
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


def _stated(workplace: Workplace, system: str):
    """A capture velocity of the file's own that lies outside its release class."""
    for source in workplace.sources:
        low, high = capture_velocity_range(source.dispersion)
        stated = source.capture_velocity
        if stated is None or low <= stated <= high:
            continue
        told, side = show(stated, "velocity", system), "below" if stated < low else "above"
        span = f"{show_number(low, 'velocity', system)} to {show(high, 'velocity', system)}"
        text = (
            f"its stated capture velocity of {told} lies {side} the {span} of a {source.dispersion} release: say why "
            "in the file"
        )
        yield Caution(source.name, text, "capture-table, table 2.3")


def _hot_beside(workplace: Workplace):
    """Hot work before a hood that draws: its air rises, which the laws of suction do not know."""
    for hood in workplace.hoods:
        for name in hood.serves if hood.type == "capturing" else ():
            if workplace.source(name).heat is not None:
                text = f"hot air rises from the {name} and past the hood: its equations suppose still air there"
                yield Caution(hood.name, f"{text}; a canopy or an enclosure takes the rising air", PRACTICE)


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
        for name in hood.serves if hood.type == "capturing" else ():
            between = person_between(hood, workplace.source(name), workplace)
            if between:
                text = f"stands between the {name} and the {hood.name}: what is drawn to the hood passes their face"
                yield Caution(between, text, PRACTICE)
