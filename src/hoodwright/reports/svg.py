"""Small pieces of SVG with fixed number formatting, so that the same figure has the same bytes."""

import html
import math
from collections.abc import Iterable

from hoodwright.reports.words import clean

PAPER, INK, QUIET, RULE = "#FBF9F4", "#22303A", "#5F6E78", "#DDD8CC"
COPPER, COPPER_LIGHT, AIR, AIR_LIGHT = "#B4622D", "#EBD3C2", "#2F7F8F", "#CFE3E6"
WHITE = "#FFFFFF"
FONT = "'Libertinus Serif', system-ui, sans-serif"
HEAD = 8.0  # length of an arrow's head
LETTER_WIDTH = 0.5  # of the font size, a little more than the mean letter

Point = tuple[float, float]


def number(value: float) -> str:
    """A coordinate with at most two decimals, never "-0"."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def tag(name: str, body: str = "", **attributes) -> str:
    """One element; underscores in attribute names become hyphens, None leaves an attribute out."""
    words = "".join(f' {key.replace("_", "-")}="{_value(v)}"' for key, v in attributes.items() if v is not None)
    return f"<{name}{words}>{body}</{name}>" if body else f"<{name}{words}/>"


def _value(value) -> str:
    return number(value) if isinstance(value, int | float) else html.escape(str(value), quote=True)


def text(at: Point, words: str, size: float = 13, **attributes) -> str:
    """Words at a point; the words are escaped here and nowhere else."""
    style = {"fill": INK} | attributes
    return tag("text", html.escape(clean(words)), x=at[0], y=at[1], font_size=size, **style)


def spans(at: Point, parts: Iterable[tuple[str, dict]], size: float = 13) -> str:
    """One line of words in several styles, each part right after the one before."""
    inside = "".join(tag("tspan", html.escape(clean(words)), **style) for words, style in parts)
    return tag("text", inside, x=at[0], y=at[1], font_size=size)


def halo(at: Point, words: str, size: float = 13, paper: str = WHITE, **attributes) -> str:
    """Words with a rim of paper, readable on top of lines."""
    rim = {"stroke": paper, "stroke_width": 3.5, "stroke_linejoin": "round", "aria_hidden": "true"}
    return text(at, words, size, **(attributes | rim | {"fill": paper})) + text(at, words, size, **attributes)


def line(start: Point, end: Point, stroke: str = INK, width: float = 1, **attributes) -> str:
    """A straight line."""
    return tag("line", x1=start[0], y1=start[1], x2=end[0], y2=end[1], stroke=stroke, stroke_width=width, **attributes)


def rectangle(corner: Point, size: Point, **attributes) -> str:
    """A rectangle by its upper left corner."""
    return tag("rect", x=corner[0], y=corner[1], width=size[0], height=size[1], **attributes)


def circle(at: Point, radius: float, **attributes) -> str:
    """A circle."""
    return tag("circle", cx=at[0], cy=at[1], r=radius, **attributes)


def polygon(points: Iterable[Point], **attributes) -> str:
    """A closed shape."""
    return tag("polygon", points=_points(points), **attributes)


def polyline(points: Iterable[Point], stroke: str = INK, width: float = 1, **attributes) -> str:
    """An open line of points with round joints."""
    style = {"fill": "none", "stroke_linejoin": "round", "stroke_linecap": "round"} | attributes
    return tag("polyline", points=_points(points), stroke=stroke, stroke_width=width, **style)


def _points(points: Iterable[Point]) -> str:
    return " ".join(f"{number(x)},{number(y)}" for x, y in points)


def dimension(start: Point, end: Point, colour: str = COPPER) -> str:
    """A dimension line: a line with a short cross stroke at either end."""
    length = math.dist(start, end) or 1.0
    nx, ny = -(end[1] - start[1]) / length * 4, (end[0] - start[0]) / length * 4
    ends = [line((x - nx, y - ny), (x + nx, y + ny), colour, 1.2) for x, y in (start, end)]
    return line(start, end, colour, 1.2) + "".join(ends)


def arrow(start: Point, end: Point, stroke: str = INK, width: float = 1.2) -> str:
    """A straight line with a filled head at its end; a mere dot has none."""
    length = math.dist(start, end)
    if length < 1e-6:
        return ""
    x, y = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    head = min(HEAD, 0.6 * length)
    back = (end[0] - head * x, end[1] - head * y)
    sides = [(back[0] + k * 0.42 * head * -y, back[1] + k * 0.42 * head * x) for k in (-1, 1)]
    return line(start, back, stroke, width) + polygon([end, *sides], fill=stroke)


def words_width(words: str, size: float = 13) -> float:
    """About how wide the words will be."""
    return LETTER_WIDTH * size * len(words)


def drawing(size: Point, title: str, description: str, body: Iterable[str], paper: str = "none") -> str:
    """A whole SVG that stands alone, with its title and its text twin."""
    head = tag("title", html.escape(clean(title))) + tag("desc", html.escape(clean(description)))
    back = "" if paper == "none" else rectangle((0, 0), size, fill=paper)
    width, height = number(size[0]), number(size[1])
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}" width="{width}" '
        f'height="{height}" role="img" font-family="{FONT}">{head}{back}{"".join(body)}</svg>'
    )


def height_over_width(svg: str) -> float:
    """Shape of a drawing, so that a page can keep room for it."""
    width, height = (float(x) for x in svg.split('viewBox="0 0 ', 1)[1].split('"', 1)[0].split())
    return height / width


def ticks(low: float, high: float, about: int = 5) -> list[float]:
    """Round values from `low` to `high`, at most about so many."""
    span = high - low
    if not span > 0:
        return [low]
    step = round_below(span / about)
    while span / step > about + 1:
        step = round_below(step * 2.5)
    first = math.ceil(low / step - 1e-9)
    return [step * i for i in range(first, math.floor(high / step + 1e-9) + 1)]


def round_below(value: float) -> float:
    """The largest of 1, 2, 5 times a power of ten that is not above a positive value."""
    power = 10.0 ** math.floor(math.log10(value) + 1e-12)
    return power * max(m for m in (1, 2, 5) if power * m <= value * (1 + 1e-9))
