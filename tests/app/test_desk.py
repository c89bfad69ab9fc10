"""The desk and its drafts: what is kept, what is asked before it is lost."""

from dataclasses import replace

import pytest

from hoodwright.errors import FileConflict, InputError
from hoodwright.tasks.edits import moved_by
from hoodwright.tasks.stretches import stretches
from hoodwright.web import Desk
from hoodwright.web.app import free_port


@pytest.fixture
def draft(folder):
    return Desk(folder).draft()


def nudge(draft, step=0.01, key=None):
    draft.edit(moved_by(draft.document, "bench nozzle", (0.0, step, 0.0)), key)


def test_one_draft_for_one_file(folder):
    desk = Desk(folder)
    assert desk.draft() is desk.draft("demo.yaml")


def test_the_named_file_comes_first(folder):
    (folder / "a.yaml").write_text((folder / "demo.yaml").read_text(encoding="utf-8"), encoding="utf-8")
    assert Desk(folder, folder / "demo.yaml").draft().path.name == "demo.yaml"
    assert Desk(folder).draft().path.name == "a.yaml"


def test_edits_with_one_key_are_one_step_back(draft):
    first = draft.document.text
    for _ in range(5):
        nudge(draft, key="distance")
    nudge(draft, key="other")
    assert len(draft.past) == 2
    draft.undo()
    draft.undo()
    assert draft.document.text == first
    assert not draft.edited


def test_an_edit_after_a_pause_is_a_step_of_its_own(draft, monkeypatch):
    from hoodwright.web import draft as drafts

    now = [100.0]
    monkeypatch.setattr(drafts, "monotonic", lambda: now[0])
    for pause in (0.0, 0.5, 5.0, 0.5):
        now[0] += pause
        nudge(draft, key="distance")
    assert len(draft.past) == 2


def test_undo_after_a_save_is_an_edit_and_no_conflict(draft):
    nudge(draft)
    draft.save()
    draft.undo()
    assert draft.edited
    draft.save()
    assert "1.90 m" in draft.path.read_text(encoding="utf-8")


def test_a_file_changed_by_others_is_not_overwritten(draft):
    nudge(draft)
    draft.path.write_text(draft.path.read_text(encoding="utf-8") + "\n# theirs\n", encoding="utf-8")
    assert draft.changed_on_disk()
    with pytest.raises(FileConflict):
        draft.save()
    draft.save(overwrite=True)
    assert "theirs" not in draft.path.read_text(encoding="utf-8")


@pytest.mark.parametrize("name", ["demo.yaml", "../out.yaml", "bench.txt", "", ".hidden.yaml", "a/b.yaml"])
def test_a_copy_needs_a_free_plain_name(draft, name):
    with pytest.raises(InputError, match=r"free|plain name"):
        draft.save_as(name)


def test_an_edit_that_breaks_the_file_is_not_taken(draft):
    before = draft.document
    with pytest.raises(InputError):
        draft.edit(replace(before, text=before.text.replace("round: 100 mm", "round: 100 kg")))
    assert draft.document is before


def test_a_file_that_is_no_text_has_faults_and_no_traceback(folder):
    (folder / "demo.yaml").write_bytes(b"hoodwright: 1\nname: \xff\xfe")
    draft = Desk(folder).draft()
    assert "UTF-8" in str(draft.faults[0])
    assert not draft.changed_on_disk()
    draft.path.write_text("hoodwright: 1", encoding="utf-8")
    assert draft.changed_on_disk()


async def test_the_run_is_drawn_from_every_hood_to_the_discharge(draft):
    found = {s.name: s for s in stretches(draft.workplace, await draft.assessment())}
    assert found["stack"].ends == 0
    assert found["A1"].ends == found["B1"].ends == found["A2"].begins
    assert found["A1"].from_hood and not found["main"].from_hood
    assert all(s.total[0] > s.static[0] for s in found.values())


def test_a_port_in_use_is_passed_over():
    import socket

    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        assert free_port("127.0.0.1", port) > port
