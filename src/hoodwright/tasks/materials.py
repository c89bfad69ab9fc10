"""What a workplace's ductwork is built from: ducts by size and make, their fittings, cleaners and fans."""

import math
from collections import Counter, defaultdict

from hoodwright.ducts import oval_perimeter
from hoodwright.tasks.assessment import Material
from hoodwright.workplace.model import Duct, Fitting, Workplace

Key = tuple[str, float | None, str]


def materials_of(workplace: Workplace) -> tuple[Material, ...]:
    """One line for everything that is alike. Lengths are those of straight duct, as the file gives them."""
    counts: Counter[Key] = Counter()
    lengths: dict[Key, float] = defaultdict(float)
    sheets: dict[Key, float] = defaultdict(float)
    for duct in workplace.ducts:
        key = (f"duct, {shape_words(duct)}", _round_size(duct), duct.material)
        counts[key] += 1
        lengths[key] += duct.length
        sheets[key] += duct.length * around(duct)
        counts.update(_fittings(duct))
    for part, what in ((workplace.cleaners, "air cleaner"), (workplace.fans, "fan")):
        counts.update((what, None, one.name) for one in part)
    return tuple(
        Material(*key, count, lengths.get(key), sheets.get(key) if key[2] != "flexible" else None)
        for key, count in sorted(counts.items(), key=lambda item: (item[0][0], item[0][1] or 0.0, item[0][2]))
    )


def _fittings(duct: Duct):
    for fitting in duct.fittings:
        if fitting.loss is None:
            yield (fitting_words(fitting), _round_size(duct), _made_for(duct))
    if duct.joins_at is not None:
        yield (f"branch entry {math.degrees(duct.joins_at):.4g} deg", _round_size(duct), _made_for(duct))
    if duct.taper is not None:
        yield (f"cone {math.degrees(duct.taper):.4g} deg", _round_size(duct), _made_for(duct))


def fitting_words(fitting: Fitting) -> str:
    if fitting.damper is not None or fitting.damper_loss is not None:
        return "damper with lock"
    if fitting.weather_cap is not None:
        return "weather cap"
    angle = f"elbow {math.degrees(fitting.elbow or 0.0):.4g} deg"
    if fitting.mitred:
        return f"{angle}, mitred"
    made = f"{fitting.pieces} pieces" if fitting.pieces else "smooth"
    return f"{angle}, {made}, radius {fitting.radius:g}"


def shape_words(duct: Duct) -> str:
    sides = "{:.4g} x {:.4g} mm".format(*(side * 1000 for side in duct.sides))
    return "round" if duct.is_round else f"oval {sides}" if duct.oval else sides


def _made_for(duct: Duct) -> str:
    return duct.material if duct.is_round else f"{duct.material}, {shape_words(duct)}"


def _round_size(duct: Duct) -> float | None:
    return duct.sides[0] if duct.is_round else None


def around(duct: Duct) -> float:
    width, height = duct.sides
    if duct.oval is not None:
        return float(oval_perimeter(width, height))
    return math.pi * width if duct.is_round else 2 * (width + height)
