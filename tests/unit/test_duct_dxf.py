"""The drawing of the ducts, read back by the library that other programs' files are read with."""

import io
import math
from pathlib import Path

import ezdxf
import pytest

from hoodwright.reports.duct_dxf import LAYERS, layout_dxf
from hoodwright.tasks.picture import picture
from hoodwright.workplace import parse_workplace
from hoodwright.workplace.starters import starter_text

DEMO = parse_workplace(starter_text("demo"))


@pytest.fixture(scope="module")
def space():
    drawing = ezdxf.read(io.StringIO(layout_dxf(DEMO).decode("utf-8")))
    assert drawing.header["$INSUNITS"] == 6
    assert not drawing.audit().errors
    return drawing.modelspace()


def texts(space):
    return [text.dxf.text for text in space.query("TEXT")]


def test_every_duct_is_a_line_in_space_as_in_the_picture(space):
    found = [tuple(tuple(p) for p in line.points()) for line in space.query('POLYLINE[layer=="DUCTS"]')]
    wanted = [shape.points for shape in picture(DEMO).ducts]
    assert len(found) == len(DEMO.ducts)
    for one, other in zip(found, wanted, strict=True):
        assert [c for p in one for c in p] == pytest.approx([c for p in other for c in p], abs=1e-9)


def test_every_duct_has_its_name_size_and_length(space):
    for duct in DEMO.ducts:
        size = f"round {1000 * duct.sides[0]:.4g}"
        assert f"{duct.name}: {size}, {duct.length:.4g} m" in texts(space)


def test_hoods_cleaners_fans_and_junctions_are_named(space):
    names = [part.name for parts in (DEMO.hoods, DEMO.cleaners, DEMO.fans) for part in parts]
    names += [duct.to for duct in DEMO.ducts if duct.to != "outside"]
    assert set(names) <= set(texts(space))


def test_level_ducts_have_their_true_width_in_plan(space):
    outlines = [line.get_points("xy") for line in space.query('LWPOLYLINE[layer=="DUCT-WIDTH"]')]
    widths = {round(math.dist(outline[1], outline[2]), 6) for outline in outlines}
    assert widths <= {round(duct.sides[0], 6) for duct in DEMO.ducts}
    assert len(widths) > 1


def test_rim_of_a_round_hood_is_as_wide_as_its_opening(space):
    hood = next(h for h in picture(DEMO).hoods if h.is_round)
    rims = [list(line.points()) for line in space.query('POLYLINE[layer=="HOODS"]')]
    reach = [max(math.dist(p, hood.at) for p in rim) for rim in rims if len(rim) == 24]
    assert min(abs(r - hood.half_width) for r in reach) < 1e-9


def test_it_says_that_routes_are_plain(space):
    assert any("Routes are not in the workplace file" in text for text in texts(space))


def test_all_stands_on_layers_of_its_own(space):
    assert {entity.dxf.layer for entity in space} <= set(LAYERS)


def test_the_same_workplace_gives_the_same_bytes():
    assert layout_dxf(DEMO) == layout_dxf(DEMO)


def test_odd_names_do_not_become_codes():
    shop = (Path(__file__).parents[1] / "two-hoods.yaml").read_text(encoding="utf-8")
    odd = shop.replace("{name: A1,", "{name: '100 %%c \\P é',")
    found = ezdxf.read(io.StringIO(layout_dxf(parse_workplace(odd)).decode("utf-8"))).modelspace()
    assert any(text.startswith("100 % %c /P é: round 100") for text in texts(found))
