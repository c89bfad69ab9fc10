"""Cards of junctions and fans: three ways to balance, and what the motor and the catalogue are asked."""

import shutil
from pathlib import Path

from nicegui.testing import User

EXAMPLE = Path(__file__).parents[2] / "examples" / "five-hoods.yaml"


async def see(user: User, text: str) -> None:
    await user.should_see(text, retries=40)


async def test_every_side_has_three_ways(visitor: User, folder):
    shutil.copy(EXAMPLE, folder / "five-hoods.yaml")
    await visitor.open("/ducts?file=five-hoods.yaml")
    await see(visitor, "a round duct of 153\u2009mm would agree at the same flow")
    await see(visitor, "341\u2009m³/h; with every side corrected the main carries 761\u2009m³/h")
    await see(visitor, "33.9\u2009Pa, 0.44 velocity pressures of A")


async def test_fan_of_belts_tells_its_motor_and_the_catalogue(visitor: User, folder):
    shutil.copy(EXAMPLE, folder / "five-hoods.yaml")
    await visitor.open("/ducts?file=five-hoods.yaml")
    await see(visitor, "motor power, with belt loss")
    await see(visitor, "fan static pressure at standard density")
    await see(visitor, "It carries cleaned air")
