// What smoke meets on a step: plates with holes throw it back, mouths keep it, blocks and solid cells let nothing in.
export const FREE = 0;
const CLEAR = 1e-5;  // m that is kept to a plate
const AROUND = 3, BESIDE = 2;  // gaps of the lattice round plates, and round solid cells, in which steps are looked at
const LIP = 0.5;  // gaps
const BOUNCES = 4, EDGE = 1e-5;

const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const less = (a, b) => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const unit = (a) => a.map((c) => c / Math.hypot(...a));

export class Walls {
  constructor(header, air) {
    this.air = air;
    this.mouths = header.mouths.map(mouthOf);
    this.plates = (header.plates ?? []).map(plateOf);
    this.blocks = (header.blocks ?? []).map(blockOf);
    this.room = header.room ?? null;
    for (const mouth of this.mouths) mouth.lip = LIP * gapAt(air, mouth.centre);
    this.near = new Uint8Array(air.nodes);
    this.mark();
    // a step: 0-2 from, 3-5 to; `turns`: normals by which motion was thrown back, `turned` how many
    this.step = new Float64Array(6);
    this.probe = new Float64Array(3);
    this.turns = new Float64Array(3 * BOUNCES + 9);
    this.turned = 0;
    this.found = { when: 2, nx: 0, ny: 0, nz: 0, side: 1, mouth: -1 };
  }

  // Cells of the lattice near anything: elsewhere a short step meets nothing.
  mark() {
    for (const part of [...this.plates, ...this.mouths, ...this.blocks]) this.markBox(part.low, part.high, AROUND);
    const { air } = this;
    for (let i = 0, n = 0; i < air.nx; i++) {
      for (let j = 0; j < air.ny; j++) {
        for (let k = 0; k < air.nz; k++, n++) {
          if (air.solid[n] && this.isRim(n, i, j, k)) this.markCells([i, j, k], [i, j, k], BESIDE);
        }
      }
    }
  }

  isRim(n, i, j, k) {
    const { solid, nx, ny, nz, strideX } = this.air;
    return !((i == 0 || solid[n - strideX]) && (i == nx - 1 || solid[n + strideX]) && (j == 0 || solid[n - nz])
      && (j == ny - 1 || solid[n + nz]) && (k == 0 || solid[n - 1]) && (k == nz - 1 || solid[n + 1]));
  }

  markBox(low, high, more) {
    const axes = [this.air.x, this.air.y, this.air.z];
    const index = (axis, place) => axis.places.findLastIndex((p) => p <= place);
    this.markCells(axes.map((a, c) => index(a, low[c])), axes.map((a, c) => index(a, high[c])), more);
  }

  markCells(low, high, more) {
    const { air, near } = this;
    const from = low.map((n) => Math.max(0, n - more));
    const to = [air.nx, air.ny, air.nz].map((size, c) => Math.min(size - 1, high[c] + more));
    for (let i = from[0]; i <= to[0]; i++) {
      for (let j = from[1]; j <= to[1]; j++) {
        const row = i * air.strideX + j * air.nz;
        near.fill(1, row + from[2], row + to[2] + 1);
      }
    }
  }

  // Follow `step`, thrown back where need be; FREE, or 1 + the number of the mouth that keeps it.
  meet() {
    const { step, found } = this;
    this.turned = 0;
    for (let bounce = 0; bounce < BOUNCES; bounce++) {
      found.when = 2;
      for (const plate of this.plates) meetPlate(plate, step, found);
      for (let m = 0; m < this.mouths.length; m++) meetMouth(this.mouths[m], m, step, found);
      for (const block of this.blocks) meetBlock(block, step, found);
      if (found.when > 1) return this.meetSolid();
      if (found.mouth >= 0) return this.keep();
      this.throwBack();
    }
    step[3] = step[0];
    step[4] = step[1];
    step[5] = step[2];
    return FREE;
  }

  keep() {
    const { step, found } = this;
    for (let c = 0; c < 3; c++) step[3 + c] = step[c] + found.when * (step[3 + c] - step[c]);
    return 1 + found.mouth;
  }

  throwBack() {
    const { step, found } = this, { when, nx, ny, nz, side } = found;
    for (let c = 0; c < 3; c++) step[c] += when * (step[3 + c] - step[c]);
    const height = (step[3] - step[0]) * nx + (step[4] - step[1]) * ny + (step[5] - step[2]) * nz;
    const lift = Math.abs(height) + Math.max(Math.abs(height), 2 * CLEAR);
    step[3] += side * lift * nx;
    step[4] += side * lift * ny;
    step[5] += side * lift * nz;
    step[0] += side * CLEAR * nx;
    step[1] += side * CLEAR * ny;
    step[2] += side * CLEAR * nz;
    this.turn(nx, ny, nz);
  }

  turn(nx, ny, nz) {
    const o = 3 * this.turned++;
    this.turns[o] = nx;
    this.turns[o + 1] = ny;
    this.turns[o + 2] = nz;
  }

  // Solid cells, the hood behind its opening, and the room's walls: axis by axis, what would go in stays out.
  meetSolid() {
    const { step, room, probe } = this;
    if (room) {
      for (let c = 0; c < 3; c++) {
        if (step[3 + c] > room[0][c] && step[3 + c] < room[1][c]) continue;
        step[3 + c] = Math.min(Math.max(step[c], room[0][c] + CLEAR), room[1][c] - CLEAR);
        this.turn(c == 0 ? 1 : 0, c == 1 ? 1 : 0, c == 2 ? 1 : 0);
      }
    }
    for (let c = 0; c < 3; c++) probe[c] = step[3 + c];
    if (!this.isFull()) return FREE;
    for (let c = 0; c < 3; c++) probe[c] = step[c];
    if (this.isFull()) return FREE;
    const lip = this.atLip();
    if (lip >= 0) return 1 + lip;
    for (let c = 0; c < 3; c++) {
      probe[c] = step[3 + c];
      if (!this.isFull()) continue;
      probe[c] = step[3 + c] = step[c];
      this.turn(c == 0 ? 1 : 0, c == 1 ? 1 : 0, c == 2 ? 1 : 0);
    }
    return FREE;
  }

  // At the rim of an opening air turns sharply into it, within less than a cell: what is thrown back there is drawn in.
  atLip() {
    return this.mouths.findIndex((mouth) =>
      Math.abs(this.height(mouth)) < mouth.lip && inFigure(mouth, ...this.probe, mouth.lip));
  }

  // Of the point in `probe` before an opening.
  height({ centre, normal }) {
    const { probe } = this;
    return (probe[0] - centre[0]) * normal[0] + (probe[1] - centre[1]) * normal[1] + (probe[2] - centre[2]) * normal[2];
  }

  // Solid cells end half-way between two nodes; close behind an opening its true bore counts.
  isFull() {
    const { probe, mouths } = this;
    if (this.air.isSolid(probe)) return true;
    for (let m = 0; m < mouths.length; m++) {
      const mouth = mouths[m], height = this.height(mouth);
      if (height < 0 && height > -mouth.depth && inFigure(mouth, probe[0], probe[1], probe[2], 0)) return true;
    }
    return false;
  }
}

function gapAt(air, place) {
  place.forEach((c, n) => { air.at[8 + n] = c; });
  air.ask(true);
  return air.at[7];
}

function boxOf(points) {
  const along = [0, 1, 2].map((c) => points.map((p) => p[c]));
  return { low: along.map((places) => Math.min(...places)), high: along.map((places) => Math.max(...places)) };
}

function figureOf({ centre, first, second, sides, shape }) {
  const half = [sides[0] / 2, sides[1] / 2];
  return { centre, first: unit(first), second: unit(second), half, round: shape == "round" };
}

function plateOf({ corner, first, second, holes }) {
  const normal = unit(cross(first, second)), aa = dot(first, first), bb = dot(second, second), ab = dot(first, second);
  const least = aa * bb - ab * ab;
  // u and v of a point are dot products with these
  const toU = first.map((_, c) => (bb * first[c] - ab * second[c]) / least);
  const toV = first.map((_, c) => (aa * second[c] - ab * first[c]) / least);
  const corners = [[0, 0], [1, 0], [0, 1], [1, 1]].map(([u, v]) =>
    corner.map((o, c) => o + u * first[c] + v * second[c]));
  return { corner, normal, toU, toV, holes: (holes ?? []).map(figureOf), ...boxOf(corners) };
}

function mouthOf(mouth) {
  const figure = figureOf(mouth), normal = unit(mouth.facing), wide = mouth.flange ?? 0;
  const corners = [[-1, -1], [1, -1], [-1, 1], [1, 1]].map(([a, b]) => figure.centre.map((o, c) =>
    o + a * (figure.half[0] + wide) * figure.first[c] + b * (figure.half[1] + wide) * figure.second[c]));
  return { ...figure, normal, wide, depth: Math.min(...mouth.sides), name: mouth.name, ...boxOf(corners) };
}

function blockOf({ centre, axes, half }) {
  const signs = [-1, 1].flatMap((a) => [-1, 1].flatMap((b) => [[a, b, -1], [a, b, 1]]));
  const corners = signs.map((sign) =>
    centre.map((o, c) => sign.reduce((sum, one, n) => sum + one * half[n] * axes[n][c], o)));
  return { centre, axes: axes.map(unit), half, ...boxOf(corners) };
}

// Whether a point of its plane lies in a figure, grown by a margin.
function inFigure(figure, x, y, z, wide) {
  const { centre, first, second, half } = figure;
  const dx = x - centre[0], dy = y - centre[1], dz = z - centre[2];
  const a = (dx * first[0] + dy * first[1] + dz * first[2]) / (half[0] + wide);
  const b = (dx * second[0] + dy * second[1] + dz * second[2]) / (half[1] + wide);
  return figure.round ? a * a + b * b <= 1 : Math.abs(a) <= 1 && Math.abs(b) <= 1;
}

// Heights of both ends above a plane: when the step crosses it, or ends too close, and where; else 2.
function crossing(origin, normal, step, found) {
  const [nx, ny, nz] = normal;
  const hp = (step[0] - origin[0]) * nx + (step[1] - origin[1]) * ny + (step[2] - origin[2]) * nz;
  const hq = (step[3] - origin[0]) * nx + (step[4] - origin[1]) * ny + (step[5] - origin[2]) * nz;
  const side = hp >= 0 ? 1 : -1;
  if (side * hq >= 0.5 * CLEAR) return 2;
  const when = Math.min(1, Math.max(0, hp / (hp - hq || side)));
  return when < found.when ? when * side || side * 1e-12 : 2;
}

function note(found, when, normal, side, mouth) {
  found.when = when;
  [found.nx, found.ny, found.nz] = normal;
  found.side = side;
  found.mouth = mouth;
}

function meetPlate(plate, step, found) {
  const signed = crossing(plate.corner, plate.normal, step, found);
  if (signed == 2) return;
  const when = Math.abs(signed), side = Math.sign(signed);
  const x = step[0] + when * (step[3] - step[0]), y = step[1] + when * (step[4] - step[1]);
  const z = step[2] + when * (step[5] - step[2]);
  const [cx, cy, cz] = plate.corner, { toU, toV, holes } = plate;
  const u = (x - cx) * toU[0] + (y - cy) * toU[1] + (z - cz) * toU[2];
  const v = (x - cx) * toV[0] + (y - cy) * toV[1] + (z - cz) * toV[2];
  if (u < -EDGE || u > 1 + EDGE || v < -EDGE || v > 1 + EDGE) return;
  for (const hole of holes) if (inFigure(hole, x, y, z, 0)) return;
  note(found, when, plate.normal, side, -1);
}

function meetMouth(mouth, number, step, found) {
  const signed = crossing(mouth.centre, mouth.normal, step, found);
  if (signed == 2) return;
  const when = Math.abs(signed), side = Math.sign(signed);
  const x = step[0] + when * (step[3] - step[0]), y = step[1] + when * (step[4] - step[1]);
  const z = step[2] + when * (step[5] - step[2]);
  if (inFigure(mouth, x, y, z, 0)) {
    if (side > 0) note(found, when, mouth.normal, side, number);
  } else if (mouth.wide && inFigure(mouth, x, y, z, mouth.wide)) {
    note(found, when, mouth.normal, side, -1);
  }
}

// A step into a block from outside: where it enters.
function meetBlock(block, step, found) {
  let enter = 0, leave = 1, face = -1, side = 0;
  for (let n = 0; n < 3; n++) {
    const axis = block.axes[n], half = block.half[n];
    const [cx, cy, cz] = block.centre;
    const p = (step[0] - cx) * axis[0] + (step[1] - cy) * axis[1] + (step[2] - cz) * axis[2];
    const d = (step[3] - step[0]) * axis[0] + (step[4] - step[1]) * axis[1] + (step[5] - step[2]) * axis[2];
    if (Math.abs(d) < 1e-15) {
      if (Math.abs(p) > half) return;
      continue;
    }
    const first = ((d > 0 ? -half : half) - p) / d, last = ((d > 0 ? half : -half) - p) / d;
    if (first > enter) { enter = first; face = n; side = d > 0 ? -1 : 1; }
    if (last < leave) leave = last;
  }
  if (face >= 0 && enter < leave && enter < found.when) note(found, enter, block.axes[face], side, -1);
}
