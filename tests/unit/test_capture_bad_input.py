"""Bad input: one clear error, at its place in the file where the file holds it."""

import math

import pytest

from capture_shop import CABINET, FEW, SHOP, shop, text
from hoodwright.console_capture import computed, distances_of
from hoodwright.errors import InputError, WorkplaceError
from hoodwright.tasks.capture.faults import at_its_place
from hoodwright.tasks.capture.job import capture_of
from hoodwright.workplace import Document

LID = "surfaces:\n  - {name: lid, corner: [1 m, 1.1 m, 0.8 m], sides: [[1 m, 0 m, 0 m], [0 m, 0 m, 0.8 m]]}\n  -"
SEALED = CABINET.replace("surfaces: [", LID + " ").replace("0.6 m, 0 m]]}]", "0.6 m, 0 m]]}")
BENCH = [("facing: [0, -1, 0]", "facing: [0, 0, -1]"), ("1.4 m, 1.1 m]", "1.4 m, 0.905 m]")]
STOPPED = ("intended_flow: 300 m3/h", "intended_flow: 300 m3/h, today: {flow: 0 m3/h}")
ANN = ("surfaces:", "people: [{name: Ann, at: [1.5 m, 1.2 m]}]\nsurfaces:")
CASES = [
    (text(("1.3 m, 1.1 m]", "1.45 m, 1.1 m]")), "shop.yaml:6:48: sources[joint].at: ", "the body of nozzle; move it"),
    (text(ANN), "shop.yaml:7:48: sources[joint].at: ", "the body of Ann; move it into the air"),
    (text(*BENCH), "shop.yaml:8:7: hoods[nozzle].at: ", "its opening faces bench less than"),
    (SEALED, "hoods[box].at: ", "it is sealed off"),
    (text(STOPPED), "shop.yaml:8:82: hoods[nozzle].today: ", "its flow is 0; give a flow above 0"),
    (text(("0.05 m/s", "60 m/s")), "shop.yaml:3:70: room.draught.speed: ", "is above 10 m/s"),
    (text(("300 m3/h", "900 m3/s")), "hoods[nozzle].intended_flow: ", "is above 100 m/s"),
    (text(("0.05 m/s", "nan m/s")), "room.draught.speed: ", "nan"),
    (text(("1.3 m, 1.1 m]", ".nan, 1.1 m]")), "sources[joint].at[#2]: ", ""),
]


@pytest.mark.parametrize("words, place, message", CASES)
def test_one_clear_error_with_file_line_and_field(words, place, message, tmp_path):
    file = tmp_path / "shop.yaml"
    file.write_text(words, encoding="utf-8")
    with pytest.raises(WorkplaceError) as error:
        computed(Document.open(file), None, None, None, today=True)
    told = str(error.value)
    assert len(error.value.faults) == 1 and place in told and message in told


def test_an_error_of_no_part_stays_as_it_is():
    error = InputError("--distances: got -1 m; each must be above 0")
    assert at_its_place(error, Document(SHOP)) is error


@pytest.mark.parametrize(
    "changes, distances, words",
    [
        ([], [2.0], "--distances: 2\u2009m from the nozzle is outside the room"),
        ([ANN], [0.3], r"--distances: 300\u2009mm from the nozzle: joint: .* lies in the body of Ann"),
        ([], [math.nan], "got nan m; each must be above 0"),
    ],
)
def test_a_distance_that_leads_into_something_is_told_by_the_distance(changes, distances, words):
    with pytest.raises(InputError, match=words):
        capture_of(shop(*changes), plan=FEW, distances=distances)


@pytest.mark.parametrize("words", ["50", "50mm,,", "far", "nan mm"])
def test_distances_that_are_none_name_their_option(words):
    with pytest.raises(InputError, match=r"^--distances: "):
        distances_of(words)
