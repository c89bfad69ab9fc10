"""What was tried with the ducts, written into the file: the words that change, and no others."""

import pytest

from curved_demo import demo
from hoodwright.errors import InputError
from hoodwright.tasks.as_built.edits import kept, not_kept
from hoodwright.tasks.as_built.live import Tried
from hoodwright.workplace import Document


def lines_changed(before: Document, after: Document) -> list[str]:
    old = set(before.text.splitlines())
    return [line.strip() for line in after.text.splitlines() if line not in old]


def duct(document: Document, name: str):
    return next(one for one in document.workplace().ducts if one.name == name)


def test_a_damper_is_added_behind_the_other_fittings():
    document = Document(demo())
    after = kept(document, Tried(dampers={"C1": 2.5}))
    assert len(lines_changed(document, after)) == 1
    assert [fitting.damper_loss for fitting in duct(after, "C1").fittings] == [None, 2.5]


def test_a_damper_that_is_there_is_moved():
    once = kept(Document(demo()), Tried(dampers={"C1": 2.5}))
    twice = kept(once, Tried(dampers={"C1": 7.0}))
    assert [fitting.damper_loss for fitting in duct(twice, "C1").fittings] == [None, 7.0]
    assert kept(once, Tried(dampers={"C1": 0.0})).text != once.text


def test_a_damper_in_pascals_becomes_one_in_velocity_pressures():
    text = demo().replace("round: 150 mm, length: 2.0 m}", "round: 150 mm, length: 2.0 m, fittings: [{damper: 40 Pa}]}")
    after = kept(Document(text), Tried(dampers={"A2": 3.0}))
    assert [(f.damper, f.damper_loss) for f in duct(after, "A2").fittings] == [(None, 3.0)]


def test_an_open_damper_where_there_is_none_changes_nothing():
    document = Document(demo())
    assert kept(document, Tried(dampers={"C1": 0.0})).text == document.text


def test_a_speed_is_written_in_the_unit_of_the_file():
    document = Document(demo())
    after = kept(document, Tried(speeds={"roof fan": 0.9}))
    assert "runs_at: 1305 rpm" in lines_changed(document, after)[0]


def test_a_speed_without_that_of_the_curve_is_refused():
    with pytest.raises(InputError, match="does not say at which speed the curve of the booth fan was taken"):
        kept(Document(demo()), Tried(speeds={"booth fan": 0.9}))


def test_hoods_that_are_shut_become_a_state_of_use():
    once = kept(Document(demo()), Tried(closed=frozenset({"buff hood", "A1"})))
    state = once.workplace().scenarios[0]
    assert state.closed == ("bench nozzle", "buff hood")
    twice = kept(once, Tried(closed=frozenset({"glue cabinet"})))
    names = [one.name for one in twice.workplace().scenarios]
    assert len(set(names)) == 2


def test_a_main_that_is_shut_is_no_state_of_use():
    with pytest.raises(InputError, match="open A3 first"):
        kept(Document(demo()), Tried(closed=frozenset({"A3"})))


def test_states_with_comments_between_them_are_left_alone():
    text = demo() + "\nscenarios:\n  - {name: evening, closed: [buff hood]}   # the buff is off\n  - {name: day}\n"
    with pytest.raises(InputError, match="comments between them"):
        kept(Document(text), Tried(closed=frozenset({"glue cabinet"})))


def test_how_dirty_a_filter_is_stays_with_the_page():
    assert kept(Document(demo()), Tried(load=0.3)).text == demo()
    assert "not in the file" in not_kept(Tried(load=0.3))
    assert not_kept(Tried()) == ""
