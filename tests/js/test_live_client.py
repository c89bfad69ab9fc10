"""The page's end of the live line: one request in flight, the latest wins, a lost line is taken up again."""

import json

import pytest
from node_parts import modules_in, run_node


@pytest.fixture(scope="module")
def told(tmp_path_factory):
    """What happened, as client.mjs saw it."""
    return json.loads(run_node("client.mjs", modules_in(tmp_path_factory.mktemp("client"), "live.js")))


def test_it_speaks_to_the_page_s_own_host(told):
    assert told["url"] == "ws://127.0.0.1:8088/live?file=a.yaml"


def test_one_request_is_in_flight_until_its_last_message(told):
    assert told["before_open"] == 0
    assert told["in_flight"] == told["still_in_flight"] == 1


def test_the_latest_place_wins_and_air_goes_before_layers(told):
    assert told["then"] == [1, 3]
    assert told["late_answer_ignored"] == 2
    assert told["last"] == "speed"


def test_what_was_asked_is_asked_again_on_a_new_line(told):
    assert told["again"] == [4]
    assert told["numbers_grow"]
    assert told["sockets"] == 2  # none after it was closed
    assert told["heard"].count("away") == 1
