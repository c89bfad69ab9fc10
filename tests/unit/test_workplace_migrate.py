"""Older formats, tried with steps that never were."""

import pytest

from hoodwright.workplace.migrate import STEPS, migrate
from hoodwright.workplace.model import FORMAT


def feet_to_metres(data: dict) -> dict:
    """Format 1 to 2, made up: heights become a text."""
    return data | {"height": f"{data['height']} ft"}


def tall_to_height(data: dict) -> dict:
    """Format 0 to 1, made up: a key takes another name."""
    return {("height" if key == "tall" else key): value for key, value in data.items()}


MADE_UP = {0: tall_to_height, 1: feet_to_metres}


def test_a_file_of_today_stays_as_it_is():
    data = {"hoodwright": FORMAT, "name": "Bench"}
    assert migrate(data) == (data, None)


def test_an_old_file_takes_every_step():
    assert migrate({"hoodwright": 0, "tall": 9}, MADE_UP, newest=2) == ({"hoodwright": 2, "height": "9 ft"}, None)


def test_a_file_of_the_middle_takes_the_steps_from_there():
    assert migrate({"hoodwright": 1, "height": 9}, MADE_UP, newest=2) == ({"hoodwright": 2, "height": "9 ft"}, None)


def test_the_data_read_is_not_changed():
    data = {"hoodwright": 0, "tall": 9}
    migrate(data, MADE_UP, newest=2)
    assert data == {"hoodwright": 0, "tall": 9}


@pytest.mark.parametrize(
    "version, fault",
    [
        (None, "missing; add 'hoodwright: 2' as the first line"),
        (True, "a whole number is needed, got true; write 'hoodwright: 2'"),
        (1.0, "a whole number is needed, got '1.0'; write 'hoodwright: 2'"),
        ([1], "a whole number is needed, got a list of 1; write 'hoodwright: 2'"),
        (3, "format 3 is newer than this hoodwright, which reads up to 2; update hoodwright"),
        (-1, "format -1 is not known; allowed: 0, 1, 2; write the number it was made with"),
    ],
)
def test_a_wrong_version_is_told(version, fault):
    data = {} if version is None else {"hoodwright": version}
    assert migrate(data, MADE_UP, newest=2) == (data, fault)


def test_each_step_of_ours_leads_to_a_format_that_is_read():
    assert sorted(STEPS) == list(range(FORMAT - len(STEPS), FORMAT))
