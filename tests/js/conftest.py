"""The page's modules for Node, and real scenes packed as the server sends them."""

import json
from dataclasses import dataclass
from pathlib import Path

import pytest
from node_parts import HERE, modules_in, run_node

from hoodwright.tasks.air.live import LiveAir, LiveScene
from hoodwright.web import wire
from hoodwright.workplace import read_workplace


@pytest.fixture(scope="session")
def modules(tmp_path_factory) -> Path:
    """The modules of the smoke."""
    return modules_in(tmp_path_factory.mktemp("modules"), "smoke_*.js")


@pytest.fixture
def run(modules, tmp_path):
    """Run one job of job.mjs in Node."""

    def ran(**job):
        asked, answered = tmp_path / "job.json", tmp_path / "answer.json"
        asked.write_text(json.dumps(job))
        run_node("job.mjs", modules, asked, answered)
        return json.loads(answered.read_text())

    return ran


@dataclass(frozen=True)
class Packed:
    """A scene, and the files that hold what is sent of it."""

    scene: LiveScene
    field: Path
    stream: Path

    @property
    def files(self) -> dict[str, str]:
        return {"field": str(self.field), "stream": str(self.stream)}


@pytest.fixture(scope="session")
def packed(tmp_path_factory):
    """Scenes of the teaching demonstration with the source at a distance before the opening."""
    folder, made = tmp_path_factory.mktemp("packed"), {}

    def pack(arrangement: str, distance: float) -> Packed:
        name = f"{arrangement} {distance:g}"
        if name not in made:
            workplace = read_workplace(HERE.parent / "observed" / f"{arrangement}.yaml")
            hood, source = workplace.hoods[0], workplace.sources[0]
            live = LiveAir(workplace, hood.name, source.name)
            scene = live.air(tuple(a + distance * f for a, f in zip(hood.at, hood.facing, strict=True)))
            made[name] = Packed(scene, folder / f"{name}.bin", folder / f"{name}.json")
            made[name].field.write_bytes(wire.air(1, scene, live.lattice(scene)))
            made[name].stream.write_text(wire.stream(1, scene, live.stream(scene)))
        return made[name]

    return pack
