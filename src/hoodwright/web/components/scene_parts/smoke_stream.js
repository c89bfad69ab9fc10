// The stream that a source gives off: stations along its mean path, and what it adds to the air at a point.
// As in kernels/particle_path.py; when the draught sways the path is followed anew.
// Beyond five radii of its bell (0.5 x 25 = 12.5, where `fall` ends) nothing of it blows.
import { fall } from "./smoke_fall.js";
import { COLUMNS, MOST, follow } from "./smoke_follow.js";

// Station: 0-2 place, 3 radius of the bell, 4-6 excess on the axis, 7 flow, 8-10 tangent, 11 inflow, 12 spread.
const NAMES = ["x", "y", "z", "b", "ex", "ey", "ez", "flow", "dx", "dy", "dz", "inflow", "spread"];

export class Stream {
  // Stations as the server sends them, with the names of their columns; `start`: how it begins and what it obeys.
  constructor({ path, columns, start }, { unrest, time }) {
    const rows = (path ?? []).slice(0, MOST), places = NAMES.map((name) => columns?.indexOf(name));
    Object.assign(this, { count: rows.length, start, unrest, time });
    this.path = new Float64Array(MOST * COLUMNS);
    rows.forEach((row, n) => places.forEach((place, c) => { this.path[n * COLUMNS + c] = row[place]; }));
    // 0-2 velocity, 3 turbulence, 4-6 its slope, 7 radius of the bell, 8 speed on the axis, 9-11 the point asked for
    this.added = new Float64Array(12);
  }

  get flows() { return this.count > 1; }

  // Anew through the air as it is now.
  follow(air, walls) {
    if (this.start && this.count > 1) this.count = Math.max(2, follow(air, walls, this.start, this.path));
  }

  // The station nearest to the point in `added`, by walking along the path from the last one.
  nearest(at) {
    const { path, count, added } = this, px = added[9], py = added[10], pz = added[11];
    if (at >= count) at = count - 1;
    let best = away(path, at, px, py, pz);
    for (let way = 1; way >= -1; way -= 2) {
      for (let m = at + way; m >= 0 && m < count; m += way) {
        const apart = away(path, m, px, py, pz);
        if (apart > best) break;
        best = apart;
        at = m;
      }
    }
    return at;
  }

  // What the stream adds at the point in `added`.
  ask(at) {
    const { path, count, added } = this, o = at * COLUMNS, px = added[9], py = added[10], pz = added[11];
    const tx = path[o + 8], ty = path[o + 9], tz = path[o + 10];
    const ahead = (px - path[o]) * tx + (py - path[o + 1]) * ty + (pz - path[o + 2]) * tz;
    if (ahead > 0 && at == count - 1) return this.nothing();
    let p = o, share = 0;
    if (ahead > 0 || at > 0) {
      p = ahead > 0 ? o + COLUMNS : o - COLUMNS;
      const ax = path[p] - path[o], ay = path[p + 1] - path[o + 1], az = path[p + 2] - path[o + 2];
      share = Math.min(1, Math.abs(ahead) / (Math.sqrt(ax * ax + ay * ay + az * az) + 1e-12));
    }
    const rest = 1 - share;
    const b = path[o + 3] * rest + path[p + 3] * share;
    const ex = path[o + 4] * rest + path[p + 4] * share, ey = path[o + 5] * rest + path[p + 5] * share;
    const ez = path[o + 6] * rest + path[p + 6] * share;
    let rx = px - path[o] * rest - path[p] * share, ry = py - path[o + 1] * rest - path[p + 1] * share;
    let rz = pz - path[o + 2] * rest - path[p + 2] * share;
    if (p != o) {
      const lost = rx * tx + ry * ty + rz * tz;
      rx -= lost * tx;
      ry -= lost * ty;
      rz -= lost * tz;
    }
    const r = Math.sqrt(rx * rx + ry * ry + rz * rz), eta = r / b, peak = Math.sqrt(ex * ex + ey * ey + ez * ez);
    const half = fall(0.5 * eta * eta), bell = half * half;
    const pull = eta > 1e-3 ? -peak / eta * (path[o + 11] * (1 - bell) - path[o + 12] * eta * eta * bell) / r : 0;
    added[0] = ex * bell + pull * rx;
    added[1] = ey * bell + pull * ry;
    added[2] = ez * bell + pull * rz;
    const sigma = this.unrest * peak * half, slope = -sigma / (b * b);
    added[3] = sigma;
    added[4] = slope * rx;
    added[5] = slope * ry;
    added[6] = slope * rz;
    added[7] = b;
    added[8] = peak;
  }

  nothing() {
    this.added.fill(0, 0, 9);
    this.added[7] = 1;
  }
}

function away(path, at, px, py, pz) {
  const o = at * COLUMNS, x = px - path[o], y = py - path[o + 1], z = pz - path[o + 2];
  return x * x + y * y + z * z;
}
