"""The messages of the live air, as they go to the browser. Text is JSON; the air itself is one binary message.

Every message says by `n` which request it answers. For one request, in this order:

    doing    0 or more: how far the work is
    (binary) the air, when it was asked for or is another than was sent before
    stream   where smoke starts, the path of the stream, and the weights and the escape radius as they are now
    share    the captured share in words
    fault    in place of what would follow: one sentence

The binary message: a little-endian uint32 L; a JSON header of L bytes, padded with blanks so that 4 + L is a multiple
of 8; then velocity [base][i][j][k][3] as little-endian half floats (m/s per unit weight), calm [i][j][k] as bytes (255:
all of the room's turbulence is left) and solid [i][j][k] as bytes (1: no air).
"""

import json
from typing import Any

import numpy as np

from hoodwright.tasks.air.live import LiveScene, LiveShare, LiveStream
from hoodwright.tasks.air.live_picture import (
    JET_TIME,
    JET_UNREST,
    SWAY_TIME,
    blocks_of,
    mouths_of,
    plates_of,
    start_of,
)

ALIGN = 8
DIGITS = 7  # a tenth of a millimetre is not enough between the lines near a small hood


def doing(n: int | None, fraction: float, words: str) -> str:
    """How far the work is."""
    return _text("doing", n, {"fraction": round(fraction, 3), "words": words})


def fault(n: int | None, words: str) -> str:
    """Why there is no answer: one sentence."""
    return _text("fault", n, {"words": words})


def stream(n: int | None, scene: LiveScene, told: LiveStream) -> str:
    """Where smoke starts, the path of the stream, and what may have changed since the air was sent."""
    return _text(
        "stream",
        n,
        {
            "form": told.form,
            "points": told.points,
            "radius": told.radius,
            "direction": told.direction,
            "path": told.path.tolist(),
            "columns": told.columns,
            "start": start_of(scene),
            **_of_the_moment(scene),
        },
    )


def share(n: int | None, told: LiveShare) -> str:
    """The captured share in words, with the raw numbers."""
    words = ("told", "shown", "interval", "sentence", "claim", "banner", "distance", "flow", "handbook", "differs")
    raw = {"captured": told.captured, "low": told.low, "high": told.high, "by_hood": told.by_hood}
    return _text("share", n, {**{key: getattr(told, key) for key in words}, "raw": raw})


def layer(n: int | None, name: str, body: dict[str, Any]) -> str:
    """A layer of the picture, such as stream lines."""
    return _text("layer", n, {"layer": name, **body})


def air(n: int | None, scene: LiveScene, lattice: Any) -> bytes:
    """The air on its lattice, with all that stands in it: the binary message."""
    header = {
        "n": n,
        "shape": lattice.shape,
        "lines": [line.tolist() for line in lattice.lines],
        "bases": lattice.names,
        **_of_the_moment(scene),
        "sway_time": SWAY_TIME,
        "mouths": mouths_of(scene),
        "plates": plates_of(scene),
        "blocks": blocks_of(scene),
        "room": scene.room,
        "jet": {"unrest": JET_UNREST, "time": JET_TIME},
    }
    head = _json(header).encode()
    head += b" " * (-(4 + len(head)) % ALIGN)
    velocity = np.ascontiguousarray(lattice.velocity, dtype="<f2")
    parts = (len(head).to_bytes(4, "little"), head, velocity.tobytes(), lattice.calm.tobytes(), lattice.solid.tobytes())
    return b"".join(parts)


def _of_the_moment(scene: LiveScene) -> dict[str, Any]:
    """What flow, draught and source change without another air."""
    draught = scene.draught
    return {
        "weights": scene.weights,
        "turbulence": draught.turbulence,
        "eddy": draught.eddy,
        "wander": draught.wander,
        "rising": draught.rising,
        "escape": scene.plan.escape_radius,
        "limit": scene.plan.time_limit,
        "centres": scene.centres,
        "settling": scene.release.grain.settling,
    }


def _text(kind: str, n: int | None, body: dict[str, Any]) -> str:
    return _json({"kind": kind, "n": n, **body})


def _json(value: Any) -> str:
    return json.dumps(_short(value), allow_nan=False, separators=(",", ":"))


def _short(value: Any) -> Any:
    """The same with as many digits as a picture needs."""
    if isinstance(value, bool) or value is None or isinstance(value, (str, int)):
        return value
    if isinstance(value, dict):
        return {key: _short(one) for key, one in value.items()}
    if isinstance(value, (list, tuple)):
        return [_short(one) for one in value]
    return float(f"{float(value):.{DIGITS}g}")
