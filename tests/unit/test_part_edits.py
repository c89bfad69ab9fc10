"""Whole parts are added, renamed and taken away; what is not meant stays as it was, to the letter."""

from importlib.resources import files

import pytest

from hoodwright.errors import InputError
from hoodwright.tasks import part_edits as parts
from hoodwright.tasks.assess import assess
from hoodwright.tasks.duct_parts import NEW_FAN, add_cleaner, add_duct, add_fan, free_hoods, targets
from hoodwright.workplace import Document

EMPTY = "hoodwright: 1\nname: new shop\nroom: {size: [8 m, 6 m, 3 m]}\ncontaminants: []\nsources: []\nhoods: []\n"
CEILING = 3.0  # m
SCENARIOS = """
scenarios:
  - {name: evening, closed: [buff hood, bench nozzle], dampers: {D1: 4, A1: 2}}
"""


@pytest.fixture
def demo() -> Document:
    return Document((files("hoodwright") / "workplace" / "starters" / "demo.yaml").read_text(encoding="utf-8"))


@pytest.fixture
def empty() -> Document:
    return Document(EMPTY)


def comments(document: Document) -> list[str]:
    return [line.split("#", 1)[1] for line in document.text.splitlines() if "#" in line]


def one_hood(document: Document, source: str = "point", hood: str = "capturing") -> Document:
    return parts.add_hood(parts.add_source(document, source), hood)


def names(document: Document, section: str) -> list[str]:
    return [part.name for part in getattr(document.workplace(), section)]


@pytest.mark.parametrize("hood", parts.HOOD_KINDS)
@pytest.mark.parametrize("source", parts.SOURCE_KINDS)
def test_every_kind_of_hood_for_every_kind_of_source_can_be_assessed(empty, source, hood):
    workplace = one_hood(empty, source, hood).workplace()
    assert workplace.hoods[0].type == hood
    assert workplace.hoods[0].serves == (workplace.sources[0].name,)
    assert len(assess(workplace).hoods) == 1


@pytest.mark.parametrize("kind", parts.CONTAMINANT_KINDS)
def test_a_source_may_bring_what_it_gives_off(empty, kind):
    workplace = parts.add_source(empty, "point", kind).workplace()
    assert [(one.name, one.kind) for one in workplace.contaminants] == [(kind, kind)]
    assert workplace.sources[0].contaminant == kind


def test_a_source_gives_off_what_is_there_already(demo):
    assert parts.add_source(demo, "line").workplace().sources[-1].contaminant == "flux fume"
    assert parts.add_source(demo, "line", "buffing dust").workplace().sources[-1].contaminant == "buffing dust"


def test_sources_stand_apart_and_inside_the_room(empty):
    document = empty
    for _ in range(8):
        document = parts.add_source(document, "point")
    places = [source.centre for source in document.workplace().sources]
    assert len(set(places)) == len(places)
    assert min(abs(a[0] - b[0]) + abs(a[1] - b[1]) for a in places for b in places if a != b) >= 1.5


def test_names_that_are_taken_get_a_number(empty):
    document = one_hood(one_hood(empty))
    assert names(document, "sources") == ["work", "work 2"]
    assert names(document, "hoods") == ["work hood", "work 2 hood"]


def test_a_hood_serves_first_what_no_hood_serves(demo):
    document = parts.add_hood(parts.add_source(demo, "point"), "capturing")
    assert document.workplace().hoods[-1].serves == ("work",)
    assert parts.add_hood(demo, "enclosing", "buff").workplace().hoods[-1].serves == ("buff",)


def test_a_new_part_leaves_every_line_as_it_was(demo):
    document = parts.add_hood(parts.add_source(demo, "point"), "capturing")
    left = iter(document.text.splitlines())
    assert all(line in left for line in demo.text.splitlines())


def test_a_comment_below_a_part_stays_with_it(empty):
    text = EMPTY.replace(
        "sources: []", "sources:\n  - {name: a, contaminant: fume, at: [1 m, 1 m, 1 m], dispersion: still}"
    )
    text = text.replace("contaminants: []", "contaminants: [{name: fume, kind: fume}]")
    document = Document(text.replace("still}", "still}\n    # near the door\n  # next comes the other"))
    lines = parts.add_source(document, "point").text.splitlines()
    at = lines.index("    # near the door")
    assert lines[at + 1].startswith("  - {name: work,")
    assert lines[at + 2] == "  # next comes the other"


def test_a_file_that_ends_without_a_new_line_and_one_of_another_system(empty):
    document = Document(EMPTY.rstrip("\n"))
    assert names(one_hood(document), "hoods") == ["work hood"]
    document = one_hood(Document(EMPTY.replace("\n", "\r\n")))
    assert document.text.count("\n") == document.text.count("\r\n")


@pytest.mark.parametrize(
    ("act", "words"),
    [
        (lambda d: parts.add_hood(d, "capturing"), "there is none yet; add a source first"),
        (lambda d: parts.add_hood(d, "round"), "got 'round' as hood; choose one of: capturing"),
        (lambda d: parts.add_source(d, "cloud"), "got 'cloud' as source; choose one of: point"),
        (lambda d: parts.add_source(d, "point", "ether"), "got 'ether' as what is given off; choose one of: dust"),
        (add_duct, "a duct begins at a hood, and there is none yet; add a hood first"),
        (add_fan, "there is none yet; add a hood first"),
        (add_cleaner, "no duct leads to one yet; add a duct first"),
        (lambda d: parts.remove_part(d, "nobody"), "no part is named 'nobody'; there is: none"),
    ],
)
def test_what_cannot_be_is_said_in_words(empty, act, words):
    with pytest.raises(InputError, match=words):
        act(empty)


def test_no_canopy_fits_above_a_source_at_the_ceiling(empty):
    document = parts.add_source(empty, "point").set(("sources", 0, "at", 2), f"{CEILING} m")
    with pytest.raises(InputError, match="no canopy fits above the work: it is at the ceiling"):
        parts.add_hood(document, "receiving")


def test_the_first_duct_brings_a_fan_and_a_stack(empty):
    workplace = add_duct(one_hood(empty)).workplace()
    assert [(duct.start, duct.to) for duct in workplace.ducts] == [("work hood", "fan"), ("fan", "outside")]
    assert [fan.name for fan in workplace.fans] == ["fan"]


def test_eight_hoods_are_led_to_one_fan_behind_one_cleaner(empty):
    document = empty
    for _ in range(8):
        document = one_hood(document)
    document = add_cleaner(add_duct(document))
    for _ in range(7):
        document = add_duct(document)
    workplace = document.workplace()
    assert free_hoods(workplace) == []
    assert len(workplace.ducts) == 8 + 7 + 2  # one of each hood, a main behind each meeting, link and stack
    assert [cleaner.name for cleaner in workplace.cleaners] == ["filter"]
    assert assess(workplace).fans[0].name == "fan"


def test_ducts_behind_a_new_hood_are_widened_where_they_would_be_too_fast(empty):
    document = add_duct(one_hood(empty))
    before = document.workplace().ducts[1].sides[0]
    document = add_duct(one_hood(document, "area", "receiving"))
    assert next(duct for duct in document.workplace().ducts if duct.name == "stack").sides[0] > before


def test_a_duct_leads_wherever_the_page_offers(demo):
    document = parts.add_hood(demo, "capturing", "buff")
    offered = targets(document.workplace())
    assert next(iter(offered)) == "filter"
    assert {"J1", "filter", "roof fan", "booth fan", "A1", "main", "link", NEW_FAN} <= set(offered)
    assert "stack" not in offered
    for target in offered:
        assert free_hoods(add_duct(document, to=target).workplace()) == []


def test_a_duct_behind_the_fan_is_refused(demo):
    with pytest.raises(InputError, match="no fan is on the way"):
        add_duct(parts.add_hood(demo, "capturing", "buff"), to="stack")


def test_a_hood_has_one_duct(demo):
    with pytest.raises(InputError, match="the bench nozzle has a duct already"):
        add_duct(demo, "bench nozzle")
    with pytest.raises(InputError, match="every hood has a duct already"):
        add_fan(demo)


def test_a_cleaner_stands_before_the_fan_that_is_named(demo):
    workplace = add_cleaner(demo, "booth fan").workplace()
    assert [duct.to for duct in workplace.ducts if duct.start == "filter 2"] == ["booth fan"]
    with pytest.raises(InputError, match="no fan with a duct is named 'roof'"):
        add_cleaner(demo, "roof")


@pytest.mark.parametrize(
    "old",
    ["bench nozzle", "solder joint", "flux fume", "D1", "J1", "filter", "roof fan", "solder bench", "at the booth"],
)
def test_a_new_name_stands_everywhere_and_back_again_is_the_same_text(demo, old):
    document = Document(demo.text + SCENARIOS)
    renamed = parts.rename_part(document, old, "new one")
    assert renamed.workplace() != document.workplace()
    assert comments(renamed) == comments(document)
    assert parts.rename_part(renamed, "new one", old).text == document.text


def test_a_damper_of_a_state_of_use_follows_its_duct(demo):
    renamed = parts.rename_part(Document(demo.text + SCENARIOS), "D1", "buff duct")
    assert renamed.workplace().scenarios[0].dampers == (("buff duct", 4.0), ("A1", 2.0))


@pytest.mark.parametrize(
    ("new", "words"),
    [
        ("buff", "'buff' is a name in this file already"),
        ("J1", "'J1' is a name in this file already"),
        ("outside", "'outside' means the open air"),
        ("  ", "got no name; type what people call it"),
    ],
)
def test_a_name_that_cannot_be_is_said_in_words(demo, new, words):
    with pytest.raises(InputError, match=words):
        parts.rename_part(demo, "bench nozzle", new)


def test_what_was_added_last_is_taken_away_without_a_trace(demo):
    document = parts.add_source(demo, "hot")
    assert parts.remove_part(document, "hot work").text == demo.text
    document = parts.add_hood(demo, "enclosing", "buff")
    assert parts.remove_part(document, "buff enclosure").text == demo.text


def test_a_hood_takes_its_duct_and_its_states_of_use_with_it(demo):
    document = Document(demo.text + SCENARIOS)
    assert parts.goes_with(document.workplace(), "buff hood") == ("D1",)
    workplace = parts.remove_part(document, "buff hood").workplace()
    assert "D1" not in [duct.name for duct in workplace.ducts]
    assert workplace.scenarios[0].closed == ("bench nozzle",)
    assert workplace.scenarios[0].dampers == (("A1", 2.0),)


def test_the_only_hood_of_a_fan_takes_the_fan_with_it(demo):
    assert set(parts.goes_with(demo.workplace(), "lacquer booth")) == {"L1", "booth fan", "L2"}
    document = parts.remove_part(demo, "lacquer booth")
    assert names(document, "fans") == ["roof fan"]
    assert set(comments(demo)) - set(comments(document)) == set()


def test_a_main_is_closed_up(demo):
    workplace = parts.remove_part(demo, "A2").workplace()
    assert [duct.name for duct in workplace.ducts if duct.to == "J2"] == ["A1", "B1", "C1"]


def test_a_cleaner_leaves_a_meeting_of_ducts(demo):
    workplace = parts.remove_part(demo, "filter").workplace()
    assert not workplace.cleaners
    assert [(duct.name, duct.start, duct.to) for duct in workplace.ducts if "J4" in (duct.start, duct.to)] == [
        ("main", "J3", "J4"),
        ("link", "J4", "roof fan"),
    ]


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("buff", "buff hood serves nothing but 'buff'; take that hood away first"),
        ("buffing dust", "buff gives off 'buffing dust'; take that source away first"),
        ("J1", "'J1' is where ducts meet; take a duct away there"),
        ("booth fan", "'booth fan' still draws the air of lacquer booth"),
        ("stack", "'roof fan' needs 'stack' to lead its air on"),
        ("link", "'filter' needs 'link' to lead its air on; take 'filter' away instead"),
    ],
)
def test_what_others_need_stays(demo, name, words):
    with pytest.raises(InputError, match=words):
        parts.remove_part(demo, name)


def test_a_source_leaves_the_list_of_a_hood_that_has_others(demo):
    document = demo.set(("hoods", 0, "serves"), ["solder joint", "glue pot"])
    workplace = parts.remove_part(parts.remove_part(document, "glue cabinet"), "glue pot").workplace()
    assert workplace.hoods[0].serves == ("solder joint",)


@pytest.mark.parametrize("name", ["at the booth", "solder bench"])
def test_people_and_surfaces_are_taken_away(demo, name):
    document = parts.remove_part(demo, name)
    assert name not in [*names(document, "people"), *names(document, "surfaces")]
    assert comments(document) == comments(demo)


def test_everything_can_go_and_the_file_still_reads(demo):
    document = demo
    for section in ("hoods", "sources", "contaminants", "people", "surfaces"):
        for name in names(document, section):
            document = parts.remove_part(document, name)
    workplace = document.workplace()
    assert not (workplace.hoods or workplace.ducts or workplace.fans or workplace.cleaners or workplace.sources)
    assert names(one_hood(document), "hoods") == ["work hood"]
