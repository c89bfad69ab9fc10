"""What may be claimed, why the handbook differs, and where an enclosure would spill."""

import pytest

from capture_shop import CABINET, FEW, shop
from hoodwright.results import Outcome, Verdict
from hoodwright.tasks.air.solved import flows_of, solved_air
from hoodwright.tasks.capture.claims import claim_of
from hoodwright.tasks.capture.job import capture_of
from hoodwright.tasks.capture.openings import OpeningInward, spills_first
from hoodwright.tasks.capture.reasons import AtSource, at_source, difference

MEETS, SHORT = Outcome(Verdict.MEETS, "x"), Outcome(Verdict.SHORT, "x")
HATCH = ("at: [1.5 m, 1.1 m, 1.2 m], facing", "other_openings: [{name: hatch, rectangle: [200 mm, 100 mm]%s}], "
         "at: [1.5 m, 1.1 m, 1.2 m], facing")  # fmt: skip


@pytest.mark.parametrize(
    "old, new, words",
    [
        ("kind: fume}", "kind: vapour, relative_density: 1.5}", "1.5 times as heavy"),
        ("gentle", "thrown", "do not follow the air"),
        ("gentle", "driven", "give its 'release'"),
        ("surfaces:", "people: [{name: Ann, at: [1.5 m, 1.35 m]}]\nsurfaces:", "Ann stands between"),
        ("speed: 0.05 m/s", "speed: 0.3 m/s, wander: 0.25 m/s", "0.5\u2009m/s on, by common practice, wakes"),
    ],
)
def test_what_cannot_be_claimed(old, new, words):
    workplace = shop((old, new))
    assert words in claim_of(workplace.hoods[0], workplace.sources[0], workplace)


def test_a_draught_as_fast_as_the_face_cannot_be_claimed():
    workplace = shop(("speed: 0.05 m/s", "speed: 0.4 m/s"))
    hood, source = workplace.hoods[0], workplace.sources[0]
    assert claim_of(hood, source, workplace) is None
    assert "what its rim does" in claim_of(hood, source, workplace, flow=0.003)  # 0.38 m/s through 100 mm
    assert claim_of(hood, source, workplace, flow=0.0033) is None  # 0.42 m/s


def there(**changes):
    told = {"drawn": 0.3, "draught": 0.1, "stream": 0.0, "expected": 0.32, "asked": 0.5, "between": None}
    return AtSource(**(told | changes), system="SI")


@pytest.mark.parametrize(
    "changes, words",
    [
        ({"between": "baffle"}, "the baffle stands between"),
        ({"drawn": 0.1}, "moves 0.1\u2009m/s at the source, where the equations"),
        ({"stream": 0.6}, "blows at 0.6\u2009m/s"),
        ({"draught": 0.2}, "draughts reach 0.2\u2009m/s"),
        ({}, "within the interval decides"),
    ],
)
def test_the_reason_is_what_the_air_does_there(changes, words):
    assert words in difference(0.2, 0.4, MEETS, False, there(**changes))


def test_why_the_handbook_differs():
    assert "stream brings more" in difference(0.2, 0.4, MEETS, True)
    assert "margin" in difference(0.95, 1.0, SHORT, False)
    assert "0.5\u2009m/s are asked" in difference(0.95, 1.0, SHORT, False, there())
    assert "reaches over both" in difference(0.3, 0.97, MEETS, False, there())
    assert difference(0.95, 1.0, MEETS, False) is None and difference(0.2, 0.5, SHORT, False) is None


def test_the_air_at_the_source_is_that_of_the_hood():
    workplace = shop()
    hood, source = workplace.hoods[0], workplace.sources[0]
    air = solved_air(hood, workplace, source.points, flows_of(workplace))
    found = at_source(hood, source, workplace, air, None)
    assert 0.3 < found.drawn < 1.5  # a sink of 300 m3/h draws 0.66 m/s at 100 mm
    assert found.draught == 0.05 and found.between is None
    shelf = (
        "surfaces: [",
        "surfaces: [{name: shelf, corner: [1.4 m, 1.35 m, 1 m], sides: [[0.2 m, 0, 0], [0, 0, 0.2 m]]},",
    )
    workplace = shop(shelf)
    air = solved_air(hood, workplace, source.points, flows_of(workplace))
    assert at_source(hood, source, workplace, air, None).between == "shelf"


def test_an_enclosure_gets_no_per_cent_but_the_velocity_of_its_openings():
    answer = capture_of(shop(of=CABINET), plan=FEW).answers[0]
    assert answer.shown == "cannot tell" and 0 <= answer.captured <= 1
    main = answer.openings[0]
    assert main.velocity == pytest.approx(600 / 3600 / 0.18) and main.computed == pytest.approx(main.velocity, rel=1e-3)
    assert main.draught == 0.05 and main.margin == pytest.approx(main.velocity - 0.05, abs=2e-3)
    assert answer.spills.startswith("it would spill first at the main opening")


def test_an_opening_without_a_place_is_judged_by_area_alone():
    openings = capture_of(shop((HATCH[0], HATCH[1] % ""), of=CABINET), plan=FEW).answers[0].openings
    assert [one.name for one in openings] == ["main opening", "hatch"]
    assert all(one.computed is None and one.velocity == pytest.approx(600 / 3600 / 0.2) for one in openings)


def test_a_stream_at_an_opening_is_told():
    stream = (
        "dispersion: gentle",
        "dispersion: driven, release: {opening: {round: 20 mm}, towards: [0, -1, 0], speed: 8 m/s}",
    )
    answer = capture_of(shop(stream, of=CABINET), plan=FEW).answers[0]
    # 6.4 diameters of core over 200 mm: 8 x 6.4 x 20 / 200 = 5.1 m/s on the axis
    assert answer.openings[0].stream == pytest.approx(5.12, rel=0.05)
    assert answer.spills.startswith("it would spill at the main opening") and "stream of the source" in answer.spills


def test_the_least_margin_is_named():
    main, hatch = (OpeningInward(n, v, None, 0.1, 0.0) for n, v in (("main opening", 0.5), ("hatch", 0.2)))
    assert (
        spills_first((main, hatch), "SI")
        == "it would spill first at the hatch: 0.2\u2009m/s inward against 0.1\u2009m/s of the draught"
    )
    assert "would spill at" in spills_first((OpeningInward("hatch", 0.05, None, 0.1, 0.0),), "SI")
    assert "nothing that works against it" in spills_first((OpeningInward("hatch", 0.05, None, 0.0, 0.0),), "SI")
    assert "at all its openings alike:" in spills_first((main, main), "SI")
    assert spills_first((), "SI") is None
