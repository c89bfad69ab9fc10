"""The computed air on a lattice: the same velocities as the solved air has there, in fewer numbers."""

import numpy as np
import pytest

from hoodwright.errors import InputError, RangeError
from hoodwright.flow import Block, Mouth, Resolution, Scene, Surroundings, lattice_of, solve

HALF = 2**-11  # relative: half the last digit of a half float
FLOWS = {"nozzle": 0.08, "slot": 0.05}
DRAUGHT = (0.3, -0.1, 0.05)
EDDY = 0.2
CENTRES = [[1.0, 1.0, 1.0]]


@pytest.fixture(scope="module")
def bases():
    nozzle = Mouth("nozzle", (1.0, 1.0, 1.0), (0.0, -1.0, 0.0), (0.1, 0.1), "round", flange=0.05)
    slot = Mouth("slot", (1.4, 1.0, 1.0), (0.0, -1.0, 0.0), (0.2, 0.02), "slot")
    person = Block.person("someone", (1.0, 0.4, 0.0), (0.0, 1.0, 0.0))
    scene = Scene((nozzle, slot), blocks=(person,), surroundings=Surroundings.over_floor())
    return solve(scene, Resolution(cells_across=4))


@pytest.fixture(scope="module")
def lattice(bases):
    return lattice_of(bases, "nozzle", FLOWS, EDDY, CENTRES, 0.45)


def points_of(lattice):
    return np.stack(np.meshgrid(*lattice.lines, indexing="ij"), axis=-1)


def test_weighted_sum_is_the_velocity_of_the_solved_air(bases, lattice):
    weights = np.array([FLOWS["nozzle"], 1.0, *DRAUGHT])
    summed = np.tensordot(weights, lattice.velocity.astype(float), axes=1)
    solved = bases.field(FLOWS, DRAUGHT).velocity(points_of(lattice))
    air = lattice.solid == 0
    # each of the five bases is rounded by itself, so their sizes add up
    allowed = HALF * np.tensordot(abs(weights), abs(lattice.velocity.astype(float)), axes=1) + 1e-5
    assert np.all(abs(summed - solved)[air] <= allowed[air])


def test_names_and_shapes(lattice):
    assert lattice.names == ("nozzle", "rest", "draught x", "draught y", "draught z")
    assert lattice.velocity.shape == (5, *lattice.shape, 3) and lattice.velocity.dtype == np.float16
    assert lattice.calm.shape == lattice.solid.shape == lattice.shape
    assert lattice.calm.dtype == lattice.solid.dtype == np.uint8


def test_the_chosen_hood_is_a_unit_and_the_rest_has_its_flow(bases, lattice):
    points = points_of(lattice)
    air = lattice.solid == 0
    unit = 2 * bases.field({"nozzle": 0.5}).velocity(points)
    rest = bases.field({"slot": FLOWS["slot"]}).velocity(points)
    assert lattice.velocity[0][air].astype(float) == pytest.approx(unit[air], rel=2 * HALF, abs=1e-3)
    assert lattice.velocity[1][air].astype(float) == pytest.approx(rest[air], rel=2 * HALF, abs=1e-5)


def test_it_holds_the_box_that_was_asked_for_and_little_more(lattice):
    for lines, middle in zip(lattice.lines, CENTRES[0], strict=True):
        assert np.all(np.diff(lines) > 0)
        assert lines[0] <= middle - 0.45 and lines[-1] >= middle + 0.45
        assert lines[1] > middle - 0.45 and lines[-2] < middle + 0.45


def test_solid_is_what_stands_there(bases, lattice):
    points = points_of(lattice)
    behind = bases.scene.mouths[0].fills(points, 0.9)
    assert behind.any() and np.all(lattice.solid[behind] == 1)
    assert np.mean(lattice.solid) < 0.2


def test_air_before_a_mouth_goes_on_behind_it(lattice):
    """A picture draws velocities between points: behind the face of a hood they must not fall to nothing."""
    i, k = (int(abs(lines - 1.0).argmin()) for lines in (lattice.lines[0], lattice.lines[2]))
    column, solid = lattice.velocity[0, i, :, k, 1].astype(float), lattice.solid[i, :, k]
    face = int(np.argmax((solid == 1) & (lattice.lines[1] > 1.0)))
    assert column[face] == pytest.approx(column[face - 1]) and column[face] > 1


def test_calm_fades_towards_walls(bases):
    lattice = lattice_of(bases, "nozzle", FLOWS, 0.1, CENTRES, 0.6)
    away = bases.distance
    assert lattice.calm.max() == 255 and lattice.calm.min() < 60
    rough = lattice_of(bases, "nozzle", FLOWS, 0.4, CENTRES, 0.6)
    assert np.all(rough.calm <= lattice.calm) and away.min() > 0


def test_close_lines_are_left_out_where_there_are_too_many(bases, lattice):
    few = lattice_of(bases, "nozzle", FLOWS, EDDY, CENTRES, 0.45, most=4000)
    assert np.prod(few.shape) <= 4000 < np.prod(lattice.shape)
    for thin, whole in zip(few.lines, lattice.lines, strict=True):
        assert set(thin) <= set(whole) and np.ptp(thin) > 0.8 * np.ptp(whole)


def test_box_of_the_bases_ends_it(bases):
    wide = lattice_of(bases, "nozzle", FLOWS, EDDY, CENTRES, 50.0, most=10**6)
    assert wide.shape == bases.grid.shape


def test_one_clear_error_each(bases):
    with pytest.raises(InputError, match="no hood 'nobody'"):
        lattice_of(bases, "nobody", FLOWS, EDDY, CENTRES, 0.45)
    with pytest.raises(RangeError, match="reach of the lattice"):
        lattice_of(bases, "nozzle", FLOWS, EDDY, CENTRES, 0.0)
    with pytest.raises(RangeError, match="points"):
        lattice_of(bases, "nozzle", FLOWS, EDDY, CENTRES, 0.45, most=10)
    with pytest.raises(RangeError, match="not a finite number"):
        lattice_of(bases, "nozzle", FLOWS, EDDY, [[np.nan, 0, 0]], 0.45)
    with pytest.raises(InputError, match="no hood or vent"):
        lattice_of(bases, "nozzle", {"stranger": 1.0}, EDDY, CENTRES, 0.45)
    with pytest.raises(RangeError, match="eddy"):
        lattice_of(bases, "nozzle", FLOWS, 0.0, CENTRES, 0.45)
