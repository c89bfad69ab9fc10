"""The smoke of the page once more in plain Python: one particle at a time, one sub-step after the other.

Written from kernels/particle_path.py and the words of the wire format, not from the JavaScript.
"""

import json
import math
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

import numpy as np

from hoodwright.flow.trace import _normals
from hoodwright.kernels.chance import mixed, particle_key

STEP_SHARE, EDDY_SHARE, LONGEST, SHORTEST, WIDEST_KICK, FARTHEST = 1.2, 1.0, 0.1, 1e-6, 3.5, 5.0  # the page's
FLYING, CAUGHT, LOST = 1, 2, 3
LOW = 65535
NORMALS = _normals()


@dataclass
class Lattice:
    """A binary message, read by the words of its format."""

    header: dict
    velocity: np.ndarray
    calm: np.ndarray
    solid: np.ndarray

    @classmethod
    def read(cls, path: Path) -> "Lattice":
        data = path.read_bytes()
        long = int.from_bytes(data[:4], "little")
        header = json.loads(data[4 : 4 + long])
        shape, at = tuple(header["shape"]), 4 + long
        nodes, bases = math.prod(shape), len(header["bases"])
        velocity = np.frombuffer(data, "<f2", 3 * nodes * bases, at).reshape(bases, *shape, 3).astype(float)
        at += 6 * nodes * bases
        calm = np.frombuffer(data, np.uint8, nodes, at).reshape(shape) / 255
        solid = np.frombuffer(data, np.uint8, nodes, at + nodes).reshape(shape)
        assert len(data) == at + 2 * nodes
        return cls(header, velocity, calm, solid)

    @cached_property
    def lines(self) -> list[np.ndarray]:
        return [np.array(line) for line in self.header["lines"]]

    @cached_property
    def air(self) -> np.ndarray:
        """Velocity and calm of every node."""
        velocity = np.tensordot(self.header["weights"], self.velocity, 1)
        return np.concatenate([velocity, self.calm[..., None]], axis=-1)

    def at(self, point) -> tuple[np.ndarray, np.ndarray, float]:
        """Velocity and calm, slope of the calm, and the shortest side of the cell."""
        index, share, gaps = [], [], []
        for line, place in zip(self.lines, point, strict=True):
            i = min(max(int(np.searchsorted(line, place, side="right")) - 1, 0), len(line) - 2)
            index.append(i)
            gaps.append(line[i + 1] - line[i])
            share.append(min(max((place - line[i]) / gaps[-1], 0.0), 1.0))
        i, j, k = index
        block = self.air[i : i + 2, j : j + 2, k : k + 2]
        a, b, c = (np.array([1 - s, s]) for s in share)
        open_air = np.einsum("i,j,k->ijk", a, b, c) * (1 - self.solid[i : i + 2, j : j + 2, k : k + 2])
        value = np.einsum("ijkv,i,j,k->v", block, a, b, c)
        value[:3] = np.einsum("ijkv,ijk->v", block[..., :3], open_air) / max(open_air.sum(), 1e-6)
        calm, way = block[..., 3], np.array([-1.0, 1.0])
        slope = [np.einsum("ijk,i,j,k", calm, *f) for f in ((way, b, c), (a, way, c), (a, b, way))]
        return value, np.array(slope) / gaps, min(gaps)

    def is_solid(self, point) -> bool:
        """Whether the nearest node is solid, or the point lies close behind an opening."""
        for mouth in self.header["mouths"]:
            height, within = opening(mouth, point)
            if within and -min(mouth["sides"]) < height < 0:
                return True
        nearest = []
        for line, place in zip(self.lines, point, strict=True):
            if not line[0] <= place <= line[-1]:
                return False
            nearest.append(int(np.argmin(np.abs(line - place))))
        return bool(self.solid[tuple(nearest)])


def opening(mouth: dict, point) -> tuple[float, bool]:
    """How far a point lies before an opening, and whether it lies within its rim."""
    offset = point - np.array(mouth["centre"])
    a, b = (2 * offset @ np.array(mouth[k]) / s for k, s in zip(("first", "second"), mouth["sides"], strict=True))
    within = math.hypot(a, b) <= 1 if mouth["shape"] == "round" else max(abs(a), abs(b)) <= 1
    return float(offset @ np.array(mouth["facing"])), within


class Jet:
    """What the stream adds at a point."""

    def __init__(self, told: dict, laws: dict):
        self.laws = laws
        rows, names = np.array(told["path"]), told["columns"]
        self.count = len(rows)
        if self.count:
            pick = {name: rows[:, n] for n, name in enumerate(names)}
            self.place = np.stack([pick[c] for c in "xyz"], 1)
            self.excess = np.stack([pick[c] for c in ("ex", "ey", "ez")], 1)
            self.tangent = np.stack([pick[c] for c in ("dx", "dy", "dz")], 1)
            self.b, self.inflow, self.spread = pick["b"], pick["inflow"], pick["spread"]

    def nearest(self, at: int, point) -> int:
        away = np.sum((self.place - point) ** 2, axis=1)
        best = away[at]
        for way in (1, -1):
            m = at + way
            while 0 <= m < self.count and away[m] <= best:
                best, at = away[m], m
                m += way
        return at

    def add(self, at: int, point):
        """Velocity, turbulence, its slope, radius of the bell, speed on the axis."""
        t = self.tangent[at]
        ahead = float((point - self.place[at]) @ t)
        if ahead > 0 and at == self.count - 1:
            return np.zeros(3), 0.0, np.zeros(3), 1.0, 0.0
        other, share = at, 0.0
        if ahead > 0 or at > 0:
            other = at + 1 if ahead > 0 else at - 1
            share = min(1.0, abs(ahead) / (np.linalg.norm(self.place[other] - self.place[at]) + 1e-12))
        b, excess, place = (c[at] * (1 - share) + c[other] * share for c in (self.b, self.excess, self.place))
        r = point - place
        if other != at:
            r = r - (r @ t) * t
        eta, peak = np.linalg.norm(r) / b, np.linalg.norm(excess)
        bell = math.exp(-eta * eta) if eta < FARTHEST else 0.0
        velocity = excess * bell
        if eta > 1e-3:
            pull = self.inflow[at] * (1 - bell) - self.spread[at] * eta * eta * bell
            velocity = velocity - peak / eta * pull * r / np.linalg.norm(r)
        sigma = self.laws["unrest"] * peak * math.exp(-0.5 * eta * eta) if eta < FARTHEST else 0.0
        return velocity, sigma, -sigma / (b * b) * r, b, peak


class Particle:
    """One particle of the smoke, with its own random numbers."""

    def __init__(self, lattice: Lattice, jet: Jet, seed: int, number: int, start):
        self.lattice, self.jet, self.place = lattice, jet, np.array(start, float)
        self.key = particle_key(seed, 0, number)
        self.state = np.array([float(NORMALS[mixed(self.key + c + 1) & LOW]) for c in range(6)])
        self.count, self.station, self.stage = 8, 0, FLYING

    def fly(self, seconds: float) -> None:
        """One frame, in sub-steps."""
        left = seconds
        while left > 0 and self.stage == FLYING:
            left -= self.sub_step(left)

    def sub_step(self, left: float) -> float:
        head = self.lattice.header
        sigma, time = head["turbulence"], head["eddy"] / (head["turbulence"] + 1e-9)
        value, slope, gap = self.lattice.at(self.place)
        added, sj, jet_slope, b, peak = self.added(self.place)
        sr, wind = sigma * value[3], value[:3] + added
        jet_time = self.jet.laws["time"] * b / (peak + 1e-9)
        speed = np.linalg.norm(wind) + sr + sj + head["settling"] + 1e-9
        dt = min(STEP_SHARE * gap / speed, LONGEST, 0.2 * time)
        if sj > 0.02 * speed:
            dt = min(dt, STEP_SHARE * b / speed, EDDY_SHARE * jet_time)
        dt = min(max(dt, SHORTEST), left)
        hashes = [mixed(self.key + self.count + c) for c in range(3)]
        self.count += 3
        if sr > 0:
            self.stir(0, dt, time, sigma * slope, [h & LOW for h in hashes], math.inf)
        if sj > 1e-5:
            self.stir(3, dt, jet_time, jet_slope, [h >> 16 for h in hashes], WIDEST_KICK)
        sj *= 1 - min(1.0, (dt / jet_time) ** 2) / 24
        random = sr * self.state[:3] + sj * self.state[3:]
        middle = self.place + 0.5 * dt * (wind + random)
        there = self.lattice.at(middle)[0][:3]
        if self.jet.count and sj > 0:
            added = self.jet.add(self.station, middle)[0]
        self.move(dt * (there + added + random - np.array([0, 0, head["settling"]])))
        return dt

    def added(self, point):
        if self.jet.count < 2:
            return np.zeros(3), 0.0, np.zeros(3), 1.0, 0.0
        self.station = self.jet.nearest(self.station, point)
        return self.jet.add(self.station, point)

    def stir(self, first, dt, time, slope, places, most):
        share = math.exp(-dt / time)
        own = slice(first, first + 3)
        fresh = math.sqrt(1 - share * share) * NORMALS[places].astype(float)
        self.state[own] = np.clip(share * self.state[own] + fresh + slope * time * (1 - share), -most, most)

    def move(self, step) -> None:
        """Past mouths, then solid cells, then the escape radius."""
        head, goal = self.lattice.header, self.place + step
        for mouth in head["mouths"]:
            before, after = opening(mouth, self.place)[0], opening(mouth, goal)[0]
            if before >= 0 > after:
                cross = self.place + before / (before - after) * step
                if opening(mouth, cross)[1]:
                    self.place, self.stage = cross, CAUGHT
                    return
        if self.lattice.is_solid(goal) and not self.lattice.is_solid(self.place):
            if any(self.at_lip(mouth) for mouth in head["mouths"]):
                self.stage = CAUGHT
                return
            now = self.place.copy()
            for c in range(3):
                tried = now.copy()
                tried[c] = goal[c]
                if self.lattice.is_solid(tried):
                    self.state[[c, 3 + c]] *= -1
                else:
                    now = tried
            goal = now
        self.place = goal
        if all(np.linalg.norm(goal - np.array(c)) > head["escape"] for c in head["centres"]):
            self.stage = LOST

    def at_lip(self, mouth: dict) -> bool:
        """Within half a cell of the rim."""
        lip = self.lattice.at(mouth["centre"])[2] / 2
        grown = {**mouth, "sides": [side + 2 * lip for side in mouth["sides"]]}
        height, within = opening(grown, self.place)
        return abs(height) < lip and within
