"""Ducts: what really flows, what can be tried, and the hand method that a user checks against."""

from nicegui import ui

from hoodwright.errors import HoodwrightError
from hoodwright.web.components.add_part import AddToDucts
from hoodwright.web.components.duct_desk import DuctDesk
from hoodwright.web.components.duct_size import DuctSize
from hoodwright.web.components.hand_method import MOST_CARDS, HandMethod
from hoodwright.web.components.words import Words
from hoodwright.web.desk import Desk
from hoodwright.web.draft import Draft
from hoodwright.web.frame import frame

MOST_HOODS = 200  # of which a page works out what is required
LONGEST_READING_S = 60.0  # a file of thousands of ducts


def register(desk: Desk) -> None:
    """The page at /ducts."""

    @ui.page("/ducts", response_timeout=LONGEST_READING_S)
    async def ducts(file: str | None = None, part: str = ""):
        with frame(desk, await _opened(desk, file), file, "/ducts") as draft:
            if draft is not None:
                await DuctsPage(draft, part).show()


async def _opened(desk: Desk, file: str | None) -> Draft | None:
    """The draft; of a great plant at once, as what is required would take minutes there."""
    draft = desk.draft(file)
    if draft is None or draft.faults or len(draft.workplace.hoods) > MOST_HOODS:
        return draft
    return await desk.opened(file)


class DuctsPage:
    """One tab that shows the ducts of one draft."""

    def __init__(self, draft: Draft, part: str = ""):
        self.draft = draft
        Words("h1", "What really flows?")
        self.desk = DuctDesk(draft, part, self._chosen)
        self.size = DuctSize(draft)
        self.adding = AddToDucts(draft, lambda: self.desk.chosen, self._look_at)
        self.hand = HandMethod(draft)
        draft.changed.subscribe(self.show)

    async def show(self) -> None:
        """Answer the draft as it stands: first what flows, then what is required, and all of it by hand."""
        document = self.draft.document
        try:
            self.size.follow()
            await self.desk.show()
            self.adding.follow()
            self.size.box.set_visibility(bool(self.draft.workplace.ducts))
            if len(self.draft.workplace.hoods) > MOST_HOODS:
                self.hand.too_many()
                return
            found = await self.draft.assessment()
        except HoodwrightError as error:
            self.desk.sentence.text = str(error)
            return
        if document is self.draft.document:
            self.desk.assessed(found)
            self._by_hand()

    def _look_at(self, name: str) -> None:
        """A part that was just added or renamed; the drawing follows the draft."""
        self.desk.chosen = name

    def _chosen(self) -> None:
        """Another part is looked at; a great system has the card of one part only."""
        self.adding.follow()
        if self.desk.found is not None and len(self.desk.found.ducts) > MOST_CARDS:
            self._by_hand()

    def _by_hand(self) -> None:
        if self.desk.found is not None:
            built = self.desk.intended is not None and self.desk.intended.curved
            self.hand.show(self.desk.found, self.desk.chosen, opened=not built)
