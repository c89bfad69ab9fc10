"""The computed air of one hood and one source: what it catches, what may be tried, and what can be shown and saved."""

from collections.abc import Callable
from dataclasses import replace
from urllib.parse import quote

from nicegui import ui

from hoodwright.errors import HoodwrightError
from hoodwright.tasks import warm_up
from hoodwright.tasks.assess import design_flow
from hoodwright.tasks.bearing import bearing_of
from hoodwright.web.components.air_answer import AirAnswer
from hoodwright.web.components.air_layers import AirLayers, press
from hoodwright.web.components.air_save import AirSave
from hoodwright.web.components.air_sliders import LiveSlider, bearing_scale, flow_scale, speed_scale
from hoodwright.web.components.air_still import AirStill
from hoodwright.web.components.capture_distance import CaptureDistance
from hoodwright.web.components.compass import Compass
from hoodwright.web.components.files import address
from hoodwright.web.components.live_values import LiveValues
from hoodwright.web.components.scene import Scene
from hoodwright.web.components.words import Words, block, button
from hoodwright.web.draft import Draft
from hoodwright.workplace import Document
from hoodwright.workplace.model import Hood, Workplace

NO_HOOD = "No hood serves it yet: let one serve it, and the air between them is computed."
PREPARING = "Preparing the computed air: the first run compiles, 10 to 40 seconds. Everything else works meanwhile."
KEPT = "Kept in the file; Undo takes it back."
LOOK_EVERY_S = 1.0


class AirPanel:
    """Below the scene. What is tried here changes the air, not the file, until it is kept."""

    def __init__(self, draft: Draft, scene: Scene, redraw: Callable[[], None], drawn: Callable[[str], None]):
        self.draft, self.scene, self.redraw, self.values = draft, scene, redraw, LiveValues()
        self.hood = self.source = ""
        self._asked: tuple = ()
        self._built: tuple = ()
        self._flow_built = 0.0  # m3/s, for which the ends of its slider were made
        self.sliders: dict[str, LiveSlider] = {}
        self.nobody = Words("p", NO_HOOD, "untold")
        with block("section", "air-panel") as self.box:
            self._answers()
            self.layers = AirLayers(self.values, self.send)
            self.still = AirStill(self.share, drawn)
            with block("details", "try") as trying:
                trying.props["open"] = True
                Words("summary", "Try another flow or draught")
                self._try()
            with block("details", "more"):
                Words("summary", "See how far it reaches, and save it for a talk")
                self._more()
        for event, heard in (("share", self.share), ("fault", self.told_fault), ("layer", self.told_layer)):
            scene.on(event, lambda e, heard=heard: heard(e.args))

    def _answers(self) -> None:
        self.question = Words("h2", "")
        self.question.props["id"] = "air-question"
        self.box.props["aria-labelledby"] = "air-question"
        self.which = block("div", "toggles which")
        self._watch_compiling(Words("p", PREPARING, "untold"))
        self.answer = AirAnswer()
        self.fault = Words("p", "", "untold held").mark("air fault")

    def _try(self) -> None:
        with block("div", "tries"):
            self.slots = block("div", "live-sliders")
            with block("div", "choices"):
                self.keep = button("Keep in the file", self._keep, "act")
                self.back = button("Back to the file's values", self._reset)
            self.kept = Words("p", "", "because")
            self.kept.props["role"] = "status"

    def _more(self) -> None:
        with block("div", "choices"):
            button("Capture against distance", lambda: self.distance.ask(), "quiet")
            self.three = Words("a", "Three arrangements side by side", "link-on")
        self.distance = CaptureDistance(lambda: (self._workplace(), self.hood, self.source, self.draft.system))
        self.save = AirSave(self.draft, self.scene, self._on_paper, lambda: self.still.on)

    def show(self, hood: str, source: str) -> None:
        """Look at a hood and a source of the draft as it stands."""
        if (hood, source) != (self.hood, self.source):
            self._other(hood, source)
        self._build()
        self.send()

    def _other(self, hood: str, source: str) -> None:
        if hood != self.hood:
            self.values.flow = None
        self.hood, self.source = hood, source
        self.answer.wait(hood)
        self.fault.text = ""
        self.distance.clear()
        self.three.props["href"] = address("/three", self.draft.path.name, hood)

    def _build(self) -> None:
        """Questions and sliders for this hood; built anew only where their ends or units differ."""
        workplace, hood = self.draft.workplace, self._hood()
        self.box.set_visibility(hood is not None)
        self.nobody.set_visibility(hood is None)
        if hood is None:
            return
        self.question.text = f"How much of the {workplace.source(self.source).contaminant} does it catch?"
        flow, (speed, bearing) = design_flow(hood, workplace), _draught(workplace)
        wanted = (self.hood, self.draft.system, hood.serves, self.source)
        if wanted != self._built or flow > 2.5 * self._flow_built or flow < 0.25 * self._flow_built:
            self._built, self._flow_built = wanted, flow
            self._choice(hood)
            self._sliders(flow, speed, bearing)
        for key, in_file in (("flow", flow), ("speed", speed), ("bearing", bearing)):
            self.sliders[key].follow(in_file, getattr(self.values, key))
        self._tell()

    def _choice(self, hood: Hood) -> None:
        self.which.clear()
        self.which.set_visibility(len(hood.serves) > 1)
        with self.which:
            for source in hood.serves if len(hood.serves) > 1 else ():
                one = button(source, lambda source=source: self.show(self.hood, source), "toggle")
                press(one, source, on=source == self.source)

    def _sliders(self, flow: float, speed: float, bearing: float) -> None:
        self.slots.clear()
        system, values = self.draft.system, self.values
        with self.slots:
            self.sliders = {
                "flow": LiveSlider(flow_scale(self.hood, flow, system), flow, values.flow, self._tried("flow")),
                "speed": LiveSlider(speed_scale(speed, system), speed, values.speed, self._tried("speed")),
                "bearing": LiveSlider(bearing_scale(), bearing, values.bearing, self._tried("bearing")),
            }
        with self.sliders["bearing"].beside_field():
            self.compass = Compass(bearing, speed)

    def _tried(self, key: str):
        def tried(value: float) -> None:
            setattr(self.values, key, value)
            self.kept.text = ""
            self._tell()
            if key != "flow":
                self.redraw()
            self.send()

        return tried

    def _tell(self) -> None:
        """Show whether something is tried, and turn the compass."""
        self.compass.show(self.sliders["bearing"].now, self.sliders["speed"].now)
        for made in (self.keep, self.back):
            made.props["disabled"] = not self.values.tried

    def send(self) -> None:
        """Ask for this air, and let the scene draw what is wanted of it."""
        if self._hood() is None:
            self.scene.live("", self.hood, self.source)
            return
        asked = (self.draft.document.checksum, self.draft.system, self.hood, self.source)
        tried = (self.values.flow, self.values.draught(self.draft.workplace))
        changed = (*asked, *tried) != self._asked
        if self._asked and changed:
            self.answer.grey()
            self.distance.grey()
        file_changed = bool(self._asked) and asked != self._asked[:4]
        self._asked = (*asked, *tried)
        self.scene.live(
            f"/live?file={quote(self.draft.path.name)}",
            self.hood,
            self.source,
            flow=tried[0],
            draught=tried[1],
            layers=sorted(self.values.layers - {"smoke"}),
            plane=self.values.plane,
            smoke="smoke" in self.values.layers,
        )
        if self.still.on and changed:
            self._still()
        elif file_changed:
            self.scene.ask_again()

    def blind(self) -> None:
        """The browser draws no scene: the share and stills are asked for here."""
        self.still.on = True
        self.layers.box.set_visibility(False)
        self._still()

    def _still(self) -> None:
        try:
            self.still.ask(self._workplace(), self.hood, self.source)
        except HoodwrightError as error:
            self.told_fault({"words": str(error)})

    def share(self, share: dict) -> None:
        """The captured share came."""
        self.fault.text = ""
        self.answer.show(share)

    def told_layer(self, layer: dict) -> None:
        """What a layer says in words; the picture alone would leave some out."""
        self.layers.tell(layer.get("layer", ""), layer.get("words", ""))

    def told_fault(self, fault: dict) -> None:
        """The air cannot be computed so; why."""
        self.fault.text = fault.get("words", "")
        self.answer.grey()

    def tried_document(self) -> Document:
        """The document with what is tried, as if it were kept."""
        return self.values.kept_in(self.draft.document, self.draft.workplace, self.hood)

    def _on_paper(self) -> tuple[Document, str, str]:
        """Document, hood and source; what is tried bears another name than the file, which does not say it."""
        document = self.tried_document()
        if self.values.tried:
            document = replace(document, path=self.draft.path.with_name(f"{self.draft.path.stem}-as-tried.yaml"))
        return document, self.hood, self.source

    def _workplace(self) -> Workplace:
        return self.tried_document().workplace().model_copy(update={"units": self.draft.system})

    def _keep(self) -> None:
        try:
            self.draft.edit(self.tried_document())
        except HoodwrightError as error:
            self.kept.text = str(error)
        else:
            self.values.reset()
            self.kept.text = KEPT
            self._build()

    def _reset(self) -> None:
        self.values.reset()
        self.kept.text = ""
        self._build()
        self.redraw()
        self.send()

    def _hood(self) -> Hood | None:
        return next((hood for hood in self.draft.workplace.hoods if hood.name == self.hood), None)

    def _watch_compiling(self, preparing: Words) -> None:
        """Say that the first run compiles, for as long as it does."""
        preparing.props["role"] = "status"

        def look() -> None:
            ready = warm_up.state().ready
            preparing.set_visibility(not ready)
            timer.active = not ready

        timer = ui.timer(LOOK_EVERY_S, look)
        look()


def _draught(workplace: Workplace) -> tuple[float, float]:
    told = workplace.room.draught
    return (told.speed, bearing_of(told.towards)) if told else (0.0, 0.0)
