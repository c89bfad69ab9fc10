// The air on a lattice of graded lines: read from the server's message, summed by weights, and asked for at a point.
const BINS = 2048;
const LEAST = 1e-6;  // of the weights of open nodes: below it a point lies in what is solid, where air stands still
let HALVES = null;

// A message: header and arrays (see web/wire.py).
export function readField(buffer) {
  const long = new DataView(buffer).getUint32(0, true);
  const header = JSON.parse(new TextDecoder().decode(new Uint8Array(buffer, 4, long)));
  const nodes = header.shape[0] * header.shape[1] * header.shape[2], start = 4 + long;
  const many = 3 * nodes * header.bases.length;
  const halves = new Uint16Array(buffer, start, many);
  const calm = new Uint8Array(buffer, start + 2 * many, nodes);
  const solid = new Uint8Array(buffer, start + 2 * many + nodes, nodes);
  return { header, nodes, velocities: fromHalves(halves), calm, solid };
}

function fromHalves(halves) {
  HALVES ??= halfTable();
  const found = new Float32Array(halves.length);
  for (let n = 0; n < halves.length; n++) found[n] = HALVES[halves[n]];
  return found;
}

function halfTable() {
  const found = new Float32Array(65536);
  for (let n = 0; n < 65536; n++) {
    const sign = n & 0x8000 ? -1 : 1, power = (n >> 10) & 31, part = n & 1023;
    const big = power == 31 ? (part ? NaN : Infinity) : (1 + part / 1024) * 2 ** (power - 15);
    found[n] = sign * (power == 0 ? part * 2 ** -24 : big);
  }
  return found;
}

// One axis: its lines, one over the gaps between them, and which gap each of many even bins begins in.
function axisOf(lines) {
  const places = Float64Array.from(lines), gaps = new Float64Array(lines.length), most = lines.length - 2;
  for (let n = 0; n <= most; n++) gaps[n] = places[n + 1] - places[n];
  gaps[most + 1] = gaps[most];
  const low = places[0], scale = BINS / (places[most + 1] - low), look = new Uint16Array(BINS);
  for (let bin = 0, at = 0; bin < BINS; bin++) {
    while (at < most && low + bin / scale >= places[at + 1]) at++;
    look[bin] = at;
  }
  return { places, gaps, low, scale, look, most };
}

function gapOf(axis, place) {
  const bin = ((place - axis.low) * axis.scale) | 0, places = axis.places;
  let at = axis.look[bin < 0 ? 0 : bin >= BINS ? BINS - 1 : bin];
  while (at < axis.most && place >= places[at + 1]) at++;
  while (at > 0 && place < places[at]) at--;
  return at;
}

export class Air {
  constructor(field) {
    const { header } = field;
    Object.assign(this, { header, field, nodes: field.nodes, solid: field.solid });
    [this.nx, this.ny, this.nz] = header.shape;
    [this.x, this.y, this.z] = header.lines.map(axisOf);
    this.strideX = this.ny * this.nz;
    this.fixed = new Float32Array(3 * field.nodes);
    this.values = new Float32Array(4 * field.nodes);  // velocity and calm of every node
    for (let n = 0; n < field.nodes; n++) this.values[4 * n + 3] = field.calm[n] / 255;
    // 0-2 velocity, 3 calm, 4-6 its slope, 7 shortest gap, 8-10 the point that is asked for
    this.at = new Float64Array(11);
    this.open = field.solid.map((one) => (one ? 0 : 1));
    this.mixed = mixedCells(field.solid, this);
    this.cell = 0;  // the low corner of the cell that was asked for last
    this.draughts = ["draught x", "draught y", "draught z"].map((name) => header.bases.indexOf(name));
    this.still = header.bases.map((_, n) => n).filter((n) => !this.draughts.includes(n));
    this.next = 0;
    this.weigh(header.weights);
  }

  // Sum all that stays the same while the draught sways, then the draught itself.
  weigh(weights) {
    this.weights = Float64Array.from(weights);
    const { fixed, field } = this, many = 3 * this.nodes;
    fixed.fill(0);
    for (const base of this.still) {
      const weight = weights[base], from = base * many;
      if (weight) for (let n = 0; n < many; n++) fixed[n] += weight * field.velocities[from + n];
    }
    this.draught = Float64Array.from(this.draughts, (base) => weights[base]);
    this.sum(0, this.nodes);
  }

  // The draught in a stretch of nodes.
  sum(first, last) {
    const { fixed, values, field: { velocities } } = this, many = 3 * this.nodes;
    const [a, b, c] = this.draughts.map((base) => base * many), [u, v, w] = this.draught;
    for (let n = first; n < last; n++) {
      const m = 3 * n, o = 4 * n;
      values[o] = fixed[m] + u * velocities[a + m] + v * velocities[b + m] + w * velocities[c + m];
      values[o + 1] = fixed[m + 1] + u * velocities[a + m + 1] + v * velocities[b + m + 1] + w * velocities[c + m + 1];
      values[o + 2] = fixed[m + 2] + u * velocities[a + m + 2] + v * velocities[b + m + 2] + w * velocities[c + m + 2];
    }
  }

  // Bring the draught up to date little by little: a share of the nodes at a time. True when all of them are.
  freshen(draught, share) {
    if (this.next == 0) for (let c = 0; c < 3; c++) this.draught[c] = draught[c];
    const last = Math.min(this.nodes, this.next + Math.ceil(this.nodes * Math.min(share, 1)));
    this.sum(this.next, last);
    this.next = last == this.nodes ? 0 : last;
    return this.next == 0;
  }

  // Velocity at the point in `at`; with `whole` also calm, its slope and the gap. Numbers go by `at`: one that is
  // handed to a function or back would be allocated.
  ask(whole) {
    const { x, y, z, values, at, nz, strideX } = this, px = at[8], py = at[9], pz = at[10];
    const i = gapOf(x, px), j = gapOf(y, py), k = gapOf(z, pz);
    const a = share(x, i, px), b = share(y, j, py), c = share(z, k, pz);
    const low = i * strideX + j * nz + k;
    const o0 = 4 * low, o1 = o0 + 4, o2 = o0 + 4 * nz, o3 = o2 + 4;
    const o4 = o0 + 4 * strideX, o5 = o4 + 4, o6 = o4 + 4 * nz, o7 = o6 + 4;
    const p = 1 - a, q = 1 - b, r = 1 - c;
    let w0 = p * q * r, w1 = p * q * c, w2 = p * b * r, w3 = p * b * c;
    let w4 = a * q * r, w5 = a * q * c, w6 = a * b * r, w7 = a * b * c;
    if (this.mixed[low]) {  // what is solid tells nothing of the air beside it
      const { open } = this, n4 = low + strideX;
      w0 *= open[low]; w1 *= open[low + 1]; w2 *= open[low + nz]; w3 *= open[low + nz + 1];
      w4 *= open[n4]; w5 *= open[n4 + 1]; w6 *= open[n4 + nz]; w7 *= open[n4 + nz + 1];
      const whole = w0 + w1 + w2 + w3 + w4 + w5 + w6 + w7, scale = whole > LEAST ? 1 / whole : 0;
      w0 *= scale; w1 *= scale; w2 *= scale; w3 *= scale; w4 *= scale; w5 *= scale; w6 *= scale; w7 *= scale;
    }
    at[0] = w0 * values[o0] + w1 * values[o1] + w2 * values[o2] + w3 * values[o3]
      + w4 * values[o4] + w5 * values[o5] + w6 * values[o6] + w7 * values[o7];
    at[1] = w0 * values[o0 + 1] + w1 * values[o1 + 1] + w2 * values[o2 + 1] + w3 * values[o3 + 1]
      + w4 * values[o4 + 1] + w5 * values[o5 + 1] + w6 * values[o6 + 1] + w7 * values[o7 + 1];
    at[2] = w0 * values[o0 + 2] + w1 * values[o1 + 2] + w2 * values[o2 + 2] + w3 * values[o3 + 2]
      + w4 * values[o4 + 2] + w5 * values[o5 + 2] + w6 * values[o6 + 2] + w7 * values[o7 + 2];
    if (!whole) return;
    const gx = x.gaps[i], gy = y.gaps[j], gz = z.gaps[k];
    this.cell = low;
    at[7] = Math.min(gx, gy, gz);
    const f0 = values[o0 + 3], f1 = values[o1 + 3], f2 = values[o2 + 3], f3 = values[o3 + 3];
    const f4 = values[o4 + 3], f5 = values[o5 + 3], f6 = values[o6 + 3], f7 = values[o7 + 3];
    if (f0 + f1 + f2 + f3 + f4 + f5 + f6 + f7 > 7.999) {
      at[3] = 1;
      at[4] = at[5] = at[6] = 0;
      return;
    }
    const e0 = f0 * r + f1 * c, e1 = f2 * r + f3 * c, e2 = f4 * r + f5 * c, e3 = f6 * r + f7 * c;
    at[3] = p * (q * e0 + b * e1) + a * (q * e2 + b * e3);
    at[4] = (q * (e2 - e0) + b * (e3 - e1)) / gx;
    at[5] = (p * (e1 - e0) + a * (e3 - e2)) / gy;
    at[6] = (p * (q * (f1 - f0) + b * (f3 - f2)) + a * (q * (f5 - f4) + b * (f7 - f6))) / gz;
  }

  // Whether the lattice holds a point.
  holds(px, py, pz) {
    const { x, y, z } = this;
    return px >= x.low && py >= y.low && pz >= z.low
      && px <= x.places[this.nx - 1] && py <= y.places[this.ny - 1] && pz <= z.places[this.nz - 1];
  }

  isSolid(p) {
    const { x, y, z } = this;
    if (!this.holds(p[0], p[1], p[2])) return false;
    return this.solid[near(x, p[0]) * this.strideX + near(y, p[1]) * this.nz + near(z, p[2])] > 0;
  }
}

// Cells, by their low corner, of which a corner is solid.
function mixedCells(solid, { nx, ny, nz, strideX }) {
  const found = new Uint8Array(solid.length);
  for (let i = 0; i + 1 < nx; i++) {
    for (let j = 0; j + 1 < ny; j++) {
      for (let k = 0; k + 1 < nz; k++) {
        const n = i * strideX + j * nz + k, m = n + strideX;
        found[n] = solid[n] | solid[n + 1] | solid[n + nz] | solid[n + nz + 1]
          | solid[m] | solid[m + 1] | solid[m + nz] | solid[m + nz + 1];
      }
    }
  }
  return found;
}

function near(axis, place) {
  const at = gapOf(axis, place);
  return at + (place - axis.places[at] > 0.5 * axis.gaps[at] ? 1 : 0);
}

function share(axis, at, place) {
  const part = (place - axis.places[at]) / axis.gaps[at];
  return part < 0 ? 0 : part > 1 ? 1 : part;
}
