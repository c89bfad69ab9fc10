// Follow a stream through the air as it is now: kernels/jet_path.py, step for step, on the lattice.
// Even fluxes of volume, momentum and buoyancy; its air-taking, bending and pressure are those of the solver.
export const COLUMNS = 13, MOST = 400;
const STEP = 0.25, SHORTEST = 4e-4, LONGEST = 0.05;  // in radii; m; m
const WEAKEST = 0.02;  // m/s: a jet without heat that is no faster than this has ended
const TINY = 1e-12;

const state = new Float64Array(7), middle = new Float64Array(7);  // place, flow, momentum
// 0-2 tangent, 3 flow, 4-6 momentum, 7 radius, 8-10 excess, 11 inflow, 12 length over which the air changes, 13-15 push
const change = new Float64Array(16), there = new Float64Array(16);

// Fill `path` from the start that the server told; how many stations there are.
export function follow(air, walls, { row, laws }, path) {
  const [core, buoyancy, width] = row.slice(7), own = { laws, buoyancy, width };
  state.set(row.slice(0, 7));
  let way = 0, count = 0;
  while (count < MOST && way < laws[6]) {
    changing(air, state, own, way < core, laws[5] > 0, change);
    note(path, count++, core > 0 ? 1 + Math.min(1, way / core) : 2);
    const excess = change[8] ** 2 + change[9] ** 2 + change[10] ** 2;
    if (buoyancy == 0 && 4 * excess < WEAKEST * WEAKEST) break;
    const step = Math.min(Math.max(Math.min(STEP * change[7], 0.2 * change[12]), SHORTEST), LONGEST);
    for (let c = 0; c < 7; c++) middle[c] = state[c] + 0.5 * step * (change[c] + (c > 3 ? change[c + 9] : 0));
    changing(air, middle, own, way + 0.5 * step < core, false, there);
    if (!moved(air, walls, step)) break;
    for (let c = 3; c < 7; c++) state[c] += step * (there[c] + (c > 3 ? change[c + 9] : 0));
    way += step;
  }
  widen(path, count);
  return count;
}

// How place, flow and momentum change along the path, into `out`.
function changing(air, at, { laws, buoyancy, width }, inCore, pressed, out) {
  const [u, v, w] = velocity(air, at[0], at[1], at[2]), flow = at[3];
  const mx = at[4] / flow, my = at[5] / flow, mz = at[6] / flow, speed = Math.hypot(mx, my, mz) + TINY;
  const tx = mx / speed, ty = my / speed, tz = mz / speed, area = flow / speed, radius = Math.sqrt(area / Math.PI);
  const rim = 2 * Math.sqrt(width * width + Math.PI * area);
  const ex = mx - u, ey = my - v, ez = mz - w, along = ex * tx + ey * ty + ez * tz;
  const square = ex * ex + ey * ey + ez * ez, across = Math.sqrt(Math.max(square - along * along, 0));
  const plume = 1.6 * Math.SQRT2 * laws[1] / laws[3];
  const richardson = Math.abs(buoyancy) / flow * 2 * area / rim / (square + TINY);
  const taken = (laws[0] + (laws[1] - laws[0]) * Math.min(1, richardson / plume)) * (inCore ? 0.5 : 1);
  const grown = rim * (Math.SQRT2 * taken * Math.abs(along) + laws[2] * across);
  out.set([tx, ty, tz, grown, grown * u, grown * v, grown * w + buoyancy * laws[3] / speed]);
  out.set([radius, ex, ey, ez, taken * rim / (2 * Math.PI * radius), 1e9, 0, 0, 0], 7);
  if (pressed) press(air, at, [u, v, w], radius, area, out);
}

// The pressure of the air around: (u . grad) u along the stream line through here.
function press(air, at, wind, radius, area, out) {
  const ambient = Math.hypot(...wind);
  if (ambient <= 1e-6) return;
  const h = Math.max(0.5 * radius, 1e-3), [sx, sy, sz] = wind.map((c) => c / ambient * h);
  const ahead = velocity(air, at[0] + sx, at[1] + sy, at[2] + sz);
  const back = velocity(air, at[0] - sx, at[1] - sy, at[2] - sz);
  const slope = ahead.map((c, n) => (c - back[n]) / (2 * h));
  slope.forEach((c, n) => { out[13 + n] = area * ambient * c; });
  out[12] = ambient / (Math.hypot(...slope) + TINY);
}

function velocity(air, x, y, z) {
  air.at[8] = x;
  air.at[9] = y;
  air.at[10] = z;
  air.ask(false);
  return [air.at[0], air.at[1], air.at[2]];
}

// Whether the stream gets on without meeting anything.
function moved(air, walls, size) {
  const { step } = walls;
  for (let c = 0; c < 3; c++) {
    step[c] = state[c];
    step[3 + c] = state[c] + size * there[c];
  }
  if (walls.meet() || walls.turned || !air.holds(step[3], step[4], step[5])) return false;
  for (let c = 0; c < 3; c++) state[c] = step[3 + c];
  return true;
}

// The bell-shaped profile that carries the same momentum.
function note(path, n, peak) {
  const o = n * COLUMNS;
  for (let c = 0; c < 3; c++) {
    path[o + c] = state[c];
    path[o + 4 + c] = peak * change[8 + c];
    path[o + 8 + c] = change[c];
  }
  path[o + 3] = Math.SQRT2 * change[7] / peak;
  path[o + 7] = state[3];
  path[o + 11] = change[11];
  path[o + 12] = 0;
}

// How fast the bell widens.
function widen(path, count) {
  for (let o = COLUMNS; o < count * COLUMNS; o += COLUMNS) {
    const p = o - COLUMNS, apart = Math.hypot(path[o] - path[p], path[o + 1] - path[p + 1], path[o + 2] - path[p + 2]);
    path[o + 12] = Math.max(0, Math.min(0.25, (path[o + 3] - path[p + 3]) / (apart + TINY)));
  }
}
