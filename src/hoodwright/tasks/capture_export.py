"""The answer of the capture job as plain data for machines: SI only."""

from hoodwright.tasks.capture import BANNER, CaptureAnswer, CaptureReport


def capture_as_json(report: CaptureReport) -> dict:
    """Dictionaries and lists, ready for `json.dumps`; raw numbers beside what is claimed of them."""
    return {
        "workplace": report.workplace,
        "version": report.version,
        "banner": BANNER,
        "flow": report.flow,
        "series": [_row(answer) for answer in report.answers],
        "definition": _definition(report.answers[0]),
        "results": [_result(answer) for answer in report.answers],
    }


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
        "openings": [{"name": o.name, "inward_velocity_m_s": o.velocity} for o in answer.openings],
        "notes": list(answer.notes),
        "definition": _definition(answer),
    } | _row(answer)
