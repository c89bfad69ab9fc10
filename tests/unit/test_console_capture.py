"""What `hoodwright capture` prints: sentence, table, where to look next; and how Ctrl-C ends it."""

import json

import pytest
from typer.testing import CliRunner

from capture_shop import CABINET, SHOP, text
from hoodwright import console_capture
from hoodwright.cli import app
from hoodwright.console_capture import HEADINGS, computed
from hoodwright.jobs import Job
from hoodwright.workplace import Document

WIDEST = 100
LONG = "the nozzle with the longest name that a workplace file takes"


@pytest.fixture
def run(tmp_path):
    def capture(words, *options):
        file = tmp_path / "shop.yaml"
        file.write_text(words, encoding="utf-8")
        return CliRunner().invoke(app, ["capture", str(file), *options])

    return capture


def test_sentence_table_banner_and_where_to_look_next(run, tmp_path):
    figure = tmp_path / "curve.svg"
    result = run(SHOP, "--distances", "50mm,100mm", "--plot", str(figure))
    assert result.exit_code == 0 and figure.exists()
    assert result.stdout.startswith("The nozzle, 50\u2009mm from the joint,")
    plain = " ".join(result.stdout.split())
    assert plain.count("not validated for capture") == 1 and plain.count("By the handbook, there:") == 2
    heads = ["Source", "hood", "distance", "flow", "captured", "interval", "claim", "handbook"]
    assert any(line.split() == heads for line in result.stdout.splitlines())
    assert "hoodwright assess" in result.stdout and "--json" in result.stdout


def test_the_definition_states_the_spreads_of_the_file(run):
    words = text(("contaminants:", "uncertainty: {flow: 7 %, position: 15 mm}\ncontaminants:"))
    told = " ".join(run(words).stdout.split())
    assert "flow (± 7 %), place (± 15 mm)" in told and "draught (± 0.05 m/s)" in told


def test_no_line_is_wider_than_the_page(run):
    result = run(text(("nozzle", LONG)), "--distances", "50mm,400mm")
    assert max(map(len, result.stdout.splitlines())) <= WIDEST


def test_the_longest_interval_and_verdict_fit_their_columns():
    widths = dict(HEADINGS)
    assert widths["interval"] >= len("< 5 % to > 95 %") and widths["handbook"] >= len("meets the need")


def test_an_enclosure_tells_its_openings_and_where_it_would_spill(run):
    told = " ".join(run(CABINET).stdout.split())
    assert "Inward through the main opening:" in told and "It would spill first at the main opening" in told
    assert "cannot tell" in told and "% captured" not in told


def test_json_has_nothing_but_json(run):
    told = json.loads(run(SHOP, "--json", "--distances", "100mm").stdout)
    assert [row["distance_m"] for row in told["series"]] == pytest.approx([0.1])


def test_an_error_names_file_line_and_field(run):
    result = run(text(("1.3 m, 1.1 m]", "1.45 m, 1.1 m]")))
    assert result.exit_code != 0 and "sources[joint].at" in str(result.exception)


def test_ctrl_c_ends_with_one_line_and_130(tmp_path, monkeypatch, capsys):
    file = tmp_path / "shop.yaml"
    file.write_text(SHOP, encoding="utf-8")
    jobs = []

    def pressed(self, timeout=None):
        jobs.append(self)
        raise KeyboardInterrupt

    monkeypatch.setattr(Job, "result", pressed)
    with pytest.raises(SystemExit) as end:
        computed(Document.open(file), None, None, None, today=False)
    assert end.value.code == 130 and jobs[0].progress.cancelled
    assert capsys.readouterr().err.strip().splitlines() == ["stopped; nothing more was written"]


def test_the_bar_has_words(tmp_path, monkeypatch):
    file = tmp_path / "shop.yaml"
    file.write_text(SHOP, encoding="utf-8")
    said = []

    class Bar(console_capture.Bar):
        def update(self, *args, **named):
            said.append((named["completed"], named["description"]))
            super().update(*args, **named)

    monkeypatch.setattr(console_capture, "Bar", Bar)
    computed(Document.open(file), None, None, None, today=False)
    assert said[-1] == (1.0, "done") and any("following particles from the joint" in words for _, words in said)
    assert [share for share, _ in said] == sorted(share for share, _ in said)
