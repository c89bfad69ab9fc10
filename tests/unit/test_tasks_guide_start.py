"""Starter files of the process guide: each reads without a fault and is assessed; its comments carry what to mind."""

import pytest

from hoodwright.results import Verdict
from hoodwright.tasks.assess import assess
from hoodwright.tasks.guide import entry, guide_entries
from hoodwright.tasks.guide_cautions import guide_cautions
from hoodwright.tasks.guide_start import starter_for
from hoodwright.workplace import parse_workplace
from hoodwright.workplace.quantities import Row

EACH = pytest.mark.parametrize("found", guide_entries(), ids=[found.process for found in guide_entries()])


@EACH
def test_a_starter_reads_without_a_fault_and_is_assessed(found):
    workplace = parse_workplace(starter_for(found))
    answer = assess(workplace)
    assert workplace.sources[0].process == found.process
    assert workplace.hoods[0].type == found.hoods[0].type
    assert workplace.contaminants[0].hazards == found.hazards
    assert answer.hoods[0].design_flow > 0
    assert answer.fans[0].flow > 0


@EACH
def test_its_ducts_are_fast_enough_for_what_they_carry(found):
    answer = assess(parse_workplace(starter_for(found)))
    assert answer.ducts[0].transport.verdict is Verdict.MEETS


@EACH
def test_the_comments_carry_cautions_refusals_and_sources(found):
    comments = " ".join(line.lstrip("# ") for line in starter_for(found).splitlines() if line.startswith("#"))
    for one in found.statements:
        assert one.text.split(";")[0].split(",")[0] in comments
        assert f"[{one.source}," in comments
    assert "UK: examined at least every" in comments


def test_no_line_is_too_wide():
    widest = max(len(line) for found in guide_entries() for line in starter_for(found).splitlines())
    assert widest <= 140


def test_cautions_of_the_guide_reach_the_answer():
    workplace = parse_workplace(starter_for(entry("artificial nails")))
    told = {caution.text: caution for caution in assess(workplace).cautions}
    for caution in guide_cautions(workplace):
        assert told[caution.text].about == "work"
    assert any("UK: examined at least every 14 months" in text for text in told)


def test_a_source_without_a_process_adds_nothing():
    text = starter_for(entry("artificial nails")).replace("    process: artificial nails\n", "")
    assert list(guide_cautions(parse_workplace(text))) == []


def test_the_file_names_a_row_of_the_guide_or_is_told_the_nearest():
    with pytest.raises(ValueError, match="did you mean 'artificial nails'"):
        Row("process_guide", "process").read("artificial nail")
