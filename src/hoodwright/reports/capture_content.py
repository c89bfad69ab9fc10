"""The report of the computed air as plain data: results in, words and figures out. No layout here."""

import math
from collections.abc import Sequence

from hoodwright.reports.capture_figure import capture_svg
from hoodwright.reports.capture_words import BESIDE, NOT_TOLD, QUESTION, definition, listed
from hoodwright.reports.content import Facts
from hoodwright.reports.scene import scene_svg, scene_words
from hoodwright.reports.smoke_figure import smoke_svg, smoke_words
from hoodwright.reports.svg import height_over_width
from hoodwright.reports.words import Citations, cleaned, verdict
from hoodwright.tasks.capture.answer import BANNER, CaptureAnswer, CaptureReport
from hoodwright.tasks.capture.pages import CapturePage
from hoodwright.tasks.picture import Picture
from hoodwright.units import show

CURVE = (400.0, 262.0)
FLOWS = {
    "design": "the intended flow, or the one needed where none is intended",
    "today": "today's flow where one was read, else at the intended or needed one",
}
SAME_PLACE = 1e-3  # m
A_PART = 0.05  # of what is given off: so much caught by another hood is told
LIMITED = "the stream brings more air than the hood takes"


def capture_content(
    report: CaptureReport, pages: Sequence[CapturePage], picture: Picture, facts: Facts, about: str = ""
) -> dict:
    """Everything the template prints, in the order of the pages."""
    cited = Citations()
    system = report.system
    content = {
        "question": QUESTION,
        "banner": BANNER,
        "beside": BESIDE,
        "workplace": report.workplace,
        "about": about,
        "invented": "invent" in about.casefold(),
        "flows": FLOWS[report.flow],
        "scene": scene_svg(picture, system, "none", with_key=True) if len(pages) > 1 else "",
        "scene_words": scene_words(picture, system),
        "overview": [_overview(page.now, system) for page in pages] if len(pages) > 1 else [],
        "pages": [_page(page, picture, facts, system, today=report.flow == "today") for page in pages],
        "definition": definition(pages[0].now, system, cited),
        "not_covered": list(NOT_TOLD),
        "system": system,
        "version": report.version,
        "file_name": facts.file_name,
        "checksum": facts.checksum,
    }
    return cleaned(content | {"sources": cited.entries()})


def _overview(now: CaptureAnswer, system: str) -> dict:
    return {
        "source": now.source,
        "hood": now.hood,
        "distance": show(now.distance, "length", system),
        "shown": now.shown,
        "interval": now.shown_interval,
        "handbook": verdict(now.handbook),
    }


def _page(page: CapturePage, picture: Picture, facts: Facts, system: str, *, today: bool) -> dict:
    now, still = page.now, page.still
    smoke = smoke_svg(picture, still, system)
    series = page.curve.answers if page.curve else ()
    curve = capture_svg(page.curve, now, "none", CURVE) if page.curve and any(a.told for a in series) else ""
    return {
        "question": f"Does the {now.hood} catch what the {now.source} gives off?",
        "sentence": now.sentence,
        "told": now.told,
        "smoke": smoke,
        "smoke_height": height_over_width(smoke),
        "smoke_words": smoke_words(still, system),
        "asked": _asked(now, page, system),
        "curve": curve,
        "curve_words": f"Captured share of {now.source} against its distance from {now.hood}, as in the table.",
        "rows": [_row(answer, now, system) for answer in series],
        "row_notes": _row_notes(series, system),
        "openings": [_opening(one, system) for one in now.openings],
        "spills": now.spills or "",
        "takers": _takers(now),
        "farthest": _farthest(now, system),
        "limited": now.plume_limited and now.told,
        "handbook": verdict(now.handbook),
        "differs": now.differs or "",
        "notes": [note.rstrip(".") for note in now.notes],
        "typed": f'hoodwright capture "{facts.file_name}" --source "{now.source}" --hood "{now.hood}" --json'
        + " --today" * today,
    }


def _asked(now: CaptureAnswer, page: CapturePage, system: str) -> list[list[str]]:
    """What this page was computed with, for the margin."""
    told, still = now.definition, page.still
    swing, unrest = (show(value, "velocity", system) for value in (still.wander, still.turbulence))
    return [
        ["flow", show(now.flow, "flow", system)],
        ["distance", show(now.distance, "length", system)],
        ["mean draught", show(math.hypot(*still.draught), "velocity", system)],
        ["its swing, and turbulence", f"{swing}, {unrest}"],
        ["escape radius", show(told.escape_radius, "length", system)],
        ["cells", f"{told.cells}, the smallest {show(told.smallest_cell, 'length', system, 2)}"],
    ]


def _row(answer: CaptureAnswer, now: CaptureAnswer, system: str) -> dict:
    """One distance of the curve."""
    return {
        "distance": show(answer.distance, "length", system),
        "shown": answer.shown,
        "interval": answer.shown_interval,
        "radius": show(answer.definition.escape_radius, "length", system),
        "handbook": verdict(answer.handbook),
        "here": abs(answer.distance - now.distance) < SAME_PLACE,
    }


def _row_notes(answers: Sequence[CaptureAnswer], system: str) -> list[str]:
    """What else there is to say of some distances, those of one kind together."""
    notes: dict[str, list[str]] = {}
    for answer in answers:
        if not answer.told:
            notes.setdefault(answer.claim, []).append(show(answer.distance, "length", system))
        elif answer.plume_limited:
            notes.setdefault(LIMITED, []).append(show(answer.distance, "length", system))
    return [f"At {listed(places)}: {why}." for why, places in notes.items()]


def _opening(one, system: str) -> list[str]:
    speeds = (one.velocity, one.computed, one.draught, one.stream)
    return [one.name, *("-" if v is None else show(v, "velocity", system) for v in speeds)]


def _takers(now: CaptureAnswer) -> str:
    """Which hoods catch it, where another one than the hood of this page has a part."""
    if not now.told or now.captured <= 0:
        return ""
    others = [name for name, share in now.by_hood.items() if name != now.hood and share > A_PART]
    return f"A part of it is caught by {listed([f'the {name}' for name in others])}." if others else ""


def _farthest(now: CaptureAnswer, system: str) -> str:
    far = now.told_farthest
    if far is None:
        return ""
    return f"Of what leaves its farthest place: {far.shown} captured, interval {far.shown_interval}."
