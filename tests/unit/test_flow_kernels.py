"""Kernels of the computed air: sparse products and sweeps, and velocity between faces."""

import numpy as np
import pytest
from scipy.sparse import csr_array, random_array, tril, triu

from hoodwright.flow.linear.multigrid import Multigrid
from hoodwright.kernels import sparse
from hoodwright.kernels.velocity import cell_of, velocities

RNG = np.random.default_rng(7)
ROWS = 60


@pytest.fixture(scope="module")
def matrix():
    """Symmetric positive definite, as a network of conductances is."""
    half = random_array((ROWS, ROWS), density=0.1, rng=RNG)
    links = abs(half + half.T)
    links.setdiag(0)
    links = -links.tocsr()
    links.setdiag(-links.sum(axis=1) + 0.5)
    return links.tocsr()


def single(matrix):
    return matrix.indptr.astype(np.int32), matrix.indices.astype(np.int32), matrix.data.astype(np.float32)


def halves(matrix):
    """Below the diagonal, and above it."""
    return single(tril(matrix, -1).tocsr()), single(triu(matrix, 1).tocsr())


def columns():
    return RNG.normal(size=(ROWS, 4)).astype(np.float32)


def test_products_and_rest(matrix):
    x, right, out = columns(), columns(), np.zeros((ROWS, 4), np.float32)
    sparse.multiply(0, ROWS, *single(matrix), x, out, False)
    assert out == pytest.approx(matrix @ x, abs=1e-4)
    sparse.multiply(0, ROWS, *single(matrix), x, out, True)
    assert out == pytest.approx(2 * (matrix @ x), abs=1e-4)
    inverse = (1 / matrix.diagonal()).astype(np.float32)
    lower, upper = halves(matrix)
    sparse.residual(0, ROWS, *lower, *upper, inverse, right, x, out)
    assert out == pytest.approx(right - matrix @ x, abs=1e-4)
    exact = np.zeros((ROWS, 4))
    whole = (*single(matrix)[:2], matrix.data)
    sums = sparse.multiply_exact(0, ROWS, *whole, x.astype(float), exact)
    assert exact == pytest.approx(matrix @ x.astype(float))
    assert sums == pytest.approx(np.sum(exact * x, axis=0))


def test_steps_of_conjugate_gradients():
    way, image, x, rest = (columns().astype(float) for _ in range(4))
    better, length, share = columns(), RNG.normal(size=4), RNG.normal(size=4)
    assert sparse.products(0, ROWS, way, better) == pytest.approx(np.sum(way * better, axis=0), abs=1e-5)
    turned, moved, left, single_rest = way.copy(), x.copy(), rest.copy(), np.zeros((ROWS, 4), np.float32)
    sparse.turn(0, ROWS, share, better, turned)
    assert turned == pytest.approx(share * way + better)
    squares = sparse.advance(0, ROWS, length, way, image, moved, left, single_rest)
    assert moved == pytest.approx(x + length * way) and left == pytest.approx(rest - length * image)
    assert single_rest == pytest.approx(left, abs=1e-5) and squares == pytest.approx(np.sum(left**2, axis=0))


def test_sweeps_are_gauss_seidel_down_and_up(matrix):
    right, full = columns(), matrix.toarray()
    inverse = (1 / matrix.diagonal()).astype(np.float32)
    down = np.zeros((ROWS, 4), np.float32)
    lower, upper = halves(matrix)
    sparse.sweep_down(0, ROWS, *lower, inverse, right, down)
    assert down == pytest.approx(np.linalg.solve(np.tril(full), right), abs=1e-4)
    rest = np.zeros((ROWS, 4), np.float32)
    sparse.rest_after_down(0, ROWS, *upper, down, rest)
    assert rest == pytest.approx(right - full @ down, abs=1e-4)
    up = down.copy()
    sparse.sweep_up(0, ROWS, *lower, *upper, inverse, right, down, up)
    assert up == pytest.approx(np.linalg.solve(np.triu(full), right - np.tril(full, -1) @ down), abs=1e-4)


def test_sweeps_of_blocks_take_the_other_block_from_before(matrix):
    """Two blocks: each is Gauss-Seidel of its own, whatever the other does at the same time."""
    right, full, half = columns(), matrix.toarray(), ROWS // 2
    inverse = (1 / matrix.diagonal()).astype(np.float32)
    own = np.kron(np.eye(2), np.ones((half, half)))
    lower, upper = single(csr_array(np.tril(full, -1) * own)), single(csr_array(full - np.tril(full) * own))
    down = np.zeros((ROWS, 4), np.float32)
    for first in (half, 0):
        sparse.sweep_down(first, first + half, *lower, inverse, right, down)
    assert down == pytest.approx(np.linalg.solve(np.tril(full) * own, right), abs=1e-4)
    up = down.copy()
    for first in (half, 0):
        sparse.sweep_up(first, first + half, *lower, *upper, inverse, right, down, up)
    assert up == pytest.approx(
        np.linalg.solve(np.triu(full) * own, right - (full - np.triu(full) * own) @ down), abs=1e-4
    )


@pytest.mark.parametrize("bases", [0, 1, 4, 6])
def test_multigrid_solves_any_number_of_columns(matrix, bases):
    right = RNG.normal(size=(ROWS, bases))
    settled = Multigrid(matrix).solve(right, 1e-10)
    assert settled.solutions == pytest.approx(np.linalg.solve(matrix.toarray(), right), abs=1e-8)
    assert settled.residual < 1e-10


def test_nothing_asked_is_nothing_answered(matrix):
    assert np.all(Multigrid(matrix).solve(np.zeros((ROWS, 2)), 1e-7).solutions == 0)


LINES = tuple(np.cumsum(np.concatenate([[0.0], RNG.uniform(0.1, 0.3, n)])) for n in (5, 6, 7))


def arrays(field, bits=255):
    """Arrays of the kernels for a velocity given everywhere."""
    centres = [(line[1:] + line[:-1]) / 2 for line in LINES]
    looks = [np.clip(np.searchsorted(x, np.linspace(x[0], x[-1], 33)[:-1], "right") - 1, 0, len(x) - 2) for x in LINES]
    faces, shapes = [], []
    for axis in range(3):
        places = np.meshgrid(*(LINES[a] if a == axis else centres[a] for a in range(3)), indexing="ij")
        faces.append(np.ascontiguousarray(field(*places)[axis][..., None], dtype=np.float32))
        shapes.append(places[0].shape)
    solid = np.zeros(tuple(len(c) for c in centres), np.uint8)
    reach = [np.full(shape, bits, np.uint8) for shape in shapes]
    codes = [np.ones(shape, np.int8) for shape in shapes]
    return (*LINES, *(look.astype(np.int32) for look in looks), *faces, *reach, *codes, solid)


def linear(x, y, z):
    return 1 + 2 * x - y, 0.5 * x + y - z, 3 * z + x * 0.2 - 0.1 * y


def ask(arrays, points):
    out = np.empty_like(points)
    velocities(arrays, np.ones(1, np.float32), points, out)
    return out


def inner_points():
    """Points with a cell centre on all sides."""
    low = [(line[0] + line[1]) / 2 for line in LINES]
    high = [(line[-1] + line[-2]) / 2 for line in LINES]
    return RNG.uniform(low, high, (200, 3))


def test_linear_flow_is_met_exactly():
    points = inner_points()
    assert ask(arrays(linear), points) == pytest.approx(np.stack(linear(*points.T), axis=1), abs=1e-5)


def test_behind_plates_the_own_face_counts():
    """With no neighbour in the same air, velocity varies along its own axis only."""
    points = inner_points()
    found = ask(arrays(linear, bits=0), points)
    moved = points.copy()
    moved[:, 1] = [LINES[1][np.searchsorted(LINES[1], y) - 1] + 0.01 for y in points[:, 1]]
    assert ask(arrays(linear, bits=0), moved)[:, [0, 2]] == pytest.approx(found[:, [0, 2]], abs=1e-6)


def test_points_outside_take_the_velocity_of_the_side():
    flow = arrays(linear)
    outside = np.array([[-1.0, 0.5, 0.5], [9.0, 0.5, 0.5]])
    side = np.array([[LINES[0][0], 0.5, 0.5], [LINES[0][-1], 0.5, 0.5]])
    assert ask(flow, outside) == pytest.approx(ask(flow, side), abs=1e-6)
    assert ask(flow, np.zeros((0, 3))).shape == (0, 3)


def test_cell_of_a_place():
    look = arrays(linear)[3]
    cells = [cell_of(LINES[0], look, float(x)) for x in (-1, LINES[0][0], LINES[0][2] + 1e-9, LINES[0][-1], 99.0)]
    assert cells == [0, 0, 2, 4, 4]
