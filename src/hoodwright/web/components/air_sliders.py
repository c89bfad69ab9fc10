"""Sliders of the live air, each with a field that takes any unit and says what it understood."""

from collections.abc import Callable
from dataclasses import dataclass

from nicegui import ui

from hoodwright import units
from hoodwright.errors import HoodwrightError, InputError
from hoodwright.tasks import bearing
from hoodwright.web.components.field import WAIT_MS
from hoodwright.web.components.words import Words, block

ROUND_ENDS = (1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10)
STEPS = 100


@dataclass(frozen=True)
class Scale:
    """How one quantity is slid, typed and told. `least` and `most` in the unit of the slider."""

    label: str
    most: float
    step: float
    to_slider: Callable[[float], float]
    from_slider: Callable[[float], float]
    read: Callable[[str], float]
    write: Callable[[float], str]
    explain: Callable[[str], str]
    least: float = 0.0


class LiveSlider:
    """One quantity. `value` is None while it is as in the file."""

    def __init__(self, scale: Scale, in_file: float, value: float | None, tried: Callable[[float], None]):
        self.scale, self.in_file, self.tried = scale, in_file, tried
        self.value = value
        with block("div", "live-slider") as self.box:
            name = Words("label", scale.label)
            self.slider = ui.slider(min=scale.least, max=scale.most, step=scale.step, value=self._slid()).mark(
                f"slide {scale.label}"
            )
            self.slider.props["aria-label"] = scale.label
            with block("div", "live-field") as self.field:
                self.input = ui.input(value=scale.write(self.now), validation=lambda _: None).without_auto_validation()
                self.input.props(f"outlined dense debounce={WAIT_MS} spellcheck=false autocomplete=off")
                self.input.mark(scale.label)
                name.props["for"] = self.input.html_id
                self.note = Words("div", "", "understood")
        self.slider.on_value_change(lambda e: self._moved(e.value))
        self.input.on_value_change(lambda e: self._typed(e.value or ""))
        self._say()

    def beside_field(self) -> ui.element:
        """Room for a small picture beside the field."""
        self.field.classes("with-compass")
        return self.box

    @property
    def now(self) -> float:
        """What is tried, or what the file says."""
        return self.in_file if self.value is None else self.value

    def follow(self, in_file: float, value: float | None) -> None:
        """The file or the tried value changed elsewhere."""
        if (in_file, value) != (self.in_file, self.value):
            self.in_file, self.value = in_file, value
            self._show(self.scale.write(self.now))

    def _slid(self) -> float:
        return min(max(self.scale.to_slider(self.now), self.scale.least), self.scale.most)

    def _moved(self, place: float) -> None:
        if abs(place - self._slid()) < 0.5 * self.scale.step:
            return
        self._take(self.scale.from_slider(place))
        self.input.set_value(self.scale.write(self.now))

    def _typed(self, text: str) -> None:
        if text == self.scale.write(self.now):
            return self._say()
        try:
            self._take(self.scale.read(text))
        except HoodwrightError as error:
            self.input.error = str(error)
            self.note.text = ""
            return None
        self.slider.set_value(self._slid())
        return None

    def _take(self, value: float) -> None:
        self.value = value
        self._say()
        self.tried(value)

    def _show(self, text: str) -> None:
        self.input.set_value(text)
        self.slider.set_value(self._slid())
        self._say()

    def _say(self) -> None:
        self.input.error = None
        told = self.scale.explain(self.scale.write(self.now))
        in_file = self.scale.explain(self.scale.write(self.in_file)).split(" = ")[0]
        self.slider.props["aria-valuetext"] = told
        self.note.text = f"{told}; as in the file" if self.value is None else f"{told}; the file says {in_file}"


def flow_scale(hood: str, in_file: float, system: str) -> Scale:
    """The flow of a hood, up to well above what the file says."""
    return _quantity(f"Flow of the {hood}", "flow", 2.5 * in_file, system, above=True)


def speed_scale(in_file: float, system: str) -> Scale:
    """The speed of the draught, up to a gale for a workshop."""
    return _quantity("Draught, speed", "velocity", max(1.0, 2.0 * in_file), system, above=False)


def bearing_scale() -> Scale:
    """The way of the draught on the floor plan."""
    return Scale(
        label="Draught, towards",
        most=360.0,
        step=5.0,
        to_slider=lambda value: value,
        from_slider=lambda value: value,
        read=bearing.read_bearing,
        write=lambda value: f"{value:.4g} deg",
        explain=lambda text: bearing.told(bearing.read_bearing(text)),
    )


def _quantity(label: str, kind: str, most: float, system: str, *, above: bool) -> Scale:
    unit = units.KINDS[kind].show[system]
    end = _round_end(units.to_unit(most, kind, unit))
    step = end / STEPS

    def read(text: str) -> float:
        value = units.parse(text, kind)
        if value < 0 or (above and value == 0):
            allowed = "more than 0 is needed" if above else "0 or more is needed"
            raise InputError(f"got {text}; {allowed}: write for example {units.KINDS[kind].example}")
        return value

    return Scale(
        label=label,
        least=step if above else 0.0,
        most=end,
        step=step,
        to_slider=lambda value: units.to_unit(value, kind, unit),
        from_slider=lambda place: units.parse(f"{place:.6g} {unit}", kind),
        read=read,
        write=lambda value: f"{units.to_unit(value, kind, unit):.4g} {unit}",
        explain=lambda text: units.understood(text, kind, system),
    )


def _round_end(value: float) -> float:
    """The next round number at or above a value."""
    size = 10.0 ** len(str(int(value))) / 10.0 if value >= 1 else 1.0
    return next(size * step for step in ROUND_ENDS if size * step >= value) if value > 0 else size
