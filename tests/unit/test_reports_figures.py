"""Figures of the report: whole SVGs with a title and a text twin, to scale, and the same text every time."""

import dataclasses
import re
from xml.etree import ElementTree

import pytest
from test_reports_pdf import HOOD, NEED, WITH_DUCTS

from hoodwright.errors import InputError
from hoodwright.reports import close_up_svg, flow_svg, pressure_svg, scene_svg
from hoodwright.reports.pressure_figure import runs
from hoodwright.reports.pretty import pretty
from hoodwright.reports.svg import number, round_below, ticks
from hoodwright.tasks.picture import (
    BoxShape,
    DuctShape,
    HoodShape,
    PersonShape,
    Picture,
    PlateShape,
    RoomShape,
    SourceShape,
)

SVG = "{http://www.w3.org/2000/svg}"
NOZZLE = HoodShape("nozzle", (2, 1.9, 1), (0, -1, 0), (1, 0, 0), (0, 0, 1), 0.05, 0.05, True, 0.1, ("joint",))
PICTURE = Picture(
    room=RoomShape((4, 5, 3), None),
    plates=(PlateShape("bench", ((1, 1, 0.9), (2, 1, 0.9), (2, 2, 0.9), (1, 2, 0.9))),),
    people=(PersonShape("worker", (2, 1, 0), (0, 1, 0), 1.5),),
    sources=(SourceShape("joint", (2, 1.8, 1)),),
    hoods=(NOZZLE,),
    ducts=(DuctShape("branch", ((2, 1.9, 1), (2, 2.2, 1), (2, 2.2, 2.6)), 0.1),),
    boxes=(BoxShape("roof fan", "fan", (3, 4, 2.6), 0.45),),
)
BARE = Picture(RoomShape((4, 5, 3), None), (), (), (), (), (), ())


def read(svg):
    root = ElementTree.fromstring(svg)
    assert root.tag == f"{SVG}svg" and root.get("role") == "img"
    return root


def words(svg):
    return [element.text for element in read(svg).iter(f"{SVG}text")]


def test_scene_stands_alone_with_title_and_text_twin():
    root = read(scene_svg(PICTURE, "SI"))
    assert root.find(f"{SVG}title").text == "The scene"
    told = root.find(f"{SVG}desc").text
    assert "Hood nozzle is 100\u2009mm from joint." in told
    assert "bench" in told and "worker" in told and "Fan: roof fan." in told


def test_scene_names_what_it_shows_and_the_distance():
    shown = words(scene_svg(PICTURE, "SI"))
    for name in ("nozzle", "100\u2009mm from joint", "joint", "bench", "worker", "roof fan", "branch", "1 m"):
        assert name in shown
    assert "3.94\u2009in from joint" in words(scene_svg(PICTURE, "US"))


def test_scene_of_an_empty_room():
    assert words(scene_svg(BARE, "SI"))


def test_scene_of_a_very_large_room_keeps_few_grid_lines():
    hall = dataclasses.replace(BARE, room=RoomShape((900, 300, 10), None))
    assert len(list(read(scene_svg(hall, "SI")).iter(f"{SVG}line"))) < 200


def test_names_are_escaped():
    odd = dataclasses.replace(NOZZLE, name='</svg><script> & "x"')
    shown = scene_svg(dataclasses.replace(PICTURE, hoods=(odd,)), "SI")
    assert "<script" not in shown and '</svg><script> & "x"' in words(shown)


def test_no_outside_thing_is_asked_for():
    assert re.findall(r"https?://[^\"]+", scene_svg(PICTURE, "SI")) == ["http://www.w3.org/2000/svg"]


def test_same_scene_same_text():
    assert scene_svg(PICTURE, "SI") == scene_svg(PICTURE, "SI")


def test_numbers_have_a_fixed_form():
    assert [number(x) for x in (-0.001, 1.0, 2.345678, -3.5)] == ["0", "1", "2.35", "-3.5"]


@pytest.mark.parametrize("svg", [scene_svg(PICTURE, "SI"), close_up_svg(PICTURE, "nozzle", "US")])
def test_everything_lies_inside_the_picture(svg):
    root = read(svg)
    width, height = float(root.get("width")), float(root.get("height"))
    for element in root.iter(f"{SVG}line"):
        assert all(0 <= float(element.get(k)) <= width for k in ("x1", "x2"))
        assert all(0 <= float(element.get(k)) <= height for k in ("y1", "y2"))


def test_scene_is_to_scale():
    """A room twice as large in every direction has the same outline."""
    large = dataclasses.replace(BARE, room=RoomShape((8, 10, 6), None))
    floors = [next(read(scene_svg(p, "SI")).iter(f"{SVG}polygon")).get("points") for p in (BARE, large)]
    assert floors[0] == floors[1]


def test_close_up_gives_straight_distance_and_angle():
    aside = dataclasses.replace(PICTURE, sources=(SourceShape("joint", (2.1, 1.8, 1)),))
    assert "100\u2009mm" in words(close_up_svg(PICTURE, "nozzle", "SI"))
    assert any("141\u2009mm, 45" in w for w in words(close_up_svg(aside, "nozzle", "SI")))


@pytest.mark.parametrize("at", [(2, 1.9, 1), (2, 3.0, 1), (2, 1.9, 2.9), (0.1, 0.1, 0)])
def test_close_up_of_sources_anywhere(at):
    assert words(close_up_svg(dataclasses.replace(PICTURE, sources=(SourceShape("joint", at),)), "nozzle", "SI"))


def test_close_up_of_an_unknown_hood_is_refused():
    with pytest.raises(InputError, match="no hood is named 'other'; there is: nozzle; name one"):
        close_up_svg(PICTURE, "other", "SI")


def test_flow_figure_names_all_four_flows():
    shown = words(flow_svg(HOOD, "SI"))
    assert shown.count("not given") == 1
    assert {"required", "intended", "commissioned", "today"} <= set(shown)


def test_flow_figure_outside_the_range_shows_a_limit():
    far = dataclasses.replace(HOOD, needs=(dataclasses.replace(NEED, laws=()),))
    assert "≥ 226\u2009m³/h" in words(flow_svg(far, "SI"))


def test_pressure_figure_names_the_stations():
    shown = words(pressure_svg(WITH_DUCTS.ducts, {"branch": 3.0, "stack": 2.0}, "SI"))
    assert {"nozzle", "fan", "outside", "Pa", "−100", "0"} <= set(shown)


def test_two_discharges_are_two_runs():
    first, second = WITH_DUCTS.ducts
    alone = dataclasses.replace(first, name="alone", start_from="other hood", to="outside")
    assert [[d.name for d in run] for run in runs((first, alone, second))] == [["branch", "stack"], ["alone"]]


def test_ticks_are_round_and_inside():
    assert ticks(-830, 160, 6)[0] >= -830
    assert ticks(0, 10, 5) == [0, 2, 4, 6, 8, 10]
    assert [round_below(v) for v in (133, 0.07, 5, 9.99)] == [100, 0.05, 5, 5]


def test_recompute_lines_keep_their_digits():
    line = "-(1 + 0.93) x 45.449 = -87.717 Pa; 1 x pi x 0.05² / sqrt(2) m3/s, far-field X x Y"
    shown = pretty(line)
    assert shown == "−(1 + 0.93) × 45.449 = −87.717 Pa; 1 × π × 0.05² / √(2) m³/s, far-field X × Y"
