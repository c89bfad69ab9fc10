"""A starter workplace for a process of the guide: laid out, commented with what to mind, and its duct sized."""

import math
import textwrap
import tomllib
from functools import cache
from importlib.resources import files
from typing import Any

from hoodwright.ducts import standard_diameters
from hoodwright.hoods import RELEASES
from hoodwright.tasks.assess import assess
from hoodwright.tasks.guide import GuideEntry, Statement, in_a_sentence, record_years, statement
from hoodwright.units import write
from hoodwright.workplace import parse_workplace

WIDTH = 108
RUN = "Run:  hoodwright assess THIS_FILE  - every quantity carries its unit, and any usual unit may be typed."
FIRST_DUCT = 0.2  # m; before the flow is known
SIZE_STEP, TOO_FAST = 0.005, 1.6  # m; times the transport velocity
PARTICULATE = ("dust", "fume", "mist", "smoke")
# Temperature of the hot face [degC]: common practice, to be changed.
HOT = {
    "aluminium melting": 720,
    "bronze melting and pouring": 1100,
    "iron or steel melting": 1500,
    "lead casting and drossing": 400,
    "pouring into sand moulds": 1350,
}


def starter_for(found: GuideEntry) -> str:
    """Text of a workplace file for a process; it reads without a fault and can be assessed at once."""
    flow = assess(parse_workplace(_text(found, FIRST_DUCT, None))).hoods[0].design_flow
    return _text(found, _diameter(flow, found.transport_velocity[0]), flow)


def _diameter(flow: float, slowest: float) -> float:
    """The widest duct of the series in which the flow is fast enough; else, or where that is far too fast, by 5 mm."""
    widest = math.sqrt(4 * flow / (math.pi * slowest))
    fitting = [float(d) for d in standard_diameters() if d <= widest]
    if fitting and (widest / fitting[-1]) ** 2 <= TOO_FAST:
        return fitting[-1]
    return math.floor(widest / SIZE_STEP) * SIZE_STEP


def _text(found: GuideEntry, diameter: float, flow: float | None) -> str:
    hood, layout = found.hoods[0], _layouts()[f"{found.start.layout}-{found.hoods[0].type}"]
    name = layout.get("name") or hood.form.split(",")[0]
    surface = layout.get("surface", [])
    lines = [
        *_head(found),
        "hoodwright: 1                      # format of this file",
        f"name: {_quoted(_capital(found.process))}",
        f"about: {_quoted(f'Started from the process guide: {found.process}. Change every number to yours.')}",
        "units: SI                          # SI or US: how results are shown",
        "air: {temperature: 20 degC, relative_humidity: 50 %, altitude: 0 m}",
        "",
        "room:",
        "  size: [6 m, 5 m, 3 m]            # x, y, z inside; the origin is a floor corner, z points up",
        "  # draught: {towards: [1, 0, 0], speed: 0.15 m/s, wander: 0.05 m/s}",
        "",
        "people:",
        "  - {name: worker, at: [3 m, 1.6 m], facing: [0, 1, 0]}",
        "",
        "contaminants:",
        f"  - name: {_quoted(found.substance)}",
        f"    kind: {found.kind}",
        f"    hazards: [{', '.join(found.hazards)}]",
        f"    transport: {found.transport}    # row of the transport velocities",
        *(["    # reviewed_by: a named person      # explosible dust asks for it"] if _explosible(found) else []),
        *surface,
        "",
        "sources:",
        "  - name: work",
        f"    contaminant: {_quoted(found.substance)}",
        f"    process: {_quoted(found.process)}",
        f"    dispersion: {found.release}    # {' | '.join(RELEASES)}: how briskly it is given off",
        *(f"    {line}" for line in _filled(layout["source"], found)),
        "",
        "hoods:",
        f"  - name: {_quoted(name)}",
        f"    type: {hood.type}",
        *([f"    form: {found.start.form}"] if found.start.form else []),
        "    serves: [work]",
        *(f"    {line}" for line in layout["hood"]),
        *([_intended(flow)] if flow else []),
        "    # today: {flow: 300 m3/h, uncertainty: 8 %, date: 2026-01-31}   # a reading on site",
        "",
        *_run(found, name, diameter, flow),
    ]
    return "\n".join(lines) + "\n"


def _head(found: GuideEntry) -> list[str]:
    years = record_years("UK")
    elsewhere = statement("examination.elsewhere")
    return [
        *_comment(in_a_sentence(found).replace("\u2009", " ")),
        "#",
        *_comment(RUN),
        "#",
        *_listed("Why", (*found.why_hazards, *found.why_hoods)),
        *_listed("Mind", (statement("always.order"), *found.cautions)),
        *_listed("Refused", found.refusals),
        "# Examination:",
        *(line for one in found.intervals for line in _comment(f"- {one.text} [{one.citation}]", "  ")),
        *_comment(f"- UK: its record is kept for {years} years [coshh-2002, reg. 9(4)]", "  "),
        *_comment(f"- {elsewhere.text} [{elsewhere.citation}]", "  "),
    ]


def _run(found: GuideEntry, hood: str, diameter: float, flow: float | None) -> list[str]:
    size, cleaned = write(round(diameter, 4), "length", "mm"), found.kind in PARTICULATE
    to = "filter" if cleaned else "fan"
    lines = [
        "ducts:",
        "  - name: branch",
        f"    from: {_quoted(hood)}",
        f"    to: {to}",
        f"    round: {size}                  # fast enough for what it carries",
        "    length: 4 m",
        "    fittings: [{elbow: 90 deg, pieces: 5}]",
    ]
    if cleaned:
        lines.append(f"  - {{name: to the fan, from: filter, to: fan, round: {size}, length: 1 m}}")
    lines.append(f"  - {{name: stack, from: fan, to: outside, round: {size}, length: 4 m}}")
    if cleaned:
        at = write(_rounded(flow or 0.1), "flow", "m3/h")
        lines += [
            "",
            "cleaners:                          # pressures of your filter at one flow, clean and dirty",
            f"  - {{name: filter, resistance: {{clean: 400 Pa, dirty: 1000 Pa, at: {at}, exponent: 1}}}}",
        ]
    return [*lines, "", "fans:", "  - {name: fan, efficiency: 55 %}"]


def _intended(flow: float) -> str:
    rounded = write(_rounded(flow), "flow", "m3/h")
    return f"    # intended_flow: {rounded}     # what your design says; left out, the need stands in (about this)"


def _rounded(flow: float) -> float:
    """Up to two digits in m3/h, so that the flow stays enough."""
    hourly = flow * 3600
    step = 10 ** (math.floor(math.log10(hourly)) - 1)
    return math.ceil(hourly / step - 1e-9) * step / 3600


def _filled(lines: list[str], found: GuideEntry) -> list[str]:
    return [line.replace("HOT", str(HOT.get(found.process, ""))) for line in lines]


def _explosible(found: GuideEntry) -> bool:
    return "explosible dust" in found.hazards


def _listed(title: str, statements: tuple[Statement, ...]) -> list[str]:
    if not statements:
        return []
    texts = [f"- {one.said} [{one.citation}]" for one in statements]
    return [f"# {title}:", *(line for text in texts for line in _comment(text, "  "))]


def _comment(text: str, indent: str = "") -> list[str]:
    first, rest = f"# {indent}", f"# {indent}  "
    return textwrap.wrap(text, WIDTH, initial_indent=first, subsequent_indent=rest, break_on_hyphens=False)


def _capital(text: str) -> str:
    return text[0].upper() + text[1:]


def _quoted(text: str) -> str:
    """Plain where YAML takes it as it is, else in quotation marks."""
    plain = all(letter.isalnum() or letter in " -" for letter in text) and text[0].isalpha()
    return text if plain else f'"{text}"'


@cache
def _layouts() -> dict[str, dict[str, Any]]:
    found = files("hoodwright.workplace.starters").joinpath("layouts.toml").read_text(encoding="utf-8")
    return tomllib.loads(found)
