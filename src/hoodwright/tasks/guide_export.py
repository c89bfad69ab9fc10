"""The process guide as plain data for machines, in SI."""

import math
from dataclasses import asdict

from hoodwright.tasks.guide import CAPTURE_SOURCE, TRANSPORT_SOURCE, GuideEntry, Statement, record_years


def guide_as_json(entries: tuple[GuideEntry, ...]) -> list[dict]:
    """One record a process; velocities carry their unit in the key, an open upper end is null."""
    return [_record(found) for found in entries]


def _record(found: GuideEntry) -> dict:
    capture, transport = found.capture_velocity, found.transport_velocity
    return {
        "process": found.process,
        "trade": found.trade,
        "substance": found.substance,
        "kind": found.kind,
        "hazards": list(found.hazards),
        "release": found.release,
        "hoods": [{"type": hood.type, "form": hood.form} for hood in found.hoods],
        "capture_velocity_low_m_s": capture[0],
        "capture_velocity_high_m_s": capture[1],
        "capture_velocity_source": CAPTURE_SOURCE,
        "transport": found.transport,
        "transport_velocity_low_m_s": transport[0],
        "transport_velocity_high_m_s": None if math.isinf(transport[1]) else transport[1],
        "transport_velocity_source": TRANSPORT_SOURCE,
        "why_hazards": _said(found.why_hazards),
        "why_hoods": _said(found.why_hoods),
        "cautions": _said(found.cautions),
        "refusals": _said(found.refusals),
        "examination": [asdict(one) for one in found.intervals],
        "record_years_uk": record_years("UK"),
    }


def _said(statements: tuple[Statement, ...]) -> list[dict]:
    return [asdict(one) | {"trust": one.trust} for one in statements]
