"""Stills of the smoke: tracks that end where they say, and a picture that tells the same in words."""

import math
from collections import Counter
from xml.etree import ElementTree

import numpy as np
import pytest

from capture_shop import CABINET, SHOP
from hoodwright.errors import InputError
from hoodwright.reports import smoke_svg
from hoodwright.tasks.air.smoke_still import PUFFS, still_of
from hoodwright.tasks.picture import picture
from hoodwright.workplace import parse_workplace

SVG = "{http://www.w3.org/2000/svg}"
NEAR, FAR = parse_workplace(SHOP), parse_workplace(SHOP.replace("[1.5 m, 1.3 m, 1.1 m]", "[1.5 m, 1.0 m, 1.1 m]"))


@pytest.fixture(scope="module")
def near():
    return still_of(NEAR, "nozzle", "joint")


@pytest.fixture(scope="module")
def blown():
    return still_of(FAR, "nozzle", "joint", flow=0.005, draught=(0.5, 0.0, 0.0))


def words(svg):
    return " ".join("".join(text.itertext()) for text in ElementTree.fromstring(svg).iter(f"{SVG}text"))


def test_tracks_begin_at_the_source_and_end_where_they_say(near, blown):
    mouth = np.array([1.5, 1.4, 1.1])
    for still in (near, blown):
        for track, end, taker in zip(still.tracks, still.ends, still.takers, strict=True):
            assert (end == "caught") is (taker == "nozzle")
            apart = math.dist(track[-1], mouth)
            assert apart < 0.06 if end == "caught" else end != "lost" or apart > still.plan.escape_radius
    assert np.allclose([track[0] for track in near.tracks], (1.5, 1.3, 1.1), atol=1e-6)


def test_a_near_source_is_caught_and_a_blown_one_is_lost(near, blown):
    assert Counter(near.ends)["caught"] > 0.9 * len(near.ends)
    assert Counter(blown.ends)["lost"] > 0.9 * len(blown.ends)
    assert blown.flow == 0.005 and blown.draught == (0.5, 0.0, 0.0)


def test_puffs_are_even_in_time_over_all_tracks(near):
    assert sum(map(len, near.puffs)) == pytest.approx(PUFFS, rel=0.05)


def test_same_seed_same_still(near):
    again, other = still_of(NEAR, "nozzle", "joint"), still_of(NEAR, "nozzle", "joint", seed=2)
    assert all(np.array_equal(a, b) for a, b in zip(near.tracks, again.tracks, strict=True))
    assert not all(np.array_equal(a, b) for a, b in zip(near.tracks, other.tracks, strict=True))


def test_lines_of_the_mean_air_go_into_the_opening(near):
    assert set(near.air) and all(rows for rows in near.air.values())
    for line in (line for rows in near.air.values() for line in rows):
        assert math.dist(line[-1], (1.5, 1.4, 1.1)) < 0.06


@pytest.mark.parametrize("names, told", [(("x", "joint"), "there is nozzle"), (("nozzle", "x"), "there is joint")])
def test_unknown_names_are_one_clear_error(names, told):
    with pytest.raises(InputError, match=told):
        still_of(NEAR, *names)


def test_picture_names_everything_and_the_banner(near):
    svg = smoke_svg(picture(NEAR), near, "SI")
    shown = words(svg)
    for part in ("nozzle", "joint", "bench", "100\u2009mm", "300\u2009m³/h", "draught 0.05\u2009m/s"):
        assert part in shown
    assert "Dark: what ends in the nozzle." in shown and "not validated for capture" in shown
    assert "%" not in shown
    assert svg == smoke_svg(picture(NEAR), near, "SI")


def test_picture_tells_what_is_lost_and_where_that_begins(blown):
    shown = words(smoke_svg(picture(FAR), blown, "SI", "above"))
    assert "Nothing ends in a hood. 512 particles" in shown or "Light: what does not." in shown
    assert "dotted: farther than 600\u2009mm counts as lost" in shown


def test_picture_in_us_units_and_from_above(near):
    shown = words(smoke_svg(picture(NEAR), near, "US", "above"))
    assert "3.94\u2009in" in shown and "177\u2009cfm" in shown
    with pytest.raises(InputError, match="allowed: side, above"):
        smoke_svg(picture(NEAR), near, "SI", "below")


def test_an_enclosure_is_drawn_without_telling_what_is_caught():
    workplace = parse_workplace(CABINET)
    still = still_of(workplace, "box", "joint")
    assert not still.told
    shown = words(smoke_svg(picture(workplace), still, "SI"))
    assert "what is caught cannot be told" in shown and "Dark" not in shown and "Light" not in shown
