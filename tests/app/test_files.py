"""Files, ducts and routes: what a visitor and a machine are told."""

import time

import pytest
from nicegui.testing import User

PATIENCE = 40


async def see(user: User, text: str) -> None:
    await user.should_see(text, retries=PATIENCE)


async def test_every_fault_of_a_file_is_told_with_its_place(visitor: User, folder):
    text = (folder / "demo.yaml").read_text(encoding="utf-8")
    text = text.replace("flange: 100 mm", "flange: 3 kg").replace("kind: vapour", "kind: vapor")
    (folder / "demo.yaml").write_text(text, encoding="utf-8")
    await visitor.open("/")
    await see(visitor, "demo.yaml has 2 faults; mend them first")
    await see(visitor, "hoods[bench nozzle].flange: ")
    await see(visitor, "did you mean 'vapour'?")
    await see(visitor, "Download YAML")


async def test_an_empty_folder_says_what_to_do(visitor: User, folder):
    (folder / "demo.yaml").unlink()
    await visitor.open("/")
    await see(visitor, "There is no workplace file here")
    await see(visitor, "hoodwright new workplace.yaml")


@pytest.mark.parametrize("name", ["../secret.yaml", "/etc/passwd", "nobody.yaml"])
async def test_only_files_of_the_folder_are_shown(visitor: User, folder, name: str):
    (folder.parent / "secret.yaml").write_text((folder / "demo.yaml").read_text(encoding="utf-8"), encoding="utf-8")
    await visitor.open(f"/?file={name}")
    await see(visitor, f"There is no workplace file {name}")


async def test_names_from_a_file_are_text_and_never_markup(visitor: User, folder):
    text = (folder / "demo.yaml").read_text(encoding="utf-8")
    (folder / "demo.yaml").write_text(text.replace("bench nozzle", "<b>nozzle</b>"), encoding="utf-8")
    await visitor.open("/")
    await see(visitor, "Change the <b>nozzle</b>")


async def test_ducts_are_told_as_cards(visitor: User):
    await visitor.open("/ducts")
    await see(visitor, "the roof fan must raise 1390\u2009Pa of total pressure at 4750\u2009m³/h")
    await see(visitor, "Duct from bench nozzle to J1, round 100\u2009mm")
    for name in ("velocity pressure", "friction", "elbow 90 deg, 5 pieces", "branch entry 30 deg", "acceleration"):
        await see(visitor, name)
    for name in ("filter, dirty", "static pressure at the start", "static pressure at the end"):
        await see(visitor, name)
    await see(visitor, "-187\u2009Pa")
    await see(visitor, "friction = f L / D x VP")


async def test_a_junction_tells_who_governs_and_three_ways_out(visitor: User):
    await visitor.open("/ducts")
    await see(visitor, "Junction; A1 governs, it needs the most suction")
    await see(visitor, "Ratio of static pressures 0.68")
    for way in ("another size", "more flow", "damper"):
        await see(visitor, way)


async def test_every_fan_has_its_own_system(visitor: User):
    await visitor.open("/ducts")
    await see(visitor, "Through the roof fan")
    await see(visitor, "Through the booth fan")
    await see(visitor, "List of materials")


async def test_a_workplace_without_ducts_says_so(visitor: User, folder):
    text = (folder / "demo.yaml").read_text(encoding="utf-8")
    (folder / "demo.yaml").write_text(text[: text.index("ducts:")], encoding="utf-8")
    await visitor.open("/ducts")
    await see(visitor, "The file has no ducts yet")


async def test_a_long_pdf_tells_what_it_does_and_can_be_cancelled(visitor: User, monkeypatch):
    from hoodwright.web.components import downloads

    def slow(progress, *_):
        for step in range(1000):
            progress.report(step / 1000, "setting page one")
            time.sleep(0.02)

    monkeypatch.setattr(downloads, "_pdf", slow)
    await visitor.open("/")
    visitor.find("PDF").click()
    await see(visitor, "setting page one")
    visitor.find("Cancel").click()
    await see(visitor, "cancelled; no PDF was written")


async def test_machines_get_the_answer_in_si(visitor: User):
    reply = await visitor.http_client.get("/api/assessment")
    assert reply.status_code == 200
    hood = reply.json()["hoods"][0]
    assert hood["name"] == "bench nozzle"
    assert hood["flow_m3_s"] == pytest.approx(320 / 3600)


async def test_machines_get_all_faults(visitor: User, folder):
    text = (folder / "demo.yaml").read_text(encoding="utf-8")
    (folder / "demo.yaml").write_text(text.replace("flange: 100 mm", "flange: 3 kg"), encoding="utf-8")
    reply = await visitor.http_client.get("/api/assessment")
    assert reply.status_code == 422
    assert "hoods[bench nozzle].flange" in reply.json()["faults"][0]


async def test_machines_are_told_of_a_file_that_is_not_there(visitor: User):
    reply = await visitor.http_client.get("/api/assessment?file=nobody.yaml")
    assert reply.status_code == 404


async def test_health(visitor: User):
    assert (await visitor.http_client.get("/health")).json() == {"ok": True}
