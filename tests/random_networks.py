"""Random converging networks for tests: hoods merge two by two, sizes follow the design flows."""

from dataclasses import dataclass

import numpy as np

from hoodwright.network import Branches, Graph, Junction, fan_curve

SIZES = np.array([0.08, 0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8, 1.0, 1.25, 1.6, 2.0])
SPEED = 14.0  # m/s
DENSITY, VISCOSITY, ROUGHNESS = 1.2, 1.81e-5, 0.09e-3
FAN_SHAPE = ([0, 0.2, 0.4, 0.6, 0.8, 1.0, 1.2, 1.4], [1.10, 1.16, 1.24, 1.27, 1.2, 1.0, 0.68, 0.25])


@dataclass
class RandomNetwork:
    """A network with the design flow of every branch [kg/s]."""

    graph: Graph
    branches: Branches
    design: np.ndarray
    hoods: int


def random_network(hoods, seed, *, law="momentum", dampers=0.0, leaks=0.0, gusts=0.0, fan_pressure=2500.0):
    """A tree; shares of its branches get a damper (K up to 1e6) or a leak, of its hoods a pressure of their own."""
    rng = np.random.default_rng(seed)
    flows, leads_to = _merged(rng, hoods)
    size = len(flows)
    own = np.append(flows, np.zeros(round(leaks * size)))
    parents = np.append(leads_to, rng.integers(hoods, size, len(own) - size)).astype(int)
    columns = _columns(rng, own, size, hoods)
    shut = (rng.random(len(own)) < dampers) & (np.arange(len(own)) != size - 1)
    columns["loss"] += np.where(shut, 10 ** rng.uniform(0, 6, len(own)), 0.0)
    branches = _with_fan(columns, flows[-1], size, fan_pressure)
    pressure = np.full(len(own) + 1, np.nan)
    pressure[-1] = 0.0
    pressure[:hoods] = np.where(rng.random(hoods) < gusts, rng.uniform(-1500, 300, hoods), 0.0)
    pressure[size:-1] = 0.0
    ends = np.where(parents < 0, len(own), parents)
    graph = Graph(np.arange(len(own)), ends, pressure, _junctions(rng, parents, flows, hoods, law))
    return RandomNetwork(graph, branches, DENSITY * own, hoods)


def _merged(rng, hoods):
    """Design flows and the branch behind each, the last one leads out."""
    flows, leads_to, open_ends = list(rng.uniform(0.1, 0.8, hoods)), [-1] * (2 * hoods - 1), list(range(hoods))
    for new in range(hoods, 2 * hoods - 1):
        first = open_ends.pop(0)
        second = open_ends.pop(int(rng.integers(0, min(4, len(open_ends)))))
        leads_to[first] = leads_to[second] = new
        flows.append(flows[first] + flows[second])
        open_ends.append(new)
    return np.array(flows), np.array(leads_to)


def _columns(rng, flows, size, hoods):
    count, leak = len(flows), np.arange(len(flows)) >= size
    wanted = np.sqrt(4 * np.maximum(flows, 0.05) / (np.pi * SPEED))
    diameter = np.where(wanted > SIZES[-1], wanted, SIZES[np.minimum(np.searchsorted(SIZES, wanted), len(SIZES) - 1)])
    loss = np.where(np.arange(count) < hoods, rng.choice([0.25, 0.5, 0.93, 1.5], count), 0.0)
    loss = loss + 0.22 * rng.integers(0, 4, count)
    return {
        "density": np.full(count, DENSITY),
        "viscosity": np.full(count, VISCOSITY),
        "area": np.pi * diameter**2 / 4,
        "diameter": diameter,
        "length": np.where(leak, 0.0, rng.uniform(1, 10, count)),
        "roughness": np.full(count, ROUGHNESS),
        "loss": np.where(leak, 0.0, loss),
        "coefficient": np.where(leak, 10 ** rng.uniform(6, 8, count), 0.0),
        "exponent": np.where(leak, 1 / 0.65, 1.0),
        "head": np.zeros(count),
    }


def _with_fan(columns, flow, size, pressure):
    """The last branch of the tree holds a filter and a fan."""
    columns["coefficient"][size - 1], columns["exponent"][size - 1] = 800 / flow**1.2, 1.2
    number = np.full(len(columns["area"]), -1)
    number[size - 1] = 0
    curve = fan_curve(flow * np.array(FAN_SHAPE[0]), pressure * np.array(FAN_SHAPE[1]))
    return Branches([f"branch {i}" for i in range(len(number))], **columns, fan=number, curves=(curve,))


def _junctions(rng, parents, flows, hoods, law):
    """The greater inlet runs straight through, the lesser enters at 30 or 45 degrees."""
    found = []
    for common in range(hoods, len(flows)):
        inlets = tuple(int(i) for i in np.flatnonzero(parents == common))
        real = [i for i in inlets if i < len(flows)]
        side = min(real, key=lambda i: flows[i])
        angle = np.radians(rng.choice([30, 45]))
        entering = {side: float(np.cos(angle)) if law == "momentum" else 0.18}
        values = tuple(entering.get(i, 1.0 if law == "momentum" else 0.0) for i in inlets)
        found.append(Junction(law, inlets, common, values, tuple(i >= len(flows) for i in inlets)))
    return found
