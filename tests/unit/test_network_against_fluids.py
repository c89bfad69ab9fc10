"""The kernels of the network against the open library fluids: friction to 1e-9; fittings with what differs, stated.

fluids is a second implementation, so these are no published checks.
"""

import math

import fluids
import numpy as np
import pytest
from fluids import fittings

from hoodwright.ducts import contraction_loss, expansion_loss_share, mitred_elbow_loss, smooth_elbow_loss
from hoodwright.hoods import entry_loss_coefficient
from hoodwright.kernels.branch_loss import factor, losses
from hoodwright.network import Branches, momentum_loss

SAME = 1e-9
AREA, DENSITY = math.pi * 0.3**2 / 4, 1.2
pytestmark = pytest.mark.filterwarnings("ignore:overflow encountered")


@pytest.mark.parametrize("roughness", [0.0, 1e-6, 1e-4, 1e-3, 1e-2, 0.05, 0.1])
def test_friction_of_the_kernel_is_colebrooks(roughness):
    for reynolds in np.geomspace(4000, 1e8, 40):
        assert factor(reynolds, roughness)[0] == pytest.approx(fluids.Colebrook(reynolds, roughness), rel=SAME)


def test_slope_of_the_kernel_is_that_of_fluids():
    for reynolds in np.geomspace(4100, 1e7, 15):
        step = 1e-4 * reynolds
        rise = fluids.Colebrook(reynolds + step, 1e-3) - fluids.Colebrook(reynolds - step, 1e-3)
        assert factor(reynolds, 1e-3)[1] == pytest.approx(reynolds * rise / (2 * step), rel=1e-6)


def test_loss_of_a_whole_branch():
    diameter, length, rough, flow = 0.16, 12.0, 1.5e-4, 0.3
    area = math.pi * diameter**2 / 4
    one = {"density": DENSITY, "viscosity": 1.8e-5, "area": area, "diameter": diameter, "length": length}
    one |= {"roughness": rough, "loss": 0.0, "coefficient": 0.0, "exponent": 1.0, "head": 0.0}
    branch = Branches(["duct"], **{name: np.array([value]) for name, value in one.items()})
    first, fan, cubics, ends = branch.fan_arrays
    lost, slope = np.zeros((2, 1))
    losses(branch.laws, first, fan, cubics, ends, np.array([DENSITY * flow]), lost, slope)
    reynolds = fluids.Reynolds(flow / area, diameter, DENSITY, 1.8e-5)
    k = fluids.K_from_f(fluids.Colebrook(reynolds, rough / diameter), length, diameter)
    assert lost[0] == pytest.approx(fluids.dP_from_K(k, DENSITY, flow / area), rel=SAME)


def test_a_sudden_widening_is_bordas():
    wide = 4 * AREA
    lost = momentum_loss([0.9], [AREA], [1.0], wide, DENSITY)[0] / (DENSITY * (0.9 / AREA) ** 2 / 2)
    assert lost == pytest.approx(fittings.diffuser_sharp(Di1=1.0, Di2=2.0), rel=SAME)


def crane_factor(area_share, flow_share):
    """What Crane's method multiplies the loss of a branch by; the balance of momentum knows nothing of it."""
    if area_share <= 0.35:
        return 1.0
    return 0.9 * (1 - flow_share) if flow_share <= 0.4 else 0.55


@pytest.mark.parametrize("angle", [30, 45])
@pytest.mark.parametrize("area_share", [0.25, 0.5, 0.75, 1.0])
@pytest.mark.parametrize("flow_share", [0.2, 0.35, 0.5])
def test_converging_junction_against_crane(area_share, flow_share, angle):
    """The straight run agrees within 0.01 of a velocity pressure; the branch does once Crane's factor is put on."""
    flows, areas = np.array([1 - flow_share, flow_share]), AREA * np.array([1, area_share])
    lost = momentum_loss(flows, areas, [1.0, math.cos(math.radians(angle))], AREA, DENSITY)
    run, branch = lost / (DENSITY / AREA**2 / 2)
    same = {"D_run": 0.3, "D_branch": 0.3 * math.sqrt(area_share), "Q_run": flows[0], "Q_branch": flows[1]}
    assert run == pytest.approx(fittings.K_run_converging_Crane(angle=angle, **same), abs=0.01)
    crane = fittings.K_branch_converging_Crane(angle=angle, **same)
    assert crane_factor(area_share, flow_share) * branch == pytest.approx(crane, abs=0.01)


def bend(radius):
    """Of fluids, less the friction of its own length, which the hand method counts as duct."""
    return fittings.bend_rounded(Di=0.2, angle=90, fd=0.018, bend_diameters=radius) - 0.018 * radius * math.pi / 2


def cone_share(angle):
    """Of the drop of velocity pressure from 200 to 300 mm."""
    return fittings.diffuser_conical(Di1=0.2, Di2=0.3, angle=angle, fd=0.0, method="Crane") / (1 - (2 / 3) ** 4)


def narrowing(angle):
    return fittings.contraction_conical(Di1=0.3, Di2=0.2, angle=angle, fd=0.0)


# What we take from published tables over what fluids says (its own default forms): stated, so that a change is seen.
STATED = [
    ("mitred elbow", mitred_elbow_loss(90.0) / fittings.bend_miter(angle=90), 1.00),
    ("smooth elbow of radius 0.75", smooth_elbow_loss(0.75) / bend(0.75), 0.77),
    ("smooth elbow of radius 1", smooth_elbow_loss(1.0) / bend(1.0), 0.77),
    ("smooth elbow of radius 1.5", smooth_elbow_loss(1.5) / bend(1.5), 0.82),
    ("smooth elbow of radius 2.5", smooth_elbow_loss(2.5) / bend(2.5), 0.92),
    ("cone of 30 degrees that narrows", contraction_loss(30.0) / narrowing(30), 0.59),
    ("cone of 60 degrees that narrows", contraction_loss(60.0) / narrowing(60), 0.81),
    ("cone of 10 degrees that widens", expansion_loss_share(10.0) / cone_share(10), 3.21),
    ("cone of 30 degrees that widens", expansion_loss_share(30.0) / cone_share(30), 2.28),
    ("plain opening", entry_loss_coefficient("plain") / fittings.entrance_distance(Di=0.1, t=0.0005), 0.92),
    ("flanged opening", entry_loss_coefficient("flanged") / fittings.entrance_sharp(method="Swamee"), 0.98),
]


@pytest.mark.parametrize(("fitting", "share", "stated"), STATED, ids=[row[0] for row in STATED])
def test_fittings_differ_as_stated(fitting, share, stated):
    assert float(share) == pytest.approx(stated, abs=0.006)
