import numpy as np
import pytest

from hoodwright.errors import InputError, RangeError
from hoodwright.hoods import (
    FACE_AREA_LEAST,
    entry_loss_coefficient,
    entry_loss_source,
    face_area_ratio,
    major_included_angle,
    taper_entry_loss,
    taper_entry_source,
)
from hoodwright.sources import find_source
from hoodwright.tables import load_table


@pytest.mark.parametrize(
    "function, arguments",
    [
        (taper_entry_loss, (75.0,)),
        (face_area_ratio, (0.02, 0.01)),
        (major_included_angle, (0.6, 0.4, 0.2, 0.2, 0.3)),
    ],
)
def test_scalar_array_and_empty_array(function, arguments):
    scalar = function(*arguments)
    assert isinstance(scalar, float)
    for shape in ((3,), (2, 1), (0,)):
        found = function(np.full(shape, arguments[0]), *arguments[1:])
        assert found.shape == shape
        assert np.all(found == scalar)


def test_every_row_names_its_source():
    for hood in load_table("hood_entry_loss").columns["hood"]:
        find_source(entry_loss_source(hood))
    assert entry_loss_source("grinding tapered by regulation") == "us-1910-94, (b)(3)"


def test_handbook_and_regulation_keep_their_own_tapered_take_off():
    assert entry_loss_coefficient("grinding tapered") == 0.40
    assert entry_loss_coefficient("grinding tapered by regulation") == 0.45


def test_an_unknown_hood_is_told_the_rows():
    with pytest.raises(
        InputError, match="hood 'trumpet' is not in table hood_entry_loss; it has: plain, flanged, bell"
    ):
        entry_loss_coefficient("trumpet")


def test_a_taper_between_two_rows_lies_on_the_straight_line():
    assert taper_entry_loss(75) == pytest.approx((0.08 + 0.15) / 2)
    assert taper_entry_loss(75, rectangular=True) == pytest.approx((0.17 + 0.25) / 2)


@pytest.mark.parametrize("angle", [14.9, 180.1])
def test_a_taper_beyond_the_rows_is_refused(angle):
    with pytest.raises(RangeError, match=rf"angle_deg {angle} is outside 15 to 180, the rows of \[hood-taper"):
        taper_entry_loss(angle)


def test_the_greater_angle_of_a_rectangle_counts():
    width_alone = major_included_angle(0.6, 0.2, 0.2, 0.2, 0.2)
    assert width_alone == pytest.approx(90)  # 0.2 m on each side over 0.2 m
    assert major_included_angle(0.6, 0.4, 0.2, 0.2, 0.2) == pytest.approx(width_alone)
    assert major_included_angle(0.4, 0.6, 0.2, 0.2, 0.2) == pytest.approx(width_alone)


def test_a_hood_that_widens_towards_its_duct_has_no_taper():
    assert major_included_angle(0.1, 0.1, 0.2, 0.2, 0.2) == 0


def test_a_face_of_two_duct_areas_is_just_enough():
    assert face_area_ratio(0.02, 0.01) == FACE_AREA_LEAST


@pytest.mark.parametrize(
    "function, arguments, text",
    [
        (face_area_ratio, (-0.1, 0.01), r"face area -0\.1 m2 is below 0 m2"),
        (face_area_ratio, (0.1, 0), "duct area 0 m2 is not above 0 m2"),
        (major_included_angle, (0.6, 0.4, 0.2, 0.2, 0), "taper length 0 m is not above 0 m"),
        (major_included_angle, (0, 0.4, 0.2, 0.2, 0.3), "face width 0 m is not above 0 m"),
        (major_included_angle, (0.6, 0.4, 0.2, 0, 0.3), "duct height 0 m is not above 0 m"),
    ],
)
def test_what_is_refused_and_in_which_words(function, arguments, text):
    with pytest.raises(RangeError, match=text):
        function(*arguments)


@pytest.mark.parametrize(
    "angle, count, last", [(45, 1, "hood-taper"), (151, 2, "duct-maker-hoods"), (180, 1, "duct-maker-hoods")]
)
def test_a_taper_names_the_tables_it_reads(angle, count, last):
    keys = [part.split(",")[0] for part in taper_entry_source(angle).split("; ")]
    assert len(keys) == count and keys[-1] == last
    assert all(find_source(key) for key in keys)
