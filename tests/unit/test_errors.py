"""The tree of errors, and the form of a fault."""

import pytest

from hoodwright import errors
from hoodwright.errors import Fault, WorkplaceError


def test_every_error_is_one_of_ours():
    raised = [found for found in vars(errors).values() if isinstance(found, type) and issubclass(found, Exception)]
    assert len(raised) == 8
    assert all(issubclass(error, errors.HoodwrightError) for error in raised)


def test_the_tree_is_the_one_drawn_at_the_top():
    assert {error.__name__ for error in errors.InputError.__subclasses__()} == {
        "RangeError",
        "UnitError",
        "WorkplaceError",
    }
    assert all(error.__name__ in errors.__doc__ for error in errors.HoodwrightError.__subclasses__())


def test_a_fault_says_where_it_stands():
    fault = Fault(41, 20, "hoods[nozzle].flange", "3 s is a time; a length is needed", "bench.yaml")
    assert str(fault) == "bench.yaml:41:20: hoods[nozzle].flange: 3 s is a time; a length is needed"


def test_faults_stand_in_the_order_of_their_lines():
    late, early = Fault(9, 1, "b", "wrong"), Fault(2, 7, "a", "wrong")
    error = WorkplaceError([late, early])
    assert error.faults == [early, late]
    assert str(error) == "workplace:2:7: a: wrong\nworkplace:9:1: b: wrong"


def test_a_fault_is_never_changed():
    with pytest.raises(AttributeError):
        Fault(1, 1, "a", "wrong").line = 2
