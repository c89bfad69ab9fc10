"""The benchmark's scene with NGSolve (`pip install ngsolve`): RT1 flux elements, hybrid, and a direct solver.

Hood, duct and flange are cut out of the air, the bench is a slab: thin plates get 6 mm. A metre out potential is nil.
"""

import time

import numpy as np
from netgen.occ import Box, Cylinder, OCCGeometry, Pnt, gp_Dir
from ngsolve import (
    L2,
    BilinearForm,
    Discontinuous,
    FacetFESpace,
    GridFunction,
    HDiv,
    LinearForm,
    Mesh,
    TaskManager,
    div,
    ds,
    dx,
    specialcf,
)

THICK = 0.006  # m, of plates
REACH = 1.0  # m


def solve_by_elements(nozzle, bench) -> dict:
    """Elements, seconds from the mesh to the flux, seconds a point, and the speed 100 mm before the hood."""
    mesh = mesh_of(nozzle, bench)
    start = time.perf_counter()
    with TaskManager():
        flux = flux_of(mesh)
    seconds = time.perf_counter() - start
    places = np.random.default_rng(0).uniform((1.7, 1.5, 0.92), (2.3, 1.9, 1.4), (5000, 3))
    start = time.perf_counter()
    for place in places:
        flux(mesh(*place))
    per_point = (time.perf_counter() - start) / len(places)
    speed = float(np.linalg.norm(flux(mesh(2.0, 1.85, 1.05))))
    return {"elements": mesh.ne, "seconds": seconds, "per_point": per_point, "speed": speed}


def mesh_of(nozzle, bench) -> Mesh:
    """The air of the scene."""
    x, y, z = nozzle.centre
    r = nozzle.sides[0] / 2
    air = Box(Pnt(x - REACH, y - REACH, 0), Pnt(x + REACH, y + REACH, z + REACH))
    air.faces.name = "outer"
    air.faces.Min(gp_Dir(0, 0, 1)).name = "wall"
    duct = Cylinder(Pnt(x, y, z), gp_Dir(0, 1, 0), r=r, h=nozzle.depth)
    duct.faces.name = "wall"
    duct.faces.Min(gp_Dir(0, 1, 0)).name = "mouth"
    duct.faces.Min(gp_Dir(0, 1, 0)).maxh = nozzle.sides[0] / 8
    flange = Cylinder(Pnt(x, y, z), gp_Dir(0, 1, 0), r=r + nozzle.flange, h=THICK)
    flange -= Cylinder(Pnt(x, y - 1, z), gp_Dir(0, 1, 0), r=r, h=2)
    low, sides = np.array(bench.corner), np.array(bench.first) + np.array(bench.second)
    high = low + sides
    slab = Box(Pnt(*low), Pnt(high[0], high[1], low[2] - THICK))
    flange.faces.name = slab.faces.name = "wall"
    return Mesh(OCCGeometry(air - duct - flange - slab).GenerateMesh(maxh=0.2, grading=0.3))


def flux_of(mesh: Mesh):
    """Flux elements of order 1 with potentials on cells and facets; one metre per second leaves through the mouth."""
    spaces = (
        Discontinuous(HDiv(mesh, order=1, RT=True)) * L2(mesh, order=1) * FacetFESpace(mesh, order=1, dirichlet="outer")
    )
    (u, p, q), (v, w, t) = spaces.TnT()
    n = specialcf.normal(3)
    form = BilinearForm(spaces, symmetric=True, condense=True)
    form += (u * v + p * div(v) + w * div(u)) * dx + (-u * n * t - v * n * q) * dx(element_boundary=True)
    right = LinearForm(spaces)
    right += -1.0 * t.Trace() * ds("mouth")
    form.Assemble()
    right.Assemble()
    found = GridFunction(spaces)
    change = right.vec.CreateVector()
    change.data = right.vec + form.harmonic_extension_trans * right.vec
    inverse = form.mat.Inverse(spaces.FreeDofs(coupling=True), "sparsecholesky")
    found.vec.data = inverse * change
    found.vec.data += form.harmonic_extension * found.vec
    found.vec.data += form.inner_solve * right.vec
    return found.components[0]
