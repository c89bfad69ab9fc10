"""The answer of the capture job as plain data for machines: SI only."""

from collections.abc import Sequence

from hoodwright.tasks.air.layers_export import centreline_as_json
from hoodwright.tasks.capture.answer import BANNER, CaptureAnswer, CaptureReport
from hoodwright.tasks.capture.map import CaptureMap, capture_map_as_json
from hoodwright.tasks.capture.openings import OpeningInward


def capture_as_json(report: CaptureReport, asked_map: CaptureMap | None = None) -> dict:
    """Dictionaries and lists, ready for `json.dumps`; raw numbers beside what is claimed of them."""
    told = {} if asked_map is None else {"map": capture_map_as_json(asked_map)}
    return {
        "workplace": report.workplace,
        "version": report.version,
        "banner": BANNER,
        "flow": report.flow,
        "series": [_row(answer) for answer in report.answers],
        "definition": _definition_of(report.answers),
        "pairs": [_pair(answers) for answers in _by_pair(report)],
        "results": [_result(answer) for answer in report.answers],
    } | told


def _by_pair(report: CaptureReport) -> list[list[CaptureAnswer]]:
    """The answers of each source before each hood."""
    pairs: dict[tuple[str, str], list[CaptureAnswer]] = {}
    for answer in report.answers:
        pairs.setdefault((answer.source, answer.hood), []).append(answer)
    return list(pairs.values())


def _pair(answers: list[CaptureAnswer]) -> dict:
    first = answers[0]
    series = [_row(answer) for answer in answers]
    return {"source": first.source, "hood": first.hood, "series": series, "definition": _definition_of(answers)}


def _definition_of(answers: Sequence[CaptureAnswer]) -> dict:
    """The definition of the first of a series, and the escape radius of each, which grows with the distance."""
    return _definition(answers[0]) | {"escape_radii_m": [answer.definition.escape_radius for answer in answers]}


def _row(answer: CaptureAnswer) -> dict:
    return {
        "distance_m": answer.distance,
        "captured": answer.captured,
        "low": answer.low,
        "high": answer.high,
        "plume_limited": answer.plume_limited,
        "claim": answer.claim,
    }


def _definition(answer: CaptureAnswer) -> dict:
    told, spreads = answer.definition, answer.definition.spreads
    return {
        "escape_radius_m": told.escape_radius,
        "time_limit_s": told.time_limit,
        "realisations": told.realisations,
        "particles": told.particles,
        "seed": told.seed,
        "cells": told.cells,
        "smallest_cell_m": told.smallest_cell,
        "half_widths": {
            "flow_share": spreads.flow,
            "position_m": spreads.position,
            "draught_m_s": spreads.draught,
            "release_share": spreads.release,
            "grid": spreads.grid,
        },
    }


def _result(answer: CaptureAnswer) -> dict:
    return {
        "source": answer.source,
        "hood": answer.hood,
        "flow_m3_s": answer.flow,
        "shown": answer.shown,
        "shown_interval": answer.shown_interval,
        "sentence": answer.sentence,
        "by_hood": answer.by_hood,
        "handbook": str(answer.handbook),
        "differs": answer.differs,
        "farthest": _farthest(answer),
        "openings": [_opening(one) for one in answer.openings],
        "spills": answer.spills,
        "centreline": centreline_as_json(answer.centreline),
        "notes": list(answer.notes),
        "definition": _definition(answer),
    } | _row(answer)


def _farthest(answer: CaptureAnswer) -> dict | None:
    """The farthest place of a line, a box or a path; null for a point."""
    far = answer.farthest
    if far is None:
        return None
    shown = far.shown if answer.told else answer.shown
    return {"at_m": list(far.place), "captured": far.captured, "low": far.low, "high": far.high, "shown": shown}


def _opening(one: OpeningInward) -> dict:
    return {
        "name": one.name,
        "inward_velocity_m_s": one.velocity,
        "computed_velocity_m_s": one.computed,
        "draught_m_s": one.draught,
        "stream_m_s": one.stream,
        "margin_m_s": one.margin,
    }
