"""The jets of supply terminals where a source stands."""

import re

import pytest

from hoodwright.flow import Draught, free_jet_velocity
from hoodwright.tasks.air.live import LiveAir
from hoodwright.tasks.air.supply_jets import supply_notes, with_supply_jets
from hoodwright.tasks.capture.job import capture_of
from hoodwright.workplace import parse_workplace

SHOP = """\
hoodwright: 1
name: Test shop
room: {{size: [6 m, 5 m, 3 m], openings: [
  {{name: door, wall: south, at: [5 m, 1 m], size: [1 m, 2 m], kind: door}},
  {{name: old grille, wall: north, at: [1.5 m, 1.1 m], size: [200 mm, 200 mm], kind: extract, flow: 360 m3/h}},
  {more}]}}
contaminants: [{{name: fume, kind: fume}}]
sources: [{{name: joint, contaminant: fume, at: [1.5 m, 1.3 m, 1.1 m], dispersion: gentle}}]
hoods:
  - {{name: nozzle, type: capturing, serves: [joint], opening: {{round: 100 mm}},
     at: [1.5 m, 1.4 m, 1.1 m], facing: [0, -1, 0], intended_flow: 300 m3/h}}
"""
AT = (1.5, 1.3, 1.1)
STILL = Draught((0.1, 0.0, 0.0), turbulence=0.04)


def shop(*terminals):
    lines = "{name: %s, wall: %s, at: [%s], size: [200 mm, 200 mm], kind: supply, flow: 360 m3/h}"
    return parse_workplace(SHOP.format(more=", ".join(lines % one for one in terminals)))


WEST = ("terminal", "west", "1.3 m, 1.1 m")
EAST = ("east terminal", "east", "1.3 m, 1.1 m")
CEILING = ("high terminal", "ceiling", "1.5 m, 1.3 m")


def test_a_terminal_that_points_at_the_source_is_a_draught():
    blown = with_supply_jets(STILL, shop(WEST), AT)
    speed = float(free_jet_velocity(1.5, 0.04, 2.5))  # 0.1 m3/s through 0.04 m2
    assert blown.mean == pytest.approx((0.1 + speed, 0, 0))
    assert blown.turbulence == pytest.approx((0.04**2 + (0.27 * speed) ** 2) ** 0.5)
    assert blown.eddy == STILL.eddy


def test_each_wall_blows_into_the_room_and_several_add_up():
    assert with_supply_jets(STILL, shop(EAST), AT).mean[0] == pytest.approx(0.1 - free_jet_velocity(4.5, 0.04, 2.5))
    assert with_supply_jets(STILL, shop(CEILING), AT).mean[2] == pytest.approx(-free_jet_velocity(1.9, 0.04, 2.5))
    alone = [with_supply_jets(STILL, shop(one), AT).mean for one in (WEST, CEILING)]
    both = with_supply_jets(STILL, shop(WEST, CEILING), AT).mean
    assert both == pytest.approx([a + b - c for a, b, c in zip(*alone, STILL.mean, strict=True)])


def test_doors_extracts_and_jets_that_pass_by_change_nothing():
    aside = ("terminal", "west", "4 m, 1.1 m")
    assert with_supply_jets(STILL, shop(), AT) is STILL
    assert with_supply_jets(STILL, shop(aside), AT) is STILL
    assert supply_notes(shop(aside), AT, "joint") == ()


def test_the_note_says_what_blows_where():
    (note,) = supply_notes(shop(CEILING), AT, "joint")
    told = r"The high terminal blows at the joint with 1\.91.m/s, as a straight jet: this is part of the draught\."
    assert re.fullmatch(told, note)


def test_the_captured_share_falls_where_a_terminal_blows_across():
    """The same air for the job, its notes and the live answer, which keeps its draught when the slider is moved."""
    still, blown = shop(), shop(WEST)
    shares = [capture_of(one, "joint", "nozzle").answers[0] for one in (still, blown)]
    assert shares[0].captured > 0.9 and shares[1].captured < 0.2
    assert any("west" not in note and "terminal blows" in note for note in shares[1].notes)
    live = LiveAir(blown, "nozzle", "joint")
    given = live.air(draught=(0.0, 0.1, 0.0)).draught.mean
    assert given == pytest.approx((free_jet_velocity(1.5, 0.04, 2.5), 0.1, 0))
    assert live.air(source_at=(1.5, 1.0, 1.1)).draught.mean[0] < 0.1 * given[0]
