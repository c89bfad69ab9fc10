"""Plates, holes, blocks and mouths as the smoke of the page meets them, in air made up for the purpose."""

import json

import numpy as np
import pytest

SIZE, NODES = 1.0, 12
MANY, SEED = 1500, 4
UP = [0, 0, 1]


@pytest.fixture
def air(tmp_path):
    """Write a message of the wire format: one basis of weight 1, whose velocity is a function of place."""

    def made(velocity, calm=lambda x, y, z: 1 + 0 * x, solid=None, nodes=NODES, **head):
        line = np.linspace(0, SIZE, nodes)
        grid = np.stack(np.meshgrid(line, line, line, indexing="ij"))
        wind = np.stack(np.broadcast_arrays(*velocity(*grid), grid[0])[:3], axis=-1)
        none = np.zeros((3, *wind.shape))
        header = {
            "n": 1,
            "shape": [nodes] * 3,
            "lines": [line.tolist()] * 3,
            "bases": ["all", "draught x", "draught y", "draught z"],
            "weights": [1, 0, 0, 0],
            "turbulence": 0.2,
            "eddy": 0.1,
            "wander": 0,
            "rising": 0.3,
            "sway_time": 5,
            "mouths": [],
            "plates": [],
            "blocks": [],
            "escape": 10,
            "limit": 1000,
            "centres": [[0.5, 0.5, 0.5]],
            "jet": {"unrest": 0.27, "time": 1},
            "settling": 0,
            **head,
        }
        text = json.dumps(header).encode()
        text += b" " * (-(4 + len(text)) % 8)
        calm = np.broadcast_to(calm(*grid), wind.shape[:3])
        stiff = np.zeros(calm.shape) if solid is None else solid(*grid)
        parts = [np.concatenate([wind[None], none]).astype("<f2"), np.rint(255 * calm).astype("u1"), stiff.astype("u1")]
        file = tmp_path / "air.bin"
        file.write_bytes(len(text).to_bytes(4, "little") + text + b"".join(p.tobytes() for p in parts))
        return str(file)

    return made


def still(x, y, z):
    return 0 * x, 0 * x, 0 * x


def box_plates():
    """The six walls of the unit box."""
    eye = np.eye(3)
    walls = []
    for axis in range(3):
        first, second = (eye[a].tolist() for a in range(3) if a != axis)
        walls += [
            {"corner": (place * eye[axis]).tolist(), "first": first, "second": second, "holes": []} for place in (0, 1)
        ]
    return walls


def flown(run, field, starts, frames=60, seconds=1 / 30, **more):
    """Places after each frame (frames, particles, 3), and how the particles ended."""
    stream = {"form": "point", "points": [[0.5, 0.5, 0.5]], "radius": 0, "direction": UP, "path": [], "columns": []}
    job = {"field": field, "stream": stream, "starts": np.asarray(starts).tolist(), "most": len(starts)}
    found = run(job="tracks", frames=frames, seconds=seconds, seed=SEED, **job, **more)
    return np.array(found["places"]), np.array(found["stages"])


def cloud(low, high, count=MANY):
    return np.random.default_rng(2).uniform(low, high, (count, 3))


@pytest.mark.parametrize("tilt", [0.0, 0.3, 0.7])
def test_no_particle_crosses_a_plate(run, air, tilt):
    """A wind of 1 m/s and turbulence against a plate that goes across the whole box."""
    way = np.array([-np.sin(tilt), 0, np.cos(tilt)])
    along = np.array([np.cos(tilt), 0, np.sin(tilt)])
    plate = {
        "corner": (np.array([0.5, -3, 0.5]) - 4 * along).tolist(),
        "first": (8 * along).tolist(),
        "second": [0, 7, 0],
    }
    starts = cloud(0, 1)
    starts = starts[np.abs((starts - 0.5) @ way) > 1e-4]
    field = air(lambda x, y, z: (0 * x, 0 * x, np.sin(12 * x)), plates=[{**plate, "holes": []}])
    places, _ = flown(run, field, starts)
    before, after = np.sign((starts - 0.5) @ way), np.sign((places - 0.5) @ way)
    assert np.all(after == before)
    assert np.abs((places[-1] - starts) @ way).max() > 0.1  # they do move


def test_smoke_goes_through_a_hole_and_only_there(run, air):
    hole = {"centre": [0.5, 0.5, 0.5], "first": [1, 0, 0], "second": [0, 1, 0], "sides": [0.2, 0.2], "shape": "round"}
    plate = {"corner": [-5, -5, 0.5], "first": [11, 0, 0], "second": [0, 11, 0], "holes": [hole]}
    field = air(lambda x, y, z: (0 * x, 0 * x, 0.5 + 0 * x), plates=[plate], turbulence=0)
    starts = cloud([0, 0, 0.3], [1, 1, 0.45])
    places, _ = flown(run, field, starts, frames=30)
    through = places[-1, :, 2] > 0.5
    inside = np.hypot(starts[:, 0] - 0.5, starts[:, 1] - 0.5) < 0.1
    assert np.array_equal(through, inside)
    assert 20 < through.sum() < MANY / 4


def test_a_mouth_takes_what_comes_from_its_front_only(run, air):
    mouth = {"name": "hood", "centre": [0.5, 0.5, 0.5], "facing": UP, "first": [1, 0, 0], "second": [0, 1, 0]}
    mouth |= {"sides": [0.4, 0.2], "shape": "rectangle"}
    starts = cloud([0, 0, 0.6], [1, 1, 0.7])
    down = air(lambda x, y, z: (0 * x, 0 * x, -0.5 + 0 * x), mouths=[mouth], turbulence=0)
    _, stages = flown(run, down, starts, frames=20)
    within = (np.abs(starts[:, 0] - 0.5) < 0.2) & (np.abs(starts[:, 1] - 0.5) < 0.1)
    assert np.array_equal(stages == 2, within)
    up = air(lambda x, y, z: (0 * x, 0 * x, 0.5 + 0 * x), mouths=[mouth], turbulence=0)
    _, stages = flown(run, up, starts - [0, 0, 0.3], frames=20)
    assert not np.any(stages == 2)


def test_nothing_gets_into_a_block_or_out_of_the_room(run, air):
    block = {
        "name": "person",
        "centre": [0.5, 0.5, 0.5],
        "axes": [[0.8, 0.6, 0], [-0.6, 0.8, 0], UP],
        "half": [0.2, 0.1, 0.3],
    }
    starts = cloud(0.02, 0.98)
    inside = lambda points: np.all(np.abs((points - 0.5) @ np.array(block["axes"]).T) <= block["half"], axis=-1)  # noqa: E731
    starts = starts[~inside(starts)]
    field = air(lambda x, y, z: (0.6 * np.sin(9 * y), 0 * x, 0 * x), blocks=[block])
    places, _ = flown(run, field, starts, room=[[0, 0, 0], [1, 1, 1]])
    assert not np.any(inside(places))
    assert places.min() >= 0 and places.max() <= 1


# Counts of 4,096 particles in 8 equal parts: 512 with a standard deviation of 21; four of them.
EVEN_MANY, PARTS, FOUR = 4096, 8, 85


def test_even_smoke_stays_even(run, air):
    """Turbulence that is calmed towards the walls must not gather smoke there [thomson87, well-mixed condition]."""
    calm = lambda x, y, z: np.clip(np.minimum.reduce([x, 1 - x, y, 1 - y, z, 1 - z]) / 0.3, 0, 1)  # noqa: E731
    field = air(still, calm, nodes=41, plates=box_plates(), eddy=0.3)
    starts = cloud(0.001, 0.999, EVEN_MANY)
    places, _ = flown(run, field, starts, frames=40, seconds=0.25)
    assert places.min() > 0 and places.max() < 1
    for axis in range(3):
        counts = np.histogram(places[-1, :, axis], PARTS, (0, 1))[0]
        assert np.abs(counts - EVEN_MANY / PARTS).max() < FOUR
    assert np.linalg.norm(places[-1] - starts, axis=1).mean() > 0.1
