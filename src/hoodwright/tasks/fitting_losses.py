"""What the fittings of a duct lose: in velocity pressures, or in pascals where a damper is set."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from hoodwright import ducts as d
from hoodwright.workplace.model import Duct, Fitting

WIDEST_SMOOTH = 2.5  # radius over diameter: there the table of smooth elbows ends
FLATTEST, FLATTEST_MITRED = 0.5, 0.25  # short side over long side: there the tables of rectangular elbows end
STATED = "stated by the user"
PIECES, SMOOTH, RECTANGULAR = (
    "fitting-table, table A-7B",
    "fitting-table, table A-7A",
    "duct-loss-table, rectangular elbow",
)
MITRED, MITRED_RECTANGULAR = "fitting-table, table A-7C", "fitting-table, table A-7D"


@dataclass(frozen=True)
class Loss:
    """Loss of one fitting, in velocity pressures or fixed [Pa], in words, and where it comes from."""

    coefficient: float
    name: str
    source: str
    fixed: float | None = None


def losses_of(duct: Duct, reynolds: float, friction_factor: float) -> Iterator[Loss]:
    """Every fitting of a duct, and its entry into the next."""
    yield from (_fitting(fitting, duct, reynolds, friction_factor) for fitting in duct.fittings)
    if duct.joins_at is not None:
        angle = math.degrees(duct.joins_at)
        yield Loss(float(d.branch_entry_loss(angle)), f"branch entry {angle:g} deg", "lev-elbows, branch entry")


def _fitting(fitting: Fitting, duct: Duct, reynolds: float, factor: float) -> Loss:
    if fitting.damper is not None:
        return Loss(0.0, fitting.name or "damper", STATED, fitting.damper)
    if fitting.damper_loss is not None:
        return Loss(fitting.damper_loss, fitting.name or "damper", STATED)
    if fitting.weather_cap is not None:
        name = f"weather cap, gap {fitting.weather_cap:g} diameters"
        return Loss(float(d.weather_cap_loss(fitting.weather_cap)), name, "lev-caps, weather cap by its gap")
    if fitting.elbow is None:
        return Loss(fitting.loss or 0.0, fitting.name or "fitting", STATED)
    if fitting.mitred:
        return _mitred(fitting, duct, reynolds)
    return _round(fitting, factor) if duct.is_round else _rectangular(fitting, duct)


def _round(fitting: Fitting, factor: float) -> Loss:
    angle = math.degrees(fitting.elbow or 0.0)
    if fitting.pieces is not None:
        loss = float(d.gored_elbow_loss(fitting.pieces, fitting.radius)) * float(d.elbow_angle_share(angle))
        return Loss(loss, f"elbow {angle:g} deg, {fitting.pieces} pieces{_radius(fitting)}", PIECES)
    if fitting.radius > WIDEST_SMOOTH:
        loss = float(d.rounded_bend_loss(angle, fitting.radius, factor))
        return Loss(loss, f"bend {angle:g} deg, R/D {fitting.radius:g}", "rennels-bend, rounded bend")
    loss = float(d.smooth_elbow_loss(fitting.radius)) * float(d.elbow_angle_factor(angle))
    return Loss(loss, f"smooth elbow {angle:g} deg, R/D {fitting.radius:g}", SMOOTH)


def _radius(fitting: Fitting) -> str:
    return "" if fitting.radius == 1.5 else f", R/D {fitting.radius:g}"


def _rectangular(fitting: Fitting, duct: Duct) -> Loss:
    """The turn is taken the way that loses more: the long side in its plane. Flatter than 2 to 1 counts as 2 to 1."""
    angle = math.degrees(fitting.elbow or 0.0)
    ratio = max(min(duct.sides) / max(duct.sides), FLATTEST)
    loss = float(d.rectangular_elbow_loss(ratio, fitting.radius)) * float(d.elbow_angle_factor(angle))
    return Loss(loss, f"rectangular elbow {angle:g} deg, R/side {fitting.radius:g}", RECTANGULAR)


def _mitred(fitting: Fitting, duct: Duct, reynolds: float) -> Loss:
    angle = math.degrees(fitting.elbow or 0.0)
    slow = float(d.mitred_elbow_reynolds_factor(max(reynolds, 1e4)))
    if duct.is_round:
        return Loss(float(d.mitred_elbow_loss(angle)) * slow, f"mitred elbow {angle:g} deg", MITRED)
    ratio = max(min(duct.sides) / max(duct.sides), FLATTEST_MITRED)
    loss = float(d.rectangular_mitred_elbow_loss(angle, ratio)) * slow
    return Loss(loss, f"mitred rectangular elbow {angle:g} deg", MITRED_RECTANGULAR)
