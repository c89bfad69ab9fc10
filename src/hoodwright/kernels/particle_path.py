"""Particles carried by the air, the jet and two random motions: of the room and of the jet."""

import math

from hoodwright.kernels.chance import mixed, particle_key
from hoodwright.kernels.jet_path import follow_jet
from hoodwright.kernels.lazy import kernel
from hoodwright.kernels.moving import BOX, FAST, move
from hoodwright.kernels.velocity import FLOW, cell_of, velocity_at

__all__ = ["ESCAPED", "LATE", "SETTLED", "STARTED", "trace_particles"]

STARTED, ESCAPED, SETTLED, LATE = 0, -1, -2, -3  # how a particle ends; 1 + m: in mouth number m
FARTHEST = 5.0  # radii of the bell within which the jet still blows
WIDEST_KICK, NEVER = 3.5, 1e9  # standard deviations
LONGEST_STEP, SHORTEST_STEP, EDDY_SHARE = 0.1, 1e-6, 0.4  # s, s, of the time of an eddy of the jet
LOW = 65535  # the lower half of a 32-bit number


@kernel("int64(float64[:,::1], int64, int64, float64, float64, float64)", **FAST)
def _nearest(path, n, at, px, py, pz):
    """The station nearest to a point, by walking along the path from the last one."""
    best = (px - path[at, 0]) ** 2 + (py - path[at, 1]) ** 2 + (pz - path[at, 2]) ** 2
    for way in (1, -1):
        m = at + way
        while 0 <= m < n:
            d = (px - path[m, 0]) ** 2 + (py - path[m, 1]) ** 2 + (pz - path[m, 2]) ** 2
            if d > best:
                break
            best, at = d, m
            m += way
    return at


@kernel(
    "Tuple((float64, float64, float64, float64, float64, float64, float64, float64, float64))"
    "(float64[:,::1], int64, int64, float64, float64, float64, float64)",
    **FAST,
)
def _jet_at(path, n, at, px, py, pz, unrest):
    """What the jet adds at a point: velocity, turbulence and its slope, radius of the bell, speed on the axis."""
    dx, dy, dz = px - path[at, 0], py - path[at, 1], pz - path[at, 2]
    ahead = dx * path[at, 8] + dy * path[at, 9] + dz * path[at, 10]
    other, share = at, 0.0
    if ahead > 0 and at == n - 1:
        return 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 1.0, 0.0
    if ahead > 0 or at > 0:
        other = at + 1 if ahead > 0 else at - 1
        apart = math.sqrt(
            (path[other, 0] - path[at, 0]) ** 2
            + (path[other, 1] - path[at, 1]) ** 2
            + (path[other, 2] - path[at, 2]) ** 2
        )
        share = min(1.0, abs(ahead) / (apart + 1e-12))
    rest = 1.0 - share
    b = path[at, 3] * rest + path[other, 3] * share
    ex = path[at, 4] * rest + path[other, 4] * share
    ey = path[at, 5] * rest + path[other, 5] * share
    ez = path[at, 6] * rest + path[other, 6] * share
    rx = px - path[at, 0] * rest - path[other, 0] * share
    ry = py - path[at, 1] * rest - path[other, 1] * share
    rz = pz - path[at, 2] * rest - path[other, 2] * share
    if other != at:  # else behind the mouth: the distance to its middle counts
        lost = rx * path[at, 8] + ry * path[at, 9] + rz * path[at, 10]
        rx, ry, rz = rx - lost * path[at, 8], ry - lost * path[at, 9], rz - lost * path[at, 10]
    r = math.sqrt(rx * rx + ry * ry + rz * rz)
    eta = r / b
    peak = math.sqrt(ex * ex + ey * ey + ez * ez)
    bell = math.exp(-eta * eta) if eta < FARTHEST else 0.0
    u, v, w = ex * bell, ey * bell, ez * bell
    if eta > 1e-3:
        inward = -peak / eta * (path[at, 11] * (1.0 - bell) - path[at, 12] * eta * eta * bell) / r
        u, v, w = u + inward * rx, v + inward * ry, w + inward * rz
    sigma = unrest * peak * math.exp(-0.5 * eta * eta) if eta < FARTHEST else 0.0
    slope = -sigma / (b * b)
    return u, v, w, sigma, slope * rx, slope * ry, slope * rz, b, peak


@kernel("Tuple((int64, int64, float64))(float64[::1], int64, float64)", **FAST)
def _between(lines, cell, place):
    """The two cells between whose centres a place lies, and the share of the second."""
    centre = 0.5 * (lines[cell] + lines[cell + 1])
    low = cell if place >= centre else cell - 1
    high = low + 1
    if low < 0 or high > len(lines) - 2:
        return cell, cell, 0.0
    first, second = 0.5 * (lines[low] + lines[low + 1]), 0.5 * (lines[high] + lines[high + 1])
    return low, high, (place - first) / (second - first)


@kernel(f"UniTuple(float64, 4)({FLOW}, float32[:,:,::1], float64, float64, float64)", **FAST)
def _calm_at(arrays, calm, px, py, pz):
    """Share of the room's turbulence that is left at a point, and its slope."""
    if calm.size == 0:
        return 1.0, 0.0, 0.0, 0.0
    x, y, z = arrays[0], arrays[1], arrays[2]
    i0, i1, a = _between(x, cell_of(x, arrays[3], px), px)
    j0, j1, b = _between(y, cell_of(y, arrays[4], py), py)
    k0, k1, c = _between(z, cell_of(z, arrays[5], pz), pz)
    f00 = calm[i0, j0, k0] * (1 - c) + calm[i0, j0, k1] * c
    f01 = calm[i0, j1, k0] * (1 - c) + calm[i0, j1, k1] * c
    f10 = calm[i1, j0, k0] * (1 - c) + calm[i1, j0, k1] * c
    f11 = calm[i1, j1, k0] * (1 - c) + calm[i1, j1, k1] * c
    g0, g1 = f00 * (1 - b) + f01 * b, f10 * (1 - b) + f11 * b
    low = (calm[i0, j0, k0] * (1 - b) + calm[i0, j1, k0] * b) * (1 - a)
    low += (calm[i1, j0, k0] * (1 - b) + calm[i1, j1, k0] * b) * a
    high = (calm[i0, j0, k1] * (1 - b) + calm[i0, j1, k1] * b) * (1 - a)
    high += (calm[i1, j0, k1] * (1 - b) + calm[i1, j1, k1] * b) * a
    gx = (g1 - g0) / (0.5 * (x[i1 + 1] + x[i1] - x[i0 + 1] - x[i0])) if i1 > i0 else 0.0
    gy = ((f01 - f00) * (1 - a) + (f11 - f10) * a) / (0.5 * (y[j1 + 1] + y[j1] - y[j0 + 1] - y[j0])) if j1 > j0 else 0.0
    gz = (high - low) / (0.5 * (z[k1 + 1] + z[k1] - z[k0 + 1] - z[k0])) if k1 > k0 else 0.0
    return g0 * (1 - a) + g1 * a, gx, gy, gz


@kernel("boolean(float64[:,::1], float64, float64, float64, float64)", **FAST)
def _beyond(centres, radius, px, py, pz):
    """Whether a point is farther than `radius` from every centre."""
    for c in range(len(centres)):
        apart = (px - centres[c, 0]) ** 2 + (py - centres[c, 1]) ** 2 + (pz - centres[c, 2]) ** 2
        if apart <= radius * radius:
            return False
    return True


@kernel(
    f"Tuple((float64, float64, float64, float64, float64, float64, float64, float64, float64, int64))({FLOW}, "
    "float32[::1], float64[:,::1], int64, int64, float64, float64, float64, float64)",
    **FAST,
)
def _wind(arrays, weights, path, n, at, px, py, pz, unrest):
    """Mean velocity of air and jet at a point, the jet's turbulence there, and the station of the jet's path."""
    u, v, w = velocity_at(arrays, weights, px, py, pz)
    if n < 2:
        return u, v, w, 0.0, 0.0, 0.0, 0.0, 1.0, 0.0, at
    at = _nearest(path, n, at, px, py, pz)
    ju, jv, jw, sigma, sx, sy, sz, b, peak = _jet_at(path, n, at, px, py, pz, unrest)
    return u + ju, v + jv, w + jw, sigma, sx, sy, sz, b, peak, at


@kernel("void(float64[::1], int64, float64, float64, float64, float64, float64, int64, float32[::1])", **FAST)
def _stir(state, first, share, gx, gy, gz, most, hashes, normals):
    """Three random motions one step on: `share` is kept, the rest drawn anew; the slope keeps even smoke even."""
    fresh = math.sqrt(1.0 - share * share)
    for c in range(3):
        half = mixed(hashes + c)
        half = half >> 16 if first > 0 else half & LOW
        slope = gx if c == 0 else (gy if c == 1 else gz)
        kick = share * state[first + c] + fresh * normals[half] + slope
        state[first + c] = min(max(kick, -most), most)


@kernel(f"float64({FLOW}, float64, float64, float64)", **FAST)
def _cell_size(arrays, px, py, pz):
    """The shortest side of the cell that holds a point."""
    x, y, z = arrays[0], arrays[1], arrays[2]
    i, j, k = cell_of(x, arrays[3], px), cell_of(y, arrays[4], py), cell_of(z, arrays[5], pz)
    return min(x[i + 1] - x[i], y[j + 1] - y[j], z[k + 1] - z[k])


@kernel("UniTuple(float64, 3)(float64[::1], float64, float64, float64, float64, float64)", **FAST)
def _lagging(state, u, v, w, dt, tau):
    """How far a particle gets that takes up the motion of the air in the time `tau`; state 6-8 holds its velocity."""
    if tau <= 0:
        return u * dt, v * dt, w * dt
    if state[9] == 0.0:
        state[6], state[7], state[8], state[9] = u, v, w, 1.0
    lag = math.exp(-dt / tau)
    run = tau * (1.0 - lag)
    dx, dy, dz = u * dt + (state[6] - u) * run, v * dt + (state[7] - v) * run, w * dt + (state[8] - w) * run
    state[6], state[7], state[8] = u + (state[6] - u) * lag, v + (state[7] - v) * lag, w + (state[8] - w) * lag
    return dx, dy, dz


@kernel("int64(float64[::1], float64, float64, float64, float64, float32[:,::1], int64, float64)", **FAST)
def _keep(place, px, py, pz, t, track, kept, between):
    """Note where a particle is, and keep the places whose time has come."""
    place[0], place[1], place[2], place[3] = px, py, pz, t
    while kept < len(track) and t >= kept * between:
        track[kept, 0], track[kept, 1], track[kept, 2] = px, py, pz
        kept += 1
    return kept


@kernel("int64(int64, boolean, boolean)", **FAST)
def _end_of(met, far, landed):
    """How a particle ends after a step; STARTED: it flies on."""
    if met < 0:
        return -met
    if met == BOX or far:
        return ESCAPED
    return SETTLED if landed else STARTED


@kernel(
    f"int64({FLOW}, float32[::1], float64[:,::1], int64, float32[:,:,::1], float64[:,::1], float64[::1], int64, "
    "float32[::1], float64[::1], float64[::1], float32[:,::1])",
    **FAST,
)
def _fly(arrays, weights, path, n, calm, centres, laws, key, normals, state, place, track):
    """Carry one particle to its end. `place` holds where it starts, then where it ends and when (4 numbers).

    laws: 0 room sigma, 1 eddy length, 2 jet unrest, 3 its time, 4 step share, 5 time limit, 6 escape radius,
    7 settling velocity, 8 relaxation time, 9 time between kept places. state: random motions of room and jet, velocity.
    """
    px, py, pz, t = place[0], place[1], place[2], 0.0
    room_time = laws[1] / (laws[0] + 1e-9)
    for c in range(6):
        state[c] = normals[mixed(key + c + 1) & LOW]
    state[9] = 0.0
    at, count, end = 0, 8, STARTED
    kept = _keep(place, px, py, pz, t, track, 0, laws[9])
    while end == STARTED and t < laws[5]:
        u, v, w, sj, sx, sy, sz, b, peak, at = _wind(arrays, weights, path, n, at, px, py, pz, laws[2])
        left, lx, ly, lz = _calm_at(arrays, calm, px, py, pz)
        sr, jet_time = laws[0] * left, laws[3] * b / (peak + 1e-9)
        speed = math.sqrt(u * u + v * v + w * w) + sr + sj + laws[7] + 1e-9
        dt = min(laws[4] * _cell_size(arrays, px, py, pz) / speed, LONGEST_STEP, 0.2 * room_time, laws[5] - t)
        if sj > 0.02 * speed:
            dt = min(dt, laws[4] * b / speed, EDDY_SHARE * jet_time)
        dt = max(dt, SHORTEST_STEP)
        share = math.exp(-dt / room_time)
        drift = laws[0] * room_time * (1.0 - share)
        _stir(state, 0, share, lx * drift, ly * drift, lz * drift, NEVER, key + count, normals)
        if sj > 1e-5:
            share = math.exp(-dt / jet_time)
            drift = jet_time * (1.0 - share)
            _stir(state, 3, share, sx * drift, sy * drift, sz * drift, WIDEST_KICK, key + count, normals)
        count += 3
        ru, rv, rw = sr * state[0] + sj * state[3], sr * state[1] + sj * state[4], sr * state[2] + sj * state[5]
        mx, my, mz = px + 0.5 * dt * (u + ru), py + 0.5 * dt * (v + rv), pz + 0.5 * dt * (w + rw)
        u, v, w, sj, sx, sy, sz, b, peak, at = _wind(arrays, weights, path, n, at, mx, my, mz, laws[2])
        dx, dy, dz = _lagging(state, u + ru, v + rv, w + rw - laws[7], dt, laws[8])
        px, py, pz, bx, by, bz, met = move(arrays, px, py, pz, dx, dy, dz)
        t += dt
        for c in range(0, 9, 3):
            state[c], state[c + 1], state[c + 2] = state[c] * bx, state[c + 1] * by, state[c + 2] * bz
        landed = laws[7] > 0 and bz < 0 and dz < 0
        end = _end_of(met, _beyond(centres, laws[6], px, py, pz), landed)
        kept = _keep(place, px, py, pz, t, track, kept, laws[9])
    _keep(place, px, py, pz, t, track, kept, 0.0)
    return LATE if end == STARTED else end


@kernel(
    f"void({FLOW}, float32[:,::1], float64[:,::1], float64[::1], float64[:,:,::1], float32[:,:,::1], float64[:,::1], "
    "float64[:,::1], float64[::1], int64, float32[::1], int64, int64, int64[:,::1], float64[:,:,::1], float64[:,::1], "
    "float32[:,:,:,::1], float64[:,::1], float64[:,::1])",
    **FAST,
)
def trace_particles(
    arrays,
    weights,
    jets,
    jet_laws,
    starts,
    calm,
    mouths,
    centres,
    laws,
    seed,
    normals,
    first,
    last,
    ends,
    places,
    plumes,
    tracks,
    work,
    path,
):
    """Realisations `first` to `last`: follow the jet of each, then its particles. All arrays lead with realisations.

    jets (n, 10): place, flow, momentum, core, buoyancy, width; no jet where the flow is 0. starts (n, particles, 3).
    ends (n, particles), places (n, particles, 4) and plumes (n, mouths) are filled in: the flow of the jet where it
    comes nearest to each of `mouths` (their middles). `work` (7, 16), `path` (stations, COLUMNS): room to count in.
    Escaped: farther than the radius from each of `centres`.
    """
    own, start = work[4], work[5]
    for c in range(len(jet_laws)):
        own[c] = jet_laws[c]
    for r in range(first, last):
        n = 0
        if jets[r, 3] > 0:
            for c in range(7):
                start[c] = jets[r, c]
            own[4], own[7] = jets[r, 8], jets[r, 9]
            n = follow_jet(arrays, weights[r], start, own, jets[r, 7], jet_laws[6], work, path)
        for c in range(len(mouths)):
            if n == 0:
                plumes[r, c] = 0.0
                continue
            best = 1e300
            for m in range(n):
                apart = (path[m, 0] - mouths[c, 0]) ** 2 + (path[m, 1] - mouths[c, 1]) ** 2
                apart += (path[m, 2] - mouths[c, 2]) ** 2
                if apart < best:
                    best, plumes[r, c] = apart, path[m, 7]
                elif apart > 4 * best:  # it has passed; what comes back later is no stream any more
                    break
        for p in range(starts.shape[1]):
            for c in range(3):
                places[r, p, c] = starts[r, p, c]
            key = particle_key(seed, r, p)
            ends[r, p] = _fly(
                arrays, weights[r], path, n, calm, centres, laws, key, normals, work[6], places[r, p], tracks[r, p]
            )
