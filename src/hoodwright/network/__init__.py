"""Flow on a graph: branches that lose pressure, nodes that keep mass, junctions. It knows no ducts and no rooms.

A branch leads from one node to another; its flow is mass per time (kg/s), positive that way. Pressures are total
gauge pressures (Pa). Trees have a solver of their own, which needs as many operations as there are branches.
"""

from hoodwright.network.answer import NetworkAnswer
from hoodwright.network.branches import Branches
from hoodwright.network.curves import Curve, fan_curve
from hoodwright.network.graph import Graph, solve_graph
from hoodwright.network.junctions import Junction, momentum_loss, tabulated_loss
from hoodwright.network.operating import OperatingPoint, operating_points
from hoodwright.network.parts import Network
from hoodwright.network.tree import Tree, solve_tree

__all__ = [
    "Branches",
    "Curve",
    "Graph",
    "Junction",
    "Network",
    "NetworkAnswer",
    "OperatingPoint",
    "Tree",
    "fan_curve",
    "momentum_loss",
    "operating_points",
    "solve_graph",
    "solve_tree",
    "tabulated_loss",
]
