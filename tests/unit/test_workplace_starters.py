"""The files that hoodwright writes to start from."""

import pytest

from hoodwright.errors import InputError
from hoodwright.workplace import parse_workplace, read_workplace
from hoodwright.workplace.starters import starter_text, write_starter


@pytest.mark.parametrize("name", ["demo", "starter"])
def test_a_starter_has_no_faults_and_is_written_as_it_is(name, tmp_path):
    file = tmp_path / "new folder" / "bench.yaml"
    write_starter(name, file)
    assert file.read_text(encoding="utf-8") == starter_text(name)
    assert read_workplace(file) == parse_workplace(starter_text(name))


def test_the_demo_says_that_it_is_invented():
    assert "Invented for the demonstration" in parse_workplace(starter_text("demo")).about


def test_a_file_that_is_there_is_not_overwritten(tmp_path):
    file = tmp_path / "bench.yaml"
    file.write_text("mine", encoding="utf-8")
    with pytest.raises(InputError, match=r"bench.yaml exists already; nothing was written: choose another name"):
        write_starter("starter", file)
    assert file.read_text(encoding="utf-8") == "mine"


def test_a_place_that_cannot_hold_a_file_is_told(tmp_path):
    (tmp_path / "file").write_text("x", encoding="utf-8")
    with pytest.raises(InputError, match="choose another place"):
        write_starter("starter", tmp_path / "file" / "bench.yaml")


@pytest.mark.parametrize("remark", ["# capture_velocity: 0.6 m/s", "# draught: {", "# today: {"])
def test_what_the_starter_leaves_out_can_be_taken_in(remark):
    text = starter_text("starter")
    assert remark in text
    parse_workplace(text.replace(remark, remark.removeprefix("# ")))
