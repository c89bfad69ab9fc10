// Runs one job of test_smoke_core.py: node job.mjs <folder of the modules> <job as a JSON file> <answer as a JSON file>
import { readFileSync, writeFileSync } from "node:fs";

const [folder, asked, answered] = process.argv.slice(2);
const core = await import(`file://${folder}/smoke_core.js`);
const job = JSON.parse(readFileSync(asked, "utf8"));

function smokeOf({ field, stream, most, seed }) {
  const bytes = readFileSync(field);
  const smoke = new core.Smoke({ most, seed });
  const message = core.readField(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
  if (job.room) message.header.room = job.room;
  smoke.breathe(message);
  smoke.give(typeof stream == "string" ? JSON.parse(readFileSync(stream, "utf8")) : stream);
  return smoke;
}

const placeOf = (smoke, n) => Array.from(smoke.positions.subarray(3 * n, 3 * n + 3));

const JOBS = {
  draws() {
    const { mixed, normal, particleKey, even } = core;
    return job.keys.map((key) => [mixed(key), normal(key, 7), particleKey(key, 2, 3), even(key, 1)]);
  },

  ask() {
    const { air } = smokeOf(job);
    return job.points.map((point) => {
      for (let c = 0; c < 3; c++) air.at[8 + c] = point[c];
      air.ask(true);
      return Array.from(air.at.subarray(0, 7));
    });
  },

  stream() {
    const { stream, air, walls } = smokeOf(job);
    stream.follow(air, walls);
    return Array.from({ length: stream.count }, (_, n) => Array.from(stream.path.subarray(13 * n, 13 * n + 13)));
  },

  // Particles that start together, frame by frame: places, and how each of them ended.
  tracks() {
    const smoke = smokeOf(job), places = [];
    if (job.starts) job.starts.forEach((start, n) => { smoke.start(n, n); smoke.positions.set(start, 3 * n); });
    else for (let n = 0; n < job.most; n++) smoke.start(n, n);
    const began = Array.from({ length: job.most }, (_, n) => placeOf(smoke, n));
    for (let frame = 0; frame < job.frames; frame++) {
      for (let n = 0; n < job.most; n++) if (smoke.stage[n] == core.FLYING) smoke.fly(n, job.seconds);
      places.push(Array.from({ length: job.most }, (_, n) => placeOf(smoke, n)));
    }
    return { began, places, stages: Array.from(smoke.stage) };
  },

  // The captured share: many moments, each with a draught of its own, some particles in each.
  share() {
    const smoke = smokeOf(job), { wander, rising, limit } = smoke.laws;
    const weights = Array.from(smoke.air.weights), bases = smoke.air.draughts, key = core.particleKey(job.seed, 2, 0);
    let caught = 0, all = 0;
    for (let moment = 0; moment < job.moments; moment++) {
      const own = [...weights];
      for (let c = 0; c < 3; c++) own[bases[c]] += wander * (c == 2 ? rising : 1) * core.normal(key, 3 * moment + c);
      smoke.air.weigh(own);
      smoke.stream.follow(smoke.air, smoke.walls);
      for (let n = 0; n < job.most; n++) {
        smoke.start(n, all++);
        for (let time = 0; time < limit && smoke.stage[n] == core.FLYING; time += job.seconds) {
          smoke.fly(n, job.seconds);
        }
        caught += smoke.stage[n] == core.CAUGHT ? 1 : 0;
      }
    }
    return caught / all;
  },

  // The whole of it as the page runs it, twice over.
  frames() {
    const runs = [0, 1].map(() => {
      const smoke = smokeOf(job);
      for (let frame = 0; frame < job.frames; frame++) smoke.step(job.seconds);
      const { positions, glow, ends, emitted } = smoke;
      return { places: Array.from(positions), glow: Array.from(glow), ends, emitted };
    });
    return runs;
  },
};

writeFileSync(answered, JSON.stringify(JOBS[job.job]()));
