"""Three places for one hood: same source, same flow, each a sound workplace, and words that say what was found."""

import math
from pathlib import Path

import numpy as np
import pytest

from hoodwright.errors import InputError
from hoodwright.jobs import Progress
from hoodwright.tasks.arrangements.air import told_of
from hoodwright.tasks.arrangements.arrange import KEYS, arrangement, arrangements_of, distance_in_file, left_out
from hoodwright.tasks.arrangements.view import stance_of
from hoodwright.tasks.arrangements.words import Told, computed_words, where_it_goes
from hoodwright.tasks.assess import design_flow
from hoodwright.tasks.hood_shapes import body_of
from hoodwright.workplace import parse_workplace, read_workplace
from hoodwright.workplace.model import EnclosingHood
from hoodwright.workplace.starters import starter_text

ROOT = Path(__file__).parents[2]
DEMO = parse_workplace(starter_text("demo"))
FILES = [*sorted((ROOT / "examples").glob("*.yaml")), *sorted((ROOT / "tests" / "observed").glob("*.yaml"))]
SAME_FLOW = 1e-8  # relative: a flow is written to 1e-9
MICRON = 1e-6


def demo(hood: str = "bench nozzle", source: str = "solder joint", distance: float | None = None, system: str = "SI"):
    return dict(zip(KEYS, arrangements_of(DEMO, hood, source, distance, system), strict=True))


def pairs(workplace):
    return [(hood, name) for hood in workplace.hoods for name in hood.serves]


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_every_hood_of_every_example_has_three_sound_workplaces(path: Path):
    workplace = read_workplace(path)
    for hood, source in pairs(workplace):
        flow = design_flow(hood, workplace)
        for one in arrangements_of(workplace, hood.name, source):
            again = parse_workplace(one.text)
            assert again == one.workplace
            assert [h.name for h in again.hoods] == [one.hood] and [s.name for s in again.sources] == [source]
            assert again.hoods[0].intended_flow == pytest.approx(flow, rel=SAME_FLOW)
            assert one.flow == flow


@pytest.mark.parametrize(("hood", "source"), [(hood.name, source) for hood, source in pairs(DEMO)])
def test_the_source_its_air_and_its_draught_stay_as_they_are(hood, source):
    for one in arrangements_of(DEMO, hood, source):
        assert one.workplace.source(source).points == DEMO.source(source).points
        assert one.workplace.source(source).dispersion == DEMO.source(source).dispersion
        assert one.workplace.room == DEMO.room and one.workplace.air == DEMO.air
        assert one.workplace.people == ()


def test_beside_stands_upright_where_the_hood_is_now():
    one = demo()["beside"]
    hood, now = one.workplace.hoods[0], DEMO.hoods[0]
    assert hood.at == pytest.approx(now.at, abs=MICRON)
    assert hood.facing == pytest.approx(now.facing)
    assert (hood.opening, hood.flange) == (now.opening, now.flange)


def test_above_looks_down_from_the_same_distance():
    hood = demo()["above"].workplace.hoods[0]
    assert hood.at == pytest.approx((2.0, 1.8, 1.06 + 0.1), abs=MICRON)
    assert hood.facing == (0, 0, -1)


def test_a_distance_moves_both_hoods_and_leaves_the_box():
    near, far = demo(), demo(distance=0.25)
    source = DEMO.source("solder joint").centre
    for key in ("beside", "above"):
        assert math.dist(far[key].workplace.hoods[0].at, source) == pytest.approx(0.25, abs=MICRON)
        assert far[key].distance == 0.25
    assert far["enclosed"].workplace.hoods == near["enclosed"].workplace.hoods
    assert far["enclosed"].distance is None


def test_the_box_stands_on_the_bench_holds_the_source_and_opens_away_from_the_hood():
    hood = demo()["enclosed"].workplace.hoods[0]
    panels, duct_at = body_of(hood)
    corners = [point for panel in panels for point in panel]
    low, high = ([pick(c[i] for c in corners) for i in range(3)] for pick in (min, max))
    assert low[2] == pytest.approx(0.9, abs=MICRON)  # the bench top of the file
    assert all(a < x < b for a, x, b in zip(low, DEMO.source("solder joint").centre, high, strict=True))
    assert hood.facing == pytest.approx((0, -1, 0))
    assert duct_at[2] == pytest.approx(high[2]) and duct_at[1] > DEMO.source("solder joint").centre[1]


def test_an_enclosure_of_the_file_stays_as_it_is():
    one = demo("lacquer booth", "spray gun")["enclosed"]
    hood, now = one.workplace.hoods[0], next(h for h in DEMO.hoods if h.name == "lacquer booth")
    assert isinstance(hood, EnclosingHood)
    assert (hood.at, hood.facing, hood.box, hood.form) == (now.at, now.facing, now.box, now.form)


def test_a_hood_that_does_not_capture_is_compared_at_150_mm_from_the_edge_of_the_work():
    assert distance_in_file(DEMO, "crucible canopy", "crucible") == 0.15
    beside, above = (demo("crucible canopy", "crucible")[key].workplace.hoods[0] for key in ("beside", "above"))
    x, y, z = DEMO.source("crucible").centre
    assert math.hypot(beside.at[0] - x, beside.at[1] - y) == pytest.approx(0.35 / 2 + 0.15, abs=MICRON)
    assert above.at == pytest.approx((x, y, z + 0.15), abs=MICRON)
    # 3000 m3/h at 5 m/s fill 0.1667 m2: a circle of 461 mm, to 10 mm
    assert beside.opening.round == above.opening.round == pytest.approx(0.46)


def test_a_hood_with_the_draught_square_to_it_where_the_file_has_none_beside():
    beside = demo("crucible canopy", "crucible")["beside"].workplace.hoods[0]
    assert beside.facing[0] == pytest.approx(0) and beside.facing[2] == 0


def test_only_benches_are_kept_not_the_walls_of_a_box():
    workplace = read_workplace(ROOT / "tests" / "observed" / "boxed.yaml")
    for one in arrangements_of(workplace, "pipe end", "fog stream"):
        assert [surface.name for surface in one.workplace.surfaces] == ["box floor"]
    assert left_out(workplace, "pipe end", "fog stream") == "Left out of all three: 5 surfaces."


def test_what_is_left_out_is_counted():
    told = left_out(DEMO, "bench nozzle", "solder joint")
    assert told == "Left out of all three: 2 people, 4 other hoods, 4 other sources."
    above = read_workplace(ROOT / "tests" / "observed" / "above.yaml")
    assert left_out(above, "pipe end", "fog stream") == ""


def at_the_wall(y: str):
    """The demo with the solder joint near the wall at y = 7 m, and its hood turned there."""
    text = starter_text("demo").replace("at: [2.0 m, 1.80 m, 1.06 m]", f"at: [2.0 m, {y}, 1.06 m]")
    return parse_workplace(text)


def test_a_hood_near_a_wall_turns_to_where_there_is_space():
    beside, above, enclosed = arrangements_of(at_the_wall("6.85 m"), "bench nozzle", "solder joint", 0.3)
    assert beside.workplace.hoods[0].at[1] <= 7 and above.workplace.hoods[0].at[1] == pytest.approx(6.85)
    panels, _ = body_of(enclosed.workplace.hoods[0])
    assert all(point[1] <= 7 + MICRON for panel in panels for point in panel)


def test_a_source_in_a_corner_that_holds_no_box_is_refused():
    with pytest.raises(InputError, match="there is no space round the solder joint for a hood"):
        arrangements_of(at_the_wall("6.95 m"), "bench nozzle", "solder joint", 0.1)


def test_words_say_what_each_does_and_what_the_handbook_says():
    three = demo()
    assert three["beside"].words == (
        "The opening stands upright, 100\u2009mm beside the solder joint, and draws the air sideways."
    )
    assert three["above"].words.startswith("The opening looks down from 100\u2009mm above the solder joint")
    assert "open in front over 500\u2009mm by 250\u2009mm" in three["enclosed"].words
    assert three["beside"].handbook.startswith("By the handbook the air at the solder joint moves at ")
    # 320 m3/h through 0.5 x 0.25 m: 0.0889 / 0.125 = 0.711 m/s
    assert "goes in through its opening at 0.711\u2009m/s" in three["enclosed"].handbook


def test_words_speak_in_the_units_that_are_shown():
    three = demo(system="US")
    assert "3.94\u2009in beside" in three["beside"].words and "fpm" in three["beside"].handbook


def test_the_sentence_tells_only_what_was_found():
    three = arrangements_of(DEMO, "bench nozzle", "solder joint")
    told = {
        "beside": Told(True, "85 %", "75 % to 95 %", "captured"),
        "above": Told(False, "cannot tell", "-", "cannot tell, because a person stands in between"),
    }
    assert where_it_goes(three, told, "SI") == (
        "With 320\u2009m³/h in each: 100\u2009mm beside it, about 85 % (75 % to 95 %) of the flux fume is caught; "
        "100\u2009mm above it, cannot tell, because a person stands in between; "
        "around it, the air goes in through the opening at 0.711\u2009m/s."
    )
    assert "100\u2009mm beside it, not computed yet;" in where_it_goes(three, {}, "SI")


def test_a_share_at_the_end_of_what_may_be_shown():
    three = arrangements_of(DEMO, "bench nozzle", "solder joint")
    told = {
        "beside": Told(True, "> 95 %", "> 95 %", "captured"),
        "above": Told(True, "< 5 %", "< 5 % to 10 %", "captured"),
    }
    said = where_it_goes(three, told, "SI")
    assert "beside it, more than 95 % of the flux fume is caught;" in said
    assert "above it, less than 5 % (< 5 % to 10 %) of the flux fume is caught;" in said


def test_a_box_never_gets_a_per_cent():
    three = arrangements_of(DEMO, "bench nozzle", "solder joint")
    told = Told(True, "> 95 %", "> 95 %", "captured", 0.7, "it would spill first at the main opening")
    assert "95" not in where_it_goes(three, {"enclosed": told}, "SI")
    assert computed_words(three[2], told, "SI") == (
        "The computed air goes in through the opening at 0.7\u2009m/s; it would spill first at the main opening."
    )


def test_what_the_computed_air_says_of_each():
    beside, *_ = arrangements_of(DEMO, "bench nozzle", "solder joint")
    told = Told(True, "85 %", "75 % to 95 %", "captured")
    assert computed_words(beside, told, "SI") == (
        "The computed air: about 85 % (75 % to 95 %) of the flux fume is caught."
    )
    far = Told(True, "85 %", "75 % to 95 %", "captured", farthest="60 % (40 % to 75 %)")
    assert computed_words(beside, far, "SI").endswith(
        "is caught; of what leaves its farthest place 60 % (40 % to 75 %)."
    )
    cannot = Told(False, "cannot tell", "-", "cannot tell, because it is heavy")
    assert computed_words(beside, cannot, "SI") == "The computed air: cannot tell, because it is heavy."


def test_the_computed_air_of_all_three():
    three = arrangements_of(DEMO, "bench nozzle", "solder joint")
    found = told_of(Progress(), three)
    assert found["beside"].told and found["above"].told and not found["enclosed"].told
    # continuity: 0.0889 m3/s through 0.125 m2, whatever the draught
    assert found["enclosed"].inward == pytest.approx(320 / 3600 / 0.125, rel=1e-3)
    assert "main opening" in (found["enclosed"].spills or "")


def test_names_of_the_file_do_not_clash_with_ours():
    text = starter_text("demo").replace("solder joint", "hood above").replace("flux fume", "fan")
    for one in arrangements_of(parse_workplace(text), "bench nozzle", "hood above"):
        assert one.hood != "hood above" and one.source == "hood above"


@pytest.mark.parametrize(
    ("args", "told"),
    [
        (("no hood", "solder joint"), "no hood is named 'no hood'; there is: bench nozzle, "),
        (("bench nozzle", "smoke"), "no source is named 'smoke'; there is: solder joint, "),
        (("bench nozzle", "solder joint", 0.0), "got a distance of 0 m; allowed: 10.mm to 3.m"),
        (("bench nozzle", "solder joint", math.nan), "got a distance of nan m"),
        (("bench nozzle", "solder joint", 2.9), "2.9 m above the solder joint is above the room's ceiling"),
    ],
)
def test_what_cannot_be_compared_is_refused(args, told):
    with pytest.raises(InputError, match=told):
        arrangements_of(DEMO, *args)


def seen(stance, point):
    """Where a point stands in the picture: to the right, and up, in halves of what is seen."""
    away = np.subtract(point, stance.middle) / stance.size
    back = np.array(stance.looked_from)
    right = np.cross((0, 0, 1), back) / np.hypot(*back[:2])
    return float(away @ right), float(away @ np.cross(back, right))


@pytest.mark.parametrize(("hood", "source"), [(hood.name, source) for hood, source in pairs(DEMO)])
def test_one_stance_shows_all_three_whole(hood, source):
    three = arrangements_of(DEMO, hood, source)
    stance = stance_of(three)
    assert math.hypot(*stance.looked_from) == pytest.approx(1)
    for one in three:
        corners = [p for panel in body_of(one.workplace.hoods[0])[0] for p in panel]
        for point in (one.workplace.hoods[0].at, *one.workplace.source(source).points, *corners):
            assert max(map(abs, seen(stance, point))) <= 1


def test_the_eye_stands_upwind_and_the_hood_to_one_side_of_the_source():
    three = arrangements_of(DEMO, "bench nozzle", "solder joint", 0.3)
    stance = stance_of(three)
    assert stance.looked_from[0] < 0  # the draught of the demo blows along +x
    hood, source = (seen(stance, p)[0] for p in (three[0].workplace.hoods[0].at, three[0].workplace.sources[0].at))
    assert hood < source and stance.free_side == 1


def test_one_by_its_key():
    three = demo()
    for key in KEYS:
        assert arrangement(DEMO, "bench nozzle", "solder joint", key).text == three[key].text
    with pytest.raises(InputError, match="no arrangement is named 'under'; there is: beside, above, enclosed"):
        arrangement(DEMO, "bench nozzle", "solder joint", "under")
