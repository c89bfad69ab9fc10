"""What the command line prints: at most 100 columns, whatever the workplace."""

import io
import re
from pathlib import Path

import pytest
from rich.cells import cell_len
from rich.console import Console

from hoodwright.console import WIDTH, console, print_answer, say
from hoodwright.tasks.assess import assess
from hoodwright.workplace import parse_workplace
from odd_hoods import ODD_HOODS
from two_hoods import TWO_HOODS

DEMO = TWO_HOODS


def printed(capsys, text: str, system: str = "SI", file: str = "bench.yaml") -> str:
    print_answer(assess(parse_workplace(text), system), Path(file))
    return capsys.readouterr().out


def test_the_answer_comes_first_then_the_numbers_then_what_to_mind(capsys):
    text = printed(capsys, DEMO)
    order = ["The bench nozzle, 100", "The table hood is", "\nHood ", "\nDuct ", "Junction J1: A1 governs", "Fan roof fan:", "Mind", "Equations and sources:"]  # fmt: skip  # noqa: E501
    places = [text.index(words) for words in order]
    assert places == sorted(places)


def test_the_four_flows_are_kept_apart(capsys):
    (row,) = [line for line in printed(capsys, DEMO).splitlines() if line.startswith("bench nozzle")]
    assert re.split(r" {2,}", row.replace("\u2009", " ")) == [
        "bench nozzle", "291", "320", "326", "338", "meets the need", "meets the need",
    ]  # fmt: skip


def test_a_bound_is_marked_as_such(capsys):
    (row,) = [line for line in printed(capsys, DEMO).splitlines() if line.startswith("table hood")]
    assert "> 629 " in row


def test_each_outcome_has_its_mark_and_its_words(capsys):
    text = printed(capsys, DEMO)
    assert "  ● Is what was intended enough? Meets the need:" in text
    assert "  △ Is what was intended enough? Falls short:" in text
    assert "  ◧ Is it met today? Cannot tell:" in text


@pytest.mark.parametrize("system", ["SI", "US"])
@pytest.mark.parametrize("file", ["bench.yaml", "/a/rather/long/path" * 8 + "/bench.yaml"])
def test_no_line_is_wider_than_100_columns(capsys, system, file):
    wide = DEMO
    for name in ("bench nozzle", "table hood", "roof fan", "open lacquer jar", "solder joint", "lacquer thinner"):
        wide = wide.replace(name, f"{name} " + "of a very long name " * 2 + "abc")
    for text in (DEMO, wide, wide.replace("Invented for", "x" * 150)):
        assert max(len(line.rstrip()) for line in printed(capsys, text, system, file).splitlines()) <= WIDTH


def test_a_number_never_parts_from_its_unit(capsys):
    lines = printed(capsys, DEMO).splitlines()
    under_headings = {i + 1 for i, line in enumerate(lines) if line.startswith(("Hood ", "Duct "))}
    for i, line in enumerate(lines):
        assert i in under_headings or not line.strip().startswith(("m³/h", "mm", "Pa", "W"))


def test_units_stand_once_below_the_headings(capsys):
    lines = printed(capsys, DEMO).splitlines()
    below = [lines[i + 1].split() for i, line in enumerate(lines) if line.startswith(("Hood ", "Duct "))]
    assert below == [["m³/h"] * 4, ["m³/h", "m/s", "m/s", "Pa", "Pa"]]


def test_an_enclosure_says_how_fast_air_goes_in(capsys):
    told = printed(capsys, ODD_HOODS)
    start = told.index("The robot cell,")
    block = " ".join(told[start : told.index("\n\n", start)].split())
    assert re.search(
        r"Inward through main opening, 3 x cable port and gap under the door: [\d.]+ m/s at 700 m³/h", block
    )
    assert "at today's 650 m³/h" in block


def test_what_nothing_tells_is_unknown(capsys):
    (row,) = [line for line in printed(capsys, ODD_HOODS).splitlines() if line.startswith("cut catcher ")]
    assert row.split()[2] == "unknown" and "> 0" not in row


def test_cautions_about_one_thing_stand_together(capsys):
    told = printed(capsys, ODD_HOODS)
    mind = told[told.index("\nMind") :]
    assert len(re.findall(r"^  tray slot:", mind, re.M)) <= 1
    assert len(re.findall(r"^    - ", mind, re.M)) > 5


@pytest.mark.parametrize("width", [80, 60])
def test_narrow_terminals_fold_names_and_never_numbers(capsys, monkeypatch, width):
    monkeypatch.setattr(
        "hoodwright.console.console", lambda file=None: Console(width=width, highlight=False, markup=False, emoji=False)
    )
    told = printed(capsys, DEMO)
    assert max(len(line.rstrip()) for line in told.splitlines()) <= width
    if width == 80:
        assert re.search(r"round 100\u2009mm", told) and re.search(r"\b320\b", told)


def test_each_side_of_a_junction_has_three_ways(capsys):
    told = printed(capsys, DEMO)
    junction = told[told.index("Junction J1") : told.index("Fan roof fan")]
    for way in ("another size:", "more flow:", "damper:"):
        assert way in junction


def test_no_colour_when_it_is_piped(capsys):
    assert "\x1b" not in printed(capsys, DEMO)


def test_square_brackets_and_colons_are_printed_as_they_are(capsys):
    text = DEMO.replace("Bell and instrument workshop", "'[red]Bell[/red] :bell:'")
    assert printed(capsys, text).startswith("[red]Bell[/red] :bell: - Invented")


def test_a_fan_without_cleaner_and_efficiency(capsys):
    text = DEMO.replace("roof fan, efficiency: 55 %", "roof fan").replace(
        "clean: 250 Pa, dirty: 500 Pa", "clean: 0 Pa, dirty: 0 Pa"
    )
    assert "W air power, no efficiency given." in printed(capsys, text)
    assert "with loaded cleaners" not in printed(capsys, text)


def test_dust_that_settles_is_told_below_the_ducts(capsys):
    text = printed(capsys, DEMO.replace("kind: fume", "kind: dust"))
    assert "△ A1: 11.3\u2009m/s is slower than the 17.8\u2009m/s that keep workshop dust moving" in text


def test_without_ducts_no_table_of_ducts(capsys):
    text = printed(capsys, DEMO[: DEMO.index("\nducts:")])
    assert "Duct " not in text
    assert "Fan " not in text


def test_signs_that_a_terminal_lacks_are_written_in_letters():
    stream = io.TextIOWrapper(io.BytesIO(), encoding="ascii", errors="replace")
    out = console(stream)
    say(out, "± and ° " * 30)
    stream.flush()
    assert max(map(len, stream.buffer.getvalue().splitlines())) <= WIDTH


def test_letters_of_two_columns_fit_too():
    stream = io.StringIO()
    say(Console(file=stream, width=60), "溶接ブース で はたらく ひと " * 8)
    assert max(cell_len(line) for line in stream.getvalue().splitlines()) <= 60


def test_say_indents_what_follows():
    stream = io.StringIO()
    say(Console(file=stream, width=20), "one two three four five", "    ", "  - ")
    assert stream.getvalue() == "  - one two three\n    four five\n"
