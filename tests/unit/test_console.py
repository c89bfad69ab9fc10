"""What the command line prints: at most 100 columns, whatever the workplace."""

import io
import re
from pathlib import Path

import pytest
from rich.console import Console

from hoodwright.console import WIDTH, console, print_answer, say
from hoodwright.tasks.assess import assess
from hoodwright.workplace import parse_workplace
from hoodwright.workplace.starters import starter_text

DEMO = starter_text("demo")


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
        "bench nozzle", "291 m³/h", "320 m³/h", "326 m³/h", "338 m³/h", "meets the need", "meets the need",
    ]  # fmt: skip


def test_a_bound_is_marked_as_such(capsys):
    assert "> 629\u2009m³/h" in printed(capsys, DEMO)


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
    lines = [line.strip() for line in printed(capsys, DEMO).splitlines()]
    assert not any(line.startswith(("m³/h", "mm", "Pa", "W")) for line in lines)


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


def test_say_indents_what_follows():
    stream = io.StringIO()
    say(Console(file=stream, width=20), "one two three four five", "    ", "  - ")
    assert stream.getvalue() == "  - one two three\n    four five\n"
