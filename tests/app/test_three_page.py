"""Three: beside, above and around side by side, each with its scene, its words and what the computed air says."""

from nicegui import ui
from nicegui.testing import User

from hoodwright.web.components.scene import Scene

PATIENCE = 80
DISTANCE = "Distance, beside it and above it"


async def see(user: User, text: str) -> None:
    await user.should_see(text, retries=PATIENCE)


async def fill(user: User, text: str) -> None:
    with user:
        next(iter(user.find(marker=DISTANCE, kind=ui.input).elements)).value = text


def scenes(user: User) -> list[Scene]:
    return sorted(user.find(kind=Scene).elements, key=lambda scene: scene.id)


async def test_the_three_stand_side_by_side_with_their_words(visitor: User):
    await visitor.open("/three")
    await see(visitor, "Where should the hood go?")
    await see(visitor, "The opening stands upright, 100\u2009mm beside the solder joint, and draws the air sideways.")
    await see(visitor, "The opening looks down from 100\u2009mm above the solder joint")
    await see(visitor, "A box stands round the solder joint")
    await see(visitor, "Left out of all three: 2 people, 4 other hoods, 4 other sources.")
    await see(visitor, "not validated for capture")
    assert len(scenes(visitor)) == 3


async def test_the_sentence_tells_what_the_computed_air_found(visitor: User):
    await visitor.open("/three")
    await see(visitor, "100\u2009mm beside it, not computed yet")
    await see(visitor, "of the flux fume is caught; around it, the air goes in through the opening at 0.71")
    await see(visitor, "it would spill")
    box = next(iter(visitor.find(marker="computed enclosed").elements))
    assert "%" not in box.text


async def test_each_scene_asks_for_the_air_of_its_own_arrangement(visitor: User):
    await visitor.open("/three?file=demo.yaml&hood=crucible canopy&source=crucible&distance=0.3")
    await see(visitor, "300\u2009mm beside the edge of the crucible")
    urls = [scene.props["live"]["url"] for scene in scenes(visitor)]
    for key, url in zip(("beside", "above", "enclosed"), urls, strict=True):
        assert url == f"/live?file=demo.yaml&hood=crucible+canopy&source=crucible&distance=0.3&arrangement={key}"
    assert [scene.props["live"]["source"] for scene in scenes(visitor)] == ["crucible"] * 3
    assert [scene.props["live"]["hood"] for scene in scenes(visitor)] == ["hood beside", "hood above", "box"]


async def test_a_distance_in_any_unit_moves_beside_and_above(visitor: User):
    await visitor.open("/three")
    await see(visitor, "100\u2009mm beside the solder joint")
    await fill(visitor, "8 in")
    await see(visitor, "203\u2009mm beside the solder joint")
    await see(visitor, "203\u2009mm above the solder joint")
    await see(visitor, "203\u2009mm = 8\u2009in")


async def test_a_distance_that_cannot_be_is_said_at_the_field(visitor: User):
    await visitor.open("/three")
    await see(visitor, "100\u2009mm beside the solder joint")
    for text, told in (("5 kg", "kg"), ("1 mm", "got a distance of 0.001 m; allowed"), ("2.9 m", "ceiling")):
        await fill(visitor, text)
        field = next(iter(visitor.find(marker=DISTANCE, kind=ui.input).elements))
        assert told in (field.error or "")
    await see(visitor, "100\u2009mm beside the solder joint")


async def test_another_hood_of_the_file(visitor: User):
    await visitor.open("/three?part=lacquer booth")
    await see(visitor, "The lacquer booth, as it is in the file, stands round the spray gun")
    visitor.find("glue cabinet, glue pot").click()
    await see(visitor, "150\u2009mm beside the glue pot")


async def test_units_follow_the_file(visitor: User, folder):
    text = (folder / "demo.yaml").read_text(encoding="utf-8").replace("units: SI", "units: US")
    (folder / "demo.yaml").write_text(text, encoding="utf-8")
    await visitor.open("/three")
    await see(visitor, "3.94\u2009in beside the solder joint")
    await see(visitor, "With 188\u2009cfm in each")


async def test_a_change_of_the_draft_is_followed(visitor: User):
    await visitor.open("/three")
    await see(visitor, "100\u2009mm beside the solder joint")
    visitor.find("US").click()
    await see(visitor, "3.94\u2009in beside the solder joint")
    await fill(visitor, "6 in")
    await see(visitor, "6\u2009in above the solder joint")


async def test_a_source_without_space_is_said(visitor: User, folder):
    text = (folder / "demo.yaml").read_text(encoding="utf-8")
    (folder / "demo.yaml").write_text(text.replace("at: [2.0 m, 1.80 m,", "at: [2.0 m, 6.98 m,"), encoding="utf-8")
    await visitor.open("/three?hood=bench nozzle&distance=0.1")
    await see(visitor, "The three cannot be compared: there is no space round the solder joint")
