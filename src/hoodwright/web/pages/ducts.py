"""Ducts: the pressure along the run, and one card for every duct, junction and fan."""

from nicegui import ui

from hoodwright import units
from hoodwright.errors import HoodwrightError
from hoodwright.tasks.assessment import Assessment
from hoodwright.tasks.stretches import stretches
from hoodwright.web.components.cards import duct_card, fan_card, junction_card
from hoodwright.web.components.outcomes import caution_note
from hoodwright.web.components.pressure_plot import options, pressure_plot
from hoodwright.web.components.words import Words, block
from hoodwright.web.desk import Desk
from hoodwright.web.draft import Draft
from hoodwright.web.frame import frame

METHOD = (
    "Hand method, at the intended flows, cleaners loaded where there are any: static pressures are compared. "
    "Gauge pressures with their sign, suction is negative."
)


def register(desk: Desk) -> None:
    """The page at /ducts."""

    @ui.page("/ducts")
    async def ducts(file: str | None = None):
        with frame(desk, await desk.opened(file), file, "/ducts") as draft:
            if draft is not None:
                await DuctsPage(draft).show()


class DuctsPage:
    """One tab that shows the ducts of one draft."""

    def __init__(self, draft: Draft):
        self.draft = draft
        Words("h1", "What pressure does the air need on its way out?")
        self.sentence = Words("p", "", "sentence")
        with block("figure", "run") as self.figure:
            self.plot = pressure_plot((), draft.system)
            self.plot.props["aria-label"] = "Plot of pressure along the run; the cards below give the same numbers."
            self.plot.props["role"] = "img"
            Words("figcaption", METHOD, "because")
        self.cards = block("div", "cards")
        draft.changed.subscribe(self.show)

    async def show(self) -> None:
        """Answer the draft as it stands."""
        document = self.draft.document
        try:
            assessment = await self.draft.assessment()
        except HoodwrightError as error:
            self.sentence.text = str(error)
            return
        if document is self.draft.document:
            self._answer(assessment)

    def _answer(self, found: Assessment) -> None:
        self.figure.set_visibility(bool(found.ducts))
        self.sentence.text = _sentence(found)
        self.plot.options.clear()
        self.plot.options.update(options(stretches(self.draft.workplace, found), found.system))
        self.plot.update()
        self.cards.clear()
        with self.cards:
            for fan in found.fans:
                fan_card(fan, found.cautions, found.system)
            for junction in found.junctions:
                junction_card(junction, found.cautions, found.system)
            for duct in found.ducts:
                duct_card(duct, found.cautions, found.system)
            for caution in found.cautions:
                if caution.about == found.workplace:
                    caution_note(caution, everywhere=True)


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
