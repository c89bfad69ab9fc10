"""What a browser asks of the live air, read with care: only finite numbers and known words get through."""

import json
import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Literal

from hoodwright.errors import InputError
from hoodwright.tasks.air.live_layers import LAYERS
from hoodwright.tasks.air.planes import PLANES

LONGEST = 4000  # characters of one request
DEEPEST = 4  # brackets in brackets
MOST = 1e6
ASKS = ("air", "layer")
KEYS = ("n", "ask", "hood", "source", "source_at", "hood_at", "flow", "draught", "field", "layer", "plane")

Xyz = tuple[float, float, float]


@dataclass(frozen=True)
class Ask:
    """One request; None is what the draft says."""

    n: int | None
    ask: Literal["air", "layer"]
    hood: str
    source: str
    source_at: Xyz | None = None
    hood_at: Xyz | None = None
    flow: float | None = None
    draught: Xyz | None = None
    field: bool = False
    layer: str = ""
    plane: str = "level"


def number_of(text: str) -> int | None:
    """The number of a request that may be broken, so that the fault can say which one it answers."""
    try:
        return _number(_data(text, float))
    except InputError:
        return None


def read(text: str) -> Ask:
    """A request; InputError says in one sentence what is wrong with it."""
    data = _data(text)
    unknown = sorted(set(data) - set(KEYS))
    if unknown:
        raise InputError(f"the request has an unknown key {unknown[0][:40]!r}; it takes {', '.join(KEYS)}")
    ask = _one_of(data, "ask", ASKS, "air")
    return Ask(
        n=_number(data),
        ask="layer" if ask == "layer" else "air",
        hood=_name(data, "hood"),
        source=_name(data, "source"),
        source_at=_place(data, "source_at"),
        hood_at=_place(data, "hood_at"),
        flow=None if data.get("flow") is None else _finite("flow", data["flow"]),
        draught=_place(data, "draught"),
        field=data.get("field") is True,
        layer=_one_of(data, "layer", LAYERS, "") if ask == "layer" else "",
        plane=_one_of(data, "plane", PLANES, "level"),
    )


def _data(text: str, constant: Callable[[str], float] | None = None) -> dict[str, Any]:
    if len(text) > LONGEST:
        raise InputError(f"the request has {len(text)} characters, more than {LONGEST}; send one request at a time")
    if text.count("[") > DEEPEST * len(KEYS) or text.count("{") > DEEPEST:
        raise InputError("the request is no plain record; send one JSON object with the keys of the live air")
    try:
        data = json.loads(text, parse_constant=constant or _no_number)
    except ValueError as error:
        raise InputError(f"the request is not JSON: {error}; send one JSON object") from None
    if not isinstance(data, dict):
        raise InputError("the request is no record; send one JSON object with the keys of the live air")
    return data


def _no_number(word: str) -> float:
    raise InputError(f"the request has {word} where a finite number is needed")


def _number(data: dict[str, Any]) -> int | None:
    n = data.get("n")
    return n if isinstance(n, int) and not isinstance(n, bool) and abs(n) < 2**53 else None


def _one_of(data: dict[str, Any], key: str, known: tuple[str, ...], usual: str) -> str:
    got = data.get(key) or usual
    if got not in known:
        raise InputError(f"'{key}': got {str(got)[:40]!r}; it is one of {', '.join(known)}")
    return str(got)


def _name(data: dict[str, Any], key: str) -> str:
    got = data.get(key)
    if not isinstance(got, str) or not got:
        raise InputError(f"'{key}': got {str(got)[:40]!r}; the name of a {key} of the file is needed")
    return got


def _place(data: dict[str, Any], key: str) -> Xyz | None:
    got = data.get(key)
    if got is None:
        return None
    if not isinstance(got, list) or len(got) != 3:
        raise InputError(f"'{key}': got {str(got)[:40]!r}; three numbers along x, y and z are needed")
    x, y, z = (_finite(key, part) for part in got)
    return x, y, z


def _finite(key: str, got: Any) -> float:
    if isinstance(got, bool) or not isinstance(got, (int, float)) or abs(got) > MOST or not math.isfinite(got):
        raise InputError(f"'{key}': got {str(got)[:40]!r}; a finite number up to {MOST:g} is needed")
    return float(got)
