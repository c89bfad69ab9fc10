"""Places labels so that none covers another: the first free place around each anchor."""

import math
from dataclasses import dataclass, field

from hoodwright.reports.svg import INK, QUIET, Point, circle, halo, line, words_width

Box = tuple[float, float, float, float]
LINE_HEIGHT = 1.18
SHIFTS = tuple(
    (dx, dy)
    for far in (12, 26, 44, 66, 92)
    for dx, dy in (
        (far, -far * 0.45),
        (-far, -far * 0.45),
        (far, far * 0.6),
        (-far, far * 0.6),
        (0, -far * 1.1),
        (0, far * 1.2),
    )
)


@dataclass
class Labels:
    """Collects labels of one figure of a given size."""

    size: Point
    paper: str = "#FFFFFF"
    taken: list[Box] = field(default_factory=list)
    drawn: list[str] = field(default_factory=list)

    def keep_clear(self, at: Point, radius: float) -> None:
        """No label may cover this spot."""
        self.taken.append((at[0] - radius, at[1] - radius, at[0] + radius, at[1] + radius))

    def keep_line_clear(self, start: Point, end: Point, radius: float) -> None:
        """No label may cover this line."""
        count = max(1, round(math.dist(start, end) / (2.5 * radius)))
        for i in range(count + 1):
            x, y = (a + (b - a) * i / count for a, b in zip(start, end, strict=True))
            self.keep_clear((x, y), radius)

    def add(
        self,
        anchor: Point,
        lines: list[str],
        size: float = 13,
        fill: str = INK,
        *,
        bold: bool = False,
        below: bool = False,
    ) -> bool:
        """Draw lines of words near the anchor with a leader; False where no place is free."""
        width = max(words_width(words, size) for words in lines)
        height = len(lines) * size * LINE_HEIGHT
        for dx, dy in sorted(SHIFTS, key=lambda shift: shift[1] < 0) if below else SHIFTS:
            box = _box(anchor, (dx, dy), width, height)
            if self._free(box):
                self.taken.append(box)
                self._draw(anchor, dx, box, lines, size, fill, bold)
                return True
        return False

    def _free(self, box: Box) -> bool:
        inside = box[0] >= 2 and box[1] >= 2 and box[2] <= self.size[0] - 2 and box[3] <= self.size[1] - 2
        return inside and not any(
            box[0] < other[2] and other[0] < box[2] and box[1] < other[3] and other[1] < box[3] for other in self.taken
        )

    def _draw(self, anchor: Point, dx: float, box: Box, lines: list[str], size: float, fill: str, bold: bool):
        middle = (box[1] + box[3]) / 2
        side, x = ("start", box[0]) if dx > 0 else ("end", box[2]) if dx < 0 else ("middle", (box[0] + box[2]) / 2)
        near = (
            (x - 2, middle)
            if dx > 0
            else (x + 2, middle)
            if dx < 0
            else (x, min((box[1], box[3]), key=lambda y: abs(y - anchor[1])))
        )
        self.drawn.append(line(anchor, near, QUIET, 0.7) + circle(anchor, 1.4, fill=QUIET))
        for i, words in enumerate(lines):
            style = {
                "fill": fill if i == 0 else INK,
                "text_anchor": side,
                "font_weight": "bold" if bold and i == 0 else None,
            }
            self.drawn.append(halo((x, box[1] + size * (0.95 + LINE_HEIGHT * i)), words, size, self.paper, **style))


def _box(anchor: Point, shift: Point, width: float, height: float) -> Box:
    x, y = anchor[0] + shift[0], anchor[1] + shift[1]
    left = x if shift[0] > 0 else x - width if shift[0] < 0 else x - width / 2
    up = y - height / 2 if shift[0] else (y - height if shift[1] < 0 else y)
    return (left, up, left + width, up + height)
