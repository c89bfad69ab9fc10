"""The front-door files run, and give the numbers that they tell."""

import importlib.util
from pathlib import Path

import pytest

from hoodwright.results import Verdict
from hoodwright.tasks.assess import assess
from hoodwright.workplace import read_workplace

EXAMPLES = Path(__file__).parents[2] / "examples"
WORKPLACES = (
    "3d-printing",
    "battery-charging",
    "five-hoods",
    "foundry",
    "lab-cupboards",
    "nail-table",
    "pharmacy-powders",
    "spray-room",
    "stone-bench",
    "welding-arm",
    "wood-shop",
)


def run(name: str):
    spec = importlib.util.spec_from_file_location(name, EXAMPLES / f"{name}.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module.main()


def test_every_example_is_run_here():
    scripts = {"an_inch_matters.py", "assess_in_python.py"}
    assert {p.name for p in EXAMPLES.iterdir() if p.is_file()} == scripts | {f"{name}.yaml" for name in WORKPLACES}


@pytest.mark.parametrize("name", WORKPLACES)
def test_every_workplace_is_assessed_and_says_it_is_invented(name):
    workplace = read_workplace(EXAMPLES / f"{name}.yaml")
    answer = assess(workplace)
    assert len(answer.hoods) == len(workplace.hoods)
    assert "nvented" in answer.about
    assert all(hood.sentence.endswith(".") and "nan" not in hood.sentence.split() for hood in answer.hoods)


def test_an_inch_matters():
    rows = run("an_inch_matters")
    # By hand: V (10 X^2 + A) = 0.5 x (10 x 0.1016^2 + 0.0081073) = 0.055666 m3/s at 4 in.
    assert rows[3] == (pytest.approx(0.1016), pytest.approx(0.055666, rel=1e-4))
    assert [flow for _, flow in rows] == sorted(flow for _, flow in rows)


def test_assess_in_python(capsys):
    nozzle, canopy, cabinet, *_ = (sentence.replace("\u2009", " ") for sentence in run("assess_in_python"))
    assert nozzle.startswith("The bench nozzle, 100 mm from the solder joint, needs 291 m³/h")
    assert canopy.startswith("The crucible canopy, 1100 mm above the crucible, needs 2890 m³/h")
    # By hand: 0.9 x 0.35 m at 100 fpm = 0.508 m/s is 0.16002 m3/s.
    assert cabinet.startswith("The glue cabinet, around the glue pot, needs 576 m³/h")


def test_welding_arm():
    # By hand: X = sqrt(8^2 + 8^2) in = 0.28737 m, A = 10 x 6 in = 0.038710 m2, V = 1 m/s (carcinogen, upper end):
    # Q = 0.75 x (10 x 0.28737^2 + 0.038710) = 0.64840 m3/s = 1374 cfm, so 900 cfm falls short by 474 cfm.
    # The opening's circle of equal area is 8.74 in, and X lies within 1.5 of it.
    answer = assess(read_workplace(EXAMPLES / "welding-arm.yaml"))
    hood = answer.hoods[0]
    assert hood.worst.flow == pytest.approx(0.64840, rel=1e-4)
    assert hood.enough.verdict is Verdict.SHORT and "474" in hood.enough.because
    assert hood.met.verdict is Verdict.SHORT and "260" in hood.met.because
    assert any("flexible" in caution.text for caution in answer.cautions)
