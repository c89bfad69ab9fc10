"""The ducts by the hand method: pressures along the run, and one card for every duct, junction and fan."""

from hoodwright import units
from hoodwright.tasks.assessment import Assessment, DuctAnswer
from hoodwright.tasks.stretches import stretches
from hoodwright.web.components.cards import duct_card, fan_card, junction_card, materials_list
from hoodwright.web.components.outcomes import caution_note
from hoodwright.web.components.pressure_plot import options, pressure_plot
from hoodwright.web.components.words import Words, block
from hoodwright.web.draft import Draft

METHOD = (
    "Hand method, at the intended flows, cleaners loaded where there are any: static pressures are compared. "
    "Gauge pressures with their sign, suction is negative."
)
MOST_CARDS = 60
ONE_CARD = "Of so many ducts only the one that is chosen in the drawing has its card here."

TOO_MANY = "Of so many hoods the hand method is not worked out on the page; ask: hoodwright assess FILE"


class HandMethod:
    """Folded where what really flows can be told; open where it cannot."""

    def __init__(self, draft: Draft):
        self.draft = draft
        with block("details", "hand") as self.box:
            Words("summary", "By hand: what pressure does the air need at the intended flows?")
            with block("div", "hand-inside"):
                self.sentence = Words("p", "", "sentence")
                with block("figure", "run") as self.figure:
                    self.plot = pressure_plot((), draft.system)
                    self.plot.props["aria-label"] = "Plot of pressure along the run; the cards below say the same."
                    self.plot.props["role"] = "img"
                    Words("figcaption", METHOD, "because")
                self.systems = block("div", "systems")

    def too_many(self) -> None:
        """So many hoods that the page would take minutes."""
        self.figure.set_visibility(False)
        self.sentence.text = TOO_MANY

    def show(self, found: Assessment, chosen: str, *, opened: bool) -> None:
        """The answer by hand; of a great system the card of the chosen part only."""
        if opened:
            self.box.props["open"] = True
        few = len(found.ducts) <= MOST_CARDS
        self.figure.set_visibility(bool(found.ducts) and few)
        self.sentence.text = _sentence(found)
        if few:
            self.plot.options.clear()
            self.plot.options.update(options(stretches(self.draft.workplace, found), found.system))
            self.plot.update()
        self.systems.clear()
        with self.systems:
            if few:
                for fan in (*(fan.name for fan in found.fans), ""):
                    _system(found, fan)
            else:
                Words("p", ONE_CARD, "because")
                _cards_of(found, chosen)
            if found.materials:
                materials_list(found.materials, found.system)
            for caution in found.cautions:
                if caution.about == found.workplace:
                    caution_note(caution, everywhere=True)


def _cards_of(found: Assessment, chosen: str) -> None:
    """Cards of one part, and of the duct that leads away from it."""
    with block("div", "cards"):
        for duct in found.ducts:
            if chosen in (duct.name, duct.start_from):
                duct_card(duct, found.cautions, found.system, found.air)
        for junction in found.junctions:
            if junction.name == chosen:
                junction_card(junction, found.cautions, found.system)
        for fan in found.fans:
            if fan.name == chosen:
                fan_card(fan, found.cautions, found.system)


def _system(found: Assessment, fan: str) -> None:
    """A fan, and every duct and junction that leads to or from it, along the way of the air."""
    ducts = [duct for duct in found.ducts if fan_on_the_way(found, duct) == fan]
    if not ducts:
        return
    junctions = {junction.name: junction for junction in found.junctions}
    Words("h2", f"Through the {fan}" if fan else "Without a fan on the way")
    with block("div", "cards"):
        for answer in found.fans:
            if answer.name == fan:
                fan_card(answer, found.cautions, found.system)
        for duct in ducts:
            if duct.start_from in junctions:
                junction_card(junctions.pop(duct.start_from), found.cautions, found.system)
            duct_card(duct, found.cautions, found.system, found.air)


def fan_on_the_way(found: Assessment, duct: DuctAnswer) -> str:
    """The fan that a duct leads to or comes from; empty where there is none."""
    fans, onward = {fan.name for fan in found.fans}, {other.start_from: other for other in found.ducts}
    if duct.start_from in fans:
        return duct.start_from
    for _ in found.ducts:
        if duct.to in fans:
            return duct.to
        if duct.to not in onward:
            break
        duct = onward[duct.to]
    return ""


def _sentence(found: Assessment) -> str:
    if not found.ducts:
        return "The file has no ducts yet; add 'ducts:' to see the pressure along the run."
    slow = [duct.name for duct in found.ducts if duct.transport.verdict != "meets the need"]
    moves = (
        f"is too slow in {', '.join(slow)}" if slow else "is fast enough everywhere to keep what it carries airborne"
    )
    work = [
        f"the {fan.name} must raise {units.show(fan.total_pressure, 'pressure', found.system)} "
        f"of total pressure at {units.show(fan.flow, 'flow', found.system)}"
        for fan in found.fans
    ]
    return f"{'; '.join([f'The air {moves}', *work])}."
