"""The process guide: complete rows, words of the model, and the rules of the trade that bind it."""

import dataclasses
import math
from typing import get_args

import pytest

from hoodwright.ducts import transport_velocity_range
from hoodwright.errors import InputError
from hoodwright.hoods import capture_velocity_range
from hoodwright.sources import find_source
from hoodwright.tables import load_table
from hoodwright.tasks.guide import (
    HOOD_TYPES,
    NO_CANOPY,
    SORTS,
    entry,
    find_entries,
    guide_entries,
    in_a_sentence,
    intervals,
    nearest,
    record_years,
    sorted_entries,
    speeds,
    statement,
)
from hoodwright.tasks.guide_export import guide_as_json
from hoodwright.workplace.model import Hazard, Kind, Release, Transport

ENTRIES = guide_entries()
NAMES = [found.process for found in ENTRIES]
EACH = pytest.mark.parametrize("found", ENTRIES, ids=NAMES)


def test_the_guide_covers_many_trades_once_each():
    assert len(ENTRIES) >= 60 and len({found.trade for found in ENTRIES}) >= 20
    assert len(set(NAMES)) == len(NAMES)


@EACH
def test_words_are_those_of_the_model(found):
    assert found.kind in get_args(Kind)
    assert set(found.hazards) <= set(get_args(Hazard))
    assert found.release in get_args(Release)
    assert found.transport in get_args(Transport)
    assert all(hood.type in HOOD_TYPES and hood.form for hood in found.hoods)


@EACH
def test_every_row_is_complete_and_every_key_has_a_statement(found):
    assert all((found.process, found.trade, found.substance, found.hoods, found.intervals))
    assert found.why_hazards and found.why_hoods and found.cautions
    for one in found.statements:
        assert one.text and one.place and one.jurisdiction
        assert find_source(one.citation).trust == one.trust


@EACH
def test_velocities_are_those_of_the_published_tables(found):
    assert found.capture_velocity == capture_velocity_range(found.release)
    assert found.transport_velocity == transport_velocity_range(found.transport)


@EACH
def test_what_is_thrown_never_gets_a_capturing_hood_first(found):
    if found.release == "thrown":
        assert found.hoods[0].type != "capturing"
        assert statement("refuse.capture-thrown") in found.refusals


@EACH
def test_no_canopy_for_what_causes_cancer_or_asthma(found):
    if set(found.hazards) & set(NO_CANOPY):
        assert not any(hood.is_canopy for hood in found.hoods)
        assert (
            any("canop" in one.text for one in found.refusals)
            or found.release == "thrown"
            or "isocyanate" in found.hazards
        )


@EACH
def test_explosible_dust_asks_for_a_review(found):
    assert ("explosible dust" in found.hazards) == (statement("refuse.review") in found.refusals)


def test_asbestos_is_refused():
    assert statement("refuse.asbestos") in entry("removing asbestos").refusals


def test_every_statement_is_used_and_every_source_of_the_guide_says_where():
    used = {one.key for found in ENTRIES for one in found.statements}
    always = {"always.order", "examination.us", "examination.elsewhere"}
    assert set(load_table("guide_statements").columns["key"]) == used | always


def test_no_statement_calls_anything_safe():
    texts = " ".join(load_table("guide_statements").columns["text"])
    assert not {"safe", "passes"} & set(texts.split())


def test_groups_of_examination_are_those_of_the_table():
    assert {one.group for found in ENTRIES for one in found.intervals} == set(
        load_table("examination_interval").columns["process_group"]
    )
    with pytest.raises(InputError, match="no examination interval is listed for 'x'; there is: any other, blasting"):
        intervals("x")
    assert record_years("UK") == 5
    assert intervals("blasting of metal castings")[0].text == (
        "UK: examined at least every month (blasting of metal castings)"
    )


@pytest.mark.parametrize(
    "words, first",
    [("weld chrom", "stainless steel welding"), ("ISOCYANATE spray", "spraying two-pack isocyanate paint")],
)
def test_search_takes_words_in_any_order(words, first):
    assert [found.process for found in find_entries(words)] == [first]


def test_search_looks_at_trade_kind_and_hazard():
    assert {found.trade for found in find_entries("beauty")} == {"beauty"}
    assert all("silica" in found.hazards for found in find_entries("silica"))
    assert find_entries("") == ENTRIES
    assert find_entries("no such thing") == ()


def test_an_entry_is_found_whatever_its_letters():
    assert entry("  mig or mag  WELDING").process == "MIG or MAG welding"


@pytest.mark.parametrize(
    "got, message",
    [
        ("nail tabel", "no process of the guide is named 'nail tabel'; the nearest are: artificial nails"),
        ("xqzy", "no process of the guide is named 'xqzy'; look through: hoodwright guide"),
        ("", "no process of the guide is named ''; look through: hoodwright guide"),
    ],
)
def test_an_unknown_process_names_the_nearest(got, message):
    with pytest.raises(InputError) as error:
        entry(got)
    assert str(error.value) == message


def test_near_misses_are_suggested_the_nearest_first():
    assert nearest("soldring")[0].startswith("soldering")
    assert set(nearest("laser ply")) == {"laser cutting of metal", "laser cutting of plastics and wood"}


@pytest.mark.parametrize("by", SORTS)
def test_sorting_keeps_every_entry(by):
    assert sorted(found.process for found in sorted_entries(by)) == sorted(NAMES)


def test_sorting_by_release_and_hood_goes_from_mild_to_strong():
    assert sorted_entries("release")[0].release == "still" and sorted_entries("release")[-1].release == "thrown"
    assert sorted_entries("hood")[0].hoods[0].type == "enclosing"
    with pytest.raises(InputError, match="got 'colour'; allowed: process, trade, kind, release, hood; choose one"):
        sorted_entries("colour")


def test_a_sentence_names_the_hood_first():
    told = in_a_sentence(entry("artificial nails")).replace("\u2009", " ")
    assert told.startswith("Artificial nails: gives off methacrylate vapour and filing dust (asthmagen, organic);")
    assert "First choice: a capturing hood (downdraught nail table); else" in told
    assert "never captured by air alone" in in_a_sentence(entry("dry grinding of steel"))


def test_speeds_in_both_systems_and_without_an_upper_end():
    heavy = dataclasses.replace(entry("chromium plating"), transport="moist dust")
    assert speeds(heavy)[1] == "22.9\u2009m/s and up"
    assert speeds(entry("artificial nails"), "US") == ("98.4 to 197\u2009fpm", "2500 to 3000\u2009fpm")


def test_as_data_for_machines():
    data = guide_as_json((dataclasses.replace(entry("chromium plating"), transport="moist dust"),))[0]
    assert data["transport_velocity_high_m_s"] is None
    assert data["capture_velocity_low_m_s"] == 1.0
    assert {"text", "source", "place", "jurisdiction", "trust"} <= set(data["cautions"][0])
    assert math.isclose(data["transport_velocity_low_m_s"], 22.86)
