import numpy as np
import pytest

from hoodwright.errors import InputError, RangeError
from hoodwright.hoods import (
    displaced_flow,
    dumping_flow,
    enclosure_flow,
    face_velocity,
    face_velocity_range,
    induced_flow,
    least_opening_distance,
    opening_share,
    opening_velocity,
    purge_flow,
    velocity_from_enclosure_pressure,
)
from hoodwright.sources import find_source
from hoodwright.tables import load_table

FORMS = load_table("face_velocity").columns["form"]

# function, arguments, value worked by hand
CASES = [
    (enclosure_flow, (0.5, 0.5), 0.25),
    (opening_velocity, (0.25, 0.5), 0.5),
    (velocity_from_enclosure_pressure, (1.5, 1.2), 0.6 * 2.5**0.5),
    (opening_share, (1.0, 20.0), 0.05),
    (least_opening_distance, (np.pi / 4,), 4.0),
    (purge_flow, (1.8, 20 / 3600), 0.01),
    (displaced_flow, (2.0, 800.0), 0.0025),
    (dumping_flow, (2.0, 800.0), 9.99 * 0.0025),
    (induced_flow, (1.0, 2.0, 0.004, 0.1), 0.01195073 * 10),  # cube root of 4 / 0.004 = 10
]


@pytest.mark.parametrize("function, values, expected", CASES, ids=lambda v: getattr(v, "__name__", None))
def test_scalar_array_and_empty_array(function, values, expected):
    assert function(*values) == pytest.approx(expected, rel=1e-6)
    first, *rest = values
    assert function(np.array([first, first]), *rest).tolist() == pytest.approx([expected] * 2, rel=1e-6)
    assert function(np.array([]), *rest).shape == (0,)


REFUSED = [
    (enclosure_flow, (0.0, 0.5), "open area 0 m2 is not above 0 m2; give its true size"),
    (enclosure_flow, (1.0, -0.5), "face velocity -0.5 m/s is not above 0 m/s"),
    (opening_velocity, (-1.0, 0.5), "flow -1 m3/s is below 0 m3/s; give it as a positive size"),
    (velocity_from_enclosure_pressure, (-1.0, 1.2), "suction -1 Pa is below 0 Pa"),
    (opening_share, (1.0, 0.0), "surface 0 m2 is not above 0 m2"),
    (least_opening_distance, (0.0,), "area 0 m2 is not above 0 m2"),
    (purge_flow, (0.0, 1.0), "volume 0 m3 is not above 0 m3"),
    (displaced_flow, (1.0, 0.0), "bulk density 0 kg/m3 is not above 0 kg/m3"),
    (dumping_flow, (-1.0, 800.0), "mass rate -1 kg/s is below 0 kg/s"),
    (induced_flow, (1.0, 1.0, 0.001, 1.0), "grain 0.001 m is below 0.003175 m.*use dumping_flow for finer material"),
]


@pytest.mark.parametrize("function, values, text", REFUSED)
def test_refusals_say_what_got_allowed_and_what_to_do(function, values, text):
    with pytest.raises(RangeError, match=text):
        function(*values)


@pytest.mark.parametrize("form", FORMS)
def test_a_high_hazard_takes_the_upper_end(form):
    low, high = face_velocity_range(form)
    assert 0.2 < low <= high < 3
    assert (face_velocity(form, high_hazard=False), face_velocity(form, high_hazard=True)) == (low, high)


def test_an_unknown_form_is_told_the_rows():
    with pytest.raises(InputError, match="form 'shed' is not in table face_velocity; it has: spray booth, spray room"):
        face_velocity_range("shed")


def test_every_row_names_its_source():
    for citation in load_table("face_velocity").columns["source"]:
        for piece in citation.split(";"):
            find_source(piece)
