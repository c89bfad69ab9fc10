"""A workplace file being edited: only the edited words change."""

import os

import pytest

from hoodwright.errors import FileConflict, HoodwrightError, InputError
from hoodwright.workplace import Document, parse_workplace
from two_hoods import TWO_HOODS, write_two_hoods

DEMO = TWO_HOODS
BLOCK = """hoodwright: 1   # first
name: Bench
room:
  size:
    - 4 m   # x
    - 3 m
    - 3 m   # z
  # remark on the draught
  draught:
    towards: [1, 0, 0]
    speed: 0.1 m/s   # guessed

# remark on the contaminants
contaminants:
- name: fume
  kind: fume
sources:
- {name: joint, contaminant: fume, at: [1 m, 1 m, 1 m], dispersion: still}   # the vice
hoods: []
"""


def changed_lines(before: str, after: str) -> list[tuple[str, str]]:
    return [pair for pair in zip(before.split("\n"), after.split("\n"), strict=True) if pair[0] != pair[1]]


def test_setting_a_flow_changes_one_line_and_keeps_its_comment():
    changed = Document(DEMO).set(("hoods", 0, "at", 1), "75 in")
    assert changed_lines(DEMO, changed.text) == [
        (
            "    at: [2.0 m, 1.90 m, 1.06 m]    # 100 mm from the joint",
            "    at: [2.0 m, 75 in, 1.06 m]    # 100 mm from the joint",
        )
    ]


def test_a_document_is_never_changed_itself():
    document = Document(DEMO)
    document.set(("units",), "US")
    assert document.text == DEMO


def test_words_are_given_as_typed():
    document = Document(DEMO)
    assert document.words(("sources", 0, "at", 1)) == "1.80 m"
    assert document.words(("sources", 0, "at")) == "[2.0 m, 1.80 m, 1.06 m]"
    assert document.words(("sources", 0, "capture_velocity")) is None


def test_a_missing_key_is_added_at_the_end_of_a_group_in_braces():
    changed = Document(DEMO).set(("fans", 0, "efficiency"), "60 %").set(("air", "altitude"), "0 m")
    assert "{name: roof fan, efficiency: 60 %}" in changed.text
    added = Document(DEMO).set(("cleaners", 0, "resistance", "exponent"), 1.5)
    assert changed_lines(DEMO, added.text)[0][1].endswith("at: 600 m3/h, exponent: 1.5}}")


def test_a_missing_key_is_added_below_the_last_line_of_a_block():
    added = Document(DEMO).set(("sources", 0, "capture_velocity"), "0.8 m/s")
    assert (
        "    dispersion: gentle             # still | gentle | driven | thrown\n"
        "    capture_velocity: 0.8 m/s\n"
        "  - name: open lacquer jar\n" in added.text
    )
    assert added.text.replace("    capture_velocity: 0.8 m/s\n", "") == DEMO


def test_a_missing_key_is_added_to_the_last_part_of_a_file_without_a_final_newline():
    text = DEMO[: DEMO.index("\nducts:")].rstrip("\n")
    added = Document(text).set(("hoods", 1, "flange"), "100 mm")
    assert added.text == text + "\n    flange: 100 mm"
    assert added.workplace().hoods[1].flange == pytest.approx(0.1)


def test_a_missing_key_is_added_right_below_a_nested_block_and_above_the_next_comment():
    added = Document(BLOCK).set(("room", "draught", "wander"), "0.05 m/s")
    assert added.text == BLOCK.replace("# guessed\n", "# guessed\n    wander: 0.05 m/s\n")


def test_a_missing_key_is_added_to_braces_over_several_lines():
    text = BLOCK.replace("[1, 0, 0]\n    speed: 0.1 m/s   # guessed", "[1, 0, 0]\n    speed: 0.1 m/s")
    text = text.replace("hoods: []", "air: {temperature: 21 degC,   # warm\n  altitude: 3 m   # low\n  }\nhoods: []")
    added = Document(text).set(("air", "relative_humidity"), "45 %")
    assert added.text == text.replace("altitude: 3 m ", "altitude: 3 m, relative_humidity: 45 % ")
    assert added.workplace().air.relative_humidity == pytest.approx(0.45)


def test_a_key_without_a_value_is_filled():
    text = BLOCK.replace("name: Bench\n", "name: Bench\nabout:   # later\nunits:\n")
    filled = Document(text).set(("about",), "A bench").set(("units",), "US")
    assert filled.text == text.replace("about: ", "about: A bench ").replace("units:", "units: US")


def test_a_block_list_is_replaced_and_the_comment_below_it_stays():
    changed = Document(BLOCK).set(("room", "size"), ["5 m", "4 m", "3 m"])
    assert "  size:\n    [5 m, 4 m, 3 m]   # z\n  # remark on the draught\n" in changed.text


def test_a_block_group_is_replaced_and_the_comment_below_it_stays():
    changed = Document(BLOCK).set(("room", "draught"), {"towards": [0, 1, 0], "speed": "0.2 m/s"})
    assert (
        "  draught:\n    {towards: [0, 1, 0], speed: 0.2 m/s}   # guessed\n\n# remark on the contaminants\n"
        in changed.text
    )


def test_line_ends_of_windows_are_kept():
    text = DEMO.replace("\n", "\r\n")
    document = Document(text).set(("sources", 0, "capture_velocity"), "0.8 m/s").set(("units",), "US")
    assert document.text.replace("\r\n", "").count("\n") == 0
    assert document.text.replace("\r\n", "").count("\r") == 0
    assert document.workplace().sources[0].capture_velocity == pytest.approx(0.8)


@pytest.mark.parametrize(
    "text",
    [
        "Werkbank für Glöckchen 鐘",
        "a: b",
        "# no comment",
        "null",
        "12",
        "yes",
        "1e5",
        "[x]",
        "it's",
        'say "so"',
        "- x",
        "@",
    ],
)
def test_any_text_is_quoted_where_it_must_be(text):
    changed = Document(DEMO).set(("about",), text)
    assert parse_workplace(changed.text).about == text


def test_a_plain_text_is_not_quoted():
    assert "\nabout: Two benches\n" in Document(DEMO).set(("about",), "Two benches").text


def test_a_value_that_an_alias_repeats_is_not_changed_in_two_places():
    text = DEMO.replace("at: [5.0 m, 1.70 m", "at: &jar [5.0 m, 1.70 m").replace("[5.0 m, 2.10 m, 1.10 m]", "*jar")
    with pytest.raises(HoodwrightError, match=r"cannot write '1.6 m' at sources\[open lacquer jar\].at\[#2\]; edit"):
        Document(text).set(("sources", 1, "at", 1), "1.6 m")


def test_a_group_that_is_not_there_is_not_invented():
    with pytest.raises(
        InputError, match=r"hoods\[table hood\].today.flow: its group is not in the file; add the group"
    ):
        Document(DEMO).set(("hoods", 1, "today", "flow"), "200 m3/h")


def test_a_text_that_is_not_yaml_is_not_edited():
    with pytest.raises(InputError, match="the file has faults; mend them first: workplace:1:5: file: cannot be read"):
        Document("a: [").set(("a",), 1)


def test_save_and_open_round_trip(tmp_path):
    file = tmp_path / "bench.yaml"
    write_two_hoods(file)
    document = Document.open(file)
    assert (document.text, document.edited) == (DEMO, False)
    edited = document.set(("units",), "US")
    assert edited.edited
    saved = edited.save()
    assert not saved.edited
    assert file.read_bytes() == DEMO.replace("units: SI", "units: US").encode()
    assert Document.open(file) == saved
    assert os.listdir(tmp_path) == ["bench.yaml"]


def test_a_file_that_changed_meanwhile_is_not_overwritten(tmp_path):
    file = tmp_path / "bench.yaml"
    write_two_hoods(file)
    document = Document.open(file).set(("units",), "US")
    file.write_text(DEMO + "# from elsewhere\n", encoding="utf-8")
    with pytest.raises(FileConflict) as caught:
        document.save()
    assert str(caught.value) == (
        f"{file} changed on disk since it was read; nothing was written: reload it, save under another name, "
        "or overwrite on purpose"
    )
    assert file.read_text(encoding="utf-8") == DEMO + "# from elsewhere\n"
    document.save(overwrite=True)
    assert "units: US" in file.read_text(encoding="utf-8")


def test_another_file_is_not_overwritten(tmp_path):
    one, other = tmp_path / "one.yaml", tmp_path / "other.yaml"
    write_two_hoods(one)
    other.write_text("mine\n", encoding="utf-8")
    with pytest.raises(FileConflict, match=r"other.yaml exists already; nothing was written: save under another name"):
        Document.open(one).save(other)
    assert other.read_text(encoding="utf-8") == "mine\n"


def test_a_link_is_written_through(tmp_path):
    file, link = tmp_path / "bench.yaml", tmp_path / "link.yaml"
    write_two_hoods(file)
    link.symlink_to(file)
    Document.open(link).set(("units",), "US").save()
    assert link.is_symlink()
    assert "units: US" in file.read_text(encoding="utf-8")


def test_rights_of_the_file_are_kept(tmp_path):
    file = tmp_path / "bench.yaml"
    write_two_hoods(file)
    file.chmod(0o640)
    Document.open(file).set(("units",), "US").save()
    assert file.stat().st_mode & 0o777 == 0o640


def test_a_folder_that_is_not_there_is_told(tmp_path):
    with pytest.raises(InputError, match="no such file or directory; choose another place"):
        Document(DEMO).save(tmp_path / "none" / "bench.yaml")


def test_a_document_without_a_file_cannot_be_saved():
    with pytest.raises(InputError, match="no file name; say where to save"):
        Document(DEMO).save()


def test_a_byte_order_mark_is_read_over(tmp_path):
    file = tmp_path / "bench.yaml"
    file.write_bytes(b"\xef\xbb\xbf" + DEMO.encode())
    assert Document.open(file).workplace().name == "Bell and instrument workshop"


def test_the_checksum_is_that_of_the_text():
    # sha256sum of an empty file, as printed by coreutils
    assert Document("").checksum == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"


REMOVABLE = """hoods:
  - name: nozzle   # its name
    flange: 100 mm   # wide enough
    # a line of its own
    today: {flow: 3 m3/h, uncertainty: 5 %, date: spring}   # read
    commissioned:
      flow: 4 m3/h
  - flange: 3 mm
    name: canopy
  - {name: booth, flange: 2 mm}
"""


def removed(*path) -> tuple[list[str], list[str]]:
    """Lines that go, and lines that stand in their place."""
    new = Document(REMOVABLE).remove(path).text
    old_lines, new_lines = REMOVABLE.splitlines(), new.splitlines()
    gone = [line for line in old_lines if line not in new_lines]
    return gone, [line for line in new_lines if line not in old_lines]


def test_a_removed_key_leaves_its_comment():
    gone, came = removed("hoods", 0, "flange")
    assert gone == ["    flange: 100 mm   # wide enough"]
    assert came == ["    # wide enough"]


@pytest.mark.parametrize(
    "key, left",
    [
        ("flow", "{uncertainty: 5 %, date: spring}"),
        ("uncertainty", "{flow: 3 m3/h, date: spring}"),
        ("date", "{flow: 3 m3/h, uncertainty: 5 %}"),
    ],
)
def test_a_key_of_an_inline_group_goes_with_its_comma(key, left):
    assert removed("hoods", 0, "today", key)[1] == [f"    today: {left}   # read"]


def test_a_group_goes_with_its_last_key():
    assert removed("hoods", 0, "commissioned", "flow") == (["    commissioned:", "      flow: 4 m3/h"], [])


def test_a_key_beside_the_dash_gives_its_place_to_the_next():
    assert removed("hoods", 1, "flange") == (["  - flange: 3 mm", "    name: canopy"], ["  - name: canopy"])


def test_the_last_key_of_an_inline_entry_goes():
    assert removed("hoods", 2, "flange") == (["  - {name: booth, flange: 2 mm}"], ["  - {name: booth}"])


def test_line_ends_of_a_file_stay_as_they_are():
    text = REMOVABLE.replace("\n", "\r\n")
    new = Document(text).remove(("hoods", 0, "flange")).text
    assert new.count("\n") == new.count("\r\n") == text.count("\r\n")


@pytest.mark.parametrize("path", [("hoods", 0, "filter"), ("hoods", 0), ("hoods", 0, "today", "flow", 0)])
def test_what_is_not_a_key_of_the_file_is_not_removed(path):
    with pytest.raises(InputError, match="says nothing there that could be removed"):
        Document(REMOVABLE).remove(path)


def test_an_anchor_that_is_used_elsewhere_is_not_removed():
    with pytest.raises(HoodwrightError, match=r"cannot remove a; edit the file by hand there"):
        Document("a: &size 100 mm\nb: *size\n").remove(("a",))
