"""Where the browser has no WebGL: it is said, and stills stand in place of the scene and of its live smoke."""

from nicegui import ui

from hoodwright.reports import scene_svg
from hoodwright.tasks.picture import Picture
from hoodwright.web.components.words import Words, block

CAPTION = (
    "This browser has no WebGL, so the scene and the smoke are still pictures, drawn anew when something changes. "
    "The list below and the fields do everything."
)


class Still:
    """Hidden until the scene says that it cannot draw."""

    def __init__(self):
        self.picture: tuple[Picture, str] | None = None
        with block("figure", "still") as self.box:
            self.image = ui.html("", sanitize=False)
            self.smoke = ui.html("", sanitize=False).classes("still-smoke")
            Words("figcaption", CAPTION)
        self.box.set_visibility(False)

    def show(self, picture: Picture, system: str) -> None:
        """Keep the newest picture; draw it when it is seen."""
        self.picture = (picture, system)
        if self.box.visible:
            self.image.set_content(scene_svg(picture, system))

    def show_smoke(self, drawn: str) -> None:
        """Smoke as SVG, one or more."""
        self.smoke.set_content(drawn)

    def stand_in(self) -> None:
        """Take the scene's place."""
        self.box.set_visibility(True)
        if self.picture:
            self.show(*self.picture)
