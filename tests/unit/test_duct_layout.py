"""The drawing of the ducts: a tidy tree in which nothing crosses, whatever its size."""

import itertools

import pytest

from curved_demo import UNCURVED, demo
from duct_shops import shop
from hoodwright.tasks.as_built.layout import HOODS, MOST_ROWS, THINNEST, bands, layout_of
from hoodwright.tasks.as_built.live import Tried, intended_of, live_of
from hoodwright.tasks.as_built.paths import hood_before, path_of
from hoodwright.tasks.as_built.words import sentence
from hoodwright.workplace import Document

SHOPS = {"demo": demo(), "8 hoods": shop(8, 3), "30 hoods": shop(30, 5), "one main": shop(20, 20)}
SAMPLES = 12


@pytest.fixture(scope="module", params=SHOPS, ids=list(SHOPS))
def workplace(request):
    return Document(SHOPS[request.param]).workplace()


@pytest.fixture(scope="module")
def demo_workplace():
    return Document(demo()).workplace()


def course(line):
    """Points along a duct as it is drawn: level, then an S from one row to the other."""
    points = [(line.x0, line.y0), (line.level_until, line.y0)]
    for i in range(1, SAMPLES + 1):
        t = i / SAMPLES
        rise = 3 * t**2 - 2 * t**3
        points.append((line.level_until + t * line.bend, line.y0 + rise * (line.y1 - line.y0)))
    return points


def cross(a, b, c, d):
    """Whether two stretches cross at an inner point of both."""

    def side(p, q, r):
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return side(a, b, c) * side(a, b, d) < -1e-6 and side(c, d, a) * side(c, d, b) < -1e-6


def test_no_duct_crosses_another(workplace):
    lines = layout_of(workplace).lines
    for one, other in itertools.combinations(lines, 2):
        for a, b in itertools.pairwise(course(one)):
            for c, d in itertools.pairwise(course(other)):
                assert not cross(a, b, c, d), f"{one.name} crosses {other.name}"


def test_every_duct_and_node_has_its_place_once(workplace):
    layout = layout_of(workplace)
    assert sorted(line.name for line in layout.lines) == sorted(duct.name for duct in workplace.ducts)
    assert len({spot.key for spot in layout.spots}) == len(layout.spots)
    places = [(spot.x, spot.y) for spot in layout.spots]
    assert len(set(places)) == len(places)


def test_hoods_stand_at_the_left_and_air_goes_right(workplace):
    layout = layout_of(workplace)
    assert {spot.x for spot in layout.spots if spot.kind == "hood"} == {HOODS}
    assert all(line.x1 > line.x0 and line.level_until >= line.x0 for line in layout.lines)
    last = max(spot.x for spot in layout.spots)
    assert all(spot.x == last for spot in layout.spots if spot.kind == "outside")
    assert all(0 < spot.x < layout.width and 0 < spot.y < layout.height for spot in layout.spots)


def test_rows_keep_their_distance(workplace):
    layout = layout_of(workplace)
    rows = sorted({spot.y for spot in layout.spots if spot.kind == "hood"})
    assert all(b - a >= layout.row - 1e-9 for a, b in itertools.pairwise(rows))


def test_bands_that_meet_lie_side_by_side(demo_workplace):
    layout = layout_of(demo_workplace)
    flows = {line.name: 1.0 for line in layout.lines} | {"A2": 2.0, "A3": 3.0, "main": 4.0}
    found = bands(layout, flows)
    assert found["A2"].width == pytest.approx(2 * found["A1"].width)
    a1, b1 = found["A1"], found["B1"]
    assert b1.aside - a1.aside == pytest.approx((a1.width + b1.width) / 2)
    assert (a1.aside - a1.width / 2) == pytest.approx(-(b1.aside + b1.width / 2))


def test_a_duct_without_flow_is_still_seen(demo_workplace):
    layout = layout_of(demo_workplace)
    assert {band.width for band in bands(layout, {}).values()} == {THINNEST}
    backwards = bands(layout, {line.name: -1.0 for line in layout.lines})
    assert min(band.width for band in backwards.values()) > THINNEST


def test_a_great_plant_is_folded_and_opens_where_it_is_asked():
    workplace = Document(shop(120, 30)).workplace()
    layout = layout_of(workplace)
    assert sum(1 for spot in layout.spots if spot.kind in ("hood", "folded")) <= MOST_ROWS
    folded = next(spot for spot in layout.spots if spot.kind == "folded")
    inside = layout_of(workplace, folded.key)
    assert [spot.name for spot in inside.spots if spot.kind == "onward"]
    hidden = {name for spot in inside.spots if spot.kind == "folded" for name in spot.hoods}
    assert {spot.name for spot in inside.spots if spot.kind == "hood"} | hidden == set(folded.hoods)


def test_the_way_of_the_air_ends_outside(demo_workplace):
    live = intended_of(demo_workplace)
    way = path_of(demo_workplace, live, "bench nozzle")
    assert [stretch.name for stretch in way] == ["A1", "A2", "A3", "main", "link", "stack"]
    assert way[0].begins == pytest.approx(
        sum(d.length for d in demo_workplace.ducts if d.name in {s.name for s in way})
    )
    assert way[-1].ends == pytest.approx(0.0)
    assert all(a.ends == pytest.approx(b.begins) for a, b in itertools.pairwise(way))


@pytest.mark.parametrize(
    "part, hood",
    [("D1", "buff hood"), ("J1", "glue cabinet"), ("J3", "crucible canopy"), ("outside L2", "lacquer booth")],
)
def test_a_part_belongs_to_the_way_of_the_hood_that_draws_most(demo_workplace, part, hood):
    assert hood_before(demo_workplace, part) == hood


def test_a_gate_that_is_shut_lets_next_to_nothing_through(demo_workplace):
    intended = intended_of(demo_workplace)
    live = live_of(demo_workplace, Tried(closed=frozenset({"buff hood"})), intended)
    assert live.hoods["buff hood"].flow < 0.01 * live.hoods["buff hood"].intended
    assert live.ducts["D1"].troubles == ("shut",)
    free = live_of(demo_workplace, Tried(), intended)
    assert all(live.hoods[name].flow > free.hoods[name].flow for name in ("bench nozzle", "crucible canopy"))


def test_the_sentence_names_the_worst_hood_first(demo_workplace):
    live = live_of(demo_workplace, Tried(dampers={"C1": 30.0, "A1": 30.0}), intended_of(demo_workplace))
    text = sentence(live, Tried(), "SI")
    worst = min(live.hoods.values(), key=lambda hood: hood.share)
    assert text.startswith(f"With dirty filters, the {worst.name} gets")


def test_without_curves_only_what_was_intended_is_told():
    workplace = Document(demo(UNCURVED)).workplace()
    live = live_of(workplace, Tried(), intended_of(workplace))
    assert not live.built
    assert live.hoods["bench nozzle"].flow == pytest.approx(320 / 3600)
    assert "cannot be told" in sentence(live, Tried(), "SI")
