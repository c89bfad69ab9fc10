import numpy as np
import pytest

from hoodwright.errors import InputError, RangeError
from hoodwright.hoods import belt_flow, disc_flow, disc_outlets, wheel_branch_diameter, wheel_flow, wheel_table_width

INCH, CFM = 0.0254, 0.3048**3 / 60

# A function of one size in metres, and what it is called.
OF_SIZE = {
    "wheel": (lambda d: wheel_flow("grinding", d, 0.02), "diameter of the wheel"),
    "table width": (lambda d: wheel_table_width("polishing", d), "diameter of the wheel"),
    "disc": (lambda d: disc_flow("open vertical-spindle disc", d), "diameter of the disc"),
    "outlets": (lambda d: disc_outlets("covered vertical-spindle disc", d), "diameter of the disc"),
    "belt": (belt_flow, "width of the belt"),
    "branch": (wheel_branch_diameter, "flow"),
}


@pytest.mark.parametrize(("function", "what"), OF_SIZE.values(), ids=OF_SIZE)
def test_scalar_array_and_empty_array(function, what):
    assert np.ndim(function(0.1)) == 0
    assert function(np.array([0.1, 0.2])).tolist() == [function(0.1), function(0.2)]
    assert function(np.array([])).shape == (0,)


@pytest.mark.parametrize(("function", "what"), OF_SIZE.values(), ids=OF_SIZE)
def test_a_size_of_zero_is_refused(function, what):
    with pytest.raises(RangeError, match=f"{what} 0 .* is not above 0"):
        function(0.0)


@pytest.mark.parametrize(
    ("function", "text"),
    [
        (
            lambda: wheel_flow("grinding", 1.0, 0.1),
            r"diameter of the wheel 1 m is above 0.9144 m, the last row of \[us-1910-94, table G-4\]; the table says",
        ),
        (lambda: wheel_flow("buffing", 1.0, 0.1), r"above 0.9144 m, the last row of \[us-1910-94, table G-5\]"),
        (lambda: disc_flow("single-spindle disc", 2.0), r"above 1.8288 m, the last row of \[cal-5152, table V-3\]"),
        (lambda: disc_outlets("open vertical-spindle disc", 2.0), r"the last row of \[cal-5152, table V-4\]"),
        (lambda: belt_flow(0.3), r"width of the belt 0.3 m is above 0.2286 m, the last row of \[cal-5152, table V-5\]"),
    ],
)
def test_beyond_the_table_nothing_is_told(function, text):
    with pytest.raises(RangeError, match=text):
        function()


def test_an_unknown_work_is_told_the_known_ones():
    text = "work of the wheel 'sawing' is not known; it is one of: grinding, cutting off, buffing, polishing, scratch"
    with pytest.raises(InputError, match=text):
        wheel_flow("sawing", 0.3, 0.05)
    with pytest.raises(InputError, match="kind of disc 'belt' is not known; it is one of: single-spindle disc, double"):
        disc_flow("belt", 0.3)


def test_a_row_holds_up_to_its_end_and_no_farther():
    assert wheel_flow("grinding", 9 * INCH, 0.01) / CFM == pytest.approx(220)
    assert wheel_flow("grinding", 9.01 * INCH, 0.01) / CFM == pytest.approx(390)


def test_a_narrow_wheel_asks_no_less_than_its_row():
    assert wheel_flow("grinding", 0.3, 0.001) == wheel_flow("grinding", 0.3, 0.05)
