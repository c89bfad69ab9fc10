"""One arrangement of a source and its hood: its scene with live smoke, and what it does in words."""

from collections.abc import Callable, Sequence
from urllib.parse import urlencode

from hoodwright import units
from hoodwright.jobs import Progress
from hoodwright.tasks.arrangements.arrange import Arrangement
from hoodwright.tasks.arrangements.view import Stance
from hoodwright.tasks.arrangements.words import Told, computed_words
from hoodwright.tasks.picture import picture
from hoodwright.web.components.scene import Scene
from hoodwright.web.components.still import Still
from hoodwright.web.components.words import Words, block

BANNER = "not validated for capture"
AT_WORK = "The computed air: at work."


class ArrangementPanel:
    """A figure of the three; `show` draws another state of it."""

    def __init__(self, key: str, blind: Callable[[], None]):
        self.key, self.blind = key, blind
        with block("figure", f"arrangement arrangement-{key}") as self.box:
            self.title = Words("h2", "")
            self.still = Still()
            self.scene = Scene(lambda _: None, lambda _: None, self._blind)
            with block("figcaption", "arrangement-words"):
                self.does = Words("p", "")
                self.handbook = Words("p", "", "because")
                self.computed = Words("p", "", "computed").mark(f"computed {key}")
                Words("p", BANNER, "banner")

    def show(self, one: Arrangement, stance: Stance, asked: dict[str, str], system: str) -> None:
        """Draw an arrangement, and ask for its air: `asked` says to the live air how it was made."""
        self.scene.stand_at(stance)
        shapes, draught = picture(one.workplace), one.workplace.room.draught
        blows = f"draught {units.show(draught.speed, 'velocity', system)}" if draught and draught.speed > 0 else ""
        self.title.text = one.title
        self.does.text, self.handbook.text, self.computed.text = one.words, one.handbook, AT_WORK
        said = f"{units.show(one.inward, 'velocity', system)} inward" if one.inward is not None else ""
        self.scene.show(shapes, one.hood, [], blows, f"{one.title}. {one.words} {one.handbook}")
        url = f"/live?{urlencode(asked | {'arrangement': self.key})}"
        self.scene.live(url, one.hood, one.source, fixed=True, said=said)
        self.still.show(shapes, system)

    def draw(self, smoke: str) -> None:
        """A still of the smoke (SVG), where there is no scene."""
        self.still.show_smoke(smoke)

    def tell(self, one: Arrangement, told: Told, system: str) -> None:
        """What the computed air says."""
        self.computed.text = computed_words(one, told, system)

    def _blind(self) -> None:
        self.scene.set_visibility(False)
        self.still.stand_in()
        self.blind()


def stills_of(progress: Progress, three: Sequence[Arrangement]) -> dict[str, str]:
    """The smoke of each arrangement from the side, as SVG: for a browser that draws no scene."""
    from hoodwright.reports import smoke_svg
    from hoodwright.tasks.air.smoke_still import still_of

    found = {}
    for number, one in enumerate(three):
        part = progress.part(number / len(three), (number + 1) / len(three))
        still = still_of(one.workplace, one.hood, one.source, progress=part)
        found[one.key] = smoke_svg(picture(one.workplace), still, one.workplace.units, "side")
    return found
