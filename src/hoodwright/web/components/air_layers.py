"""What is drawn of the air: smoke, streamlines, speed lines, capture map; and the plane of the last two."""

from collections.abc import Callable

from hoodwright.web.components.live_values import LAYERS, PLANES, LiveValues
from hoodwright.web.components.words import Words, block, button

ON_A_PLANE = {"speed", "map"}
MEANING = {
    "streamlines": "Streamlines: ways of the mean air; where they lie close it is fast.",
    "speed": "Speed lines: along each line the mean air has one speed.",
    "map": "Capture map: where on the plane a source would still be caught, and how much of it.",
}


class AirLayers:
    """Toggles; pressed is told by a tick and to screen readers, not by colour alone."""

    def __init__(self, values: LiveValues, changed: Callable[[], None]):
        self.values, self.changed = values, changed
        self.toggles: dict[str, Words] = {}
        self.planes: dict[str, Words] = {}
        self.told: dict[str, str] = {}
        with block("div", "layers") as self.box:
            with block("div", "toggles") as group:
                group.props.update({"role": "group", "aria-label": "What is drawn of the air"})
                for key, words in LAYERS.items():
                    self.toggles[key] = button(words, lambda key=key: self._toggle(key), "toggle")
            with block("div", "toggles planes") as self.plane_row:
                self.plane_row.props.update({"role": "group", "aria-label": "Plane through the source"})
                Words("span", "Plane through the source:", "because")
                for key, words in PLANES.items():
                    self.planes[key] = button(words, lambda key=key: self._lay(key), "toggle")
            self.meanings = block("div", "meanings")
        self.show()

    def show(self) -> None:
        """Show what is on."""
        for key, toggle in self.toggles.items():
            press(toggle, LAYERS[key], on=key in self.values.layers)
        for key, toggle in self.planes.items():
            press(toggle, PLANES[key], on=key == self.values.plane)
        self.plane_row.set_visibility(bool(ON_A_PLANE & self.values.layers))
        self.meanings.clear()
        with self.meanings:
            for key, words in MEANING.items():
                if key in self.values.layers:
                    Words("p", f"{words} {self.told.get(key, '')}".strip(), "because")

    def tell(self, layer: str, words: str) -> None:
        """What a layer says, now that it is drawn."""
        self.told[layer] = words
        self.show()

    def _toggle(self, key: str) -> None:
        self.values.layers ^= {key}
        self.told.pop(key, None)
        self._tell()

    def _lay(self, plane: str) -> None:
        self.values.plane = plane
        self._tell()

    def _tell(self) -> None:
        self.show()
        self.changed()


def press(toggle: Words, words: str, *, on: bool) -> None:
    """Show a toggle as on or off: a tick, and the same for screen readers."""
    toggle.props["aria-pressed"] = "true" if on else "false"
    toggle.text = f"✓ {words}" if on else words
    toggle.props["aria-label"] = words
