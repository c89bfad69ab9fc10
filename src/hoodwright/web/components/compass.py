"""A small compass of the floor plan: where the draught goes to. The words beside it say the same."""

import math

from nicegui import ui

SIZE, REACH = 56, 20


class Compass:
    """An arrow in a ring; up is into the room, right is along the room."""

    def __init__(self, bearing: float, speed: float):
        self.picture = ui.html("", sanitize=False).classes("compass")
        self.show(bearing, speed)

    def show(self, bearing: float, speed: float) -> None:
        """Turn the arrow; still air is a dot."""
        self.picture.set_content(_drawn(bearing, speed))


def _drawn(bearing: float, speed: float) -> str:
    middle = SIZE / 2
    ring = f'<circle cx="{middle}" cy="{middle}" r="{REACH + 5}" fill="none" stroke="currentColor" opacity="0.45"/>'
    ticks = "".join(
        f'<line x1="{middle}" y1="{middle - REACH - 5}" x2="{middle}" y2="{middle - REACH - 1}" stroke="currentColor" '
        f'opacity="0.6" transform="rotate({turn} {middle} {middle})"/>'
        for turn in (0, 90, 180, 270)
    )
    turned = f"rotate({math.fmod(bearing, 360):.1f} {middle} {middle})"
    arrow = (
        f'<g transform="{turned}" class="wind"><line x1="{middle}" y1="{middle + 14}" x2="{middle}" y2="{middle - 8}" '
        f'stroke="currentColor" stroke-width="3"/><path d="M{middle} {middle - 18} {middle + 7} {middle - 6}'
        f'H{middle - 7}Z" fill="currentColor"/></g>'
        if speed > 0
        else f'<circle cx="{middle}" cy="{middle}" r="4" fill="currentColor" class="wind"/>'
    )
    return (
        f'<svg viewBox="0 0 {SIZE} {SIZE}" width="{SIZE}" height="{SIZE}" aria-hidden="true">{ring}{ticks}{arrow}</svg>'
    )
