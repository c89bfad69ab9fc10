// Smoke carried by the computed air: the particles of kernels/particle_path.py, step for step, many at a time.
// No framework and no drawing: `positions`, `glow` and `ages` are there to be drawn. Nothing is allocated as it runs.
import { NORMALS, even, mixed, normal, particleKey } from "./smoke_chance.js";
import { Air, readField } from "./smoke_air.js";
import { fall } from "./smoke_fall.js";
import { Stream } from "./smoke_stream.js";
import { FREE, Walls } from "./smoke_walls.js";
import { Starts } from "./smoke_starts.js";

export { Air, Starts, Stream, Walls, even, mixed, normal, particleKey, readField };

export const NOTHING = 0, FLYING = 1, CAUGHT = 2, LOST = 3;
const LOW = 65535, FIRST = 8;  // numbers drawn before the first step
// Longer steps than the solver's. One as long as an eddy of the stream would spread its smoke 4 % wider (the square root
// of coth(x / 2) x / 2 for x = 1), so the random motion of a step is made smaller by x^2 / 24.
const STEP_SHARE = 1.2, EDDY_SHARE = 1, LESS = 1 / 24, LONGEST_STEP = 0.1, SHORTEST_STEP = 1e-6;
const WIDEST_KICK = 3.5;  // standard deviations
const SHORT = 2;  // gaps: a longer step is always looked at for walls
const SWAY_EVERY = 0.1;  // s in which the draught of all nodes is brought up to date
const FADES = [0, 1e9, 0.14, 3.5];  // s that a particle is seen after its end
const SLIP = 0.35;  // m/s at which caught smoke is drawn into the hood
const LEVEL = 0.7;  // of a normal that points up: smoke lies there
const SETTLED = 255, MOST_MOUTHS = 32;
const USUAL_LIFE = 4, LONGEST_LIFE = 20, FULL = 0.97, EASE = 0.3;  // s, -, 1/s
const GLIDES = 2, DRIFTS = 4, YOUNG = 0.3;  // frames of one move: of slow smoke, of lost smoke; s
const MOST_RATE = 6000;  // a second: more would not be told apart
const PILOTS = 100, PILOT_STEP = 0.05, LONGEST_PILOT = 8;  // s

export class Smoke {
  constructor(options = {}) {
    const { seed, most, rate } = { seed: 1, most: 20000, rate: MOST_RATE, ...options };
    this.mostRate = rate;
    this.seed = seed;
    this.most = most;
    this.limit = most;
    this.positions = new Float32Array(3 * most);
    this.glow = new Float32Array(most);  // 0 to 1: how much of it is seen
    this.ages = new Float32Array(most);
    this.stage = new Uint8Array(most);
    this.since = new Float32Array(most);  // s since its end
    this.state = new Float32Array(6 * most);  // random motions: of the room 0-2, of the stream 3-5
    this.shift = new Float32Array(3 * most);  // of the stream, for a source with an extent
    this.keys = new Int32Array(most);
    this.counts = new Uint32Array(most);
    this.stations = new Uint16Array(most);
    this.pace = new Float32Array(3 * most);  // m a frame
    this.slow = new Uint8Array(most);
    this.by = new Uint8Array(most);  // number of the mouth that caught it, or SETTLED
    this.walls = this.air = this.stream = null;
    this.rate = most / USUAL_LIFE;
    this.forget();
  }

  // Begin anew, with the same random numbers.
  forget() {
    this.stage.fill(NOTHING);
    this.glow.fill(0);
    this.emitted = this.owed = this.time = this.swayed = this.free = this.turn = this.frame = this.seen = 0;
    this.sway = [0, 0, 0];
    this.ends = { caught: new Array(MOST_MOUTHS).fill(0), lost: 0, late: 0, settled: 0 };
  }

  // Move in the air of other smoke.
  share({ air, walls, stream, starts, laws, jet, centres }) {
    Object.assign(this, { air, walls, stream, starts, laws, jet, centres });
  }

  // The air: a message that readField has read.
  breathe(field) {
    const { header } = field;
    this.air = new Air(field);
    this.walls = new Walls(header, this.air);
    this.swayTime = header.sway_time ?? 5;
    this.jet = header.jet;
    this.obey(header);
    if (this.told) this.give(this.told);
  }

  obey({ turbulence, eddy, wander, rising, settling, escape, limit, centres }) {
    this.laws = { turbulence, eddy, wander, rising, settling, escape, limit };
    this.centres = centres;
  }

  // Where smoke starts, the mean path of its stream, and what else may change in the same air.
  give(told) {
    this.told = told;
    if (!this.air) return;
    if (told.weights) {
      this.obey(told);
      if (told.weights.some((weight, n) => weight != this.air.weights[n])) this.air.weigh(told.weights);
    }
    this.begin();
    this.rate = FULL * this.limit / lifeOf(this);
  }

  begin() {
    const { told, jet } = this;
    this.starts = new Starts(told);
    this.stream = new Stream(told, jet);
    this.stations.fill(0);
  }

  // The source is carried along by hand: its stream goes with it until the server has told the new one.
  carry(middle) {
    if (!this.ready) return;
    const by = middle.map((c, n) => c - this.starts.middle[n]);
    const shifted = (row) => row.map((c, n) => (n < 3 ? c + by[n] : c)), { points, path, start } = this.told;
    const began = start && { ...start, row: shifted(start.row) };
    this.told = { ...this.told, points: points.map(shifted), path: (path ?? []).map(shifted), start: began };
    this.begin();
    this.stream.follow(this.air, this.walls);
  }

  get ready() { return Boolean(this.air && this.starts); }

  // One frame: the draught sways, all smoke moves, and new smoke comes.
  step(seconds) {
    if (!this.ready) return;
    this.time += seconds;
    this.frame = seconds;
    this.swing(seconds);
    this.turn = (this.turn + 1) % DRIFTS;
    this.seen = 0;
    for (let n = 0; n < this.most; n++) {
      const stage = this.stage[n];
      if (stage != NOTHING) this.seen++;
      if (stage == FLYING) {
        if (!this.slow[n]) this.fly(n, seconds);
        else if (n % GLIDES == this.turn % GLIDES) this.glide(n, seconds, GLIDES);
        else this.go(n);
      } else if (stage == LOST) {
        if (n % DRIFTS == this.turn) this.glide(n, seconds, DRIFTS);
        else this.go(n);
      } else if (stage == CAUGHT) {
        this.fade(n, seconds);
      }
    }
    this.emit(seconds);
  }

  // Where air is slow one move serves some frames: it is computed whole, and shown a share at a time.
  glide(n, seconds, frames) {
    const { positions, pace } = this, o = 3 * n, stage = this.stage[n];
    const x = positions[o], y = positions[o + 1], z = positions[o + 2];
    if (stage == FLYING) this.fly(n, frames * seconds);
    else this.fade(n, frames * seconds);
    if (this.stage[n] != stage) return;
    pace[o] = (positions[o] - x) / frames;
    pace[o + 1] = (positions[o + 1] - y) / frames;
    pace[o + 2] = (positions[o + 2] - z) / frames;
    positions[o] = x; positions[o + 1] = y; positions[o + 2] = z;
    this.go(n);
  }

  go(n) {
    const { positions, pace } = this, o = 3 * n;
    positions[o] += pace[o]; positions[o + 1] += pace[o + 1]; positions[o + 2] += pace[o + 2];
  }

  // The draught wanders about its mean: the same for all smoke, for it is one moment.
  swing(seconds) {
    const { laws: { wander, rising }, swayTime } = this;
    if (!wander) return;
    const share = Math.exp(-seconds / swayTime), fresh = Math.sqrt(1 - share * share);
    const key = particleKey(this.seed, 1, 0), mean = this.air.draughts;
    for (let c = 0; c < 3; c++) {
      this.sway[c] = share * this.sway[c] + fresh * normal(key, this.swayed++);
      const blown = wander * (c == 2 ? rising : 1) * this.sway[c];
      this.blowing[c] = this.air.weights[mean[c]] + blown;
    }
    if (this.air.freshen(this.blowing, seconds / SWAY_EVERY)) this.stream.follow(this.air, this.walls);
  }

  blowing = new Float64Array(3);
  kick = new Float64Array(2);

  // New smoke, as much as keeps the number that is seen near the limit.
  emit(seconds) {
    const wanted = FULL * this.limit;
    this.rate *= Math.exp(EASE * seconds * (1 - this.seen / wanted));
    this.rate = Math.min(Math.max(this.rate, wanted / LONGEST_LIFE), this.mostRate);
    this.owed += this.rate * seconds;
    const many = Math.floor(this.owed);
    this.owed -= many;
    for (let m = 0; m < many; m++) {
      const n = this.place();
      if (n < 0) return;
      this.start(n, this.emitted++);
      this.fly(n, seconds * (many - m) / many);
    }
  }

  // A particle that is not in use, or -1.
  place() {
    for (let tried = 0; tried < this.limit; tried++) {
      this.free = this.free + 1 < this.limit ? this.free + 1 : 0;
      if (this.stage[this.free] == NOTHING) return this.free;
    }
    return -1;
  }

  start(n, number) {
    const key = particleKey(this.seed, 0, number);
    this.keys[n] = key;
    this.counts[n] = FIRST;
    this.stage[n] = FLYING;
    this.by[n] = this.slow[n] = 0;
    this.stations[n] = 0;
    this.ages[n] = this.since[n] = 0;
    this.glow[n] = 1;
    for (let c = 0; c < 6; c++) this.state[6 * n + c] = normal(key, c + 1);
    this.starts.draw(key, this.positions, this.shift, 3 * n);
  }

  // Carry one particle on by sub-steps, never longer than the air, its eddies and the frame allow.
  fly(n, seconds) {
    const { air, walls, laws, stream, positions, shift, state, pace } = this, { at } = air, o = 3 * n, s = 6 * n;
    const { turbulence, settling } = laws, roomTime = laws.eddy / (turbulence + 1e-9), roomStep = 0.2 * roomTime;
    const flows = stream.count > 1, jet = stream.added, time = this.jet.time, kick = this.kick, key = this.keys[n];
    const ox = shift[o], oy = shift[o + 1], oz = shift[o + 2];
    let x = positions[o], y = positions[o + 1], z = positions[o + 2], left = seconds, count = this.counts[n];
    let station = this.stations[n], end = NOTHING, own = 0;
    at[8] = x; at[9] = y; at[10] = z;
    while (left > 0 && end == NOTHING) {
      air.ask(true);
      let ju = 0, jv = 0, jw = 0, sj = 0, b = 1, peak = 0;
      if (flows) {
        jet[9] = x - ox; jet[10] = y - oy; jet[11] = z - oz;
        station = stream.nearest(station);
        stream.ask(station);
        ju = jet[0]; jv = jet[1]; jw = jet[2]; sj = jet[3]; b = jet[7]; peak = jet[8];
      }
      const sr = turbulence * at[3], gap = at[7], cell = air.cell, jetTime = time * b / (peak + 1e-9);
      let u = at[0] + ju, v = at[1] + jv, w = at[2] + jw;
      const speed = Math.sqrt(u * u + v * v + w * w) + sr + sj + settling + 1e-9;
      let dt = Math.min(STEP_SHARE * gap / speed, LONGEST_STEP, roomStep);
      if (sj > 0.02 * speed) dt = Math.min(dt, STEP_SHARE * b / speed, EDDY_SHARE * jetTime);
      own = dt;
      dt = Math.min(Math.max(dt, SHORTEST_STEP), left);
      kick[0] = dt;
      if (sr > 0) this.stirRoom(s, key + count | 0);
      kick[1] = jetTime;
      if (sj > 1e-5) this.stirJet(s, key + count | 0);
      count += 3;
      if (sj > 0) sj *= 1 - LESS * Math.min(1, dt * dt / (jetTime * jetTime));
      const ru = sr * state[s] + sj * state[s + 3], rv = sr * state[s + 1] + sj * state[s + 4];
      const rw = sr * state[s + 2] + sj * state[s + 5];
      const hx = 0.5 * dt * (u + ru), hy = 0.5 * dt * (v + rv), hz = 0.5 * dt * (w + rw);
      at[8] = x + hx; at[9] = y + hy; at[10] = z + hz;
      air.ask(false);
      if (sj > 0) {  // else far from the stream, where it changes slowly
        jet[9] += hx; jet[10] += hy; jet[11] += hz;
        stream.ask(station);
        ju = jet[0]; jv = jet[1]; jw = jet[2];
      }
      u = at[0] + ju; v = at[1] + jv; w = at[2] + jw;
      const dx = dt * (u + ru), dy = dt * (v + rv), dz = dt * (w + rw - settling);
      left -= dt;
      if (walls.near[cell] || Math.abs(dx) + Math.abs(dy) + Math.abs(dz) > SHORT * gap) {
        const { step } = walls;
        step[0] = x; step[1] = y; step[2] = z;
        step[3] = x + dx; step[4] = y + dy; step[5] = z + dz;
        end = this.collide(n);
        x = step[3]; y = step[4]; z = step[5];
      } else {
        x += dx; y += dy; z += dz;
      }
      const bx = at[8] - hx, by = at[9] - hy, bz = at[10] - hz;  // where it was before
      at[8] = x; at[9] = y; at[10] = z;
      if (end == NOTHING && this.isBeyond()) {
        end = LOST;
        const on = this.frame / dt;  // it drifts on at the same pace
        pace[o] = on * (x - bx); pace[o + 1] = on * (y - by); pace[o + 2] = on * (z - bz);
      }
    }
    positions[o] = x; positions[o + 1] = y; positions[o + 2] = z;
    this.counts[n] = count;
    this.stations[n] = station;
    this.ages[n] += seconds - left;
    this.slow[n] = own >= GLIDES * this.frame && this.ages[n] > YOUNG ? 1 : 0;
    if (end != NOTHING) this.finish(n, end);
    else if (this.ages[n] >= laws.limit) this.finish(n, LOST, "late");
  }

  // Random motion of the room one step on; the slope of its strength keeps even smoke even. kick: 0 step, 1 time.
  stirRoom(s, count) {
    const { state, laws, air: { at }, kick } = this, time = laws.eddy / (laws.turbulence + 1e-9);
    const share = fall(kick[0] / time);
    const fresh = Math.sqrt(1 - share * share), drift = laws.turbulence * time * (1 - share);
    for (let c = 0; c < 3; c++) {
      state[s + c] = share * state[s + c] + fresh * NORMALS[mixed(count + c | 0) & LOW] + at[4 + c] * drift;
    }
  }

  stirJet(s, count) {
    const { state, stream: { added }, kick } = this, share = fall(kick[0] / kick[1]);
    const fresh = Math.sqrt(1 - share * share), drift = kick[1] * (1 - share);
    for (let c = 0; c < 3; c++) {
      const whole = share * state[s + 3 + c] + fresh * NORMALS[mixed(count + c | 0) >>> 16] + added[4 + c] * drift;
      state[s + 3 + c] = whole > WIDEST_KICK ? WIDEST_KICK : whole < -WIDEST_KICK ? -WIDEST_KICK : whole;
    }
  }

  // The step of `walls`, past what stands there: random motions are thrown back with the particle.
  collide(n) {
    const { walls, state } = this, { step, turns } = walls, falls = step[5] < step[2];
    const met = walls.meet();
    for (let t = 0; t < walls.turned; t++) {
      const a = turns[3 * t], b = turns[3 * t + 1], c = turns[3 * t + 2];
      for (let s = 6 * n; s < 6 * n + 6; s += 3) {
        const twice = 2 * (state[s] * a + state[s + 1] * b + state[s + 2] * c);
        state[s] -= twice * a; state[s + 1] -= twice * b; state[s + 2] -= twice * c;
      }
      if (falls && this.laws.settling > 0 && Math.abs(c) > LEVEL) return this.settle(n);
    }
    if (met == FREE) return NOTHING;
    this.by[n] = met - 1;
    return CAUGHT;
  }

  settle(n) {
    this.by[n] = SETTLED;
    return LOST;
  }

  // Whether the point in `at` is farther than the escape radius from every opening that draws.
  isBeyond() {
    const { centres, air: { at } } = this, most = this.laws.escape * this.laws.escape;
    for (let c = 0; c < centres.length; c++) {
      const p = centres[c], dx = at[8] - p[0], dy = at[9] - p[1], dz = at[10] - p[2];
      if (dx * dx + dy * dy + dz * dz <= most) return false;
    }
    return true;
  }

  finish(n, end, why = "lost") {
    const { ends, by } = this;
    this.stage[n] = end;
    this.since[n] = 0;
    if (end == CAUGHT) ends.caught[by[n]]++;
    else ends[by[n] == SETTLED ? "settled" : why]++;
  }

  // Caught smoke goes a little way into the hood; lost smoke drifts on and thins.
  fade(n, seconds) {
    const stage = this.stage[n], since = this.since[n] += seconds, part = 1 - since / FADES[stage];
    this.ages[n] += seconds;
    if (part <= 0) {
      this.stage[n] = NOTHING;
      this.glow[n] = 0;
      return;
    }
    this.glow[n] = stage == LOST ? part * Math.sqrt(part) : part;
    if (stage == CAUGHT) this.slip(n, seconds);
    else if (this.by[n] != SETTLED) this.drift(n, seconds);
  }

  slip(n, seconds) {
    const { positions } = this, { normal: way } = this.walls.mouths[this.by[n]];
    for (let c = 0; c < 3; c++) positions[3 * n + c] -= SLIP * seconds * way[c];
  }

  drift(n, seconds) {
    const { air, positions, laws, walls, state, kick } = this, o = 3 * n, s = 6 * n, { at } = air, { step } = walls;
    for (let c = 0; c < 3; c++) at[8 + c] = step[c] = positions[o + c];
    air.ask(true);
    const sigma = laws.turbulence * at[3];
    kick[0] = seconds;
    if (sigma > 0) this.stirRoom(s, this.keys[n] + this.counts[n] | 0);
    this.counts[n] += 3;
    for (let c = 0; c < 3; c++) {
      const falls = c == 2 ? laws.settling : 0;
      step[3 + c] = step[c] + seconds * (at[c] + sigma * state[s + c] - falls);
    }
    if (walls.near[air.cell] || !air.holds(step[3], step[4], step[5])) this.collide(n);
    positions[o] = step[3]; positions[o + 1] = step[4]; positions[o + 2] = step[5];
  }
}

// How long a particle is seen in the mean [s]: a few of them are followed to their ends.
export function lifeOf(smoke) {
  const few = new Smoke({ seed: smoke.seed + 1, most: PILOTS });
  few.share(smoke);
  for (let n = 0; n < PILOTS; n++) few.start(n, n);
  let sum = 0, time = 0;
  for (; time < LONGEST_PILOT; time += PILOT_STEP) {
    for (let n = 0; n < PILOTS; n++) {
      if (few.stage[n] != FLYING) continue;
      few.fly(n, PILOT_STEP);
      if (few.stage[n] != FLYING) sum += few.ages[n] + FADES[few.stage[n]];
    }
  }
  for (let n = 0; n < PILOTS; n++) if (few.stage[n] == FLYING) sum += time + FADES[LOST];
  return sum / PILOTS;
}
