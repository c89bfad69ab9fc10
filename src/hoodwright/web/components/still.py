"""Where the browser has no WebGL: it is said, and the scene of the report stands in its place."""

from nicegui import ui

from hoodwright.reports import scene_svg
from hoodwright.tasks.picture import Picture
from hoodwright.web.components.words import Words, block


class Still:
    """Hidden until the scene says that it cannot draw."""

    def __init__(self):
        self.picture: tuple[Picture, str] | None = None
        with block("figure", "still") as self.box:
            self.image = ui.html("", sanitize=False)
            Words(
                "figcaption",
                "This browser has no WebGL, so the scene is a still picture. "
                "The list below and the fields do everything.",
            )
        self.box.set_visibility(False)

    def show(self, picture: Picture, system: str) -> None:
        """Keep the newest picture; draw it when it is seen."""
        self.picture = (picture, system)
        if self.box.visible:
            self.image.set_content(scene_svg(picture, system))

    def stand_in(self) -> None:
        """Take the scene's place."""
        self.box.set_visibility(True)
        if self.picture:
            self.show(*self.picture)
