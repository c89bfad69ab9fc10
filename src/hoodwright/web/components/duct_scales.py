"""How a damper, the load of the filters and the speed of a fan are slid, typed and told."""

import math

from hoodwright import units
from hoodwright.errors import InputError
from hoodwright.web.components.air_sliders import LiveSlider, Scale
from hoodwright.web.components.signed import percent
from hoodwright.workplace.model import Fan

MOST_LOSS = 1000.0  # velocity pressures at the end of the slider
SPREAD = 10.0  # the lower, the finer the slider is at small losses
SLOWEST, FASTEST = 0.2, 1.3  # of the speed of the curve


class Slide(LiveSlider):
    """A slider whose value may have no place in the file."""

    def __init__(self, scale: Scale, in_file: float, value: float | None, tried, *, unfiled: bool = False):
        self.unfiled = unfiled
        super().__init__(scale, in_file, value, tried)

    def _say(self) -> None:
        super()._say()
        if self.unfiled:
            self.note.text = self.scale.explain(self.scale.write(self.now))


def closed_share(loss: float) -> float:
    """How far a damper is drawn and slid for its loss: 0 with none, 1 at the end of the slider."""
    return min(1.0, math.log10(1 + SPREAD * max(loss, 0.0)) / math.log10(1 + SPREAD * MOST_LOSS))


def loss_at(share: float) -> float:
    """The loss of a damper at a place of the slider, in two digits."""
    return float(f"{((1 + SPREAD * MOST_LOSS) ** share - 1) / SPREAD:.2g}") if share > 0 else 0.0


def damper_scale(duct: str) -> Scale:
    """The damper of a duct, in velocity pressures of it."""

    def read(text: str) -> float:
        value = units.parse(text, "number")
        if not 0 <= value <= MOST_LOSS * 1000:
            raise InputError(f"got {text}; a damper takes 0 to 1000000 velocity pressures: write for example 4")
        return value

    return Scale(
        label=f"Damper in {duct}",
        most=100.0,
        step=1.0,
        to_slider=lambda value: 100 * closed_share(value),
        from_slider=lambda place: loss_at(place / 100),
        read=read,
        write=lambda value: f"{value:.4g}",
        explain=lambda text: "open" if read(text) == 0 else f"{read(text):.3g} velocity pressures of the duct",
    )


def load_scale() -> Scale:
    """How far the filters are between clean and dirty."""
    return _share("Filters, clean to dirty", 0.0, 1.0, lambda share: f"{percent(share)} of the way to dirty")


def speed_scale(fan: Fan) -> Scale:
    """The speed of a fan over that of its curve."""

    def told(share: float) -> str:
        rpm = f", {units.show(fan.speed * share, 'speed of rotation', 'SI')}" if fan.speed else ""
        return f"{percent(share)} of the speed of its curve{rpm}"

    return _share(f"Speed of the {fan.name}", SLOWEST, FASTEST, told)


def _share(label: str, least: float, most: float, told) -> Scale:
    def read(text: str) -> float:
        value = units.parse(text, "share")
        if not least <= value <= most:
            raise InputError(f"got {text}; allowed: {percent(least)} to {percent(most)}: write for example 90 %")
        return value

    return Scale(
        label=label,
        least=100 * least,
        most=100 * most,
        step=1.0,
        to_slider=lambda value: 100 * value,
        from_slider=lambda place: round(place / 100, 4),
        read=read,
        write=lambda value: f"{100 * value:.4g} %",
        explain=lambda text: told(read(text)),
    )
