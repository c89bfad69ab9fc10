"""The laboratory, pharmacy and spray examples give the numbers that docs/workplaces.md tells."""

import math
from pathlib import Path

import pytest

from hoodwright.results import Verdict
from hoodwright.tasks.assess import assess
from hoodwright.workplace import read_workplace

EXAMPLES = Path(__file__).parents[2] / "examples"
FPM = 0.00508
SHORT, MEETS, CANNOT = Verdict.SHORT, Verdict.MEETS, Verdict.CANNOT_TELL


def answered(name: str):
    return {hood.name: hood for hood in assess(read_workplace(EXAMPLES / f"{name}.yaml")).hoods}


def test_lab_cupboards():
    hoods = answered("lab-cupboards")
    # By hand: 1.5 x 0.5 m at 80 fpm; 1.2 x 0.5 + 0.6 x 0.04 m at 120 fpm (carcinogen); 1.2 x 0.5 m at 0.5 m/s.
    needed = {"solvent cupboard": 0.75 * 80 * FPM, "sample cupboard": 0.624 * 120 * FPM, "acid cupboard": 0.3}
    assert {name: hood.worst.flow for name, hood in hoods.items()} == pytest.approx(needed)
    assert [hood.enough.verdict for hood in hoods.values()] == [MEETS, SHORT, MEETS]
    assert [hood.met.verdict for hood in hoods.values()] == [CANNOT, SHORT, SHORT]


def test_pharmacy_powders():
    hoods = answered("pharmacy-powders")
    # By hand: 0.8 x 0.25 m at 80 fpm; 1.0 x 0.8 m and a hole of 0.2 m at 0.5 m/s, and 9.99 x 1500 kg/h / 620 kg/m3;
    # a port of 0.2 m at 100 fpm.
    hole = math.pi / 4 * 0.04
    assert hoods["balance enclosure"].worst.flow == pytest.approx(0.2 * 80 * FPM)
    assert hoods["tipping booth"].worst.flow == pytest.approx((0.8 + hole) * 0.5 + 9.99 * 1500 / 3600 / 620)
    assert hoods["glove box"].worst.flow == pytest.approx(hole * 100 * FPM)
    assert [hood.enough.verdict for hood in hoods.values()] == [MEETS, SHORT, MEETS]


def test_spray_room():
    hoods = answered("spray-room")
    # By hand: 4 x 2.8 m at 125 fpm and 0.9 x 0.6 m at 170 fpm (isocyanate, upper ends).
    assert hoods["spray room"].worst.flow == pytest.approx(11.2 * 125 * FPM)
    assert hoods["mixing cabinet"].worst.flow == pytest.approx(0.54 * 170 * FPM)
    assert [hood.enough.verdict for hood in hoods.values()] == [MEETS, SHORT]
    assert hoods["spray room"].met.verdict is SHORT
